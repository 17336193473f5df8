// One call of stat(2). The time of the last change of state tells of a file that was written by a program which sets
// the time of its content back, as archivers and file synchronizers do.
#include "files/file_stamp.hpp"

#include <sys/stat.h>

namespace punchwright {

FileStamp stamp_of(const std::filesystem::path& path) {
  struct stat facts {};
  if (::stat(path.c_str(), &facts) != 0) {
    return {};
  }
  constexpr std::int64_t second = 1'000'000'000; // ns
  return {true, facts.st_dev, facts.st_ino, facts.st_size,
          std::int64_t{facts.st_ctim.tv_sec} * second + std::int64_t{facts.st_ctim.tv_nsec}};
}

} // namespace punchwright
