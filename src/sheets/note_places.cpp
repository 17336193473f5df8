// Least squares with the order kept: neighbours that would meet are pooled and moved together (isotonic regression).
#include "sheets/note_places.hpp"

#include <algorithm>

namespace punchwright {
namespace {

struct Pool {
  double sum = 0; // of the wishes, each less what lies above it
  std::size_t count = 0;
  [[nodiscard]] double place() const { return sum / static_cast<double>(count); }
};

} // namespace

// With what lies above a block taken off its wish, "not over one another" becomes "not falling", and that is pooling;
// the room's ends then only cut off the lowest and the highest values.
std::optional<std::vector<double>> places_of(const std::vector<WishedPlace>& wishes, double top, double bottom) {
  std::vector<double> above(wishes.size());
  std::vector<Pool> pools;
  double height = 0;
  for (std::size_t index = 0; index < wishes.size(); ++index) {
    above[index] = height + wishes[index].height / 2;
    height += wishes[index].height;
    pools.push_back({wishes[index].middle - above[index], 1});
    while (pools.size() > 1 && pools[pools.size() - 2].place() > pools.back().place()) {
      const Pool last = pools.back();
      pools.pop_back();
      pools.back().sum += last.sum;
      pools.back().count += last.count;
    }
  }
  if (height > bottom - top) {
    return std::nullopt;
  }
  std::vector<double> middles;
  middles.reserve(wishes.size());
  for (const Pool& pool : pools) {
    const double place = std::clamp(pool.place(), top, bottom - height);
    for (std::size_t count = 0; count < pool.count; ++count) {
      middles.push_back(place + above[middles.size()]);
    }
  }
  return middles;
}

} // namespace punchwright
