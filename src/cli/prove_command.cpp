// punchwright prove: knits the design on the machine before anybody punches a card, and says what was compared.
#include "cli/action_json.hpp"
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "files/files.hpp"
#include "knitting/card_reading.hpp"
#include "proof/proof.hpp"
#include "sheets/knitted_picture.hpp"
#include "words/words.hpp"

#include <filesystem>

namespace punchwright::cli {
namespace {

constexpr std::size_t largest_list = std::size_t{64} * 1024 * 1024; // bytes
constexpr long long most_stitches = 100'000'000;                    // of the fabric, two bytes each

Json text_or_null(char yarn) {
  return yarn != 0 ? Json(std::string(1, yarn)) : Json(nullptr);
}

// Rows are those to knit; those of the setting-up have none.
Json json_of(const Difference& difference, int rows_before) {
  const bool of_a_row =
      difference.kind == DifferenceKind::missing_row || difference.kind == DifferenceKind::surplus_row;
  const bool whole_width = of_a_row || difference.kind == DifferenceKind::loose_yarn;
  const int row = difference.row - rows_before;
  Json entry;
  entry["kind"] = word_for(difference.kind);
  entry["row"] = row > 0 ? Json(row) : Json(nullptr);
  entry["needles"] = whole_width ? Json(nullptr) : Json::array({name_of(difference.first), name_of(difference.last)});
  entry["wanted"] = text_or_null(difference.wanted);
  entry["found"] = text_or_null(difference.found);
  entry["count"] = difference.stitches > 0 ? Json(difference.stitches) : Json(nullptr);
  entry["text"] = words_of(difference, rows_before);
  return entry;
}

bool print_json(const Proof& proof, const Document& document, const Profile& profile) {
  const Comparison& seen = proof.comparison;
  const bool with_card = proof.card && profile.selects != Selects::by_hand;
  Json head;
  head["format"] = 1;
  head["proved"] = proof.proved();
  head["card"] = with_card ? Json{{"rows", proof.card->rows()}, {"columns", proof.card->columns()}} : Json(nullptr);
  head["steps"] = proof.steps.steps.size();
  head["refused"] = proof.refused_step < 0 ? Json(nullptr)
                                           : Json{{"step", proof.refused_step + 1},
                                                  {"text", proof.refusal ? words_of(*proof.refusal) : ""}};
  head["needles"] = stitches_of(document);
  head["rows"] = seen.rows;
  head["rows_before"] = proof.steps.rows_before;
  head["stitches"] = seen.stitches;
  head["selvedges"] = seen.selvedges;
  head["floats"] = seen.floats;
  head["longest_float"] = seen.longest_float;
  head["limit"] = proof.limit;
  const auto text_of = [](const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); };
  std::string text = text_of(head);
  text.pop_back(); // the list of differences comes a line each
  Printer printer;
  printer.add(text + ",\"differences\":[");
  const char* separator = "\n";
  for (const Difference& difference : seen.differences) {
    printer.add(separator + text_of(json_of(difference, proof.steps.rows_before)));
    separator = ",\n";
  }
  printer.add("\n]}\n");
  return printer.finish();
}

} // namespace

int prove_file(const ProveWishes& wishes) {
  if (std::filesystem::path(wishes.file).extension() == ".yoke") {
    return prove_yoke(wishes);
  }
  const auto opened = open_file(wishes.file);
  if (!opened) {
    return refuse(opened.error());
  }
  const RowsToKnit rows = rows_to_knit(opened->document, opened->profile);
  if (static_cast<long long>(rows.rows.size()) * opened->profile.needles > most_stitches) {
    return refuse(
        Error{wishes.file, 0, 0, said("{} rows are too many to knit here", rows.rows.size()), tr("knit fewer times")});
  }
  std::shared_ptr<const PunchedCard> card;
  if (!wishes.card.empty()) {
    if (!opened->profile.card || opened->profile.selects == Selects::by_hand) {
      return refuse(Error{wishes.card, 0, 0, tr("the machine reads no card"), tr("leave --card out")});
    }
    const auto text = read_file(wishes.card, largest_list);
    if (!text) {
      return refuse(text.error());
    }
    auto read = read_punch_list(*text, wishes.card, opened->profile.card->repeat);
    if (!read) {
      return refuse(read.error());
    }
    card = std::make_shared<const PunchedCard>(std::move(read).value());
  }
  const auto proof = prove(opened->document, opened->profile, std::move(card));
  if (!proof) {
    return refuse(proof.error());
  }
  if (!wishes.picture.empty()) {
    const auto files = knitted_files(proof->fabric, opened->document, wishes.picture, wishes.side);
    if (const int written = write_quietly(files); written != done) {
      return written;
    }
  }
  if (!(wishes.json ? print_json(*proof, opened->document, opened->profile)
                    : print(report(*proof, opened->document, opened->profile)))) {
    return cannot;
  }
  return proof->proved() ? done : faults_found;
}

} // namespace punchwright::cli
