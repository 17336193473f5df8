// The order of the two passes with one feeder: as few empty ones as any order has, found out by trying them all.
#include "rows/pass_order.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <doctest/doctest.h>
#include <map>

using namespace punchwright;

namespace {

Profile one_feeder(bool with_card) {
  Profile profile = with_card ? test::card_machine() : test::by_hand();
  profile.feeders = 1;
  return profile;
}

// Counted by walking with the carriage, and not by numbers of passes: where each yarn hangs, and for how long it has.
int empty_passes_walked(const std::vector<RowToKnit>& rows, Side carriage) {
  struct Hanging {
    Side side;
    int passes = 0; // made without it
  };
  std::map<char, Hanging> hanging;
  hanging[rows.front().main] = {carriage, 0};
  int empty = 0;
  for (const RowToKnit& row : rows) {
    std::string yarns(1, row.all_contrast ? row.contrast : row.main);
    if (row.two_coloured()) {
      yarns = row.contrast_first ? std::string{row.contrast, row.main} : std::string{row.main, row.contrast};
    }
    for (const char yarn : yarns) {
      const auto found = hanging.find(yarn);
      empty += found != hanging.end() && found->second.passes <= most_passes_hanging && found->second.side != carriage;
      carriage = other(carriage);
      for (auto& [other_yarn, waits] : hanging) {
        ++waits.passes;
      }
      hanging[yarn] = {carriage, 0};
    }
  }
  return empty;
}

int fewest_of_all_orders(std::vector<RowToKnit> rows, Side carriage) {
  std::vector<std::size_t> free;
  for (std::size_t row = 0; row < rows.size(); ++row) {
    if (rows[row].two_coloured()) {
      free.push_back(row);
    }
  }
  int fewest = 1'000'000;
  for (unsigned order = 0; order < 1U << free.size(); ++order) {
    for (std::size_t bit = 0; bit < free.size(); ++bit) {
      rows[free[bit]].contrast_first = (order >> bit & 1U) != 0;
    }
    fewest = std::min(fewest, empty_passes_walked(rows, carriage));
  }
  return fewest;
}

// Rows of one colour, of the other, and of both, in bands with up to five yarns.
Document random_design(test::Dice& dice) {
  const int height = 1 + dice.throw_one(12);
  Document document = blank_document(2, height);
  document.yarns = test::five_yarns();
  document.bands.clear();
  for (int row = 0; row < height;) {
    const int rows = std::min(height - row, 1 + dice.throw_one(5));
    const char main = static_cast<char>('A' + dice.throw_one(5));
    const char contrast = static_cast<char>('A' + (main - 'A' + 1 + dice.throw_one(4)) % 5);
    document.bands.push_back({rows, main, contrast, {}});
    row += rows;
  }
  for (int row = 0; row < height; ++row) {
    const int kind = dice.throw_one(6);
    document.grid.set(0, row, kind >= 1);
    document.grid.set(1, row, kind == 1);
  }
  document.rules.plain_rows = dice.throw_one(3);
  document.rules.change_side = static_cast<ChangeSide>(dice.throw_one(3));
  document.piece.carriage = dice.heads() ? Side::left : Side::right;
  return document;
}

} // namespace

TEST_CASE("no order of the passes has fewer empty ones than that which is chosen") {
  constexpr int designs = 3000;
  test::Dice dice(20);
  int better_than_main_first = 0;
  int not_without = 0;
  for (int design = 0; design < designs; ++design) {
    const Document document = random_design(dice);
    const RowsToKnit rows = rows_to_knit(document, one_feeder(dice.heads()));
    const Side carriage = document.piece.carriage;
    const int chosen = empty_passes_walked(rows.rows, carriage);
    CAPTURE(design);
    REQUIRE(chosen == empty_passes(rows.rows));
    REQUIRE(chosen == fewest_of_all_orders(rows.rows, carriage));
    auto main_first = rows.rows;
    for (RowToKnit& row : main_first) {
      row.contrast_first = false;
    }
    better_than_main_first += chosen < empty_passes(main_first) ? 1 : 0;
    not_without += chosen > 0 ? 1 : 0;
  }
  CHECK(better_than_main_first > designs / 4);
  CHECK(not_without > designs / 20);
}

TEST_CASE("sides: every pass starts where the one before ended, whatever the order") {
  test::Dice dice(21);
  for (int design = 0; design < 500; ++design) {
    const Document document = random_design(dice);
    Side carriage = document.piece.carriage;
    for (const RowToKnit& row : rows_to_knit(document, one_feeder(true)).rows) {
      const auto passes = passes_of(row);
      REQUIRE(passes.size() == (row.two_coloured() ? 2 : 1));
      REQUIRE(passes.front().travel == row.travel);
      for (const Pass& pass : passes) {
        REQUIRE(other(end_of(pass.travel)) == carriage);
        carriage = end_of(pass.travel);
        REQUIRE((pass.main == 0) != (pass.contrast == 0));
      }
      if (row.two_coloured()) {
        REQUIRE(passes.front().main + passes.back().main == row.main);
        REQUIRE(passes.front().contrast + passes.back().contrast == row.contrast);
      }
    }
  }
}

TEST_CASE("what hangs beside the carriage goes first, also where main is joined anew") {
  Document document = test::drawn({".#", ".#"});
  document.yarns = test::five_yarns();
  document.bands = {{1, 'A', 'B', {}}, {1, 'C', 'B', {}}};
  const auto rows = rows_to_knit(document, one_feeder(false)).rows;
  REQUIRE(rows.size() == 2);
  CHECK_FALSE(rows[0].contrast_first);
  CHECK(rows[1].contrast_first);
  CHECK(empty_passes(rows) == 0);
}

TEST_CASE("the search looks ahead: of two new yarns that one goes second which the next row wants") {
  Document document = test::drawn({"..", ".#", ".#"});
  document.yarns = test::five_yarns();
  document.bands = {{1, 'A', 'B', {}}, {2, 'C', 'D', {}}};
  document.rules.plain_rows = 0;
  const auto rows = rows_to_knit(document, one_feeder(false)).rows;
  REQUIRE(rows.size() == 3);
  CHECK(rows[1].contrast_first); // Kelp, then Brick, which is in the feeder for the plain row
  CHECK(empty_passes(rows) == 0);
}

TEST_CASE("where no order helps, a yarn is fetched from the far side") {
  const auto rows = rows_to_knit(test::drawn({".#", ".#", "..", ".#"}), one_feeder(false)).rows;
  CHECK_FALSE(rows[0].contrast_first); // main has knitted the setting-up
  CHECK(empty_passes(rows) == 1);      // main hangs on the far side when the plain row comes
}

TEST_CASE("the whole of the longest knitting is searched") {
  Document document = test::drawn({"#.", ".#", "#.", ".#", "#.", ".#"});
  document.yarns = test::five_yarns();
  document.bands = {{1, 'A', 'B', {}}, {1, 'C', 'D', {}}, {1, 'A', 'D', {}},
                    {1, 'E', 'B', {}}, {1, 'C', 'B', {}}, {1, 'D', 'E', {}}};
  document.rules.plain_rows = 0;
  document.piece.times = 1000;
  const auto rows = rows_to_knit(document, one_feeder(false)).rows;
  CHECK(rows.size() == 6000);
  CHECK(empty_passes(rows) < 6000);
}
