// The forms of the step list beside plain text.
#pragma once

#include "plan/steps.hpp"
#include "sheets/drawing.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

[[nodiscard]] std::vector<Sheet> step_sheets(const StepList& list, const Document& document, const Profile& profile);
[[nodiscard]] std::string step_html(const StepList& list, const Document& document, const Profile& profile);

[[nodiscard]] std::string_view heading_of(StepPart part);
// "Puffin cove: steps"; of a design without a title "Steps".
[[nodiscard]] std::string step_title(const Document& document);
// "71 needles, L36 to R35; 63 rows to knit".
[[nodiscard]] std::string step_head_words(const StepList& list, const Document& document);

} // namespace punchwright
