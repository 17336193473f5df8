// punchwright steps: the numbered steps at the machine, as text, as JSON (docs/json-forms.md) or on paper.
#include "cli/action_json.hpp"
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "plan/steps.hpp"
#include "words/words.hpp"

#include <fmt/format.h>

namespace punchwright::cli {
namespace {

const char* word_for(StepPart part) {
  switch (part) {
  case StepPart::setting_up: return "setting-up";
  case StepPart::knitting: return "knitting";
  case StepPart::end: return "end";
  }
  return "";
}

Json json_of_step(int number, const Step& step) {
  Json entry;
  entry["step"] = number;
  entry["kind"] = word_for(step.kind);
  entry["part"] = word_for(step.part);
  entry["text"] = step.text;
  entry["rows"] = step.first_row > 0 ? Json::array({step.first_row, step.last_row}) : Json(nullptr);
  entry["counter"] = step.counter;
  entry["carriage"] = word_for_side(step.carriage);
  entry["actions"] = Json::array();
  for (const MachineAction& action : step.actions) {
    entry["actions"].push_back(json_of(action));
  }
  return entry;
}

void add_json(Printer& printer, const StepList& list) {
  printer.add(fmt::format(R"({{"format":1,"carriage":"{}","rows_before":{},"steps":[)", word_for_side(list.carriage),
                          list.rows_before));
  int number = 0;
  for (const Step& step : list.steps) {
    printer.add(number == 0 ? "\n" : ",\n");
    printer.add(json_of_step(++number, step).dump(-1, ' ', false, Json::error_handler_t::replace));
  }
  printer.add("\n]}\n");
}

} // namespace

int list_steps(const StepsWishes& wishes) {
  const auto opened = open_file(wishes.file);
  if (!opened) {
    return refuse(opened.error());
  }
  if (wishes.json && !wishes.output.empty()) {
    return refuse(
        Error{{}, 0, 0, tr("--json and --output at once"), tr("JSON goes to standard output: leave one out")});
  }
  const RowsToKnit rows = rows_to_knit(opened->document, opened->profile);
  constexpr std::size_t most_rows = 100'000; // each with its sentences in memory
  if (rows.rows.size() > most_rows) {
    return refuse(Error{wishes.file, 0, 0, said("{} rows to knit are too many for a list of steps", rows.rows.size()),
                        said("up to {} are allowed; knit fewer times", most_rows)});
  }
  int code = done;
  if (!wishes.output.empty()) {
    code = write_all(step_files(opened->document, opened->profile, wishes.output));
  } else {
    const StepList list = steps_of(opened->document, opened->profile, rows);
    Printer printer;
    wishes.json ? add_json(printer, list) : printer.add(text_of(list, opened->document, opened->profile));
    code = printer.finish() ? done : cannot;
  }
  return code == done ? code_for_faults(check(opened->document, opened->profile, rows), wishes.file) : code;
}

} // namespace punchwright::cli
