// The drawing as it would be if what is shown over it were drawn now: a shape before the button is released, or what
// hangs there. Its floats are marked and the piece shows it, as they are while the pen draws.
#pragma once

#include "design/document.hpp"
#include "editor/finding_marks.hpp"
#include "editor/tools.hpp"
#include "rules/findings.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace punchwright::editor {

struct App;

// What the drawing that waits was made from.
struct WaitingKey {
  std::uint64_t opening = 0;
  std::uint64_t revision = 0;
  std::vector<Cell> cells; // of the shape
  bool contrast = true;
  std::optional<Floating> floating;
  bool operator==(const WaitingKey&) const = default;
};

struct Waiting {
  WaitingKey key;
  Document design;
  std::vector<Finding> floats; // that are too long in it
  std::vector<Mark> marks;     // of those on the repeat, ascending by row; `finding` is a place in `floats`
};

// Whether a contrast stitch can be drawn in that row.
[[nodiscard]] bool two_yarns_in(const Document& design, int row);

// The drawing after what hangs over it was set down.
[[nodiscard]] Grid with_set_down(const Grid& drawing, const Floating& floating);

// None: nothing is shown that isn't drawn.
[[nodiscard]] std::optional<WaitingKey> what_waits(const App& app);
[[nodiscard]] Waiting drawn_as_it_waits(const App& app, const WaitingKey& key);

} // namespace punchwright::editor
