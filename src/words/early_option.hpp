// One option looked for before the command line is read as a whole: its help is in the language that it names.
#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace punchwright {

// Of "--language de" or "--language=de", `option` being "--language"; empty where its value is missing. Nothing: it
// isn't there. What stands behind "--" are names of files.
[[nodiscard]] std::optional<std::string_view> early_option(std::span<const char* const> arguments,
                                                           std::string_view option);

} // namespace punchwright
