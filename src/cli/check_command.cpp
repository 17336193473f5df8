// punchwright check: the findings, in words or as JSON (docs/json-forms.md).
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "rules/findings.hpp"
#include "sheets/reports.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

namespace punchwright::cli {
namespace {

using Json = nlohmann::ordered_json;

// Contrast ratios: more digits than anybody can see.
double hundredths(double number) {
  return std::round(number * 100.0) / 100.0;
}

bool is_float(FindingId id) {
  return id == FindingId::float_too_long || id == FindingId::float_accepted;
}

bool counts_rows(FindingId id) {
  return id == FindingId::card_longer_than_blank || id == FindingId::card_too_short_for_loop ||
         id == FindingId::card_held;
}

void add_place(Json& entry, const Finding& finding) {
  const bool has_columns = finding.first_column >= 0;
  if (is_float(finding.id) || has_columns || finding.first_needle) {
    entry["on"] = finding.on_piece ? "piece" : "repeat";
  }
  if (finding.first_needle) {
    entry["needles"] = {name_of(*finding.first_needle), name_of(*finding.last_needle)};
    entry["times"] = finding.times;
  } else if (has_columns) {
    entry["columns"] = {finding.first_column + 1, finding.last_column + 1};
  }
}

Json json_of(const Finding& finding, const Document& document, const Profile& profile) {
  Json entry;
  entry["id"] = stable_id(finding.id);
  entry["severity"] = name_of(finding.severity);
  if (finding.row >= 0) {
    entry["row"] = finding.row + 1;
  }
  if (finding.yarn != 0) {
    entry["yarn"] = std::string(1, finding.yarn);
  }
  add_place(entry, finding);
  if (finding.id == FindingId::yarns_too_alike) {
    entry["on_yarn"] = std::string(1, finding.other);
    for (const RowRange& range : rows_of_pair(document, finding.other, finding.yarn)) {
      entry["bands"].push_back({range.first + 1, range.last + 1});
    }
  }
  if (finding.id == FindingId::loop_change_undone) {
    entry["rows"] = finding.times;
  }
  if (finding.stitches > 0) {
    entry[counts_rows(finding.id) ? "rows" : "stitches"] = finding.stitches;
  }
  if (is_float(finding.id)) {
    entry["mm"] = finding.stitches * document.gauge.stitch_mm();
  }
  if (finding.limit > 0) {
    entry["limit"] = finding.limit;
  }
  if (finding.id == FindingId::card_longer_than_blank) {
    entry["cards"] = finding.times;
  }
  if (finding.id == FindingId::card_too_short_for_loop) {
    entry["circuits"] = finding.times;
  }
  if (finding.line > 0) {
    entry["line"] = finding.line;
  }
  if (finding.number > 0) {
    entry["ratio"] = hundredths(finding.number);
  }
  const Words words = words_of(finding, document, profile);
  entry["text"] = words.text;
  entry["remedy"] = words.remedy;
  return entry;
}

void add_json(Printer& printer, const std::vector<Finding>& findings, const OpenedDocument& opened) {
  printer.add(R"({"format":1,"findings":[)");
  const char* separator = "\n";
  for (const Finding& finding : findings) {
    printer.add(separator + json_of(finding, opened.document, opened.profile).dump());
    separator = ",\n";
  }
  printer.add("\n]}\n");
}

} // namespace

int check_file(const CheckWishes& wishes) {
  const auto opened = open_file(wishes.file);
  if (!opened) {
    return refuse(opened.error());
  }
  const auto findings = with_notes(check(opened->document, opened->profile), opened->notes);
  const std::string file = name_for_people(wishes.file);
  Printer printer;
  if (wishes.json) {
    add_json(printer, findings, *opened);
  } else {
    check_report(findings, opened->document, opened->profile, file, [&](std::string_view text) { printer.add(text); });
  }
  if (!printer.finish()) {
    return cannot;
  }
  const bool faulty = std::ranges::count(findings, Severity::fault, &Finding::severity) > 0;
  return faulty ? faults_found : done;
}

} // namespace punchwright::cli
