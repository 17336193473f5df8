// Applying edits: each works out the drawing after it, and what differs is kept for the way back.
#include "design/edits.hpp"

#include "design/band_rows.hpp"
#include "design/edit_parts.hpp"
#include "design/lines_of_grid.hpp"
#include "design/wrap.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace punchwright {
namespace {

// The drawing after an edit that leaves its size and its bands alone.
Result<Grid> redrawn(const Grid& before, const SetCells& edit) {
  Grid after = before;
  for (const Cell cell : edit.cells) {
    if (cell.column < 0 || cell.column >= before.width() || cell.row < 0 || cell.row >= before.height()) {
      return refusal(said("stitch {} of row {} lies outside the drawing", cell.column + 1, cell.row + 1),
                     said("stitches 1 to {}, rows 1 to {}", before.width(), before.height()));
    }
    after.set(cell.column, cell.row, edit.contrast);
  }
  return after;
}

template <class Change> Grid with_area(const Grid& before, const Area& area, Change&& change) {
  Grid after = before;
  for (int row = 0; row < std::min(area.rows, before.height()); ++row) {
    for (int column = 0; column < std::min(area.columns, before.width()); ++column) {
      change(after, round_edge(area.corner.column + column, before.width()),
             round_edge(area.corner.row + row, before.height()));
    }
  }
  return after;
}

Result<Grid> redrawn(const Grid& before, const Fill& edit) {
  return with_area(before, edit.area, [&](Grid& grid, int column, int row) { grid.set(column, row, edit.contrast); });
}

Result<Grid> redrawn(const Grid& before, const Invert& edit) {
  return with_area(before, edit.area, [](Grid& grid, int column, int row) { grid.flip(column, row); });
}

// A drawing of the same size whose stitch (column, row) is the old one's at from(column, row).
template <class From> Grid rearranged(const Grid& before, From&& from) {
  Grid after(before.width(), before.height());
  for (int row = 0; row < before.height(); ++row) {
    for (int column = 0; column < before.width(); ++column) {
      const Cell source = from(column, row);
      after.set(column, row, before.at(source.column, source.row));
    }
  }
  return after;
}

Result<Grid> redrawn(const Grid& before, const Shift& edit) {
  const int columns = edit.columns % before.width();
  const int rows = edit.rows % before.height();
  return rearranged(before, [&](int column, int row) {
    return Cell{round_edge(column - columns, before.width()), round_edge(row - rows, before.height())};
  });
}

Result<Grid> redrawn(const Grid& before, const MirrorLeftRight&) {
  return rearranged(before, [&](int column, int row) { return Cell{before.width() - 1 - column, row}; });
}

Result<Grid> redrawn(const Grid& before, const Paste& edit) {
  Grid after = before;
  for (int row = 0; row < std::min(edit.drawing.height(), before.height()); ++row) {
    for (int column = 0; column < std::min(edit.drawing.width(), before.width()); ++column) {
      after.set(round_edge(edit.corner.column + column, before.width()),
                round_edge(edit.corner.row + row, before.height()), edit.drawing.at(column, row));
    }
  }
  return after;
}

Result<Grid> redrawn(const Grid& before, const Redraw& edit) {
  if (edit.drawing.width() != before.width() || edit.drawing.height() != before.height()) {
    return refusal(said("a drawing of {} stitches and {} rows doesn't replace one of {} and {}", edit.drawing.width(),
                        edit.drawing.height(), before.width(), before.height()),
                   tr("change the size first"));
  }
  return edit.drawing;
}

Result<Change> keep_differences(Document& document, Result<Grid> redrawn) {
  if (!redrawn) {
    return redrawn.error();
  }
  Grid after = std::move(redrawn).value();
  std::vector<Change::RowDifference> differences;
  for (int row = 0; row < after.height(); ++row) {
    const auto old_words = document.grid.row(row);
    const auto new_words = after.row(row);
    if (std::ranges::equal(old_words, new_words)) {
      continue;
    }
    if (after.has_contrast(row) && !two_yarns_in(document, row)) {
      return refusal(said("row {} belongs to a band of one yarn", row + 1),
                     tr("give the band a contrast yarn first, or draw in another band"));
    }
    Change::RowDifference difference{row, {}};
    std::ranges::transform(old_words, new_words, std::back_inserter(difference.bits), std::bit_xor<>());
    differences.push_back(std::move(difference));
  }
  document.grid = std::move(after);
  return Change{std::move(differences), std::nullopt};
}

Result<Change> exchange_drawing(Document& document, Result<Change::Drawing> rebuilt) {
  if (!rebuilt) {
    return rebuilt.error();
  }
  const Change::Drawing& after = *rebuilt;
  if (after.grid == document.grid && after.bands == document.bands && after.extras == document.extras) {
    return Change{};
  }
  Change change{std::move(rebuilt).value(), std::nullopt};
  exchange(document, change);
  return change;
}

// Edits that change the size of the drawing or its bands.
Result<Change::Drawing> rebuilt(const Document& document, const MirrorUpsideDown&) {
  const Grid& before = document.grid;
  Grid after(before.width(), before.height());
  for (int row = 0; row < before.height(); ++row) {
    std::ranges::copy(before.row(before.height() - 1 - row), after.row(row).begin());
  }
  auto sources = counted(before.height());
  std::ranges::reverse(sources);
  return Change::Drawing{std::move(after), upside_down(document.bands), extras_for_rows(document.extras, sources)};
}

bool has_yarn(const std::vector<Yarn>& yarns, char key) {
  return std::ranges::find(yarns, key, &Yarn::key) != yarns.end();
}

Failure unusable_bands(const Document& document, const std::vector<Band>& bands) {
  int first_row = 0;
  for (const Band& band : bands) {
    if (band.rows < 1) {
      return refusal(tr("a band has no rows"), tr("every band covers at least one row"));
    }
    for (const char key : {band.main, band.contrast.value_or(band.main)}) {
      if (!has_yarn(document.yarns, key)) {
        return refusal(said("a band knits with yarn '{}', which isn't there", key), tr("choose one of the yarns"));
      }
    }
    if (band.contrast == band.main) {
      return refusal(tr("a band's contrast is its main yarn"), tr("choose two yarns, or none as contrast"));
    }
    for (int row = first_row; row < std::min(first_row + band.rows, document.grid.height()); ++row) {
      if (!band.contrast && document.grid.has_contrast(row)) {
        return refusal(said("row {} has contrast stitches", row + 1),
                       tr("a band of one yarn has none: clear its rows first"));
      }
    }
    first_row += band.rows;
  }
  if (first_row != document.grid.height()) {
    return refusal(said("the bands cover {} rows, the drawing has {}", first_row, document.grid.height()),
                   tr("bands together cover every row"));
  }
  return std::nullopt;
}

Result<Change::Drawing> rebuilt(const Document& document, const ChangeBands& edit) {
  if (auto failure = unusable_bands(document, edit.bands)) {
    return *failure;
  }
  return Change::Drawing{document.grid, edit.bands, document.extras};
}

Failure unusable_yarns(const Document& document, const std::vector<Yarn>& yarns) {
  std::set<char> keys;
  for (const Yarn& yarn : yarns) {
    if (!keys.insert(yarn.key).second) {
      return refusal(said("two yarns have the key '{}'", yarn.key), tr("every yarn has a key of its own"));
    }
  }
  for (const Band& band : document.bands) {
    for (const char key : {band.main, band.contrast.value_or(band.main)}) {
      if (!keys.contains(key)) {
        return refusal(said("yarn '{}' is used by a band", key), tr("give the band another yarn first"));
      }
    }
  }
  return std::nullopt;
}

void exchange_settings(Document& document, Document& settings) {
  std::swap(document, settings);
  std::swap(document.grid, settings.grid);
  std::swap(document.marks, settings.marks);
  std::swap(document.bands, settings.bands);
}

Result<Change> change_settings(Document& document, const ChangeSettings& edit) {
  if (auto failure = unusable_yarns(document, edit.settings.yarns)) {
    return *failure;
  }
  if (edit.settings.rules.longest_float && edit.settings.rules.longest_float_mm) {
    return refusal(tr("two limits for floats"), tr("a limit in stitches or one in mm, not both"));
  }
  Document settings = edit.settings;
  settings.grid = document.grid;
  settings.marks = document.marks;
  settings.bands = document.bands;
  if (settings == document) {
    return Change{};
  }
  settings.grid = {};
  settings.marks = {};
  settings.bands.clear();
  exchange_settings(document, settings);
  return Change{Change::Settings{std::move(settings)}, std::nullopt};
}

// The edits that move stitches or set them down anew, and so their marks; the marks themselves.
template <class Kind>
constexpr bool moves_marks =
    std::is_same_v<Kind, Paste> || std::is_same_v<Kind, Shift> || std::is_same_v<Kind, MirrorLeftRight> ||
    std::is_same_v<Kind, ChangeMarks> ||
    (!std::is_same_v<Kind, ChangeBands> && requires(Document it, Kind edit) { rebuilt(it, edit); });

// Marks go where their stitches go: a layer is edited like a drawing that has one band and two yarns.
template <class Kind> Grid layer_after(const Grid& layer, const Kind& edit) {
  if (layer.width() == 0) {
    return {};
  }
  if constexpr (std::is_same_v<Kind, Paste>) {
    return with_area(layer, {edit.corner, edit.drawing.width(), edit.drawing.height()},
                     [](Grid& grid, int column, int row) { grid.set(column, row, false); });
  } else if constexpr (std::is_same_v<Kind, Shift> || std::is_same_v<Kind, MirrorLeftRight>) {
    return redrawn(layer, edit).value();
  } else {
    Document as_drawn;
    as_drawn.grid = layer;
    as_drawn.bands = {Band{layer.height(), 'A', 'B', std::nullopt}};
    return rebuilt(as_drawn, edit).value().grid;
  }
}

template <class Kind> StitchMarks marks_after(const StitchMarks& marks, const Kind& edit) {
  if constexpr (std::is_same_v<Kind, ChangeMarks>) {
    return {without_blank(edit.marks.caught), without_blank(edit.marks.accepted), without_blank(edit.marks.kept)};
  } else {
    return {without_blank(layer_after(marks.caught, edit)), without_blank(layer_after(marks.accepted, edit)),
            without_blank(layer_after(marks.kept, edit))};
  }
}

Failure unusable_marks(const Grid& drawing, const StitchMarks& marks) {
  for (const Grid* const layer : {&marks.caught, &marks.accepted, &marks.kept}) {
    if (layer->width() != 0 && (layer->width() != drawing.width() || layer->height() != drawing.height())) {
      return refusal(said("marks for {} stitches and {} rows don't fit a drawing of {} and {}", layer->width(),
                          layer->height(), drawing.width(), drawing.height()),
                     tr("mark stitches of the drawing as it is"));
    }
  }
  return std::nullopt;
}

void keep_marks(Document& document, StitchMarks after, Change& change) {
  if (after != document.marks) {
    change.marks = std::exchange(document.marks, std::move(after));
  }
}

} // namespace

bool Change::nothing() const {
  const auto* const differences = std::get_if<std::vector<RowDifference>>(&content);
  return differences != nullptr && differences->empty() && !marks;
}

Result<Change> apply_edit(Document& document, const Edit& edit) {
  return std::visit(
      [&](const auto& kind) -> Result<Change> {
        using Kind = std::decay_t<decltype(kind)>;
        Result<Change> change = Change{};
        if constexpr (std::is_same_v<Kind, ChangeMarks>) {
          if (auto failure = unusable_marks(document.grid, kind.marks)) {
            return *failure;
          }
        } else if constexpr (std::is_same_v<Kind, ChangeSettings>) {
          change = change_settings(document, kind);
        } else if constexpr (requires { redrawn(document.grid, kind); }) {
          change = keep_differences(document, redrawn(document.grid, kind));
        } else {
          change = exchange_drawing(document, rebuilt(document, kind));
        }
        if constexpr (moves_marks<Kind>) {
          if (change) {
            keep_marks(document, marks_after(document.marks, kind), *change);
          }
        }
        return change;
      },
      edit);
}

void exchange(Document& document, Change& change) {
  if (auto* const differences = std::get_if<std::vector<Change::RowDifference>>(&change.content)) {
    for (const auto& difference : *differences) {
      const auto words = document.grid.row(difference.row);
      std::ranges::transform(words, difference.bits, words.begin(), std::bit_xor<>());
    }
  } else if (auto* const drawing = std::get_if<Boxed<Change::Drawing>>(&change.content)) {
    std::swap(document.grid, (*drawing)->grid);
    std::swap(document.bands, (*drawing)->bands);
    std::swap(document.extras, (*drawing)->extras);
  } else {
    exchange_settings(document, std::get<Boxed<Change::Settings>>(change.content)->settings);
  }
  if (change.marks) {
    std::swap(document.marks, **change.marks);
  }
}

} // namespace punchwright
