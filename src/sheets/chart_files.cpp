// The needle chart as a file: the extension chooses the form, and what would be too large to use is refused.
#include "sheets/chart_forms.hpp"
#include "sheets/exports.hpp"
#include "sheets/output_names.hpp"
#include "sheets/page_files.hpp"
#include "sheets/pages.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {

namespace {

// Some 500 pages; nobody ticks off more, and a viewer must still open it.
constexpr std::size_t most_rows_on_pages = 5'000;
// A web page of this many rows is some 30 MB, about what a browser still lays out.
constexpr std::size_t most_rows_in_html = 20'000;
// A text file is made in memory before it is written.
constexpr double largest_text = 1024.0 * 1024.0 * 1024.0; // bytes

Failure too_many_rows(const std::string& path, std::size_t rows, std::size_t most) {
  if (rows <= most) {
    return std::nullopt;
  }
  return Error{path, 0, 0, said("{} rows to knit are too many for this form of the needle chart", rows),
               said("up to {} are allowed; write {}.txt or .csv, or knit fewer times", most,
                    rows <= most_rows_in_html ? ".html, " : "")};
}

// About: a needle takes 4 bytes in the full list, 1 in the strip, and a run of them 10; yarns are named up to four
// times.
Failure too_large_a_text(const std::string& path, const ChartRows& chart) {
  std::size_t longest_name = 0;
  for (const Yarn& yarn : chart.document().yarns) {
    longest_name = std::max(longest_name, chart.yarn_name(yarn.key).size());
  }
  const double other_columns = 100.0 + 4.0 * static_cast<double>(longest_name);
  double bytes = 0;
  for (const RowToKnit& row : chart.rows()) {
    const ChartNeedles& needles = chart.needles_of(row);
    bytes += other_columns + chart.stitches() + 4.0 * needles.count + 10.0 * static_cast<double>(needles.listed.size());
  }
  if (bytes <= largest_text) {
    return std::nullopt;
  }
  return Error{path, 0, 0, said("the needle chart of {} rows would be larger than 1 GiB", chart.rows().size()),
               tr("knit fewer times")};
}

Error named_after(const std::string& path, Error error) {
  error.file = path;
  return error;
}

Result<std::vector<OutputFile>> one_file(const std::string& path, std::string bytes) {
  std::vector<OutputFile> files;
  files.push_back(OutputFile{path, std::move(bytes)});
  return files;
}

} // namespace

Result<std::vector<Sheet>> pages_of_chart(const Document& document, const Profile& profile, const ChartWishes& wishes) {
  const ChartRows chart(document, profile, wishes);
  if (Failure failure = too_many_rows({}, chart.rows().size(), most_rows_on_pages)) {
    return *failure;
  }
  return chart_sheets(chart);
}

Result<std::vector<OutputFile>> needle_files(const Document& document, const Profile& profile, const std::string& path,
                                             const ChartWishes& wishes) {
  const std::string extension = extension_in(path);
  const bool as_pages = extension == ".pdf";
  const bool as_html = extension == ".html" || extension == ".htm";
  if (!as_pages && !as_html && extension != ".csv" && extension != ".txt") {
    return Error{path, 0, 0, said("'{}' is no form of the needle chart", extension),
                 tr("allowed: .pdf, .html, .csv, .txt")};
  }
  if (as_pages) {
    const auto pages = pages_of_chart(document, profile, wishes);
    return pages ? files_of_pages(*pages, path) : Result<std::vector<OutputFile>>(named_after(path, pages.error()));
  }
  const ChartRows chart(document, profile, wishes);
  if (as_html) {
    const Failure failure = too_many_rows(path, chart.rows().size(), most_rows_in_html);
    return failure ? Result<std::vector<OutputFile>>(*failure) : one_file(path, chart_html(chart));
  }
  if (Failure failure = too_large_a_text(path, chart)) {
    return *failure;
  }
  return one_file(path, extension == ".csv" ? chart_csv(chart) : chart_text(chart));
}

} // namespace punchwright
