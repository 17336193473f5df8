// Mends that keep the symmetry whole, against trying every drawing that has it.
#include "mending/look.hpp"
#include "mending/symmetric_mend.hpp"
#include "movements.hpp"

#include <doctest/doctest.h>
#include <map>
#include <tuple>

using namespace punchwright;
using test::Place;
using test::random_drawing;
using test::unlike_by_hand;

namespace {

using Rank = std::tuple<std::int64_t, std::int64_t, std::int64_t>; // price, pairs, squares

std::int64_t price_of(const MendWishes& wishes, int width, const Place& place) {
  return wishes.prices.empty() ? 1 : wishes.prices[static_cast<std::size_t>(place.second * width + place.first)];
}

Rank rank_of(const Grid& drawing, const Grid& mended, const MendWishes& wishes) {
  std::int64_t price = 0;
  std::int64_t squares = 0;
  for (int row = 0; row < drawing.height(); ++row) {
    std::vector<char> stitches;
    for (int column = 0; column < drawing.width(); ++column) {
      stitches.push_back(mended.at(column, row) ? 1 : 0);
      price += mended.at(column, row) == drawing.at(column, row) ? 0 : price_of(wishes, drawing.width(), {column, row});
    }
    squares += needs_mending(drawing, row, wishes.limit) ? squares_of(stitches) : 0;
  }
  return {price, pairs_of_changes(drawing, mended, wishes.stacked), squares};
}

// The stitches that are the same by the symmetry, of rows in which a float is too long: the sets that may be changed.
std::vector<std::set<Place>> sets_to_change(const Grid& drawing, const MendWishes& wishes) {
  std::set<std::set<Place>> found;
  for (int row = 0; row < drawing.height(); ++row) {
    for (int column = 0; column < drawing.width(); ++column) {
      const auto alike = test::images({column, row}, *wishes.symmetry, drawing.width());
      // What lies beside the drawing is main, and stays so: its images too.
      const bool free = std::ranges::all_of(alike, [&](const Place& place) {
        return place.second >= 0 && place.second < drawing.height() &&
               price_of(wishes, drawing.width(), place) != never_changed;
      });
      if (needs_mending(drawing, row, wishes.limit) && free) {
        found.insert(alike);
      }
    }
  }
  return {found.begin(), found.end()};
}

bool no_float_too_long(const Grid& drawing, const Grid& mended, int limit) {
  for (int row = 0; row < drawing.height(); ++row) {
    if (needs_mending(mended, row, limit) || mended.mixed(row) != drawing.mixed(row)) {
      return false;
    }
  }
  return true;
}

struct Tried {
  std::optional<Rank> best;
  std::vector<Grid> cheapest;
};

// Every drawing that has the symmetry and differs in those sets only; nothing where they are too many.
std::optional<Tried> every_drawing(const Grid& drawing, const MendWishes& wishes) {
  const auto sets = sets_to_change(drawing, wishes);
  if (sets.size() > 12) {
    return std::nullopt;
  }
  Tried tried;
  for (unsigned choice = 0; choice < (1U << sets.size()); ++choice) {
    Grid mended = drawing;
    for (std::size_t place = 0; place < sets.size(); ++place) {
      for (const auto& [column, row] : sets[place]) {
        if ((choice >> place & 1U) != 0) {
          mended.flip(column, row);
        }
      }
    }
    if (!no_float_too_long(drawing, mended, wishes.limit)) {
      continue;
    }
    const Rank rank = rank_of(drawing, mended, wishes);
    if (!tried.best || std::get<0>(rank) < std::get<0>(*tried.best)) {
      tried.cheapest.clear();
    }
    tried.best = tried.best ? std::min(*tried.best, rank) : rank;
    if (std::get<0>(rank) == std::get<0>(*tried.best)) {
      tried.cheapest.push_back(mended);
    }
  }
  return tried;
}

struct Case {
  Grid drawing;
  MendWishes wishes;
};

// A drawing with a symmetry and a float that is too long; in some cases stitches that stay or have other prices.
std::optional<Case> any_case(std::mt19937& random) {
  const int width = 6 + static_cast<int>(random() % 11);
  const int height = 1 + static_cast<int>(random() % 5);
  const auto groups = frieze_groups();
  const FriezeGroup group = groups[random() % groups.size()];
  if (needs_even_repeat(group) && width % 2 != 0) {
    return std::nullopt;
  }
  Case one{nearest_with(random_drawing(random, width, height), group).value().strip, {}};
  if (group == FriezeGroup::p1 && width % 2 == 0) { // what recurs within the width is a symmetry too
    for (int column = 0; column < width / 2; ++column) {
      for (int row = 0; row < height; ++row) {
        one.drawing.set(column + width / 2, row, one.drawing.at(column, row));
      }
    }
  }
  one.wishes.limit = 1 + static_cast<int>(random() % 4);
  one.wishes.stacked = random() % 2 == 0;
  one.wishes.symmetry = symmetry_to_keep(one.drawing);
  if (random() % 3 == 0) {
    for (int stitch = 0; stitch < width * height; ++stitch) {
      one.wishes.prices.push_back(random() % 8 == 0 ? never_changed : static_cast<std::int32_t>(random() % 4));
    }
  }
  return one.wishes.symmetry ? std::optional(one) : std::nullopt;
}

} // namespace

TEST_CASE("the symmetry kept whole: the fewest changes of all drawings that have it, under each frieze group") {
  std::mt19937 random(4711);
  std::map<FriezeGroup, int> tried;
  int dearer = 0; // than the fewest
  int none = 0;   // keeps it
  int best_looking = 0;
  for (int round = 0; round < 6000; ++round) {
    const auto one = any_case(random);
    if (!one) {
      continue;
    }
    const auto& [drawing, wishes] = *one;
    const Mended fewest = mend(drawing, wishes);
    const auto every = every_drawing(drawing, wishes);
    if (!every || fewest.changed.empty() || !fewest.unmendable.empty()) {
      continue;
    }
    CAPTURE(round);
    const auto mended = mend_symmetrically(drawing, wishes, fewest);
    REQUIRE(mended.has_value() == every->best.has_value());
    if (!mended) {
      ++none;
      continue;
    }
    ++tried[wishes.symmetry->group];
    CHECK(unlike_by_hand(mended->drawing, *wishes.symmetry) == 0);
    CHECK(has_symmetry(mended->drawing, *wishes.symmetry));
    CHECK(no_float_too_long(drawing, mended->drawing, wishes.limit));
    CHECK(Rank{mended->price, mended->pairs, mended->squares} == rank_of(drawing, mended->drawing, wishes));
    CHECK(mended->price == std::get<0>(*every->best));
    if (mended->proved) {
      CHECK(rank_of(drawing, mended->drawing, wishes) == *every->best);
    }
    best_looking += rank_of(drawing, mended->drawing, wishes) == *every->best ? 1 : 0;
    dearer += mended->price > fewest.price ? 1 : 0;
    for (const Cell& cell : mended->changed) {
      CHECK(mended->drawing.at(cell.column, cell.row) != drawing.at(cell.column, cell.row));
    }
  }
  CHECK(tried.size() == 7);
  int all = 0;
  for (const auto& [group, count] : tried) {
    CAPTURE(notation_of(group));
    CHECK(count > 20);
    all += count;
  }
  CHECK(dearer > 50);
  CHECK(none > 20);
  CHECK(best_looking * 20 > all * 19);
}

TEST_CASE("the choices for a row: every cheapest form that keeps the symmetry, with its image, each once") {
  std::mt19937 random(99);
  int several = 0;
  for (int round = 0; round < 3000; ++round) {
    const auto one = any_case(random);
    if (!one) {
      continue;
    }
    const auto& [drawing, wishes] = *one;
    const Mended fewest = mend(drawing, wishes);
    const auto every = every_drawing(drawing, wishes);
    if (!every || !every->best || fewest.changed.empty() || !fewest.unmendable.empty()) {
      continue;
    }
    CAPTURE(round);
    const auto found = mend_symmetrically(drawing, wishes, fewest);
    REQUIRE(found);
    const Mended& mended = *found;
    for (int row = 0; row < drawing.height(); ++row) {
      std::set<std::string> cheapest;
      for (const Grid& other : every->cheapest) {
        cheapest.insert(other.row_text(row));
      }
      const auto forms = symmetric_forms_of_row(drawing, mended.drawing, row, wishes, 1000);
      if (!needs_mending(drawing, row, wishes.limit)) {
        CHECK(forms.empty());
        continue;
      }
      CHECK(forms.size() == cheapest.size());
      several += forms.size() > 1 ? 1 : 0;
      for (const auto& form : forms) {
        Grid other = mended.drawing;
        for (const RowStitches& line : form) {
          for (int column = 0; column < other.width(); ++column) {
            other.set(column, line.row, line.stitches[static_cast<std::size_t>(column)] != 0);
          }
        }
        CHECK(cheapest.contains(other.row_text(row)));
        CHECK(unlike_by_hand(other, *wishes.symmetry) == 0);
      }
    }
  }
  CHECK(several > 50);
}

TEST_CASE("a float across a mirror between two stitches: one catch breaks the symmetry, two keep it") {
  Grid drawing(12, 1);
  drawing.set_row_text(0, "#.#......#.#");
  MendWishes wishes;
  wishes.symmetry = symmetry_to_keep(drawing);
  REQUIRE(wishes.symmetry);
  CHECK(wishes.symmetry->group == FriezeGroup::p2mm); // of one row; as it is a mirror of itself from below too
  const MendOffer offer = offer_mend(drawing, wishes);
  CHECK(offer.fewest.changed.size() == 1);
  CHECK(offer.fewest.unlike > 0);
  REQUIRE(offer.symmetric);
  CHECK(offer.symmetric->changed.size() == 2);
  CHECK(offer.first().drawing == offer.symmetric->drawing);
  CHECK(offer.symmetric->drawing.row_text(0) == "#.#.#..#.#.#");
}

TEST_CASE("where the fewest changes keep the symmetry, nothing else is offered") {
  Grid drawing(13, 1);
  drawing.set_row_text(0, "#.#.......#.#");
  MendWishes wishes;
  wishes.symmetry = symmetry_to_keep(drawing);
  const MendOffer offer = offer_mend(drawing, wishes);
  CHECK(offer.fewest.unlike == 0);
  CHECK_FALSE(offer.symmetric);
}

TEST_CASE("nothing keeps the symmetry where an image must stay, or isn't to be mended") {
  Grid drawing(12, 2);
  drawing.set_row_text(0, "##.##......#");
  drawing.set_row_text(1, "##.##......#");
  MendWishes wishes;
  wishes.symmetry = symmetry_to_keep(drawing);
  REQUIRE(wishes.symmetry);
  CHECK(wishes.symmetry->group == FriezeGroup::p11m);
  const Mended fewest = mend(drawing, wishes);
  REQUIRE(mend_symmetrically(drawing, wishes, fewest));
  MendWishes stays = wishes;
  protect(stays, drawing, Area{{5, 0}, 5, 1}); // the one float can be broken at its end,
  protect(stays, drawing, Area{{6, 1}, 5, 1}); // the other at its beginning
  CHECK(mend(drawing, stays).unmendable.empty());
  CHECK_FALSE(mend_symmetrically(drawing, stays, mend(drawing, stays)));
  MendWishes caught = wishes;
  caught.rows = {1, 0}; // the floats of row 2 are caught by hand
  CHECK_FALSE(mend_symmetrically(drawing, caught, mend(drawing, caught)));
}

TEST_CASE("a row that nothing can mend stays, with its image, and the rest keeps the symmetry") {
  Grid drawing(12, 3);
  drawing.set_row_text(0, "##.#......#.");
  drawing.set_row_text(1, "#.##......#.");
  drawing.set_row_text(2, "##.#......#.");
  MendWishes wishes;
  wishes.symmetry = symmetry_to_keep(drawing);
  REQUIRE(wishes.symmetry);
  protect(wishes, drawing, Area{{0, 0}, 12, 1});
  protect(wishes, drawing, Area{{0, 2}, 12, 1});
  const Mended fewest = mend(drawing, wishes);
  CHECK(fewest.unmendable.size() == 2);
  const auto mended = mend_symmetrically(drawing, wishes, fewest);
  REQUIRE(mended);
  CHECK(mended->unmendable == fewest.unmendable);
  CHECK(mended->changed.size() == 1);
  CHECK(unlike_by_hand(mended->drawing, *wishes.symmetry) == 0);
}
