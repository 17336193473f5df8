// What is found in the open yoke, and from finding to finding: what is shown when one is chosen.
#pragma once

#include "editor/app.hpp"

namespace punchwright::editor {

// The finding's size, and where it belongs to a piece or a seam, a view that shows it.
[[nodiscard]] YokeView view_at_finding(const App& app, int finding);

// A piece's lower or upper edge, seam stitches left out, by the gauge of its tier.
struct KnittedWidth {
  int stitches = 0; // with the seam stitches
  double stitch_mm = 0;
  double knitted_mm = 0;
  double wished_mm = 0;
  [[nodiscard]] bool departs() const; // by more than half a stitch
};
[[nodiscard]] KnittedWidth knitted_width(const OpenedYoke& opened, const SizePlan& plan, std::size_t size,
                                         std::size_t piece, bool top);

} // namespace punchwright::editor
