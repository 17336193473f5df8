// What the commands print of a yoke: its notes, and its sizes, those that fit and those that don't.
#pragma once

#include "pieces/yoke_plan.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace punchwright::cli {

// What is no error, such as a key that nobody knows: on standard error, since standard output is the answer.
void tell_notes(const OpenedYoke& opened);

// All that keeps those sizes from fitting, on standard error. Returns those that fit.
std::vector<std::size_t> tell_faults(const SizesPlanned& planned, const std::vector<std::size_t>& sizes);
[[nodiscard]] std::vector<std::size_t> all_sizes(const OpenedYoke& opened);

// One line; what keeps sizes from fitting stands under "faults".
[[nodiscard]] std::string json_of(const OpenedYoke& opened, const SizesPlanned& planned);

// Of a size that doesn't fit only that; why not goes to standard error.
[[nodiscard]] std::string text_of(const SizesPlanned& planned, YokeSeams wished);

} // namespace punchwright::cli
