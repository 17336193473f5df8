// Bands when rows move: which bands cover a drawing whose rows were reordered, copied or taken away.
// Kept apart from the edits, since loading pictures and pasting rows need it as well.
#pragma once

#include "design/document.hpp"

#include <vector>

namespace punchwright {

// The bands of a drawing whose row r is the old row sources[r]. A band without rows goes; rows of a band that are no
// longer neighbours make several bands, of which the lowest keeps its `plain_below`.
[[nodiscard]] std::vector<Band> bands_for_rows(const std::vector<Band>& bands, const std::vector<int>& sources);

// Rows `first` to `first` + `count` - 1 knitted in that pair; `contrast` absent: in main alone. A band of which only a
// part changes is cut, and rows that come to lie beside rows of the same pair by that cut join them.
[[nodiscard]] std::vector<Band> with_pair_in_rows(const std::vector<Band>& bands, int first, int count, char main,
                                                  std::optional<char> contrast);

// The bands of the drawing turned upside down; each `plain_below` stays at its place between two bands, that of the
// lowest (between repetitions) with the lowest.
[[nodiscard]] std::vector<Band> upside_down(const std::vector<Band>& bands);

} // namespace punchwright
