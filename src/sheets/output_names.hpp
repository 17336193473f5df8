// Names of the files of an export: the wished one, and "-2", "-3" before the extension for those that follow.
#pragma once

#include <string>

namespace punchwright {

// ".pdf", in small letters; empty where the name has none.
[[nodiscard]] std::string extension_in(const std::string& path);
// `number` from 1: "out.svg", "out-2.svg", "out-3.svg".
[[nodiscard]] std::string numbered_path(const std::string& path, int number);

} // namespace punchwright
