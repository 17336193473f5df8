// What a picture of a screen is to show.
#pragma once

#include "editor/options.hpp"

namespace punchwright::editor {

struct App;

// Opens what the options name, in an app that has its file.
void show_asked_for(App& app, const Options& options);

} // namespace punchwright::editor
