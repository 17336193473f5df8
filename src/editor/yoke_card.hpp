// A .yoke file as it stands in lists: its first size laid flat, small.
#pragma once

#include "editor/small_picture.hpp"

#include <string>

namespace punchwright::editor {

// Fills title, picture, stitches of the lowest tier's ring, rows and yarns, or says why there is no picture.
void fill_yoke_card(DesignCard& card, const std::string& text);

} // namespace punchwright::editor
