// In which language the editor speaks: the command line's, else the one in the user's settings, else the environment's.
#pragma once

#include "editor/user_settings.hpp"
#include "words/words.hpp"

#include <optional>

namespace punchwright::editor {

struct LanguageAtStart {
  const Language* chosen = nullptr;
  const Language* of_system = nullptr; // what the environment asks for
  std::optional<FoundSettings> settings;
};

// Before anything is said, and so before the command line is read as a whole.
[[nodiscard]] LanguageAtStart language_at_start(int count, const char* const* arguments);

// The settings as they are now, at once in effect.
void take_user_settings(App& app, const Settings& settings);

} // namespace punchwright::editor
