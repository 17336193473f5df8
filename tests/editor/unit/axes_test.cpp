// The axes of the chosen symmetry belong to the drawing: chosen where it has them, moved with its rows and columns,
// back again on undo, and taken over from 'make it so'.
#include "drawing/layouts.hpp"
#include "editor/actions.hpp"
#include "support/builders.hpp"

#include <array>
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

TEST_CASE("a symmetry that an odd width puts aside is there again when the width is even, without any undoing") {
  App app = ready_app();
  editor::apply(app, ChooseSymmetry{Frieze{FriezeGroup::p11g, 24, 0, 9}});
  editor::apply(app, EditDesign{Resize{25, 24, AcrossAnchor::left, UpAnchor::bottom}});
  CHECK_FALSE(app.view.symmetry.has_value());
  CHECK(app.view.symmetry_aside == FriezeGroup::p11g);
  CHECK(app.session.message.find("put aside until the width suits it again") != std::string::npos);
  draw(app, {{1, 1}}); // it waits, whatever else is done; its level axis goes along with the rows
  app.view.cursor = {0, 0};
  run(app, Command::insert_row);
  CHECK_FALSE(app.view.symmetry.has_value());
  editor::apply(app, EditDesign{Resize{24, 25, AcrossAnchor::left, UpAnchor::bottom}});
  CHECK(chosen(app) == Frieze{FriezeGroup::p11g, 24, 0, 11});
  CHECK(app.session.message.find("there again") != std::string::npos);
  run(app, Command::undo);
  CHECK(app.view.symmetry_aside == FriezeGroup::p11g);
  CHECK(app.session.message.find("Undone") != std::string::npos);
  run(app, Command::symmetry_none); // given up for good
  run(app, Command::delete_column);
  CHECK_FALSE(app.view.symmetry.has_value());
  CHECK_FALSE(app.view.symmetry_aside.has_value());
}

TEST_CASE("mirrors that an odd width puts aside come back about the columns that they had") {
  App app = ready_app();
  editor::apply(app, ChooseSymmetry{Frieze{FriezeGroup::p2mg, 24, 22, 23}}); // a mirror through column 12
  app.view.cursor = {2, 0};
  run(app, Command::insert_column);
  CHECK_FALSE(app.view.symmetry.has_value());
  run(app, Command::insert_column);
  CHECK(chosen(app) == Frieze{FriezeGroup::p2mg, 26, 0, 23}); // through column 14, and half the repeat on
}

TEST_CASE("another design waits for nothing that was chosen for the one before") {
  App app = ready_app();
  run(app, Command::symmetry_glides);
  run(app, Command::insert_column);
  REQUIRE(app.view.symmetry_aside.has_value());
  editor::apply(app, BeginDesign{NewDialog{}});
  CHECK_FALSE(app.view.symmetry.has_value());
  CHECK_FALSE(app.view.symmetry_aside.has_value());
}

namespace {

bool has_group_somewhere(const Grid& drawing, FriezeGroup group) {
  for (int repeat = 1; repeat <= drawing.width(); ++repeat) {
    for (int upright = 0; upright < (uses_upright_axis(group) ? repeat : 1); ++upright) {
      for (int level = 0; level < (uses_level_axis(group) ? 2 * drawing.height() - 1 : 1); ++level) {
        const Frieze frieze{group, repeat, upright, level};
        if (!unusable_frieze(frieze, drawing.width(), drawing.height()) && has_symmetry(drawing, frieze)) {
          return true;
        }
      }
    }
  }
  return false;
}

Frieze any_frieze(FriezeGroup group, int width, int height, test::Dice& dice) {
  Frieze frieze = centred_frieze(group, width, height);
  if (width % 2 == 0 && (width % 4 == 0 || !needs_even_repeat(group))) {
    frieze.repeat = width / (1 + dice.throw_one(2));
  }
  frieze.upright = uses_upright_axis(group) ? dice.throw_one(frieze.repeat) : 0;
  frieze.level = uses_level_axis(group) ? dice.throw_one(2 * height - 1) : 0;
  return frieze;
}

} // namespace

TEST_CASE("laid out, a drawing has its chosen symmetry about the axes that it goes on with, or has it nowhere") {
  test::Dice dice(46);
  for (const Layout layout : layouts()) {
    for (const FriezeGroup group : frieze_groups()) {
      for (int time = 0; group != FriezeGroup::p1 && time < 40; ++time) {
        CAPTURE(name_of(layout));
        CAPTURE(notation_of(group));
        CAPTURE(time);
        App app = ready_app();
        const int width =
            std::array{4, 6, 12}[static_cast<std::size_t>(dice.throw_one(3))]; // the card takes its double
        const int height = 2 * (1 + dice.throw_one(3));
        editor::apply(app, EditDesign{Resize{width, height, AcrossAnchor::left, UpAnchor::bottom}});
        const Frieze frieze = any_frieze(group, width, height, dice);
        editor::apply(app, ChooseSymmetry{frieze});
        for (int stitch = 0; stitch < 4; ++stitch) {
          editor::apply(app, BeginStroke{Cell{dice.throw_one(width), dice.throw_one(height)}, false});
          editor::apply(app, EndStroke{});
        }
        REQUIRE(has_symmetry(app.work.design.grid, frieze));
        editor::apply(app, TakeLayout{layout});
        const Grid& grid = app.work.design.grid;
        REQUIRE(grid.width() * grid.height() > width * height);
        const auto after = app.view.symmetry;
        if (after) {
          CHECK(after->group == group);
          CHECK(has_symmetry(grid, *after));
        } else {
          CHECK_FALSE(has_group_somewhere(grid, group));
          CHECK(app.session.message.find("put aside") != std::string::npos);
        }
        run(app, Command::undo);
        CHECK(app.view.symmetry == frieze);
        run(app, Command::redo);
        CHECK(app.view.symmetry == after);
      }
    }
  }
}

TEST_CASE("laid out, axes at which the drawing has no symmetry yet stay for the strokes to come") {
  App app = ready_app();
  editor::apply(app, EditDesign{Resize{12, 12, AcrossAnchor::left, UpAnchor::bottom}});
  draw(app, {{1, 2}, {2, 2}, {1, 3}, {1, 4}});
  const Frieze mirror{FriezeGroup::p1m1, 12, 9, 0};
  editor::apply(app, ChooseSymmetry{mirror});
  editor::apply(app, TakeLayout{Layout::brick});
  CHECK(chosen(app) == mirror);
  editor::apply(app, ChooseSymmetry{centred_frieze(FriezeGroup::p11m, 12, 24)});
  editor::apply(app, TakeLayout{Layout::upside_down_above}); // which has the mirror now, at the join
  CHECK(chosen(app) == Frieze{FriezeGroup::p11m, 12, 0, 47});
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
