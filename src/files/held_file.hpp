// A file that tells others that a process is at work: the system frees it when that process ends, however it ends.
// An advisory lock on the whole file, flock(2); a file system that has none counts as free.
#pragma once

#include "files/descriptor.hpp"

#include <filesystem>
#include <optional>

namespace punchwright {

class HeldFile {
public:
  // Makes the file where there is none. Nothing: another process holds it, or it can't be made.
  [[nodiscard]] static std::optional<HeldFile> take(const std::filesystem::path& path);

  // Removes the file, and lets it go.
  void remove();

private:
  HeldFile(std::filesystem::path path, Descriptor file) : path_(std::move(path)), file_(std::move(file)) {}

  std::filesystem::path path_;
  Descriptor file_;
};

} // namespace punchwright
