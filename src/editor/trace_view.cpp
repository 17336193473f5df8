// What is chosen, traced.
#include "editor/trace_view.hpp"

#include "machine/placement.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace punchwright::editor {

namespace {

constexpr int shown_cells = 96; // of the photo either way: enough to aim by, few enough to draw at every frame

// The photo with one pixel of each cell.
SmallPicture shown_photo(const Photo& photo) {
  SmallPicture shown;
  const double step =
      std::max({1.0, photo.width / static_cast<double>(shown_cells), photo.height / static_cast<double>(shown_cells)});
  shown.columns = std::max(1, static_cast<int>(photo.width / step));
  shown.rows = std::max(1, static_cast<int>(photo.height / step));
  shown.shape = static_cast<float>(photo.height) / static_cast<float>(shown.rows) /
                (static_cast<float>(photo.width) / static_cast<float>(shown.columns));
  for (int row = 0; row < shown.rows; ++row) {
    const int y = (2 * (shown.rows - 1 - row) + 1) * photo.height / (2 * shown.rows);
    for (int column = 0; column < shown.columns; ++column) {
      shown.cells.push_back(photo.colour_at((2 * column + 1) * photo.width / (2 * shown.columns), y));
    }
  }
  return shown;
}

} // namespace

Lattice lattice_of(const TraceDialog& dialog) {
  return lattice_at(dialog.left, dialog.top, dialog.width, dialog.columns, dialog.rows, dialog.gauge);
}

TraceDialog trace_dialog(const std::filesystem::path& path, std::shared_ptr<const Photo> photo, const Document& design,
                         const Profile& profile) {
  TraceDialog dialog;
  dialog.path = path;
  dialog.photo = std::move(photo);
  dialog.gauge = design.gauge;
  dialog.columns = profile.card ? profile.card->repeat : 24;
  // As many rows as keep the whole of it, within one blank.
  const double height =
      dialog.columns * dialog.photo->height * design.gauge.stitch_mm() / (dialog.photo->width * design.gauge.row_mm());
  const int most = profile.card ? profile.card->blank_rows : 60;
  dialog.rows = std::clamp(static_cast<int>(std::lround(height)), 4, most);
  dialog.how.limit = longest_float_of(design, profile);
  const Lattice lattice =
      largest_lattice(dialog.photo->width, dialog.photo->height, dialog.columns, dialog.rows, design.gauge);
  dialog.left = lattice.left;
  dialog.top = lattice.top;
  dialog.width = lattice.stitch_width * lattice.columns;
  dialog.shown = shown_photo(*dialog.photo);
  return retraced(std::move(dialog), design);
}

TraceDialog retraced(TraceDialog dialog, const Document& design) {
  const Lattice lattice = lattice_of(dialog);
  for (Area& area : dialog.how.kept) { // it may have been chosen in a larger drawing
    area.corner.column = std::min(area.corner.column, dialog.columns - 1);
    area.corner.row = std::min(area.corner.row, dialog.rows - 1);
    area.columns = std::min(area.columns, dialog.columns);
    area.rows = std::min(area.rows, dialog.rows - area.corner.row);
  }
  if (dialog.light == nullptr || dialog.light_lattice != lattice || dialog.light_ignored != dialog.ignored) {
    dialog.light = std::make_shared<const std::vector<double>>(light_in(*dialog.photo, lattice, dialog.ignored));
    dialog.light_lattice = lattice;
    dialog.light_ignored = dialog.ignored;
  }
  dialog.traced = trace(*dialog.light, dialog.columns, dialog.how);
  dialog.result =
      small_picture(design_of_trace(dialog, design),
                    repeats_shown * dialog.columns * dialog.gauge.stitch_mm() / (dialog.rows * dialog.gauge.row_mm()));
  return dialog;
}

Area area_between(const TraceDialog& dialog, const Cell& one, const Cell& other) {
  const int left = std::min(one.column, other.column);
  const int low = std::min(one.row, other.row);
  return {{left % dialog.columns, low},
          std::min(dialog.columns, std::abs(one.column - other.column) + 1),
          std::abs(one.row - other.row) + 1};
}

TraceDialog at_best_place(TraceDialog dialog, const Document& design) {
  const auto places = best_places(*dialog.photo, lattice_of(dialog), dialog.gauge, dialog.ignored, dialog.how, 1);
  if (!places.empty()) {
    const Lattice& best = places.front().lattice;
    dialog.left = best.left;
    dialog.top = best.top;
    dialog.width = best.stitch_width * best.columns;
  }
  return retraced(std::move(dialog), design);
}

Document design_of_trace(const TraceDialog& dialog, const Document& design) {
  Document traced = blank_document(dialog.columns, dialog.rows);
  traced.title = dialog.path.stem().string();
  traced.profile = design.profile;
  traced.gauge = design.gauge;
  traced.rules = design.rules;
  traced.card.paper = design.card.paper;
  // The first pair of the design that is open: a picture is traced to be knitted in the yarns at hand.
  if (const Band& band = design.bands.front(); band.contrast) {
    traced.yarns = {yarn_of(design, band.main), yarn_of(design, *band.contrast)};
    traced.bands.front().main = band.main;
    traced.bands.front().contrast = band.contrast;
  }
  traced.grid = dialog.traced.drawing;
  return traced;
}

} // namespace punchwright::editor
