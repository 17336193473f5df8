// Motifs to set down: a collection of our own, drawn for stitches a little wider than high.
#pragma once

#include "design/grid.hpp"
#include "design/result.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

enum class MotifGroup { birds, sea, harbour, waves, borders, fillers, own };

// Those of the collection; motifs of the user's folder are `own`.
[[nodiscard]] std::span<const MotifGroup> motif_groups();
[[nodiscard]] std::string_view name_of(MotifGroup group); // "birds"

// Borders, waves and fillers tile sideways as they are; fillers upwards too.
struct Motif {
  std::string id;   // "bell-buoy": small letters and hyphens, never changed once given
  std::string name; // "Bell buoy"
  MotifGroup group = MotifGroup::sea;
  std::string words; // more words that a search finds it by, with blanks between
  Grid drawing;      // 7 × 7 at least in the collection
};

// All of them, group by group. Made anew with each call: keep it.
[[nodiscard]] std::vector<Motif> motif_collection();

// A user's motifs as text: each "id: Name; more words" and its rows from the top, with an empty line between two. The
// line of names may be missing, or be a name alone: then `id` stands for it. Errors have the line, and no file.
[[nodiscard]] Result<std::vector<Motif>> motifs_in_text(std::string_view text, const std::string& id);
[[nodiscard]] std::string text_of_motif(const Motif& motif);
// "Grey heron, left" becomes "grey-heron-left"; of a name without any letter or digit "motif".
[[nodiscard]] std::string motif_id(std::string_view name);

// The motifs in whose name, group or words each word of `wanted` begins a word, small or large letters alike; all of
// them where nothing is wanted. In the order of the collection.
[[nodiscard]] std::vector<const Motif*> motifs_found(std::span<const Motif> motifs, std::string_view wanted);

} // namespace punchwright
