// What the collection's motifs are called and found by, in English, to be translated: tr(motif.name.c_str()).
// A test compares the list with the drawn sheets.
#pragma once

#include <span>

namespace punchwright {

struct NotedMotif {
  const char* name;  // "Bell buoy"
  const char* words; // "harbour mark float sound"
};

[[nodiscard]] std::span<const NotedMotif> noted_motifs();

} // namespace punchwright
