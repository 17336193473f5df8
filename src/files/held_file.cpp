// Taking and removing a held file, also while others do the same.
#include "files/held_file.hpp"

#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace punchwright {

std::optional<HeldFile> HeldFile::take(const std::filesystem::path& path) {
  constexpr int most_tries = 100; // each lost to a process that removed the file in between
  for (int tries = 0; tries < most_tries; ++tries) {
    Descriptor file(open_again(path, O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600));
    if (!file.good()) {
      return std::nullopt;
    }
    if (::flock(file.number(), LOCK_EX | LOCK_NB) != 0 && (errno == EWOULDBLOCK || errno == EINTR)) {
      return std::nullopt;
    }
    struct stat held {};
    if (::fstat(file.number(), &held) == 0 && held.st_nlink > 0) {
      return HeldFile(path, std::move(file));
    }
  }
  return std::nullopt;
}

void HeldFile::remove() {
  if (file_.good()) {
    ::unlink(path_.c_str());
    (void)file_.close();
  }
}

} // namespace punchwright
