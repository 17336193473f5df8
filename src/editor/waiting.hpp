// The drawing as it would be if what is shown were done now: a shape before the button is released, what hangs over it,
// or rows and columns that are dragged. Its floats are marked and the piece shows it, as they are while the pen draws.
#pragma once

#include "design/document.hpp"
#include "editor/finding_marks.hpp"
#include "editor/strips.hpp"
#include "editor/tools.hpp"
#include "rules/findings.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace punchwright::editor {

struct App;

// Entries of the list of findings.
struct FindingCounts {
  int faults = 0;
  int warnings = 0;
  int notes = 0;
  [[nodiscard]] int all() const { return faults + warnings + notes; }
  bool operator==(const FindingCounts&) const = default;
};

// What the drawing that waits was made from.
struct WaitingKey {
  std::uint64_t opening = 0;
  std::uint64_t revision = 0;
  Grid shape; // its stitches, as contrast
  bool contrast = true;
  std::optional<Floating> floating;
  std::optional<LineDrag> lines;
  MovedYarns moved_yarns = MovedYarns::of_the_place; // of rows that are dragged
  bool operator==(const WaitingKey&) const = default;
};

struct Waiting {
  WaitingKey key;
  Document design;
  Failure refused;             // it can't be done: the design is as it was
  std::vector<Finding> floats; // that are too long in it
  std::vector<Mark> marks;     // of those on the repeat, ascending by row; `finding` is a place in `floats`
  std::vector<char> row_yarns; // as that of the caches
  Strips strips;               // likewise, of rows that are dragged
  FindingCounts counts;        // of all findings in it
};

// The moves that letting the lines go would be, one step together.
[[nodiscard]] std::vector<Edit> edits_of(const LineDrag& lines, const Grid& drawing, MovedYarns moved_yarns);

// The drawing after what hangs over it was set down.
[[nodiscard]] Grid with_set_down(const Grid& drawing, const Floating& floating);

// None: nothing is shown that isn't drawn.
[[nodiscard]] std::optional<WaitingKey> what_waits(const App& app);
[[nodiscard]] Waiting drawn_as_it_waits(const App& app, const WaitingKey& key);

// What the drawing's room shows: dragged rows and columns at the place where they would land, else the design.
[[nodiscard]] const Document& design_in_sight(const App& app);
[[nodiscard]] const std::vector<char>& row_yarns_in_sight(const App& app);

[[nodiscard]] const Strips& strips_in_sight(const App& app);
// The findings of the drawing with what is shown over it, as its floats are marked.
[[nodiscard]] FindingCounts counts_in_sight(const App& app);

// Whether rows or columns are shown at another place than theirs.
[[nodiscard]] bool lines_dragged(const App& app);

// By row, its band's main and contrast (0: none), two a row.
[[nodiscard]] std::vector<char> yarns_by_row(const std::vector<Band>& bands);
[[nodiscard]] bool two_yarns_in(const std::vector<char>& yarns, int row);

} // namespace punchwright::editor
