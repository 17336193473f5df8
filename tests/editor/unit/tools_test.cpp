// The tools from press to release, by pointer and by keys, without a window: shapes, marks, what hangs over the
// drawing, symmetry.
#include "design/step_words.hpp"
#include "drawing/marked_area.hpp"
#include "drawing/shapes.hpp"
#include "drawing/word_search.hpp"
#include "editor/actions.hpp"
#include "editor/long_work.hpp"
#include "editor/status_words.hpp"

#include <algorithm>
#include <array>
#include <doctest/doctest.h>
#include <set>
#include <string>
#include <string_view>
#include <vector>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

App ready_app() {
  App app = make_app();
  app.view.canvas = {0, 0, 800, 600};
  refresh(app);
  return app;
}

void run(App& app, Command command) {
  editor::apply(app, Run{command});
}

void drag(App& app, Cell from, Cell to) {
  editor::apply(app, BeginStroke{from, false});
  editor::apply(app, StrokeTo{to});
  editor::apply(app, EndStroke{});
}

std::set<Cell> drawn(const App& app) {
  std::set<Cell> cells;
  const Grid& grid = app.work.design.grid;
  for (int row = 0; row < grid.height(); ++row) {
    for (int column = 0; column < grid.width(); ++column) {
      if (grid.at(column, row)) {
        cells.insert(Cell{column, row});
      }
    }
  }
  return cells;
}

} // namespace

TEST_CASE("a shape shows itself while it is drawn, is one step at the end, and goes round the edges") {
  App app = ready_app();
  run(app, Command::tool_rectangle);
  editor::apply(app, BeginStroke{Cell{22, 22}, false});
  editor::apply(app, StrokeTo{Cell{25, 24}});
  REQUIRE(app.session.stroke.has_value());
  CHECK(contrast_cells(app.session.stroke->preview).size() == 10);
  CHECK(drawn(app).empty());
  editor::apply(app, EndStroke{});
  CHECK(app.work.history.steps().size() == 1);
  CHECK(drawn(app) ==
        std::set<Cell>{{22, 22}, {23, 22}, {0, 22}, {1, 22}, {22, 23}, {1, 23}, {22, 0}, {23, 0}, {0, 0}, {1, 0}});
  run(app, Command::undo);
  run(app, Command::filled);
  drag(app, Cell{2, 2}, Cell{4, 5});
  CHECK(drawn(app).size() == 12);
}

TEST_CASE("Escape gives up the shape, then what hangs, then the mark; the drawing stays as it was") {
  App app = ready_app();
  run(app, Command::tool_ellipse);
  editor::apply(app, BeginStroke{Cell{3, 3}, false});
  editor::apply(app, StrokeTo{Cell{9, 8}});
  run(app, Command::focus_drawing);
  CHECK_FALSE(app.session.stroke.has_value());
  editor::apply(app, EndStroke{}); // the button is released afterwards
  CHECK(drawn(app).empty());
  CHECK(app.work.history.steps().empty());
  app.view.marked = Area{Cell{0, 0}, 3, 3};
  editor::apply(app, HangOver{Grid(2, 2), "motif", false});
  CHECK(app.session.floating.has_value());
  run(app, Command::focus_drawing);
  CHECK_FALSE(app.session.floating.has_value());
  CHECK(app.work.history.steps().empty());
}

TEST_CASE("Escape takes a freehand stroke back while the button is held, and what the hand still does is nothing") {
  App app = ready_app();
  const Grid before = app.work.design.grid;
  editor::apply(app, BeginStroke{{1, 1}, false});
  editor::apply(app, StrokeTo{{6, 2}});
  REQUIRE(app.work.design.grid != before);
  run(app, Command::focus_drawing);
  CHECK(app.work.design.grid == before);
  editor::apply(app, StrokeTo{{9, 9}});
  editor::apply(app, EndStroke{});
  CHECK(app.work.design.grid == before);
  CHECK(app.work.history.steps().empty());
  CHECK(app.work.history.saved());
}

TEST_CASE("by keys a shape has its corners from two presses of the space bar") {
  App app = ready_app();
  run(app, Command::tool_line);
  run(app, Command::toggle_stitch);
  for (int step = 0; step < 5; ++step) {
    editor::apply(app, MoveCursor{1, 1, false});
  }
  CHECK(drawn(app).empty());
  run(app, Command::toggle_stitch);
  CHECK(drawn(app) == std::set<Cell>{{0, 0}, {1, 1}, {2, 2}, {3, 3}, {4, 4}, {5, 5}});
  CHECK(app.work.history.steps().size() == 1);
}

TEST_CASE("with the marking tool, shift and arrows mark from the cursor on and draw nothing") {
  App app = ready_app(); // 24 × 24
  run(app, Command::tool_mark);
  editor::apply(app, MoveCursor{2, 5, false});
  editor::apply(app, MoveCursor{1, 0, true});
  editor::apply(app, MoveCursor{1, 0, true});
  editor::apply(app, MoveCursor{0, 1, true});
  CHECK(app.view.marked == Area{{2, 5}, 3, 2});
  CHECK(app.view.cursor == Cell{4, 6});
  // The corner at the cursor goes back over the one that stays, and round the edge.
  for (int step = 0; step < 5; ++step) {
    editor::apply(app, MoveCursor{-1, 0, true});
  }
  CHECK(app.view.marked == Area{{23, 5}, 4, 2});
  CHECK(app.view.cursor == Cell{23, 6});
  // Not more than there is.
  for (int step = 0; step < 60; ++step) {
    editor::apply(app, MoveCursor{-1, 0, true});
  }
  CHECK(app.view.marked->columns == 24);
  // Away from its corners the next one begins.
  run(app, Command::mark_all);
  app.view.cursor = {9, 9};
  editor::apply(app, MoveCursor{0, -1, true});
  CHECK(app.view.marked == Area{{9, 8}, 1, 2});
  CHECK(drawn(app).empty());
  CHECK(app.work.history.steps().empty());
}

TEST_CASE("cutting wants a marked area, and leaves the drawing without one") {
  App app = ready_app();
  drag(app, Cell{2, 2}, Cell{5, 2});
  const auto before = drawn(app);
  run(app, Command::cut);
  CHECK(drawn(app) == before);
  CHECK_FALSE(app.session.message.empty());
  run(app, Command::mark_all);
  run(app, Command::cut);
  CHECK(drawn(app).empty());
}

TEST_CASE("filling wants a marked area too: what was copied never takes the place of the whole drawing") {
  App app = ready_app();
  drag(app, Cell{2, 2}, Cell{5, 2});
  const auto before = drawn(app);
  app.session.clipboard = "#.\n";
  run(app, Command::fill_marked);
  CHECK(drawn(app) == before);
  CHECK(app.session.message == "Mark an area first: M, or Ctrl+A for all of it");
  run(app, Command::mark_all);
  run(app, Command::fill_marked);
  CHECK(drawn(app).size() == 24 * 12);
}

TEST_CASE("a rectangle drawn across the join is called by its rows, as area commands are") {
  App app = ready_app();
  run(app, Command::tool_rectangle);
  drag(app, Cell{2, 21}, Cell{7, 26});
  CHECK(words_of(app.work.history.steps().back()) == "rectangle, rows 22 to 3");
}

TEST_CASE("a marked area is moved by dragging it, as one step, over the edge too") {
  App app = ready_app();
  app.work.design.grid.set(2, 2, true);
  app.work.design.grid.set(3, 2, true);
  refresh(app);
  run(app, Command::tool_mark);
  drag(app, Cell{2, 2}, Cell{3, 3});
  CHECK(app.view.marked == Area{Cell{2, 2}, 2, 2});
  drag(app, Cell{3, 3}, Cell{-1, 3}); // four to the left, held by its upper right stitch
  CHECK(app.session.floating.has_value());
  CHECK(drawn(app) == std::set<Cell>{{2, 2}, {3, 2}}); // not before it is set down
  run(app, Command::set_down);
  CHECK(drawn(app) == std::set<Cell>{{22, 2}, {23, 2}});
  CHECK(app.work.history.steps().size() == 1);
  CHECK(app.view.marked == Area{Cell{22, 2}, 2, 2});
}

TEST_CASE("what is copied is lines of . and #, and text from anywhere can be pasted, moved by arrows and set down") {
  App app = ready_app();
  app.work.design.grid.set(0, 0, true);
  app.work.design.grid.set(1, 1, true);
  app.view.marked = Area{Cell{0, 0}, 2, 2};
  run(app, Command::copy);
  CHECK(app.session.copied == ".#\n#.\n");
  app.session.clipboard = "##.\r\n..#\r\n\r\n";
  app.view.marked.reset();
  app.view.cursor = Cell{10, 10};
  run(app, Command::paste);
  REQUIRE(app.session.floating.has_value());
  run(app, Command::mirror_sideways); // what hangs is turned before it is set down
  editor::apply(app, MoveCursor{2, 0, false});
  editor::apply(app, SetDown{});
  CHECK(drawn(app) == std::set<Cell>{{0, 0}, {1, 1}, {12, 10}, {13, 11}, {14, 11}});
  app.session.clipboard = "no drawing";
  run(app, Command::paste);
  CHECK_FALSE(app.session.floating.has_value());
  CHECK(app.session.tone == Tone::trouble);
}

TEST_CASE("what is set down isn't marked, so that mending may change it; what was marked and moved stays so") {
  App app = ready_app();
  Grid bar(24, 1);
  bar.set(0, 0, true);
  editor::apply(app, HangOver{bar, "set down “bar”", false});
  editor::apply(app, SetDown{});
  CHECK_FALSE(app.view.marked.has_value());
  refresh(app);
  run(app, Command::mend);
  finish_long_work(app);
  CHECK(app.session.mend.has_value());
}

TEST_CASE("what is as wide or as high as the repeat hangs from its first stitch or row, wherever the cursor is") {
  App app = ready_app();
  app.view.cursor = Cell{7, 9};
  app.session.clipboard = std::string(24, '#') + "\n";
  run(app, Command::paste);
  REQUIRE(app.session.floating.has_value());
  CHECK(app.session.floating->corner == Cell{0, 9});
  for (int row = 1; row < app.work.design.grid.height(); ++row) {
    app.session.clipboard += std::string(24, '.') + "\n";
  }
  run(app, Command::paste);
  CHECK(app.session.floating->corner == Cell{0, 0});
}

TEST_CASE("text that is no drawing is refused by line and sign") {
  App app = ready_app();
  app.session.clipboard = "##\n#h\n";
  run(app, Command::paste);
  CHECK(app.session.message == "What was copied is no drawing: line 2, sign 2: 'h' is no stitch; lines of '.' for main "
                               "and '#' for contrast, all of one length");
  app.session.clipboard = "##\n#\n";
  run(app, Command::paste);
  CHECK(app.session.message.find("no drawing: line 2: the line has 1 stitch") != std::string::npos);
}

TEST_CASE("a step in a marked area that goes round the edge is called by the rows of the area") {
  App app = ready_app();
  const int height = app.work.design.grid.height();
  app.work.design.grid.set(3, height - 1, true);
  app.view.marked = Area{Cell{3, height - 2}, 4, 4};
  run(app, Command::mirror_upwards);
  REQUIRE(app.work.history.steps().size() == 1);
  CHECK(words_of(app.work.history.steps().back()) ==
        "mirror top and bottom, rows " + std::to_string(height - 1) + " to 2");
}

TEST_CASE("a motif or letters that are see-through leave what lies below their main stitches") {
  App app = ready_app();
  app.work.design.grid.set(5, 5, true);
  Grid patch(2, 1);
  patch.set(1, 0, true);
  app.view.cursor = Cell{5, 5};
  editor::apply(app, HangOver{patch, "lettering", true});
  editor::apply(app, SetDown{});
  CHECK(drawn(app) == std::set<Cell>{{5, 5}, {6, 5}});
  app.view.cursor = Cell{5, 5};
  editor::apply(app, HangOver{patch, "motif", false});
  editor::apply(app, SetDown{});
  CHECK(drawn(app) == std::set<Cell>{{6, 5}});
}

TEST_CASE("whether the ground shows through may be chosen while a motif hangs") {
  App app = ready_app();
  app.work.design.grid.set(5, 5, true);
  Grid patch(2, 1);
  patch.set(1, 0, true);
  app.view.cursor = Cell{5, 5};
  editor::apply(app, HangOver{patch, "motif", false});
  run(app, Command::motifs_see_through);
  editor::apply(app, SetDown{});
  CHECK(drawn(app) == std::set<Cell>{{5, 5}, {6, 5}});
  app.view.cursor = Cell{5, 5};
  editor::apply(app, HangOver{patch, "motif", true});
  run(app, Command::motifs_see_through);
  editor::apply(app, SetDown{});
  CHECK(drawn(app) == std::set<Cell>{{6, 5}});
}

TEST_CASE("commands work on the marked area where there is one, else on all of the drawing") {
  App app = ready_app();
  app.work.design.grid.set(0, 0, true);
  app.view.marked = Area{Cell{0, 0}, 4, 1};
  run(app, Command::mirror_sideways);
  CHECK(drawn(app) == std::set<Cell>{{3, 0}});
  run(app, Command::shift_right);
  CHECK(drawn(app) == std::set<Cell>{{0, 0}}); // round the area's edge
  run(app, Command::turn);
  CHECK(app.view.marked == Area{Cell{0, 0}, 1, 4});
  run(app, Command::clear);
  CHECK(drawn(app).empty());
  app.view.marked.reset();
  app.work.design.grid.set(0, 0, true);
  run(app, Command::shift_left);
  CHECK(drawn(app) == std::set<Cell>{{23, 0}});
}

TEST_CASE("under a symmetry every stroke is completed, and the drawing then has it") {
  App app = ready_app();
  const Frieze frieze = centred_frieze(FriezeGroup::p2mm, 24, 24);
  editor::apply(app, ChooseSymmetry{frieze});
  drag(app, Cell{2, 3}, Cell{7, 6});
  CHECK(drawn(app).size() == 4 * 6);
  CHECK(has_symmetry(app.work.design.grid, frieze));
  run(app, Command::tool_line);
  editor::apply(app, BeginStroke{Cell{1, 20}, false});
  editor::apply(app, StrokeTo{Cell{5, 16}});
  CHECK(contrast_cells(app.session.stroke->preview).size() == 4 * 5); // the preview is complete, too
  editor::apply(app, EndStroke{});
  CHECK(has_symmetry(app.work.design.grid, frieze));
  run(app, Command::undo);
  CHECK(drawn(app).size() == 4 * 6);
}

TEST_CASE("a symmetry whose axes no longer fit after a change of size goes to the middle of the new one") {
  App app = ready_app();
  editor::apply(app, ChooseSymmetry{centred_frieze(FriezeGroup::p1m1, 24, 24)});
  editor::apply(app, EditDesign{Resize{12, 24}});
  REQUIRE(app.view.symmetry.has_value());
  CHECK(app.view.symmetry == centred_frieze(FriezeGroup::p1m1, 12, 24));
  editor::apply(app, ChooseSymmetry{centred_frieze(FriezeGroup::p11g, 12, 24)});
  editor::apply(app, EditDesign{Resize{7, 24}}); // a glide needs an even repeat
  CHECK_FALSE(app.view.symmetry.has_value());
}

TEST_CASE("'make it so' changes the fewest stitches, in one step") {
  App app = ready_app();
  for (const Cell cell : {Cell{3, 2}, Cell{4, 2}, Cell{5, 2}, Cell{3, 3}, Cell{5, 3}}) {
    app.work.design.grid.set(cell.column, cell.row, true);
  }
  app.work.design.grid.set(5, 4, true); // the one that breaks the mirror
  editor::apply(app, Run{Command::symmetry_upright});
  editor::apply(app, Run{Command::make_symmetric});
  CHECK(app.work.history.steps().size() == 1);
  CHECK(drawn(app) == std::set<Cell>{{3, 2}, {4, 2}, {5, 2}, {3, 3}, {5, 3}});
  CHECK(app.session.message == "1 stitch changed, the fewest that do");
}

TEST_CASE("'make it so' takes the largest drawing, too") {
  App app = ready_app();
  Grid large(widest_repeat, tallest_repeat);
  for (int row = 0; row < large.height(); row += 7) { // stripes of one stitch, mirrored about column 0
    for (int column = row % 10; column < large.width(); column += 10) {
      large.set(column, row, true);
      large.set((large.width() - column) % large.width(), row, true);
    }
  }
  large.set(31, 1, true); // the one that breaks the mirror
  app.work.design.grid = large;
  editor::apply(app, Run{Command::symmetry_upright});
  editor::apply(app, Run{Command::make_symmetric});
  finish_long_work(app);
  CHECK(app.session.message == "1 stitch changed, the fewest that do");
  large.set(31, 1, false);
  CHECK(app.work.design.grid == large);
}

TEST_CASE("commands are found by the beginnings of words in their name, tip and menu") {
  const auto ids = [](std::string_view words) {
    std::vector<std::string> found;
    for (const CommandInfo* const info : commands_found(words)) {
      found.emplace_back(info->id);
    }
    return found;
  };
  CHECK(ids("").size() == all_commands().size());
  CHECK(ids("MIRROR top") == std::vector<std::string>{"mirror-upwards", "symmetry-glides", "symmetry-level",
                                                      "symmetry-both"}); // by its name first, then those by their tip
  CHECK(ids("irror").empty());                                           // beginnings only
  CHECK(std::ranges::count(ids("needle chart"), "export-chart") == 1);
  CHECK(ids("fi").front() == "tool-flood"); // "Fill", before "Recent files" and what tells of files in its tip
  for (const std::string words : {"save", "open", "mirror", "export", "row"}) { // names that begin so come first
    int rank = 0;
    for (const CommandInfo* const info : commands_found(words)) {
      const int next = begins_with(tr(info->name), words) ? 0 : has_words(tr(info->name), words) ? 1 : 2;
      CAPTURE(info->name);
      CHECK(next >= rank);
      rank = next;
    }
  }
}

TEST_CASE("commands are found by the words that a person types for them, whatever their names are") {
  struct Typed {
    const char* words;
    Command command;
  };
  constexpr std::array all = {
      Typed{"zoom", Command::zoom_in},
      Typed{"zoom in", Command::zoom_in},
      Typed{"zoom out", Command::zoom_out},
      Typed{"magnify", Command::zoom_in},
      Typed{"text size", Command::larger_text},
      Typed{"font", Command::smaller_text},
      Typed{"colour blind", Command::sight_deutan},
      Typed{"color blind", Command::sight_protan},
      Typed{"greyscale", Command::sight_lightness},
      Typed{"print", Command::preview},
      Typed{"flip", Command::mirror_sideways},
      Typed{"flip vertical", Command::mirror_upwards},
      Typed{"rotate", Command::turn},
      Typed{"erase", Command::pen_main},
      Typed{"eraser", Command::pen_main},
      Typed{"delete", Command::clear},
      Typed{"paint bucket", Command::tool_flood},
      Typed{"bucket", Command::tool_flood},
      Typed{"pencil", Command::tool_pen},
      Typed{"circle", Command::tool_ellipse},
      Typed{"square", Command::tool_rectangle},
      Typed{"select", Command::tool_mark},
      Typed{"text", Command::type_lettering},
      Typed{"history", Command::steps_done},
      Typed{"preferences", Command::settings},
      Typed{"dark", Command::settings},
      Typed{"width", Command::resize},
      Typed{"remove", Command::delete_row},
      Typed{"exit", Command::quit},
      Typed{"photo", Command::import_picture},
      Typed{"repair", Command::mend},
      Typed{"shortcuts", Command::keys},
      Typed{"manual", Command::help},
  };
  for (const Typed& typed : all) {
    CAPTURE(typed.words);
    CHECK(std::ranges::count(commands_found(typed.words), &info_of(typed.command)) == 1);
  }
  // By its own name a command comes before those that are only called so.
  CHECK(commands_found("print").front()->command == Command::preview);
  CHECK(commands_found("mirror left").front()->command == Command::mirror_sideways);
}

TEST_CASE("any step can be gone back to, and forward again") {
  App app = ready_app();
  for (int column = 0; column < 4; ++column) {
    drag(app, Cell{column, 0}, Cell{column, 0});
  }
  editor::apply(app, GoToStep{1});
  CHECK(drawn(app) == std::set<Cell>{{0, 0}});
  editor::apply(app, GoToStep{3});
  CHECK(drawn(app).size() == 3);
  editor::apply(app, GoToStep{0});
  CHECK(drawn(app).empty());
  CHECK(app.work.history.saved());
}

TEST_CASE("which symmetry the drawing has is known at every stitch of a stroke") {
  App app = ready_app();
  refresh(app);
  CHECK(app.caches.frieze.group == FriezeGroup::p2mm); // nothing is drawn
  editor::apply(app, BeginStroke{Cell{2, 2}, false});
  editor::apply(app, StrokeTo{Cell{3, 2}});
  refresh(app);
  CHECK(app.caches.frieze == Frieze{FriezeGroup::p2mm, 24, 5, 4}); // two stitches beside each other
  editor::apply(app, StrokeTo{Cell{3, 5}});
  refresh(app);
  CHECK(app.caches.frieze.group == FriezeGroup::p1);
  editor::apply(app, EndStroke{});
  editor::apply(app, Run{Command::undo});
  refresh(app);
  CHECK(app.caches.frieze.group == FriezeGroup::p2mm);
}

namespace {

// Row 1 has a float of nine stitches, row 2 none that is too long.
App app_with_a_long_float() {
  App app = ready_app();
  app.work.design.grid = Grid(12, 2);
  app.work.design.grid.set_row_text(0, "#.........##");
  app.work.design.grid.set_row_text(1, "#..#..#..#..");
  app.work.design.bands = {Band{2, 'A', 'B', {}}};
  app.caches.valid = false;
  refresh(app);
  return app;
}

} // namespace

TEST_CASE("a float is caught or accepted instead, each as one step") {
  App app = app_with_a_long_float();
  const Document before = app.work.design;
  const auto floats = [&] {
    refresh(app);
    return std::ranges::count(app.caches.findings, FindingId::float_too_long, &Finding::id);
  };
  REQUIRE(floats() == 1);
  app.view.finding = -1;
  app.view.cursor = {4, 0};
  run(app, Command::catch_float);
  CHECK(app.work.design.grid == before.grid);
  CHECK(columns_text(app.work.design.marks.caught, 0) == "6");
  CHECK(floats() == 0);
  run(app, Command::no_marks);
  CHECK(app.work.design == before);
  run(app, Command::accept_all);
  CHECK(columns_text(app.work.design.marks.accepted, 0) == "2-10");
  CHECK(floats() == 0);
  run(app, Command::catch_row); // after all
  CHECK(app.work.design.marks.accepted.width() == 0);
  CHECK(columns_text(app.work.design.marks.caught, 0) == "6");
  CHECK(app.work.history.steps().size() == 4);
  for (int step = 0; step < 4; ++step) {
    run(app, Command::undo);
  }
  CHECK(app.work.design == before);
  app.view.cursor = {4, 1};
  run(app, Command::catch_float); // no such float there
  CHECK(app.work.design == before);
  app.view.marked = Area{{3, 0}, 5, 1};
  run(app, Command::protect_marked);
  CHECK(columns_text(app.work.design.marks.kept, 0) == "4-8");
  app.view.marked.reset();
  run(app, Command::mend);
  REQUIRE(app.session.mend.has_value()); // one stitch in the middle would do, and none of these may change
  CHECK(app.session.mend->mended.changed == std::vector{Cell{2, 0}, Cell{8, 0}});
}

TEST_CASE("a mend is shown first; Return takes it as one step, Escape leaves the drawing as it is") {
  App app = app_with_a_long_float();
  const Grid before = app.work.design.grid;
  run(app, Command::mend);
  REQUIRE(app.session.mend.has_value());
  CHECK(app.work.design.grid == before);
  CHECK(app.session.mend->mended.changed == std::vector{Cell{5, 0}});
  CHECK(app.caches.findings[static_cast<std::size_t>(app.view.finding)].id == FindingId::float_too_long);
  run(app, Command::focus_drawing);
  CHECK_FALSE(app.session.mend.has_value());
  CHECK(app.work.design.grid == before);
  run(app, Command::mend);
  run(app, Command::set_down);
  CHECK(app.work.design.grid.row_text(0) == "#....#....##");
  CHECK(app.work.history.steps().size() == 1);
  run(app, Command::undo);
  CHECK(app.work.design.grid == before);
}

TEST_CASE("other choices of the cursor's row come one after the other, and round again") {
  App app = app_with_a_long_float();
  run(app, Command::mend);
  std::set<int> columns;
  for (int press = 0; press < 3; ++press) {
    REQUIRE(app.session.mend->mended.changed.size() == 1);
    columns.insert(app.session.mend->mended.changed.front().column);
    run(app, Command::other_mend);
  }
  CHECK(columns == std::set{4, 5, 6}); // nine stitches, of which five may be passed on either side
  CHECK(app.session.mend->mended.changed == std::vector{Cell{5, 0}});
  app.view.cursor.row = 1;
  run(app, Command::other_mend);
  CHECK(app.session.message.find("Row 2 has no other mend") != std::string::npos);
}

TEST_CASE("what is marked stays; another change of the drawing takes the shown mend away") {
  App app = app_with_a_long_float();
  app.view.marked = Area{Cell{4, 0}, 2, 1};
  run(app, Command::mend);
  REQUIRE(app.session.mend.has_value());
  CHECK(app.session.mend->mended.changed == std::vector{Cell{6, 0}});
  drag(app, Cell{0, 1}, Cell{0, 1});
  CHECK_FALSE(app.session.mend.has_value());
  app.view.marked = Area{Cell{1, 0}, 9, 1};
  run(app, Command::mend);
  CHECK_FALSE(app.session.mend.has_value());
  CHECK(app.session.message.find("Row 1 can't be mended") != std::string::npos);
}

TEST_CASE("beside the float that is looked at stands what would mend its row") {
  App app = app_with_a_long_float();
  CHECK_FALSE(app.caches.hint.has_value());
  run(app, Command::next_finding);
  refresh(app);
  REQUIRE(app.caches.hint.has_value());
  CHECK(app.caches.hint->row == 0);
  CHECK(app.caches.hint->mended.changed == std::vector{Cell{5, 0}});
  CHECK(app.caches.hint->mended.drawing.at(5, 0));
  drag(app, Cell{5, 0}, Cell{5, 0});
  refresh(app);
  CHECK_FALSE(app.caches.hint.has_value());
}

TEST_SUITE("editor: the line below the drawing") {
  TEST_CASE("each tool says what the pointer does, and a symmetry that strokes are completed under it") {
    App app = ready_app();
    std::set<std::string> said;
    for (const Command tool : {Command::tool_pen, Command::tool_line, Command::tool_rectangle, Command::tool_ellipse,
                               Command::tool_flood, Command::tool_mark}) {
      run(app, tool);
      const std::string words = words_for_pointer(app);
      CHECK(!words.empty());
      said.insert(words);
    }
    CHECK(said.size() == 6);
    run(app, Command::tool_line);
    editor::apply(app, ChooseSymmetry{centred_frieze(FriezeGroup::p2mm, 24, 24)});
    CHECK(words_for_pointer(app).ends_with("; completed under the symmetry"));
  }

  TEST_CASE("a marked area is told with its size and its corner, also across the edge") {
    App app = ready_app();
    run(app, Command::tool_mark);
    drag(app, {22, 4}, {25, 9});
    CHECK(words_for_pointer(app).starts_with("4 × 6 marked, from row 5, column 23"));
    run(app, Command::focus_drawing);
    CHECK(words_for_pointer(app).starts_with("Mark: drag over an area"));
  }

  TEST_CASE("the marks of long floats are put aside and come back; the findings stay") {
    App app = ready_app();
    drag(app, {0, 3}, {0, 3});
    refresh(app);
    const int faults = app.caches.faults;
    CHECK(faults > 0);
    CHECK(app.view.float_marks);
    run(app, Command::float_marks);
    refresh(app);
    CHECK(!app.view.float_marks);
    CHECK(app.session.message.find("aren't marked") != std::string::npos);
    CHECK(app.caches.faults == faults);
    run(app, Command::float_marks);
    CHECK(app.view.float_marks);
  }
}
