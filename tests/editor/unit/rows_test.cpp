// Rows and columns moved by the strips and by keys, the yarns of rows, the size with its anchor, layouts: as actions.
#include "editor/actions.hpp"
#include "editor/picture_views.hpp"
#include "support/builders.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <utility>

using namespace punchwright;
using namespace punchwright::editor;
using test::drawn;
using test::lines_of;
using Lines = std::vector<std::string>;

namespace {

// Four rows of which each has its own number of contrast stitches, in two bands.
App app_with_rows() {
  App app = make_app();
  app.work.design = drawn({"####", "###.", "##..", "#..."});
  app.work.design.yarns = test::five_yarns();
  app.work.design.bands = {Band{2, 'A', 'B', std::nullopt}, Band{2, 'A', 'C', std::nullopt}};
  app.view.canvas = {0, 0, 800, 600};
  refresh(app);
  return app;
}

void run(App& app, Command command) {
  editor::apply(app, Run{command});
}

void drag(App& app, bool rows, int from, int to) {
  editor::apply(app, BeginLineDrag{rows, from});
  editor::apply(app, LineDragTo{to});
  editor::apply(app, EndLineDrag{});
}

const Document& design(const App& app) {
  return app.work.design;
}

} // namespace

TEST_CASE("a row dragged to another place is one step, and undo gives the identical design") {
  App app = app_with_rows();
  const Document before = design(app);
  drag(app, true, 0, 3);
  CHECK(lines_of(design(app).grid) == Lines{"#...", "####", "###.", "##.."});
  CHECK(app.work.history.done() == 1);
  CHECK(app.view.cursor.row == 3);
  CHECK(app.session.message == "Row 1 is row 4 now");
  run(app, Command::undo);
  CHECK(design(app) == before);
}

TEST_CASE("by and by, any moves of rows and columns are undone to the identical design") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    test::Dice dice(seed);
    App app = app_with_rows();
    const Document before = design(app);
    for (int count = 0; count < 6; ++count) {
      if (dice.heads()) {
        run(app, Command::move_with_yarns);
      }
      const int line = dice.throw_one(4);
      app.view.marked = Area{Cell{dice.throw_one(4), dice.throw_one(4)}, 1 + dice.throw_one(3), 1 + dice.throw_one(3)};
      drag(app, dice.heads(), line, dice.throw_one(9) - 2);
    }
    const Document after = design(app);
    const std::size_t steps = app.work.history.done();
    editor::apply(app, GoToStep{0});
    REQUIRE(design(app) == before);
    editor::apply(app, GoToStep{steps});
    REQUIRE(design(app) == after);
  }
}

TEST_CASE("a row takes the yarns of the place, or its own along") {
  App app = app_with_rows();
  drag(app, true, 0, 3);
  CHECK(design(app).bands == std::vector<Band>{Band{1, 'A', 'B', std::nullopt}, Band{3, 'A', 'C', std::nullopt}});
  run(app, Command::undo);
  run(app, Command::move_with_yarns);
  drag(app, true, 0, 3);
  CHECK(design(app).bands == std::vector<Band>{Band{1, 'A', 'B', std::nullopt}, Band{2, 'A', 'C', std::nullopt},
                                               Band{1, 'A', 'B', std::nullopt}});
}

TEST_CASE("the marked rows go together, held by any of them, and stop at the edges") {
  App app = app_with_rows();
  app.view.marked = Area{Cell{1, 0}, 2, 2};
  drag(app, true, 1, 9);
  CHECK(lines_of(design(app).grid) == Lines{"##..", "#...", "####", "###."});
  CHECK(app.view.marked->corner.row == 2);
  CHECK(app.session.message == "Rows 1 to 2 are 3 to 4 now");
  drag(app, true, 0, 1); // not a marked one
  CHECK(lines_of(design(app).grid) == Lines{"##..", "#...", "###.", "####"});
}

TEST_CASE("columns are dragged alike") {
  App app = app_with_rows();
  drag(app, false, 0, 2);
  CHECK(lines_of(design(app).grid) == Lines{"####", "###.", "#.#.", "..#."});
}

TEST_CASE("Escape gives a drag up, and a mere click moves the cursor only") {
  App app = app_with_rows();
  editor::apply(app, BeginLineDrag{true, 1});
  editor::apply(app, LineDragTo{3});
  CHECK(app.session.line_drag->to == 3);
  run(app, Command::focus_drawing);
  editor::apply(app, EndLineDrag{});
  CHECK(app.work.history.done() == 0);
  drag(app, true, 2, 2);
  CHECK(app.work.history.done() == 0);
  CHECK(app.view.cursor.row == 2);
  editor::apply(app, BeginLineDrag{true, 7}); // beside the drawing
  CHECK_FALSE(app.session.line_drag.has_value());
}

namespace {

// The rows that the floats which wait are marked in, with their lengths.
std::vector<std::pair<int, int>> floats_that_wait(const App& app) {
  std::vector<std::pair<int, int>> floats;
  for (const Mark& mark : app.caches.waiting->marks) {
    floats.emplace_back(mark.row, app.caches.waiting->floats[static_cast<std::size_t>(mark.finding)].stitches);
  }
  return floats;
}

} // namespace

TEST_CASE("while a column is dragged, the floats that it would make are marked, and go when it is given up") {
  App app = make_app();
  app.work.design = drawn({"#...#...", "#...#...", "#.#.#.#."});
  app.work.design.rules.longest_float = 3;
  app.view.canvas = {0, 0, 800, 600};
  app.view.piece_box = {0, 0, 200, 200};
  refresh(app);
  REQUIRE(app.caches.marks.size() > 0);
  CHECK_FALSE(std::ranges::any_of(app.caches.findings, is_long_float_of_repeat));
  editor::apply(app, BeginLineDrag{false, 4});
  refresh(app);
  CHECK_FALSE(app.caches.waiting.has_value()); // nothing has moved yet
  const std::uint64_t piece = app.caches.piece.serial;
  editor::apply(app, LineDragTo{3});
  CHECK(refresh(app));
  CHECK(floats_that_wait(app) == std::vector<std::pair<int, int>>{{1, 4}, {2, 4}});
  CHECK(lines_of(design_in_sight(app).grid) == Lines{"#..#....", "#..#....", "#.##..#."});
  CHECK(app.caches.piece.serial > piece);
  CHECK(app.work.history.done() == 0);
  editor::apply(app, LineDragTo{4});
  refresh(app);
  CHECK_FALSE(app.caches.waiting.has_value());
  CHECK(lines_of(design_in_sight(app).grid) == lines_of(design(app).grid));
  editor::apply(app, LineDragTo{3});
  editor::apply(app, EndLineDrag{});
  refresh(app);
  CHECK_FALSE(app.caches.waiting.has_value());
  CHECK(std::ranges::count_if(app.caches.findings, is_long_float_of_repeat) == 2);
}

TEST_CASE(
    "a row that is dragged is shown in the yarns of the place, with its float, or it is said why it can't go there") {
  App app = app_with_rows();
  app.work.design.rules.longest_float = 2;
  editor::apply(app, BeginLineDrag{true, 0});
  editor::apply(app, LineDragTo{2});
  refresh(app);
  const auto floats = floats_that_wait(app);
  CHECK(std::ranges::count(floats, std::pair{2, 3}) == 1); // of the one contrast stitch, beside itself
  CHECK(std::ranges::none_of(floats, [](const auto& float_of) { return float_of.first == 0; }));
  CHECK(lines_of(design_in_sight(app).grid) == Lines{"####", "#...", "###.", "##.."});
  CHECK(row_yarns_in_sight(app) == std::vector<char>{'A', 'B', 'A', 'C', 'A', 'C', 'A', 'C'});
  CHECK_FALSE(app.caches.waiting->refused);
  // Into a band of one yarn no contrast can go.
  App plain = app_with_rows();
  plain.work.design = drawn({"....", "....", "##..", "#..."});
  plain.work.design.bands = {Band{2, 'A', 'B', std::nullopt}, Band{2, 'A', std::nullopt, std::nullopt}};
  ++plain.work.opening;
  editor::apply(plain, BeginLineDrag{true, 0});
  editor::apply(plain, LineDragTo{3});
  refresh(plain);
  REQUIRE(plain.caches.waiting->refused);
  CHECK(plain.caches.waiting->refused->message.find("one yarn") != std::string::npos);
  CHECK(design_in_sight(plain) == plain.work.design);
}

TEST_CASE("while a row is dragged into another band, the strips of plain rows are where they will be") {
  for (const MovedYarns yarns : {MovedYarns::of_the_place, MovedYarns::their_own}) {
    for (int from = 0; from < 4; ++from) {
      for (int to = 0; to < 4; ++to) {
        CAPTURE(from);
        CAPTURE(to);
        App app = app_with_rows();
        app.view.moved_yarns = yarns;
        REQUIRE(app.caches.strips.up_to == std::vector<int>{0, 0, 1, 1});
        editor::apply(app, BeginLineDrag{true, from});
        editor::apply(app, LineDragTo{to});
        refresh(app);
        const Strips shown = strips_in_sight(app);
        // The row in the hand lies where the pointer, which is read without the new strips, has it.
        const CanvasLayout seen = layout_in_sight(app, app.view.canvas);
        CHECK(box_of(seen, Cell{0, to}) == box_of(layout_of(app, app.view.canvas), Cell{0, to}));
        CHECK(std::vector<int>(seen.strips_up_to.begin(), seen.strips_up_to.end()) == shown.up_to);
        editor::apply(app, EndLineDrag{});
        refresh(app);
        CHECK(shown == app.caches.strips);
      }
    }
  }
  App app = app_with_rows();
  editor::apply(app, BeginLineDrag{true, 0});
  editor::apply(app, LineDragTo{3});
  refresh(app);
  CHECK(strips_in_sight(app).up_to == std::vector<int>{0, 1, 1, 1}); // one row of the lower band is left
  run(app, Command::focus_drawing);                                  // Escape
  refresh(app);
  CHECK(strips_in_sight(app).up_to == std::vector<int>{0, 0, 1, 1});
}

TEST_CASE("by keys a row goes one further, and stays at the edge") {
  App app = app_with_rows();
  app.view.cursor = {0, 2};
  run(app, Command::move_row_up);
  CHECK(lines_of(design(app).grid) == Lines{"###.", "####", "##..", "#..."});
  CHECK(app.view.cursor.row == 3);
  run(app, Command::move_row_up);
  CHECK(app.work.history.done() == 1);
  run(app, Command::move_column_right);
  CHECK(lines_of(design(app).grid) == Lines{"###.", "####", "##..", ".#.."});
}

TEST_CASE("other yarns for a band or for one row, as one step with a name") {
  App app = app_with_rows();
  editor::apply(app, SetYarnsHere{2, 2, 'D', 'E'});
  CHECK(design(app).bands == std::vector<Band>{Band{2, 'A', 'B', std::nullopt}, Band{2, 'D', 'E', std::nullopt}});
  editor::apply(app, SetYarnsHere{1, 1, 'D', 'E'});
  CHECK(design(app).bands == std::vector<Band>{Band{1, 'A', 'B', std::nullopt}, Band{1, 'D', 'E', std::nullopt},
                                               Band{2, 'D', 'E', std::nullopt}});
  CHECK(app.work.history.steps().back().name == "yarns of rows");
  editor::apply(app, SetYarnsHere{0, 1, 'A', std::nullopt});
  CHECK(app.session.message.find("Row 1") != std::string::npos); // it has contrast stitches
  CHECK(app.work.history.done() == 2);
}

TEST_CASE("the yarns are asked for at the cursor's row") {
  App app = app_with_rows();
  app.view.cursor = {0, 3};
  run(app, Command::yarns_here);
  const auto* const dialog = std::get_if<YarnsHereDialog>(&app.session.dialog);
  REQUIRE(dialog != nullptr);
  CHECK(dialog->row == 3);
  CHECK(dialog->at.x == 800);
}

TEST_CASE("a layout is shown before it is taken, with the reason where the card is too narrow") {
  App app = app_with_rows();
  run(app, Command::lay_out);
  const auto* const dialog = std::get_if<LayoutDialog>(&app.session.dialog);
  REQUIRE(dialog != nullptr);
  CHECK(dialog->width == 4);
  CHECK(dialog->rows == 8);
  CHECK(dialog->trouble.empty());
  CHECK(dialog->shown.columns > 0);
  editor::apply(app, TakeLayout{Layout::mirrored_beside});
  CHECK(design(app).grid.width() == 8);
  CHECK(app.work.history.done() == 1);
  editor::apply(app, TakeLayout{Layout::mirrored_beside});
  editor::apply(app, TakeLayout{Layout::mirrored_beside});
  CHECK(design(app).grid.width() == 8); // 16 stitches don't divide the card's 24
  CHECK(app.session.message.find("the card repeats over 24") != std::string::npos);
  const LayoutDialog refused = layout_dialog(design(app), app.work.profile, Layout::mirrored_beside);
  CHECK(refused.trouble.find("the card repeats over 24") != std::string::npos);
  CHECK(refused.width == 16);
  const LayoutDialog odd = layout_dialog(drawn({"#.."}), app.work.profile, Layout::brick);
  CHECK(odd.trouble.find("no whole number") != std::string::npos);
  CHECK(odd.shown.columns == 0);
  run(app, Command::undo);
  CHECK(design(app) == app_with_rows().work.design);
}

namespace {

// Rows of which each is told by the number of its contrast stitches, the lowest first.
std::vector<int> stitches_by_row(const App& app) {
  std::vector<int> counts;
  const Grid& grid = app.work.design.grid;
  for (int row = 0; row < grid.height(); ++row) {
    counts.push_back(static_cast<int>(std::ranges::count(grid.row_text(row), '#')));
  }
  return counts;
}

App app_with_eight_rows() {
  App app = make_app();
  app.work.design =
      drawn({"#######.", "######..", "#####...", "####....", "###.....", "##......", "#.......", "........"});
  app.view.canvas = {0, 0, 800, 600};
  refresh(app);
  return app;
}

} // namespace

TEST_CASE(
    "marked rows that go round the upper edge go together too: the row that they pass comes to their other side") {
  App app = app_with_eight_rows();
  const Document before = design(app);
  app.view.marked = Area{Cell{0, 6}, 2, 4}; // rows 7 to 2
  app.view.cursor = {0, 7};
  run(app, Command::move_row_down);
  CHECK(stitches_by_row(app) == std::vector<int>{1, 5, 2, 3, 4, 6, 7, 0});
  CHECK(app.view.marked == Area{Cell{0, 5}, 2, 4});
  CHECK(app.view.cursor.row == 6);
  CHECK(app.session.message == "Rows 7 to 2 are 6 to 1 now");
  CHECK(app.work.history.done() == 1);
  run(app, Command::undo);
  CHECK(design(app) == before);
  app.view.marked = Area{Cell{0, 6}, 2, 4};
  app.view.cursor = {0, 1};
  run(app, Command::move_row_up);
  CHECK(stitches_by_row(app) == std::vector<int>{7, 0, 1, 3, 4, 5, 2, 6});
  CHECK(app.view.marked == Area{Cell{0, 7}, 2, 4});
  CHECK(app.session.message == "Rows 7 to 2 are 8 to 3 now");
}

TEST_CASE("moved by one again and again, or dragged all the way at once: the same drawing") {
  for (const bool rows : {true, false}) {
    for (int to = -9; to <= 9; ++to) {
      App by_keys = app_with_eight_rows();
      App by_mouse = app_with_eight_rows();
      for (App* const app : {&by_keys, &by_mouse}) {
        app->view.marked = rows ? Area{Cell{0, 6}, 2, 4} : Area{Cell{6, 0}, 4, 2};
        app->view.cursor = {7, 7};
      }
      for (int step = 0; step < std::abs(to); ++step) {
        run(by_keys, rows ? (to < 0 ? Command::move_row_down : Command::move_row_up)
                          : (to < 0 ? Command::move_column_left : Command::move_column_right));
      }
      drag(by_mouse, rows, 7, 7 + to);
      CAPTURE(to);
      CHECK(lines_of(design(by_keys).grid) == lines_of(design(by_mouse).grid));
      CHECK(by_keys.view.marked == by_mouse.view.marked);
      CHECK(by_mouse.work.history.done() == (to == 0 ? 0 : 1));
    }
  }
}

TEST_CASE("where one of the moves is refused, all of them are") {
  App app = app_with_rows();
  app.work.design.bands = {Band{3, 'A', 'B', std::nullopt}, Band{1, 'A', std::nullopt, std::nullopt}};
  app.work.design.grid.set_row_text(3, "....");
  refresh(app);
  const Document before = design(app);
  app.view.marked = Area{Cell{0, 3}, 2, 2}; // rows 4 and 1
  app.view.cursor = {0, 0};
  run(app, Command::move_row_down);
  CHECK(design(app) == before);
  CHECK(app.work.history.steps().empty());
  CHECK(app.session.tone == Tone::trouble);
}
