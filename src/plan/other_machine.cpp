// Choosing the machine, and moving the piece onto it.
#include "plan/other_machine.hpp"

#include "machine/placement.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace punchwright {
namespace {

const Profile& nearest_of_other_kind(const Document& document, const Profile& own) {
  const auto badness = [&](const Profile& profile) {
    const bool holds_repeat = !profile.card || profile.card->repeat % document.grid.width() == 0;
    return std::tuple(!holds_repeat, profile.needles < stitches_of(document),
                      std::abs(profile.pitch_mm - own.pitch_mm));
  };
  const Profile* best = nullptr;
  for (const Profile& profile : built_in_profiles()) {
    if (reads_card(profile) != reads_card(own) && (best == nullptr || badness(profile) < badness(*best))) {
      best = &profile;
    }
  }
  return best != nullptr ? *best : own;
}

} // namespace

bool reads_card(const Profile& profile) {
  return profile.card.has_value() && profile.selects != Selects::by_hand;
}

OnMachine on_other_kind(const Document& document, const Profile& profile) {
  OnMachine there{document, nearest_of_other_kind(document, profile)};
  there.document.profile = there.profile.name;
  Piece& piece = there.document.piece;
  piece.stitches = stitches_of(document);
  piece.first_needle = first_needle_of(document);
  piece.first_column.reset();
  if (*piece.first_needle < there.profile.leftmost() || last_needle_of(document) > there.profile.rightmost()) {
    piece.first_needle.reset(); // to the middle of the other bed
  }
  if (!reads_card(there.profile)) {
    piece.first_column = Placement(document, profile).column_of(first_needle_of(document)) + 1;
    there.document.card.loop = false; // the drawn rows come as often all the same
  }
  return there;
}

} // namespace punchwright
