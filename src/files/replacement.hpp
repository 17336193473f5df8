// Two ways to give a file new content: by a temporary file that takes its place, and, where that would cut hard links,
// by writing through.
#pragma once

#include "files/descriptor.hpp"

#include <sys/stat.h>

namespace punchwright {

// `named` is the name for messages, `target` the file itself; `old` is its state, or nullptr where there is none.
[[nodiscard]] Failure replace_file(const std::filesystem::path& named, const std::filesystem::path& target,
                                   const struct stat* old, std::string_view bytes);

// Keeps the file and its other names. After an error the old content is put back.
[[nodiscard]] Failure write_through(const std::filesystem::path& named, const std::filesystem::path& target,
                                    std::string_view bytes);

} // namespace punchwright
