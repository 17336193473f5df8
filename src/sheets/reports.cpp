// The text of the check and of the rows.
#include "sheets/reports.hpp"

#include "plan/plan.hpp"
#include "plan/reasons.hpp"
#include "sheets/chart_words.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright {
namespace {

std::string summary_of(const std::vector<Finding>& findings) {
  const auto of = [&](Severity severity) { return std::ranges::count(findings, severity, &Finding::severity); };
  const long faults = of(Severity::fault);
  const long warnings = of(Severity::warning);
  const long notes = of(Severity::note);
  return fmt::format("{}, {}, {}", faults == 0 ? tr("no faults") : said_count(faults, "{} fault", "{} faults"),
                     warnings == 0 ? tr("no warnings") : said_count(warnings, "{} warning", "{} warnings"),
                     notes == 0 ? tr("no notes") : said_count(notes, "{} note", "{} notes"));
}

// As wide as its words are; the English ones have these widths.
struct RowColumns {
  std::size_t row = std::max<std::size_t>(5, characters_in(tr("row")));
  std::size_t drawn = std::max<std::size_t>(5, characters_in(tr("drawn")));
  std::size_t travel = std::max({characters_in(travel_words(Travel::leftwards)),
                                 characters_in(travel_words(Travel::rightwards)), characters_in(tr("travel"))});
  std::size_t yarns = std::max<std::size_t>(5, characters_in(tr("yarns")));
  std::size_t card = std::max<std::size_t>(4, characters_in(tr("card")));
};

} // namespace

const char* word_for(Travel travel) {
  return travel == Travel::leftwards ? noted("leftwards") : noted("rightwards");
}

std::string keys_of(const Pass& pass) {
  std::string yarns;
  for (const char yarn : {pass.main, pass.contrast}) {
    if (yarn != 0) {
      yarns += yarn;
    }
  }
  return yarns;
}

// A key is found by file and line, as in errors.
void check_report(const std::vector<Finding>& findings, const Document& document, const Profile& profile,
                  const std::string& file, const TextTaker& take) {
  for (const FindingGroup& group : gathered(findings)) {
    const Finding& finding = findings[group.first];
    const Words words = words_of(group, findings, document, profile);
    const std::string place = finding.line > 0 ? fmt::format("{}:{}: ", file, finding.line) : std::string();
    take(fmt::format("{}: {}{}\n    {}\n", tr(name_of(finding.severity).data()), place, words.text, words.remedy));
  }
  take(fmt::format("{}: {}\n", file, summary_of(findings)));
}

void rows_table(const Document& document, const Profile& profile, const RowsToKnit& rows, const TextTaker& take) {
  const RowColumns columns;
  take(fmt::format("{:>{}}  {:>{}}  {:<{}}  {:<{}}  {:>{}}  {}\n", tr("row"), columns.row, tr("drawn"), columns.drawn,
                   tr("travel"), columns.travel, tr("yarns"), columns.yarns, tr("card"), columns.card,
                   tr("needles that knit contrast")));
  int setup = 0;
  for (const SetupRow& row : setup_rows(document, profile)) {
    take(fmt::format("  {:<{}}-  {:<{}}  {:<{}}  {:>{}}  {}\n", said("set {}", ++setup), columns.row + columns.drawn,
                     travel_words(row.travel), columns.travel, row.main ? std::string(1, *row.main) : "-",
                     columns.yarns, "-", columns.card,
                     row.selects ? (row.main ? tr("knits plain and selects row 1") : tr("free pass, stores row 1"))
                                 : tr("plain row")));
  }
  const std::array<std::string, 2> travels = {std::string(travel_words(Travel::leftwards)),
                                              std::string(travel_words(Travel::rightwards))};
  int number = 0;
  for (const RowToKnit& row : rows.rows) {
    ++number;
    std::string yarns;
    for (const Pass& pass : passes_of(row)) {
      yarns += yarns.empty() ? "" : "+";
      yarns += keys_of(pass);
    }
    const auto runs = runs_of(needles_in_row(document, profile, row));
    take(fmt::format("{:>{}}  {:>{}}  {:<{}}  {:<{}}  {:>{}}  {}\n", number, columns.row,
                     row.why == Why::drawn ? std::to_string(row.drawn + 1) : "-", columns.drawn,
                     travels[row.travel == Travel::leftwards ? 0 : 1], columns.travel, yarns, columns.yarns,
                     row.card_row > 0 ? std::to_string(row.card_row) : "-", columns.card,
                     row.why == Why::drawn ? text_of(runs) : reason_for(row.why)));
  }
}

} // namespace punchwright
