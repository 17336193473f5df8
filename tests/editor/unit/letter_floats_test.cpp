// The remark beside words that are typed: which letters make a float too long, and where.
#include "editor/actions.hpp"
#include "editor/letter_floats.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

TEST_CASE("a float that letters make is told with the letters at it, and its place among their stitches") {
  App app = make_app();
  app.view.tab = Tab::tools;
  app.work.design.grid = Grid(24, 7);
  app.work.design.bands = {Band{7, 'A', 'B', {}}};
  app.work.design.rules.longest_float = 5;
  for (int row = 0; row < 7; ++row) {
    app.work.design.grid.set_row_text(row, row == 3 ? ".......#...#...#...#...#" : "........................");
  }
  app.view.cursor = Cell{0, 1};
  editor::apply(app, TypeLettering{"i l", LetterHeight::five}); // "#.    .." , three stitches between them
  refresh(app);
  const LetterFloats& made = app.caches.lettering_floats;
  CHECK(made.letters == "i, l");
  REQUIRE_FALSE(made.places.empty());
  for (const LetterFloat& place : made.places) {
    CHECK(place.row != 2); // there the stitches that were drawn before break it
    CHECK(place.columns > 0);
  }
  app.view.face = Face::purl;
  refresh(app);
  CHECK(app.caches.lettering_floats.letters == "i, l");
  editor::apply(app, TypeLettering{"", LetterHeight::five});
  refresh(app);
  CHECK_FALSE(app.caches.lettering.has_value());
}
