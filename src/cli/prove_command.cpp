// punchwright prove: knits the design on the machine before anybody punches a card, and says what was compared.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "files/files.hpp"
#include "knitting/card_reading.hpp"
#include "proof/proof.hpp"

#include <fmt/format.h>

namespace punchwright::cli {
namespace {

constexpr std::size_t largest_list = std::size_t{64} * 1024 * 1024; // bytes
constexpr long long most_stitches = 100'000'000;                    // of the fabric, two bytes each

} // namespace

int prove_file(const ProveWishes& wishes) {
  const auto opened = open_file(wishes.file);
  if (!opened) {
    return refuse(opened.error());
  }
  const RowsToKnit rows = rows_to_knit(opened->document, opened->profile);
  if (static_cast<long long>(rows.rows.size()) * opened->profile.needles > most_stitches) {
    return refuse(Error{wishes.file, 0, 0, fmt::format("{} rows are too many to knit here", rows.rows.size()),
                        "knit fewer times"});
  }
  std::shared_ptr<const PunchedCard> card;
  if (!wishes.card.empty()) {
    if (!opened->profile.card || opened->profile.selects == Selects::by_hand) {
      return refuse(Error{wishes.card, 0, 0, "the machine reads no card", "leave --card out"});
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
  if (!print(report(*proof, opened->document, opened->profile))) {
    return cannot;
  }
  return proof->proved() ? done : faults_found;
}

} // namespace punchwright::cli
