// The editor's main function. The language is chosen before anything is said.
#include "editor/language.hpp"
#include "editor/run.hpp"

#include <utility>

int main(int count, char** arguments) {
  punchwright::editor::LanguageAtStart language = punchwright::editor::language_at_start(count, arguments);
  punchwright::choose_language(*language.chosen, punchwright::folder_of_translations());
  auto options = punchwright::editor::read_options(count, arguments);
  if (const int* const status = std::get_if<int>(&options)) {
    return *status;
  }
  auto& wishes = std::get<punchwright::editor::Options>(options);
  wishes.system_language = language.of_system->code;
  wishes.settings = std::move(language.settings);
  return punchwright::editor::run(wishes);
}
