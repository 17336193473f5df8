// punchwright rows: the rows to knit, as a table or as JSON (docs/json-forms.md).
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "plan/plan.hpp"
#include "plan/reasons.hpp"
#include "sheets/reports.hpp"

#include <nlohmann/json.hpp>

namespace punchwright::cli {
namespace {

using Json = nlohmann::ordered_json;

Json names_of(const std::vector<Needle>& needles) {
  Json names = Json::array();
  for (const Needle needle : needles) {
    names.push_back(name_of(needle));
  }
  return names;
}

Json json_of(int number, const RowToKnit& row, const std::vector<Needle>& needles, const std::vector<Needle>& caught) {
  Json entry;
  entry["row"] = number;
  entry["drawn"] = row.why == Why::drawn ? Json(row.drawn + 1) : Json(nullptr);
  entry["why"] = word_for(row.why);
  entry["travel"] = word_for(row.travel);
  entry["main"] = std::string(1, row.main);
  entry["contrast"] = row.contrast != 0 ? Json(std::string(1, row.contrast)) : Json(nullptr);
  entry["needles"] = names_of(needles);
  if (!caught.empty()) {
    entry["caught"] = names_of(caught);
  }
  entry["card_row"] = row.card_row > 0 ? Json(row.card_row) : Json(nullptr);
  entry["passes"] = Json::array();
  for (const Pass& pass : passes_of(row)) {
    entry["passes"].push_back(Json{{"yarns", keys_of(pass)}, {"travel", word_for(pass.travel)}});
  }
  return entry;
}

void add_json(Printer& printer, const OpenedDocument& opened, const RowsToKnit& rows) {
  printer.add(R"({"format":1,"rows":[)");
  int number = 0;
  for (const RowToKnit& row : rows.rows) {
    printer.add(number == 0 ? "\n" : ",\n");
    ++number;
    printer.add(json_of(number, row, needles_in_row(opened.document, opened.profile, row),
                        caught_needles(opened.document, opened.profile, row))
                    .dump());
  }
  printer.add("\n],\"setup\":[");
  const char* separator = "\n";
  for (const SetupRow& row : setup_rows(opened.document, opened.profile)) {
    Json entry;
    entry["travel"] = word_for(row.travel);
    entry["main"] = row.main ? Json(std::string(1, *row.main)) : Json(nullptr);
    entry["selects"] = row.selects;
    printer.add(separator + entry.dump());
    separator = ",\n";
  }
  printer.add("\n]}\n");
}

} // namespace

int list_rows(const RowsWishes& wishes) {
  const auto opened = open_file(wishes.file);
  if (!opened) {
    return refuse(opened.error());
  }
  const RowsToKnit rows = rows_to_knit(opened->document, opened->profile);
  Printer printer;
  if (wishes.json) {
    add_json(printer, *opened, rows);
  } else {
    rows_table(opened->document, opened->profile, rows, [&](std::string_view text) { printer.add(text); });
  }
  return printer.finish() ? code_for_faults(check(opened->document, opened->profile, rows), wishes.file) : cannot;
}

} // namespace punchwright::cli
