// A .yoke file together with the machine and the tiers' drawings that it names.
// Reading goes through the caller's function, so that this room does no input or output.
#pragma once

#include "machine/open_document.hpp"
#include "pieces/yoke_file.hpp"
#include "rows/rows.hpp"

namespace punchwright {

struct OpenedTier {
  Document document; // with the yoke's machine, gauge and edge; stitches and needles are not yet those of a piece
  RowsToKnit rows;   // the same for all pieces
  Gauge own_gauge;   // of the tier's file
};

struct OpenedYoke {
  Yoke yoke;
  Profile profile;
  std::vector<OpenedTier> tiers;
  Failure machine_wanted; // of Machines::may_differ: the tiers' files name several, and the yoke none for all
  std::vector<ReadingNote> notes;
  std::map<std::string, Spot> places; // as in ReadYoke
  std::string file;                   // for errors
};

// A yoke is no taller than this, in rows: four metres of thick yarn.
constexpr int most_yoke_rows = 2000;

// The single-colour rows between a tier and the next one, by what the procedure needs them for (trade's procedure:
// common practice).
struct PlainRows {
  int last_plain = 1; // after the last pattern row, before the decreases; more are knitted here as well
  int after_decreases = 1;
  int setting_up = 0; // of the next tier: those that knit, see setup_rows()
  [[nodiscard]] int needed() const { return last_plain + after_decreases + setting_up; }
  bool operator==(const PlainRows&) const = default;
};
// Above that tier, from 0; above the last one nothing is set up.
[[nodiscard]] PlainRows plain_rows_needed(const OpenedYoke& opened, std::size_t tier);

// Where a yoke names no machine, and its tiers' files name several.
enum class Machines {
  must_agree, // refused
  may_differ  // opened with the first of them that can knit all tiers, until one is chosen
};

// `path` is the .yoke file's. Refused with its place: a tier that can't be read or whose width no card column holds,
// tiers of different machines where the yoke names none, too few plain rows, more rows than `most_yoke_rows`.
[[nodiscard]] Result<OpenedYoke> open_yoke(std::string_view text, const std::string& path, const FileReader& read,
                                           Machines machines = Machines::must_agree);

// The same for a yoke that was changed in memory; `places` are empty then.
[[nodiscard]] Result<OpenedYoke> open_yoke(Yoke yoke, const std::string& path, const FileReader& read,
                                           Machines machines = Machines::must_agree);

// A changed yoke over the tiers and the machine that are opened already; its tiers are the same files.
[[nodiscard]] Result<OpenedYoke> with_changed_measures(OpenedYoke opened, Yoke yoke);

} // namespace punchwright
