// Whatever hands do, in whatever order: no loop comes from nothing, a needle out of work holds none.
// PUNCHWRIGHT_ACTIONS sets how many are tried (a million nightly); the seed is printed with a failure.
#include "knitting/fabric.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <cstdlib>
#include <doctest/doctest.h>
#include <numeric>

using namespace punchwright;

namespace {

constexpr int needles = 14;

MachineState random_machine(test::Dice& dice) {
  Profile profile = test::card_machine();
  profile.needles = needles;
  profile.feeders = 1 + dice.throw_one(2);
  profile.selects =
      std::array{Selects::next_pass, Selects::same_pass, Selects::by_hand}[static_cast<std::size_t>(dice.throw_one(3))];
  profile.card->repeat = 1 + dice.throw_one(6);
  profile.card->first_needle = Needle{dice.throw_one(9) - 6};
  profile.card->hole = dice.heads() ? HoleMeans::contrast : HoleMeans::main;
  PunchedCard card(profile.card->repeat, 1 + dice.throw_one(5));
  for (int row = 1; row <= card.rows(); ++row) {
    for (int column = 1; column <= card.columns(); ++column) {
      card.set(row, column, dice.heads());
    }
  }
  const auto shared = dice.throw_one(8) == 0 ? nullptr : std::make_shared<const PunchedCard>(std::move(card));
  return machine_as_found(profile, dice.heads() ? Side::left : Side::right, shared, dice.heads());
}

Needle random_needle(test::Dice& dice) {
  return Needle{dice.throw_one(needles + 2) - needles / 2 - 1}; // one beyond the bed on either side
}

NeedleSpan random_span(test::Dice& dice) {
  const Needle first = random_needle(dice);
  return {first, Needle{first.position + dice.throw_one(4)}};
}

MachineAction random_action(test::Dice& dice) {
  const char yarn = "ABC"[dice.throw_one(3)];
  switch (dice.throw_one(26)) {
  case 0: return HangOn{random_span(dice), yarn};
  case 1: return SetSelection{dice.heads(), dice.heads()};
  case 2: return SetKnitting{static_cast<KnitSetting>(dice.throw_one(4))};
  case 3: return LockCard{dice.heads()};
  case 4: return TurnCard{dice.throw_one(8) - 1};
  case 5: return SetLength{dice.heads()};
  case 6:
  case 7: return ThreadYarn{dice.throw_one(4), yarn};
  case 8: return TakeOut{dice.throw_one(4)};
  case 9: return CutYarn{yarn};
  case 10: return TransferLoop{random_needle(dice), random_needle(dice)};
  case 11: return LiftFloat{Needle{dice.throw_one(needles) - needles / 2}};
  case 12: return SetCounter{dice.throw_one(5)};
  case 13: return KnitPass{true};
  case 14:
  case 15: return MoveNeedles{{random_span(dice), random_span(dice)}, static_cast<NeedlePosition>(dice.throw_one(4))};
  case 16: return TakeWorkOff{};
  case 17:
  case 18: return HangWorkBack{{random_span(dice)}};
  case 19: return LiftLoop{random_needle(dice), random_needle(dice)};
  default: return KnitPass{};
  }
}

int loops_on(const MachineState& state) {
  const auto add = [](int sum, const auto& held) { return sum + held.loops; };
  const int on_bed = std::accumulate(state.needles.begin(), state.needles.end(), 0, add);
  return std::accumulate(state.off.begin(), state.off.end(), on_bed, add);
}

// Loops that the events account for.
int loops_made(const MachineState& before, const std::vector<Event>& events) {
  int made = 0;
  for (const Event& event : events) {
    if (const auto* hung = std::get_if<LoopsHungOn>(&event)) {
      made += hung->needles.last.position - hung->needles.first.position + 1;
    } else if (const auto* dropped = std::get_if<LoopsDropped>(&event)) {
      made -= dropped->loops;
    } else if (std::holds_alternative<LoopCastOn>(event) || std::holds_alternative<LoopLifted>(event)) {
      ++made;
    } else if (const auto* pass = std::get_if<PassMade>(&event)) {
      // A needle with several loops knits them together.
      for (std::size_t needle = 0; needle < pass->cells.size(); ++needle) {
        if (pass->cells[needle].yarn != 0 && before.needles[needle].loops > 1) {
          made -= before.needles[needle].loops - 1;
        }
      }
    }
  }
  return made;
}

void check_needles(const MachineState& state) {
  for (const BedNeedle& needle : state.needles) {
    if (needle.position == NeedlePosition::out_of_work) {
      CHECK(needle.loops == 0);
    }
    CHECK((needle.loops == 0) == (needle.yarn == 0));
  }
  CHECK((state.feeders[0] == 0 || state.feeders[0] != state.feeders[1]));
  for (const HangingYarn& hanging : state.hanging) {
    CHECK(hanging.yarn != state.feeders[0]);
    CHECK(hanging.yarn != state.feeders[1]);
  }
}

void check_pass(const MachineState& before, const MachineState& after, const std::vector<Event>& events) {
  for (const Event& event : events) {
    const auto* pass = std::get_if<PassMade>(&event);
    if (pass == nullptr) {
      continue;
    }
    for (std::size_t needle = 0; needle < pass->cells.size(); ++needle) {
      const Made& cell = pass->cells[needle];
      if (before.needles[needle].position == NeedlePosition::out_of_work) {
        CHECK(cell == Made{});
      }
      if (cell.yarn != 0) { // it came from a feeder, and hangs on the needle
        CHECK((cell.yarn == before.feeders[0] || cell.yarn == before.feeders[1]));
        CHECK(after.needles[needle].loops == 1);
        CHECK(after.needles[needle].yarn == cell.yarn);
        CHECK(cell.cast_on == (before.needles[needle].loops == 0));
      }
      if (cell.missing) {
        CHECK(before.needles[needle].loops > 0);
        CHECK(after.needles[needle].loops == 0);
      }
    }
  }
}

} // namespace

TEST_CASE("loops are never created from nothing, and none hangs on a needle out of work") {
  const char* const wished = std::getenv("PUNCHWRIGHT_ACTIONS");
  const int actions = wished != nullptr ? std::atoi(wished) : 100'000;
  constexpr int actions_a_machine = 500;
  int refused = 0;
  int passes = 0;
  for (int seed = 1; seed * actions_a_machine <= actions; ++seed) {
    CAPTURE(seed);
    test::Dice dice(static_cast<std::uint64_t>(seed));
    MachineState state = random_machine(dice);
    Fabric fabric(state);
    for (int count = 0; count < actions_a_machine; ++count) {
      CAPTURE(count);
      const MachineAction action = random_action(dice);
      const MachineState before = state;
      Outcome outcome = carry_out(std::move(state), action);
      if (outcome.refusal) {
        ++refused;
        CHECK(outcome.state == before);
        CHECK(outcome.events.empty());
      }
      state = std::move(outcome.state);
      CHECK(loops_on(state) == loops_on(before) + loops_made(before, outcome.events));
      check_needles(state);
      check_pass(before, state, outcome.events);
      CHECK((state.carriage == before.carriage) == (!std::holds_alternative<KnitPass>(action) || outcome.refusal));
      passes += std::holds_alternative<KnitPass>(action) && !outcome.refusal ? 1 : 0;
      fabric.add(outcome.events);
    }
    for (int row = 0; row < fabric.rows(); ++row) {
      for (const FabricFloat& one : fabric.floats(row)) {
        CHECK(one.stitches >= 1);
        CHECK(one.stitches <= one.last.position - one.first.position + 1);
        CHECK(one.longest_stretch() <= one.stitches);
      }
      for (Needle needle = fabric.leftmost(); needle.position < fabric.leftmost().position + needles;
           ++needle.position) {
        for (const StitchPlace& below :
             fabric.at(row, needle).yarn != 0 ? fabric.hangs_on({row, needle}) : std::vector<StitchPlace>{}) {
          CHECK(below.row < row);
          CHECK(fabric.at(below.row, below.needle).yarn != 0);
        }
      }
    }
  }
  CHECK(refused > actions / 50); // both kinds are met
  CHECK(passes > actions / 10);
}
