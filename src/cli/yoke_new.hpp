// punchwright yoke --new: a yoke from body measurements.
// Apart from the command, which only writes it down.
#pragma once

#include "cli/commands.hpp"
#include "pieces/yoke.hpp"

namespace punchwright::cli {

// Its tiers are those of the wishes; `wishes.output` is where it will be written.
[[nodiscard]] Result<Yoke> new_yoke(const YokeWishes& wishes);

} // namespace punchwright::cli
