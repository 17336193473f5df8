// What would fit where nothing does, when searches for it give up: told as not known, never as if nothing did.
#include "pieces/no_fit.hpp"
#include "pieces/size_counts.hpp"
#include "pieces/yokes.hpp"
#include "words/words.hpp"

using namespace punchwright;
using namespace punchwright::test;

TEST_CASE("what would fit says what it does not know where its searches gave up") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.pieces = {{"front", {{40.0}}, {{14.0}}, ""}};
  yoke.depth_cm = {{22.0}};
  yoke.tiers = {{"narrow.repeat", {{2}}}};
  yoke.fit.tolerance = 0.1;
  const OpenedYoke of_file = opened(yoke, files);
  const WouldFit whole = what_would_fit(of_file, 0);
  REQUIRE(whole.tolerance > 0.1);
  CHECK_FALSE(whole.less_not_known);
  int not_known = 0;
  for (int parts = 1; parts < 40; ++parts) {
    const WouldFit would = what_would_fit(of_file, 0, {}, parts);
    CAPTURE(parts);
    CHECK(would.less_not_known == (would.tolerance != whole.tolerance));
    CHECK((would.tolerance == 0 || would.tolerance >= whole.tolerance));
    not_known += would.less_not_known ? 1 : 0;
  }
  CHECK(not_known > 0);
  const WouldFit least = what_would_fit(of_file, 0, {}, 1);
  CHECK(least.costs_most == "which rule costs most is not known, since the search for it gave up");
  CHECK_FALSE(least.costly_tolerance);
  const std::string text = no_fit(of_file, 0, 1).text();
  CAPTURE(text);
  CHECK(text.find("whether it fits with a larger tolerance is not known") != std::string::npos);
}

// From 12 visible stitches 11 can be made at most, one between any two; to 6 they can be decreased at most.
TEST_CASE("the rule that costs most is called what it is, where a piece widens and where it narrows") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.depth_cm = {{22.0}};
  yoke.tiers = {{"narrow.repeat", {{2}}}};
  yoke.fit.seams = YokeSeams::free;
  const auto costs_most = [&](double bottom, double top) {
    yoke.pieces = {{"front", {{bottom}}, {{top}}, ""}};
    return what_would_fit(opened(yoke, files), 0).costs_most;
  };
  CHECK(costs_most(9, 40).starts_with("no increase row making more than one stitch between two costs most"));
  CHECK(costs_most(40, 9).starts_with("no decrease row taking more than one stitch in two costs most"));
}

// 79.9 cm × 1.4 + 2 = 113.9, by a fiftieth less 112: the bed holds them, but with 8 to the repeat the ring closes with
// 106 or 114.
TEST_CASE("where the bed costs most, the piece that is too wide for it is named, and how many in its place would do") {
  const Files files = pullover_files();
  Yoke yoke = of_one_width(79.9, 79.9);
  yoke.tiers = {{"narrow.repeat", {{2}}}};
  yoke.fit.tolerance = 0.02;
  CHECK_FALSE(bed_failure(opened(yoke, files)));
  const std::string most = what_would_fit(opened(yoke, files), 0).costs_most;
  CAPTURE(most);
  CHECK(most.starts_with("the bed of 112 needles costs most, "));
  CHECK(most.ends_with("; piece 'front' would have 114 stitches, 2 pieces in its place would lie on it"));
}

// Half of 157.1 cm is 78.55 × 1.4 + 2 = 112 stitches, as many as the bed has needles; half of 158.5 cm is 113.
TEST_CASE("a part that takes every needle of the bed lies on it") {
  const Files files = pullover_files();
  const auto parts = [&](double width) {
    Yoke yoke = of_one_width(width, width);
    yoke.tiers = {{"narrow.repeat", {{2}}}};
    const OpenedYoke wide = opened(yoke, files);
    REQUIRE(wide.profile.needles == 112);
    return parts_on_bed(wide, 0, 0);
  };
  CHECK(parts(157.1) == 2);
  CHECK(parts(158.5) == 3);
}

TEST_CASE("the tolerance that costs most has the language's decimal sign") {
  const Files files = pullover_files();
  Yoke yoke = of_one_width(25.0, 12.3);
  yoke.pieces.push_back({"back", {}, {}, "front"});
  yoke.fit.seams = YokeSeams::free;
  yoke.fit.tolerance = 0.01;
  const OpenedYoke narrow = opened(yoke, files);
  choose_language(language_of("de"), {}); // its decimal sign alone
  const std::string most = what_would_fit(narrow, 0).costs_most;
  choose_language(language_of("en"), {});
  CAPTURE(most);
  CHECK(most == "the tolerance of 0,01 costs most");
}

TEST_CASE("figures in a refusal have one decimal sign, that of the language, but for what is typed into the file") {
  const Files files = pullover_files();
  Yoke yoke = of_one_width(31.0, 16.0);
  yoke.pieces.push_back({"back", {}, {}, "front"});
  yoke.fit.tolerance = 0.02;
  const OpenedYoke narrow = opened(yoke, files);
  choose_language(language_of("de"), {}); // its decimal sign alone
  const std::string text = no_fit(narrow, 0).text();
  choose_language(language_of("en"), {});
  CAPTURE(text);
  CHECK(text.find("it fits with tolerance = 0.102, or ") != std::string::npos);
  CHECK(text.ends_with("front 33,6 cm at the bottom instead of 31 cm, front 15,5 cm at the top instead of 16 cm"));
  const std::string before = "costs most, ";
  const auto from = text.find(before);
  REQUIRE(from != std::string::npos);
  const std::string figure = text.substr(from + before.size(), text.find(" squared stitches") - from - before.size());
  CAPTURE(figure);
  REQUIRE(figure.size() >= 3);
  CHECK(figure.find_first_not_of("0123456789,") == std::string::npos);
  CHECK(figure.find(',') == figure.size() - 2); // one figure behind the sign of the language, and one sign
}
