// Pictures that become drawings, and motifs of the user's own, without a window.
#include "editor/actions.hpp"
#include "editor/applying.hpp"
#include "editor/own_motifs.hpp"
#include "files/scratch_folder.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>
#include <fstream>
#include <sstream>

using namespace punchwright;
using namespace punchwright::editor;
using test::lines_of;
using Lines = std::vector<std::string>;

namespace {

namespace fs = std::filesystem;

void put(const fs::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

std::string text_in(const fs::path& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return text.str();
}

App fresh_app() {
  App app = make_app();
  app.view.canvas = {0, 0, 800, 600};
  refresh(app);
  return app;
}

} // namespace

TEST_CASE("a dropped picture is shown, and hangs over the drawing until it is set down") {
  const test::ScratchFolder folder;
  put(folder.path() / "gull.pbm", "P1 3 2\n1 0 1\n0 0 1");
  App app = fresh_app();
  app.view.cursor = {4, 5};
  editor::apply(app, DropFile{folder.path() / "gull.pbm"});
  REQUIRE(name_of(app.session.dialog) == "picture");
  editor::apply(app, TakePicture{false});
  REQUIRE(app.session.floating.has_value());
  CHECK(lines_of(app.session.floating->drawing) == Lines{"#.#", "..#"});
  CHECK(app.work.history.done() == 0);
  editor::apply(app, SetDown{});
  CHECK(app.work.history.steps().back().name == "set down “gull”");
  CHECK(app.work.design.grid.at(4, 6));
  CHECK(app.work.design.grid.at(6, 5));
}

TEST_CASE("a picture becomes a new design for the same machine; what is not saved is asked for first") {
  const test::ScratchFolder folder;
  put(folder.path() / "gull.pbm", "P1 4 2\n1 0 1 1\n0 0 1 0");
  App app = fresh_app();
  editor::apply(app, Run{Command::toggle_stitch});
  editor::apply(app, OpenDropped{folder.path() / "gull.pbm"}); // as the file chooser opens it
  CHECK(name_of(app.session.dialog) == "guard");
  editor::apply(app, AnswerGuard{GuardAnswer::discard});
  CHECK(name_of(app.session.dialog) == "picture");
  editor::apply(app, TakePicture{true});
  CHECK(name_of(app.session.dialog) == "guard");
  editor::apply(app, AnswerGuard{GuardAnswer::discard});
  CHECK(lines_of(app.work.design.grid) == Lines{"#.##", "..#."});
  CHECK(app.work.design.title == "gull");
  CHECK(app.work.design.profile == "bulky-card-24");
  CHECK(app.session.path.empty());
  CHECK(app.session.suggested_name == "gull");
}

TEST_CASE("what is no such picture says why, and the drawing stays") {
  const test::ScratchFolder folder;
  put(folder.path() / "grey.png", "P2 no such thing");
  App app = fresh_app();
  editor::apply(app, DropFile{folder.path() / "grey.png"});
  const auto* const trouble = std::get_if<TroubleDialog>(&app.session.dialog);
  REQUIRE(trouble != nullptr);
  CHECK(trouble->text.find("grey.png") != std::string::npos);
  CHECK(trouble->remedy.find("PNG") != std::string::npos);
  editor::apply(app, DropFile{folder.path() / "none.png"});
  CHECK(name_of(app.session.dialog) == "trouble");
}

TEST_CASE("the file chooser shows pictures as they would be") {
  const test::ScratchFolder folder;
  put(folder.path() / "gull.pbm", "P1 3 2\n1 0 1\n0 0 1");
  put(folder.path() / "broken.pbm", "P1 3 2\n1 0");
  const DesignCard card = design_card(folder.path() / "gull.pbm", 1.0);
  CHECK(card.stitches == 3);
  CHECK(card.picture.columns > 0);
  CHECK(design_card(folder.path() / "broken.pbm", 1.0).trouble.find("ends after 2 of 6") != std::string::npos);
}

TEST_CASE("the marked area is kept as a motif and found with the others") {
  const test::ScratchFolder folder;
  App app = fresh_app();
  app.motif_folder = folder.path() / "data" / "motifs";
  editor::apply(app, Run{Command::toggle_stitch});
  app.view.marked = Area{Cell{0, 0}, 3, 2};
  for (const char* const expected : {"grey-heron.motif", "grey-heron-2.motif"}) {
    editor::apply(app, Run{Command::keep_motif});
    auto dialog = std::get<KeepMotifDialog>(app.session.dialog);
    CHECK(lines_of(dialog.drawing) == Lines{"...", "#.."});
    dialog.name = "Grey heron";
    dialog.words = "bird; marsh";
    editor::apply(app, SetDialog{dialog});
    editor::apply(app, KeepMotif{});
    CHECK(name_of(app.session.dialog) == "none");
    CHECK(fs::exists(app.motif_folder / expected));
  }
  CHECK(text_in(app.motif_folder / "grey-heron.motif") == "grey-heron: Grey heron; bird  marsh\n...\n#..\n");
  editor::apply(app, ChooseTab{Tab::tools});
  refresh(app);
  CHECK(app.caches.motifs.size() == motif_collection().size() + 2);
  CHECK(motifs_found(app.caches.motifs, "marsh").size() == 2);
  CHECK(motifs_found(app.caches.motifs, "own heron").size() == 2);
}

TEST_CASE("a motif needs a name, and a folder to lie in") {
  App app = fresh_app();
  editor::apply(app, Run{Command::keep_motif});
  CHECK(name_of(app.session.dialog) == "none");
  CHECK(app.session.tone == Tone::trouble);
  const test::ScratchFolder folder;
  app.motif_folder = folder.path();
  editor::apply(app, Run{Command::keep_motif});
  editor::apply(app, KeepMotif{});
  CHECK(std::get<KeepMotifDialog>(app.session.dialog).trouble == "Type a name for it.");
}

TEST_CASE("the user's folder: designs and text, by name; what is broken is noted and the rest is there") {
  const test::ScratchFolder folder;
  put(folder.path() / "b.motif", "b: Bee; insect\n#.#\n.#.\n\nc: Sea\n##\n");
  put(folder.path() / "a.repeat", text_in(fs::path(PUNCHWRIGHT_SOURCE_DIR) / "patterns" / "hood-border.repeat"));
  put(folder.path() / "broken.motif", "x: X\n#x#\n");
  put(folder.path() / "broken.repeat", "format = 99\n");
  put(folder.path() / "notes.txt", "not a motif");
  fs::create_directory(folder.path() / "folder.motif");
  const OwnMotifs own = own_motifs_in(folder.path());
  REQUIRE(own.motifs.size() == 3);
  CHECK(own.motifs[0].name == "Hood border");
  CHECK(own.motifs[1].name == "Bee");
  CHECK(own.motifs[2].id == "c");
  CHECK(own.trouble.find("broken.motif:2:2: ") != std::string::npos);
  CHECK(own.trouble.find("\nbroken.repeat:") != std::string::npos);
  CHECK(own_motifs_in(folder.path() / "none").motifs.empty());
  CHECK(own_motifs_in({}).trouble.empty());
}
