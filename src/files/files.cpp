// The system calls behind reading and replacing files; every one of them is looked at for its error.
// POSIX.1-2008 and Linux extended attributes.
#include "files/files.hpp"

#include "files/leftovers.hpp"
#include "files/writing.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <fcntl.h>
#include <memory>
#include <optional>
#include <sys/stat.h>
#include <unistd.h>

namespace punchwright {
namespace {

constexpr int most_links = 40; // as the kernel's own limit

// The file at the end of a chain of symbolic links; the last one may not exist yet.
Result<std::filesystem::path> target_of(const std::filesystem::path& path) {
  std::filesystem::path target = path;
  for (int links = 0; links < most_links; ++links) {
    std::error_code trouble;
    if (!std::filesystem::is_symlink(std::filesystem::symlink_status(target, trouble))) {
      return target;
    }
    const std::filesystem::path next = std::filesystem::read_symlink(target, trouble);
    if (trouble) {
      return file_error(path, tr("cannot be written"), trouble.value());
    }
    target = next.is_absolute() ? next : target.parent_path() / next;
  }
  return file_error(path, tr("cannot be written"), ELOOP);
}

// Devices, pipes and standard output take bytes as they come; there is no old content to keep, and none to put back.
class Sending final : public Writing {
public:
  explicit Sending(std::filesystem::path path) : path_(std::move(path)) {}

  Failure stage(std::string_view bytes) override {
    bytes_ = bytes;
    return std::nullopt;
  }

  Failure put(bool /*with_others*/) override {
    if (path_ == "-") {
      const int trouble = write_all(STDOUT_FILENO, bytes_);
      return trouble == 0 ? Failure() : file_error(tr("standard output"), tr("cannot be written"), trouble);
    }
    Descriptor file(open_again(path_, O_WRONLY | O_CLOEXEC | O_NOCTTY));
    if (!file.good()) {
      return file_error(path_, tr("cannot be opened for writing"), errno);
    }
    int trouble = write_all(file.number(), bytes_);
    if (trouble == 0) {
      trouble = file.close();
    }
    return trouble == 0 ? Failure() : file_error(path_, tr("cannot be written"), trouble);
  }

  Failure settle() override { return std::nullopt; }

private:
  std::filesystem::path path_;
  std::string_view bytes_;
};

enum class Manner { sending, through, replacing }; // in the order of putting: what can't be taken back comes first

struct Step {
  Manner manner = Manner::sending;
  std::unique_ptr<Writing> writing;
};

Result<Step> step_for(const std::filesystem::path& path) {
  if (path == "-") {
    return Step{Manner::sending, std::make_unique<Sending>(path)};
  }
  struct stat old {};
  const bool exists = ::stat(path.c_str(), &old) == 0;
  if (!exists && errno != ENOENT) {
    return file_error(path, tr("cannot be written"), errno);
  }
  if (exists && S_ISDIR(old.st_mode)) {
    return file_error(path, tr("cannot be written"), EISDIR);
  }
  if (exists && !S_ISREG(old.st_mode)) {
    // By its own name: links such as /dev/stdout lead to no path.
    return Step{Manner::sending, std::make_unique<Sending>(path)};
  }
  const Result<std::filesystem::path> target = target_of(path);
  if (!target) {
    return target.error();
  }
  if (exists && old.st_nlink > 1) {
    clear_leftovers(*target); // one of the names may be what a killed saving kept of the old content
    if (::stat(path.c_str(), &old) != 0) {
      return file_error(path, tr("cannot be written"), errno);
    }
  }
  return exists && old.st_nlink > 1
             ? Step{Manner::through, writing_through(path, *target, old)}
             : Step{Manner::replacing, replacement(path, *target, exists ? std::optional(old) : std::nullopt)};
}

Result<std::string> read_descriptor(int descriptor, const std::filesystem::path& path, std::size_t limit) {
  std::string content;
  std::array<char, 65536> block{};
  for (;;) {
    const ssize_t count = read_again(descriptor, block.data(), block.size());
    if (count < 0) {
      return file_error(path, tr("cannot be read"), errno);
    }
    if (count == 0) {
      return content;
    }
    if (content.size() + static_cast<std::size_t>(count) > limit) {
      return Error{path.string(), 0, 0, said("has more than {} bytes", limit), tr("allowed: a smaller file")};
    }
    content.append(block.data(), static_cast<std::size_t>(count));
  }
}

} // namespace

Result<std::string> read_file(const std::filesystem::path& path, std::size_t limit) {
  if (path == "-") {
    return read_descriptor(STDIN_FILENO, tr("standard input"), limit);
  }
  const Descriptor file(open_again(path, O_RDONLY | O_CLOEXEC | O_NOCTTY));
  if (!file.good()) {
    return file_error(path, tr("cannot be opened"), errno);
  }
  return read_descriptor(file.number(), path, limit);
}

Failure write_file(const std::filesystem::path& path, std::string_view bytes) {
  return write_files({NewContent{path, bytes}});
}

Failure write_files(const std::vector<NewContent>& files) {
  std::vector<Step> steps; // goes at the end, and takes back what is not settled
  for (const NewContent& file : files) {
    Result<Step> step = step_for(file.path);
    if (!step) {
      return step.error();
    }
    steps.push_back(std::move(step).value());
    if (Failure failure = steps.back().writing->stage(file.bytes)) {
      return failure;
    }
  }
  std::ranges::stable_sort(steps, {}, &Step::manner);
  for (const Step& step : steps) {
    if (Failure failure = step.writing->put(steps.size() > 1)) {
      return failure;
    }
  }
  Failure late;
  for (const Step& step : steps) {
    Failure failure = step.writing->settle();
    late = late ? late : std::move(failure);
  }
  return late;
}

} // namespace punchwright
