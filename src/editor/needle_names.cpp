// The chosen column's name first, then from the left each that keeps clear of those that stand.
#include "editor/needle_names.hpp"

#include "editor/needle_strip.hpp"

#include <algorithm>
#include <utility>

namespace punchwright::editor {

std::vector<int> columns_with_names(const std::vector<Needle>& needles, const NameRoom& room) {
  std::vector<int> named;
  std::vector<std::pair<float, float>> taken; // from, to
  const auto put = [&](int column) {
    const float wide = room.width(name_of(needles[static_cast<std::size_t>(column)]), column == room.chosen);
    const float left = (static_cast<float>(column) + 0.5F) * room.cell - wide / 2;
    const float right = left + wide;
    const bool clear = std::ranges::all_of(
        taken, [&](const auto& other) { return right + room.gap <= other.first || other.second + room.gap <= left; });
    if (clear) {
      taken.emplace_back(left, right);
      named.push_back(column);
    }
  };
  const auto columns = static_cast<int>(needles.size());
  if (room.chosen >= 0 && room.chosen < columns) {
    put(room.chosen);
  }
  for (int column = 0; column < columns; ++column) {
    const Needle needle = needles[static_cast<std::size_t>(column)];
    if (column != room.chosen && (number_of(needle) % room.step == 0 || (room.step == 5 && needle.position == -1))) {
      put(column);
    }
  }
  return named;
}

} // namespace punchwright::editor
