// What is learnt about a machine, and fields that are left by Escape, without a window.
#include "editor/actions.hpp"
#include "support/folder.hpp"

#include <cstdlib>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>

using namespace punchwright;
using namespace punchwright::editor;
using punchwright::test::Folder;

namespace {

namespace fs = std::filesystem;

void type_title(App& app, const char* title) {
  Document settings = settings_of(app.work.design);
  settings.title = title;
  editor::apply(app, ChangeField{settings, "title", {}});
}

} // namespace

TEST_CASE("Escape in a field leaves neither a change nor a step, and the saved mark stays") {
  App app = make_app();
  type_title(app, "G");
  type_title(app, "Gu");
  editor::apply(app, DropField{});
  CHECK(app.work.design.title.empty());
  CHECK(app.work.history.steps().empty());
  CHECK(app.work.history.saved());
  editor::apply(app, DropField{}); // nothing is being typed: nothing is taken back
  type_title(app, "Gulls");
  editor::apply(app, CloseField{});
  editor::apply(app, DropField{});
  CHECK(app.work.design.title == "Gulls");
  CHECK(app.work.history.steps().size() == 1);
}

TEST_CASE("a swatch that came out as drawn is recorded like any other answer") {
  const Folder folder;
  App app = make_app();
  app.session.path = folder.path / "cove.repeat";
  editor::apply(app, UseSwatch{swatch_answer(1)});
  CHECK(app.work.design.profile == "cove.machine");
  CHECK(app.work.profile.sources.at("card.face") == "from the orientation swatch");
  CHECK(app.work.profile.card->face == built_in_profile("bulky-card-24")->card->face);
}

TEST_CASE("on a design that was never saved what is learnt is kept where the user says") {
  const Folder folder;
  App app = make_app();
  BlankReadings readings = readings_of(app.work.profile.card->geometry, app.work.profile.card->repeat);
  readings.over_50_rows = 252.35;
  editor::apply(app, SetReadings{readings, 5});
  editor::apply(app, UseReadings{});
  auto* const dialog = std::get_if<PathDialog>(&app.session.dialog);
  REQUIRE(dialog != nullptr);
  CHECK(dialog->purpose == Purpose::keep_machine);
  dialog->name = (folder.path / "loft").string();
  editor::apply(app, ChoosePath{});
  CHECK(editor::name_of(app.session.dialog) == "none");
  CHECK(app.work.design.profile == (folder.path / "loft.machine").string());
  CHECK(app.work.profile.card->geometry.row_pitch == doctest::Approx(5.047));
  CHECK(app.work.profile.card->reader_offset == 5);
  CHECK(app.work.profile.sources.at("card.reader_offset") == "counted on the machine");
  CHECK_FALSE(app.session.readings.has_value());
}

TEST_CASE("a design without its machine opens with a built-in one, as a change that can be undone") {
  const Folder folder;
  const fs::path path = folder.path / "lost.repeat";
  std::ofstream(path) << "format = 1\n[machine]\nprofile = \"gone.machine\"\n[[yarn]]\nkey = \"A\"\n"
                         "[[yarn]]\nkey = \"B\"\n[repeat]\nwidth = 4\nrows = [\"#..#\"]\n"
                         "[[band]]\nrows = 1\nmain = \"A\"\ncontrast = \"B\"\n[piece]\nfirst_column = 2\n";
  App app = make_app();
  editor::apply(app, OpenDropped{path});
  const auto* const trouble = std::get_if<TroubleDialog>(&app.session.dialog);
  REQUIRE(trouble != nullptr);
  REQUIRE(trouble->missing);
  editor::apply(app, OpenWithMachine{"standard-card-24"});
  CHECK(app.session.path == path);
  CHECK(app.work.design.profile == "standard-card-24");
  CHECK(app.work.profile.name == "standard-card-24");
  CHECK_FALSE(app.work.design.piece.first_column.has_value()); // only a machine without a card takes one
  CHECK_FALSE(app.work.history.saved());
  editor::apply(app, Run{Command::undo});
  CHECK(app.work.design.profile == "gone.machine");
}

TEST_CASE("on a bed without a reader the card's command leads to the needle chart") {
  App app = make_app();
  editor::apply(app, EditDesign{ChangeSettings{
                         with_machine(settings_of(app.work.design), *built_in_profile("plastic-by-hand"))}});
  editor::apply(app, Run{Command::export_card});
  const auto* const dialog = std::get_if<PathDialog>(&app.session.dialog);
  REQUIRE(dialog != nullptr);
  CHECK(dialog->purpose == Purpose::chart);
  CHECK_FALSE(dialog->remark.empty());
}

TEST_CASE("the widths that a card takes are those that divide its columns") {
  CHECK(fitting_widths(24) == "1, 2, 3, 4, 6, 8, 12, 24"); // kcguild.org.uk, punch cards and pattern cards; and 1, 24
  CHECK(fitting_widths(12) == "1, 2, 3, 4, 6, 12");
}
