// All checks but the floats: what each says, when it is silent, and in which order findings stand.
#include "rules/findings.hpp"
#include "rules/found.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>

using namespace punchwright;
using test::drawn;
using test::of_kind;
using test::only_words;

TEST_SUITE("repeat width") {
  TEST_CASE("on a card machine it must divide the card's; the remedy names the nearest that do") {
    const Words words = only_words(FindingId::repeat_width, blank_document(10, 1), test::card_machine());
    CHECK(
        words.text ==
        "the repeat is 10 stitches wide, which does not divide the card's 24: a card holds 1, 2, 3, 4, 6, 8, 12 or 24");
    CHECK(words.remedy ==
          "make it 8 or 12 stitches wide, or choose a bed whose needles are selected by hand, which has no such limit");
    CHECK(only_words(FindingId::repeat_width, blank_document(30, 1), test::card_machine()).remedy ==
          "make it 24 stitches wide, or choose a bed whose needles are selected by hand, which has no such limit");
  }

  TEST_CASE("a fault for every other width, silent by hand") {
    for (int width = 1; width <= 200; ++width) {
      CAPTURE(width);
      const bool fits = 24 % width == 0;
      const auto found = of_kind(FindingId::repeat_width, blank_document(width, 1), test::card_machine());
      CHECK(found.empty() == fits);
      CHECK((fits || found.front().severity == Severity::fault));
      CHECK(of_kind(FindingId::repeat_width, blank_document(width, 1), test::by_hand()).empty());
    }
  }
}

TEST_SUITE("single-colour rows") {
  TEST_CASE("all main: the feeder is emptied and the end needles pushed back, where the carriage selects beforehand") {
    const Document document = drawn({"#.", "..", "#."});
    const auto found = of_kind(FindingId::row_all_main, document, test::card_machine());
    REQUIRE(found.size() == 1);
    CHECK(found[0].row == 1);
    CHECK(found[0].severity == Severity::note);
    const Words words = words_of(found[0], document, test::card_machine());
    CHECK(words.text == "row 2 is knitted in Oat alone");
    CHECK(words.remedy == "before it, take Ink out of the feeder if it is in and push the selected end needles back: a "
                          "selected needle whose feeder is empty drops its stitch");
    CHECK(words_of(found[0], document, test::by_hand()).remedy ==
          "before it, take Ink out of the feeder if it is in and bring no needle forward");
  }

  TEST_CASE("all contrast: main is taken out, or it lies loose across the whole piece") {
    const Document document = drawn({"##", "#."});
    const Words words = only_words(FindingId::row_all_contrast, document, test::card_machine());
    CHECK(words.text ==
          "row 2 is knitted in Ink alone: every needle is selected, and Oat would lie loose across the whole piece");
    CHECK(
        words.remedy ==
        "take Oat out of the feeder before it and put it back after it; after an odd number of such rows Oat hangs at "
        "the other edge: cut it and rejoin it");
  }
}

TEST_SUITE("yarn on the other side") {
  TEST_CASE("a contrast wanted again after an odd number of rows without it hangs at the far edge") {
    const Document document = drawn({"#.", "..", "#."});
    const Words words = only_words(FindingId::yarn_on_other_side, document, test::by_hand());
    CHECK(words.text == "Ink is wanted again in row 3 after 1 row without it, and hangs at the other edge then");
    CHECK(words.remedy == "cut it and rejoin it at the side of the carriage, or make the rows between even in number");
    CHECK(of_kind(FindingId::yarn_on_other_side, drawn({"#.", "..", "..", "#."}), test::by_hand()).empty());
    CHECK(of_kind(FindingId::yarn_on_other_side, drawn({"#.", "..", "..", "..", "#."}), test::by_hand()).size() == 1);
    CHECK(of_kind(FindingId::yarn_on_other_side, drawn({"#.", "#."}), test::by_hand()).empty());
  }

  TEST_CASE("inserted rows count, and so do rows in another contrast") {
    Document document = drawn({"#.", "#.", "#."});
    document.yarns = test::five_yarns();
    document.bands = {Band{1, 'A', 'B', {}}, Band{1, 'A', 'C', {}}, Band{1, 'A', 'B', {}}};
    const auto found =
        of_kind(FindingId::yarn_on_other_side, document, test::by_hand()); // 1 + 2 + 3: three rows without B
    REQUIRE(found.size() == 1);
    CHECK(found[0].gap == 3);
    CHECK(found[0].yarn == 'B');
    document.rules.plain_rows = 2; // 1 + + 2 + + 3: five
    CHECK(of_kind(FindingId::yarn_on_other_side, document, test::by_hand()).front().gap == 5);
  }

  TEST_CASE("said once for a drawn row, however often it is knitted") {
    Document document = drawn({"..", "#."});
    document.piece.times = 5;
    const auto found = of_kind(FindingId::yarn_on_other_side, document, test::by_hand());
    REQUIRE(found.size() == 1);
    CHECK(found[0].times == 4);
  }

  TEST_CASE("a yarn that knitted as main in between was never away") {
    Document document = drawn({"#.", "..", "#."});
    document.bands = {Band{1, 'A', 'B', {}}, Band{1, 'B', std::nullopt, {}}, Band{1, 'A', 'B', {}}};
    CHECK(of_kind(FindingId::yarn_on_other_side, document, test::by_hand()).empty());
  }
}

TEST_SUITE("card") {
  // At least 36 punched rows for a loop, 60 rows on a blank (alessandrina.com, 2015-09-03, on punch cards).
  TEST_CASE("too short for a joined loop: how often it must be repeated") {
    Document document = blank_document(24, 10);
    CHECK(of_kind(FindingId::card_too_short_for_loop, document, test::card_machine()).empty());
    document.card.loop = true;
    const Words words = only_words(FindingId::card_too_short_for_loop, document, test::card_machine());
    CHECK(words.text == "one circuit is 10 rows, and a joined loop needs 36");
    CHECK(words.remedy == "the card repeats it 4 times: 40 rows");
    CHECK(of_kind(FindingId::card_too_short_for_loop, document, test::by_hand()).empty());
    document = blank_document(24, 36);
    document.card.loop = true;
    CHECK(of_kind(FindingId::card_too_short_for_loop, document, test::card_machine()).empty());
  }

  TEST_CASE("longer than a blank: how many cards, and where they join") {
    CHECK(of_kind(FindingId::card_longer_than_blank, blank_document(24, 60), test::card_machine()).empty());
    const Words words = only_words(FindingId::card_longer_than_blank, blank_document(24, 130), test::card_machine());
    CHECK(words.text == "the card has 130 rows, a blank has 60");
    CHECK(words.remedy == "punch 3 cards and join them after every 60 rows");
  }
}

TEST_SUITE("yarns") {
  // WCAG 2.1, contrast ratio; figures of the Okabe-Ito colours on white as in platform measurements.
  TEST_CASE("contrast ratio") {
    const Colour white{255, 255, 255};
    CHECK(contrast_ratio(white, Colour{0, 0, 0}) == doctest::Approx(21.0));
    CHECK(contrast_ratio(white, white) == doctest::Approx(1.0));
    CHECK(contrast_ratio(white, Colour{0, 114, 178}) == doctest::Approx(5.19).epsilon(0.002)); // blue
    CHECK(contrast_ratio(white, Colour{213, 94, 0}) == doctest::Approx(3.87).epsilon(0.002));  // vermillion
    CHECK(contrast_ratio(white, Colour{0, 158, 115}) == doctest::Approx(3.42).epsilon(0.002)); // green
    CHECK(contrast_ratio(Colour{230, 159, 0}, Colour{86, 180, 233}) == doctest::Approx(1.02).epsilon(0.01));
  }

  TEST_CASE("a pair below 2 to 1 is warned of once, however many bands have it") {
    Document document = blank_document(2, 2);
    document.yarns[1].colour = document.yarns[0].colour;
    document.bands = {Band{1, 'A', 'B', {}}, Band{1, 'A', 'B', {}}};
    CHECK(only_words(FindingId::yarns_too_alike, document, test::by_hand()).text ==
          "Ink on Oat (rows 1 to 2): contrast ratio 1.00 to 1, the pattern will hardly show");
    CHECK(of_kind(FindingId::yarns_too_alike, blank_document(2, 2), test::by_hand()).empty());
  }

  TEST_CASE("a pair that is too alike has the lowest of its rows, and names all of them") {
    Document document = blank_document(2, 7);
    document.yarns.push_back(Yarn{'C', "Foam", document.yarns[0].colour});
    document.bands = {Band{1, 'A', 'B', {}}, Band{2, 'A', 'C', {}}, Band{3, 'A', {}, {}}, Band{1, 'A', 'C', {}}};
    const auto found = of_kind(FindingId::yarns_too_alike, document, test::by_hand());
    REQUIRE(found.size() == 1);
    CHECK(found[0].row == 1);
    CHECK(rows_of_pair(document, 'A', 'C') == std::vector{RowRange{1, 2}, RowRange{6, 6}});
    CHECK(only_words(FindingId::yarns_too_alike, document, test::by_hand()).text ==
          "Foam on Oat (rows 2 to 3, row 7): contrast ratio 1.00 to 1, the pattern will hardly show");
  }
}

TEST_SUITE("order") {
  TEST_CASE("faults, then warnings, then notes, each from the bottom row upwards") {
    Document document = drawn({"#.........", "..........", "#........."});
    document.yarns[1].colour = document.yarns[0].colour;
    const auto found = check(document, test::card_machine());
    CHECK(std::ranges::is_sorted(found, [](const Finding& one, const Finding& another) {
      return std::pair(one.severity, one.row) < std::pair(another.severity, another.row);
    }));
    CHECK(found.front().id == FindingId::repeat_width);
    CHECK(found.back().severity == Severity::note);
  }

  TEST_CASE("every kind has an id and a heading of its own") {
    std::vector<std::string> ids;
    std::set<std::string_view> titles;
    for (int kind = 0; kind <= static_cast<int>(FindingId::unknown_key); ++kind) {
      ids.emplace_back(stable_id(static_cast<FindingId>(kind)));
      titles.insert(title_of(static_cast<FindingId>(kind)));
    }
    CHECK(ids == std::vector<std::string>{"repeat-width", "float-too-long", "float-accepted", "catch-not-needed",
                                          "row-all-main", "row-all-contrast", "yarn-on-other-side",
                                          "yarn-loose-on-piece", "card-too-short-for-loop", "card-longer-than-blank",
                                          "piece-wider-than-bed", "piece-off-bed", "too-many-rows", "repeat-on-needles",
                                          "repeat-cut-at-edges", "yarns-too-alike", "loop-change-undone", "card-held",
                                          "unknown-key"});
    CHECK(titles.size() == ids.size());
  }
}

TEST_CASE("lengths are said in inches where they are wished") {
  const Document document = drawn({"#..........#............"});
  const std::vector<Finding> found = check(document, test::card_machine());
  const auto too_long = std::ranges::find(found, FindingId::float_too_long, &Finding::id);
  REQUIRE(too_long != found.end());
  CHECK(words_of(*too_long, document, test::card_machine()).text.find(" mm") != std::string::npos);
  const std::string text = words_of(*too_long, document, test::card_machine(), LengthUnit::inches).text;
  CHECK(text.find(" in)") != std::string::npos);
  CHECK(text.find(" mm") == std::string::npos);
}
