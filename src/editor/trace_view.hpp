// A picture on its way to a drawing: what is chosen, and what comes of it. Pure functions; the dialog shows this value.
#pragma once

#include "editor/small_picture.hpp"
#include "tracing/best_place.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::editor {

struct TraceDialog {
  std::filesystem::path path;
  std::shared_ptr<const Photo> photo;
  SmallPicture shown; // the photo, a few of its pixels to a cell
  Gauge gauge;
  // Where the stitches lie: px of the photo.
  double left = 0;
  double top = 0;
  double width = 1;
  int columns = 24;
  int rows = 60;
  std::optional<IgnoredColour> ignored;
  bool picking = false;          // the next click on the photo chooses the ignored colour
  TraceWishes how;               // with one protected area at most
  std::optional<Cell> kept_from; // where that area is being drawn from: a corner of it, in the repeats side by side
  std::string remark;            // about a number that can't be

  // Worked out from the above by retraced().
  std::shared_ptr<const std::vector<double>> light; // kept while only what follows it changes
  Lattice light_lattice;
  std::optional<IgnoredColour> light_ignored;
  Traced traced;
  SmallPicture result; // three repeats side by side
};

inline constexpr int repeats_shown = 3;

[[nodiscard]] Lattice lattice_of(const TraceDialog& dialog);

// A new one: as much of the picture as there is room for, one card's width, floats as the design wants them.
[[nodiscard]] TraceDialog trace_dialog(const std::filesystem::path& path, std::shared_ptr<const Photo> photo,
                                       const Document& design, const Profile& profile);
// With the drawing that belongs to what is chosen. Light is measured anew only where its place has changed.
[[nodiscard]] TraceDialog retraced(TraceDialog dialog, const Document& design);
// The area between two stitches of the repeats side by side (columns count on from one repeat to the next), one repeat
// wide at most.
[[nodiscard]] Area area_between(const TraceDialog& dialog, const Cell& one, const Cell& other);
// At the place where the picture tiles best, near the height where it is.
[[nodiscard]] TraceDialog at_best_place(TraceDialog dialog, const Document& design);
// The stitches as a design for that machine.
[[nodiscard]] Document design_of_trace(const TraceDialog& dialog, const Document& design);

} // namespace punchwright::editor
