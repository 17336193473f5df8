// The system calls behind reading and replacing files; every one of them is looked at for its error.
// POSIX.1-2008 and Linux extended attributes.
#include "files/files.hpp"

#include "files/descriptor.hpp"
#include "files/replacement.hpp"

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <fmt/core.h>
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
      return file_error(path, "cannot be written", trouble.value());
    }
    target = next.is_absolute() ? next : target.parent_path() / next;
  }
  return file_error(path, "cannot be written", ELOOP);
}

Failure write_standard_output(std::string_view bytes) {
  if (const int trouble = write_all(STDOUT_FILENO, bytes)) {
    return file_error("standard output", "cannot be written", trouble);
  }
  return std::nullopt;
}

// Devices and pipes take bytes as they come; there is no old content to keep.
Failure write_device(const std::filesystem::path& path, std::string_view bytes) {
  Descriptor file(open_again(path, O_WRONLY | O_CLOEXEC | O_NOCTTY));
  if (!file.good()) {
    return file_error(path, "cannot be opened for writing", errno);
  }
  if (const int trouble = write_all(file.number(), bytes)) {
    return file_error(path, "cannot be written", trouble);
  }
  if (const int trouble = file.close()) {
    return file_error(path, "cannot be written", trouble);
  }
  return std::nullopt;
}

Result<std::string> read_descriptor(int descriptor, const std::filesystem::path& path, std::size_t limit) {
  std::string content;
  std::array<char, 65536> block{};
  for (;;) {
    const ssize_t count = read_again(descriptor, block.data(), block.size());
    if (count < 0) {
      return file_error(path, "cannot be read", errno);
    }
    if (count == 0) {
      return content;
    }
    if (content.size() + static_cast<std::size_t>(count) > limit) {
      return Error{path.string(), 0, 0, fmt::format("has more than {} bytes", limit), "allowed: a smaller file"};
    }
    content.append(block.data(), static_cast<std::size_t>(count));
  }
}

} // namespace

Result<std::string> read_file(const std::filesystem::path& path, std::size_t limit) {
  if (path == "-") {
    return read_descriptor(STDIN_FILENO, "standard input", limit);
  }
  const Descriptor file(open_again(path, O_RDONLY | O_CLOEXEC | O_NOCTTY));
  if (!file.good()) {
    return file_error(path, "cannot be opened", errno);
  }
  return read_descriptor(file.number(), path, limit);
}

Failure write_file(const std::filesystem::path& path, std::string_view bytes) {
  if (path == "-") {
    return write_standard_output(bytes);
  }
  struct stat old {};
  const bool exists = ::stat(path.c_str(), &old) == 0;
  if (!exists && errno != ENOENT) {
    return file_error(path, "cannot be written", errno);
  }
  if (exists && S_ISDIR(old.st_mode)) {
    return file_error(path, "cannot be written", EISDIR);
  }
  if (exists && !S_ISREG(old.st_mode)) {
    return write_device(path, bytes); // by its own name: links such as /dev/stdout lead to no path
  }
  const Result<std::filesystem::path> target = target_of(path);
  if (!target) {
    return target.error();
  }
  return exists && old.st_nlink > 1 ? write_through(path, *target, bytes)
                                    : replace_file(path, *target, exists ? &old : nullptr, bytes);
}

} // namespace punchwright
