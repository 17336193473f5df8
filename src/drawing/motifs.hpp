// Motifs to set down: a collection of our own, drawn for stitches a little wider than high.
#pragma once

#include "design/grid.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

enum class MotifGroup { birds, sea, harbour, waves, borders, fillers };

[[nodiscard]] std::span<const MotifGroup> motif_groups();
[[nodiscard]] std::string_view name_of(MotifGroup group); // "birds"

// Borders, waves and fillers tile sideways as they are; fillers upwards too.
struct Motif {
  std::string id;   // "bell-buoy": small letters and hyphens, never changed once given
  std::string name; // "Bell buoy"
  MotifGroup group = MotifGroup::sea;
  std::string words; // more words that a search finds it by, with blanks between
  Grid drawing;      // 7 × 7 at least
};

// All of them, group by group. Made anew with each call: keep it.
[[nodiscard]] std::vector<Motif> motif_collection();

// The motifs in whose name, group or words each word of `wanted` begins a word, small or large letters alike; all of
// them where nothing is wanted. In the order of the collection.
[[nodiscard]] std::vector<const Motif*> motifs_found(std::span<const Motif> motifs, std::string_view wanted);

} // namespace punchwright
