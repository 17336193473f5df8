// The parts that apply() is made of; only the apply_*.cpp files include this.
#pragma once

#include "editor/actions.hpp"

namespace punchwright::editor {

void say(App& app, std::string text, Tone tone = Tone::plain);

// Applies an edit; refused: says why.
bool edit(App& app, const Edit& change);

// Ends what is being drawn or typed, so that the next edit is a step of its own.
void close_step(App& app);

void apply_drawing(App& app, const BeginStroke& action);
void apply_drawing(App& app, const StrokeTo& action);
void apply_drawing(App& app, const EndStroke& action);
void apply_drawing(App& app, const MoveCursor& action);
void apply_drawing(App& app, const PlaceCursor& action);

void apply_view(App& app, const ZoomAt& action);
void apply_view(App& app, const ChooseFinding& action);

// Pans so far that the cell can be seen, where it can't.
void show(App& app, Cell cell);

void run_command(App& app, Command command);

// Files. `request` asks first where there is something to save.
void request(App& app, const Pending& pending);
void open_path_dialog(App& app, Purpose purpose, const Pending& afterwards = {});
void choose_path(App& app, bool replace);
void answer_guard(App& app, GuardAnswer answer);
void save(App& app, const Pending& afterwards);
void begin_design(App& app, const NewDialog& wishes);

// Machines.
void correct_scale(App& app);
void use_readings(App& app);
void use_swatch(App& app, const SwatchAnswer& answer);

// Loads the machine that the design names, if it isn't the one that is loaded. The built-in ones and .machine files,
// relative to the design's own folder.
void load_profile(App& app);

} // namespace punchwright::editor
