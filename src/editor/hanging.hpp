// What is in the hand or hangs over the drawing, before something else is done; only the apply_*.cpp files include
// this.
#pragma once

#include "editor/actions.hpp"

#include <string>

namespace punchwright::editor {

// All that is in the hand, what hangs over the drawing, the mend that is shown, what is being worked out: they belong
// to the design that was open, and go with it.
void let_go(App& app);

// What hangs is settled before an action, so that that works on the drawing that is seen; in words, where it hangs no
// longer.
struct Settled {
  bool goes_on = true; // the action is to be carried out
  std::string words;
};
[[nodiscard]] Settled settle_hanging(App& app, const Action& action);

[[nodiscard]] bool hanging_changes_drawing(const App& app); // were it set down
bool change_floating(App& app, Command command);            // false: nothing hangs, or the command isn't for it
void clear_marked(App& app, const char* name);

// What hangs, else what is marked, else all of the drawing.
[[nodiscard]] Grid stitches_at_work(const App& app);

} // namespace punchwright::editor
