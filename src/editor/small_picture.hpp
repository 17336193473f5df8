// A file as it stands in a list, with its picture: for the start page and the file chooser.
#pragma once

#include "pictures/small_picture.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace punchwright::editor {

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
