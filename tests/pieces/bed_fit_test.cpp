// Pieces that are wider than the bed: the fewest that would do in their place, and how they are cut.
#include "pieces/yokes.hpp"

#include <cmath>
#include <map>
#include <random>

using namespace punchwright;
using namespace punchwright::test;

TEST_CASE("a piece that is wider than the bed is refused with the pieces that would do, and split on request") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.pieces[0].bottom_cm = {{100.0, 110.0, 168.0}};
  yoke.pieces[0].top_cm = {{50.0, 55.0, 84.0}};
  const OpenedYoke wide = opened(yoke, files);
  const auto refused = plan_yoke(wide);
  REQUIRE_FALSE(refused);
  // 168 cm × 1.4 + 2 = 237.2; in three 80.4 on a bed of 112; in two 119.6.
  CHECK(refused.error().text() ==
        "shore/harbour.yoke: piece 'front' is 237 stitches wide in size large, 223 at least within the tolerance, and "
        "the bed has 112 needles; 3 pieces in its place would fit: split it, or make it narrower");
  const auto found = split_to_fit(wide);
  REQUIRE(found);
  const Yoke& split = *found;
  std::vector<std::string> names;
  for (const YokePiece& piece : split.pieces) {
    names.push_back(piece.name + (piece.like.empty() ? "" : " like " + piece.like));
  }
  CHECK(names == std::vector<std::string>{"front 1", "front 2 like front 1", "front 3 like front 1", "left sleeve",
                                          "back 1 like front 1", "back 2 like front 1", "back 3 like front 1",
                                          "right sleeve like left sleeve"});
  CHECK(split.pieces[0].bottom_cm.at(2) == doctest::Approx(56));
  (void)planned(opened(split, files));
}

TEST_CASE("as few pieces are named as fit: against trying every number") {
  const Files files = pullover_files();
  std::mt19937 dice(17);
  const auto from = [&dice](int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice); };
  int wide_ones = 0;
  for (int round = 0; round < 400; ++round) {
    Yoke yoke = of_one_width(from(600, 3000) / 10.0, from(200, 3000) / 10.0);
    yoke.edge = from(0, 3);
    yoke.pieces.push_back({"back", {}, {}, "front"});
    // Now and then a width of which a whole number of parts is just as wide as the bed and half a stitch.
    if (const int parts = from(2, 4); from(0, 1) == 0) {
      yoke.pieces[0].bottom_cm = {{(112.5 - 2 * yoke.edge) / 1.4 * parts + from(-1, 1) * 0.0005}};
    }
    const OpenedYoke opened_yoke = opened(yoke, files);
    const std::vector<TooWide> wide = too_wide(opened_yoke);
    CAPTURE(write_yoke(yoke));
    int fewest = 1;
    while (!too_wide(opened(with_piece_split(yoke, 0, fewest), files)).empty()) {
      ++fewest;
    }
    if (fewest == 1) {
      CHECK(wide.empty());
      continue;
    }
    ++wide_ones;
    REQUIRE(wide.size() == 2);
    CHECK(wide[0].parts == fewest);
    CHECK(wide[1].parts == fewest);
    CHECK(bed_failure(opened_yoke)->remedy.starts_with(std::to_string(fewest) + " pieces in its place would fit"));
  }
  CHECK(wide_ones > 200);
}

namespace {

// On a bed of 40 needles at 14 stitches to 10 cm.
Files small_bed_files() {
  Files files = pullover_files();
  files.texts["small.machine"] = "format = 1\nname = \"small\"\n[bed]\nneedles = 40\npitch_mm = 9.0\n";
  return files;
}

Yoke on_small_bed(double bottom, double top) {
  Yoke yoke = of_one_width(bottom, top);
  yoke.profile = "small.machine";
  yoke.tiers = {{"narrow.repeat", {{2}}}};
  yoke.fit.seams = YokeSeams::free;
  return yoke;
}

} // namespace

// 28.1 cm × 1.4 + 4 = 43.3, by a tenth less 39.
TEST_CASE("a piece whose ideal is wider than the bed fits where its tolerance allows a count that does") {
  const Files files = small_bed_files();
  Yoke yoke = on_small_bed(28.1, 20);
  yoke.edge = 2;
  yoke.fit.tolerance = 0.1;
  CHECK(planned(opened(yoke, files)).sizes[0].pieces[0].tiers[0].stitches == 40);
  CHECK(split_to_fit(opened(yoke, files))->pieces.size() == 1);
  yoke.fit.tolerance = 0.05; // 41.2 at least
  CHECK(plan_yoke(opened(yoke, files)).error().message ==
        "piece 'front' is 43 stitches wide in size one, 42 at least within the tolerance, and the bed has 40 needles");
  CHECK(split_to_fit(opened(yoke, files))->pieces.size() == 2);
}

TEST_CASE("small yokes are refused as wider than the bed where no allowed count fits it: against trying all counts") {
  const Files files = small_bed_files();
  std::mt19937 dice(29);
  const auto from = [&dice](int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice); };
  std::map<std::string, int> met;
  for (int round = 0; round < 400; ++round) {
    Yoke yoke = on_small_bed(from(240, 330) / 10.0, from(60, 330) / 10.0);
    yoke.edge = from(0, 3);
    yoke.fit.tolerance = from(0, 15) / 100.0;
    const OpenedYoke small = opened(yoke, files);
    const std::vector<double> ideals = ideal_counts(small, 0, 0);
    const auto within = [&](std::size_t tier, int count) {
      return std::abs(count - ideals[tier]) <= ideals[tier] * yoke.fit.tolerance + 1e-9;
    };
    bool some_wide = false;
    for (const double ideal : ideals) {
      some_wide = some_wide || ideal * (1 - yoke.fit.tolerance) - 1e-9 > 40;
    }
    double least = -1;
    for (int below = 2 * yoke.edge + 1; below <= 40; ++below) {
      for (int above = 2 * yoke.edge + 1; above <= 40; ++above) {
        const int visible = below - 2 * yoke.edge;
        if (within(0, below) && within(1, above) && 2 * (below - above) <= visible && above - below <= visible - 1) {
          const double squares = std::pow(below - ideals[0], 2) + std::pow(above - ideals[1], 2);
          least = least < 0 ? squares : std::min(least, squares);
        }
      }
    }
    CAPTURE(write_yoke(yoke));
    const SizesPlanned sizes = plan_sizes(small);
    REQUIRE(sizes.fits(0) == (least >= 0));
    if (least >= 0) {
      CHECK(sizes.plan.sizes[0].proof.squares == doctest::Approx(least));
      ++met[std::max(ideals[0], ideals[1]) > 40.5 ? "pressed onto the bed" : "fits"];
      continue;
    }
    const bool told = sizes.faults[0].front().message.find("and the bed has 40 needles") != std::string::npos;
    CHECK(told == some_wide);
    ++met[some_wide ? "too wide" : "other rules"];
  }
  CHECK(met["pressed onto the bed"] > 20);
  CHECK(met["fits"] > 20);
  CHECK(met["too wide"] > 20);
  CHECK(met["other rules"] > 5);
}

TEST_CASE("where seam stitches fill the bed no number of pieces is named") {
  Files files = pullover_files();
  files.texts["toy.machine"] = "format = 1\nname = \"toy\"\n[bed]\nneedles = 40\npitch_mm = 9.0\n";
  Yoke yoke = of_one_width(60, 40);
  yoke.profile = "toy.machine";
  yoke.edge = 20;
  const auto refused = plan_yoke(opened(yoke, files));
  REQUIRE_FALSE(refused);
  CHECK(refused.error().remedy == "20 seam stitches on each side of each piece fill the bed of 40 needles; allowed: "
                                  "fewer of them: 'edge'");
  CHECK_FALSE(split_to_fit(opened(yoke, files)));
  yoke.edge = 19;
  CHECK(too_wide(opened(yoke, files)).front().parts > 0);
}

TEST_CASE("the parts of a piece have names that no piece has, so that the file can be read") {
  const Files files = pullover_files();
  Yoke yoke = of_one_width(100, 50);
  yoke.pieces.push_back({"front 2", {{40.0}}, {{20.0}}, ""});
  yoke.pieces.push_back({"front part 1", {}, {}, "front"});
  const auto split = split_to_fit(opened(yoke, files));
  REQUIRE(split);
  std::vector<std::string> names;
  for (const YokePiece& piece : split->pieces) {
    names.push_back(piece.name);
  }
  CHECK(names == std::vector<std::string>{"front part part 1", "front part part 2", "front 2", "front part 1 1",
                                          "front part 1 2"});
  const auto again = read_yoke(write_yoke(*split), "split.yoke");
  INFO((again ? std::string() : again.error().text()));
  REQUIRE(again);
  CHECK(again->yoke == *split);
}

TEST_CASE("comments of a piece stay beside it when another one is split") {
  const Files files = pullover_files();
  Yoke yoke = of_one_width(100, 50);
  yoke.pieces.push_back({"sleeve", {{40.0}}, {{20.0}}, ""});
  std::string text = write_yoke(yoke);
  text.replace(text.find("[[piece]]\nname = \"sleeve\""), 9, "# by the harbour\n[[piece]]");
  text.replace(text.find("top_cm = 20.0"), 13, "top_cm = 20.0 # at the neck\nlining = \"none\"");
  const auto read = open_yoke(text, "shore/harbour.yoke", files.reader());
  REQUIRE(read);
  const auto split = split_to_fit(*read);
  REQUIRE(split);
  const std::string written = write_yoke(*split);
  CHECK(written.find("# by the harbour\n[[piece]]\nname = \"sleeve\"") != std::string::npos);
  CHECK(written.find("top_cm = 20.0 # at the neck\nlining = \"none\"") != std::string::npos);
}

TEST_CASE("a split that no file can hold is refused, with its place and what would do") {
  const Files files = pullover_files();
  Yoke yoke = of_one_width(480, 240);
  for (const std::string name : {"left", "back", "right"}) {
    yoke.pieces.push_back({name, {}, {}, "front"});
  }
  yoke.fit.tolerance = 0.01;
  // 480 cm × 1.4 + 2 = 674: in seven parts 98 on a bed of 112, in six 114; four such pieces are 28.
  const auto many = split_to_fit(opened(yoke, files));
  REQUIRE_FALSE(many);
  CHECK(many.error().text() == "shore/harbour.yoke: split so that they fit the bed of 112 needles, the pieces would be "
                               "28; allowed: 24 pieces at most: make them narrower, or choose a coarser gauge");
  const auto refused = plan_yoke(opened(yoke, files));
  REQUIRE_FALSE(refused);
  CHECK(refused.error().text().find("the pieces would be 28; allowed: 24 pieces at most") != std::string::npos);
  yoke.pieces.pop_back(); // three are 21
  CHECK(split_to_fit(opened(yoke, files)));
  const auto narrow = split_to_fit(opened(of_one_width(100, 0.9), files));
  REQUIRE_FALSE(narrow);
  CHECK(narrow.error().text() ==
        "shore/harbour.yoke: cut in 2, a part of piece 'front' would be 0.45 cm wide at the top; allowed: 0.5 cm and "
        "more: make the piece wider there, or narrower where it is too wide for the bed");
}

TEST_CASE("nor is one that is not cut wider or narrower than a file holds") {
  const Files files = pullover_files();
  for (const auto& [bottom, top, words] :
       {std::tuple(-0.9, 20.0, "piece 'front' would be -0.9 cm wide at the bottom; allowed: 0.5 to 500 cm"),
        std::tuple(40.0, 0.4, "piece 'front' would be 0.4 cm wide at the top; allowed: 0.5 to 500 cm")}) {
    const auto refused = split_to_fit(opened(of_one_width(bottom, top), files));
    REQUIRE_FALSE(refused);
    CHECK(refused.error().text() == std::string("shore/harbour.yoke: ") + words);
  }
}
