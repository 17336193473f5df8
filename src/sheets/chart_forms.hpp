// The four forms of the needle chart: text, comma-separated values, web page, and pages to print.
// Each takes the same rows; none of them works anything out again.
#pragma once

#include "design/result.hpp"
#include "sheets/chart_rows.hpp"
#include "sheets/drawing.hpp"

#include <string>
#include <vector>

namespace punchwright {

// Columns of fixed width in characters, the needles last; the ruler above the strips comes again every ten rows.
[[nodiscard]] std::string chart_text(const ChartRows& chart);

// RFC 4180, one record a row to knit. What is done at setting up stands in `before` of row 1, what is done at the end
// in `after` of the last row.
[[nodiscard]] std::string chart_csv(const ChartRows& chart);

// One self-contained file without scripts, well-formed XML as well as HTML.
[[nodiscard]] std::string chart_html(const ChartRows& chart);

// The pages of the printed chart; a roll is printed on A4.
[[nodiscard]] std::vector<Sheet> chart_sheets(const ChartRows& chart);

} // namespace punchwright
