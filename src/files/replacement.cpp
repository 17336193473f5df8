// The temporary file: made beside the target, filled, put on the disk, given the target's rights, and renamed over it.
// Its name tells whose it is and of which process, so that leftovers of a killed one can be cleared away, and only
// those.
#include "files/replacement.hpp"

#include "files/leftovers.hpp"

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <sys/xattr.h>
#include <unistd.h>
#include <vector>

namespace punchwright {
namespace {

constexpr int most_names = 1000; // temporary names to try

// Owner first: changing it clears the set-user bits of the mode. What the system or the file system refuses is left, as
// the user may not be allowed to give files away.
int copy_rights(int from, int to, const struct stat& old) {
  (void)(::fchown(to, old.st_uid, old.st_gid) == 0 || ::fchown(to, static_cast<uid_t>(-1), old.st_gid) == 0);
  if (::fchmod(to, old.st_mode & 07777U) != 0 && errno != EPERM && errno != ENOTSUP) {
    return errno;
  }
  if (from < 0) {
    return 0;
  }
  // Access control lists are extended attributes too.
  const ssize_t size = ::flistxattr(from, nullptr, 0);
  std::vector<char> names(size > 0 ? static_cast<std::size_t>(size) : 0);
  const ssize_t listed = names.empty() ? 0 : ::flistxattr(from, names.data(), names.size());
  for (ssize_t at = 0; at < listed;) {
    const char* const name = names.data() + at;
    at += static_cast<ssize_t>(std::string_view(name).size()) + 1;
    const ssize_t length = ::fgetxattr(from, name, nullptr, 0);
    std::vector<char> value(length > 0 ? static_cast<std::size_t>(length) : 0);
    if (length >= 0 && ::fgetxattr(from, name, value.data(), value.size()) == length) {
      (void)::fsetxattr(to, name, value.data(), value.size(), 0);
    }
  }
  return 0;
}

// A disk that is full or broken is an error; a network file system that cannot do this is none.
int sync_directory(const std::filesystem::path& directory) {
  Descriptor folder(open_again(directory, O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (!folder.good()) {
    return errno == EACCES ? 0 : errno; // a folder that may be written but not read
  }
  const int trouble = sync_again(folder.number());
  return trouble == EINVAL || trouble == ENOTSUP ? 0 : trouble;
}

struct Temporary {
  std::filesystem::path path;
  Descriptor file;
};

Temporary make_temporary(const std::filesystem::path& target, mode_t mode) {
  for (int attempt = 0; attempt < most_names; ++attempt) {
    std::filesystem::path path = temporary_name(target, attempt);
    const int descriptor = open_again(path, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, mode);
    if (descriptor >= 0 || errno != EEXIST) {
      return {std::move(path), Descriptor(descriptor)};
    }
  }
  errno = EEXIST;
  return {{}, Descriptor(-1)};
}

// 0, or the errno value of the first call that failed.
int fill(Temporary& temporary, const std::filesystem::path& target, const struct stat* old, std::string_view bytes) {
  int trouble = write_all(temporary.file.number(), bytes);
  if (trouble == 0 && old != nullptr) {
    const Descriptor source(open_again(target, O_RDONLY | O_CLOEXEC));
    trouble = copy_rights(source.number(), temporary.file.number(), *old);
  }
  if (trouble == 0) {
    trouble = sync_again(temporary.file.number());
  }
  const int closing = temporary.file.close();
  return trouble != 0 ? trouble : closing;
}

} // namespace

Failure replace_file(const std::filesystem::path& named, const std::filesystem::path& target, const struct stat* old,
                     std::string_view bytes) {
  // A file that the user made read-only is not to be replaced behind her back.
  if (old != nullptr && ::access(target.c_str(), W_OK) != 0) {
    return file_error(named, "cannot be written", errno);
  }
  clear_leftovers(target);
  // Until its rights are copied nobody else may read what may be private.
  Temporary temporary = make_temporary(target, old != nullptr ? 0600 : 0666);
  if (!temporary.file.good()) {
    return file_error(named, "cannot be written", errno);
  }
  int trouble = fill(temporary, target, old, bytes);
  if (trouble == 0 && ::rename(temporary.path.c_str(), target.c_str()) != 0) {
    trouble = errno;
  }
  if (trouble != 0) {
    ::unlink(temporary.path.c_str());
    return file_error(named, "cannot be written", trouble);
  }
  const std::filesystem::path folder = target.has_parent_path() ? target.parent_path() : std::filesystem::path(".");
  if (const int late = sync_directory(folder)) {
    return file_error(named, "was written, but the disk did not confirm it", late);
  }
  return std::nullopt;
}

Failure write_through(const std::filesystem::path& named, const std::filesystem::path& target, std::string_view bytes) {
  Descriptor file(open_again(target, O_RDWR | O_CLOEXEC));
  if (!file.good()) {
    return file_error(named, "cannot be written", errno);
  }
  std::string before;
  std::array<char, 65536> block{};
  for (ssize_t count = 1; count > 0;) {
    count = read_again(file.number(), block.data(), block.size());
    if (count < 0) {
      return file_error(named, "cannot be read before it is written", errno);
    }
    before.append(block.data(), static_cast<std::size_t>(count));
  }
  // Not cut off first, so that the old content's place on the disk is there to put it back.
  const auto put = [&](std::string_view content) {
    if (::lseek(file.number(), 0, SEEK_SET) < 0) {
      return errno;
    }
    int trouble = write_all(file.number(), content);
    if (trouble == 0 && ::ftruncate(file.number(), static_cast<off_t>(content.size())) != 0) {
      trouble = errno;
    }
    return trouble != 0 ? trouble : sync_again(file.number());
  };
  int trouble = put(bytes);
  if (trouble != 0) {
    if (put(before) != 0) {
      return file_error(named, "was damaged: neither new nor old content could be written", trouble);
    }
    return file_error(named, "cannot be written", trouble);
  }
  trouble = file.close();
  return trouble == 0 ? Failure() : file_error(named, "cannot be written", trouble);
}

} // namespace punchwright
