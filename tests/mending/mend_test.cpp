// The mend against trying everything: fewest stitches, then fewest pairs, then floats caught in their middle.
#include "mending/look.hpp"
#include "mending/mend.hpp"
#include "rules/float_runs.hpp"

#include <algorithm>
#include <bit>
#include <doctest/doctest.h>
#include <limits>
#include <numeric>
#include <random>
#include <tuple>

using namespace punchwright;

namespace {

using Bits = std::uint32_t;
using Rank = std::tuple<std::int64_t, std::int64_t, std::int64_t>; // price, pairs, squares

bool bit(Bits row, int column) {
  return (row >> column & 1U) != 0;
}

// The longest run of one colour as the row tiles, worked out the plain way; a row of one colour has none.
int longest_run(Bits row, int width) {
  int longest = 0;
  for (int start = 0; start < width; ++start) {
    if (bit(row, start) == bit(row, (start + width - 1) % width)) {
      continue; // no run begins here
    }
    int length = 1;
    while (length < width && bit(row, (start + length) % width) == bit(row, start)) {
      ++length;
    }
    longest = std::max(longest, length);
  }
  return longest;
}

Grid grid_of(const std::vector<Bits>& rows, int width) {
  Grid grid(width, static_cast<int>(rows.size()));
  for (int row = 0; row < grid.height(); ++row) {
    for (int column = 0; column < width; ++column) {
      grid.set(column, row, bit(rows[static_cast<std::size_t>(row)], column));
    }
  }
  return grid;
}

std::vector<char> stitches_of(Bits row, int width) {
  std::vector<char> stitches;
  for (int column = 0; column < width; ++column) {
    stitches.push_back(bit(row, column) ? 1 : 0);
  }
  return stitches;
}

// Two changed stitches, one in each row, on the same needle or the next.
std::int64_t pairs(Bits one, Bits another, int width) {
  std::int64_t count = 0;
  for (int column = 0; column < width; ++column) {
    for (int other = 0; other < width; ++other) {
      const int apart = std::abs(column - other);
      count += bit(one, column) && bit(another, other) && std::min(apart, width - apart) <= 1 ? 1 : 0;
    }
  }
  return count;
}

struct Block {
  int width = 8;
  int limit = 3;
  bool stacked = true;
  std::vector<Bits> rows;
  std::vector<std::int32_t> prices;
};

// All forms of a row in which no float is too long and nothing protected is changed, with their prices.
std::vector<std::pair<Bits, std::int64_t>> forms_of(const Block& block, std::size_t row) {
  const Bits drawn = block.rows[row];
  const auto width = static_cast<std::size_t>(block.width);
  const Bits all = (Bits{1} << block.width) - 1;
  const auto fits = [&](Bits form) {
    return form != 0 && form != all && longest_run(form, block.width) <= block.limit;
  };
  if (drawn == 0 || drawn == all || fits(drawn)) {
    return {{drawn, 0}};
  }
  std::vector<std::pair<Bits, std::int64_t>> forms;
  for (Bits form = 0; form <= all; ++form) {
    std::int64_t price = 0;
    bool allowed = fits(form);
    for (std::size_t column = 0; allowed && column < width; ++column) {
      if (bit(form ^ drawn, static_cast<int>(column))) {
        const std::int32_t one = block.prices.empty() ? 1 : block.prices[row * width + column];
        allowed = one != never_changed;
        price += one;
      }
    }
    if (allowed) {
      forms.emplace_back(form, price);
    }
  }
  return forms;
}

void keep_cheapest(std::vector<std::pair<Bits, std::int64_t>>& forms) {
  const auto least = std::ranges::min(forms, {}, &std::pair<Bits, std::int64_t>::second).second;
  std::erase_if(forms, [&](const auto& form) { return form.second > least; });
}

Rank best_by_trying(const Block& block) {
  std::vector<std::vector<std::pair<Bits, std::int64_t>>> forms;
  for (std::size_t row = 0; row < block.rows.size(); ++row) {
    forms.push_back(forms_of(block, row));
    if (forms.back().empty()) {
      forms.back() = {{block.rows[row], 0}}; // can't be mended: stays
    }
    keep_cheapest(forms.back());
  }
  Rank best{std::numeric_limits<std::int64_t>::max(), 0, 0};
  std::vector<std::size_t> choice(forms.size(), 0);
  while (true) {
    Rank rank{0, 0, 0};
    for (std::size_t row = 0; row < forms.size(); ++row) {
      const auto& [form, price] = forms[row][choice[row]];
      const Bits drawn = block.rows[row];
      std::get<0>(rank) += price;
      std::get<2>(rank) += form != drawn ? squares_of(stitches_of(form, block.width)) : 0;
      const std::size_t above = (row + 1) % forms.size();
      if (above != row && (above > row || block.stacked)) {
        std::get<1>(rank) += pairs(form ^ drawn, forms[above][choice[above]].first ^ block.rows[above], block.width);
      }
    }
    best = std::min(best, rank);
    std::size_t row = 0;
    while (row < forms.size() && ++choice[row] == forms[row].size()) {
      choice[row++] = 0;
    }
    if (row == forms.size()) {
      return best;
    }
  }
}

Mended mend_block(const Block& block) {
  MendWishes wishes;
  wishes.limit = block.limit;
  wishes.prices = block.prices;
  wishes.stacked = block.stacked;
  return mend(grid_of(block.rows, block.width), wishes);
}

// Random rows with long runs, so that there is something to mend.
Bits random_row(std::mt19937& random, int width) {
  Bits row = 0;
  bool colour = random() % 2 == 0;
  for (int column = 0; column < width; ++column) {
    colour = random() % 4 == 0 ? !colour : colour;
    row |= colour ? Bits{1} << column : 0;
  }
  return row;
}

int count_of(const Grid& one, const Grid& another) {
  int count = 0;
  for (int row = 0; row < one.height(); ++row) {
    for (int column = 0; column < one.width(); ++column) {
      count += one.at(column, row) != another.at(column, row) ? 1 : 0;
    }
  }
  return count;
}

} // namespace

TEST_CASE("one row: as few stitches, as cheap, and as well placed as by trying every row") {
  std::mt19937 random(2611);
  constexpr int narrow = 3000; // rounds of 1 to 12 stitches
  constexpr int wide = 120;    // of 13 to 16, which have up to 65,536 forms
  for (int round = 0; round < narrow + wide; ++round) {
    Block block;
    block.width = round < narrow ? 1 + static_cast<int>(random() % 12) : 13 + static_cast<int>(random() % 4);
    block.limit = 1 + static_cast<int>(random() % 9);
    block.rows = {random_row(random, block.width)};
    if (round % 3 != 0) {
      for (int column = 0; column < block.width; ++column) {
        block.prices.push_back(random() % 8 == 0 ? never_changed : static_cast<std::int32_t>(random() % 5));
      }
    }
    CAPTURE(round);
    CAPTURE(block.width);
    CAPTURE(block.limit);
    CAPTURE(block.rows[0]);
    const Mended mended = mend_block(block);
    CHECK(mended.unmendable.empty() == !forms_of(block, 0).empty());
    if (mended.unmendable.empty()) {
      CHECK(Rank{mended.price, mended.pairs, mended.squares} == best_by_trying(block));
      CHECK(mended.proved);
    } else {
      CHECK(mended.drawing == grid_of(block.rows, block.width));
    }
  }
}

TEST_CASE("small blocks: the best of all choices of cheapest rows, stacked or not") {
  std::mt19937 random(71);
  int with_pairs = 0;
  for (int round = 0; round < 1500; ++round) {
    Block block;
    block.width = 4 + static_cast<int>(random() % 6);
    block.limit = 2 + static_cast<int>(random() % 4);
    block.stacked = random() % 2 == 0;
    const int height = 1 + static_cast<int>(random() % 4);
    for (int row = 0; row < height; ++row) {
      block.rows.push_back(random_row(random, block.width));
    }
    CAPTURE(round);
    const Mended mended = mend_block(block);
    with_pairs += mended.pairs > 0 ? 1 : 0;
    CHECK(Rank{mended.price, mended.pairs, mended.squares} == best_by_trying(block));
    CHECK(mended.proved);
  }
  CHECK(with_pairs > 20); // where pairs can't be had apart
}

TEST_CASE("what is mended has no float that is too long, names its changes, and mends to itself") {
  std::mt19937 random(5);
  for (int round = 0; round < 400; ++round) {
    const int width = 1 + static_cast<int>(random() % 200);
    const int height = 1 + static_cast<int>(random() % 12);
    const int limit = 2 + static_cast<int>(random() % 8);
    Grid drawing(width, height);
    for (int row = 0; row < height; ++row) {
      bool colour = false;
      for (int column = 0; column < width; ++column) {
        colour = random() % 5 == 0 ? !colour : colour;
        drawing.set(column, row, colour);
      }
    }
    CAPTURE(round);
    MendWishes wishes;
    wishes.limit = limit;
    const Mended mended = mend(drawing, wishes);
    CHECK(mended.unmendable.empty());
    CHECK(mended.price == count_of(drawing, mended.drawing));
    CHECK(std::ssize(mended.changed) == mended.price);
    CHECK(
        std::ranges::is_sorted(mended.changed, {}, [](const Cell& cell) { return std::pair(cell.row, cell.column); }));
    CHECK(mended.pairs == pairs_of_changes(drawing, mended.drawing, true));
    for (int row = 0; row < height; ++row) {
      CHECK(runs_beyond(mended.drawing, row, limit).empty());
      CHECK(drawing.mixed(row) == mended.drawing.mixed(row));
    }
    const Mended again = mend(mended.drawing, wishes);
    CHECK(again.changed.empty());
    CHECK(again.drawing == mended.drawing);
    wishes.look = false;
    CHECK(mend(drawing, wishes).price == mended.price);
  }
}

TEST_CASE("never more changes than by the hand rule: catch every stitch after the longest float (common practice)") {
  std::mt19937 random(17);
  int compared = 0;
  for (int round = 0; round < 2000; ++round) {
    const int limit = 2 + static_cast<int>(random() % 7);
    Grid drawing(24, 1);
    bool colour = false;
    for (int column = 0; column < 24; ++column) {
      colour = random() % 6 == 0 ? !colour : colour;
      drawing.set(column, 0, colour);
    }
    Grid by_hand = drawing;
    int changes = 0;
    for (const StitchRun& run : runs_beyond(drawing, 0, limit)) {
      for (int place = limit; place < run.stitches; place += limit + 1) {
        by_hand.flip((run.first + place) % 24, 0);
        ++changes;
      }
    }
    MendWishes wishes;
    wishes.limit = limit;
    if (runs_beyond(by_hand, 0, limit).empty() && by_hand.mixed(0)) {
      ++compared;
      CHECK(mend(drawing, wishes).price <= changes);
    }
  }
  CHECK(compared > 1000);
}

TEST_CASE("a float that is one stitch too long is caught in its middle, and catches of neighbouring rows keep apart") {
  Grid drawing(12, 2);
  drawing.set_row_text(0, "#.........##"); // nine stitches of main, of which five may be passed
  drawing.set_row_text(1, "#.........##");
  MendWishes wishes;
  wishes.stacked = false;
  const Mended one = mend(
      [&] {
        Grid row(12, 1);
        row.set_row_text(0, drawing.row_text(0));
        return row;
      }(),
      wishes);
  CHECK(one.drawing.row_text(0) == "#....#....##");
  const Mended both = mend(drawing, wishes);
  CHECK(both.changed.size() == 2);
  CHECK(both.pairs == 0);
  CHECK(std::abs(both.changed[0].column - both.changed[1].column) == 2);
  CHECK(both.proved);
}

TEST_CASE("single-colour rows stay; what can't be mended stays, and its place is told") {
  Grid drawing(10, 3);
  drawing.set_row_text(0, "..........");
  drawing.set_row_text(1, "##########");
  drawing.set_row_text(2, "#.......##");
  MendWishes wishes;
  wishes.limit = 3;
  wishes.prices.assign(30, 1);
  for (int column = 1; column < 8; ++column) {
    wishes.prices[static_cast<std::size_t>(20 + column)] = never_changed;
  }
  const Mended held = mend(drawing, wishes);
  CHECK(held.drawing == drawing);
  CHECK(held.unmendable == std::vector{Unmendable{2, 1, 7}});
  wishes.prices[24] = 1;
  const Mended mended = mend(drawing, wishes);
  CHECK(mended.unmendable.empty());
  CHECK(mended.changed == std::vector{Cell{4, 2}});
}

TEST_CASE("a limit of one in an odd repeat can't be kept: two stitches of one colour must meet") {
  Grid drawing(5, 1);
  drawing.set_row_text(0, "#.#..");
  MendWishes wishes;
  wishes.limit = 1;
  CHECK(mend(drawing, wishes).unmendable == std::vector{Unmendable{0, 0, 4}});
}

TEST_CASE("all cheapest forms of a row are listed once each") {
  std::mt19937 random(99);
  for (int round = 0; round < 500; ++round) {
    Block block;
    block.width = 4 + static_cast<int>(random() % 9);
    block.limit = 1 + static_cast<int>(random() % 5);
    block.rows = {random_row(random, block.width)};
    auto forms = forms_of(block, 0);
    if (forms.size() < 2 || forms.front().second == 0) {
      continue;
    }
    keep_cheapest(forms);
    std::vector<Bits> expected;
    std::ranges::transform(forms, std::back_inserter(expected), &std::pair<Bits, std::int64_t>::first);
    RowMender mender(block.width, block.limit);
    const std::vector<char> stitches = stitches_of(block.rows[0], block.width);
    mender.set_row(stitches, std::vector<std::int32_t>(stitches.size(), 1), {});
    const std::vector<char> listed = mender.all_cheapest(10'000);
    std::vector<Bits> found;
    for (std::size_t at = 0; at < listed.size(); at += stitches.size()) {
      Bits row = 0;
      for (std::size_t column = 0; column < stitches.size(); ++column) {
        row |= listed[at + column] != 0 ? Bits{1} << column : 0;
      }
      found.push_back(row);
    }
    std::ranges::sort(found);
    CAPTURE(round);
    CHECK(found == expected);
  }
}
