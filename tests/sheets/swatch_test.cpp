// The orientation swatch: whatever a machine really does, the answer to the question sets the profile right.
#include "card_designs.hpp"
#include "rules/findings.hpp"
#include "sheets/card_layout.hpp"
#include "sheets/swatch_answers.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <map>

using namespace punchwright;

namespace {

Profile in_state(Profile profile, int state) {
  profile.card->face = (state & 1) != 0 ? CardFace::as_knit_side : CardFace::as_knitter_sees;
  profile.card->turned = (state & 2) != 0;
  profile.card->hole = (state & 4) != 0 ? HoleMeans::main : HoleMeans::contrast;
  return profile;
}

CardLayout layout_for(const Document& document, const Profile& profile) {
  const auto rows = rows_to_knit(document, profile);
  return {document, profile, rows, card_plan(document, *profile.card, rows).cards.front()};
}

// The cloth's knit side as a machine of state `truth` knits it from the holes of a card that was made for `profile`: it
// finds its own columns and rows on the sheet, wherever the card's maker thought that they were.
Grid knitted(const Document& document, const Profile& profile, const Profile& truth) {
  const CardLayout made = layout_for(document, profile);
  const CardLayout read = layout_for(document, truth);
  Grid cloth(document.grid.width(), document.grid.height());
  for (int row = 1; row <= cloth.height(); ++row) {
    for (int column = 1; column <= made.columns(); ++column) {
      const Point place{read.x_of_column(column), read.y_of_line(read.line_of(row))};
      bool hole = false;
      for (const CardHole& punched : made.holes()) {
        hole = hole || (punched.kind == HoleKind::pattern &&
                        std::hypot(punched.centre.x - place.x, punched.centre.y - place.y) < 0.01);
      }
      const bool contrast = hole == (truth.card->hole == HoleMeans::contrast);
      // Card column 1 selects the leftmost needle; the knit side shows it rightmost.
      cloth.set(cloth.width() - column, row - 1, contrast);
    }
  }
  return cloth;
}

} // namespace

TEST_CASE("the swatch fits the card, has plain borders, and no float is longer than five stitches") {
  for (const int repeat : {8, 10, 12, 16, 24, 30, 40}) {
    CAPTURE(repeat);
    Profile profile = card_machine();
    profile.card->repeat = repeat;
    const Document swatch = swatch_document(profile);
    CHECK(swatch.grid.width() == repeat);
    CHECK(swatch.grid.height() == 20);
    CHECK(swatch.grid.all_main(0));
    CHECK(swatch.grid.all_main(19));
    for (int row = 0; row < swatch.grid.height(); ++row) {
      for (const bool behind : {false, true}) {
        int run = 0;
        int longest = 0;
        for (int step = 0; step < 2 * repeat; ++step) {
          run = swatch.grid.at(step % repeat, row) == behind ? run + 1 : 0;
          longest = std::max(longest, run);
        }
        CHECK((swatch.grid.all_main(row) || longest <= 5)); // stranding: knittingmagic.biz, guide 8
      }
    }
  }
}

TEST_CASE("all eight pictures of the swatch differ") {
  for (const int repeat : {3, 4, 6, 8, 12, 24}) {
    CAPTURE(repeat);
    Profile profile = card_machine();
    profile.card->repeat = repeat;
    const Grid drawn = swatch_document(profile).grid;
    for (int one = 1; one <= 8; ++one) {
      for (int other = one + 1; other <= 8; ++other) {
        // As it tiles: no shift along the row makes them alike.
        const Grid first = swatch_seen(drawn, swatch_answer(one));
        const Grid second = swatch_seen(drawn, swatch_answer(other));
        for (int shift = 0; shift < repeat; ++shift) {
          bool alike = true;
          for (int row = 0; row < drawn.height(); ++row) {
            for (int column = 0; column < repeat; ++column) {
              alike = alike && first.at(column, row) == second.at((column + shift) % repeat, row);
            }
          }
          CHECK_FALSE(alike);
        }
      }
    }
  }
}

TEST_CASE("from every profile and on every machine, the answer leads to the card that knits right") {
  Profile machine = card_machine();
  const Document swatch = swatch_document(machine);
  for (int state = 0; state < 8; ++state) {
    for (int real = 0; real < 8; ++real) {
      CAPTURE(state);
      CAPTURE(real);
      const Profile profile = in_state(machine, state);
      const Profile truth = in_state(machine, real);
      const Grid seen = knitted(swatch, profile, truth);
      int number = 0;
      for (int candidate = 1; candidate <= 8; ++candidate) {
        if (swatch_seen(swatch.grid, swatch_answer(candidate)) == seen) {
          CHECK(number == 0);
          number = candidate;
        }
      }
      REQUIRE(number != 0);
      const Profile after = profile_after_swatch(profile, swatch_answer(number));
      CHECK(knitted(swatch, after, truth) == swatch.grid);
      CHECK(after.card->face == truth.card->face);
      CHECK(after.card->turned == truth.card->turned);
      CHECK(after.card->hole == truth.card->hole);
    }
  }
}

TEST_CASE("the answer's words and its source") {
  CHECK(words_of(swatch_answer(1)) == "as drawn");
  CHECK(words_of(swatch_answer(8)) == "mirrored, upside down, colours changed");
  const Profile after = profile_after_swatch(card_machine(), swatch_answer(2));
  CHECK(after.sources.at("card.face") == "from the orientation swatch");
}

TEST_CASE("swatch and measuring page are written, or refused without a card") {
  const Profile machine = card_machine();
  for (const Paper paper : {Paper::a4, Paper::letter, Paper::roll}) {
    CHECK(swatch_files(machine, paper, "s.pdf").ok());
    CHECK(measure_files(machine, paper, "m.pdf").ok());
  }
  CHECK(measure_files(machine, Paper::a4, "m.svg").ok());
  CHECK_FALSE(swatch_files(machine, Paper::a4, "s.txt").ok());
  Profile by_hand = machine;
  by_hand.card.reset();
  CHECK_FALSE(swatch_files(by_hand, Paper::a4, "s.pdf").ok());
  CHECK_FALSE(measure_files(by_hand, Paper::a4, "m.pdf").ok());
}
