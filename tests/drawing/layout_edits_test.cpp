// A whole design laid out: stitches as in the straight repeat, each row in the yarns of the row that it copies.
#include "drawing/layouts.hpp"
#include "support/builders.hpp"
#include "support/one_step.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using test::Dice;
using test::drawn;

namespace {

Document three_bands() {
  Document document = drawn({"####", "#..#", ".#..", "##..", "....", "...."});
  document.yarns = test::five_yarns();
  document.bands = {Band{2, 'A', std::nullopt, std::nullopt}, Band{3, 'A', 'B', 2}, Band{1, 'C', 'D', std::nullopt}};
  return document;
}

Document laid(const Document& before, Layout layout) {
  auto edits = layout_edits(before, layout, std::nullopt);
  REQUIRE_MESSAGE(edits.ok(), (edits ? "" : edits.error().text()));
  return test::done_as_one_step(before, *edits, "lay out");
}

std::vector<std::pair<char, char>> pairs_by_row(const Document& document) {
  std::vector<std::pair<char, char>> pairs;
  for (const Band& band : document.bands) {
    pairs.insert(pairs.end(), static_cast<std::size_t>(band.rows), {band.main, band.contrast.value_or('-')});
  }
  return pairs;
}

} // namespace

TEST_CASE("a brick's second course has the bands of the first again, as they stand") {
  const Document after = laid(three_bands(), Layout::brick);
  CHECK(after.grid == *laid_out(three_bands().grid, Layout::brick, std::nullopt));
  auto twice = pairs_by_row(three_bands());
  const auto once = twice;
  twice.insert(twice.end(), once.begin(), once.end());
  CHECK(pairs_by_row(after) == twice);
}

TEST_CASE("what lies upside down above has its bands upside down too") {
  for (const Layout layout : {Layout::upside_down_above, Layout::mirrored_all_round}) {
    const Document after = laid(three_bands(), layout);
    CHECK(after.grid == *laid_out(three_bands().grid, layout, std::nullopt));
    auto there_and_back = pairs_by_row(three_bands());
    const auto once = there_and_back;
    there_and_back.insert(there_and_back.end(), once.rbegin(), once.rend());
    CHECK(pairs_by_row(after) == there_and_back);
  }
}

TEST_CASE("layouts side by side leave the bands alone") {
  const Document after = laid(three_bands(), Layout::mirrored_beside);
  CHECK(after.bands == three_bands().bands);
}

TEST_CASE("half drop is refused where it would bring contrast into a band of one yarn") {
  const auto edits = layout_edits(three_bands(), Layout::half_drop, std::nullopt);
  REQUIRE_FALSE(edits.ok());
  CHECK(edits.error().text().find("belongs to a band of one yarn") != std::string::npos);
  CHECK(layout_edits(drawn({"##..", "#..."}), Layout::half_drop, 24).ok());
  CHECK_FALSE(layout_edits(drawn({"##..", "#..."}), Layout::half_drop, 12).ok());
}
