// What was once only to be had by the mouse: the large piece nearer and moved, the symmetry's axes, the letters'
// height, the ground below motifs; names typed for files; and menus' titles in a narrow window.
#include "editor/actions.hpp"
#include "editor/menu_titles.hpp"
#include "editor/waiting.hpp"
#include "support/folder.hpp"

#include <array>
#include <cstdlib>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

namespace fs = std::filesystem;

App ready_app() {
  App app = make_app();
  app.view.canvas = {0, 0, 800, 600};
  app.view.piece_box = {0, 0, 400, 300};
  refresh(app);
  return app;
}

void run(App& app, Command command) {
  editor::apply(app, Run{command});
  refresh(app);
}

PathDialog& chooser(App& app) {
  auto* const dialog = std::get_if<PathDialog>(&app.session.dialog);
  REQUIRE(dialog != nullptr);
  return *dialog;
}

} // namespace

TEST_CASE("the piece in the drawing's place is brought nearer by keys; back at its own it is as it was") {
  App app = ready_app();
  run(app, Command::piece_large);
  const double before = app.caches.piece.painter.px_per_mm();
  run(app, Command::zoom_in);
  REQUIRE(app.view.piece_zoom);
  CHECK(*app.view.piece_zoom > before);
  CHECK_FALSE(app.view.zoom); // the drawing's own
  const double nearer = *app.view.piece_zoom;
  run(app, Command::zoom_out);
  CHECK(*app.view.piece_zoom < nearer);
  run(app, Command::piece_large);
  CHECK_FALSE(app.view.piece_zoom);
  run(app, Command::piece_large);
  CHECK(app.view.piece_zoom);
  run(app, Command::piece_fit);
  CHECK_FALSE(app.view.piece_zoom);
}

TEST_CASE("the symmetry's axes move by half a stitch and half a row, and only where there are such") {
  App app = ready_app();
  run(app, Command::axis_left);
  CHECK_FALSE(app.view.symmetry);
  CHECK(app.session.message.find("Choose a symmetry first") != std::string::npos);
  run(app, Command::symmetry_both);
  const Frieze at_first = *app.view.symmetry;
  run(app, Command::axis_right);
  CHECK(app.view.symmetry->upright == (at_first.upright + 1) % at_first.repeat); // round the repeat
  run(app, Command::axis_left);
  run(app, Command::axis_up);
  CHECK(app.view.symmetry->upright == at_first.upright);
  CHECK(app.view.symmetry->level == at_first.level + 1);
  run(app, Command::axis_down);
  CHECK(app.view.symmetry->level == at_first.level);
  run(app, Command::symmetry_upright);
  const Frieze upright = *app.view.symmetry;
  run(app, Command::axis_up);
  CHECK(app.view.symmetry->level == upright.level);
  CHECK(app.session.message == "This symmetry has no level axis");
}

TEST_CASE("the letters' height and the ground below motifs have their keys") {
  App app = ready_app();
  const LetterHeight before = app.session.letter_height;
  run(app, Command::letter_height);
  CHECK(app.session.letter_height != before);
  run(app, Command::letter_height);
  CHECK(app.session.letter_height == before);
  run(app, Command::motifs_see_through);
  CHECK(app.settings.motifs_see_through);
  run(app, Command::motifs_see_through);
  CHECK_FALSE(app.settings.motifs_see_through);
}

TEST_CASE("a design that can't be saved there leaves the chooser open, with what was typed and why") {
  const test::Folder folder;
  App app = ready_app();
  editor::apply(app, EditDesign{Fill{Area{Cell{}, 1, 1}, true}});
  run(app, Command::save_as);
  const std::string typed = (folder.path / "missing" / "band.repeat").string();
  chooser(app).name = typed;
  editor::apply(app, ChoosePath{false});
  CHECK(chooser(app).name == typed);
  CHECK(chooser(app).trouble.find("missing") != std::string::npos);
  CHECK_FALSE(app.work.history.saved());
  chooser(app).name = (folder.path / "band.repeat").string();
  editor::apply(app, ChoosePath{false});
  CHECK(app.work.history.saved());
  CHECK(fs::exists(folder.path / "band.repeat"));
}

TEST_CASE("~ at the beginning of a name that is typed is the home folder, and nowhere else") {
  const char* const home = std::getenv("HOME");
  const std::string before = home != nullptr ? home : "";
  setenv("HOME", "/home/quay", 1);
  PathDialog dialog;
  dialog.purpose = Purpose::save;
  dialog.folder = "/elsewhere";
  const auto path = [&](const char* name) {
    dialog.name = name;
    return path_of(dialog).string();
  };
  CHECK(path("~/bands/tide.repeat") == "/home/quay/bands/tide.repeat");
  CHECK(path("~tide.repeat") == "/elsewhere/~tide.repeat");
  CHECK(path("bands/~/tide.repeat") == "/elsewhere/bands/~/tide.repeat");
  CHECK(with_home("~") == fs::path("/home/quay"));
  setenv("HOME", before.c_str(), 1);
}

TEST_CASE("findings are counted with what hangs over the drawing, as its floats are marked") {
  App app = ready_app();
  const FindingCounts blank = counts_in_sight(app);
  Grid dots(20, 1);
  dots.set(0, 0, true);
  dots.set(19, 0, true);
  app.view.cursor = {0, 2};
  editor::apply(app, HangOver{dots, "dots", false});
  refresh(app);
  const FindingCounts hanging = counts_in_sight(app);
  CHECK(hanging.faults > blank.faults);
  editor::apply(app, SetDown{});
  refresh(app);
  CHECK(counts_in_sight(app) == hanging);
  CHECK(app.caches.faults == hanging.faults);
}

TEST_CASE("menus' titles never run together: those without room stand in one more menu") {
  constexpr std::array widths = {100.0F, 200.0F, 150.0F, 120.0F};
  const MenuTitles wide = titles_in_bar(widths, 80, 2000, 5, 8);
  CHECK(wide.in_bar == 4);
  CHECK(wide.gap == 8);
  const MenuTitles close = titles_in_bar(widths, 80, 570 + 4 * 2.2F * 6, 5, 8);
  CHECK(close.in_bar == 4);
  CHECK(close.gap == doctest::Approx(6));
  for (float room = 250; room < 700; room += 10) {
    CAPTURE(room);
    const MenuTitles titles = titles_in_bar(widths, 80, room, 5, 8);
    CHECK(titles.gap >= 5);
    CHECK(titles.in_bar >= 1);
    float taken = titles.in_bar < widths.size() ? 80 + 2.2F * titles.gap : 0;
    for (std::size_t title = 0; title < titles.in_bar; ++title) {
      taken += widths[title] + 2.2F * titles.gap;
    }
    CHECK(taken <= room + 0.01F);
  }
}
