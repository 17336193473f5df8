// The names and search words of the collection as single literals: in the drawn sheets they stand among the rows, where
// nobody who gathers words for translation finds them.
#include "drawing/motif_words.hpp"

#include "words/words.hpp"

#include <array>

namespace punchwright {
namespace {

constexpr std::array noted_ones = {
    NotedMotif{noted("Puffin"), noted("bird cliff beak standing")},
    NotedMotif{noted("Gull in flight"), noted("bird seagull wings")},
    NotedMotif{noted("Tern"), noted("bird fork tail wings diving")},
    NotedMotif{noted("Eider duck"), noted("bird swimming")},
    NotedMotif{noted("Oystercatcher"), noted("bird wader shore long beak legs")},
    NotedMotif{noted("Flock at sea"), noted("birds small wings many")},
    NotedMotif{noted("Fish"), noted("sea swimming")},
    NotedMotif{noted("Herring row"), noted("sea fish shoal border")},
    NotedMotif{noted("Fish bones"), noted("sea skeleton supper")},
    NotedMotif{noted("Whale tail"), noted("sea fluke diving")},
    NotedMotif{noted("Seal"), noted("sea rock resting animal")},
    NotedMotif{noted("Crab"), noted("sea shore claws")},
    NotedMotif{noted("Starfish"), noted("sea shore star")},
    NotedMotif{noted("Scallop"), noted("sea shore shell fan")},
    NotedMotif{noted("Winkle"), noted("sea shore shell snail spiral")},
    NotedMotif{noted("Jellyfish"), noted("sea drifting")},
    NotedMotif{noted("Seaweed"), noted("sea kelp plant")},
    NotedMotif{noted("Buoy"), noted("harbour mark float")},
    NotedMotif{noted("Bell buoy"), noted("harbour mark float sound")},
    NotedMotif{noted("Anchor"), noted("harbour ship iron")},
    NotedMotif{noted("Knot"), noted("harbour rope line")},
    NotedMotif{noted("Lobster pot"), noted("harbour creel trap fishing")},
    NotedMotif{noted("Fishing boat"), noted("harbour ship trawler")},
    NotedMotif{noted("Dinghy"), noted("harbour boat sail sailing")},
    NotedMotif{noted("Lighthouse"), noted("harbour tower light beam")},
    NotedMotif{noted("Lantern"), noted("harbour lamp light")},
    NotedMotif{noted("Crossed oars"), noted("harbour rowing boat")},
    NotedMotif{noted("Mooring ring"), noted("harbour wall iron")},
    NotedMotif{noted("Ship's wheel"), noted("harbour steering helm")},
    NotedMotif{noted("Lifebelt"), noted("harbour ring rescue")},
    NotedMotif{noted("Compass star"), noted("harbour sea rose north")},
    NotedMotif{noted("Breaker"), noted("wave sea curl surf")},
    NotedMotif{noted("Wavelets"), noted("wave sea small border")},
    NotedMotif{noted("Scroll wave"), noted("sea running border")},
    NotedMotif{noted("Tide lines"), noted("wave sea zigzag shore")},
    NotedMotif{noted("Rope"), noted("border twist line")},
    NotedMotif{noted("Harbour wall"), noted("border stone bricks")},
    NotedMotif{noted("Bunting"), noted("border flags pennants regatta")},
    NotedMotif{noted("Chain"), noted("border links iron")},
    NotedMotif{noted("Net"), noted("filler mesh fishing")},
    NotedMotif{noted("Rain"), noted("filler weather drops")},
    NotedMotif{noted("Snow on water"), noted("filler weather winter")},
    NotedMotif{noted("Ripple"), noted("filler water")},
    NotedMotif{noted("Pebbles"), noted("filler shore stones beach")},
    NotedMotif{noted("Fish scales"), noted("filler sea arcs")},
};

} // namespace

std::span<const NotedMotif> noted_motifs() {
  return noted_ones;
}

} // namespace punchwright
