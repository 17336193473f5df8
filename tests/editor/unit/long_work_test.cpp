// What a large drawing takes long for is worked out beside the window, and comes to nothing where the drawing has
// changed.
#include "editor/actions.hpp"
#include "editor/long_work.hpp"
#include "mending/catches.hpp"

#include <chrono>
#include <doctest/doctest.h>
#include <thread>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

// Floats of ten stitches in every row.
App app_with(int rows) {
  App app = make_app();
  app.work.design = blank_document(200, rows);
  for (int row = 0; row < rows; ++row) {
    for (int column = row % 7; column < 200; column += 11) {
      app.work.design.grid.set(column, row, true);
    }
  }
  refresh(app);
  return app;
}

App large_app() {
  return app_with(400);
}

Document unmarked(const App& app) {
  Document design = app.work.design;
  design.marks = {};
  return design;
}

void run(App& app, Command command) {
  editor::apply(app, Run{command});
}

} // namespace

TEST_CASE("the mend of a large drawing comes when it is worked out, and is the one that a small one shows at once") {
  App small = app_with(100);
  run(small, Command::mend);
  CHECK_FALSE(small.session.long_work);
  REQUIRE(small.session.mend);

  App app = large_app();
  run(app, Command::mend);
  CHECK_FALSE(app.session.mend);
  CHECK(app.session.message == "Working out the mend …; Escape gives it up");
  while (!follow_long_work(app).taken) {
    REQUIRE(app.session.long_work); // else this would go on for ever
    std::this_thread::sleep_for(std::chrono::milliseconds(2));
  }
  REQUIRE(app.session.mend);
  CHECK(app.session.mend->mended.drawing ==
        mend(app.work.design.grid, mend_wishes(app.work.design, app.work.profile)).drawing);
  run(app, Command::set_down);
  refresh(app);
  CHECK(app.work.history.done() == 1);
  CHECK_FALSE(follow_long_work(app).look_again);
}

TEST_CASE("a drawing that has changed meanwhile is left alone, and it is said") {
  App app = large_app();
  run(app, Command::mend);
  run(app, Command::toggle_stitch);
  finish_long_work(app);
  CHECK_FALSE(app.session.mend);
  CHECK(app.session.message == "The drawing has changed since it was asked: ask again");
  CHECK(app.work.history.done() == 1);
}

TEST_CASE("Escape gives up what is being worked out, and asking again begins anew") {
  App app = large_app();
  const Document before = app.work.design;
  run(app, Command::mend);
  run(app, Command::focus_drawing);
  CHECK_FALSE(app.session.long_work);
  CHECK(app.session.message == "The drawing stays as it is");
  finish_long_work(app);
  CHECK_FALSE(app.session.mend);
  run(app, Command::symmetry_upright);
  run(app, Command::make_symmetric);
  run(app, Command::mend);
  finish_long_work(app);
  CHECK(app.session.mend);
  CHECK(app.work.design == before);
}

TEST_CASE("what comes of it waits until the hand has let go") {
  App app = large_app();
  run(app, Command::mend);
  run(app, Command::tool_rectangle);
  editor::apply(app, BeginStroke{Cell{2, 2}, false});
  editor::apply(app, StrokeTo{Cell{9, 9}});
  for (int look = 0; look < 300 && follow_long_work(app).look_again; ++look) {
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
  }
  CHECK_FALSE(follow_long_work(app).taken);
  CHECK_FALSE(app.session.mend);
  CHECK(app.session.stroke);
  editor::apply(app, EndStroke{}); // draws, so that the mend is one of another drawing
  CHECK(follow_long_work(app).taken);
  CHECK_FALSE(app.session.mend);
}

TEST_CASE("a large drawing is made symmetric as one step") {
  App app = large_app();
  run(app, Command::symmetry_upright);
  run(app, Command::make_symmetric);
  CHECK(app.work.history.done() == 0);
  finish_long_work(app);
  CHECK(app.work.history.done() == 1);
  CHECK(has_symmetry(app.work.design.grid, nearest_with(app.work.design.grid, FriezeGroup::p1m1)->frieze));
}

TEST_CASE("all floats of a large drawing are caught as one step, when the catches are worked out") {
  App app = large_app();
  run(app, Command::catch_all);
  CHECK(app.work.history.done() == 0);
  finish_long_work(app);
  CHECK(app.work.history.done() == 1);
  CHECK(app.work.design.marks ==
        catch_floats(unmarked(app), app.work.profile, floats_too_long(unmarked(app), app.work.profile)).marks);
  CHECK(floats_too_long(app.work.design, app.work.profile).empty());
}
