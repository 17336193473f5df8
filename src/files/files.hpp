// Reading files whole and replacing them whole: old or new, never a half. Used for documents and for every export.
// What the libraries hide (full devices, lost modes, cut links) is checked here, once.
#pragma once

#include "design/result.hpp"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

// The whole file; "-" is standard input. Larger than `limit` bytes: an error.
[[nodiscard]] Result<std::string> read_file(const std::filesystem::path& path, std::size_t limit);

// Replaces the file's content in one step: temporary file in the same directory, fsync, rename, fsync of the
// directory. Follows a symbolic link, keeps mode and, where possible, owner; a file with several hard links is
// written through, with the whole content beside it until that is done; devices and pipes are written through; "-" is
// standard output. On an error the old file is as it was.
[[nodiscard]] Failure write_file(const std::filesystem::path& path, std::string_view bytes);

struct NewContent {
  std::filesystem::path path;
  std::string_view bytes;
};
// Several files that belong together, such as the cards of one design. All are written to the disk before the first of
// them takes its place; on an error all are as they were, and no new one is left.
[[nodiscard]] Failure write_files(const std::vector<NewContent>& files);

} // namespace punchwright
