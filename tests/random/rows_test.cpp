// The rows to knit of random designs against a second, naive working-out of the same.
#include "random/naive_rows.hpp"
#include "random/random_design.hpp"
#include "rows/rows.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::test;

namespace {

char sign_of(Why why) {
  switch (why) {
  case Why::yarn_change: return '+';
  case Why::change_side: return '>';
  case Why::plain_below: return '=';
  case Why::even_circuit: return '%';
  case Why::drawn: break;
  }
  return 0;
}

std::string in_words(const RowToKnit& row) {
  std::string text = row.why == Why::drawn ? std::to_string(row.drawn + 1) : std::string(1, sign_of(row.why));
  text += ' ';
  text += row.main;
  text += row.contrast == 0 ? "" : std::string(row.all_contrast ? "/" : "+") + row.contrast;
  text += row.travel == Travel::leftwards ? " <" : " >";
  text += row.passes == 2 ? "2" : "";
  text += row.card_row == 0 ? "" : " #" + std::to_string(row.card_row);
  return text;
}

bool any_contrast(const Grid& grid) {
  for (int row = 0; row < grid.height(); ++row) {
    if (grid.has_contrast(row)) {
      return true;
    }
  }
  return false;
}

} // namespace

TEST_CASE("the rows to knit are those of a naive working-out") {
  std::uint64_t inserted = 0;
  std::uint64_t two_passes = 0;
  for (std::uint64_t seed = seeds().first; seed < seeds().end(); ++seed) {
    RandomDesign design = random_design(seed);
    // A loop without a contrast stitch is one plain run for ever: there is nothing to count in it.
    design.document.card.loop = design.document.card.loop && any_contrast(design.document.grid);
    const RowsToKnit rows = rows_to_knit(design.document, design.profile);
    const std::vector<std::string> naive = naive_rows(design.document, design.profile);
    CAPTURE(seed);
    REQUIRE(rows.rows.size() == naive.size());
    for (std::size_t number = 0; number < naive.size(); ++number) {
      if (in_words(rows.rows[number]) != naive[number]) {
        CAPTURE(number + 1);
        REQUIRE(in_words(rows.rows[number]) == naive[number]);
      }
      inserted += rows.rows[number].drawn < 0 ? 1 : 0;
      two_passes += rows.rows[number].passes == 2 ? 1 : 0;
    }
  }
  CHECK(inserted > seeds().count); // else little would have been compared
  CHECK(two_passes > seeds().count);
}
