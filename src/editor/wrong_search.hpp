// The search for what went wrong, in a thread of its own: pairs of slips take about a second, and the window goes on
// meanwhile. It ends with the last one who holds it: at once, whatever it has found.
#pragma once

#include "design/document.hpp"
#include "diagnosis/diagnosis.hpp"
#include "editor/beside.hpp"
#include "editor/wrong.hpp"
#include "machine/profile.hpp"
#include "rows/rows.hpp"

#include <stop_token>

namespace punchwright::editor {

struct App;

// What is searched, as it was when it was asked.
struct WrongQuestion {
  Document design;
  Profile profile;
  RowsToKnit rows;
  SeenFabric seen;
};

// Without a thread. An answer to a search that was stopped is worth nothing.
[[nodiscard]] WrongAnswer answer_to(const WrongQuestion& question, const std::stop_token& stop = {});

// Puts the answer into the dialog as soon as it is there.
[[nodiscard]] Progress follow_search(App& app);
// Waits for the answer: for pictures, and for tests.
void finish_search(App& app);

} // namespace punchwright::editor
