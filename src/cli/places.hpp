// Places in a drawing as they are typed.
#pragma once

#include "design/edits.hpp"
#include "design/result.hpp"

#include <string>

namespace punchwright::cli {

// "ROWS" or "ROWS:COLUMNS", such as 7 or 5-8:3-9, counted from 1.
[[nodiscard]] Result<Area> area_in(const std::string& place, int width, int height);

} // namespace punchwright::cli
