// A design as a small picture: a colour for each stitch, or for several where there is no room for all, and what is
// said of it in lists. For the start page and the file chooser.
#pragma once

#include "design/document.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace punchwright::editor {

struct SmallPicture {
  int columns = 0;
  int rows = 0;
  float shape = 1;           // height of a cell by its width
  std::vector<Colour> cells; // row by row, the lowest first
  [[nodiscard]] Colour at(int column, int row) const {
    return cells[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column)];
  }
};

// The repeat, side by side as often as makes the picture about that much wider than high, at most `most` cells either
// way; a cell of several stitches has their mean colour.
[[nodiscard]] SmallPicture small_picture(const Document& design, double width_by_height, int most = 120);

// A file as it stands in a list.
struct DesignCard {
  std::filesystem::path path;
  std::string title;
  std::string trouble; // why there is no picture; "missing" stands in `missing`
  bool missing = false;
  int stitches = 0;
  int rows = 0;
  std::vector<Yarn> yarns;
  SmallPicture picture;
};

// Reads the file; never fails, since a list shows what can't be read too.
[[nodiscard]] DesignCard design_card(const std::filesystem::path& path, double width_by_height);

} // namespace punchwright::editor
