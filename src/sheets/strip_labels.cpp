// Each in the line where it is moved less, away from those before it; then the last ones back from the right end.
#include "sheets/strip_labels.hpp"

#include <algorithm>
#include <array>

namespace punchwright {
namespace {

constexpr double between = 1.5; // mm; less would read as one line of words

} // namespace

std::vector<LabelPlace> label_places(const std::vector<LabelWish>& wishes, double left, double right) {
  std::vector<LabelPlace> places;
  std::array<double, 2> next{left, left}; // from where on each line is free
  for (const LabelWish& wish : wishes) {
    const double half = wish.width / 2;
    const double wished = std::min(wish.x, right - half); // so that the last ones don't push all before them
    const std::array<double, 2> middles{std::max(wished, next[0] + half), std::max(wished, next[1] + half)};
    const std::size_t line = middles[1] < middles[0] ? 1 : 0;
    places.push_back({static_cast<int>(line), middles[line]});
    next[line] = middles[line] + half + between;
  }
  std::array<double, 2> ends{right, right};
  for (std::size_t index = places.size(); index-- > 0;) {
    double& end = ends[static_cast<std::size_t>(places[index].line)];
    const double half = wishes[index].width / 2;
    places[index].middle = std::min(places[index].middle, end - half);
    end = places[index].middle - half - between;
  }
  return places;
}

} // namespace punchwright
