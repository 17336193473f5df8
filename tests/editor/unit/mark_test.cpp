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
  app.view.cursor = {5, 6};
  run(app, Command::duplicate_row); // one of its own
  CHECK(app.view.marked == Area{Cell{4, 5}, 3, 4});
  run(app, Command::delete_column);
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
  app.view.cursor = {0, 7};
  run(app, Command::delete_row);
  CHECK(app.view.marked == Area{Cell{0, 7}, 8, 4});
  run(app, Command::delete_row);
  CHECK(app.view.marked == Area{Cell{0, 0}, 8, 3});
  for (int row = 0; row < 3; ++row) {
    app.view.cursor = {0, 0};
    run(app, Command::delete_row);
  }
  CHECK_FALSE(app.view.marked.has_value());
}

TEST_CASE("a mark whose edge was deleted is whole again on undo, and so is one that was deleted altogether") {
  App app = app_with_eight_rows();
  const Area marked{Cell{2, 3}, 4, 3};
  for (const Cell edge : {Cell{2, 3}, Cell{5, 5}}) {
    for (const Command command : {Command::delete_row, Command::delete_column}) {
      app.view.marked = marked;
      app.view.cursor = edge;
      run(app, command);
      const auto after = app.view.marked;
      CHECK(after != marked);
      run(app, Command::undo);
      CHECK(app.view.marked == marked);
      run(app, Command::redo);
      CHECK(app.view.marked == after);
      run(app, Command::undo);
    }
  }
  app.view.cursor = {0, 3};
  for (int row = 0; row < 3; ++row) {
    run(app, Command::delete_row);
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
  app.view.cursor = {0, 3};
  run(app, Command::delete_row);
  app.view.marked = Area{Cell{0, 5}, 8, 2};
  run(app, Command::undo);
  CHECK(app.view.marked == Area{Cell{0, 6}, 8, 2});
  run(app, Command::invert); // whatever was undone is forgotten
  run(app, Command::undo);
  CHECK(app.view.marked == Area{Cell{0, 6}, 8, 2});
}
