// punchwright explain: what went wrong, from what the knitter sees (docs/file-forms.md has the picture's form).
#include "cli/action_json.hpp"
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "diagnosis/diagnosis.hpp"
#include "files/files.hpp"
#include "sheets/knitted_picture.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

namespace punchwright::cli {
namespace {

constexpr std::size_t largest_picture = std::size_t{8} * 1024 * 1024; // bytes
constexpr std::size_t most_rows = 4'000;                              // of the knitting that is searched

Json names_of(const std::vector<Needle>& needles) {
  Json names = Json::array();
  for (const Needle needle : needles) {
    names.push_back(name_of(needle));
  }
  return names;
}

Json json_of(const Departure& departure, const StepList& list) {
  const bool of_a_step = departure.kind != DepartureKind::hole_wrong && departure.kind != DepartureKind::stitch_slipped;
  Json entry;
  entry["kind"] = word_for(departure.kind);
  entry["step"] = of_a_step ? Json(departure.step + 1) : Json(nullptr);
  entry["row"] = departure.row > 0 ? Json(departure.row) : Json(nullptr);
  entry["column"] = departure.column > 0 ? Json(departure.column) : Json(nullptr);
  entry["needles"] = names_of(departure.needles);
  entry["text"] = words_of(departure, list);
  return entry;
}

Json json_of(const Explanation& explanation, const StepList& list) {
  Json entry;
  entry["weight"] = explanation.weight;
  entry["departures"] = Json::array();
  for (const Departure& departure : explanation.departures) {
    entry["departures"].push_back(json_of(departure, list));
  }
  const Remedy& remedy = explanation.remedy;
  entry["remedy"] = Json{{"back_to_row", remedy.back_to_row},
                         {"ravel_rows", remedy.ravel_rows},
                         {"carriage", word_for_side(remedy.carriage)},
                         {"card_row", remedy.card_row > 0 ? Json(remedy.card_row) : Json(nullptr)},
                         {"counter", remedy.counter},
                         {"needles", names_of(remedy.forward)},
                         {"text", remedy.text}};
  return entry;
}

std::string as_json(const Diagnosis& diagnosis, const StepList& list) {
  std::string text =
      fmt::format(R"({{"format":1,"as_planned":{},"tried":{},"complete":{},"explanations":[)",
                  diagnosis.as_planned ? "true" : "false", diagnosis.tried, diagnosis.complete ? "true" : "false");
  const char* separator = "\n";
  for (const Explanation& explanation : diagnosis.explanations) {
    text += separator + json_of(explanation, list).dump(-1, ' ', false, Json::error_handler_t::replace);
    separator = ",\n";
  }
  return text + "\n]}\n";
}

std::string as_text(const Diagnosis& diagnosis, const StepList& list) {
  if (diagnosis.as_planned) {
    return std::string(tr("What you see is the fabric as planned, as far as it is marked.")) + '\n';
  }
  std::string search = words_of_search(diagnosis);
  search += search.empty() ? "" : "\n";
  if (diagnosis.explanations.empty()) {
    return said("No slip in the steps explains what you see; {} were tried. Mark '?' where you are not sure, and look "
                "again at the rows around the lowest fault.",
                diagnosis.tried) +
           '\n' + search;
  }
  std::string text = diagnosis.explanations.size() == 1 ? tr("This explains what you see:")
                                                        : tr("These explain what you see, the likeliest first:");
  text += '\n';
  auto out = std::back_inserter(text);
  int number = 0;
  for (const Explanation& explanation : diagnosis.explanations) {
    fmt::format_to(out, "\n{:>3}. ", ++number);
    for (std::size_t index = 0; index < explanation.departures.size(); ++index) {
      const std::string words = words_of(explanation.departures[index], list);
      fmt::format_to(out, "{}\n", index == 0 ? words : "     " + said("And: {}", words));
    }
    fmt::format_to(out, "     {}\n", said("Remedy: {}", explanation.remedy.text));
  }
  return text + (search.empty() ? "" : "\n" + search);
}

} // namespace

int explain_fabric(const ExplainWishes& wishes) {
  const auto opened = open_file(wishes.file);
  if (!opened) {
    return refuse(opened.error());
  }
  const Document& document = opened->document;
  const auto picture = read_file(wishes.seen, largest_picture);
  if (!picture) {
    return refuse(picture.error());
  }
  const auto seen = read_seen(*picture, name_for_people(wishes.seen), stitches_of(document), wishes.side);
  if (!seen) {
    return refuse(seen.error());
  }
  const RowsToKnit rows = rows_to_knit(document, opened->profile);
  if (rows.rows.size() > most_rows) {
    return refuse(Error{wishes.file, 0, 0, said("{} rows are too many to search", rows.rows.size()),
                        said("up to {} are allowed; knit fewer times", most_rows)});
  }
  if (first_needle_of(document) < opened->profile.leftmost() ||
      last_needle_of(document) > opened->profile.rightmost()) {
    return refuse(Error{wishes.file, 0, 0, tr("the piece doesn't fit on the bed"), tr("see punchwright check")});
  }
  const Setting setting = setting_of(document, opened->profile, rows);
  const Diagnosis diagnosis = what_went_wrong(setting, *seen);
  if (!wishes.picture.empty() && !diagnosis.explanations.empty()) {
    // One without a fabric of its own (a stitch that slipped by itself) comes alone.
    const auto drawn =
        std::ranges::find_if(diagnosis.explanations, [](const auto& one) { return one.fabric != nullptr; });
    if (drawn == diagnosis.explanations.end()) {
      return refuse(Error{wishes.picture, 0, 0, tr("the explanation has no fabric to draw"),
                          tr("a stitch slipped by itself: leave --picture out")});
    }
    const auto files = knitted_files(*drawn->fabric, document, wishes.picture, wishes.side);
    if (const int written = write_quietly(files); written != done) {
      return written;
    }
  }
  if (!print(wishes.json ? as_json(diagnosis, setting.steps) : as_text(diagnosis, setting.steps))) {
    return cannot;
  }
  return diagnosis.as_planned || !diagnosis.explanations.empty() ? done : faults_found;
}

} // namespace punchwright::cli
