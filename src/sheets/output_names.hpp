// Names of the files of an export: the wished one, or of several files each with its number before the extension.
#pragma once

#include <cstddef>
#include <string>

namespace punchwright {

// ".pdf", in small letters; empty where the name has none.
[[nodiscard]] std::string extension_in(const std::string& path);
// `number` from 1. Of one file "out.svg"; of two "out-1.svg", "out-2.svg"; of 24 "out-01.svg" to "out-24.svg", so that
// they lie in the order of their pages wherever names are sorted.
[[nodiscard]] std::string numbered_path(const std::string& path, std::size_t number, std::size_t of);

} // namespace punchwright
