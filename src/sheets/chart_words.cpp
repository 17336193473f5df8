// The chart's sentences. Kept plain and short: they are read across a machine, with both hands busy.
#include "sheets/chart_words.hpp"

#include "plan/reasons.hpp"
#include "sheets/text_metrics.hpp"

#include <fmt/format.h>

namespace punchwright {

std::string one_line(std::string_view text) {
  return utf8_of(characters_of(text));
}

std::size_t characters_in(std::string_view text) {
  std::size_t count = 0;
  for (const char byte : text) {
    count += (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U ? 1U : 0U;
  }
  return count;
}

std::string_view arrow_of(Travel travel) {
  return travel == Travel::leftwards ? "←" : "→";
}

std::string_view travel_words(Travel travel) {
  return travel == Travel::leftwards ? "leftwards" : "rightwards";
}

std::string yarn_names(const Pass& pass, const ChartRows& chart) {
  std::string names;
  for (const char key : {pass.main, pass.contrast}) {
    if (key != 0) {
      names += (names.empty() ? "" : " + ") + chart.yarn_name(key);
    }
  }
  return names;
}

std::string remark_of(const RowToKnit& row, const ChartRows& chart) {
  if (row.why != Why::drawn) {
    return std::string(reason_for(row.why));
  }
  if (row.contrast == 0) {
    return fmt::format("all knit {}", chart.yarn_name(row.main));
  }
  if (row.all_contrast) {
    return fmt::format("all knit {}", chart.yarn_name(row.contrast));
  }
  return "";
}

std::string_view setup_words(const SetupRow& row) {
  if (!row.main) {
    return "free pass, knits nothing and stores card row 1";
  }
  return row.selects ? "knits plain and selects card row 1" : "plain row";
}

std::string title_of(const ChartRows& chart) {
  const std::string title = one_line(chart.document().title);
  return title.empty() ? "Needle chart" : title;
}

std::string machine_of(const ChartRows& chart) {
  const Profile& profile = chart.profile();
  return one_line(profile.title.empty() ? profile.name : profile.title);
}

std::string piece_words(const ChartRows& chart) {
  const std::size_t rows = chart.rows().size();
  return fmt::format("Piece {}–{}, {} {}; {} {}, the carriage begins on the {}",
                     name_of(first_needle_of(chart.document())), name_of(last_needle_of(chart.document())),
                     chart.stitches(), chart.stitches() == 1 ? "needle" : "needles", rows, rows == 1 ? "row" : "rows",
                     chart.document().piece.carriage == Side::right ? "right" : "left");
}

std::string_view selection_words(const Profile& profile) {
  switch (profile.card ? profile.selects : Selects::by_hand) {
  case Selects::next_pass: return "The card brings the needles forward in the pass before: compare before you knit.";
  case Selects::same_pass: return "The card selects the needles in the pass that knits: compare with the cloth.";
  case Selects::by_hand: return "Bring the listed needles forward by hand before the carriage passes.";
  }
  return "";
}

} // namespace punchwright
