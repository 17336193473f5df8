// The eight ways in which an orientation swatch can come out, numbered as on its question page.
#pragma once

#include "sheets/exports.hpp"

#include <string>

namespace punchwright {

constexpr int swatch_answers = 8;

// "mirrored, colours changed"; "as drawn" for number 1.
[[nodiscard]] std::string words_of(const SwatchAnswer& answer);
// The drawing as the knit side shows it in that case.
[[nodiscard]] Grid swatch_seen(const Grid& drawn, const SwatchAnswer& answer);

} // namespace punchwright
