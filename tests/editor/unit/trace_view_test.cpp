// A picture on its way to a drawing: the protected area as it is dragged over the repeats side by side, and as the
// drawing's size changes.
#include "editor/actions.hpp"
#include "editor/trace_view.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

// Dark to the left, light to the right: floats everywhere.
std::shared_ptr<const Photo> halves() {
  constexpr int width = 48;
  constexpr int height = 40;
  std::vector<std::uint8_t> colours;
  for (int pixel = 0; pixel < width * height; ++pixel) {
    colours.insert(colours.end(), 3, static_cast<std::uint8_t>(pixel % width < width / 2 ? 20 : 230));
  }
  return std::make_shared<const Photo>(photo_of(width, height, std::move(colours)));
}

} // namespace

TEST_CASE("an area dragged over the repeats side by side is one of the repeat, round its edge too") {
  TraceDialog dialog;
  dialog.columns = 24;
  dialog.rows = 30;
  CHECK(area_between(dialog, {3, 4}, {7, 9}) == Area{{3, 4}, 5, 6});
  CHECK(area_between(dialog, {7, 9}, {3, 4}) == Area{{3, 4}, 5, 6});
  CHECK(area_between(dialog, {22, 0}, {25, 0}) == Area{{22, 0}, 4, 1}); // into the next repeat
  CHECK(area_between(dialog, {50, 2}, {50, 2}) == Area{{2, 2}, 1, 1});
  CHECK(area_between(dialog, {0, 0}, {71, 0}) == Area{{0, 0}, 24, 1}); // no wider than the repeat
}

TEST_CASE("a protected area stays as the picture has it, and within a drawing that has become smaller") {
  const App app = make_app();
  const Document& design = app.work.design;
  TraceDialog dialog = trace_dialog("halves.png", halves(), design, app.work.profile);
  CHECK(dialog.traced.unmendable.empty());
  CHECK(dialog.traced.moved > 0);
  dialog.how.kept.push_back({{0, 2}, dialog.columns, 3});
  dialog = retraced(dialog, design);
  CHECK(dialog.traced.unmendable.size() == 3);
  CHECK(dialog.traced.unmendable.front().row == 2);
  for (int column = 0; column < dialog.columns; ++column) {
    CHECK(dialog.traced.drawing.at(column, 3) == (column < dialog.columns / 2));
  }
  dialog.columns = 12;
  dialog.rows = 4;
  dialog = retraced(dialog, design);
  CHECK(dialog.how.kept.front() == Area{{0, 2}, 12, 2});
}
