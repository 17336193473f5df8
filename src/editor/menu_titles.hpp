// How many of the menus' titles stand in the bar, and how far apart. Large text in a narrow window leaves no room for
// all of them: the last ones are gathered in one more menu, since titles that run together can't be read.
#pragma once

#include <algorithm>
#include <cstddef>
#include <span>

namespace punchwright::editor {

struct MenuTitles {
  std::size_t in_bar = 0; // the others stand in the menu behind them
  float gap = 0;          // px to either side of a title
};

// `more`: the width of that menu's own title; widths in px.
[[nodiscard]] inline MenuTitles titles_in_bar(std::span<const float> widths, float more, float room, float least_gap,
                                              float usual_gap) {
  constexpr float gaps = 2.2F; // to a title, with a little to spare
  const auto gap_for = [&](std::size_t count, float last) {
    float words = last;
    for (const float width : widths.first(count)) {
      words += width;
    }
    return (room - words) / (gaps * static_cast<float>(count + (last > 0 ? 1 : 0)));
  };
  if (const float gap = gap_for(widths.size(), 0); gap >= least_gap) {
    return {widths.size(), std::min(gap, usual_gap)};
  }
  std::size_t count = widths.size() - 1;
  while (count > 1 && gap_for(count, more) < least_gap) {
    --count;
  }
  return {count, std::clamp(gap_for(count, more), least_gap, std::max(least_gap, usual_gap))};
}

} // namespace punchwright::editor
