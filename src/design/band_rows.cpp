// Bands when rows move.
#include "design/band_rows.hpp"

#include <algorithm>
#include <set>

namespace punchwright {

std::vector<Band> bands_for_rows(const std::vector<Band>& bands, const std::vector<int>& sources) {
  std::vector<std::size_t> band_of_row;
  for (std::size_t index = 0; index < bands.size(); ++index) {
    band_of_row.insert(band_of_row.end(), static_cast<std::size_t>(bands[index].rows), index);
  }
  std::vector<Band> result;
  std::set<std::size_t> seen;
  std::size_t last = bands.size();
  for (const int source : sources) {
    const std::size_t index = band_of_row[static_cast<std::size_t>(source)];
    if (index == last) {
      ++result.back().rows;
      continue;
    }
    Band band = bands[index];
    band.rows = 1;
    if (!seen.insert(index).second) {
      band.plain_below.reset();
    }
    result.push_back(band);
    last = index;
  }
  return result;
}

std::vector<Band> with_pair_in_rows(const std::vector<Band>& bands, int first, int count, char main,
                                    std::optional<char> contrast) {
  std::vector<Band> result;
  const auto add = [&result](Band band, int rows, bool cut) {
    if (rows <= 0) {
      return;
    }
    band.rows = rows;
    if (cut) { // its lower end is a new one
      band.plain_below.reset();
      Band& below = result.back();
      if (below.main == band.main && below.contrast == band.contrast) {
        below.rows += rows;
        return;
      }
    }
    result.push_back(band);
  };
  int start = 0;
  for (const Band& band : bands) {
    const int end = start + band.rows;
    const int from = std::clamp(first, start, end);
    const int to = std::clamp(first + count, start, end);
    Band changed = band;
    changed.main = main;
    changed.contrast = contrast;
    add(band, from - start, false);
    add(changed, to - from, from > start);
    add(band, end - to, to > start && from < to);
    start = end;
  }
  return result;
}

std::vector<Band> upside_down(const std::vector<Band>& bands) {
  std::vector<Band> result(bands.rbegin(), bands.rend());
  result.front().plain_below = bands.front().plain_below;
  for (std::size_t index = 1; index < bands.size(); ++index) {
    result[index].plain_below = bands[bands.size() - index].plain_below;
  }
  return result;
}

} // namespace punchwright
