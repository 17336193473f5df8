// One pass, in the order in which the carriage does it: select from what was stored, knit, move the card on and read
// it.
//
//     selects for the next pass:   | knit what stands forward | card on, read it, bring needles forward |
//     selects in the same pass:    | bring forward what was stored | knit | card on, read and store it |
//
// The card moves on at the beginning of a pass and is read then; a locked one is read again where it stands. So a row
// that was read over the locked card is knitted first, and the first pass after the release reads the second row.
#include "knitting/pass.hpp"

#include <algorithm>

namespace punchwright {
namespace {

bool in_work(const BedNeedle& needle) {
  return needle.position != NeedlePosition::out_of_work;
}

class Carriage {
public:
  Carriage(Outcome& outcome, const KnitPass& pass) : outcome_(outcome), state_(outcome.state), pass_(pass) {}

  void go() {
    if (!pass_.free) {
      outcome_.refusal = why_not();
      if (outcome_.refusal) {
        return;
      }
    }
    if (state_.build.selects == Selects::same_pass && state_.settings.selecting && state_.has_stored && !pass_.free) {
      bring_forward(state_.stored_row, row_has_contrast(state_.stored_row));
    }
    if (!pass_.free) {
      knit();
    }
    move_card_on();
    read_card();
    state_.carriage = other(state_.carriage);
    ++state_.counter;
  }

private:
  [[nodiscard]] std::optional<Refusal> why_not() const {
    if (std::ranges::none_of(state_.needles, in_work)) {
      return Refusal::no_work;
    }
    return state_.feeders[0] == 0 && state_.feeders[1] == 0 ? std::optional(Refusal::no_yarn) : std::nullopt;
  }

  [[nodiscard]] bool selected_by(int row, int column) const {
    return state_.card.card->at(row, column) == (state_.build.hole == HoleMeans::contrast);
  }

  // By column, from 0; a row of the card is read once, not once for each repeat.
  [[nodiscard]] std::vector<bool> selection_of(int row) const {
    std::vector<bool> selected(static_cast<std::size_t>(state_.card.card->columns()));
    for (std::size_t column = 0; column < selected.size(); ++column) {
      selected[column] = selected_by(row, static_cast<int>(column) + 1);
    }
    return selected;
  }

  [[nodiscard]] bool row_has_contrast(int row) const {
    for (int column = 1; column <= state_.card.card->columns(); ++column) {
      if (selected_by(row, column)) {
        return true;
      }
    }
    return false;
  }

  // The needles that the card's row selects, and the end needles: those beside a needle out of work.
  void bring_forward(int row, bool with_end_needles) {
    const int columns = state_.card.card->columns();
    int column = (state_.build.leftmost.position - state_.build.reader_first.position) % columns;
    column = column < 0 ? column + columns : column;
    const std::vector<bool> selected = selection_of(row);
    const std::size_t count = state_.needles.size();
    const bool ends = with_end_needles && state_.settings.end_needles;
    for (std::size_t index = 0; index < count; ++index) {
      BedNeedle& needle = state_.needles[index];
      if (needle.position == NeedlePosition::working || needle.position == NeedlePosition::upper) {
        bool forward = selected[static_cast<std::size_t>(column)];
        if (ends && !forward) {
          forward = index == 0 || index + 1 == count || !in_work(state_.needles[index - 1]) ||
                    !in_work(state_.needles[index + 1]);
        }
        needle.position = forward ? NeedlePosition::upper : NeedlePosition::working;
      }
      column = column + 1 == columns ? 0 : column + 1;
    }
  }

  // Feeder, from 0, that the needle's position and the settings call for; -1: the needle is passed by.
  [[nodiscard]] int feeder_for(NeedlePosition position) const {
    if (position == NeedlePosition::out_of_work || position == NeedlePosition::holding) {
      return -1;
    }
    const bool forward = position == NeedlePosition::upper;
    switch (state_.settings.knitting) {
    case KnitSetting::plain: return 0;
    case KnitSetting::two_colour: return forward ? 1 : 0;
    case KnitSetting::back_only: return forward ? -1 : 0;
    case KnitSetting::forward_only: return forward ? 0 : -1;
    }
    return -1;
  }

  void knit() {
    PassMade made;
    made.travel = travel_from(state_.carriage);
    made.cells.resize(state_.needles.size());
    std::array<bool, 2> used{};
    std::array<int, 4> feeders{}; // by position
    for (std::size_t position = 0; position < feeders.size(); ++position) {
      feeders[position] = feeder_for(static_cast<NeedlePosition>(position));
    }
    for (std::size_t index = 0; index < state_.needles.size(); ++index) {
      BedNeedle& needle = state_.needles[index];
      const int feeder = feeders[static_cast<std::size_t>(needle.position)];
      if (feeder < 0) {
        made.cells[index].slipped = needle.loops > 0;
        made.slipped = made.slipped || in_work(needle);
        // Where the same pass selects, no needle stays forward.
        if (state_.build.selects == Selects::same_pass && needle.position == NeedlePosition::upper) {
          needle.position = NeedlePosition::working;
        }
        continue;
      }
      needle.position = NeedlePosition::working; // it comes back in knitting
      const char yarn = state_.feeders[static_cast<std::size_t>(feeder)];
      if (yarn != 0) {
        used[static_cast<std::size_t>(feeder)] = true;
        form_loop(index, yarn, made.cells[index]);
        ++made.formed;
      } else {
        let_go(index, made.cells[index]);
        made.let_go += made.cells[index].missing ? 1 : 0;
      }
    }
    for (std::size_t feeder = 0; feeder < used.size(); ++feeder) {
      if (!used[feeder] && state_.feeders[feeder] != 0) {
        made.loose.push_back(state_.feeders[feeder]);
      }
    }
    outcome_.events.emplace_back(std::move(made));
  }

  void form_loop(std::size_t index, char yarn, Made& cell) {
    BedNeedle& needle = state_.needles[index];
    cell.yarn = yarn;
    if (needle.loops == 0) {
      cell.cast_on = true;
      outcome_.events.emplace_back(LoopCastOn{needle_at(index)});
    }
    needle.loops = 1;
    needle.yarn = yarn;
  }

  void let_go(std::size_t index, Made& cell) {
    BedNeedle& needle = state_.needles[index];
    if (needle.loops == 0) {
      return; // an empty needle and no yarn: nothing happens
    }
    cell.missing = true;
    outcome_.events.emplace_back(LoopsDropped{needle_at(index), needle.loops});
    needle.loops = 0;
    needle.yarn = 0;
  }

  [[nodiscard]] Needle needle_at(std::size_t index) const {
    return Needle{state_.build.leftmost.position + static_cast<int>(index)};
  }

  void move_card_on() {
    CardInReader& card = state_.card;
    if (!card.card || card.locked) {
      return;
    }
    if (card.double_length && !card.read_once) {
      card.read_once = true;
      return;
    }
    card.read_once = false;
    ++card.row;
    if (card.joined && card.row > card.card->rows()) {
      card.row = 1;
    }
    card.row = std::min(card.row, card.card->rows() + 3); // beyond the overlap rows there is no card
  }

  void read_card() {
    state_.has_stored = false;
    if (!state_.card.card || !state_.settings.selecting) {
      return;
    }
    if (state_.build.selects == Selects::next_pass) {
      bring_forward(state_.card.row, true);
    } else {
      state_.stored_row = state_.card.row;
      state_.has_stored = true;
    }
  }

  Outcome& outcome_;
  MachineState& state_;
  const KnitPass& pass_;
};

} // namespace

void make_pass(Outcome& outcome, const KnitPass& pass) {
  Carriage(outcome, pass).go();
}

} // namespace punchwright
