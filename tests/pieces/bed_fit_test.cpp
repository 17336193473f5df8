// Pieces that are wider than the bed: the fewest that would do in their place, and how they are cut.
#include "pieces/yokes.hpp"

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
        "shore/harbour.yoke: piece 'front' is 237 stitches wide in size large, and the bed has "
        "112 needles; 3 pieces in its place would fit: split it, or make it narrower");
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
  // 480 cm × 1.4 + 2 = 674: in seven parts 98 on a bed of 112; four such pieces are 28.
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
