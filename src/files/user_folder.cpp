// One mkdir(2) a folder, from the top: the standard library's makes them readable for everybody.
#include "files/user_folder.hpp"

#include "words/words.hpp"

#include <cerrno>
#include <sys/stat.h>
#include <system_error>

namespace punchwright {

namespace fs = std::filesystem;

namespace {

bool lies_in(const fs::path& folder, const fs::path& home) {
  const fs::path way = folder.lexically_normal().lexically_relative(home.lexically_normal());
  return !way.empty() && *way.begin() != "..";
}

} // namespace

Failure make_user_folder(const fs::path& folder, const fs::path& home) {
  std::error_code ignored;
  if (!home.empty() && lies_in(folder, home) && !fs::is_directory(home, ignored)) {
    return Error{folder.string(), 0, 0, said("there is no home folder {}", home.string()), {}};
  }
  fs::path made;
  for (const fs::path& part : folder.lexically_normal()) {
    made /= part;
    const int trouble = ::mkdir(made.c_str(), S_IRWXU) == 0 ? 0 : errno;
    if (trouble != 0 && !fs::is_directory(made, ignored)) {
      const int why = trouble == EEXIST ? ENOTDIR : trouble; // a file stands there
      return Error{made.string(), 0, 0, std::generic_category().message(why), {}};
    }
  }
  return std::nullopt;
}

} // namespace punchwright
