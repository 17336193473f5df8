// The temporary file: made beside the target, filled, put on the disk, given the target's rights, and renamed over it.
// Its name tells whose it is and of which process, so that leftovers of a killed one can be cleared away, and only
// those.
#include "files/leftovers.hpp"
#include "files/writing.hpp"
#include "words/words.hpp"

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

std::filesystem::path folder_of(const std::filesystem::path& file) {
  return file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
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
int fill(Temporary& temporary, const std::filesystem::path& target, const std::optional<struct stat>& old,
         std::string_view bytes) {
  int trouble = write_all(temporary.file.number(), bytes);
  if (trouble == 0 && old) {
    const Descriptor source(open_again(target, O_RDONLY | O_CLOEXEC));
    trouble = copy_rights(source.number(), temporary.file.number(), *old);
  }
  if (trouble == 0) {
    trouble = sync_again(temporary.file.number());
  }
  const int closing = temporary.file.close();
  return trouble != 0 ? trouble : closing;
}

// The old content under another name, to put it back; empty where the file system has no second names.
std::filesystem::path second_name(const std::filesystem::path& target) {
  for (int attempt = 0; attempt < most_names; ++attempt) {
    std::filesystem::path path = temporary_name(target, attempt);
    if (::link(target.c_str(), path.c_str()) == 0) {
      return path;
    }
    if (errno != EEXIST) {
      break;
    }
  }
  return {};
}

class Replacement final : public Writing {
public:
  Replacement(std::filesystem::path named, std::filesystem::path target, std::optional<struct stat> old, mode_t fresh)
      : named_(std::move(named)), target_(std::move(target)), old_(old), fresh_(fresh) {}
  ~Replacement() override {
    if (placed_) {
      take_back();
    }
    if (!temporary_.empty()) {
      ::unlink(temporary_.c_str());
    }
  }
  Replacement(const Replacement&) = delete;
  Replacement& operator=(const Replacement&) = delete;
  Replacement(Replacement&&) = delete;
  Replacement& operator=(Replacement&&) = delete;

  Failure stage(std::string_view bytes) override {
    // A file that the user made read-only is not to be replaced behind her back.
    if (old_ && ::access(target_.c_str(), W_OK) != 0) {
      return file_error(named_, tr("cannot be written"), errno);
    }
    clear_leftovers(target_);
    // Until its rights are copied nobody else may read what may be private.
    Temporary temporary = make_temporary(target_, old_ ? 0600 : fresh_);
    if (!temporary.file.good()) {
      return file_error(named_, tr("cannot be written"), errno);
    }
    temporary_ = temporary.path;
    const int trouble = fill(temporary, target_, old_, bytes);
    return trouble == 0 ? Failure() : file_error(named_, tr("cannot be written"), trouble);
  }

  Failure put(bool with_others) override {
    // A second name of somebody else's file might not be taken away again: in a folder such as /tmp it may not.
    if (with_others && old_ && (old_->st_uid == ::geteuid() || ::geteuid() == 0)) {
      kept_ = second_name(target_);
    }
    if (::rename(temporary_.c_str(), target_.c_str()) != 0) {
      const int trouble = errno;
      remove_kept();
      return file_error(named_, tr("cannot be written"), trouble);
    }
    temporary_.clear();
    placed_ = true;
    return std::nullopt;
  }

  Failure settle() override {
    placed_ = false;
    remove_kept();
    const int late = sync_directory(folder_of(target_));
    return late == 0 ? Failure() : file_error(named_, tr("was written, but the disk did not confirm it"), late);
  }

private:
  void take_back() {
    if (!kept_.empty()) {
      if (::rename(kept_.c_str(), target_.c_str()) != 0) {
        remove_kept(); // the new content stays, whole
      }
    } else if (!old_) {
      ::unlink(target_.c_str());
    }
  }

  void remove_kept() {
    if (!kept_.empty()) {
      ::unlink(kept_.c_str());
      kept_.clear();
    }
  }

  std::filesystem::path named_;
  std::filesystem::path target_;
  std::optional<struct stat> old_;
  mode_t fresh_;
  std::filesystem::path temporary_; // empty: none, or in its place
  std::filesystem::path kept_;      // the old content, until all is settled
  bool placed_ = false;
};

} // namespace

std::unique_ptr<Writing> replacement(std::filesystem::path named, std::filesystem::path target,
                                     std::optional<struct stat> old, mode_t fresh) {
  return std::make_unique<Replacement>(std::move(named), std::move(target), old, fresh);
}

} // namespace punchwright
