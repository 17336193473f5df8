// The axes of the chosen symmetry belong to the drawing: chosen where it has them, moved with its rows and columns,
// back again on undo, and taken over from 'make it so'.
#include "editor/actions.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

App ready_app() {
  App app = make_app(); // 24 × 24
  app.view.canvas = {0, 0, 800, 600};
  refresh(app);
  return app;
}

void run(App& app, Command command) {
  editor::apply(app, Run{command});
}

void draw(App& app, std::initializer_list<Cell> cells) {
  editor::apply(app, EditDesign{SetCells{cells, true}});
}

Frieze chosen(const App& app) {
  REQUIRE(app.view.symmetry.has_value());
  return *app.view.symmetry;
}

// A triangle that is mirrored about column 5, and upside down about nothing.
void draw_triangle(App& app) {
  draw(app, {{3, 2}, {4, 2}, {5, 2}, {6, 2}, {7, 2}, {4, 3}, {5, 3}, {6, 3}, {5, 4}});
}

} // namespace

TEST_CASE("a symmetry that the drawing has is chosen with the drawing's axes, and strokes keep it") {
  App app = ready_app();
  draw_triangle(app);
  run(app, Command::symmetry_upright);
  CHECK(chosen(app).upright == 10);
  CHECK(app.session.message.find("axes that the drawing has") != std::string::npos);
  editor::apply(app, BeginStroke{Cell{2, 10}, false});
  editor::apply(app, EndStroke{});
  CHECK(app.work.design.grid.at(8, 10));
  refresh(app);
  CHECK(app.caches.frieze.group == FriezeGroup::p1m1);
}

TEST_CASE("a symmetry that the drawing hasn't has its axes in the middle") {
  App app = ready_app();
  draw_triangle(app);
  run(app, Command::symmetry_level);
  CHECK(chosen(app) == centred_frieze(FriezeGroup::p11m, 24, 24));
}

TEST_CASE("after 'make it so' the axes are the drawing's, so that the next stroke doesn't break it") {
  App app = ready_app();
  draw_triangle(app);
  draw(app, {{12, 9}});
  run(app, Command::symmetry_upright);
  CHECK(chosen(app) == centred_frieze(FriezeGroup::p1m1, 24, 24));
  run(app, Command::make_symmetric);
  CHECK(chosen(app).upright == 10);
  CHECK(has_symmetry(app.work.design.grid, chosen(app)));
  // Again, of what is so already.
  editor::apply(app, ChooseSymmetry{centred_frieze(FriezeGroup::p1m1, 24, 24)});
  run(app, Command::make_symmetric);
  CHECK(app.session.message == "It is so already");
  CHECK(chosen(app).upright == 10);
}

TEST_CASE("after 'make it so' axes that the drawing has stay where they were chosen") {
  App app = ready_app();
  draw(app, {{3, 2}, {9, 2}, {15, 2}, {21, 2}}); // mirrored about every third column
  editor::apply(app, ChooseSymmetry{Frieze{FriezeGroup::p1m1, 24, 18, 0}});
  run(app, Command::make_symmetric);
  CHECK(chosen(app).upright == 18);
}

TEST_CASE("after 'make it so' of a marked area the axes are at their places in it") {
  App app = ready_app();
  draw(app, {{10, 12}, {12, 12}, {11, 13}, {1, 1}, {2, 3}});
  run(app, Command::symmetry_upright);
  app.view.marked = Area{Cell{8, 10}, 8, 6};
  run(app, Command::make_symmetric);
  CHECK(app.session.message == "It is so already");
  CHECK(chosen(app).upright == 22); // column 12, counted from 1
  CHECK(chosen(app).repeat == 24);
}

TEST_CASE("rows below a level axis take it along when they come, go or move; undo and redo bring it back") {
  App app = ready_app();
  draw(app, {{1, 2}, {2, 3}}); // rows that look alike can be moved without any change
  run(app, Command::symmetry_level);
  REQUIRE(chosen(app).level == 23);
  app.view.cursor = {0, 3};
  run(app, Command::insert_row);
  CHECK(chosen(app).level == 25);
  run(app, Command::delete_row);
  CHECK(chosen(app).level == 23);
  run(app, Command::duplicate_row);
  CHECK(chosen(app).level == 25);
  editor::apply(app, EditDesign{MoveRows{2, 3, 20}});
  CHECK(chosen(app).level == 19);
  for (const int level : {25, 23, 25, 23}) {
    run(app, Command::undo);
    CHECK(chosen(app).level == level);
  }
  for (const int level : {25, 23, 25, 19}) {
    run(app, Command::redo);
    CHECK(chosen(app).level == level);
  }
  editor::apply(app, GoToStep{2});
  CHECK(chosen(app).level == 25);
}

TEST_CASE("an axis among deleted rows is where it was once they are back") {
  App app = ready_app();
  editor::apply(app, ChooseSymmetry{Frieze{FriezeGroup::p11m, 24, 0, 8}}); // through row 5
  editor::apply(app, EditDesign{DeleteRows{2, 6}});
  CHECK(chosen(app).level == 3);
  run(app, Command::undo);
  CHECK(chosen(app).level == 8);
}

TEST_CASE("an axis that is moved or chosen after the step goes back with the rows, not to where the old one was") {
  App app = ready_app();
  app.view.cursor = {0, 3};
  run(app, Command::insert_row);
  editor::apply(app, ChooseSymmetry{Frieze{FriezeGroup::p11m, 24, 0, 30}});
  run(app, Command::undo);
  CHECK(chosen(app).level == 28);
  run(app, Command::symmetry_none);
  run(app, Command::redo);
  CHECK_FALSE(app.view.symmetry.has_value());
}

TEST_CASE("columns take the upright axis of the drawing along, and a glide that finds no room says so and comes back") {
  App app = ready_app();
  run(app, Command::symmetry_upright);
  const Frieze before = chosen(app);
  app.view.cursor = {3, 0};
  run(app, Command::insert_column);
  CHECK(chosen(app) == Frieze{FriezeGroup::p1m1, 25, 0, 0}); // the one through column 13.5 of 25 is named by its other
  run(app, Command::undo);
  CHECK(chosen(app) == before);
  run(app, Command::symmetry_glides);
  run(app, Command::insert_column);
  CHECK_FALSE(app.view.symmetry.has_value());
  CHECK(app.session.message.find("put aside") != std::string::npos);
  run(app, Command::undo);
  CHECK(chosen(app) == centred_frieze(FriezeGroup::p11g, 24, 24));
}

TEST_CASE("what was undone and forgotten moves no axes any more") {
  App app = ready_app();
  run(app, Command::symmetry_level);
  run(app, Command::insert_row); // above row 1, below the axis
  run(app, Command::undo);
  draw(app, {{1, 1}});
  run(app, Command::undo);
  CHECK(chosen(app).level == 23);
  run(app, Command::redo);
  CHECK(chosen(app).level == 23);
}
