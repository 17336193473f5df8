// Mends that keep the drawing's symmetry: offered first, by more stitches where it must be, with the fewest as the
// other choice.
#include "editor/actions.hpp"

#include <doctest/doctest.h>
#include <map>
#include <set>
#include <string>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

void run(App& app, Command command) {
  editor::apply(app, Run{command});
}

// Two floats of six stitches in row 2, each other's mirror image; either of two stitches is the middle of each.
App app_with_a_mirrored_drawing() {
  App app = make_app();
  app.view.canvas = {0, 0, 800, 600};
  app.work.design.grid = Grid(24, 2);
  app.work.design.grid.set_row_text(0, "#..#..#..#.##.#..#..#..#");
  app.work.design.grid.set_row_text(1, "#......#.#.##.#.#......#");
  app.work.design.bands = {Band{2, 'A', 'B', {}}};
  app.caches.valid = false;
  refresh(app);
  return app;
}

bool mirrored(const App& app) {
  REQUIRE(app.session.mend.has_value());
  const auto& changed = app.session.mend->mended.changed;
  REQUIRE(changed.size() == 2);
  return changed[0].column + changed[1].column == 23;
}

// A float of six stitches that lies across the mirror between its two middle ones.
App app_with_a_float_across_the_mirror() {
  App app = make_app();
  app.view.canvas = {0, 0, 800, 600};
  app.work.design.grid = Grid(12, 2);
  app.work.design.grid.set_row_text(0, "#.##.##.##.#");
  app.work.design.grid.set_row_text(1, "#.#......#.#");
  app.work.design.bands = {Band{2, 'A', 'B', {}}};
  app.caches.valid = false;
  refresh(app);
  return app;
}

} // namespace

TEST_CASE("of equally few stitches those are shown that keep the symmetry; asked otherwise, it isn't looked at") {
  App app = app_with_a_mirrored_drawing();
  run(app, Command::mend);
  CHECK(mirrored(app));
  CHECK(app.session.message ==
        "2 stitches would be changed, the fewest that do, and the symmetry (p1m1) is kept. Return "
        "takes them, Escape leaves the drawing as it is");
  run(app, Command::mend_symmetry);
  CHECK_FALSE(mirrored(app));
  CHECK(app.session.message ==
        "2 stitches would be changed, the fewest that do, though the symmetry (p1m1) isn't whole; "
        "2 would keep it (Shift+M). Return takes them, Escape leaves the drawing as it is");
  run(app, Command::mend_symmetry);
  CHECK(mirrored(app));
}

TEST_CASE("asked before, every mend changes the fewest stitches, whatever becomes of the symmetry") {
  App app = app_with_a_mirrored_drawing();
  run(app, Command::mend_symmetry);
  CHECK_FALSE(app.session.mend.has_value());
  CHECK(app.session.message == "Mends change the fewest stitches, whatever becomes of the symmetry");
  run(app, Command::mend);
  CHECK_FALSE(mirrored(app));
  app.session.mend.reset();
  run(app, Command::mend_symmetry);
  run(app, Command::mend);
  CHECK(mirrored(app));
  run(app, Command::set_down);
  const std::string row = app.work.design.grid.row_text(1);
  CHECK(row == std::string(row.rbegin(), row.rend()));
}

TEST_CASE(
    "where the fewest would break the symmetry, more that keep it come first, and the fewest are the other choice") {
  App app = app_with_a_float_across_the_mirror();
  run(app, Command::mend);
  REQUIRE(app.session.mend);
  CHECK(app.session.mend->mended.changed == std::vector<Cell>{{4, 1}, {7, 1}});
  CHECK(app.session.message == "2 stitches would be changed, the fewest that keep the symmetry (p1m1); 1 would do, but "
                               "break it (Shift+M). Return takes them, Escape leaves the drawing as it is");
  run(app, Command::mend_symmetry);
  REQUIRE(app.session.mend);
  CHECK(app.session.mend->mended.changed.size() == 1);
  CHECK(app.session.message ==
        "1 stitch would be changed, the fewest that do, though the symmetry (p1m1) isn't whole; 2 "
        "would keep it (Shift+M). Return takes them, Escape leaves the drawing as it is");
  run(app, Command::mend_symmetry);
  run(app, Command::set_down);
  CHECK(app.session.message == "2 stitches changed");
  CHECK(has_symmetry(app.work.design.grid, centred_frieze(FriezeGroup::p1m1, 12, 2)));
  run(app, Command::undo);
  CHECK(app.work.design.grid == app_with_a_float_across_the_mirror().work.design.grid);
}

TEST_CASE("another choice for a row changes its image too, so that the symmetry stays whole") {
  App app = app_with_a_float_across_the_mirror();
  run(app, Command::mend);
  editor::apply(app, PlaceCursor{Cell{0, 1}});
  // On both sides of the mirror, so that five stitches at most are left between them and beyond: at the third stitch of
  // six from either end, at the second, at the first, or both in the middle.
  std::set<std::string> rows;
  for (int choice = 0; choice < 3; ++choice) {
    run(app, Command::other_mend);
    CHECK(app.session.message.find(" of 3 with as few stitches") != std::string::npos);
    REQUIRE(app.session.mend);
    CHECK(has_symmetry(app.session.mend->mended.drawing, centred_frieze(FriezeGroup::p1m1, 12, 2)));
    CHECK(app.session.mend->mended.changed.size() == 2);
    rows.insert(app.session.mend->mended.drawing.row_text(1));
  }
  CHECK(rows.size() == 3);
}

TEST_CASE("what is marked stays: where it is in the way of the symmetry, the fewest are shown, and said to break it") {
  App app = app_with_a_float_across_the_mirror();
  app.view.marked = Area{{3, 1}, 3, 1};
  run(app, Command::mend);
  REQUIRE(app.session.mend);
  CHECK(app.session.mend->mended.changed.size() == 1);
  CHECK(
      app.session.message.starts_with("1 stitch would be changed, the fewest that do, though the symmetry (p1m1) isn't "
                                      "whole: no mend keeps it. Return takes them"));
}

TEST_CASE("another choice for a row: those that keep the symmetry come before the others that look as well") {
  App app = app_with_a_mirrored_drawing();
  run(app, Command::mend);
  editor::apply(app, PlaceCursor{Cell{0, 1}});
  // Each float may be caught on any of its six stitches, and best on either of its two middle ones: of those four
  // choices two are mirrored.
  constexpr int choices = 36;
  std::map<std::string, bool> by_choice;
  for (int choice = 0; choice < choices; ++choice) {
    run(app, Command::other_mend);
    const std::string& said = app.session.message;
    REQUIRE(said.find(" of 36 ") != std::string::npos);
    if (const std::string which = said.substr(0, said.find(" of ")); which < "Row 2: choice 5" && which.size() == 15) {
      by_choice[which] = mirrored(app);
    }
  }
  CHECK(by_choice == std::map<std::string, bool>{{"Row 2: choice 1", true},
                                                 {"Row 2: choice 2", true},
                                                 {"Row 2: choice 3", false},
                                                 {"Row 2: choice 4", false}});
}
