// The sheets of a whole yoke in one file: schematic, table of sizes, the steps of every piece tier by tier, decrease
// strips to lay along the bed, and the cards; by hand, needle lists in place of the cards.
#pragma once

#include "pieces/yoke_plan.hpp"
#include "sheets/drawing.hpp"
#include "sheets/exports.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace punchwright {

enum class YokeSheet { schematic, sizes, steps, strips, cards };

// What people type and other programs read: "cards" stands for the needle lists where there is no card.
constexpr std::array<std::pair<std::string_view, YokeSheet>, 5> yoke_sheet_words{{{"schematic", YokeSheet::schematic},
                                                                                  {"sizes", YokeSheet::sizes},
                                                                                  {"steps", YokeSheet::steps},
                                                                                  {"strips", YokeSheet::strips},
                                                                                  {"cards", YokeSheet::cards}}};

struct YokeSheetWishes {
  std::optional<Paper> paper;      // none: that of the first tier's file; a roll is printed on A4
  std::vector<std::size_t> sizes;  // indices; empty: all
  std::vector<std::size_t> pieces; // likewise
  std::vector<YokeSheet> sheets;   // likewise
};

// A4 or Letter; the print correction is that of the first tier's file. Refused where it would have too many pages to be
// held, and where a card doesn't fit on the paper.
[[nodiscard]] Result<std::vector<Sheet>> pages_of_yoke(const OpenedYoke& opened, const YokePlan& plan,
                                                       const YokeSheetWishes& wishes);

// .pdf
[[nodiscard]] Result<std::vector<OutputFile>> yoke_files(const OpenedYoke& opened, const YokePlan& plan,
                                                         const std::string& path, const YokeSheetWishes& wishes);

} // namespace punchwright
