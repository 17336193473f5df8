// Commands for what is otherwise clicked among the tools: where the symmetry's axes lie, how high the letters are,
// whether motifs let the ground through.
#include "editor/applying.hpp"
#include "editor/tab_commands.hpp"
#include "words/words.hpp"

namespace punchwright::editor {

namespace {

// By half a stitch or half a row, round the repeat.
void move_axis(App& app, int Frieze::*axis, int count, int by) {
  Frieze moved = *app.view.symmetry;
  moved.*axis = (moved.*axis + by + count) % count;
  app.view.chosen_symmetry = moved;
  say(app, tr("The axis is moved by half a stitch or row"));
}

void move_axes(App& app, Command command) {
  if (const std::string reason = why_no_axis(app, command); !reason.empty()) {
    return say(app, reason);
  }
  const Frieze& frieze = *app.view.symmetry;
  const int by = command == Command::axis_left || command == Command::axis_down ? -1 : 1;
  return command == Command::axis_left || command == Command::axis_right
             ? move_axis(app, &Frieze::upright, frieze.repeat, by)
             : move_axis(app, &Frieze::level, 2 * app.work.design.grid.height() - 1, by);
}

} // namespace

bool moves_axis(Command command) {
  return command == Command::axis_left || command == Command::axis_right || command == Command::axis_up ||
         command == Command::axis_down;
}

std::string why_no_axis(const App& app, Command command) {
  if (!app.view.symmetry) {
    return tr("Choose a symmetry first: it stands among the tools");
  }
  const FriezeGroup group = app.view.symmetry->group;
  const bool upright = command == Command::axis_left || command == Command::axis_right;
  if (upright ? uses_upright_axis(group) || group == FriezeGroup::p2 : uses_level_axis(group)) {
    return {};
  }
  return upright ? tr("This symmetry has no upright axis") : tr("This symmetry has no level axis");
}

void run_tool_command(App& app, Command command) {
  if (moves_axis(command)) {
    return move_axes(app, command);
  }
  if (command == Command::letter_height) {
    LetterHeight& height = app.session.letter_height;
    height = height == LetterHeight::five ? LetterHeight::seven : LetterHeight::five;
    return say(app, said("Letters {} rows high", rows_of(height)));
  }
  bool& through = app.settings.motifs_see_through;
  through = !through;
  if (app.session.floating && app.session.floating->motif) {
    app.session.floating->see_through = through;
  }
  say(app, through ? tr("Motifs let the ground through: only their contrast is set down")
                   : tr("Motifs cover the ground with all of their box"));
}

} // namespace punchwright::editor
