// punchwright check: the findings of one design or of several, in words or as JSON (docs/json-forms.md).
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "rules/findings.hpp"
#include "sheets/reports.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <fmt/format.h>
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

// "[" and a finding a line; the bracket that closes stands on a line of its own.
void add_findings(Printer& printer, const std::vector<Finding>& findings, const OpenedDocument& opened) {
  const char* separator = "[\n";
  for (const Finding& finding : findings) {
    printer.add(separator + json_of(finding, opened.document, opened.profile).dump());
    separator = ",\n";
  }
  printer.add(findings.empty() ? "[\n]" : "\n]");
}

std::vector<Finding> findings_of(const OpenedDocument& opened) {
  return with_notes(check(opened.document, opened.profile), opened.notes);
}

bool is_faulty(const std::vector<Finding>& findings) {
  return std::ranges::count(findings, Severity::fault, &Finding::severity) > 0;
}

void add_report(Printer& printer, const std::vector<Finding>& findings, const OpenedDocument& opened,
                const std::string& file) {
  check_report(findings, opened.document, opened.profile, name_for_people(file),
               [&](std::string_view text) { printer.add(text); });
}

int check_one(const std::string& file, bool json) {
  const auto opened = open_file(file);
  if (!opened) {
    return refuse(opened.error());
  }
  const auto findings = findings_of(*opened);
  Printer printer;
  if (json) {
    printer.add(R"({"format":1,"findings":)");
    add_findings(printer, findings, *opened);
    printer.add("}\n");
  } else {
    add_report(printer, findings, *opened, file);
  }
  return !printer.finish() ? cannot : is_faulty(findings) ? faults_found : done;
}

struct Counts {
  std::ptrdiff_t good = 0;
  std::ptrdiff_t faulty = 0;
  std::ptrdiff_t unread = 0;
};

std::string in_words(const Counts& counts) {
  std::string text = said("{} files: {} without faults", counts.good + counts.faulty + counts.unread, counts.good);
  if (counts.faulty > 0) {
    text += ", " + said("{} with faults", counts.faulty);
  }
  if (counts.unread > 0) {
    text += ", " + said("{} not to be read", counts.unread);
  }
  return text + '\n';
}

// One after the other; one that can't be read doesn't keep the others from being checked.
int check_several(const std::vector<std::string>& files, bool json) {
  Counts counts;
  Printer printer;
  printer.add(json ? R"({"format":1,"files":[)"
                     "\n"
                   : "");
  for (std::size_t place = 0; place < files.size(); ++place) {
    const std::string& file = files[place];
    const Json name = name_for_people(file);
    const auto opened = open_file(file);
    if (!opened) {
      refuse(opened.error());
      ++counts.unread;
      printer.add(json ? fmt::format(R"({{"file":{},"error":{}}})", name.dump(), Json(opened.error().text()).dump())
                       : "");
    } else {
      const auto findings = findings_of(*opened);
      ++(is_faulty(findings) ? counts.faulty : counts.good);
      if (json) {
        printer.add(fmt::format(R"({{"file":{},"findings":)", name.dump()));
        add_findings(printer, findings, *opened);
        printer.add("}");
      } else {
        add_report(printer, findings, *opened, file);
      }
    }
    printer.add(!json ? "" : place + 1 < files.size() ? ",\n" : "\n]}\n");
  }
  printer.add(json || talk() == Talk::quiet ? "" : in_words(counts));
  return !printer.finish() || counts.unread > 0 ? cannot : counts.faulty > 0 ? faults_found : done;
}

} // namespace

int check_files(const CheckWishes& wishes) {
  return wishes.files.size() == 1 ? check_one(wishes.files.front(), wishes.json)
                                  : check_several(wishes.files, wishes.json);
}

} // namespace punchwright::cli
