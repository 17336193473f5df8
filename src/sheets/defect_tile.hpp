// One place of the cloth where something else than a stitch is.
#pragma once

#include "design/document.hpp"

#include <vector>

namespace punchwright {

// Hatched, so that no yarn can look like it: what shows through a hole.
[[nodiscard]] std::vector<unsigned char> hole_tile(int width, int height);
// The same with two strands of the yarn that passes there.
[[nodiscard]] std::vector<unsigned char> ladder_tile(int width, int height, Colour passing);
// The same with a loop that nothing holds.
[[nodiscard]] std::vector<unsigned char> open_loop_tile(int width, int height, Colour yarn);
// Makes a small hole in a stitch's foot.
void add_eyelet(std::vector<unsigned char>& tile, int width, int height);

} // namespace punchwright
