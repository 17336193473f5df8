// Mends under the symmetry of the drawing, against trying every choice of cheapest rows.
#include "mending/look.hpp"
#include "mending/mend.hpp"
#include "mending/symmetry.hpp"
#include "movements.hpp"

#include <algorithm>
#include <array>
#include <doctest/doctest.h>
#include <map>
#include <random>
#include <tuple>

using namespace punchwright;
using test::random_drawing;
using test::unlike_by_hand;

namespace {

using Rank = std::tuple<std::int64_t, std::int64_t, std::int64_t>;

std::vector<char> stitches_of(const Grid& drawing, int row) {
  std::vector<char> stitches;
  for (int column = 0; column < drawing.width(); ++column) {
    stitches.push_back(drawing.at(column, row) ? 1 : 0);
  }
  return stitches;
}

void set_row(Grid& drawing, int row, const std::vector<char>& stitches) {
  for (int column = 0; column < drawing.width(); ++column) {
    drawing.set(column, row, stitches[static_cast<std::size_t>(column)] != 0);
  }
}

std::int64_t squares_of_mended(const Grid& drawing, const Grid& mended, int limit) {
  std::int64_t sum = 0;
  for (int row = 0; row < drawing.height(); ++row) {
    sum += needs_mending(drawing, row, limit) ? squares_of(stitches_of(mended, row)) : 0;
  }
  return sum;
}

// The least rank over all choices of cheapest rows; nothing where they are more than can be tried.
std::optional<Rank> best_by_trying(const Grid& drawing, const MendWishes& wishes) {
  std::vector<std::vector<std::vector<char>>> forms;
  std::size_t choices = 1;
  for (int row = 0; row < drawing.height(); ++row) {
    forms.push_back(forms_of_row(drawing, drawing, row, wishes, 1000));
    if (forms.back().empty()) {
      forms.back() = {stitches_of(drawing, row)};
    }
    choices *= forms.back().size();
    if (choices > 3000) {
      return std::nullopt;
    }
  }
  std::optional<Rank> best;
  for (std::size_t choice = 0; choice < choices; ++choice) {
    Grid mended = drawing;
    std::size_t rest = choice;
    for (int row = 0; row < drawing.height(); ++row) {
      const auto& of_row = forms[static_cast<std::size_t>(row)];
      set_row(mended, row, of_row[rest % of_row.size()]);
      rest /= of_row.size();
    }
    const Rank rank{pairs_of_changes(drawing, mended, wishes.stacked), squares_of_mended(drawing, mended, wishes.limit),
                    unlike_by_hand(mended, *wishes.symmetry)};
    best = best ? std::min(*best, rank) : rank;
  }
  return best;
}

} // namespace

TEST_CASE("symmetry last: the best of all choices of cheapest rows, under each frieze group, stacked or not") {
  std::mt19937 random(1213);
  std::map<FriezeGroup, int> tried;
  int better = 0; // than without asking for the symmetry
  int kept = 0;   // whole
  for (int round = 0; round < 800; ++round) {
    const int width = 8 + 2 * static_cast<int>(random() % 4);
    const int height = 1 + static_cast<int>(random() % 6);
    const auto groups = frieze_groups();
    const FriezeGroup group = groups[random() % groups.size()];
    const Grid drawing = nearest_with(random_drawing(random, width, height), group).value().strip;
    MendWishes wishes;
    wishes.limit = 2 + static_cast<int>(random() % 4);
    wishes.stacked = random() % 2 == 0;
    const Mended without = mend(drawing, wishes);
    wishes.symmetry = symmetry_to_keep(drawing);
    if (!wishes.symmetry || without.changed.empty() || !without.unmendable.empty()) {
      continue;
    }
    CAPTURE(round);
    CHECK(unlike_by_hand(drawing, *wishes.symmetry) == 0);
    const auto best = best_by_trying(drawing, wishes);
    if (!best) {
      continue;
    }
    ++tried[wishes.symmetry->group];
    const Mended mended = mend(drawing, wishes);
    CHECK(mended.price == without.price);
    CHECK(mended.unlike == unlike_by_hand(mended.drawing, *wishes.symmetry));
    CHECK(Rank{mended.pairs, mended.squares, mended.unlike} == *best);
    CHECK(mended.squares == squares_of_mended(drawing, mended.drawing, wishes.limit));
    CHECK(mended.proved);
    better += mended.unlike < unlike_by_hand(without.drawing, *wishes.symmetry) ? 1 : 0;
    kept += mended.unlike == 0 ? 1 : 0;
    CHECK(mend(mended.drawing, wishes).drawing == mended.drawing);
  }
  CHECK(tried.size() >= 6);
  for (const auto& [group, count] : tried) {
    CAPTURE(notation_of(group));
    CHECK(count > 10);
  }
  CHECK(better > 50);
  CHECK(kept > 50);
}

TEST_CASE("the choices for one row come in the order of the criteria, the symmetry last") {
  std::mt19937 random(77);
  int told_apart = 0; // rows in which the symmetry alone sets one choice before another
  for (int round = 0; round < 400; ++round) {
    const int width = 8 + 2 * static_cast<int>(random() % 4);
    const int height = 1 + static_cast<int>(random() % 5);
    const auto groups = frieze_groups();
    const Grid drawing =
        nearest_with(random_drawing(random, width, height), groups[random() % groups.size()]).value().strip;
    MendWishes wishes;
    wishes.limit = 2 + static_cast<int>(random() % 4);
    wishes.stacked = random() % 2 == 0;
    wishes.symmetry = symmetry_to_keep(drawing);
    if (!wishes.symmetry) {
      continue;
    }
    const Mended mended = mend(drawing, wishes);
    for (int row = 0; row < height; ++row) {
      std::vector<Rank> ranks;
      for (const auto& form : forms_of_row(drawing, mended.drawing, row, wishes, 200)) {
        Grid other = mended.drawing;
        set_row(other, row, form);
        ranks.emplace_back(pairs_of_changes(drawing, other, wishes.stacked),
                           squares_of_mended(drawing, other, wishes.limit), unlike_by_hand(other, *wishes.symmetry));
      }
      CAPTURE(round);
      CAPTURE(row);
      CHECK(std::ranges::is_sorted(ranks));
      for (std::size_t place = 1; place < ranks.size(); ++place) {
        const auto& [pairs, squares, unlike] = ranks[place];
        const auto& [pairs_before, squares_before, unlike_before] = ranks[place - 1];
        told_apart += pairs == pairs_before && squares == squares_before && unlike > unlike_before ? 1 : 0;
      }
    }
  }
  CHECK(told_apart > 50);
}

TEST_CASE("a float with two middles is caught where its mirror image is") {
  Grid drawing(16, 2);
  drawing.set_row_text(0, "#......##......#");
  drawing.set_row_text(1, "#.#.#.#..#.#.#.#");
  MendWishes wishes;
  wishes.stacked = false;
  wishes.symmetry = symmetry_to_keep(drawing);
  REQUIRE(wishes.symmetry);
  CHECK(wishes.symmetry->group == FriezeGroup::p1m1);
  const Mended mended = mend(drawing, wishes);
  CHECK(mended.changed.size() == 2);
  CHECK(mended.changed[0].column + mended.changed[1].column == 15);
  CHECK(mended.unlike == 0);
  CHECK(mended.proved);
}

TEST_CASE("a drawing without symmetry has none to keep") {
  Grid drawing(8, 2);
  drawing.set_row_text(0, "##.#....");
  drawing.set_row_text(1, "#.......");
  CHECK(!symmetry_to_keep(drawing));
}

TEST_CASE("large drawings: no worse than without, changes as few, and what isn't proved isn't said to be") {
  std::mt19937 random(3);
  for (const FriezeGroup group : frieze_groups()) {
    const Grid drawing = nearest_with(random_drawing(random, 32, 30), group).value().strip;
    MendWishes wishes;
    const Mended without = mend(drawing, wishes);
    wishes.symmetry = symmetry_to_keep(drawing);
    if (!wishes.symmetry) {
      continue;
    }
    CAPTURE(notation_of(group));
    const Mended mended = mend(drawing, wishes);
    CHECK(mended.price == without.price);
    const auto unlike_before = unlike_by_hand(without.drawing, *wishes.symmetry);
    CHECK(Rank{mended.pairs, mended.squares, mended.unlike} <= Rank{without.pairs, without.squares, unlike_before});
    CHECK(mended.unlike == unlike_by_hand(mended.drawing, *wishes.symmetry));
  }
}
