// Which needles' names stand below the drawing, so that none touches another: on both sides of the bed's middle, and
// where the repeat wraps round, neighbouring columns can be needles far apart.
#pragma once

#include "design/units.hpp"

#include <functional>
#include <string>
#include <vector>

namespace punchwright::editor {

struct NameRoom {
  float cell = 0;                                                   // px: width of a column
  float gap = 0;                                                    // px: between two names at least
  int step = 1;                                                     // of needle numbers
  int chosen = 0;                                                   // the column whose needle is always named
  std::function<float(const std::string& name, bool chosen)> width; // px
};

// `needles` of each column. The columns with a name, the chosen one first.
[[nodiscard]] std::vector<int> columns_with_names(const std::vector<Needle>& needles, const NameRoom& room);

} // namespace punchwright::editor
