// The text of the check and of the rows.
#include "sheets/reports.hpp"

#include "plan/plan.hpp"
#include "plan/reasons.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <tuple>

namespace punchwright {
namespace {

std::string summary_of(const std::vector<Finding>& findings) {
  std::string text;
  for (const auto& [severity, one, many] :
       {std::tuple(Severity::fault, "fault", "faults"), std::tuple(Severity::warning, "warning", "warnings"),
        std::tuple(Severity::note, "note", "notes")}) {
    const auto count = std::ranges::count(findings, severity, &Finding::severity);
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", count == 0 ? "no" : std::to_string(count),
                        count == 1 ? one : many);
  }
  return text;
}

} // namespace

const char* word_for(Travel travel) {
  return travel == Travel::leftwards ? "leftwards" : "rightwards";
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
    take(fmt::format("{}: {}{}\n    {}\n", name_of(finding.severity), place, words.text, words.remedy));
  }
  take(fmt::format("{}: {}\n", file, summary_of(findings)));
}

void rows_table(const Document& document, const Profile& profile, const RowsToKnit& rows, const TextTaker& take) {
  take("  row  drawn  travel      yarns  card  needles that knit contrast\n");
  int setup = 0;
  for (const SetupRow& row : setup_rows(document, profile)) {
    take(fmt::format("  set {}     -  {:<10}  {:<5}     -  {}\n", ++setup, word_for(row.travel),
                     row.main ? std::string(1, *row.main) : "-",
                     row.selects ? (row.main ? "knits plain and selects row 1" : "free pass, stores row 1")
                                 : "plain row"));
  }
  int number = 0;
  for (const RowToKnit& row : rows.rows) {
    ++number;
    std::string yarns;
    for (const Pass& pass : passes_of(row)) {
      yarns += yarns.empty() ? "" : "+";
      yarns += keys_of(pass);
    }
    const auto runs = runs_of(needles_in_row(document, profile, row));
    take(fmt::format("{:>5}  {:>5}  {:<10}  {:<5}  {:>4}  {}\n", number,
                     row.why == Why::drawn ? std::to_string(row.drawn + 1) : "-", word_for(row.travel), yarns,
                     row.card_row > 0 ? std::to_string(row.card_row) : "-",
                     row.why == Why::drawn ? text_of(runs) : reason_for(row.why)));
  }
}

} // namespace punchwright
