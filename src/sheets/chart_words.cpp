// The chart's sentences. Kept plain and short: they are read across a machine, with both hands busy.
#include "sheets/chart_words.hpp"

#include "plan/reasons.hpp"
#include "sheets/reports.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <iterator>

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
  return tr(word_for(travel));
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
    return said("all knit {}", chart.yarn_name(row.main));
  }
  if (row.all_contrast) {
    return said("all knit {}", chart.yarn_name(row.contrast));
  }
  return "";
}

std::string_view setup_words(const SetupRow& row) {
  if (!row.main) {
    return tr("free pass, knits nothing and stores card row 1");
  }
  return row.selects ? tr("knits plain and selects card row 1") : tr("plain row");
}

std::string title_of(const ChartRows& chart) {
  const std::string title = one_line(chart.document().title);
  return title.empty() ? tr("Needle chart") : title;
}

std::string machine_of(const ChartRows& chart) {
  const Profile& profile = chart.profile();
  return one_line(profile.title.empty() ? profile.name : title_of_machine(profile));
}

std::string piece_words(const ChartRows& chart) {
  const std::string first = name_of(first_needle_of(chart.document()));
  const std::string last = name_of(last_needle_of(chart.document()));
  const std::string needles = said_count(chart.stitches(), "{} needle", "{} needles");
  const std::string rows = rows_counted(std::ssize(chart.rows()));
  return chart.document().piece.carriage == Side::right
             ? said("Piece {}–{}, {}; {}, the carriage begins on the right", first, last, needles, rows)
             : said("Piece {}–{}, {}; {}, the carriage begins on the left", first, last, needles, rows);
}

std::string_view selection_words(const Profile& profile) {
  switch (profile.card ? profile.selects : Selects::by_hand) {
  case Selects::next_pass:
    return tr("The card brings the needles forward in the pass before: compare before you knit.");
  case Selects::same_pass: return tr("The card selects the needles in the pass that knits: compare with the cloth.");
  case Selects::by_hand: return tr("Bring the listed needles forward by hand before the carriage passes.");
  }
  return "";
}

std::string_view mirror_words() {
  return tr("As you see the bed: its left is on the left, the purl side faces you. "
            "The knit side shows the mirror image.");
}

std::string_view care_words() {
  return tr("Care: mind eyes and fingers near latch needles. Weights come off before the work does. "
            "The maker's manual goes before this sheet.");
}

} // namespace punchwright
