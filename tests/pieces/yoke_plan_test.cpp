// A whole yoke: stitches balance from tier to tier, seams meet, rows and yarn are told, and what does not fit is
// refused with what would.
#include "design/wrap.hpp"
#include "pieces/yokes.hpp"

#include <algorithm>
#include <cmath>

using namespace punchwright;
using namespace punchwright::test;

TEST_CASE("stitches balance, equal pieces are equal, the ring closes") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const YokePlan plan = planned(yoke);
  REQUIRE(plan.sizes.size() == 3);
  for (const SizePlan& size : plan.sizes) {
    CAPTURE(size.size);
    CHECK(size.proof.squares == doctest::Approx(size.proof.bound));
    for (std::size_t tier = 0; tier < 3; ++tier) {
      int visible = 0;
      for (const PieceOfSize& piece : size.pieces) {
        const TierOfPiece& there = piece.tiers[tier];
        visible += there.stitches - 2;
        CHECK(there.shaping.before == there.stitches);
        CHECK(there.stitches - there.shaping.decreases() + there.shaping.increases() == there.shaping.after);
        CHECK(std::fabs(there.stitches - there.ideal) <= 0.06 * there.ideal + 1e-9);
        CHECK(there.last_after.position - there.first_after.position + 1 == there.shaping.after);
        if (tier + 1 < 3) {
          CHECK(there.shaping.after == piece.tiers[tier + 1].stitches);
          CHECK(there.first_after == piece.tiers[tier + 1].bed.first);
        }
      }
      CHECK(visible % yoke.tiers[tier].document.grid.width() == 0);
      CHECK(std::ranges::all_of(size.seams[tier].seams, [](const SeamMeeting& seam) { return seam.meets; }));
      CHECK(size.pieces[0].tiers[tier].stitches == size.pieces[2].tiers[tier].stitches);
      CHECK(size.pieces[1].tiers[tier].stitches == size.pieces[3].tiers[tier].stitches);
    }
  }
}

TEST_CASE("the straight cone") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  // Tiers of 11, 9 and 7 rows with 4, 4 and 2 plain rows: 15 + 13 + 9 = 37 rows.
  CHECK(tier_heights(yoke, 0) == std::vector<int>{0, 15, 28, 37});
  const std::vector<double> ideals = ideal_counts(yoke, 0, 0);
  CHECK(ideals[0] == doctest::Approx(48 * 1.4 + 2));
  CHECK(ideals[1] == doctest::Approx((48 - 26 * 15.0 / 37) * 1.4 + 2));
  CHECK(ideals[3] == doctest::Approx(22 * 1.4 + 2));
}

TEST_CASE("a published gauge gives the published widths") {
  // scribd.com/doc/65273658, a vest's table: 18 stitches to 10 cm: 140 to 172 stitches are printed as 78 to 96 cm.
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.edge = 0;
  yoke.gauge.stitches = 18.0;
  yoke.profile = "fine-card-24";
  yoke.depth_cm = {{20.0}};
  const double widths[] = {77.8, 82.2, 86.7, 91.1, 95.6};
  for (int number = 0; number < 5; ++number) {
    yoke.pieces = {{"ring", {{widths[number]}}, {{40.0}}, ""}};
    CHECK(std::lround(ideal_counts(opened(yoke, files), 0, 0).front()) == 140 + 8 * number);
  }
}

TEST_CASE("a published ring is raised to what the repeat needs") {
  // slideblast.com, a yoke pattern's table: 108, 118, 126, 130 stitches are raised by 0, 2, 0, 2 to 108, 120, 126, 132:
  // 18, 20, 21, 22 repeats of 6.
  const int before[] = {108, 118, 126, 130};
  const int after[] = {108, 120, 126, 132};
  for (int number = 0; number < 4; ++number) {
    CountsProblem problem{{1}, {{6}}, 0, true, true, 1, {{{{before[number], 0}, 50, 200}}, {{{100, 0}, 50, 200}}}};
    const auto counts = nearest_counts(problem).counts;
    REQUIRE(counts);
    CHECK(counts->stitches[0][0] == after[number]);
  }
}

TEST_CASE("rows against the depth, and what would make it come out") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.gauge.plain_rows = 20.0;
  const RowsOfYoke rows = rows_of_yoke(opened(yoke, files), 0);
  CHECK(rows.pattern_rows == 27);
  CHECK(rows.plain_rows == 10);
  CHECK(rows.mm == doctest::Approx(27 * 100 / 18.0 + 10 * 5));
  CHECK(rows.depth_mm == 220);
  CHECK(rows.missing_mm == doctest::Approx(20));
  CHECK(rows.missing_rows == 4);
  CHECK(rows.proposal == std::vector<int>{6, 5, 3});
  CHECK(text_of(rows) ==
        "37 rows (27 in the tiers, 10 plain), 200 mm of 220 mm: 4 rows (20 mm) are missing; with 6, 5, 3 "
        "plain rows above the tiers the depth comes out");
  RowsOfYoke nearly = rows;
  for (const auto& [off, words] : {std::pair(0.4, "the depth comes out"), std::pair(-0.4, "the depth comes out"),
                                   std::pair(0.6, "1 mm are missing"), std::pair(-2.6, "3 mm are too much")}) {
    nearly.proposal_missing_mm = off;
    CHECK(text_of(nearly).ends_with(std::string("plain rows above the tiers ") + words));
  }
  yoke.depth_cm = {{18.5}};
  const RowsOfYoke less = rows_of_yoke(opened(yoke, files), 0);
  CHECK(less.missing_rows == -3);
  CHECK(less.proposal == std::vector<int>{4, 4, 2}); // no row can be spared
}

TEST_CASE("plain rows fewer than the procedure needs are refused") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  CHECK(plain_rows_needed(opened(yoke, files), 0) == PlainRows{1, 1, 2}); // selects for the next pass: two rows set up
  CHECK(plain_rows_needed(opened(yoke, files), 2) == PlainRows{1, 1, 0});
  yoke.tiers[0].plain_above = {{4, 3, 4}};
  const auto refused = open_yoke(yoke, "harbour.yoke", files.reader());
  REQUIRE_FALSE(refused);
  CHECK(refused.error().text() ==
        "harbour.yoke: 3 rows plain above tier 1, and the procedure needs 4: the last plain row, the row after the "
        "decreases and 2 rows to set up; allowed: 4 and more");
}

TEST_CASE("faults of the tiers are told") {
  Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.tiers[1].repeat = "gone.repeat";
  auto refused = open_yoke(yoke, "harbour.yoke", files.reader());
  REQUIRE_FALSE(refused);
  CHECK(refused.error().text() == "harbour.yoke: gone.repeat: there is no such file; look");
  files.texts["gone.repeat"] = tier_text(20, 5, "plastic-by-hand");
  refused = open_yoke(yoke, "harbour.yoke", files.reader());
  REQUIRE_FALSE(refused);
  CHECK(refused.error().text() == "harbour.yoke: tier 2 is 20 stitches wide, which a card of 24 can't hold; allowed: a "
                                  "repeat of 1, 2, 3, 4, 6, 8, 12, 24 stitches");
  yoke.profile.reset();
  refused = open_yoke(yoke, "harbour.yoke", files.reader());
  REQUIRE_FALSE(refused);
  CHECK(refused.error().text() ==
        "harbour.yoke: tier 2 is for another machine than tier 1: plastic-by-hand and "
        "bulky-card-24; name one machine for all: [machine] in the file, Machine in the editor");
  // Who can choose one meanwhile gets it opened, for the first of their machines that can knit all tiers.
  const auto undecided = open_yoke(yoke, "harbour.yoke", files.reader(), Machines::may_differ);
  REQUIRE(undecided);
  CHECK(undecided->profile.name == "plastic-by-hand"); // the card of the other one has no room for 20 stitches
  REQUIRE(undecided->machine_wanted);
  CHECK(undecided->machine_wanted->text() == refused.error().text());
  files.texts["gone.repeat"] = tier_text(12, 5, "plastic-by-hand");
  CHECK(open_yoke(yoke, "harbour.yoke", files.reader(), Machines::may_differ)->profile.name == "bulky-card-24");
  yoke.profile = "plastic-by-hand";
  const auto decided = open_yoke(yoke, "harbour.yoke", files.reader(), Machines::may_differ);
  REQUIRE(decided);
  CHECK_FALSE(decided->machine_wanted);
  yoke = pullover();
  yoke.yarns = {{'Z', {}, 20.0, {}, {}}};
  refused = open_yoke(yoke, "harbour.yoke", files.reader());
  REQUIRE_FALSE(refused);
  CHECK(refused.error().text() == "harbour.yoke: no tier has a yarn 'Z'; allowed: a key of the tiers' yarns");
}

TEST_CASE("no more plain rows are proposed than a file holds, and that is said") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.pieces = {{"front", {{48.0}}, {{22.0}}, ""}};
  yoke.depth_cm = {{200.0}}; // 360 rows of 18 to 10 cm, of which 27 are in the tiers: 333, and 3 × 99 = 297
  const RowsOfYoke rows = rows_of_yoke(opened(yoke, files), 0);
  CHECK(rows.proposal == std::vector<int>{99, 99, 99});
  CHECK(rows.proposal_full);
  CHECK(text_of(rows).ends_with(
      "; with 99, 99, 99 plain rows above the tiers 200 mm are missing; a yoke holds no more "
      "than 99 plain rows above a tier and 2000 rows in all: add a tier, or make it less deep"));
  for (std::size_t tier = 0; tier < 3; ++tier) {
    yoke.tiers[tier].plain_above = {{rows.proposal[tier]}};
  }
  CHECK(read_yoke(write_yoke(yoke), "deep.yoke"));
  CHECK(text_of(rows_of_yoke(opened(yoke, files), 0)).find("no plain row can be spared") == std::string::npos);
  yoke.depth_cm = {{100.0}};
  CHECK_FALSE(rows_of_yoke(opened(yoke, files), 0).proposal_full);
}

TEST_CASE("centred: every piece has the middle of the repeat at its own, and the seams are alike") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.fit.seams = YokeSeams::centred;
  for (const std::string profile : {"bulky-card-24", "plastic-by-hand"}) {
    yoke.profile = profile;
    const OpenedYoke of_machine = opened(yoke, files);
    for (const SizePlan& size : planned(of_machine).sizes) {
      CHECK(size.proof.squares == doctest::Approx(size.proof.bound));
      for (std::size_t tier = 0; tier < 3; ++tier) {
        CHECK(size.seams[tier].mend == "");
        CHECK(std::ranges::all_of(size.seams[tier].seams, &SeamMeeting::alike));
        const int width = of_machine.tiers[tier].document.grid.width();
        for (const PieceOfSize& piece : size.pieces) {
          const TierOfPiece& there = piece.tiers[tier];
          CHECK(shows_middle_at_its_own(there.bed.left_column, there.stitches - 2, width));
        }
      }
    }
  }
}

TEST_CASE("centred pieces that differ across the ring are made alike, or refused with the rule") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.fit.seams = YokeSeams::centred;
  yoke.depth_cm = {{22.0}};
  yoke.pieces = {{"front", {{48.0}}, {{22.0}}, ""},
                 {"left sleeve", {{30.0}}, {{13.0}}, ""},
                 {"back", {{47.0}}, {{22.0}}, ""},
                 {"right sleeve", {}, {}, "left sleeve"}};
  const YokePlan plan = planned(opened(yoke, files));
  CHECK(plan.sizes[0].pieces[0].tiers[0].stitches == plan.sizes[0].pieces[2].tiers[0].stitches);
  yoke.pieces[2].bottom_cm = {{40.0}};
  const auto refused = plan_yoke(opened(yoke, files));
  REQUIRE_FALSE(refused);
  CHECK(
      refused.error().text().find("the repeat of tier 1 in the middle of each piece, with seams that are alike, costs "
                                  "most") != std::string::npos);
}

TEST_CASE("where nothing fits, what costs most and what would fit is told, and it does") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.pieces = {{"front", {{31.0}}, {{16.0}}, ""}, {"back", {}, {}, "front"}};
  yoke.depth_cm = {{22.0}};
  yoke.fit.tolerance = 0.02;
  const auto refused = plan_yoke(opened(yoke, files));
  REQUIRE_FALSE(refused);
  const std::string said = refused.error().text();
  CAPTURE(said);
  CHECK(said.find("no stitch counts of size one keep to every rule; the ring of tier 1 closing on a multiple of 24 "
                  "stitches costs most") != std::string::npos);
  const auto at = said.find("it fits with tolerance = ");
  REQUIRE(at != std::string::npos);
  yoke.fit.tolerance = std::stod(said.substr(at + 25));
  (void)planned(opened(yoke, files));
  yoke.fit.tolerance -= 0.001;
  CHECK_FALSE(plan_yoke(opened(yoke, files)));
  yoke.fit.tolerance = 0.02;
  CHECK(said.ends_with(", or with the nearest widths: front 33.6 cm at the bottom instead of 31 cm, front 15.5 cm at "
                       "the top instead of 16 cm"));
  yoke.pieces[0].bottom_cm = {{33.6}};
  yoke.pieces[0].top_cm = {{15.5}};
  (void)planned(opened(yoke, files));
}

TEST_CASE("the rows that set up the next tier are told, one or several") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  for (const auto& [profile, words] :
       {std::pair("bulky-card-24", "2 rows set up the next tier; its steps name them."),
        std::pair("plastic-by-hand", "1 row sets up the next tier; its steps name it.")}) {
    yoke.profile = profile;
    const OpenedYoke of_machine = opened(yoke, files);
    const MovingStep last = moving_words(of_machine, planned(of_machine).sizes[0], 0, 0).back();
    CHECK(last.words == words);
    CHECK(last.is_remark); // its steps follow
  }
}

TEST_CASE("increases where a piece widens") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.pieces = {{"cape", {{40.0}}, {{60.0}}, ""}};
  yoke.depth_cm = {{22.0}};
  yoke.fit.seams = YokeSeams::free;
  const YokePlan plan = planned(opened(yoke, files));
  const TierOfPiece& tier = plan.sizes[0].pieces[0].tiers[0];
  CHECK(tier.shaping.increases() > 0);
  CHECK(needles_to_fill(tier.shaping, tier.first_after).size() == static_cast<std::size_t>(tier.shaping.increases()));
}

TEST_CASE("increases above the last tier have their steps: hung on again, with needles to fill") {
  const Files files = pullover_files();
  Yoke yoke = of_one_width(40, 60);
  yoke.fit.seams = YokeSeams::free;
  const OpenedYoke cape = opened(yoke, files);
  const YokePlan plan = planned(cape);
  const SizePlan& size = plan.sizes[0];
  const TierOfPiece& last = size.pieces[0].tiers[2];
  REQUIRE(last.shaping.increases() > 0);
  CHECK(is_hung_on_again(cape, last, 2));
  std::string words;
  for (const MovingStep& line : moving_words(cape, size, 0, 2)) {
    words += line.words + "\n";
  }
  const std::vector<Needle> fill = needles_to_fill(last.shaping, last.first_after);
  CHECK(words.find("Increase " + std::to_string(last.shaping.before) + " stitches to " +
                   std::to_string(last.shaping.after) + ": hang the ") != std::string::npos);
  CHECK(words.find("counted from the left, 1 stitch clear of the seams): " + name_of(fill.front())) !=
        std::string::npos);
  CHECK(words.find("Lift the loop below its left neighbour onto each free needle") != std::string::npos);
  CHECK(words.ends_with("These needles are where the neck begins.\n"));
  yoke = of_one_width(40, 20);
  yoke.fit.seams = YokeSeams::free;
  const OpenedYoke narrowing = opened(yoke, files);
  CHECK_FALSE(is_hung_on_again(narrowing, planned(narrowing).sizes[0].pieces[0].tiers[2], 2));
}

TEST_CASE("yarn: loops, floats, swatches") {
  // One piece, one tier of one row "##.." on 24 stitches, by hand, without seam stitches: what it takes can be counted.
  Files files;
  files.texts["one.repeat"] =
      "format = 1\n[machine]\nprofile = \"plastic-by-hand\"\n[[yarn]]\nkey = \"A\"\n[[yarn]]\nkey = "
      "\"B\"\n[repeat]\nwidth = 4\nrows = [\"##..\"]\n[[band]]\nrows = 1\nmain = \"A\"\ncontrast "
      "= \"B\"\n";
  Yoke yoke;
  yoke.sizes = {"one"};
  yoke.edge = 0;
  yoke.gauge.stitches = 20.0; // 5 mm
  yoke.gauge.rows = 25.0;     // 4 mm
  yoke.pieces = {{"scarf", {{12.0}}, {{12.0}}, ""}};
  yoke.depth_cm = {{5.0}};
  yoke.tiers = {{"one.repeat", {{2}}}};
  yoke.yarns = {{'A', 200.0, 20.0, {}, {}}, {'B', {}, 18.0, {}, {}}};
  OpenedYoke in_loops = opened(yoke, files);
  YokePlan plan = planned(in_loops);
  REQUIRE(plan.sizes[0].pieces[0].tiers[0].stitches == 24);
  REQUIRE(plan.sizes[0].yarns.size() == 2);
  // Six repeats are 12 loops of each. Each yarn goes from its first stitch to its last, 22 stitches, and passes behind
  // 10 of the other's, 5 mm each. Two plain rows in A.
  const YarnAmount& main = plan.sizes[0].yarns[0];
  const YarnAmount& contrast = plan.sizes[0].yarns[1];
  CHECK(main.from == AmountFrom::loop);
  const double floats = *main.metres * 1000 - 12 * 20 - 48 * 20;
  const double contrast_floats = *contrast.metres * 1000 - 12 * 18;
  CHECK(floats + contrast_floats == doctest::Approx((10 + 10) * 5.0));
  CHECK(*main.grams == doctest::Approx(*main.metres / 2));
  CHECK_FALSE(contrast.grams);
  yoke.yarns = {{'A', 200.0, {}, 6.0, 4.0}, {'B', 200.0, {}, {}, 3.0}};
  plan = planned(opened(yoke, files));
  // 24 stitches of 5 mm by 4 mm are 4.8 cm²: two plain rows and one of two colours.
  CHECK(*plan.sizes[0].yarns[0].grams == doctest::Approx(9.6 * 0.06 + 4.8 * 0.04));
  CHECK(*plan.sizes[0].yarns[1].grams == doctest::Approx(4.8 * 0.03));
  CHECK(*plan.sizes[0].yarns[1].metres == doctest::Approx(4.8 * 0.03 * 2));
  CHECK(plan.sizes[0].yarns[0].from == AmountFrom::swatch);
}

TEST_CASE("tiers that call a key by other names or colours are knitted in other yarns: each has its amount") {
  Files files = pullover_files();
  const auto called = [](std::string text, const std::string& facts) {
    const std::string key = "key = \"A\"\n";
    return text.replace(text.find(key), key.size(), key + facts);
  };
  const std::string whitewash = "name = \"Whitewash\"\ncolour = \"#f4eddc\"\n";
  files.texts["wide.repeat"] = called(files.texts["wide.repeat"], whitewash);
  files.texts["middle.repeat"] = called(files.texts["middle.repeat"], whitewash);
  files.texts["narrow.repeat"] = called(files.texts["narrow.repeat"], whitewash);
  Yoke yoke = pullover();
  yoke.yarns = {{'A', 200.0, {}, {}, {}}};
  const OpenedYoke one = opened(yoke, files);
  CHECK(one.notes.empty());
  const std::vector<YarnAmount> alike = planned(one).sizes[0].yarns;
  REQUIRE(alike.size() == 2); // A and B
  CHECK(told_apart(alike[0].yarn, alike).empty());
  const auto knitted_with = [&](const std::string& facts) {
    files.texts["middle.repeat"] = called(tier_text(12, 9), facts);
    return opened(yoke, files);
  };
  for (const bool named : {true, false}) {
    CAPTURE(named);
    const OpenedYoke two = knitted_with(named ? "name = \"Sand\"\ncolour = \"#c8b99a\"\n"
                                              : "name = \"Whitewash\"\ncolour = \"#c8b99a\"\n");
    REQUIRE(two.notes.size() == 1);
    CHECK(two.notes[0].text == (named ? "the tiers call two yarns A, Whitewash #f4eddc and Sand #c8b99a: each has an "
                                        "amount of its own"
                                      : "the tiers call two yarns A, Whitewash #f4eddc and Whitewash #c8b99a: each has "
                                        "an amount of its own"));
    const SizePlan plan = planned(two).sizes[0];
    REQUIRE(plan.yarns.size() == 3);
    const YarnAmount& first = plan.yarns[0];
    const YarnAmount& other = plan.yarns[2];
    CHECK(first.yarn.key == 'A');
    CHECK(other.yarn.key == 'A');
    CHECK(told_apart(first.yarn, plan.yarns) == (named ? "Whitewash" : "#f4eddc"));
    CHECK(told_apart(other.yarn, plan.yarns) == (named ? "Sand" : "#c8b99a"));
    CHECK(*first.metres + *other.metres == doctest::Approx(*alike[0].metres)); // of the same stitches
    CHECK(*first.grams == doctest::Approx(*first.metres / 2));                 // what the yoke says of A holds for both
    CHECK(*other.grams == doctest::Approx(*other.metres / 2));
    // The rows that set up a tier are in its own yarn: two of them above each of the lower tiers.
    CHECK(*other.metres > 0);
    for (const std::size_t tier : {0, 1}) {
      CHECK(between_tiers(two, plan, 0, tier).yarn_out); // one yarn goes out, the other one in
    }
  }
}

TEST_CASE("Munden's relation") {
  // GATE examination, Textile Engineering and Fibre Science, 2015, question 54: fully relaxed, a loop of 0.5 cm gives
  // 92 loops to the square centimetre (kc 5.5, kw 4.2).
  const Gauge relaxed{4.2 / 0.5 * 10, 5.5 / 0.5 * 10};
  CHECK(std::lround(relaxed.stitches * relaxed.rows / 100) == 92);
  CHECK(loop_of(munden_fully_relaxed, relaxed) == doctest::Approx(5.0));
  const Files files = pullover_files();
  Yoke yoke = pullover(); // 14 stitches and 18 rows: 2.52 to the square centimetre
  yoke.yarns = {{'A', {}, 21.0, {}, {}}, {'B', {}, 29.0, {}, {}}};
  const auto checks = check_loops(opened(yoke, files));
  REQUIRE(checks.size() == 2);
  CHECK(checks[0].constant == doctest::Approx(2.52 * 2.1 * 2.1));
  CHECK_FALSE(checks[0].plausible);
  CHECK(checks[1].plausible);
  CHECK(text_of(checks[0]) ==
        "yarn A: a loop of 21 mm does not go with the gauge: Munden's constant comes to 11.1, plain "
        "knitting has 19.0 to 23.1; loops of 27.5 to 30.3 mm would do");
}

TEST_CASE("moving the work, in words") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const YokePlan plan = planned(yoke);
  const std::vector<MovingStep> steps = moving_words(yoke, plan.sizes[0], 0, 0);
  std::vector<std::string> words;
  for (const MovingStep& step : steps) {
    words.push_back(step.words);
  }
  REQUIRE(words.size() == 11);
  CHECK(words[0].starts_with("Decrease "));
  CHECK(words[1].starts_with("Transfer each loop to its neighbour: "));
  CHECK(words[2].find("out of work: an empty needle in work would cast on an eyelet.") != std::string::npos);
  CHECK(words[3] == "Knit 1 row.");
  // The carriage is on the wrong side: main can't go on from there.
  CHECK(words[4] == "Take A out of its feeder and cut it.");
  CHECK(
      words[5] ==
      "Take the work off, either on waste yarn: thread waste yarn into that feeder, and knit an odd number of rows "
      "with it, about 7, to end on the right, where the next tier begins. Take the waste yarn out and cut it. Weights "
      "off, or the work falls; then push the loops off their needles, without the carriage.");
  CHECK(
      words[6] ==
      "Or on a comb of the bed's pitch or a circular needle, without waste yarn: weights off, or the work falls; then "
      "take the loops onto it. Push the carriage across the empty bed to the right, where the next tier begins.");
  CHECK(words[7].starts_with("Bring the "));
  CHECK(words[8].starts_with("Have the "));
  CHECK(words[9] == "Hang the " + std::to_string(plan.sizes[0].pieces[0].tiers[1].stitches) + " loops on " +
                        name_of(plan.sizes[0].pieces[0].tiers[1].bed.first) + " to " +
                        name_of(plan.sizes[0].pieces[0].tiers[1].bed.last) + ", then the weights again.");
}

TEST_CASE("changed measures over opened tiers are the same as opening anew") {
  const Files files = pullover_files();
  Yoke changed = pullover();
  changed.pieces[0].bottom_cm.values[1] = 53.5;
  changed.gauge = {};
  auto again = with_changed_measures(opened(pullover(), files), changed);
  REQUIRE(again);
  const OpenedYoke anew = opened(changed, files);
  CHECK(again->tiers[0].document == anew.tiers[0].document);
  CHECK(planned(*again).sizes[1].proof.squares == planned(anew).sizes[1].proof.squares);
}
