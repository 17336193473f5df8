// The marked area, a rectangle of the repeat that may go round its edges: copied, cut, moved, turned, filled.
// Each function gives the edit that does it, one step for undo, and the area that is marked afterwards.
#pragma once

#include "design/edits.hpp"
#include "design/result.hpp"

#include <string>
#include <string_view>

namespace punchwright {

// Areas are taken as they mark: the corner modulo the repeat's size, columns and rows 1 up to the repeat's size.
[[nodiscard]] Area marked(const Area& area, const Grid& repeat);

// The area between two plane cells of a drag, both included, in any order.
[[nodiscard]] Area area_between(Cell corner, Cell opposite, const Grid& repeat);

[[nodiscard]] bool lies_in(Cell cell, const Area& area, const Grid& repeat);

// The stitches of the area, its lowest left stitch at column 0 of row 0: what copying puts on the clipboard.
[[nodiscard]] Grid lifted(const Grid& repeat, const Area& area);

// The repeat with `patch` set down, its lowest left stitch at `corner`, going round the edges; what reaches beyond the
// repeat's own size is left out.
[[nodiscard]] Grid set_down(const Grid& repeat, Cell corner, const Grid& patch);

// Lines of '.' and '#', the highest row first, each with its line end.
[[nodiscard]] std::string text_of(const Grid& drawing);

// Back from text, from wherever it was copied: line ends of any kind; empty lines before, between and behind the rows;
// the blanks that all rows begin with, and those at their ends; ">" before all rows, as mail quotes. Errors stand in a
// file called "text", with line and column: a sign that is neither '.' nor '#', blanks among them; lines of different
// lengths; nothing at all; more than 200 stitches or 2000 rows.
[[nodiscard]] Result<Grid> drawing_from_text(std::string_view text);

struct AreaEdit {
  Edit edit;
  Area area; // marked afterwards
};

[[nodiscard]] AreaEdit paste_at(const Grid& repeat, Cell corner, const Grid& patch);

// Main in the whole area.
[[nodiscard]] AreaEdit cut_area(const Grid& repeat, const Area& area);

// Leaves main behind; `columns` to the right, `rows` upwards.
[[nodiscard]] AreaEdit move_area(const Grid& repeat, const Area& area, int columns, int rows);

// Turned about its lowest left corner, which stays where it is; what the turned area leaves uncovered is main. Refused
// where the turned area is wider or higher than the repeat.
[[nodiscard]] Result<AreaEdit> turn_area(const Grid& repeat, const Area& area, int quarters);

[[nodiscard]] AreaEdit mirror_area_left_right(const Grid& repeat, const Area& area);
[[nodiscard]] AreaEdit mirror_area_upside_down(const Grid& repeat, const Area& area);
[[nodiscard]] AreaEdit invert_area(const Grid& repeat, const Area& area);

// What leaves the area at one edge comes in at the other.
[[nodiscard]] AreaEdit shift_in_area(const Grid& repeat, const Area& area, int columns, int rows);

// `patch` over the whole area, from its lowest left corner on, cut at its edges.
[[nodiscard]] AreaEdit fill_area_with(const Grid& repeat, const Area& area, const Grid& patch);

} // namespace punchwright
