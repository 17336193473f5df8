// Rows and columns inserted, deleted and doubled, with the bands and comments that go with them.
#include "design/band_rows.hpp"
#include "design/edit_parts.hpp"
#include "design/lines_of_grid.hpp"
#include "words/words.hpp"

namespace punchwright {

Result<Change::Drawing> rebuilt(const Document& document, const InsertRows& edit) {
  const Grid& grid = document.grid;
  if (edit.before < 0 || edit.before > grid.height() || edit.count < 1) {
    return refusal(said("{} rows can't be inserted before row {}", edit.count, edit.before + 1),
                   said("at least one row, before row 1 to {}", grid.height() + 1));
  }
  if (auto failure = wrong_size(grid.width(), grid.height() + edit.count)) {
    return *failure;
  }
  auto sources = counted(grid.height());
  sources.insert(sources.begin() + edit.before, static_cast<std::size_t>(edit.count), new_line);
  auto bands = document.bands;
  bands[band_index_at(document, std::max(edit.before - 1, 0))].rows += edit.count;
  return Change::Drawing{with_rows(grid, sources), std::move(bands), extras_for_rows(document.extras, sources)};
}

Result<Change::Drawing> rebuilt(const Document& document, const DeleteRows& edit) {
  const Grid& grid = document.grid;
  if (auto failure = outside(grid, edit.first, edit.count, Lines::rows)) {
    return *failure;
  }
  if (edit.count == grid.height()) {
    return refusal(tr("the last row can't be deleted"), tr("leave one row at least"));
  }
  auto sources = counted(grid.height());
  sources.erase(sources.begin() + edit.first, sources.begin() + edit.first + edit.count);
  return Change::Drawing{with_rows(grid, sources), bands_for_rows(document.bands, sources),
                         extras_for_rows(document.extras, sources)};
}

Result<Change::Drawing> rebuilt(const Document& document, const DuplicateRows& edit) {
  const Grid& grid = document.grid;
  if (auto failure = outside(grid, edit.first, edit.count, Lines::rows)) {
    return *failure;
  }
  if (auto failure = wrong_size(grid.width(), grid.height() + edit.count)) {
    return *failure;
  }
  auto sources = counted(grid.height());
  const std::vector<int> copies(sources.begin() + edit.first, sources.begin() + edit.first + edit.count);
  sources.insert(sources.begin() + edit.first + edit.count, copies.begin(), copies.end());
  return Change::Drawing{with_rows(grid, sources), bands_for_rows(document.bands, sources),
                         extras_for_rows(document.extras, sources)};
}

Result<Change::Drawing> rebuilt(const Document& document, const InsertColumns& edit) {
  const Grid& grid = document.grid;
  if (edit.before < 0 || edit.before > grid.width() || edit.count < 1) {
    return refusal(said("{} columns can't be inserted before column {}", edit.count, edit.before + 1),
                   said("at least one column, before column 1 to {}", grid.width() + 1));
  }
  if (auto failure = wrong_size(grid.width() + edit.count, grid.height())) {
    return *failure;
  }
  auto sources = counted(grid.width());
  sources.insert(sources.begin() + edit.before, static_cast<std::size_t>(edit.count), new_line);
  return Change::Drawing{with_columns(grid, sources), document.bands, document.extras};
}

Result<Change::Drawing> rebuilt(const Document& document, const DeleteColumns& edit) {
  const Grid& grid = document.grid;
  if (auto failure = outside(grid, edit.first, edit.count, Lines::columns)) {
    return *failure;
  }
  if (edit.count == grid.width()) {
    return refusal(tr("the last column can't be deleted"), tr("leave one column at least"));
  }
  auto sources = counted(grid.width());
  sources.erase(sources.begin() + edit.first, sources.begin() + edit.first + edit.count);
  return Change::Drawing{with_columns(grid, sources), document.bands, document.extras};
}

Result<Change::Drawing> rebuilt(const Document& document, const DuplicateColumns& edit) {
  const Grid& grid = document.grid;
  if (auto failure = outside(grid, edit.first, edit.count, Lines::columns)) {
    return *failure;
  }
  if (auto failure = wrong_size(grid.width() + edit.count, grid.height())) {
    return *failure;
  }
  auto sources = counted(grid.width());
  const std::vector<int> copies(sources.begin() + edit.first, sources.begin() + edit.first + edit.count);
  sources.insert(sources.begin() + edit.first + edit.count, copies.begin(), copies.end());
  return Change::Drawing{with_columns(grid, sources), document.bands, document.extras};
}

} // namespace punchwright
