// Everything that hands do at the machine, as values: the steps of a plan carry them, and the machine carries them out.
#pragma once

#include "design/units.hpp"
#include "knitting/state.hpp"

#include <string>
#include <variant>
#include <vector>

namespace punchwright {

struct NeedleSpan { // first to last, left to right
  Needle first;
  Needle last;
  bool operator==(const NeedleSpan&) const = default;
};

// Loops of finished work, or of a cast-on, onto empty needles, which come into work.
struct HangOn {
  NeedleSpan needles;
  char yarn = 'A';
  bool operator==(const HangOn&) const = default;
};
struct KnitPass {    // the carriage goes across to the other side
  bool free = false; // without knitting
  bool operator==(const KnitPass&) const = default;
};
struct SetSelection {
  bool on = true;
  bool end_needles = false;
  bool operator==(const SetSelection&) const = default;
};
struct SetKnitting {
  KnitSetting to = KnitSetting::plain;
  bool operator==(const SetKnitting&) const = default;
};
struct LockCard {
  bool locked = true; // false: release
  bool operator==(const LockCard&) const = default;
};
struct TurnCard { // by its wheel, until that row is under the reader
  int row = 1;
  bool operator==(const TurnCard&) const = default;
};
struct SetLength {
  bool twice = false;
  bool operator==(const SetLength&) const = default;
};
struct ThreadYarn {
  int feeder = 1; // 1 or 2
  char yarn = 'A';
  bool operator==(const ThreadYarn&) const = default;
};
struct TakeOut {
  int feeder = 1;
  bool operator==(const TakeOut&) const = default;
};
struct CutYarn { // between the work and what hangs beside it
  char yarn = 'A';
  bool operator==(const CutYarn&) const = default;
};
struct MoveNeedles { // to working, upper, holding position, or out of work (empty needles only)
  std::vector<NeedleSpan> needles;
  NeedlePosition to = NeedlePosition::working;
  bool operator==(const MoveNeedles&) const = default;
};
struct TransferLoop {
  Needle from;
  Needle to;
  bool operator==(const TransferLoop&) const = default;
};
struct LiftFloat { // the float that passes behind the newest stitch of that needle, onto it
  Needle needle;
  bool operator==(const LiftFloat&) const = default;
};
struct SetCounter {
  int to = 0;
  bool operator==(const SetCounter&) const = default;
};
struct TakeWorkOff { // all loops, in their order, onto what holds them: waste yarn, a comb, a circular needle
  bool operator==(const TakeWorkOff&) const = default;
};
// The work that was taken off, in the same order: what hung on one needle onto one. They are in work, empty, and as
// many.
struct HangWorkBack {
  std::vector<NeedleSpan> needles; // left to right
  bool operator==(const HangWorkBack&) const = default;
};
struct LiftLoop { // the loop below the newest one of a needle, onto an empty one in work
  Needle from;
  Needle onto;
  bool operator==(const LiftLoop&) const = default;
};

using MachineAction =
    std::variant<HangOn, KnitPass, SetSelection, SetKnitting, LockCard, TurnCard, SetLength, ThreadYarn, TakeOut,
                 CutYarn, MoveNeedles, TransferLoop, LiftFloat, SetCounter, TakeWorkOff, HangWorkBack, LiftLoop>;

} // namespace punchwright
