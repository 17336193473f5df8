// What the commands that make a design of a picture have in common.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

#include <optional>
#include <string>

namespace punchwright::cli {

// The picture's name without its extension; empty for standard input.
[[nodiscard]] std::string title_from(const std::string& picture);

// Gives the design that is written to `output` the machine, built in or a .machine file named from here: in the design
// it is named from the design's folder. Without a gauge it gets the bed's usual one.
// Refused where there is no such machine.
[[nodiscard]] Result<Profile> use_machine(Document& design, const std::string& machine, const std::string& output,
                                          const std::optional<Gauge>& gauge = {});

} // namespace punchwright::cli
