// The machine that knits: a state and an action in, the next state and what happened out.
// What hands cannot do is refused, and leaves the state as it was.
#pragma once

#include "knitting/actions.hpp"
#include "knitting/state.hpp"

#include <optional>
#include <string_view>
#include <variant>
#include <vector>

namespace punchwright {

// What a pass made at one needle.
struct Made {
  char yarn = 0;            // of the loop; 0: none was formed (out of work, slipped, or nothing to knit with)
  bool missing : 1 = false; // the needle met an empty feeder, and let go what it held
  bool dropped : 1 = false; // this loop was let go later
  bool cast_on : 1 = false; // formed on an empty needle: an eyelet
  bool slipped : 1 = false; // the needle held a loop and was passed by
  bool caught : 1 = false;  // a float was lifted onto this needle
  bool operator==(const Made&) const = default;
};

struct PassMade {
  Travel travel = Travel::leftwards;
  std::vector<Made> cells; // by needle, from the bed's leftmost
  int formed = 0;          // loops
  int let_go = 0;          // needles that met an empty feeder
  bool slipped = false;    // some needle in work was passed by
  std::vector<char> loose; // yarns in a feeder that knitted no stitch: they lie across the whole piece
};
struct LoopsDropped {
  Needle needle;
  int loops = 1;
};
struct LoopCastOn {
  Needle needle;
};
struct LoopMoved {
  Needle from;
  Needle to;
};
struct FloatCaught {
  Needle needle;
};
struct YarnAcross { // threaded on one side while it hung on the other
  char yarn = 0;
};
struct LoopsHungOn {
  NeedleSpan needles;
};
struct WorkTakenOff {
  std::vector<Needle> from; // each that held loops, left to right
};
struct WorkHungBack {
  std::vector<Needle> onto; // in the same order
};
struct LoopLifted { // from below the newest loop of a needle
  Needle from;
  Needle onto;
};
using Event = std::variant<PassMade, LoopsDropped, LoopCastOn, LoopMoved, FloatCaught, YarnAcross, LoopsHungOn,
                           WorkTakenOff, WorkHungBack, LoopLifted>;

enum class Refusal {
  no_yarn,         // a pass with needles in work and no yarn in any feeder: the whole work would fall off
  no_work,         // a pass over a bed without a needle in work
  no_such_needle,  // beyond the bed
  needle_occupied, // a needle that holds loops can't go out of work, nor be hung on
  needle_empty,    // nothing to transfer
  needle_not_in_work,
  no_such_feeder,
  feeder_taken,         // another yarn is in it
  yarn_in_use,          // the yarn is in the other feeder
  no_card,              // selecting, locking and turning need one
  not_on_this_carriage, // two-colour knitting with one feeder, or one-yarn settings with two
  no_float_there,
  work_is_off,  // other work is held already, and its loops would be mixed up
  loops_differ, // more or fewer than the needles they should hang on
};
// "the feeder holds another yarn"
[[nodiscard]] std::string_view words_of(Refusal refusal);

struct Outcome {
  MachineState state;
  std::vector<Event> events;
  std::optional<Refusal> refusal;
};

[[nodiscard]] Outcome carry_out(MachineState state, const MachineAction& action);

// The needles that stand forward, left to right.
[[nodiscard]] std::vector<Needle> needles_forward(const MachineState& state);

} // namespace punchwright
