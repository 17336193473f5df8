// Borders: they tile sideways as they are.
#include "drawing/motif_data.hpp"

namespace punchwright {

std::string_view border_motifs() {
  return R"(
rope: Rope; border twist line
..###...###.
.#####.#####
#.#####.####
##.#####.###
###.#####.##
####.#####.#
#####.#####.
.###...###..

harbour-wall: Harbour wall; border stone bricks
#####.#####.
#####.#####.
............
##.#####.###
##.#####.###
............
#####.#####.
#####.#####.

bunting: Bunting; border flags pennants regatta
#.#.#.#.#.#.
.#####.#####
.#####.#####
..###...###.
..###...###.
...#.....#..
...#.....#..

chain: Chain; border links iron
..##....##..
.#..#..#..#.
#....##....#
#...####...#
#....##....#
.#..#..#..#.
..##....##..
)";
}

} // namespace punchwright
