// Notes beside a column of lines: each as near to its own line as the others let it, none over another.
// Pure numbers, so that it can be proved without a sheet.
#pragma once

#include <optional>
#include <vector>

namespace punchwright {

struct WishedPlace {
  double middle = 0; // mm, downwards
  double height = 0;
};

// The middles of the blocks, one under another in the order given, between `top` and `bottom`; the squares of their
// distances from the wishes are least. None: they are higher together than the room.
[[nodiscard]] std::optional<std::vector<double>> places_of(const std::vector<WishedPlace>& wishes, double top,
                                                           double bottom);

} // namespace punchwright
