// The palette.
#include "editor/yarn_palette.hpp"

#include "drawing/word_search.hpp"

#include <array>

namespace punchwright::editor {

namespace {

struct Entry {
  const char* name;
  const char* family;
  Colour colour;
};

constexpr std::array entries = {
    Entry{"Whitewash", "white light", {0xf4, 0xf0, 0xe6}},
    Entry{"Gull", "white grey light", {0xe6, 0xe7, 0xe4}},
    Entry{"Oat", "white cream light", {0xe8, 0xdc, 0xc2}},
    Entry{"Sailcloth", "white cream light", {0xd9, 0xcb, 0xa8}},
    Entry{"Driftwood", "brown grey", {0xb5, 0xa3, 0x8c}},
    Entry{"Wet Sand", "brown", {0x9a, 0x82, 0x62}},
    Entry{"Net Cork", "brown", {0x80, 0x5f, 0x3f}},
    Entry{"Tarred Rope", "brown dark", {0x4c, 0x38, 0x2a}},
    Entry{"Fog", "grey light", {0xc4, 0xca, 0xcc}},
    Entry{"Mackerel", "grey", {0x8e, 0x9a, 0xa0}},
    Entry{"Slate Roof", "grey dark", {0x5a, 0x65, 0x6d}},
    Entry{"Anchor", "grey dark", {0x38, 0x40, 0x47}},
    Entry{"Coal Wharf", "black dark", {0x1e, 0x1f, 0x22}},
    Entry{"Primrose", "yellow light", {0xf0, 0xe0, 0x9a}},
    Entry{"Oilskin", "yellow", {0xe9, 0xc2, 0x3a}},
    Entry{"Brass", "yellow brown", {0xc0, 0x8a, 0x2c}},
    Entry{"Lichen", "yellow green", {0xb4, 0xb0, 0x4a}},
    Entry{"Puffin Bill", "orange", {0xe0, 0x74, 0x2a}},
    Entry{"Rowanberry", "orange red", {0xce, 0x5f, 0x2f}},
    Entry{"Rust", "orange brown red", {0xa0, 0x48, 0x2a}},
    Entry{"Shell", "pink light", {0xf0, 0xcf, 0xc2}},
    Entry{"Shrimp", "pink", {0xe2, 0x93, 0x82}},
    Entry{"Thrift", "pink", {0xd0, 0x6f, 0x93}},
    Entry{"Crab", "red", {0xc4, 0x3d, 0x32}},
    Entry{"Signal Red", "red", {0xb0, 0x1f, 0x2c}},
    Entry{"Port Light", "red dark", {0x7d, 0x1a, 0x2a}},
    Entry{"Bramble", "purple red dark", {0x56, 0x1f, 0x3a}},
    Entry{"Sea Lavender", "purple light", {0xb6, 0xa4, 0xcc}},
    Entry{"Heather", "purple", {0x86, 0x60, 0x92}},
    Entry{"Mussel", "purple blue dark", {0x3a, 0x35, 0x58}},
    Entry{"Spray", "blue light", {0xc2, 0xdd, 0xe6}},
    Entry{"Haze", "blue light", {0x93, 0xb4, 0xcb}},
    Entry{"Flax", "blue", {0x5d, 0x8c, 0xbe}},
    Entry{"Slack Water", "blue", {0x2e, 0x6e, 0x90}},
    Entry{"Harbour Blue", "blue", {0x24, 0x58, 0x8c}},
    Entry{"Jersey", "blue dark", {0x24, 0x3a, 0x6b}},
    Entry{"Ink", "blue black dark", {0x20, 0x30, 0x4a}},
    Entry{"Shallows", "green blue light", {0x9f, 0xd0, 0xc6}},
    Entry{"Verdigris", "green blue", {0x4f, 0xa0, 0x92}},
    Entry{"Deep Channel", "green blue dark", {0x14, 0x55, 0x5c}},
    Entry{"Samphire", "green light", {0xa3, 0xbd, 0x77}},
    Entry{"Starboard", "green", {0x3c, 0x8a, 0x4a}},
    Entry{"Kelp", "green", {0x5f, 0x6d, 0x33}},
    Entry{"Spruce Hill", "green dark", {0x25, 0x4a, 0x36}},
};

} // namespace

std::vector<YarnColour> yarn_palette() {
  return yarn_colours_found("");
}

std::vector<YarnColour> yarn_colours_found(std::string_view words) {
  std::vector<YarnColour> found;
  for (const Entry& entry : entries) {
    if (has_words(std::string(entry.name).append(" ").append(entry.family), words)) {
      found.push_back({entry.name, entry.colour});
    }
  }
  return found;
}

} // namespace punchwright::editor
