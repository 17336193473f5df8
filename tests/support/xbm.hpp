// Reads the XBM pictures of Debian's xbitmaps package as two-colour drawings: real input that nobody here has drawn.
#pragma once

#include "design/grid.hpp"

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

namespace punchwright::test {

// XBM is C text: two defines and an array of bytes, lowest bit leftmost, rows padded to whole bytes, top row first.
inline Grid read_xbm(const std::string& name) {
  std::ifstream file("/usr/include/X11/bitmaps/" + name);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  const auto number_after = [&](const std::string& word) {
    const auto place = text.find(word + ' ');
    if (place == std::string::npos) {
      throw std::runtime_error("no " + word + " in " + name + ": is the package xbitmaps installed?");
    }
    return std::stoi(text.substr(place + word.size()));
  };
  const int width = number_after("_width");
  const int height = number_after("_height");
  std::vector<int> bytes;
  for (auto place = text.find("0x", text.find('{')); place != std::string::npos; place = text.find("0x", place + 2)) {
    bytes.push_back(std::stoi(text.substr(place, 4), nullptr, 16));
  }
  Grid grid(width, height);
  const int bytes_in_row = (width + 7) / 8;
  for (int line = 0; line < height; ++line) {
    for (int column = 0; column < width; ++column) {
      const int value = bytes.at(static_cast<std::size_t>(line * bytes_in_row + column / 8));
      grid.set(column, height - 1 - line, ((value >> (column % 8)) & 1) != 0);
    }
  }
  return grid;
}

} // namespace punchwright::test
