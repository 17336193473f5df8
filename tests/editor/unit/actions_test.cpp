// Actions to the design and back, without a window: strokes, steps, fields, the guard.
#include "design/repeat_file.hpp"
#include "design/step_words.hpp"
#include "editor/actions.hpp"
#include "support/folder.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <unistd.h>

using namespace punchwright;
using namespace punchwright::editor;
using punchwright::test::Folder;

namespace {

namespace fs = std::filesystem;

App ready_app() {
  App app = make_app();
  app.view.canvas = {0, 0, 800, 600};
  refresh(app);
  return app;
}

void stroke(App& app, const std::vector<Cell>& cells, bool erase = false) {
  editor::apply(app, BeginStroke{cells.front(), erase});
  for (const Cell cell : cells) {
    editor::apply(app, StrokeTo{cell});
  }
  editor::apply(app, EndStroke{});
}

int contrast_stitches(const App& app) {
  int count = 0;
  const Grid& grid = app.work.design.grid;
  for (int row = 0; row < grid.height(); ++row) {
    for (int column = 0; column < grid.width(); ++column) {
      count += grid.at(column, row) ? 1 : 0;
    }
  }
  return count;
}

} // namespace

TEST_CASE("a stroke is one step, and its line has no gap") {
  App app = ready_app();
  stroke(app, {{2, 2}, {9, 2}, {9, 8}});
  CHECK(contrast_stitches(app) == 14);
  CHECK(app.work.history.steps().size() == 1);
  editor::apply(app, Run{Command::undo});
  CHECK(contrast_stitches(app) == 0);
  CHECK(app.work.history.saved());
}

TEST_CASE("the first stitch decides what the opposite pen draws") {
  App app = ready_app();
  stroke(app, {{0, 0}, {5, 0}});
  stroke(app, {{3, 0}, {8, 0}}); // begins on contrast: draws main
  CHECK(app.work.design.grid.row_text(0).substr(0, 10) == "###.......");
  editor::apply(app, Run{Command::pen_contrast});
  stroke(app, {{1, 0}, {4, 0}});
  CHECK(app.work.design.grid.row_text(0).substr(0, 10) == "#####.....");
  stroke(app, {{0, 0}, {1, 0}}, true);
  CHECK(app.work.design.grid.row_text(0).substr(0, 10) == "..###.....");
}

TEST_CASE("a stroke through the neighbours goes round the edges") {
  App app = ready_app();
  stroke(app, {{22, 0}, {25, 0}});
  CHECK(app.work.design.grid.row_text(0) == "##....................##");
  CHECK(app.view.cursor == Cell{1, 0});
}

TEST_CASE("stitches drawn by keys in one go are one step; a pause, another colour or another action begins the next") {
  App app = make_app();
  const auto draw = [&](int columns, int rows, double seconds) {
    app.session.now += seconds;
    editor::apply(app, MoveCursor{columns, rows, true});
    editor::apply(app, Placed{}); // as in every frame
  };
  const auto steps = [&] { return app.work.history.done(); };
  editor::apply(app, Run{Command::toggle_stitch}); // the first stitch, from which the arrows go on
  for (int stitch = 0; stitch < 4; ++stitch) {
    draw(1, 0, 0.5);
  }
  draw(0, 1, 1.9);
  CHECK(steps() == 1);
  CHECK(app.work.design.grid.row_text(0) == "#####" + std::string(19, '.'));
  CHECK(words_of(app.work.history.steps().back()) == "draw, rows 1 to 2");
  editor::apply(app, Run{Command::undo});
  CHECK(app.work.design.grid == Grid(24, 24));
  editor::apply(app, Run{Command::redo});
  CHECK(steps() == 1);

  draw(1, 0, 0.1); // after the undo it is another one
  CHECK(steps() == 2);
  draw(1, 0, 2.1);
  CHECK(steps() == 3);
  editor::apply(app, Run{Command::pen_main});
  draw(-1, 0, 0.1);
  draw(-1, 0, 0.1);
  CHECK(steps() == 4);
  CHECK(app.work.history.steps().back().name == "erase");
  editor::apply(app, Run{Command::pen_contrast});
  editor::apply(app, MoveCursor{5, 0, false}); // lifted, and set down elsewhere
  draw(1, 0, 0.1);
  CHECK(steps() == 5);
  editor::apply(app, MoveCursor{1, 0, false});
  draw(1, 0, 0.1);
  CHECK(steps() == 6);
  editor::apply(app, GoToStep{0});
  CHECK(app.work.design.grid == Grid(24, 24));
}

TEST_CASE("in a band of one yarn nothing is drawn, the rest of the stroke is, and the message says why") {
  App app = ready_app();
  editor::apply(app, EditDesign{ChangeBands{{Band{10, 'A', 'B', {}}, Band{14, 'B', {}, {}}}}});
  stroke(app, {{4, 8}, {4, 12}});
  CHECK(contrast_stitches(app) == 2);
  CHECK(app.session.message.find("one yarn") != std::string::npos);
  CHECK(app.session.tone == Tone::trouble);
}

TEST_CASE("looking changes nothing that could be saved") {
  App app = ready_app();
  for (const Command command : {Command::zoom_in, Command::zoom_fit, Command::next_finding, Command::other_face,
                                Command::show_settings, Command::larger_text, Command::pen_main}) {
    editor::apply(app, Run{command});
  }
  editor::apply(app, MoveCursor{1, 1, false});
  editor::apply(app, PanBy{{10, 10}});
  CHECK(app.work.history.saved());
  CHECK(app.work.history.revision() == 0);
}

TEST_CASE("the view follows the cursor that the keys move, and keys zoom round it") {
  App app = ready_app();
  for (int press = 0; press < 8; ++press) {
    editor::apply(app, Run{Command::zoom_in});
  }
  const auto cursor_box = [&] { return box_of(layout_of(app, app.view.canvas), app.view.cursor); };
  const auto in_sight = [&] {
    const ScreenBox box = cursor_box();
    return app.view.canvas.contains({box.left, box.top}) && app.view.canvas.contains({box.right - 1, box.bottom - 1});
  };
  CHECK(in_sight());
  for (int step = 0; step < 30; ++step) { // round the edges too
    editor::apply(app, MoveCursor{step % 3, 1, step % 5 == 0});
    CHECK(in_sight());
  }
  editor::apply(app, PlaceCursor{Cell{23, 23}});
  CHECK(in_sight());
  const ScreenPoint before = cursor_box().middle();
  editor::apply(app, Run{Command::zoom_out});
  CHECK(std::abs(cursor_box().middle().x - before.x) <= 2);
  CHECK(std::abs(cursor_box().middle().y - before.y) <= 2);
}

TEST_CASE("the cursor is placed inside the drawing, and fitting shows the whole width of the widest repeat") {
  App app = ready_app();
  editor::apply(app, PlaceCursor{Cell{3, 999}});
  CHECK(app.view.cursor == Cell{3, 23});
  editor::apply(app, PlaceCursor{Cell{3, -10}});
  CHECK(app.view.cursor == Cell{3, 0});
  app.work.design.grid = Grid(200, 24);
  refresh(app);
  editor::apply(app, Run{Command::zoom_fit});
  const CanvasLayout layout = layout_of(app, app.view.canvas);
  CHECK(box_of(layout, Cell{0, 0}).left >= app.view.canvas.left);
  CHECK(box_of(layout, Cell{199, 0}).right <= app.view.canvas.right);
}

TEST_CASE("all changes of one field are one step; another field begins another") {
  App app = ready_app();
  for (const char* const title : {"C", "Co", "Cove"}) {
    Document settings = settings_of(app.work.design);
    settings.title = title;
    editor::apply(app, ChangeField{settings, "title", {}});
  }
  Document settings = settings_of(app.work.design);
  settings.gauge.rows = 30;
  editor::apply(app, ChangeField{settings, "gauge rows", {}});
  CHECK(app.work.history.steps().size() == 2);
  editor::apply(app, Run{Command::undo});
  CHECK(app.work.design.gauge.rows == 20);
  CHECK(app.work.design.title == "Cove");
  editor::apply(app, Run{Command::undo});
  CHECK(app.work.design.title.empty());
}

TEST_CASE("commands change rows and columns at the cursor, and the cursor stays inside") {
  App app = ready_app();
  editor::apply(app, PlaceCursor{Cell{23, 23}});
  editor::apply(app, Run{Command::delete_row});
  CHECK(app.work.design.grid.height() == 23);
  CHECK(app.view.cursor == Cell{23, 22});
  editor::apply(app, Run{Command::delete_column});
  CHECK(app.work.design.grid.width() == 23);
  CHECK(app.view.cursor.column == 22);
  editor::apply(app, Run{Command::insert_row});
  CHECK(app.view.cursor.row == 23);
}

TEST_CASE("a band is split at the cursor's row and joined again") {
  App app = ready_app();
  editor::apply(app, PlaceCursor{Cell{0, 10}});
  editor::apply(app, Run{Command::split_band});
  REQUIRE(app.work.design.bands.size() == 2);
  CHECK(app.work.design.bands[0].rows == 10);
  CHECK(app.work.design.bands[1].rows == 14);
  editor::apply(app, Run{Command::split_band});
  CHECK(app.work.design.bands.size() == 2); // one begins here already
  CHECK(app.session.tone == Tone::trouble);
  editor::apply(app, Run{Command::join_band});
  CHECK(app.work.design.bands.size() == 1);
}

TEST_CASE("the guard stands before everything that would lose a change") {
  App app = ready_app();
  stroke(app, {{1, 1}});
  for (const Command command : {Command::quit, Command::open, Command::new_design}) {
    editor::apply(app, Run{command});
    CHECK(editor::name_of(app.session.dialog) == "guard");
    editor::apply(app, AnswerGuard{GuardAnswer::cancel});
    CHECK(editor::name_of(app.session.dialog) == "none");
  }
  editor::apply(app, OpenDropped{"/nowhere.repeat"});
  CHECK(editor::name_of(app.session.dialog) == "guard");
  editor::apply(app, AnswerGuard{GuardAnswer::cancel});
  CHECK_FALSE(app.session.quit);
  CHECK(contrast_stitches(app) == 1);
  editor::apply(app, Run{Command::quit});
  editor::apply(app, AnswerGuard{GuardAnswer::discard});
  CHECK(app.session.quit);
}

TEST_CASE("saving from the guard asks for a place first, and then goes on") {
  const Folder folder;
  App app = ready_app();
  stroke(app, {{1, 1}});
  editor::apply(app, Run{Command::quit});
  editor::apply(app, AnswerGuard{GuardAnswer::save});
  auto* dialog = std::get_if<PathDialog>(&app.session.dialog);
  REQUIRE(dialog != nullptr);
  CHECK_FALSE(app.session.quit);
  dialog->name = (folder.path / "cove").string();
  editor::apply(app, ChoosePath{});
  CHECK(fs::exists(folder.path / "cove.repeat"));
  CHECK(app.session.quit);
}

TEST_CASE("a file that can't be read is explained, and the design stays") {
  const Folder folder;
  std::ofstream(folder.path / "broken.repeat") << "format = 1\n[repeat]\nwidth = 0\n";
  App app = ready_app();
  const Document before = app.work.design;
  editor::apply(app, OpenDropped{folder.path / "broken.repeat"});
  const auto* const trouble = std::get_if<TroubleDialog>(&app.session.dialog);
  REQUIRE(trouble != nullptr);
  CHECK(trouble->text.find("broken.repeat:") != std::string::npos);
  CHECK(app.work.design == before);
}

TEST_CASE("saving where it can't be saved keeps the mark and says why") {
  App app = ready_app();
  stroke(app, {{1, 1}});
  app.session.path = "/nowhere/at/all.repeat";
  editor::apply(app, Run{Command::save});
  CHECK(editor::name_of(app.session.dialog) == "trouble");
  CHECK_FALSE(app.work.history.saved());
  CHECK(window_title(app) == "• all.repeat — Punchwright");
}

TEST_CASE("rulers that read 153 and 148.5 correct the scale by 1.02 and 0.99, and again from there") {
  App app = ready_app();
  editor::apply(app, SetRulers{153, 148.5});
  editor::apply(app, CorrectScale{});
  CHECK(app.work.design.card.scale_x == doctest::Approx(1.02));
  CHECK(app.work.design.card.scale_y == doctest::Approx(0.99));
  editor::apply(app, SetRulers{151.5, 150});
  editor::apply(app, CorrectScale{});
  CHECK(app.work.design.card.scale_x == doctest::Approx(1.02 * 1.01));
  editor::apply(app, SetRulers{300, 150});
  editor::apply(app, CorrectScale{});
  editor::apply(app, SetRulers{300, 150});
  editor::apply(app, CorrectScale{}); // four times too large: no printer is
  CHECK(app.session.tone == Tone::trouble);
}

TEST_CASE("a measured blank is kept beside the design, which then uses it; undo takes it back") {
  const Folder folder;
  App app = ready_app();
  app.session.path = folder.path / "cove.repeat";
  BlankReadings readings{104.9, 252, 18.6, 142.4, 3.4};
  editor::apply(app, SetReadings{readings, 7});
  editor::apply(app, UseReadings{});
  CHECK(fs::exists(folder.path / "cove.machine"));
  CHECK(app.work.design.profile == "cove.machine");
  REQUIRE(app.work.profile.card);
  CHECK(app.work.profile.card->geometry.row_pitch == doctest::Approx(5.04));
  CHECK(app.work.profile.card->geometry.sheet_width == doctest::Approx(142.4));
  editor::apply(app, Run{Command::undo});
  CHECK(app.work.design.profile == "bulky-card-24");
  CHECK(app.work.profile.name == "bulky-card-24");
}

TEST_CASE("a machine file that is missing is said, and the machine before is kept") {
  App app = ready_app();
  Document settings = settings_of(app.work.design);
  settings.profile = "/nowhere/mine.machine";
  editor::apply(app, EditDesign{ChangeSettings{settings}});
  CHECK_FALSE(app.work.profile_trouble.empty());
  CHECK(app.work.profile.name == "bulky-card-24");
}

TEST_CASE("a sheet's name keeps the extension that was typed, so that its writer can refuse it") {
  PathDialog dialog;
  dialog.folder = "/harbour";
  dialog.purpose = Purpose::card;
  dialog.name = "buoys.bmp";
  CHECK(path_of(dialog) == "/harbour/buoys.bmp");
  dialog.name = "buoys";
  CHECK(path_of(dialog) == "/harbour/buoys.pdf");
  dialog.name = "buoys.svg";
  CHECK(path_of(dialog) == "/harbour/buoys.svg");
  dialog.purpose = Purpose::save;
  dialog.name = "hood 2.5";
  CHECK(path_of(dialog) == "/harbour/hood 2.5.repeat");

  App app = make_app();
  app.session.folder = std::filesystem::temp_directory_path();
  editor::apply(app, Run{Command::export_card});
  auto* asked = std::get_if<PathDialog>(&app.session.dialog);
  REQUIRE(asked != nullptr);
  asked->name = "buoys.bmp";
  editor::apply(app, ChoosePath{true});
  asked = std::get_if<PathDialog>(&app.session.dialog);
  REQUIRE(asked != nullptr);
  CHECK(asked->trouble.find("'.bmp'") != std::string::npos);
  CHECK(asked->trouble.find(".pdf, .svg, .png, .txt") != std::string::npos);
}

TEST_CASE("a new design's piece shows whole repeats between its seam stitches, whatever the width") {
  for (const int width : {4, 6, 8, 12, 24}) {
    CAPTURE(width);
    App app = make_app();
    editor::apply(app, BeginDesign{NewDialog{"standard-card-24", width, 10, {}}});
    refresh(app);
    CHECK(std::ranges::none_of(app.caches.findings, [](const Finding& finding) {
      return finding.id == FindingId::repeat_cut_at_edges || finding.id == FindingId::piece_wider_than_bed;
    }));
    CHECK(app.work.history.steps().empty());
  }
  App app = make_app();
  editor::apply(app, BeginDesign{NewDialog{"bulky-card-24", 200, 10, {}}}); // no bed is so wide
  CHECK(app.work.design.grid.width() == 200);
}
