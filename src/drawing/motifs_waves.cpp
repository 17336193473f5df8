// Waves: they tile sideways as they are.
#include "drawing/motif_data.hpp"

namespace punchwright {

std::string_view wave_motifs() {
  return R"(
breaker: Breaker; wave sea curl surf
..#.####.#..
..###..##...
.##.....#...
##...##.#...
##..#..##...
##...##....#
###...#...##
.####...####
..####.####.

wavelets: Wavelets; wave sea small border
..##....##..
.#..#..#..#.
#....##....#
............
..##....##..
.#..#..#..#.
#....##....#

scroll-wave: Scroll wave; sea running border
..####..
.##..##.
##..#.#.
##.##.#.
##....##
.##..###
..#####.

tide-lines: Tide lines; wave sea zigzag shore
#.....#.....
##...###...#
.##.##.##.##
..###...###.
#..#..#..#..
##...###...#
.##.##.##.##
..###...###.
...#.....#..
)";
}

} // namespace punchwright
