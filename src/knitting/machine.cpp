// All actions but the pass: what they change, and when they are refused.
#include "knitting/machine.hpp"

#include "knitting/pass.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <functional>

namespace punchwright {
namespace {

class Hands {
public:
  explicit Hands(Outcome& outcome) : outcome_(outcome), state_(outcome.state) {}

  void operator()(const KnitPass& pass) { make_pass(outcome_, pass); }

  void operator()(const HangOn& work) {
    if (!state_.has(work.needles.first) || !state_.has(work.needles.last)) {
      return refuse(Refusal::no_such_needle);
    }
    for (Needle needle = work.needles.first; needle <= work.needles.last; ++needle.position) {
      if (state_.at(needle).loops > 0) {
        return refuse(Refusal::needle_occupied);
      }
    }
    for (Needle needle = work.needles.first; needle <= work.needles.last; ++needle.position) {
      state_.at(needle) = {NeedlePosition::working, 1, work.yarn};
    }
    outcome_.events.emplace_back(LoopsHungOn{work.needles});
  }

  void operator()(const SetSelection& wish) {
    if (wish.on && !state_.card.card) {
      return refuse(Refusal::no_card);
    }
    state_.settings.selecting = wish.on;
    state_.settings.end_needles = wish.on && wish.end_needles;
  }

  void operator()(const SetKnitting& wish) {
    const bool one_yarn = wish.to == KnitSetting::back_only || wish.to == KnitSetting::forward_only;
    if ((wish.to == KnitSetting::two_colour && state_.build.feeders < 2) || (one_yarn && state_.build.feeders != 1)) {
      return refuse(Refusal::not_on_this_carriage);
    }
    state_.settings.knitting = wish.to;
  }

  void operator()(const LockCard& wish) {
    if (!state_.card.card) {
      return refuse(Refusal::no_card);
    }
    state_.card.locked = wish.locked;
  }

  void operator()(const TurnCard& wish) {
    if (!state_.card.card) {
      return refuse(Refusal::no_card);
    }
    state_.card.row = wish.row;
    state_.card.read_once = false;
  }

  void operator()(const SetLength& wish) {
    if (!state_.card.card) {
      return refuse(Refusal::no_card);
    }
    state_.card.double_length = wish.twice;
    state_.card.read_once = false;
  }

  void operator()(const ThreadYarn& wish) {
    if (wish.feeder < 1 || wish.feeder > state_.build.feeders) {
      return refuse(Refusal::no_such_feeder);
    }
    char& feeder = state_.feeders[static_cast<std::size_t>(wish.feeder - 1)];
    if (feeder == wish.yarn) {
      return; // it is there already
    }
    if (feeder != 0) {
      return refuse(Refusal::feeder_taken);
    }
    if (std::ranges::find(state_.feeders, wish.yarn) != state_.feeders.end()) {
      return refuse(Refusal::yarn_in_use);
    }
    feeder = wish.yarn;
    const auto hangs = std::ranges::find(state_.hanging, wish.yarn, &HangingYarn::yarn);
    if (hangs != state_.hanging.end()) {
      if (hangs->side != state_.carriage) {
        outcome_.events.emplace_back(YarnAcross{wish.yarn});
      }
      state_.hanging.erase(hangs);
    }
  }

  void operator()(const TakeOut& wish) {
    if (wish.feeder < 1 || wish.feeder > state_.build.feeders) {
      return refuse(Refusal::no_such_feeder);
    }
    char& feeder = state_.feeders[static_cast<std::size_t>(wish.feeder - 1)];
    if (feeder != 0) {
      state_.hanging.push_back({feeder, state_.carriage});
      feeder = 0;
    }
  }

  void operator()(const CutYarn& wish) {
    std::erase_if(state_.hanging, [&](const HangingYarn& hangs) { return hangs.yarn == wish.yarn; });
  }

  void operator()(const MoveNeedles& wish) {
    for (const NeedleSpan& span : wish.needles) {
      if (!state_.has(span.first) || !state_.has(span.last)) {
        return refuse(Refusal::no_such_needle);
      }
      for (Needle needle = span.first; needle <= span.last; ++needle.position) {
        if (wish.to == NeedlePosition::out_of_work && state_.at(needle).loops > 0) {
          return refuse(Refusal::needle_occupied);
        }
      }
    }
    for (const NeedleSpan& span : wish.needles) {
      for (Needle needle = span.first; needle <= span.last; ++needle.position) {
        state_.at(needle).position = wish.to;
      }
    }
  }

  void operator()(const TransferLoop& wish) {
    if (!state_.has(wish.from) || !state_.has(wish.to)) {
      return refuse(Refusal::no_such_needle);
    }
    BedNeedle& from = state_.at(wish.from);
    BedNeedle& to = state_.at(wish.to);
    if (from.loops == 0) {
      return refuse(Refusal::needle_empty);
    }
    if (to.position == NeedlePosition::out_of_work) {
      return refuse(Refusal::needle_not_in_work);
    }
    constexpr int most_loops = 200; // far more than a hook holds
    if (wish.from == wish.to || to.loops + from.loops > most_loops) {
      return refuse(Refusal::needle_occupied);
    }
    to.loops = static_cast<std::uint8_t>(to.loops + from.loops);
    to.yarn = from.yarn;
    from.loops = 0;
    from.yarn = 0;
    outcome_.events.emplace_back(LoopMoved{wish.from, wish.to});
  }

  // Whether a float passes there is known to the fabric; here the needle must have a stitch to lift it behind.
  void operator()(const LiftFloat& wish) {
    if (!state_.has(wish.needle)) {
      return refuse(Refusal::no_such_needle);
    }
    if (state_.at(wish.needle).loops == 0) {
      return refuse(Refusal::no_float_there);
    }
    outcome_.events.emplace_back(FloatCaught{wish.needle});
  }

  void operator()(const SetCounter& wish) { state_.counter = wish.to; }

  void operator()(const TakeWorkOff&) {
    if (!state_.off.empty()) {
      return refuse(Refusal::work_is_off);
    }
    WorkTakenOff taken;
    Needle needle = state_.build.leftmost;
    for (BedNeedle& one : state_.needles) {
      if (one.loops > 0) {
        taken.from.push_back(needle);
        state_.off.push_back({one.loops, one.yarn});
        one.loops = 0;
        one.yarn = 0;
      }
      ++needle.position;
    }
    if (taken.from.empty()) {
      return refuse(Refusal::needle_empty);
    }
    outcome_.events.emplace_back(std::move(taken));
  }

  void operator()(const HangWorkBack& work) {
    WorkHungBack hung;
    for (const NeedleSpan& span : work.needles) {
      if (!state_.has(span.first) || !state_.has(span.last)) {
        return refuse(Refusal::no_such_needle);
      }
      for (Needle needle = span.first; needle <= span.last; ++needle.position) {
        if (const auto refusal = why_not_onto(needle)) {
          return refuse(*refusal);
        }
        hung.onto.push_back(needle);
      }
    }
    if (hung.onto.size() != state_.off.size() ||
        std::ranges::adjacent_find(hung.onto, std::greater_equal{}) != hung.onto.end()) {
      return refuse(Refusal::loops_differ);
    }
    for (std::size_t loop = 0; loop < hung.onto.size(); ++loop) {
      BedNeedle& onto = state_.at(hung.onto[loop]);
      onto.loops = state_.off[loop].loops;
      onto.yarn = state_.off[loop].yarn;
    }
    state_.off.clear();
    outcome_.events.emplace_back(std::move(hung));
  }

  // The loop below is taken to be of the same yarn; which one it is of, the fabric knows.
  void operator()(const LiftLoop& wish) {
    if (!state_.has(wish.from) || !state_.has(wish.onto)) {
      return refuse(Refusal::no_such_needle);
    }
    if (state_.at(wish.from).loops == 0) {
      return refuse(Refusal::needle_empty);
    }
    if (const auto refusal = why_not_onto(wish.onto)) {
      return refuse(*refusal);
    }
    state_.at(wish.onto).loops = 1;
    state_.at(wish.onto).yarn = state_.at(wish.from).yarn;
    outcome_.events.emplace_back(LoopLifted{wish.from, wish.onto});
  }

private:
  void refuse(Refusal refusal) { outcome_.refusal = refusal; }

  [[nodiscard]] std::optional<Refusal> why_not_onto(Needle needle) const {
    const BedNeedle& onto = state_.at(needle);
    return onto.position == NeedlePosition::out_of_work ? std::optional(Refusal::needle_not_in_work)
           : onto.loops > 0                             ? std::optional(Refusal::needle_occupied)
                                                        : std::nullopt;
  }

  Outcome& outcome_;
  MachineState& state_;
};

} // namespace

MachineState machine_as_found(const Profile& profile, Side carriage, std::shared_ptr<const PunchedCard> card,
                              bool joined) {
  MachineState state;
  state.build = {profile.leftmost(), profile.needles, profile.feeders, profile.selects, Needle{0}, HoleMeans::contrast};
  if (profile.card) {
    state.build.reader_first = profile.card->first_needle;
    state.build.hole = profile.card->hole;
  }
  state.needles.resize(static_cast<std::size_t>(profile.needles));
  state.carriage = carriage;
  put_card_in(state, std::move(card), joined);
  return state;
}

void put_card_in(MachineState& state, std::shared_ptr<const PunchedCard> card, bool joined) {
  state.card = {};
  state.has_stored = false;
  if (state.build.selects != Selects::by_hand) {
    state.card.card = std::move(card);
  }
  state.card.joined = joined;
  state.card.double_length = state.card.card != nullptr;
}

std::string_view words_of(Refusal refusal) {
  switch (refusal) {
  case Refusal::no_yarn: return tr("no yarn is in any feeder: the whole work would fall off");
  case Refusal::no_work: return tr("no needle is in work");
  case Refusal::no_such_needle: return tr("the bed has no such needle");
  case Refusal::needle_occupied: return tr("the needle holds a loop");
  case Refusal::needle_empty: return tr("the needle holds no loop");
  case Refusal::needle_not_in_work: return tr("the needle is out of work");
  case Refusal::no_such_feeder: return tr("the carriage has no such feeder");
  case Refusal::feeder_taken: return tr("the feeder holds another yarn");
  case Refusal::yarn_in_use: return tr("that yarn is in the other feeder");
  case Refusal::no_card: return tr("there is no card in the machine");
  case Refusal::not_on_this_carriage: return tr("the carriage has no such setting");
  case Refusal::no_float_there: return tr("there is no float to lift");
  case Refusal::work_is_off: return tr("other work is taken off already");
  case Refusal::loops_differ: return tr("the loops are more or fewer than the needles for them");
  }
  return "";
}

Outcome carry_out(MachineState state, const MachineAction& action) {
  Outcome outcome{std::move(state), {}, std::nullopt};
  std::visit(Hands(outcome), action);
  return outcome;
}

std::vector<Needle> needles_forward(const MachineState& state) {
  std::vector<Needle> forward;
  Needle needle = state.build.leftmost;
  for (const BedNeedle& one : state.needles) {
    if (one.position == NeedlePosition::upper) {
      forward.push_back(needle);
    }
    ++needle.position;
  }
  return forward;
}

} // namespace punchwright
