// What becomes of what hangs over the drawing when something else is asked for. Area commands work on it; steps back
// give it up; anything else that changes the drawing or hands it over sets it down first, as a step of its own.
#include "drawing/marked_area.hpp"
#include "drawing/turns.hpp"
#include "editor/applying.hpp"
#include "editor/hanging.hpp"
#include "editor/long_work.hpp"
#include "editor/waiting.hpp"
#include "words/words.hpp"

#include <utility>

namespace punchwright::editor {

namespace {

enum class Fate { stays, set_down, given_up };

Fate fate_under(Command command) {
  switch (command) {
  case Command::undo:
  case Command::redo: return Fate::given_up;
  case Command::save:
  case Command::save_as:
  case Command::export_card:
  case Command::export_chart:
  case Command::export_steps:
  case Command::export_leaflet:
  case Command::export_fabric:
  case Command::export_pattern:
  case Command::export_everything:
  case Command::preview:
  case Command::at_the_bench:
  case Command::step_list:
  case Command::play:
  case Command::what_went_wrong:
  case Command::mark_all:
  case Command::make_symmetric:
  case Command::lay_out:
  case Command::mend:
  case Command::other_mend:
  case Command::catch_float:
  case Command::catch_row:
  case Command::catch_all:
  case Command::accept_float:
  case Command::accept_row:
  case Command::accept_all:
  case Command::no_marks:
  case Command::insert_row:
  case Command::duplicate_row:
  case Command::delete_row:
  case Command::insert_column:
  case Command::duplicate_column:
  case Command::delete_column:
  case Command::move_row_up:
  case Command::move_row_down:
  case Command::move_column_left:
  case Command::move_column_right: return Fate::set_down;
  default: return Fate::stays;
  }
}

// What was lifted has its place in the drawing as it is. Anything else goes on hanging while the repeat is given room
// for it: set down first, it would be cut.
Fate under_other_size(const App& app) {
  return app.session.floating->lifted_from ? Fate::set_down : Fate::stays;
}

bool keep_rows(const App& app, const std::vector<Band>& bands) {
  int rows = 0;
  for (const Band& band : bands) {
    rows += band.rows;
  }
  return rows == app.work.design.grid.height();
}

Fate fate_under(const App& app, const Edit& edit) {
  if (std::holds_alternative<Resize>(edit)) {
    return under_other_size(app);
  }
  const auto* const bands = std::get_if<ChangeBands>(&edit);
  const bool stitches_stay = std::holds_alternative<ChangeSettings>(edit) || (bands && keep_rows(app, bands->bands));
  return stitches_stay ? Fate::stays : Fate::set_down;
}

Fate fate_under(const App& app, const Action& action) {
  if (const auto* const run = std::get_if<Run>(&action)) {
    return run->command == Command::widen_repeat ? under_other_size(app) : fate_under(run->command);
  }
  if (const auto* const edit = std::get_if<EditDesign>(&action)) {
    return fate_under(app, edit->edit);
  }
  if (const auto* const field = std::get_if<ChangeField>(&action)) {
    return field->bands && !keep_rows(app, *field->bands) ? Fate::set_down : Fate::stays;
  }
  if (const auto* const answer = std::get_if<AnswerGuard>(&action)) {
    const auto* const guard = std::get_if<GuardDialog>(&app.session.dialog);
    return guard != nullptr && !guard->yoke && answer->answer == GuardAnswer::save ? Fate::set_down : Fate::stays;
  }
  if (std::holds_alternative<GoToStep>(action)) {
    return Fate::given_up;
  }
  return std::holds_alternative<BeginLineDrag>(action) || std::holds_alternative<TakeLayout>(action) ? Fate::set_down
                                                                                                     : Fate::stays;
}

// What was lifted is where it was, marked as it was.
void give_back(App& app) {
  close_step(app);
  const Floating floating = *std::exchange(app.session.floating, std::nullopt);
  app.view.marked = floating.lifted_from ? floating.lifted_from : app.view.marked;
  app.session.message.clear();
}

void copy(App& app, const Grid& drawing) {
  app.session.copied = text_of(drawing);
  say(app, said("Copied {} × {} stitches", drawing.width(), drawing.height()), Tone::good);
}

// Gone from the hand; where it was lifted from nothing is left either.
void take_away(App& app, Command command) {
  const Floating floating = *std::exchange(app.session.floating, std::nullopt);
  if (command == Command::cut) {
    copy(app, floating.drawing);
  }
  if (floating.lifted_from) {
    const std::string copied = app.session.message;
    app.view.marked = floating.lifted_from;
    clear_marked(app, command == Command::cut ? noted("cut") : noted("clear"));
    say(app, copied, app.session.tone);
  }
}

// To be looked at, a motif or lettering: another one takes its place.
bool is_offered(const Floating& floating) {
  return floating.motif || floating.name == noted("lettering");
}

std::string words_for_beyond(const App& app) {
  const Grid& drawing = app.session.floating->drawing;
  const Grid& repeat = app.work.design.grid;
  const bool wide = drawing.width() > repeat.width();
  const bool high = drawing.height() > repeat.height();
  return wide && high ? said("{} × {} stitches, and the repeat has {} × {}: what reaches beyond it is cut off",
                             drawing.width(), drawing.height(), repeat.width(), repeat.height())
         : wide ? said("{} stitches wide, and the repeat has {}: what reaches beyond it is cut off", drawing.width(),
                       repeat.width())
         : high ? said("{} rows high, and the repeat has {}: what reaches beyond it is cut off", drawing.height(),
                       repeat.height())
                : std::string();
}

} // namespace

void let_go(App& app) {
  close_step(app);
  give_up_long_work(app);
  app.session.mend.reset();
  app.session.floating.reset();
}

Settled settle_hanging(App& app, const Action& action) {
  if (!app.session.floating || (app.yoke.shown && std::holds_alternative<Run>(action))) {
    return {};
  }
  const Fate fate = app.yoke.shown ? Fate::stays : fate_under(app, action);
  if (fate == Fate::given_up) {
    give_back(app);
    const auto* const run = std::get_if<Run>(&action);
    return {run == nullptr || run->command != Command::undo, tr("What hung over the drawing is given up")};
  }
  if (fate == Fate::set_down) {
    set_down(app);
    if (app.session.floating) {                          // refused
      if (std::holds_alternative<AnswerGuard>(action)) { // why not stands below the drawing
        app.session.dialog = NoDialog{};
      }
      return {false, {}};
    }
    return {true, tr("What hung over the drawing is set down")};
  }
  return {};
}

bool hanging_changes_drawing(const App& app) {
  const auto& floating = app.session.floating;
  return floating && with_set_down(app.work.design.grid, *floating) != app.work.design.grid;
}

bool change_floating(App& app, Command command) {
  if (!app.session.floating) {
    return false;
  }
  Grid& drawing = app.session.floating->drawing;
  switch (command) {
  case Command::copy: copy(app, drawing); return true;
  case Command::cut:
  case Command::clear: take_away(app, command); return true;
  case Command::mirror_sideways: drawing = mirrored_left_right(drawing); return true;
  case Command::mirror_upwards: drawing = mirrored_upside_down(drawing); return true;
  case Command::invert: drawing = inverted(drawing); return true;
  case Command::shift_left: drawing = shifted(drawing, -1, 0); return true;
  case Command::shift_right: drawing = shifted(drawing, 1, 0); return true;
  case Command::shift_up: drawing = shifted(drawing, 0, 1); return true;
  case Command::shift_down: drawing = shifted(drawing, 0, -1); return true;
  case Command::turn:
    drawing = turned(drawing, 1);
    if (const std::string beyond = words_for_beyond(app); !beyond.empty()) {
      say(app, beyond, Tone::trouble);
    }
    return true;
  default: return false;
  }
}

void hang_over(App& app, Floating floating) {
  close_step(app);
  if (app.session.floating && !(is_offered(*app.session.floating) && is_offered(floating))) {
    set_down(app);
    if (app.session.floating) { // refused
      return;
    }
  }
  if (!floating.lifted_from) { // as wide or as high as the repeat: it lies on the repeat, not across its edge
    const Grid& grid = app.work.design.grid;
    floating.corner.column = floating.drawing.width() >= grid.width() ? 0 : floating.corner.column;
    floating.corner.row = floating.drawing.height() >= grid.height() ? 0 : floating.corner.row;
  }
  app.session.floating = std::move(floating);
  app.session.mend.reset(); // Return is for what came last
  app.view.marked.reset();
  app.view.focus_drawing = true;
  const std::string beyond = words_for_beyond(app);
  const std::string what_to_do =
      tr("Drag it or move it with the arrows; Return or a click beside it sets it down, Escape gives it up");
  say(app, beyond.empty() ? what_to_do : beyond + ". " + what_to_do, beyond.empty() ? Tone::plain : Tone::trouble);
  show(app, app.session.floating->corner);
}

Grid stitches_at_work(const App& app) {
  return app.session.floating ? app.session.floating->drawing : lifted(app.work.design.grid, area_at_work(app));
}

} // namespace punchwright::editor
