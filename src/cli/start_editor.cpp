// Starting the editor: a program of its own, so that the command line works where no window can be opened.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "words/words.hpp"

#include <array>
#include <cerrno>
#include <filesystem>
#include <system_error>
#include <unistd.h>

namespace punchwright::cli {

int start_editor(const std::string& file, const std::string& language) {
  std::error_code missing;
  if (!file.empty() && !std::filesystem::exists(file, missing)) {
    return refuse(Error{file, 0, 0, tr("no command and no file has this name"), tr("see punchwright --help")});
  }
  const std::string program = "punchwright-editor";
  std::error_code trouble;
  const auto here = std::filesystem::read_symlink("/proc/self/exe", trouble);
  const std::string beside = trouble ? program : (here.parent_path() / program).string();
  std::string option = "--language=" + language;
  std::string argument = file;
  const auto start = [&](std::string name) {
    std::array<char*, 4> arguments{name.data()}; // the rest is null
    std::size_t next = 1;
    for (std::string* const given : {language.empty() ? nullptr : &option, file.empty() ? nullptr : &argument}) {
      if (given != nullptr) {
        arguments[next++] = given->data();
      }
    }
    ::execvp(name.c_str(), arguments.data());
  };
  start(beside); // returns only where it could not be started
  start(program);
  return refuse(Error{program, 0, 0, said("the editor cannot be started ({})", std::generic_category().message(errno)),
                      tr("install it beside this program, or use the commands: punchwright --help")});
}

} // namespace punchwright::cli
