// The fill shows what it would take before the button is released, as the shapes do, and no shape goes without a word.
#include "design/wrap.hpp"
#include "drawing/frieze.hpp"
#include "drawing/shapes.hpp"
#include "editor/actions.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

void run(App& app, Command command) {
  editor::apply(app, Run{command});
}

// A frame of six by six stitches, sixteen in it.
App app_with_frame() {
  App app = make_app(); // 24 × 24
  app.view.canvas = {0, 0, 800, 600};
  refresh(app);
  run(app, Command::tool_rectangle);
  editor::apply(app, BeginStroke{Cell{4, 4}, false});
  editor::apply(app, StrokeTo{Cell{9, 9}});
  editor::apply(app, EndStroke{});
  return app;
}

std::size_t previewed(const App& app) {
  REQUIRE(app.session.stroke.has_value());
  return contrast_cells(app.session.stroke->preview).size();
}

} // namespace

TEST_CASE("the fill shows what hangs together while the button is held, and takes it as one step when it is let go") {
  App app = app_with_frame();
  const Grid outline = app.work.design.grid;
  run(app, Command::tool_flood);
  editor::apply(app, BeginStroke{Cell{6, 6}, false});
  CHECK(previewed(app) == 16);
  CHECK(app.work.design.grid == outline);
  refresh(app);
  REQUIRE(app.caches.waiting.has_value()); // its floats are marked, and the piece shows it
  CHECK(app.caches.waiting->design.grid.at(6, 6));
  editor::apply(app, EndStroke{});
  CHECK(app.work.history.steps().size() == 2);
  CHECK(app.work.history.steps().back().name == "fill");
  CHECK(app.work.design.grid.at(6, 6));
  CHECK_FALSE(app.session.stroke.has_value());
  run(app, Command::undo);
  CHECK(app.work.design.grid == outline);
}

TEST_CASE("what is filled follows the pointer, into the neighbours too, and is nothing where it is so already") {
  App app = app_with_frame();
  run(app, Command::tool_flood);
  editor::apply(app, BeginStroke{Cell{6, 6}, false});
  editor::apply(app, StrokeTo{Cell{2, 6}});
  CHECK(previewed(app) == 24 * 24 - 36);
  editor::apply(app, StrokeTo{Cell{4, 6}});
  CHECK(previewed(app) == 0);
  editor::apply(app, StrokeTo{Cell{6 - 24, 6 + 24}});
  CHECK(previewed(app) == 16);
  editor::apply(app, EndStroke{});
  CHECK(app.work.design.grid.at(5, 5));
  CHECK_FALSE(app.work.design.grid.at(2, 6));
}

TEST_CASE("Escape gives the fill up, and letting go afterwards fills nothing") {
  App app = app_with_frame();
  const Grid outline = app.work.design.grid;
  run(app, Command::tool_flood);
  editor::apply(app, BeginStroke{Cell{6, 6}, false});
  run(app, Command::focus_drawing);
  editor::apply(app, EndStroke{});
  CHECK(app.work.design.grid == outline);
  CHECK(app.work.history.steps().size() == 1);
}

TEST_CASE("under a symmetry the fill shows what belongs to it") {
  App app = app_with_frame();
  editor::apply(app, ChooseSymmetry{centred_frieze(FriezeGroup::p1m1, 24, 24)});
  run(app, Command::tool_flood);
  editor::apply(app, BeginStroke{Cell{6, 6}, false});
  CHECK(previewed(app) == 32);
}

TEST_CASE("wherever the held pointer goes, the fill shows what it would take from there, as if it began there") {
  for (int seed = 1; seed <= 8; ++seed) {
    CAPTURE(seed);
    test::Dice dice(static_cast<std::uint64_t>(seed));
    App app = make_app();
    app.view.canvas = {0, 0, 800, 600};
    const Grid& grid = app.work.design.grid;
    SetCells drawn{{}, true};
    for (int stitch = 0; stitch < seed * 60; ++stitch) {
      drawn.cells.push_back({dice.throw_one(grid.width()), dice.throw_one(grid.height())});
    }
    REQUIRE(apply_edit(app.work.design, drawn));
    refresh(app);
    run(app, Command::tool_flood);
    const auto expected = [&](Cell at) {
      const bool contrast = app.session.stroke->contrast;
      const auto cells = at_round_edges(grid, at) == contrast ? std::vector<Cell>{} : flood_cells(grid, at);
      return app.view.symmetry ? complete_stroke(cells, *app.view.symmetry, grid.width(), grid.height()).cells : cells;
    };
    const auto choose = [&] { // another symmetry, or none
      const auto group = static_cast<FriezeGroup>(dice.throw_one(7));
      editor::apply(app, ChooseSymmetry{dice.heads() ? std::optional(centred_frieze(group, grid.width(), grid.height()))
                                                     : std::nullopt});
    };
    choose();
    const Cell begin{dice.throw_one(grid.width()), dice.throw_one(grid.height())};
    editor::apply(app, BeginStroke{begin, seed % 3 == 0});
    CHECK(contrast_cells(app.session.stroke->preview) == expected(begin));
    Cell at = begin;
    for (int step = 0; step < 60; ++step) {
      CAPTURE(step);
      if (step % 20 == 19) {
        choose();
      }
      at = dice.heads() ? Cell{at.column + 1, at.row + dice.throw_one(3) - 1}
                        : Cell{dice.throw_one(60) - 20, dice.throw_one(60) - 20};
      editor::apply(app, StrokeTo{at});
      REQUIRE(app.session.stroke.has_value());
      CHECK(contrast_cells(app.session.stroke->preview) == expected(at));
    }
    Grid filled = grid;
    for (const Cell cell : contrast_cells(app.session.stroke->preview)) {
      filled.set(cell.column, cell.row, app.session.stroke->contrast);
    }
    editor::apply(app, EndStroke{});
    CHECK(app.work.design.grid == filled);
  }
}

TEST_CASE("by keys the fill is shown by one press of the space bar and taken by the next") {
  App app = app_with_frame();
  const Grid outline = app.work.design.grid;
  run(app, Command::tool_flood);
  editor::apply(app, PlaceCursor{Cell{6, 6}});
  run(app, Command::toggle_stitch);
  CHECK(previewed(app) == 16);
  CHECK(app.work.design.grid == outline);
  run(app, Command::toggle_stitch);
  CHECK(app.work.design.grid.at(6, 6));
  CHECK(app.work.history.steps().size() == 2);
}

TEST_CASE("a shape that was begun by keys doesn't go without a word when something else is done") {
  for (const Command command : {Command::insert_row, Command::undo, Command::mirror_sideways}) {
    App app = app_with_frame();
    editor::apply(app, PlaceCursor{Cell{1, 1}});
    run(app, Command::toggle_stitch);
    editor::apply(app, MoveCursor{2, 2, false});
    run(app, command);
    CHECK_FALSE(app.session.stroke.has_value());
    CHECK(app.session.message.find("The shape that was begun is given up") == 0);
  }
}

TEST_CASE("a shape that is drawn, or given up by Escape, isn't said to be lost") {
  App app = app_with_frame();
  for (const Command end : {Command::toggle_stitch, Command::focus_drawing}) {
    run(app, Command::toggle_stitch);
    editor::apply(app, MoveCursor{2, 2, false});
    run(app, end);
    CHECK_FALSE(app.session.stroke.has_value());
    CHECK(app.session.message.find("given up") == std::string::npos);
  }
}
