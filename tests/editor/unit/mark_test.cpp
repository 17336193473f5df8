// The marked area goes along with rows and columns, and comes back on undo.
#include "drawing/layouts.hpp"
#include "editor/actions.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>
#include <optional>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

App app_with_eight_rows() {
  App app = make_app();
  app.work.design =
      test::drawn({"#######.", "######..", "#####...", "####....", "###.....", "##......", "#.......", "........"});
  app.view.canvas = {0, 0, 800, 600};
  refresh(app);
  return app;
}

void run(App& app, Command command) {
  editor::apply(app, Run{command});
}

// One row, whatever is marked: the command would take the marked ones together.
void delete_row(App& app, int row) {
  editor::apply(app, EditDesign{DeleteRows{row, 1}});
}

void delete_column(App& app, int column) {
  editor::apply(app, EditDesign{DeleteColumns{column, 1}});
}

} // namespace

TEST_CASE("the mark goes along with rows and columns that are inserted or deleted, and back on undo") {
  App app = app_with_eight_rows();
  const Area marked{Cell{3, 4}, 3, 3};
  app.view.marked = marked;
  app.view.cursor = {0, 1};
  run(app, Command::insert_row); // below it
  CHECK(app.view.marked == Area{Cell{3, 5}, 3, 3});
  run(app, Command::insert_column); // at its left
  CHECK(app.view.marked == Area{Cell{4, 5}, 3, 3});
  editor::apply(app, EditDesign{DuplicateRows{6, 1}}); // one of its own
  CHECK(app.view.marked == Area{Cell{4, 5}, 3, 4});
  delete_column(app, 5);
  CHECK(app.view.marked == Area{Cell{4, 5}, 2, 4});
  app.view.cursor = {7, 9};
  run(app, Command::delete_row); // above it
  CHECK(app.view.marked == Area{Cell{4, 5}, 2, 4});
  run(app, Command::undo);
  run(app, Command::redo);
  for (int step = 0; step < 5; ++step) {
    run(app, Command::undo);
  }
  CHECK(app.view.marked == marked);
}

TEST_CASE("a mark that goes round the edge keeps its stitches, and one that is deleted is gone") {
  App app = app_with_eight_rows();
  app.view.marked = Area{Cell{0, 6}, 8, 4}; // rows 7 to 2
  app.view.cursor = {0, 0};
  run(app, Command::insert_row); // between rows 1 and 2
  CHECK(app.view.marked == Area{Cell{0, 7}, 8, 5});
  delete_row(app, 7);
  CHECK(app.view.marked == Area{Cell{0, 7}, 8, 4});
  delete_row(app, 7);
  CHECK(app.view.marked == Area{Cell{0, 0}, 8, 3});
  for (int row = 0; row < 3; ++row) {
    delete_row(app, 0);
  }
  CHECK_FALSE(app.view.marked.has_value());
}

TEST_CASE("a mark whose edge was deleted is whole again on undo, and so is one that was deleted altogether") {
  App app = app_with_eight_rows();
  const Area marked{Cell{2, 3}, 4, 3};
  for (const Cell edge : {Cell{2, 3}, Cell{5, 5}}) {
    for (const Edit& edit : {Edit(DeleteRows{edge.row, 1}), Edit(DeleteColumns{edge.column, 1})}) {
      app.view.marked = marked;
      editor::apply(app, EditDesign{edit});
      const auto after = app.view.marked;
      CHECK(after != marked);
      run(app, Command::undo);
      CHECK(app.view.marked == marked);
      run(app, Command::redo);
      CHECK(app.view.marked == after);
      run(app, Command::undo);
    }
  }
  for (int row = 0; row < 3; ++row) {
    delete_row(app, 3);
  }
  REQUIRE_FALSE(app.view.marked.has_value());
  editor::apply(app, GoToStep{0});
  CHECK(app.view.marked == marked);
  editor::apply(app, GoToStep{2});
  CHECK(app.view.marked == Area{Cell{2, 3}, 4, 1});
}

TEST_CASE("undo puts the mark where it was before a step that moved, turned or dropped it") {
  App app = app_with_eight_rows();
  const Area marked{Cell{1, 2}, 5, 2};
  const auto comes_back = [&](const std::optional<Area>& after) {
    CHECK(app.view.marked == after);
    run(app, Command::undo);
    CHECK(app.view.marked == marked);
    run(app, Command::redo);
    CHECK(app.view.marked == after);
    run(app, Command::undo);
  };
  app.view.marked = marked;
  app.view.cursor = {1, 2};
  run(app, Command::move_row_up);
  comes_back(Area{Cell{1, 3}, 5, 2});
  run(app, Command::turn);
  comes_back(app.view.marked);
  CHECK(app.view.marked->columns == 5);
  editor::apply(app, TakeLayout{Layout::upside_down_above});
  comes_back(std::nullopt);
}

TEST_CASE("a mark that is made after the step stays with its stitches on undo") {
  App app = app_with_eight_rows();
  app.view.marked = Area{Cell{0, 3}, 8, 3};
  delete_row(app, 3);
  app.view.marked = Area{Cell{0, 5}, 8, 2};
  run(app, Command::undo);
  CHECK(app.view.marked == Area{Cell{0, 6}, 8, 2});
  run(app, Command::invert); // whatever was undone is forgotten
  run(app, Command::undo);
  CHECK(app.view.marked == Area{Cell{0, 6}, 8, 2});
}

TEST_CASE("marked rows that are deleted together take the mark along, and one undo brings both back") {
  App app = app_with_eight_rows();
  const Area marked{Cell{2, 6}, 4, 3}; // rows 7 to 1
  app.view.marked = marked;
  app.view.cursor = {2, 7};
  run(app, Command::delete_row);
  CHECK_FALSE(app.view.marked.has_value());
  CHECK(app.work.design.grid.height() == 5);
  run(app, Command::undo);
  CHECK(app.view.marked == marked);
  CHECK(app.work.design.grid.height() == 8);
  app.view.cursor = {7, 3}; // beside the mark: its own row alone
  run(app, Command::delete_row);
  CHECK(app.work.design.grid.height() == 7);
}
