// Tries the places that touch something: the boxes, the pointer, the bounds.
#include "editor/clear_place.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace punchwright::editor {

namespace {

// From the box to the point; 0: within.
float distance(const ScreenBox& box, ScreenPoint point) {
  const float across = std::max({box.left - point.x, 0.0F, point.x - box.right});
  const float down = std::max({box.top - point.y, 0.0F, point.y - box.bottom});
  return std::hypot(across, down);
}

} // namespace

ClearPlace clear_place(ScreenPoint size, ScreenPoint pointer, const std::vector<ScreenBox>& boxes,
                       const ScreenBox& bounds) {
  constexpr float aside = 12; // px, from the pointer: its arrow is that large
  std::vector<float> across{pointer.x + aside, pointer.x - aside - size.x, bounds.left, bounds.right - size.x};
  std::vector<float> down{pointer.y + aside, pointer.y - aside - size.y, bounds.top, bounds.bottom - size.y};
  for (const ScreenBox& box : boxes) {
    across.insert(across.end(), {box.right, box.left - size.x});
    down.insert(down.end(), {box.bottom, box.top - size.y});
  }
  std::optional<ClearPlace> best;
  float nearest = 0;
  for (const float x : across) {
    for (const float y : down) {
      const ScreenPoint corner{std::max(bounds.left, std::min(x, bounds.right - size.x)),
                               std::max(bounds.top, std::min(y, bounds.bottom - size.y))};
      const ScreenBox here{corner.x, corner.y, corner.x + size.x, corner.y + size.y};
      const auto covered = std::ranges::find_if(boxes, [&](const ScreenBox& box) { return box.meets(here); });
      const auto clear = static_cast<std::size_t>(covered - boxes.begin());
      const float far = distance(here, pointer) + (here.contains(pointer) ? bounds.width() + bounds.height() : 0.0F);
      if (!best || clear > best->clear || (clear == best->clear && far < nearest)) {
        best = {corner, clear};
        nearest = far;
      }
    }
  }
  return *best;
}

} // namespace punchwright::editor
