// The card as words, for those who punch a printed blank: per row the columns to punch, in runs.
#pragma once

#include "sheets/card_pages.hpp"

#include <string>
#include <vector>

namespace punchwright {

// "3-5, 9, 20-24"; columns ascending, from 1.
[[nodiscard]] std::string runs_text(const std::vector<int>& columns);

// About how many bytes the list of that card takes; told before it is made.
[[nodiscard]] double size_of_punch_list(const Document& document, const Profile& profile, const RowsToKnit& rows,
                                        const CardPlan& plan);
[[nodiscard]] std::string punch_list(const CardJob& job);

} // namespace punchwright
