// The language of the command line, of the settings and of the system, and what changes with it.
#include "editor/language.hpp"

#include "words/early_option.hpp"

#include <span>
#include <string_view>
#include <system_error>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

// None for pictures and figures, which don't depend on who makes them, unless they are named.
std::optional<FoundSettings> settings_for(std::span<const char* const> arguments) {
  std::error_code ignored;
  if (const auto named = early_option(arguments, "--settings")) {
    return found_settings(fs::absolute(*named, ignored));
  }
  const bool for_a_person = !early_option(arguments, "--picture") && !early_option(arguments, "--frames-benchmark");
  return for_a_person ? std::optional(found_settings(usual_settings_path())) : std::nullopt;
}

// Empty where they name none, or can't be read, which is said when the window has opened.
std::string language_in(const std::optional<FoundSettings>& found) {
  const auto settings = read_settings(found ? found->text.value_or("") : "", {});
  return settings ? settings->language : std::string();
}

// What is kept in words is looked up anew.
void forget_words(App& app) {
  app.caches.motifs_stale = true;
  app.caches.lettering_for = {};
  app.caches.preview.made_for.reset();
  app.caches.yoke.sizes.clear();
  if (app.bench.moves != nullptr) {
    app.bench.moves.reset();
    static_cast<void>(bench_moves_now(app)); // which are shown in the next frame
  }
  app.session.message.clear();
}

} // namespace

LanguageAtStart language_at_start(int count, const char* const* arguments) {
  const std::span<const char* const> all(arguments, static_cast<std::size_t>(count));
  LanguageAtStart start;
  start.of_system = &language_of_environment();
  std::string code(early_option(all, "--language").value_or(std::string_view()));
  start.settings = settings_for(all);
  if (code.empty()) {
    code = language_in(start.settings);
  }
  start.chosen = code.empty() ? start.of_system : &language_of(code);
  return start;
}

void take_user_settings(App& app, const Settings& settings) {
  const bool other_language = settings.language != app.settings.language;
  app.settings = settings;
  if (other_language) {
    const std::string& wished = settings.language;
    choose_language(language_of(wished.empty() ? app.settings_file.system_language : wished), folder_of_translations());
    forget_words(app);
  }
}

} // namespace punchwright::editor
