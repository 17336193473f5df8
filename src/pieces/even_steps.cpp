// Steps of whole stitches, gathered or mixed.
#include "pieces/even_steps.hpp"

namespace punchwright {
namespace {

// number * stitches / parts, rounded to the nearest; halves towards the middle, so that the row mirrors itself.
int nearest_share(int stitches, int parts, int number) {
  const bool right_half = 2 * number > parts;
  const int from_near_end = right_half ? parts - number : number;
  const int stitch = (2 * from_near_end * stitches + parts) / parts / 2;
  return right_half ? stitches - stitch : stitch;
}

} // namespace

std::vector<int> even_places(int stitches, int count, DecreaseWay way) {
  std::vector<int> places;
  const EvenParts parts = even_parts(stitches, count + 1);
  const int long_first = parts.long_parts / 2;
  const int short_end = count - (parts.long_parts - long_first); // from here on the other long steps
  int at = 0;
  for (int number = 1; number <= count; ++number) {
    switch (way) {
    case DecreaseWay::gathered:
      at += number <= long_first || number > short_end ? parts.short_step + 1 : parts.short_step;
      break;
    case DecreaseWay::spread: at = nearest_share(stitches, count + 1, number); break;
    case DecreaseWay::half_steps: // (number - 1/2) stitches / count, rounded to the nearest, halves down
      at = ((2 * number - 1) * stitches + count - 1) / (2 * count);
      break;
    }
    places.push_back(at);
  }
  return places;
}

Steps steps_between(const std::vector<int>& places) {
  Steps steps;
  int before = 0;
  for (const int place : places) {
    if (steps.empty() || steps.back().first != place - before) {
      steps.emplace_back(place - before, 0);
    }
    ++steps.back().second;
    before = place;
  }
  return steps;
}

} // namespace punchwright
