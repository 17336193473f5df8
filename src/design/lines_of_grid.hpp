// Rows and columns of a drawing put together anew from a list of where each comes from.
// Every edit that inserts, deletes, copies or moves lines says so by such a list, for the stitches, bands and comments.
#pragma once

#include "design/grid.hpp"

#include <vector>

namespace punchwright {

constexpr int new_line = -1; // in a list of sources: a row or column that is all main

// 0 to size - 1.
[[nodiscard]] std::vector<int> counted(int size);

// The drawing whose row r is the old row sources[r]; likewise its columns.
[[nodiscard]] Grid with_rows(const Grid& before, const std::vector<int>& sources);
[[nodiscard]] Grid with_columns(const Grid& before, const std::vector<int>& sources);

// `sources` with `count` of them, from `first` on, taken out and put back so that the first of them stands at `to`.
[[nodiscard]] std::vector<int> with_moved(std::vector<int> sources, int first, int count, int to);

} // namespace punchwright
