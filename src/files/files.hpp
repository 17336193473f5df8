// Reading files whole and replacing them whole: old or new, never a half. Used for documents and for every export.
// What the libraries hide (full devices, lost modes, cut links) is checked here, once.
#pragma once

#include "design/result.hpp"

#include <filesystem>
#include <string>
#include <string_view>

namespace punchwright {

// The whole file; "-" is standard input. Larger than `limit` bytes: an error.
[[nodiscard]] Result<std::string> read_file(const std::filesystem::path& path, std::size_t limit);

// Replaces the file's content in one step: temporary file in the same directory, fsync, rename, fsync of the
// directory. Follows a symbolic link, keeps mode and, where possible, owner; a file with several hard links is
// written through, as are devices and pipes; "-" is standard output. On an error the old file is as it was.
[[nodiscard]] Failure write_file(const std::filesystem::path& path, std::string_view bytes);

} // namespace punchwright
