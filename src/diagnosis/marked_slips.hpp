// Slips that the marks themselves point at: which row is wrong, and which of its needles.
#pragma once

#include "diagnosis/diagnosis.hpp"

#include <optional>
#include <vector>

namespace punchwright {

// In all of these `row` is a row to knit, from 0.

// Where in the line its pass stands, the first one of two.
[[nodiscard]] std::optional<std::size_t> pass_of(const Setting& setting, const ActionLine& line, int row);

// Those needles stood forward that should have stood back, and the other way round; none where the carriage selects in
// the pass that knits.
[[nodiscard]] std::optional<Variation> needles_wrong(const Setting& setting, const ActionLine& line, int row,
                                                     std::vector<Needle> needles);
// The carriage was set to plain knitting for that pass.
[[nodiscard]] std::optional<Variation> carriage_plain(const Setting& setting, const ActionLine& line, int row);
// The card moved on by two rows, so that it was left out.
[[nodiscard]] std::optional<Variation> card_skipped(const Setting& setting, const ActionLine& line, int row);
// At the threading of its contrast, main and contrast changed places.
[[nodiscard]] std::optional<Variation> yarns_exchanged(const Setting& setting, const ActionLine& line, int row);

// A slip that runs through all that follows it: another line of actions.
struct OtherLine {
  Departure departure;
  std::vector<MachineAction> actions;
  int along = 0; // needles by which the piece stands further right on the bed than planned
};
// The work hung so many needles too far to the right (less than none: left).
[[nodiscard]] OtherLine work_off(const Setting& setting, const ActionLine& line, int by);
// By hand: from that row on the needles were counted from a place so many needles too far to the right.
[[nodiscard]] OtherLine counted_off(const Setting& setting, const ActionLine& line, int row, int by);

} // namespace punchwright
