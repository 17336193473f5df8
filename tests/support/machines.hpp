// Machines for tests, small and without hidden defaults: what a test needs of a profile it says itself.
#pragma once

#include "machine/profile.hpp"

namespace punchwright::test {

// Selects for the next pass, end needles in every pattern row, 24-stitch card.
inline Profile card_machine() {
  Profile profile;
  profile.name = "card machine";
  profile.needles = 200;
  profile.card = CardReader{};
  return profile;
}

// No card, two feeders, no end needles.
inline Profile by_hand() {
  Profile profile;
  profile.name = "by hand";
  profile.needles = 150;
  profile.selects = Selects::by_hand;
  profile.end_needles = false;
  return profile;
}

} // namespace punchwright::test
