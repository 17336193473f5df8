// System calls on descriptors, and the words for their errors.
// SIGXFSZ and SIGPIPE would end the program before it can say what is wrong: they are held back while writing.
#include "files/descriptor.hpp"

#include "words/words.hpp"

#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <fmt/core.h>
#include <system_error>
#include <unistd.h>

namespace punchwright {
namespace {

// Holds the two signals back in this thread; one that our write raised is taken away before they are let through again.
class WriteSignals {
public:
  WriteSignals() {
    sigemptyset(&held_);
    sigaddset(&held_, SIGXFSZ);
    sigaddset(&held_, SIGPIPE);
    sigset_t waiting;
    sigpending(&waiting);
    waited_xfsz_ = sigismember(&waiting, SIGXFSZ) == 1;
    waited_pipe_ = sigismember(&waiting, SIGPIPE) == 1;
    pthread_sigmask(SIG_BLOCK, &held_, &before_);
  }
  ~WriteSignals() {
    take_away(SIGXFSZ, waited_xfsz_);
    take_away(SIGPIPE, waited_pipe_);
    pthread_sigmask(SIG_SETMASK, &before_, nullptr);
  }
  WriteSignals(const WriteSignals&) = delete;
  WriteSignals& operator=(const WriteSignals&) = delete;

private:
  static void take_away(int signal, bool waited_before) {
    sigset_t waiting;
    sigpending(&waiting);
    if (waited_before || sigismember(&waiting, signal) != 1) {
      return;
    }
    sigset_t one;
    sigemptyset(&one);
    sigaddset(&one, signal);
    const timespec at_once{};
    while (sigtimedwait(&one, nullptr, &at_once) < 0 && errno == EINTR) {
    }
  }

  sigset_t held_{};
  sigset_t before_{};
  bool waited_xfsz_ = false;
  bool waited_pipe_ = false;
};

std::string_view remedy_for(int trouble) {
  switch (trouble) {
  case ENOENT: return tr("check the name; the folder must exist");
  case ENOTDIR: return tr("a part of the path is no folder; check the name");
  case EACCES:
  case EPERM: return tr("choose a place that you may use, or change its permissions");
  case EROFS: return tr("the disk is read-only; choose another place");
  case ENOSPC:
  case EDQUOT: return tr("free some space, or choose another place");
  case EFBIG: return tr("a size limit is set for files; raise it, or choose another place");
  case EISDIR: return tr("this is a folder; give the name of a file");
  case ENAMETOOLONG: return tr("choose a shorter name");
  case ELOOP: return tr("symbolic links lead round in a circle; choose another name");
  case EPIPE: return tr("the reader at the other end has gone");
  case EIO: return tr("the disk reports a fault; choose another one, and check this one");
  case EMFILE:
  case ENFILE: return tr("too many files are open; close some programs");
  case EBUSY:
  case ETXTBSY: return tr("another program is using it; close that one, or choose another name");
  default: return tr("choose another place");
  }
}

} // namespace

Descriptor::~Descriptor() {
  if (number_ >= 0) {
    ::close(number_);
  }
}

int Descriptor::close() {
  const int number = number_;
  number_ = -1;
  // After EINTR Linux has closed the descriptor all the same: a second close might hit another file.
  return number < 0 || ::close(number) == 0 || errno == EINTR ? 0 : errno;
}

int open_again(const std::filesystem::path& path, int flags, mode_t mode) {
  for (;;) {
    const int descriptor = ::open(path.c_str(), flags, mode);
    if (descriptor >= 0 || errno != EINTR) {
      return descriptor;
    }
  }
}

ssize_t read_again(int descriptor, char* bytes, std::size_t count) {
  for (;;) {
    const ssize_t got = ::read(descriptor, bytes, count);
    if (got >= 0 || errno != EINTR) {
      return got;
    }
  }
}

int write_all(int descriptor, std::string_view bytes) {
  const WriteSignals held;
  while (!bytes.empty()) {
    const ssize_t count = ::write(descriptor, bytes.data(), bytes.size());
    if (count < 0 && errno != EINTR) {
      return errno;
    }
    if (count == 0) {
      return EIO; // nothing taken and no reason given: never wait for ever
    }
    bytes.remove_prefix(count > 0 ? static_cast<std::size_t>(count) : 0);
  }
  return 0;
}

int sync_again(int descriptor) {
  for (;;) {
    if (::fsync(descriptor) == 0) {
      return 0;
    }
    if (errno != EINTR) {
      return errno;
    }
  }
}

Error file_error(const std::filesystem::path& path, std::string_view what, int trouble) {
  const std::string why = std::error_code(trouble, std::generic_category()).message();
  return Error{path.string(), 0, 0, fmt::format("{}: {}", what, why), std::string(remedy_for(trouble))};
}

} // namespace punchwright
