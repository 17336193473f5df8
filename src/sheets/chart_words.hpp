// The words of the needle chart, the same in all its forms.
// Apart from the layouts, so that page, web page and text can't say different things.
#pragma once

#include "sheets/chart_rows.hpp"

#include <string>
#include <string_view>

namespace punchwright {

// Control characters and what XML can't hold become spaces: titles and names stand on one line everywhere.
[[nodiscard]] std::string one_line(std::string_view text);
// In code points: what a column of a text file is counted in.
[[nodiscard]] std::size_t characters_in(std::string_view text);

// "←" and "→", as the knitter sees the carriage go.
[[nodiscard]] std::string_view arrow_of(Travel travel);
[[nodiscard]] std::string_view travel_words(Travel travel); // "leftwards", in the reader's language

// "Oat + Ink": the yarns in the feeders in that pass.
[[nodiscard]] std::string yarn_names(const Pass& pass, const ChartRows& chart);

// What stands beside or instead of the needles: "plain row: the contrast yarn changes"; "all knit Oat"; empty in a
// usual pattern row.
[[nodiscard]] std::string remark_of(const RowToKnit& row, const ChartRows& chart);

// "plain row", "knits plain and selects card row 1", "free pass, knits nothing and stores card row 1".
[[nodiscard]] std::string_view setup_words(const SetupRow& row);

[[nodiscard]] std::string title_of(const ChartRows& chart);
[[nodiscard]] std::string machine_of(const ChartRows& chart);
// "Piece L36–R35, 71 needles; 63 rows, the carriage begins on the right".
[[nodiscard]] std::string piece_words(const ChartRows& chart);
// How the needles come to stand forward on this machine.
[[nodiscard]] std::string_view selection_words(const Profile& profile);

// Which way round the chart is.
[[nodiscard]] std::string_view mirror_words();
[[nodiscard]] std::string_view care_words();

} // namespace punchwright
