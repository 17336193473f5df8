// The same drawing on a machine of the other kind: which one is taken, and that needle and column stay together.
#include "plan/other_machine.hpp"
#include "plan/plan.hpp"
#include "support/demos.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

namespace {

OpenedDocument demo(const std::string& name) {
  return test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/" + name + ".repeat");
}

// Without the ends of the piece, which a card machine brings forward too.
std::vector<Needle> inner_needles(const Document& document, const Profile& profile, const RowToKnit& row) {
  std::vector<Needle> needles = needles_in_row(document, profile, row);
  std::erase_if(needles, [&](Needle needle) {
    return needle == first_needle_of(document) || needle == last_needle_of(document);
  });
  return needles;
}

} // namespace

TEST_CASE("a design for a card goes to a bed by hand, and the other way round") {
  for (const auto& path : test::demo_paths()) {
    CAPTURE(path.string());
    const OpenedDocument own = test::open_demo(path);
    const OnMachine there = on_other_kind(own.document, own.profile);
    CHECK(reads_card(there.profile) != reads_card(own.profile));
    CHECK(there.document.profile == there.profile.name);
    CHECK(stitches_of(there.document) == stitches_of(own.document));
    CHECK(there.document.grid == own.document.grid);
  }
}

TEST_CASE("by hand each needle shows the column that it shows by card") {
  int compared = 0;
  for (const auto& path : test::demo_paths()) {
    CAPTURE(path.string());
    const OpenedDocument own = test::open_demo(path);
    const OnMachine there = on_other_kind(own.document, own.profile);
    if (!reads_card(own.profile) || first_needle_of(there.document) != first_needle_of(own.document)) {
      continue;
    }
    const RowsToKnit rows = rows_to_knit(own.document, own.profile);
    const RowsToKnit others = rows_to_knit(there.document, there.profile);
    REQUIRE(rows.rows.size() == others.rows.size());
    for (std::size_t row = 0; row < rows.rows.size(); ++row) {
      CHECK(inner_needles(own.document, own.profile, rows.rows[row]) ==
            inner_needles(there.document, there.profile, others.rows[row]));
      ++compared;
    }
  }
  CHECK(compared > 100);
}

TEST_CASE("of the beds with a card that holds the repeat, the one with the nearest pitch is taken") {
  OpenedDocument crabs = demo("shore-crabs");
  crabs.document.grid = Grid(12, crabs.document.grid.height());
  crabs.profile.pitch_mm = 8.0;
  const OnMachine there = on_other_kind(crabs.document, crabs.profile);
  REQUIRE(there.profile.card.has_value());
  CHECK(there.profile.card->repeat % crabs.document.grid.width() == 0);
  CHECK(there.profile.pitch_mm == 9.0);
}

TEST_CASE("a piece that lies off the other bed is moved to its middle") {
  OpenedDocument border = demo("hood-border"); // 112 needles; by hand 150
  border.profile.needles = 250;
  border.document.piece.stitches = 20;
  border.document.piece.first_needle = left_needle(120);
  const OnMachine moved = on_other_kind(border.document, border.profile);
  CHECK(first_needle_of(moved.document) == left_needle(10));
}
