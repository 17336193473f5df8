// Why a row is knitted: the stable word for scripts, and the reason in plain words for people.
#pragma once

#include "rows/rows.hpp"

#include <string_view>

namespace punchwright {

// "drawn", "yarn-change", "change-side", "plain-below", "even-circuit".
[[nodiscard]] std::string_view word_for(Why why);

// "plain row: the contrast yarn changes"; for a drawn row "drawn".
[[nodiscard]] std::string_view reason_for(Why why);

} // namespace punchwright
