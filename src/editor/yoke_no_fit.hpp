// Findings of sizes for which no stitch counts fit: in plain words what to do, once for all sizes that have the same
// trouble, with what would fit as far as it is worked out.
#pragma once

#include "editor/yoke_cache.hpp"

#include <string>
#include <vector>

namespace punchwright::editor {

// A length of clothes: "48.0 cm" or "18.9 in".
[[nodiscard]] std::string cloth_length(double cm, LengthUnit unit);

void add_no_fit(std::vector<YokeFinding>& found, const OpenedYoke& opened, const std::vector<SizeTrouble>& troubles,
                LengthUnit unit);

// The yoke with what the finding offers.
[[nodiscard]] Yoke with_offered_tolerance(Yoke yoke, const YokeFinding& finding);
[[nodiscard]] Yoke with_offered_widths(Yoke yoke, const YokeFinding& finding);

} // namespace punchwright::editor
