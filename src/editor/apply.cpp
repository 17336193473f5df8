// Every action finds the part that carries it out, and what is open is closed first.
#include "design/words.hpp"
#include "drawing/marked_area.hpp"
#include "editor/applying.hpp"
#include "editor/hanging.hpp"
#include "editor/language.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <utility>

namespace punchwright::editor {

void say(App& app, std::string text, Tone tone) {
  app.session.message = std::move(text);
  app.session.tone = tone;
}

bool edit(App& app, const Edit& change) {
  History& history = app.work.history;
  const GridSize before = grid_size(app.work.design.grid);
  const auto revision = history.revision();
  const auto done = history.done();
  if (const Failure failure = history.apply(app.work.design, change)) {
    const std::string text = with_capital(failure->message);
    say(app, failure->remedy.empty() ? text : text + "; " + failure->remedy, Tone::trouble);
    return false;
  }
  if (history.revision() != revision) {
    follow_lines(app, change, before, history.done() != done);
  }
  return true;
}

void close_step(App& app) {
  app.work.history.end_drag();
  app.session.open_field.clear();
  app.yoke.open_field.clear();
  app.session.stroke.reset();
  app.session.line_drag.reset();
  app.session.key_run.reset();
}

namespace {

void keep_cursor_inside(App& app) {
  const Grid& grid = app.work.design.grid;
  Cell& cursor = app.view.cursor;
  cursor.column = std::clamp(cursor.column, 0, grid.width() - 1);
  cursor.row = std::clamp(cursor.row, 0, grid.height() - 1);
  if (app.view.marked) {
    app.view.marked = marked(*app.view.marked, grid);
  }
}

void change_field(App& app, const ChangeField& action) {
  if (app.session.stroke || app.session.open_field != action.field) {
    close_step(app);
    app.work.history.begin_drag(action.field);
    app.session.open_field = action.field;
  }
  edit(app, action.bands ? Edit(ChangeBands{*action.bands}) : Edit(ChangeSettings{action.settings}));
}

// Drawing with the keys is one step until something else is done.
bool goes_on_drawing(const Action& action) {
  const auto* const move = std::get_if<MoveCursor>(&action);
  return (move != nullptr && move->draw) || std::holds_alternative<Placed>(action);
}

// A shape that was begun and is neither drawn nor given up by that action, but would go with what it does.
bool drops_shape(const App& app, const Action& action) {
  const auto& stroke = app.session.stroke;
  return stroke && !stroke->moves_floating && stroke->tool != Tool::pen && stroke->tool != Tool::mark &&
         !std::holds_alternative<EndStroke>(action) && !std::holds_alternative<StrokeTo>(action) &&
         !std::holds_alternative<PressHere>(action);
}

bool gives_up(const Action& action) {
  const auto* const run = std::get_if<Run>(&action);
  return run != nullptr && (run->command == Command::focus_drawing || run->command == Command::toggle_stitch);
}

void say_shape_dropped(App& app) {
  const std::string words = tr("The shape that was begun is given up");
  std::string& message = app.session.message;
  say(app, message.empty() ? words : words + "; " + message, message.empty() ? Tone::plain : app.session.tone);
}

struct Applier {
  App& app;

  void operator()(const Run& action) const { run_command(app, action.command); }
  void operator()(const EditDesign& action) const {
    close_step(app);
    app.session.message.clear();
    edit(app, action.edit);
  }
  void operator()(const ChangeField& action) const { change_field(app, action); }
  void operator()(const CloseField&) const {
    if (!app.session.open_field.empty() || !app.yoke.open_field.empty()) {
      close_step(app);
    }
  }
  void operator()(const DropField&) const {
    drop_yoke_field(app);
    if (!app.session.open_field.empty()) {
      app.work.history.cancel_drag(app.work.design);
      close_step(app);
    }
  }
  void operator()(const BeginStroke& action) const { apply_drawing(app, action); }
  void operator()(const StrokeTo& action) const { apply_drawing(app, action); }
  void operator()(const EndStroke& action) const { apply_drawing(app, action); }
  void operator()(const ChooseSymmetry& action) const { app.view.chosen_symmetry = action.frieze; }
  void operator()(const ChooseInterior& action) const { app.view.interior = action.interior; }
  void operator()(const PressHere& action) const { apply_drawing(app, action); }
  void operator()(const SetDown&) const { set_down(app); }
  void operator()(const HangOver& action) const {
    hang_over(app, Floating{action.drawing, app.view.cursor, action.name, {}, action.see_through, true});
  }
  void operator()(const TypeLettering& action) const {
    app.session.lettering = action.words;
    app.session.letter_height = action.height;
  }
  void operator()(const SearchMotifs& action) const { app.session.motif_search = action.words; }
  void operator()(const BeginLineDrag& action) const { apply_rows(app, action); }
  void operator()(const LineDragTo& action) const { apply_rows(app, action); }
  void operator()(const EndLineDrag& action) const { apply_rows(app, action); }
  void operator()(const SetYarnsHere& action) const { apply_rows(app, action); }
  void operator()(const TakeLayout& action) const { apply_rows(app, action); }
  void operator()(const TraceInstead&) const { trace_instead(app); }
  void operator()(const TakeTrace& action) const { take_trace(app, action.as_new); }
  void operator()(const TakePicture& action) const { take_picture(app, action.as_new); }
  void operator()(const KeepMotif&) const { keep_motif(app); }
  void operator()(const MoveCursor& action) const { apply_drawing(app, action); }
  void operator()(const PlaceCursor& action) const { apply_drawing(app, action); }
  void operator()(const ZoomAt& action) const { apply_view(app, action); }
  void operator()(const PanBy& action) const {
    if (!app.view.zoom) {
      apply_view(app, ZoomAt{1.0F, app.view.canvas.middle()}); // from now on the zoom is the user's
    }
    app.view.pan.x += action.by.x;
    app.view.pan.y += action.by.y;
  }
  void operator()(const ChooseFinding& action) const { apply_view(app, action); }
  void operator()(const ChooseTab& action) const {
    app.view.tab = action.tab;
    app.caches.motifs_stale = true; // the user's folder may have changed meanwhile
  }
  void operator()(const ResizePanel& action) const {
    const bool settings = action.which == ResizePanel::Which::settings;
    (settings ? app.view.settings_width : app.view.findings_width) = action.width;
  }
  void operator()(const BringToFront& action) const { app.view.findings_in_front = action.findings; }
  void operator()(const ChooseFace& action) const {
    app.view.face = action.face;
    app.view.afar = false;
    app.view.findings_in_front = false;
  }
  void operator()(const ZoomPiece& action) const { apply_view(app, action); }
  void operator()(const PanPiece& action) const { apply_view(app, action); }
  void operator()(const SetPreview& action) const { app.view.preview = action.view; }
  void operator()(const TakePair& action) const {
    close_step(app);
    const YarnsAndBands taken = with_pair(app.work.design, action.main, action.contrast, action.pair);
    Document settings = settings_of(app.work.design);
    // The list has to have both yarns while the bands change over.
    settings.yarns = taken.yarns;
    app.work.history.begin_drag(noted("other yarns"));
    edit(app, ChangeSettings{settings});
    edit(app, ChangeBands{taken.bands});
    app.work.history.end_drag();
    say(app, said("{} and {}", action.pair.main.name, action.pair.contrast.name), Tone::good);
  }
  void operator()(const ExportShown&) const { export_shown(app); }
  void operator()(const Placed& action) const {
    app.view.canvas = action.canvas;
    app.view.preview_box = action.preview;
    app.view.piece_box = action.piece;
    app.view.focus_drawing = false;
    app.view.finding_wanted = false;
    app.view.part_step = 0;
    app.view.open_menus = false;
    app.view.wanted_field = WantedField::none;
  }
  void operator()(const GoToDrawing&) const { app.view.focus_drawing = true; }
  void operator()(const SetDialog& action) const {
    if (is_open(action.dialog)) {
      app.session.dialog = action.dialog;
    } else {
      close_dialog(app);
    }
    look_at_chosen_file(app);
  }
  void operator()(const ChoosePath& action) const { choose_path(app, action.replace); }
  void operator()(const MakeFolder&) const { make_folder(app); }
  void operator()(const OpenWithMachine& action) const { open_with_machine(app, action.profile); }
  void operator()(const AnswerGuard& action) const { answer_guard(app, action.answer); }
  void operator()(const DropFile& action) const { drop_file(app, action.path); }
  void operator()(const OpenDropped& action) const { request(app, Pending{Pending::What::open_file, action.path, {}}); }
  void operator()(const PlaceDropped& action) const { place_dropped(app, action.path); }
  void operator()(const GoToStep& action) const {
    app.yoke.shown ? go_to_yoke_step(app, action.done) : go_to_step(app, action.done);
  }
  void operator()(const BeginDesign& action) const { begin_design(app, action.wishes); }
  void operator()(const SetRulers& action) const {
    app.session.ruler_across = action.across;
    app.session.ruler_upwards = action.upwards;
  }
  void operator()(const CorrectScale&) const { correct_scale(app); }
  void operator()(const SetReadings& action) const {
    app.session.readings = action.readings;
    app.session.reader_offset = action.reader_offset;
  }
  void operator()(const UseReadings&) const { use_readings(app); }
  void operator()(const UseSwatch& action) const { use_swatch(app, action.answer); }
  void operator()(const ChangeUserSettings& action) const { take_user_settings(app, action.settings); }
  void operator()(const ForgetRecent& action) const { forget_files(app, action.path); }
  void operator()(const BeginOnMachine& action) const {
    request(app, Pending{Pending::What::new_design, {}, action.profile});
  }
  void operator()(const OpenCopy& action) const { request(app, Pending{Pending::What::open_copy, action.path, {}}); }
  void operator()(const SetYokeView& action) const { app.view.yoke = action.view; }
  void operator()(const ChangeYoke& action) const { change_yoke(app, action); }
  void operator()(const BeginYoke& action) const { begin_yoke(app, action.wishes); }
  void operator()(const OpenTier& action) const { open_tier(app, action.tier); }
  void operator()(const SplitYoke&) const { split_yoke(app); }
  void operator()(const AddTierTo& action) const {
    open_path_dialog(app, Purpose::yoke_tier);
    if (auto* const dialog = std::get_if<PathDialog>(&app.session.dialog); dialog != nullptr && action.wishes) {
      dialog->yoke = std::make_shared<NewYokeDialog>(*action.wishes);
    }
  }
  void operator()(const StepBench& action) const { step_bench(app, action.by); }
  void operator()(const GoToMove& action) const { go_to_move(app, action.move); }
  void operator()(const AnswerBench& action) const { answer_bench(app, action.stay); }
  void operator()(const PlayTo& action) const { play_to(app, action.moves); }
  void operator()(const AskWhatWentWrong&) const { ask_what_went_wrong(app); }
  void operator()(const AnswerRecovery& action) const { answer_recovery(app, action.answer); }
  void operator()(const AnswerChanged& action) const { answer_changed(app, action.answer); }
  void operator()(const SaveAfterTrouble& action) const { save_after_trouble(app, action.where); }
  void operator()(const LookAtFiles&) const { look_at_files(app); }
  void operator()(const Say& action) const { say(app, action.text, action.tone); }
};

} // namespace

void apply(App& app, const Action& action) {
  if (app.session.key_run && !goes_on_drawing(action)) {
    close_step(app);
  }
  const bool may_drop = drops_shape(app, action) && !gives_up(action);
  const std::string before = app.session.message;
  const Settled settled = settle_hanging(app, action);
  note_mark(app);
  if (settled.goes_on) {
    std::visit(Applier{app}, action);
  }
  if (!settled.words.empty()) {
    const std::string& message = app.session.message;
    say(app, message.empty() ? settled.words : settled.words + ". " + message,
        message.empty() ? Tone::plain : app.session.tone);
  }
  if (may_drop && (!app.session.stroke || std::holds_alternative<BeginStroke>(action))) {
    if (app.session.message == before) {
      app.session.message.clear(); // of something else, earlier
    }
    say_shape_dropped(app);
  }
  if (app.session.mend && app.session.mend->revision != app.work.history.revision()) {
    app.session.mend.reset();
  }
  load_profile(app);
  leave_outdated_bench(app);
  keep_cursor_inside(app);
  note_mark(app);
  settle_symmetry(app, before);
  choose_colours(app);
}

} // namespace punchwright::editor
