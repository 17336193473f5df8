// Mends that keep the drawing's symmetry: turned on and off, also while a mend is shown.
#include "editor/actions.hpp"

#include <doctest/doctest.h>
#include <map>
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

} // namespace

TEST_CASE("a shown mend is made anew when it is to keep the symmetry, and again when it isn't") {
  App app = app_with_a_mirrored_drawing();
  run(app, Command::mend);
  CHECK_FALSE(mirrored(app));
  run(app, Command::mend_symmetry);
  CHECK(mirrored(app));
  CHECK(app.session.message.find("the symmetry (p1m1) is kept") != std::string::npos);
  run(app, Command::mend_symmetry);
  CHECK_FALSE(mirrored(app));
  CHECK(app.session.message.find("symmetry") == std::string::npos);
}

TEST_CASE("while strokes are completed under a symmetry, mends keep that of the drawing without being asked to") {
  App app = app_with_a_mirrored_drawing();
  editor::apply(app, ChooseSymmetry{centred_frieze(FriezeGroup::p1m1, 24, 2)});
  run(app, Command::mend);
  CHECK(mirrored(app));
  editor::apply(app, ChooseSymmetry{std::nullopt});
  run(app, Command::mend);
  CHECK_FALSE(mirrored(app));
}

TEST_CASE("turned on before, every mend keeps the symmetry, and taking it leaves the drawing mirrored") {
  App app = app_with_a_mirrored_drawing();
  run(app, Command::mend_symmetry);
  CHECK_FALSE(app.session.mend.has_value());
  run(app, Command::mend);
  CHECK(mirrored(app));
  run(app, Command::set_down);
  const std::string row = app.work.design.grid.row_text(1);
  CHECK(row == std::string(row.rbegin(), row.rend()));
}

TEST_CASE("another choice for a row: those that keep the symmetry come before the others that look as well") {
  App app = app_with_a_mirrored_drawing();
  run(app, Command::mend_symmetry);
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
