// The palette.
#include "editor/yarn_palette.hpp"

#include "drawing/word_search.hpp"
#include "words/words.hpp"

#include <array>

namespace punchwright::editor {

namespace {

struct Entry {
  const char* name;
  const char* family;
  Colour colour;
};

constexpr std::array entries = {
    Entry{noted("Whitewash"), noted("white light"), {0xf4, 0xf0, 0xe6}},
    Entry{noted("Gull"), noted("white grey light"), {0xe6, 0xe7, 0xe4}},
    Entry{noted("Oat"), noted("white cream light"), {0xe8, 0xdc, 0xc2}},
    Entry{noted("Sailcloth"), noted("white cream light"), {0xd9, 0xcb, 0xa8}},
    Entry{noted("Driftwood"), noted("brown grey"), {0xb5, 0xa3, 0x8c}},
    Entry{noted("Wet Sand"), noted("brown"), {0x9a, 0x82, 0x62}},
    Entry{noted("Net Cork"), noted("brown"), {0x80, 0x5f, 0x3f}},
    Entry{noted("Tarred Rope"), noted("brown dark"), {0x4c, 0x38, 0x2a}},
    Entry{noted("Fog"), noted("grey light"), {0xc4, 0xca, 0xcc}},
    Entry{noted("Mackerel"), noted("grey"), {0x8e, 0x9a, 0xa0}},
    Entry{noted("Slate Roof"), noted("grey dark"), {0x5a, 0x65, 0x6d}},
    Entry{noted("Anchor"), noted("grey dark"), {0x38, 0x40, 0x47}},
    Entry{noted("Coal Wharf"), noted("black dark"), {0x1e, 0x1f, 0x22}},
    Entry{noted("Primrose"), noted("yellow light"), {0xf0, 0xe0, 0x9a}},
    Entry{noted("Oilskin"), noted("yellow"), {0xe9, 0xc2, 0x3a}},
    Entry{noted("Brass"), noted("yellow brown"), {0xc0, 0x8a, 0x2c}},
    Entry{noted("Lichen"), noted("yellow green"), {0xb4, 0xb0, 0x4a}},
    Entry{noted("Puffin Bill"), noted("orange"), {0xe0, 0x74, 0x2a}},
    Entry{noted("Rowanberry"), noted("orange red"), {0xce, 0x5f, 0x2f}},
    Entry{noted("Rust"), noted("orange brown red"), {0xa0, 0x48, 0x2a}},
    Entry{noted("Shell"), noted("pink light"), {0xf0, 0xcf, 0xc2}},
    Entry{noted("Shrimp"), noted("pink"), {0xe2, 0x93, 0x82}},
    Entry{noted("Thrift"), noted("pink"), {0xd0, 0x6f, 0x93}},
    Entry{noted("Crab"), noted("red"), {0xc4, 0x3d, 0x32}},
    Entry{noted("Signal Red"), noted("red"), {0xb0, 0x1f, 0x2c}},
    Entry{noted("Port Light"), noted("red dark"), {0x7d, 0x1a, 0x2a}},
    Entry{noted("Bramble"), noted("purple red dark"), {0x56, 0x1f, 0x3a}},
    Entry{noted("Sea Lavender"), noted("purple light"), {0xb6, 0xa4, 0xcc}},
    Entry{noted("Heather"), noted("purple"), {0x86, 0x60, 0x92}},
    Entry{noted("Mussel"), noted("purple blue dark"), {0x3a, 0x35, 0x58}},
    Entry{noted("Spray"), noted("blue light"), {0xc2, 0xdd, 0xe6}},
    Entry{noted("Haze"), noted("blue light"), {0x93, 0xb4, 0xcb}},
    Entry{noted("Flax"), noted("blue"), {0x5d, 0x8c, 0xbe}},
    Entry{noted("Slack Water"), noted("blue"), {0x2e, 0x6e, 0x90}},
    Entry{noted("Harbour Blue"), noted("blue"), {0x24, 0x58, 0x8c}},
    Entry{noted("Jersey"), noted("blue dark"), {0x24, 0x3a, 0x6b}},
    Entry{noted("Ink"), noted("blue black dark"), {0x20, 0x30, 0x4a}},
    Entry{noted("Shallows"), noted("green blue light"), {0x9f, 0xd0, 0xc6}},
    Entry{noted("Verdigris"), noted("green blue"), {0x4f, 0xa0, 0x92}},
    Entry{noted("Deep Channel"), noted("green blue dark"), {0x14, 0x55, 0x5c}},
    Entry{noted("Samphire"), noted("green light"), {0xa3, 0xbd, 0x77}},
    Entry{noted("Starboard"), noted("green"), {0x3c, 0x8a, 0x4a}},
    Entry{noted("Kelp"), noted("green"), {0x5f, 0x6d, 0x33}},
    Entry{noted("Spruce Hill"), noted("green dark"), {0x25, 0x4a, 0x36}},
};

} // namespace

std::vector<YarnColour> yarn_palette() {
  return yarn_colours_found("");
}

std::vector<YarnColour> yarn_colours_found(std::string_view words) {
  std::vector<YarnColour> found;
  std::vector<YarnColour> by_family; // behind those that bear the words in their names
  for (const Entry& entry : entries) {
    const char* const name = tr(entry.name);
    if (has_words(std::string(name).append(" ").append(tr(entry.family)), words)) {
      (has_words(name, words) ? found : by_family).push_back({name, entry.colour});
    }
  }
  found.insert(found.end(), by_family.begin(), by_family.end());
  return found;
}

} // namespace punchwright::editor
