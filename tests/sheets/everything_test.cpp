// All sheets at once: their names, what stands in them, and what becomes of those that a design is too large for.
#include "card_designs.hpp"
#include "sheets/everything.hpp"
#include "sheets/pages.hpp"
#include "sheets/writers.hpp"

#include <algorithm>
#include <doctest/doctest.h>

using namespace punchwright;

namespace {

std::vector<std::string> names_of(const Everything& all) {
  std::vector<std::string> names;
  std::ranges::transform(all.files, std::back_inserter(names), &OutputFile::path);
  return names;
}

} // namespace

TEST_CASE("everything has names that sort in the order of the work") {
  const auto names = names_of(everything_of(slanting_design(10), card_machine(), {}, "out/cove"));
  CHECK(names == std::vector<std::string>{"out/cove-1-card.pdf", "out/cove-2-needles.pdf", "out/cove-3-steps.pdf",
                                          "out/cove-4-knit-side.png", "out/cove-5-purl-side.png", "out/cove-6-rows.txt",
                                          "out/cove-7-check.txt", "out/cove-8-leaflet.pdf",
                                          "out/cove-9-pattern-chart.png"});
  CHECK(std::ranges::is_sorted(names));
}

TEST_CASE("a machine without a card has no card, and the names begin with 1 all the same") {
  Profile by_hand = card_machine();
  by_hand.card.reset();
  by_hand.selects = Selects::by_hand;
  const auto names = names_of(everything_of(slanting_design(10), by_hand, {}, "cove"));
  REQUIRE(names.size() == 8);
  CHECK(names.front() == "cove-1-needles.pdf");
  CHECK(names.back() == "cove-8-pattern-chart.png");
}

TEST_CASE("what has too many pages comes as text, and what can't be made is named") {
  Document tall = slanting_design(2000);
  tall.piece.times = 17; // 34,000 rows: more than the picture may have pixels upwards
  const Everything all = everything_of(tall, card_machine(), {}, "tall");
  const auto names = names_of(all);
  CHECK(std::ranges::count(names, "tall-1-card.txt") == 1);
  CHECK(std::ranges::count(names, "tall-2-needles.txt") == 1);
  REQUIRE(all.left_out.size() == 3);
  CHECK(all.left_out.front().file == "tall-4-knit-side.png");
  CHECK(all.left_out.back().file == "tall-8-leaflet.pdf");
  CHECK_FALSE(all.left_out.front().remedy.empty());
}

TEST_CASE("one card of several has its own pages only") {
  const Document document = slanting_design(130); // three blanks of 60 rows
  const auto whole = pages_of(document, card_machine(), {}).value();
  const auto second = pages_of(document, card_machine(), {SheetKind::card, {}, 2}).value();
  CHECK(second.size() < whole.size());
  std::size_t pages = 1; // a cover each
  for (int card = 1; card <= 3; ++card) {
    pages += pages_of(document, card_machine(), {SheetKind::card, {}, card})->size() - 1;
  }
  CHECK(pages == whole.size());
  const auto none = pages_of(document, card_machine(), {SheetKind::card, {}, 4});
  REQUIRE_FALSE(none.ok());
  CHECK(none.error().remedy == "the design has cards 1 to 3");
  const auto svg = card_files(document, card_machine(), "c.svg", 2).value();
  REQUIRE(svg.size() == 1);
  CHECK(svg.front().path == "c.svg");
  CHECK(svg.front().bytes == card_files(document, card_machine(), "c.svg")->at(1).bytes);
}

TEST_CASE("a part of a page as pixels is that part of the whole page's") {
  const Sheet sheet = pages_of(slanting_design(10), card_machine(), {}).value().front();
  const auto whole = pixels_of(sheet, 2, {}, 420, 594).value();
  const auto part = pixels_of(sheet, 2, {50, 100}, 60, 40).value();
  for (int row = 0; row < 40; ++row) {
    const auto* const from = whole.rgb.data() + (static_cast<std::size_t>(200 + row) * 420 + 100) * 3;
    CHECK(std::equal(from, from + 60 * 3, part.rgb.data() + static_cast<std::size_t>(row) * 60 * 3));
  }
}
