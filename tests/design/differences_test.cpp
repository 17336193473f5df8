// The sentences for what differs between two states of a design.
#include "design/differences.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::test;

namespace {

using Sentences = std::vector<std::string>;

// `there` differs in these stitches.
Sentences with_stitches(const std::vector<std::pair<int, int>>& cells) {
  const Document here = drawn(std::vector<std::string>(20, "........"));
  Document there = here;
  for (const auto& [column, row] : cells) {
    there.grid.flip(column, row);
  }
  return differences_in_words(here, there);
}

} // namespace

TEST_CASE("equal states differ in nothing") {
  CHECK(with_stitches({}).empty());
}

TEST_CASE("stitches are counted, and their rows named from 1") {
  CHECK(with_stitches({{2, 0}}) == Sentences{"1 stitch differs, in row 1."});
  CHECK(with_stitches({{2, 2}, {3, 2}, {0, 3}}) == Sentences{"3 stitches differ, in rows 3 to 4."});
  CHECK(with_stitches({{2, 2}, {3, 3}, {0, 19}}) == Sentences{"3 stitches differ, in rows 3 to 4 and 20."});
  CHECK(with_stitches({{0, 0}, {0, 2}, {0, 4}, {0, 6}, {0, 8}, {0, 10}, {0, 11}, {0, 13}}) ==
        Sentences{"8 stitches differ, in rows 1, 3, 5, 7, 9 and 3 more."});
}

TEST_CASE("another size is said with both, and what is not drawn is named") {
  const Document here = drawn({"....", "...."});
  Document there = drawn({"......"});
  CHECK(differences_in_words(here, there) ==
        Sentences{"The drawing here is 4 stitches by 2 rows, there 6 by 1.", "Also different is: the bands."});
  there = here;
  there.title = "Buoys";
  CHECK(differences_in_words(here, there) == Sentences{"Different is: the title."});
  there.gauge.rows = 30;
  there.yarns[0].name = "Kelp";
  CHECK(differences_in_words(here, there) == Sentences{"Different are: the yarns, the title and the gauge."});
}
