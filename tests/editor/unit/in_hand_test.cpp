// What is in the hand or hangs over the drawing, while something else is asked for: it goes with its design, it is set
// down before the drawing changes under it or is handed over, and undo gives it up first.
#include "design/repeat_file.hpp"
#include "design/step_words.hpp"
#include "drawing/marked_area.hpp"
#include "editor/actions.hpp"
#include "editor/long_work.hpp"
#include "files/files.hpp"
#include "journal/journal.hpp"
#include "support/builders.hpp"
#include "support/folder.hpp"

#include <doctest/doctest.h>
#include <filesystem>
#include <string>
#include <variant>
#include <vector>

using namespace punchwright;
using namespace punchwright::editor;
using test::drawn;
using test::lines_of;
using Lines = std::vector<std::string>;

namespace {

void run(App& app, Command command) {
  editor::apply(app, Run{command});
}

void run(App& app, const std::vector<Command>& commands) {
  for (const Command command : commands) {
    run(app, command);
  }
}

// The lowest row first.
App app_with(const Lines& rows) {
  App app = make_app();
  app.work.design = drawn(rows);
  app.view.canvas = {0, 0, 800, 600};
  refresh(app);
  return app;
}

// Six by four, of which the lower left 2 × 2 are one stitch of contrast and three of main.
App app_with_a_mark() {
  App app = app_with({"......", "......", "......", "#....#"});
  app.view.marked = Area{Cell{0, 0}, 2, 2};
  return app;
}

Lines lines(const App& app) {
  return lines_of(app.work.design.grid);
}

} // namespace

TEST_SUITE("editor: another design is taken") {
  TEST_CASE("a shown mend goes with its design: Return changes nothing in the one that was opened") {
    const test::Folder folder;
    const Lines puffins = {"............", "#..#..#..#..", "#.........##"};
    const Lines buoys = {"#..#..#..#..", "##..##..##..", "#.#.#.#.#.#."};
    REQUIRE_FALSE(write_file(folder.path / "puffins.repeat", write_repeat(drawn(puffins))));
    REQUIRE_FALSE(write_file(folder.path / "buoys.repeat", write_repeat(drawn(buoys))));
    App app = make_app();
    editor::apply(app, OpenDropped{folder.path / "puffins.repeat"});
    refresh(app);
    run(app, Command::mend);
    REQUIRE(app.session.mend);
    editor::apply(app, OpenDropped{folder.path / "buoys.repeat"}); // neither was changed: the same revision
    CHECK_FALSE(app.session.mend);
    run(app, Command::set_down);
    CHECK(lines(app) == buoys);
    CHECK(app.work.history.saved());
  }

  TEST_CASE("what hangs over a drawing doesn't hang over the next one, nor does anything else stay in the hand") {
    for (const bool copy_of_other : {false, true}) {
      const test::Folder folder;
      REQUIRE_FALSE(write_file(folder.path / "buoys.repeat", write_repeat(drawn({"#....", ".....", "....."}))));
      App app = app_with_a_mark();
      run(app, Command::tool_mark);
      editor::apply(app, BeginStroke{Cell{0, 0}, false}); // lifts what is marked
      editor::apply(app, StrokeTo{Cell{2, 1}});
      REQUIRE(app.session.floating);
      const auto path = folder.path / "buoys.repeat";
      copy_of_other ? editor::apply(app, OpenCopy{path}) : editor::apply(app, OpenDropped{path});
      editor::apply(app, AnswerGuard{GuardAnswer::discard});
      REQUIRE(lines(app) == Lines{"#....", ".....", "....."});
      CHECK_FALSE(app.session.floating);
      CHECK_FALSE(app.session.stroke);
      editor::apply(app, EndStroke{});
      run(app, Command::set_down);
      CHECK(app.work.history.done() == 0);
    }
  }

  TEST_CASE("nor is anything worked out for the one that was open") {
    App app = app_with(Lines(400, std::string(200, '#').replace(5, 9, ".........")));
    run(app, Command::mend);
    REQUIRE(app.session.long_work);
    editor::apply(app, BeginDesign{NewDialog{}});
    CHECK_FALSE(app.session.long_work);
    finish_long_work(app);
    CHECK_FALSE(app.session.mend);
  }
}

TEST_SUITE("editor: something hangs over the drawing") {
  TEST_CASE("shifted, mirrored, exchanged or turned, it is what hangs that is changed, and the drawing stays") {
    struct Case {
      Command command;
      Lines then;
    };
    for (const Case& one : std::vector<Case>{{Command::shift_up, {"#.", ".."}},
                                             {Command::shift_right, {"..", ".#"}},
                                             {Command::shift_left, {"..", ".#"}},
                                             {Command::shift_down, {"#.", ".."}},
                                             {Command::mirror_sideways, {"..", ".#"}},
                                             {Command::mirror_upwards, {"#.", ".."}},
                                             {Command::invert, {"##", ".#"}},
                                             {Command::turn, {"..", ".#"}}}) {
      App app = app_with_a_mark();
      const Lines before = lines(app);
      const Area marked = *app.view.marked;
      run(app, Command::tool_mark);
      editor::apply(app, BeginStroke{Cell{0, 0}, false});
      editor::apply(app, EndStroke{});
      REQUIRE(app.session.floating);
      run(app, one.command);
      CAPTURE(info_of(one.command).id);
      REQUIRE(app.session.floating);
      CHECK(lines_of(app.session.floating->drawing) == one.then);
      CHECK(app.session.floating->lifted_from == marked);
      CHECK(lines(app) == before);
      CHECK(app.work.history.done() == 0);
    }
  }

  // Lifted from the lower left and moved two stitches to the right, one row up.
  App app_with_something_lifted() {
    App app = app_with_a_mark();
    run(app, Command::tool_mark);
    editor::apply(app, BeginStroke{Cell{0, 0}, false});
    editor::apply(app, StrokeTo{Cell{2, 1}});
    editor::apply(app, EndStroke{});
    REQUIRE(app.session.floating);
    return app;
  }

  const Lines before = {"......", "......", "......", "#....#"};
  const Lines moved = {"......", "......", "..#...", ".....#"};

  TEST_CASE("what changes the drawing sets it down first, as a step of its own, and says so") {
    for (const Command command :
         {Command::insert_row, Command::duplicate_row, Command::delete_row, Command::insert_column,
          Command::duplicate_column, Command::delete_column, Command::move_row_up, Command::move_column_right}) {
      App app = app_with_something_lifted();
      run(app, command);
      CAPTURE(info_of(command).id);
      CHECK_FALSE(app.session.floating);
      CHECK(app.session.message.starts_with("What hung over the drawing is set down"));
      REQUIRE(app.work.history.done() == 2);
      CHECK(words_of(app.work.history.steps()[0]) == "move, rows 1 to 2");
      run(app, Command::undo);
      CHECK(lines(app) == moved);
      run(app, Command::undo);
      CHECK(lines(app) == before);
    }
  }

  TEST_CASE("rows dragged, another layout or size: what was lifted is set down before them") {
    for (const Action& action :
         std::vector<Action>{BeginLineDrag{true, 0}, TakeLayout{Layout::brick}, EditDesign{Resize{5, 3}}}) {
      App app = app_with_something_lifted();
      editor::apply(app, action);
      CHECK_FALSE(app.session.floating);
      editor::apply(app, GoToStep{1});
      CHECK(lines(app) == moved);
    }
  }

  TEST_CASE("undo gives back what was lifted, and takes back no step") {
    App app = app_with_something_lifted();
    editor::apply(app, EditDesign{ChangeSettings{settings_of(app.work.design)}});
    REQUIRE(app.session.floating); // settings leave it
    run(app, Command::undo);
    CHECK_FALSE(app.session.floating);
    CHECK(lines(app) == before);
    CHECK(app.view.marked == Area{Cell{0, 0}, 2, 2});
    CHECK(app.session.message == "What hung over the drawing is given up");
  }

  TEST_CASE("redo and a jump to another step give it up first") {
    for (const bool jump : {false, true}) {
      App app = app_with({"......", "......"});
      editor::apply(app, PlaceCursor{Cell{5, 1}});
      run(app, Command::toggle_stitch);
      run(app, Command::undo);
      editor::apply(app, HangOver{drawn({"##"}).grid, "set down “wave”", false});
      jump ? editor::apply(app, GoToStep{1}) : run(app, Command::redo);
      CHECK_FALSE(app.session.floating);
      CHECK(lines(app) == Lines{".....#", "......"});
      CHECK(app.session.message.starts_with("What hung over the drawing is given up. "));
    }
  }

  TEST_CASE("where it can't be set down, it goes on hanging and nothing is done") {
    App app = app_with({"......", "......"});
    app.work.design.bands = {Band{2, 'A', std::nullopt, std::nullopt}};
    refresh(app);
    editor::apply(app, HangOver{drawn({"##"}).grid, "set down “wave”", false});
    run(app, Command::insert_row);
    CHECK(app.session.floating);
    CHECK(app.work.history.done() == 0);
    CHECK(app.session.tone == Tone::trouble);
  }

  TEST_CASE("the mend is worked out for the drawing with it") {
    App app = app_with({"#.#.#.#.#.#."});
    editor::apply(app, HangOver{drawn({"............"}).grid, "set down “plain”", false});
    run(app, Command::mend);
    CHECK_FALSE(app.session.floating);
    CHECK(app.work.history.done() == 1);
  }

  TEST_CASE("a shown mend gives way to what is hung over the drawing, so that Return means what came last") {
    App app = app_with({"............", "#.........##"});
    run(app, Command::mend);
    REQUIRE(app.session.mend);
    app.session.clipboard = "##\n";
    run(app, Command::paste);
    CHECK_FALSE(app.session.mend);
    run(app, Command::set_down);
    CHECK(lines(app) == Lines{"............", "##........##"});
  }

  TEST_CASE("copied, cut or cleared, it is what hangs") {
    App app = app_with_something_lifted();
    run(app, Command::copy);
    CHECK(app.session.copied == "..\n#.\n");
    CHECK(app.session.floating);
    run(app, Command::cut);
    CHECK_FALSE(app.session.floating);
    CHECK(app.session.message == "Copied 2 × 2 stitches");
    CHECK(lines(app) == Lines{"......", "......", "......", ".....#"});
    CHECK(words_of(app.work.history.steps().back()) == "cut, row 1");
    run(app, Command::undo);
    CHECK(lines(app) == before);
    // What was pasted came from elsewhere: the drawing isn't cleared instead of it.
    app.session.clipboard = "##\n";
    run(app, {Command::paste, Command::clear});
    CHECK_FALSE(app.session.floating);
    CHECK(lines(app) == before);
  }

  TEST_CASE("what is pasted after it sets it down; another motif or other words take the place of one that is tried") {
    App app = app_with({"......"});
    app.session.clipboard = "#\n";
    run(app, Command::paste);
    app.view.cursor = Cell{3, 0};
    run(app, Command::paste);
    CHECK(lines(app) == Lines{"#....."});
    CHECK(app.session.floating);
    run(app, Command::undo);
    editor::apply(app, HangOver{drawn({"##"}).grid, "set down “wave”", false});
    editor::apply(app, HangOver{drawn({"#.#"}).grid, "set down “buoy”", false});
    CHECK(lines(app) == Lines{"#....."});
    CHECK(app.work.history.done() == 1);
  }

  TEST_CASE("what is larger than the repeat is cut off, which is said while it hangs") {
    App app = app_with({"......", "......"});
    const auto said_of = [&app](const std::string& text) {
      app.session.clipboard = text;
      run(app, Command::paste);
      const std::string said = app.session.message;
      run(app, Command::focus_drawing);
      return said.substr(0, said.find(". "));
    };
    CHECK(said_of("########\n") == "8 stitches wide, and the repeat has 6: what reaches beyond it is cut off");
    CHECK(said_of("#\n#\n#\n") == "3 rows high, and the repeat has 2: what reaches beyond it is cut off");
    CHECK(said_of("########\n########\n########\n") ==
          "8 × 3 stitches, and the repeat has 6 × 2: what reaches beyond it is cut off");
    CHECK(said_of("######\n") == "Drag it or move it with the arrows; Return or a click beside it sets it down, Escape "
                                 "gives it up");
    app.session.clipboard = "####\n";
    run(app, {Command::paste, Command::turn});
    CHECK(app.session.message == "4 rows high, and the repeat has 2: what reaches beyond it is cut off");
  }

  TEST_CASE("it goes on hanging while the repeat is made large enough for it") {
    App app = app_with({"......"});
    app.session.clipboard = "########\n";
    run(app, Command::paste);
    editor::apply(app, EditDesign{Resize{8, 1}});
    REQUIRE(app.session.floating);
    run(app, Command::set_down);
    CHECK(lines(app) == Lines{"########"});
  }
}

TEST_SUITE("editor: the design is handed over while something hangs over it") {
  App app_with_a_file(const std::filesystem::path& path) {
    App app = app_with({"......", "......"});
    app.session.path = path;
    REQUIRE_FALSE(write_file(path, write_repeat(app.work.design)));
    app.session.file_digest = digest_of(write_repeat(app.work.design));
    editor::apply(app, HangOver{drawn({"##"}).grid, "set down “wave”", false});
    return app;
  }

  Lines lines_in(const std::filesystem::path& path) {
    return lines_of(read_repeat(*read_file(path, 100'000), path.string())->document.grid);
  }

  TEST_CASE("saving sets it down first, so that the file is as it was seen") {
    const test::Folder folder;
    const auto path = folder.path / "wave.repeat";
    App app = app_with_a_file(path);
    run(app, Command::save);
    CHECK_FALSE(app.session.floating);
    CHECK(lines_in(path) == Lines{"......", "##...."});
    CHECK(app.session.message == "What hung over the drawing is set down. Saved wave.repeat");
    CHECK(app.work.history.saved());
  }

  TEST_CASE("so do the exports and the print preview") {
    for (const Command command : {Command::export_card, Command::export_chart, Command::export_steps,
                                  Command::export_leaflet, Command::export_fabric, Command::export_pattern,
                                  Command::export_everything, Command::preview, Command::save_as}) {
      const test::Folder folder;
      App app = app_with_a_file(folder.path / "wave.repeat");
      run(app, command);
      CAPTURE(info_of(command).id);
      CHECK(is_open(app.session.dialog));
      CHECK(lines(app) == Lines{"......", "##...."});
    }
  }

  TEST_CASE("closing asks about it, though all else is saved") {
    const test::Folder folder;
    const auto path = folder.path / "wave.repeat";
    App app = app_with_a_file(path);
    REQUIRE(app.work.history.saved());
    run(app, Command::quit);
    CHECK_FALSE(app.session.quit);
    REQUIRE(std::holds_alternative<GuardDialog>(app.session.dialog));
    editor::apply(app, AnswerGuard{GuardAnswer::cancel});
    CHECK(app.session.floating); // as before
    run(app, Command::quit);
    editor::apply(app, AnswerGuard{GuardAnswer::save});
    CHECK(app.session.quit);
    CHECK(lines_in(path) == Lines{"......", "##...."});
  }

  TEST_CASE("what would change nothing isn't asked about") {
    const test::Folder folder;
    App app = app_with_a_file(folder.path / "wave.repeat");
    run(app, Command::focus_drawing);
    editor::apply(app, HangOver{drawn({".."}).grid, "set down “plain”", false});
    run(app, Command::quit);
    CHECK(app.session.quit);
  }
}
