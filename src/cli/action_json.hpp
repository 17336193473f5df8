// What hands do at the machine, as JSON: the same form wherever a command tells of actions.
#pragma once

#include "knitting/actions.hpp"

#include <nlohmann/json.hpp>

namespace punchwright::cli {

using Json = nlohmann::ordered_json;

[[nodiscard]] Json json_of(const MachineAction& action);
[[nodiscard]] const char* word_for_side(Side side);

} // namespace punchwright::cli
