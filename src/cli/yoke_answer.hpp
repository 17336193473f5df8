// What punchwright yoke prints of the sizes of a yoke, those that fit and those that don't.
#pragma once

#include "pieces/yoke_plan.hpp"

#include <string>

namespace punchwright::cli {

// One line; what keeps sizes from fitting stands under "faults".
[[nodiscard]] std::string json_of(const OpenedYoke& opened, const SizesPlanned& planned);

// Of a size that doesn't fit only that; why not goes to standard error.
[[nodiscard]] std::string text_of(const SizesPlanned& planned, YokeSeams wished);

} // namespace punchwright::cli
