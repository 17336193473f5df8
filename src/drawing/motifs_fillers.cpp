// Fillers: they tile sideways and upwards as they are.
#include "drawing/motif_data.hpp"

namespace punchwright {

std::string_view filler_motifs() {
  return R"(
net: Net; filler mesh fishing
..##....##..
.#..#..#..#.
#....##....#
#....##....#
.#..#..#..#.
..##....##..
..##....##..
.#..#..#..#.
#....##....#
#....##....#
.#..#..#..#.
..##....##..

rain: Rain; filler weather drops
..#...#.
.#...#..
#...#...
........
#...#...
...#...#
..#...#.
........

snow-on-water: Snow on water; filler weather winter
.#.....#....
###...###...
.#.....#....
............
....#.....#.
...###...###
....#.....#.
............
##...###...#
..###...###.

ripple: Ripple; filler water
####....
........
..####..
........
....####
........
##....##
........

pebbles: Pebbles; filler shore stones beach
.##...###...
####.#####..
####.#####..
.##...###...
....##...##.
#..####.####
#..####.####
....##...##.

scales: Fish scales; filler sea arcs
#....##....#
#....##....#
.#..#..#..#.
..##....##..
..##....##..
..##....##..
.#..#..#..#.
#....##....#
)";
}

} // namespace punchwright
