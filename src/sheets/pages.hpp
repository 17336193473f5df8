// The pages of every sheet that is printed, before a writer takes them: what the files and the window's preview share,
// so that what is seen is what will be printed.
#pragma once

#include "sheets/drawing.hpp"
#include "sheets/exports.hpp"

#include <optional>
#include <vector>

namespace punchwright {

enum class SheetKind { card, chart, steps, leaflet, pattern, swatch, measure };

struct PageWishes {
  SheetKind kind = SheetKind::card;
  ChartWishes chart;              // only for the needle chart
  std::optional<int> only_card{}; // only for the card: from 1; none: all of them
};

// An error where the machine has no such sheet, or where it would have too many pages to be held.
[[nodiscard]] Result<std::vector<Sheet>> pages_of(const Document& document, const Profile& profile,
                                                  const PageWishes& wishes);

// The pages of one kind each, by the file that writes them.
[[nodiscard]] Result<std::vector<Sheet>> pages_of_card(const Document& document, const Profile& profile,
                                                       std::optional<int> only_card);
[[nodiscard]] Result<std::vector<Sheet>> pages_of_chart(const Document& document, const Profile& profile,
                                                        const ChartWishes& wishes);
[[nodiscard]] Result<std::vector<Sheet>> pages_of_steps(const Document& document, const Profile& profile);
[[nodiscard]] Result<std::vector<Sheet>> pages_of_leaflet(const Document& document, const Profile& profile,
                                                          Paper paper);
[[nodiscard]] Result<std::vector<Sheet>> pages_of_pattern(const Document& document);
[[nodiscard]] Result<std::vector<Sheet>> pages_of_swatch(const Profile& profile, Paper paper);
[[nodiscard]] Result<std::vector<Sheet>> pages_of_measuring(const Profile& profile, Paper paper);

} // namespace punchwright
