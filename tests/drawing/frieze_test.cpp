// The seven frieze groups: by hand, against brute force on small strips, as properties of any strip, and counted.
#include "drawing/frieze.hpp"
#include "strip_counts.hpp"
#include "support/builders.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <doctest/doctest.h>
#include <map>
#include <numeric>
#include <tuple>

using namespace punchwright;
using test::counts_of_strips;
using test::Dice;
using test::drawn;
using test::strip_of;
using test::StripCounts;

namespace {

Grid strip_of(const std::vector<std::string>& lines) {
  return drawn(lines).grid;
}

Grid any_strip(Dice& dice, int width, int height) {
  Grid strip(width, height);
  for (int row = 0; row < height; ++row) {
    for (int column = 0; column < width; ++column) {
      strip.set(column, row, dice.heads());
    }
  }
  return strip;
}

// By the definitions alone: does the endless strip fall on itself when column c goes to sign * c + across and row r
// to r, or to up - r?
bool falls_on_itself(const Grid& strip, int sign, int across, bool over, int up) {
  const int width = strip.width();
  const auto at = [&](int column, int row) {
    return row >= 0 && row < strip.height() && strip.at(((column % width) + width) % width, row);
  };
  for (int row = -2 * strip.height(); row < 3 * strip.height(); ++row) {
    for (int column = 0; column < width; ++column) {
      if (at(column, row) != at(sign * column + across, over ? up - row : row)) {
        return false;
      }
    }
  }
  return true;
}

struct Symmetries {
  int repeat = 0;
  bool upright = false;
  bool level = false;
  bool half_turn = false;
  bool glide = false; // by less than the repeat
};

Symmetries symmetries_of(const Grid& strip) {
  Symmetries found;
  const int width = strip.width();
  for (found.repeat = 1; !falls_on_itself(strip, 1, found.repeat, false, 0); ++found.repeat) {
  }
  for (int across = 0; across < width; ++across) {
    found.upright = found.upright || falls_on_itself(strip, -1, across, false, 0);
    for (int up = 0; up <= 2 * (strip.height() - 1); ++up) {
      found.half_turn = found.half_turn || falls_on_itself(strip, -1, across, true, up);
      if (falls_on_itself(strip, 1, across, true, up)) {
        (across % found.repeat == 0 ? found.level : found.glide) = true;
      }
    }
  }
  return found;
}

FriezeGroup group_of(const Symmetries& found) {
  if (found.upright) {
    return found.level ? FriezeGroup::p2mm : found.glide ? FriezeGroup::p2mg : FriezeGroup::p1m1;
  }
  return found.level       ? FriezeGroup::p11m
         : found.glide     ? FriezeGroup::p11g
         : found.half_turn ? FriezeGroup::p2
                           : FriezeGroup::p1;
}

// Has the strip, with some repeat that divides its width, the group's movements, by brute force?
bool has_group(const Grid& strip, FriezeGroup group) {
  const int width = strip.width();
  const auto any_up = [&](auto&& holds) {
    for (int up = 0; up <= 2 * (strip.height() - 1); ++up) {
      if (holds(up)) {
        return true;
      }
    }
    return false;
  };
  const auto mirrors = [&] {
    for (int across = 0; across < width; ++across) {
      if (falls_on_itself(strip, -1, across, false, 0)) {
        return true;
      }
    }
    return false;
  };
  const auto glides = [&](int up) {
    for (int step = 1; 2 * step <= width; ++step) {
      if (width % (2 * step) == 0 && falls_on_itself(strip, 1, step, true, up)) {
        return true;
      }
    }
    return false;
  };
  switch (group) {
  case FriezeGroup::p1: return true;
  case FriezeGroup::p1m1: return mirrors();
  case FriezeGroup::p11m: return any_up([&](int up) { return falls_on_itself(strip, 1, 0, true, up); });
  case FriezeGroup::p2mm: return mirrors() && has_group(strip, FriezeGroup::p11m);
  case FriezeGroup::p11g: return any_up(glides);
  case FriezeGroup::p2mg: return mirrors() && any_up(glides);
  case FriezeGroup::p2:
    return any_up([&](int up) {
      for (int across = 0; across < width; ++across) {
        if (falls_on_itself(strip, -1, across, true, up)) {
          return true;
        }
      }
      return false;
    });
  }
  return false;
}

Frieze any_frieze(Dice& dice, int width, int height) {
  const FriezeGroup group = frieze_groups()[static_cast<std::size_t>(dice.throw_one(7))];
  std::vector<int> repeats;
  for (int repeat = 1; repeat <= width; ++repeat) {
    if (width % repeat == 0 && !(needs_even_repeat(group) && repeat % 2 != 0)) {
      repeats.push_back(repeat);
    }
  }
  if (repeats.empty()) {
    return {FriezeGroup::p1, width, 0, 0};
  }
  const int repeat = repeats[static_cast<std::size_t>(dice.throw_one(static_cast<int>(repeats.size())))];
  return {group, repeat, uses_upright_axis(group) ? dice.throw_one(repeat) : 0,
          uses_level_axis(group) ? dice.throw_one(2 * height - 1) : 0};
}

std::int64_t power(std::int64_t base, int exponent) {
  return exponent == 0 ? 1 : base * power(base, exponent - 1);
}

// How many of 1 to `number` have no divisor in common with it: Euler's totient.
int totient(int number) {
  int count = 0;
  for (int one = 1; one <= number; ++one) {
    count += std::gcd(one, number) == 1 ? 1 : 0;
  }
  return count;
}

// Necklaces of n beads in k colours: Burnside's lemma for the n turns, (1/n) Σ φ(d) k^(n/d) over the divisors d of n
// (P. A. MacMahon, 1892; R. L. Graham, D. E. Knuth, O. Patashnik, Concrete Mathematics, 2nd edition, section 4.9).
std::int64_t necklaces(int beads, std::int64_t colours) {
  std::int64_t sum = 0;
  for (int divisor = 1; divisor <= beads; ++divisor) {
    sum += beads % divisor == 0 ? totient(divisor) * power(colours, beads / divisor) : 0;
  }
  return sum / beads;
}

// Of them those that are their own mirror image, by the same lemma for the n mirrors: of an odd number of beads each
// goes through one bead and leaves (n - 1)/2 pairs; of an even number half of them go through two beads, half between
// beads (cycle index of the dihedral group: F. Harary, E. M. Palmer, Graphical Enumeration, 1973, section 2.2).
std::int64_t own_mirror_images(int beads, std::int64_t colours) {
  return beads % 2 != 0 ? power(colours, (beads + 1) / 2) : (colours + 1) * power(colours, beads / 2) / 2;
}

// Necklaces that may be turned over: of each pair of mirror images one.
std::int64_t bracelets(int beads, std::int64_t colours) {
  return (necklaces(beads, colours) + own_mirror_images(beads, colours)) / 2;
}

// Necklaces that fall on themselves after all beads only: without those that recur sooner.
std::int64_t recurring_no_sooner(int beads, std::int64_t colours) {
  std::int64_t count = necklaces(beads, colours);
  for (int divisor = 1; divisor < beads; ++divisor) {
    count -= beads % divisor == 0 ? recurring_no_sooner(divisor, colours) : 0;
  }
  return count;
}

} // namespace

TEST_SUITE("frieze groups by hand") {
  TEST_CASE("one of each, with its axes") {
    CHECK(classify(strip_of({"##..", "#..."})) == Frieze{FriezeGroup::p1, 4, 0, 0});
    CHECK(classify(strip_of({"##..", "..##"})) == Frieze{FriezeGroup::p2mg, 4, 1, 1});
    CHECK(classify(strip_of({"###...", "#.....", "...#..", "...###"})) == Frieze{FriezeGroup::p11g, 6, 0, 3});
    CHECK(classify(strip_of({"#.#.", "###."})) == Frieze{FriezeGroup::p1m1, 4, 2, 0});
    CHECK(classify(strip_of({"##.#..", "#..#..", "##.#.."})) == Frieze{FriezeGroup::p11m, 6, 0, 2});
    CHECK(classify(strip_of({"##...", "..#..", "...##"})).group == FriezeGroup::p2);
    CHECK(classify(strip_of({".#..", "###.", ".#.."})) == Frieze{FriezeGroup::p2mm, 4, 2, 2});
  }

  TEST_CASE("the smallest repeat counts, and one yarn alone has everything") {
    CHECK(classify(strip_of({"#.#.#.", "######"})).repeat == 2);
    CHECK(classify(Grid(6, 4)) == Frieze{FriezeGroup::p2mm, 1, 0, 3});
    CHECK(classify(strip_of({"....", "####", "....", "...."})) == Frieze{FriezeGroup::p2mm, 1, 0, 4});
  }

  TEST_CASE("an orbit goes round the edge; axes lie through stitches and between them") {
    CHECK(orbit_of({0, 0}, {FriezeGroup::p1m1, 6, 1, 0}, 6) == std::vector<Cell>{{0, 0}, {1, 0}});
    CHECK(orbit_of({1, 0}, {FriezeGroup::p1m1, 6, 2, 0}, 6) == std::vector<Cell>{{1, 0}});
    CHECK(orbit_of({0, 0}, {FriezeGroup::p2mm, 3, 1, 3}, 6) ==
          std::vector<Cell>{{0, 0}, {0, 3}, {1, 0}, {1, 3}, {3, 0}, {3, 3}, {4, 0}, {4, 3}});
    CHECK(orbit_of({5, 0}, {FriezeGroup::p11g, 6, 0, 2}, 6) == std::vector<Cell>{{2, 2}, {5, 0}});
    CHECK(orbit_of({0, 0}, {FriezeGroup::p2mg, 8, 1, 1}, 8) == std::vector<Cell>{{0, 0}, {1, 0}, {4, 1}, {5, 1}});
    CHECK(orbit_of({0, 2}, {FriezeGroup::p11m, 4, 0, 1}, 4) == std::vector<Cell>{{0, -1}, {0, 2}});
  }

  TEST_CASE("a stroke that would leave the strip has no partner") {
    const std::vector<Cell> stroke{{0, 0}, {0, 3}, {0, 9}};
    const auto whole = complete_stroke(stroke, {FriezeGroup::p11m, 4, 0, 2}, 4, 4);
    CHECK(whole.cells == std::vector<Cell>{{0, 0}, {0, 2}});
    CHECK(whole.without_partner == std::vector<Cell>{{0, 3}, {0, 9}});
  }

  TEST_CASE("the nearest drawing: majority in each orbit, ties to main") {
    const auto near = nearest_with(strip_of({"#..#", "##.#", "..##"}), {FriezeGroup::p1m1, 4, 3, 0});
    CHECK(near->strip == strip_of({"#..#", "#..#", "...."}));
    CHECK(near->changed_stitches == 3);
    const auto found = nearest_with(strip_of({"##..", "###.", "...."}), FriezeGroup::p11m);
    CHECK(found->strip == strip_of({"##..", "##..", "...."}));
    CHECK(found->frieze.level == 3);
    CHECK(found->changed_stitches == 1);
  }

  TEST_CASE("half a repeat must be whole stitches") {
    CHECK(nearest_with(Grid(7, 3), FriezeGroup::p11g).error().text() ==
          "p11g needs a repeat of an even number of stitches, and this one has 7: half a repeat on, a stitch would lie "
          "between two columns; make the drawing one stitch wider or narrower, or choose another symmetry");
    CHECK(unusable_frieze({FriezeGroup::p2mg, 3, 0, 0}, 6, 2)->message.starts_with("p2mg needs a repeat of an even"));
    CHECK(unusable_frieze({FriezeGroup::p1, 4, 0, 0}, 6, 2)->message ==
          "a repeat of 4 stitches doesn't divide the 6 of the drawing");
    CHECK(unusable_frieze({FriezeGroup::p2mm, 3, 3, 0}, 6, 2)->message == "an axis lies outside the drawing");
    CHECK(unusable_frieze({FriezeGroup::p2mm, 3, 2, 3}, 6, 2)->message == "an axis lies outside the drawing");
    CHECK_FALSE(unusable_frieze({FriezeGroup::p2mm, 3, 2, 2}, 6, 2));
  }
}

TEST_SUITE("frieze groups against brute force") {
  TEST_CASE("every strip of these sizes is classified by what it falls on") {
    std::map<FriezeGroup, int> seen;
    for (const auto& [width, height] :
         std::vector<std::pair<int, int>>{{1, 6}, {2, 5}, {3, 4}, {4, 3}, {5, 2}, {6, 2}, {11, 1}}) {
      for (unsigned bits = 0; bits < (1U << (width * height)); ++bits) {
        const Grid strip = strip_of(bits, width, height);
        const Symmetries expected = symmetries_of(strip);
        const Frieze found = classify(strip);
        REQUIRE(found.group == group_of(expected));
        REQUIRE(found.repeat == expected.repeat);
        REQUIRE(has_symmetry(strip, found));
        ++seen[found.group];
      }
    }
    CHECK(seen.size() == 7);
  }

  TEST_CASE("no drawing with the group is nearer than the nearest") {
    for (const auto& [width, height] :
         std::vector<std::pair<int, int>>{{4, 2}, {3, 3}, {5, 2}, {2, 4}, {8, 1}, {6, 2}}) {
      for (const FriezeGroup group : frieze_groups()) {
        if (needs_even_repeat(group) && width % 2 != 0) {
          continue;
        }
        std::vector<unsigned> with_group;
        for (unsigned bits = 0; bits < (1U << (width * height)); ++bits) {
          if (has_group(strip_of(bits, width, height), group)) {
            with_group.push_back(bits);
          }
        }
        for (unsigned bits = 0; bits < (1U << (width * height)); bits += width == 6 ? 7 : 1) {
          int fewest = width * height;
          for (const unsigned other : with_group) {
            fewest = std::min(fewest, std::popcount(bits ^ other));
          }
          const auto near = nearest_with(strip_of(bits, width, height), group);
          REQUIRE(near.ok());
          REQUIRE(near->changed_stitches == fewest);
          REQUIRE(has_symmetry(near->strip, near->frieze));
        }
      }
    }
  }
}

TEST_SUITE("frieze groups, properties of any strip") {
  TEST_CASE("a completed stroke, completed again, is the same; a drawing made of completed strokes has the group") {
    for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
      Dice dice(seed);
      CAPTURE(seed);
      const int width = 1 + dice.throw_one(24);
      const int height = 1 + dice.throw_one(12);
      const Frieze frieze = any_frieze(dice, width, height);
      REQUIRE_FALSE(unusable_frieze(frieze, width, height));
      Grid strip(width, height);
      for (int count = 0; count < 3; ++count) {
        std::vector<Cell> stroke;
        for (int cell = dice.throw_one(9); cell >= 0; --cell) {
          stroke.push_back({dice.throw_one(width), dice.throw_one(height)});
        }
        const auto whole = complete_stroke(stroke, frieze, width, height);
        const auto again = complete_stroke(whole.cells, frieze, width, height);
        REQUIRE(again.cells == whole.cells);
        REQUIRE(again.without_partner.empty());
        for (const Cell cell : stroke) {
          REQUIRE(std::ranges::binary_search(whole.cells, cell) !=
                  std::ranges::binary_search(whole.without_partner, cell));
        }
        const bool contrast = count != 1;
        for (const Cell cell : whole.cells) {
          strip.set(cell.column, cell.row, contrast);
        }
        REQUIRE(has_symmetry(strip, frieze));
      }
    }
  }

  TEST_CASE("made so, it has the group; made so again, nothing changes") {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
      Dice dice(seed);
      CAPTURE(seed);
      const int width = 1 + dice.throw_one(24);
      const int height = 1 + dice.throw_one(12);
      const Grid strip = any_strip(dice, width, height);
      const Frieze given = any_frieze(dice, width, height);
      const auto near = nearest_with(strip, given);
      REQUIRE(near.ok());
      REQUIRE(has_symmetry(near->strip, given));
      REQUIRE(nearest_with(near->strip, given)->changed_stitches == 0);
      const auto best = nearest_with(strip, given.group);
      REQUIRE(best.ok());
      REQUIRE(has_symmetry(best->strip, best->frieze));
      REQUIRE(best->changed_stitches <= near->changed_stitches);
      REQUIRE(nearest_with(best->strip, given.group)->strip == best->strip);
    }
  }
}

// The formulas above; sympy counts the same strips in against_sympy_test.py.
TEST_SUITE("frieze groups counted") {
  // The On-Line Encyclopedia of Integer Sequences has them as A000031 (necklaces) and A000029 (bracelets); terms 1 to
  // 12 from memory.
  TEST_CASE("the formulas: beads of two colours") {
    for (const auto& [beads, turned, turned_over] : {std::tuple{1, 2, 2},
                                                     {2, 3, 3},
                                                     {3, 4, 4},
                                                     {4, 6, 6},
                                                     {5, 8, 8},
                                                     {6, 14, 13},
                                                     {7, 20, 18},
                                                     {8, 36, 30},
                                                     {9, 60, 46},
                                                     {10, 108, 78},
                                                     {11, 188, 126},
                                                     {12, 352, 224}}) {
      CAPTURE(beads);
      CHECK(necklaces(beads, 2) == turned);
      CHECK(bracelets(beads, 2) == turned_over);
    }
  }

  // Strips of one row, but for shifts. Of one row, a strip with an upright mirror has all symmetries.
  TEST_CASE("one row: necklaces and bracelets of two colours, and what recurs no sooner") {
    for (int width = 1; width <= 12; ++width) {
      CAPTURE(width);
      const StripCounts counts = counts_of_strips(width, 1);
      CHECK(counts.strips == necklaces(width, 2));
      CHECK(counts.mirrored == own_mirror_images(width, 2));
      CHECK((counts.strips + counts.mirrored) / 2 == bracelets(width, 2));
      CHECK(counts.whole == recurring_no_sooner(width, 2));
    }
  }

  // Two rows: each column is one of four. With a level mirror both rows are alike: those of one row. With a glide by
  // half of the stitches the upper row follows from the lower one: again those of one row, of as many beads.
  TEST_CASE("two rows: necklaces and bracelets of four colours; mirrors and glides those of one row") {
    for (int width = 1; width <= 7; ++width) {
      CAPTURE(width);
      const StripCounts counts = counts_of_strips(width, 2);
      CHECK(counts.strips == necklaces(width, 4));
      CHECK((counts.strips + counts.mirrored) / 2 == bracelets(width, 4));
      CHECK(counts.whole == recurring_no_sooner(width, 4));
      CHECK(counts.level == necklaces(width, 2));
      CHECK(counts.gliding == (width % 2 == 0 ? necklaces(width, 2) : 0));
    }
  }

  TEST_CASE("three rows: necklaces and bracelets of eight colours") {
    for (int width = 1; width <= 4; ++width) {
      CAPTURE(width);
      const StripCounts counts = counts_of_strips(width, 3);
      CHECK(counts.strips == necklaces(width, 8));
      CHECK((counts.strips + counts.mirrored) / 2 == bracelets(width, 8));
    }
  }
}
