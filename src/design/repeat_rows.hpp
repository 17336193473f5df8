// The drawing's rows as the .repeat form has them: quoted lines of '.' and '#', the last line being row 1.
// Every stitch keeps its place in the file, so that an error can point at it.
#pragma once

#include "design/grid.hpp"
#include "design/toml_values.hpp"

namespace punchwright {

// `repeat` has 'rows'. After an error the grid is empty.
[[nodiscard]] Grid read_repeat_rows(const TomlTable& repeat, int width, std::string_view text, TomlErrors& errors);

// Line and column of a stitch; row and column from 0, row 0 being the last line.
[[nodiscard]] Spot spot_of_stitch(const toml::array& rows, int row, int column, std::string_view text);

} // namespace punchwright
