// The drawn motifs as text, for motifs.cpp only. A motif: "id: Name; more words", then its rows from the top.
#pragma once

#include <string_view>

namespace punchwright {

[[nodiscard]] std::string_view bird_motifs();
[[nodiscard]] std::string_view sea_motifs();
[[nodiscard]] std::string_view harbour_motifs();
[[nodiscard]] std::string_view wave_motifs();
[[nodiscard]] std::string_view border_motifs();
[[nodiscard]] std::string_view filler_motifs();

} // namespace punchwright
