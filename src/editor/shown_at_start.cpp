// What a picture of a screen is to show: the dialog, the finding or the sheet that the command line names, with a
// little done in it where it would be empty.
#include "editor/shown_at_start.hpp"

#include "editor/actions.hpp"
#include "editor/kept_work.hpp"
#include "editor/play.hpp"
#include "editor/wrong_search.hpp"

#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace punchwright::editor {

namespace {

// The questions about work that a window left behind, and about a file that somebody else has written.
void show_question_about_file(App& app, const std::string& dialog) {
  if (dialog != "recovery" && dialog != "changed" && dialog != "noticed") {
    return;
  }
  apply(app, PlaceCursor{Cell{2, 3}});
  apply(app, Run{Command::toggle_stitch});
  if (dialog != "recovery") {
    app.session.file_digest = ~app.session.file_digest;
    return dialog == "changed" ? apply(app, Run{Command::save}) // not done: it asks first
                               : apply(app, LookAtFiles{});
  }
  constexpr std::int64_t kept = 1'792'940'580; // 2026-10-25, 15:03 UTC
  const Journal journal{
      app.session.path, {}, app.session.file_digest, kept, KeptDesign{app.work.design, app.work.history}};
  apply(app, Run{Command::undo});
  offer_recovery(app, {std::make_shared<FoundWork>(FoundWork{{}, std::nullopt, journal})});
}

// Saved to a disk that isn't there any more.
void fail_to_save(App& app) {
  apply(app, PlaceCursor{Cell{2, 3}});
  apply(app, Run{Command::toggle_stitch});
  app.session.path = app.session.folder / "stick" / app.session.path.filename();
  app.session.file_digest = 0;
  apply(app, Run{Command::save});
}

// The questions that come up while something is worked on.
void show_question_about_work(App& app, const std::string& dialog) {
  if (dialog != "guard" && dialog != "dropped" && dialog != "bench-changed") {
    return;
  }
  const auto change = [&app] {
    apply(app, PlaceCursor{Cell{2, 3}});
    apply(app, Run{Command::toggle_stitch});
  };
  if (dialog == "bench-changed") {
    constexpr int somewhere = 14; // moves: some rows are knitted
    apply(app, Run{Command::at_the_bench});
    apply(app, GoToMove{somewhere});
    apply(app, Run{Command::at_the_bench});
    change();
    return apply(app, Run{Command::at_the_bench});
  }
  change();
  return dialog == "guard" ? apply(app, Run{Command::quit}) : apply(app, DropFile{app.session.path});
}

// The file chooser's questions: a folder to be made, a file that is there already, a machine's file, a yoke's tier.
void show_question_of_chooser(App& app, const std::string& dialog) {
  if (dialog == "keep-machine") { // of a design that was never saved
    return apply(app, UseSwatch{swatch_answer(1)});
  }
  if (dialog == "save-yoke") {
    return apply(app, Run{Command::save_as});
  }
  if (dialog == "yoke-tier") {
    return apply(app, AddTierTo{});
  }
  if (dialog == "machine-file") {
    PathDialog chooser;
    chooser.purpose = Purpose::choose_machine;
    chooser.folder = app.session.folder;
    chooser.entries = entries_of(chooser.folder, chooser.purpose);
    return apply(app, SetDialog{chooser});
  }
  if (dialog != "new-folder" && dialog != "replace") {
    return;
  }
  apply(app, Run{Command::save_as});
  PathDialog chooser = std::get<PathDialog>(app.session.dialog);
  if (dialog == "new-folder") {
    chooser.new_folder = "Bands";
    return apply(app, SetDialog{chooser});
  }
  chooser.name = "tide-waves.repeat";
  apply(app, SetDialog{chooser});
  apply(app, ChoosePath{false});
}

// A name over the drawing.
void letter_something(App& app) {
  apply(app, TypeLettering{"Mole", LetterHeight::seven});
  apply(app, PlaceCursor{Cell{1, 8}});
  apply(app, Run{Command::place_lettering});
}

// A list of what was done has something to tell.
void do_a_few_things(App& app) {
  apply(app, PlaceCursor{Cell{2, 3}});
  for (const Command command : {Command::toggle_stitch, Command::mirror_sideways, Command::shift_right,
                                Command::duplicate_row, Command::mirror_sideways, Command::undo}) {
    apply(app, Run{command});
  }
}

} // namespace

void show_asked_for(App& app, const Options& options) {
  refresh(app);
  if (options.choose_finding) {
    apply(app, ChooseFinding{0});
  }
  for (const SheetKindInfo& sheet : sheet_kinds) {
    if (options.sheet == sheet.id) {
      app.view.preview.kind = sheet.kind;
    }
  }
  if (options.dialog == "palette") {
    apply(app, SetDialog{PaletteDialog{}});
  }
  if (options.dialog == "swatch") {
    apply(app, SetDialog{SwatchDialog{}});
  }
  const std::vector<std::pair<const char*, Command>> dialogs = {{"new", Command::new_design},
                                                                {"new-yoke", Command::new_yoke},
                                                                {"open", Command::open},
                                                                {"keys", Command::keys},
                                                                {"card", Command::export_card},
                                                                {"chart", Command::export_chart},
                                                                {"export-steps", Command::export_steps},
                                                                {"export-leaflet", Command::export_leaflet},
                                                                {"export-fabric", Command::export_fabric},
                                                                {"export-pattern", Command::export_pattern},
                                                                {"export-yoke", Command::export_yoke},
                                                                {"measure-page", Command::export_measure_page},
                                                                {"swatch-page", Command::export_swatch},
                                                                {"size", Command::resize},
                                                                {"commands", Command::all_commands},
                                                                {"steps", Command::steps_done},
                                                                {"settings", Command::settings},
                                                                {"start", Command::start_page},
                                                                {"help", Command::help},
                                                                {"preview", Command::preview},
                                                                {"everything", Command::export_everything},
                                                                {"pairs", Command::try_pairs},
                                                                {"import", Command::import_picture},
                                                                {"layout", Command::lay_out},
                                                                {"yarns-here", Command::yarns_here},
                                                                {"keep-motif", Command::keep_motif},
                                                                {"bench", Command::at_the_bench},
                                                                {"step-list", Command::step_list},
                                                                {"play", Command::play},
                                                                {"wrong", Command::what_went_wrong},
                                                                {"mend", Command::mend},
                                                                {"afar", Command::from_afar},
                                                                {"menu", Command::open_menus}};
  if (options.dialog == "steps") {
    do_a_few_things(app);
  }
  for (const auto& [name, command] : dialogs) {
    if (options.dialog == name) {
      apply(app, Run{command});
    }
  }
  if (options.dialog == "lettering") {
    letter_something(app);
  }
  show_question_of_chooser(app, options.dialog);
  show_question_about_file(app, options.dialog);
  if (options.dialog == "not-saved") {
    fail_to_save(app);
  }
  show_question_about_work(app, options.dialog);
  if (app.bench.open) {
    apply(app, GoToMove{options.done});
    apply(app, Say{});
  }
  if (const auto* const wrong = std::get_if<WrongDialog>(&app.session.dialog); wrong != nullptr && options.done > 0) {
    WrongDialog next{with_height(wrong->form, options.done), nullptr, nullptr};
    next.form.cursor.row = next.form.height() / 2;
    next.form = with_change(std::move(next.form), SeenChange::row_twice); // the card was stuck
    apply(app, SetDialog{next});
    apply(app, AskWhatWentWrong{});
    finish_search(app);
  }
  if (const auto* const play = std::get_if<PlayDialog>(&app.session.dialog);
      play != nullptr && play->knitting != nullptr && options.done > 0) {
    apply(app, PlayTo{play->knitting->ready_after(options.done)});
  }
}

} // namespace punchwright::editor
