// What the command line says about itself: usage, help, and what is wrong with a call, in our own words throughout.
// The parser's words are made for programmers, and change with its version.
#pragma once

#include "design/result.hpp"

#include <CLI/CLI.hpp>
#include <string>

namespace punchwright::cli {

// "punchwright card -o OUT FILE"; what is optional stands in brackets.
[[nodiscard]] std::string usage_of(const CLI::App& command);

[[nodiscard]] std::string help_of(const CLI::App& command);

// What is wrong with the call; `command` is the one that was asked for.
[[nodiscard]] Error complaint(const CLI::ParseError& error, const CLI::App& command);

} // namespace punchwright::cli
