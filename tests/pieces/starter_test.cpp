// Starters against the published percentages, bust sizes and depths, each with its source.
#include "pieces/starter.hpp"
#include "pieces/yokes.hpp"

using namespace punchwright;
using namespace punchwright::test;

TEST_CASE("the percentage method as it is published") {
  // handmadestitchbystitch.wordpress.com, summary of Knitting Without Tears (1971) and Knitting Around (1989): 200
  // stitches of body: sleeves 66, underarms 16, joined 200 + 2·66 − 4·16 = 268, neck 80. With a stitch for each
  // centimetre:
  const YokeMeasures size = yoke_measures(200, 0, std::nullopt);
  CHECK(2 * size.front == doctest::Approx(200 - 2 * 16));
  CHECK(size.sleeve == doctest::Approx(66 - 16));
  CHECK(size.ring() == doctest::Approx(268));
  CHECK(size.neck == doctest::Approx(80));
  // cs.oswego.edu/~ebozak/knit, yoke decreasing in the round, 1997: the neck is 33 to 40 % of the body's stitches.
  CHECK(size.neck / size.body <= 0.40 + 1e-12);
}

TEST_CASE("the depth is a quarter of the body, up to what is worn") {
  // jenjoycedesign.com, 2012-08-16: a quarter of the body's circumference.
  const YokeMeasures small = yoke_measures(60, 5, std::nullopt);
  CHECK(small.depth == doctest::Approx(16.25));
  CHECK_FALSE(small.depth_capped);
  // morrisandsons.com.au, a size table: busts of 83 to 151 cm, depths of 19 to 25 cm only.
  CHECK(yoke_measures(83, 5, std::nullopt).depth == doctest::Approx(19));
  CHECK(yoke_measures(151, 5, std::nullopt).depth == doctest::Approx(25));
  CHECK(yoke_measures(170, 5, std::nullopt).depth == doctest::Approx(25));
  CHECK(yoke_measures(117, 5, std::nullopt).depth_capped);
}

TEST_CASE("how deep a yoke gets at most can be changed, like every other number") {
  YokeRules rules;
  rules.shallow_cm = 21;
  rules.shallow_chest_cm = 80;
  rules.deep_cm = 31;
  rules.deep_chest_cm = 120;
  CHECK(yoke_measures(80, 20, std::nullopt, rules).depth == doctest::Approx(21));
  CHECK(yoke_measures(100, 20, std::nullopt, rules).depth == doctest::Approx(26)); // half way between them
  CHECK(yoke_measures(130, 20, std::nullopt, rules).depth == doctest::Approx(31));
  rules.deep_chest_cm = 80; // one depth below that chest, another one from it on
  CHECK(yoke_measures(79.9, 20, std::nullopt, rules).depth == doctest::Approx(21));
  CHECK(yoke_measures(200, 20, std::nullopt, rules).depth == doctest::Approx(31));
}

TEST_CASE("bust sizes as they are published") {
  // yayforyarn.com: XS to 5X are 30, 34, 38, 42, 46, 50, 54, 58, 62 inches.
  const double inches[] = {30, 34, 38, 42, 46, 50, 54, 58, 62};
  REQUIRE(bust_sizes().size() == 9);
  CHECK(bust_sizes().front().name == "XS");
  CHECK(bust_sizes().back().name == "5X");
  for (std::size_t size = 0; size < 9; ++size) {
    CHECK(bust_sizes()[size].chest_cm == doctest::Approx(inches[size] * 2.54));
  }
}

TEST_CASE("children's measures as they are published") {
  // crochetkitten.com, children 2 to 16, inches: upper arm 7, 7.5, 8, 8.5, 8.75, 9, 9.25, 9.5; armhole 4.25, 4.75, 5,
  // 5.5, 6, 6.5, 7, 7.5.
  const double arms[] = {7, 7.5, 8, 8.5, 8.75, 9, 9.25, 9.5};
  const double armholes[] = {4.25, 4.75, 5, 5.5, 6, 6.5, 7, 7.5};
  REQUIRE(child_sizes().size() == 8);
  for (std::size_t age = 0; age < 8; ++age) {
    CHECK(child_sizes()[age].name == std::to_string(2 * age + 2) + " years");
    CHECK(child_sizes()[age].upper_arm_cm == doctest::Approx(arms[age] * 2.54));
    CHECK(child_sizes()[age].armhole_cm == doctest::Approx(armholes[age] * 2.54));
  }
}

TEST_CASE("a yoke is no less deep than the armhole") {
  const YokeMeasures raised = yoke_measures(60, 4, 20.0, {}, 17.8);
  CHECK(raised.depth == doctest::Approx(17.8)); // a quarter of 64 is 16
  CHECK(raised.depth_raised);
  const YokeMeasures kept = yoke_measures(60, 4, 20.0, {}, 12.0);
  CHECK(kept.depth == doctest::Approx(16));
  CHECK_FALSE(kept.depth_raised);
}

TEST_CASE("a child's yoke says where arms and armholes come from") {
  const Files files = pullover_files();
  YokeStart start;
  start.profile = "bulky-card-24";
  start.tiers = {"narrow.repeat"};
  start.body = {{"4 years", "16 years"}, {58.0, 60.0}, 4, {19.05, 24.13}, {12.065, 19.05}};
  const auto yoke = started_yoke(start, "shore/harbour.yoke", files.reader());
  REQUIRE(yoke);
  // 19.05 + 4 less 8 % of 62.
  CHECK(yoke->pieces[1].bottom_cm.at(0) == doctest::Approx(18.1));
  CHECK(yoke->depth_cm.at(1) == doctest::Approx(19.1)); // the armhole's 19.05, to a millimetre; a quarter of 64 is 16
  const std::string text = write_yoke(*yoke);
  CHECK(text.find("# 4 years, 16 years: upper arms and armholes by age: crochetkitten.com, which has no chests: "
                  "measure them") != std::string::npos);
  CHECK(text.find("# and no less deep than the armhole: 19.1 cm (common practice)") != std::string::npos);
  start.body.upper_arm_cm = {20.0, 24.0};
  const auto measured = started_yoke(start, "shore/harbour.yoke", files.reader());
  REQUIRE(measured);
  CHECK(write_yoke(*measured).find("years: armholes by age: crochetkitten.com") != std::string::npos);
}

TEST_CASE("a started yoke opens, is planned, and is saved with its sources") {
  const Files files = pullover_files();
  for (const YokeKind kind : {YokeKind::pullover, YokeKind::poncho}) {
    YokeStart start;
    start.kind = kind;
    start.title = "Harbour";
    start.profile = "bulky-card-24";
    start.tiers = {"wide.repeat", "middle.repeat", "narrow.repeat"};
    start.body = {{"S", "M", "L"}, {86.4, 96.5, 106.7}, 7.5, {}, {}};
    const auto yoke = started_yoke(start, "shore/harbour.yoke", files.reader());
    INFO((yoke ? std::string() : yoke.error().text()));
    REQUIRE(yoke);
    CHECK(yoke->pieces.size() == 4);
    const std::string text = write_yoke(*yoke);
    CHECK(text.find("# sleeves 33 % of the body, 8 % left at each underarm, neck 40 %") != std::string::npos);
    CHECK(text.find("(morrisandsons.com.au, a size table)") != std::string::npos);
    const auto again = open_yoke(text, "shore/harbour.yoke", files.reader());
    REQUIRE(again);
    CHECK(again->yoke == *yoke);
    const auto plan = plan_yoke(*again);
    INFO((plan ? std::string() : plan.error().text()));
    REQUIRE(plan);
    for (std::size_t size = 0; size < 3; ++size) { // less than half a row is missing; or no plain row can be spared
      const double missing = plan->sizes[size].rows.missing_mm;
      CHECK(missing <= 100.0 / 18.0 / 2 + 1e-9);
      const auto& tiers = again->yoke.tiers;
      const int plain = tiers[0].plain_above.at(size) + tiers[1].plain_above.at(size) + tiers[2].plain_above.at(size);
      CHECK((missing >= -100.0 / 18.0 / 2 - 1e-9 || plain == 4 + 4 + 2));
    }
  }
}

TEST_CASE("chests of the table have its source beside them, measured ones have not") {
  const Files files = pullover_files();
  YokeStart start;
  start.profile = "bulky-card-24";
  start.tiers = {"narrow.repeat"};
  start.body = {{"S", "M", "L"}, {34 * 2.54, 38 * 2.54, 100}, 7.5, {}, {}};
  auto yoke = started_yoke(start, "shore/harbour.yoke", files.reader());
  REQUIRE(yoke);
  // gratefullyinhisgrace.blogspot.com, 2011: standard ease of 2 to 4 inches.
  CHECK(write_yoke(*yoke).find("# chest 86.4, 96.5, 100 cm with 7.5 cm of ease: body 93.9, 104, 107.5 cm\n"
                               "# ease: standard is 2 to 4 inches, 5 to 10 cm (gratefullyinhisgrace.blogspot.com, "
                               "2011)\n"
                               "# S, M: busts by size: yayforyarn.com\n") != std::string::npos);
  start.body.ease_cm = 9;
  yoke = started_yoke(start, "shore/harbour.yoke", files.reader());
  REQUIRE(yoke);
  CHECK(write_yoke(*yoke).find("gratefullyinhisgrace") == std::string::npos); // her own, not the source's
  start.body.chest_cm = {86, 96, 100};
  yoke = started_yoke(start, "shore/harbour.yoke", files.reader());
  REQUIRE(yoke);
  CHECK(write_yoke(*yoke).find("yayforyarn") == std::string::npos);
}

// Who looks at the front of a garment that is worn has the wearer's left at her right hand (common practice: left and
// right of a garment are the wearer's); the pieces stand as they are seen on the knit side, from left to right.
TEST_CASE("the wearer's left follows to the right of the front") {
  const Files files = pullover_files();
  const auto names = [&](YokeKind kind) {
    YokeStart start;
    start.kind = kind;
    start.profile = "bulky-card-24";
    start.tiers = {"wide.repeat"};
    start.body = {{"M"}, {96.5}, 7.5, {}, {}};
    const auto yoke = started_yoke(start, "shore/harbour.yoke", files.reader());
    REQUIRE(yoke);
    std::vector<std::string> found;
    for (const YokePiece& piece : yoke->pieces) {
      found.push_back(piece.name);
    }
    return found;
  };
  CHECK(names(YokeKind::pullover) == std::vector<std::string>{"front", "left sleeve", "back", "right sleeve"});
  CHECK(names(YokeKind::poncho) == std::vector<std::string>{"front right", "front left", "back left", "back right"});
}

TEST_CASE("an upper arm takes the place of the share, and wide pieces are split") {
  const Files files = pullover_files();
  YokeStart start;
  start.kind = YokeKind::poncho;
  start.profile = "bulky-card-24";
  start.tiers = {"wide.repeat"};
  start.body = {{"one"}, {290.0}, 10.0, {60.0}, {}};
  const auto yoke = started_yoke(start, "shore/harbour.yoke", files.reader());
  REQUIRE(yoke);
  // (300 · 0.84 + 2 (70 − 24)) / 4 = 86 cm: 122.4 stitches at 14 to 10 cm, by the tolerance 116 at least; the bed has
  // 112.
  CHECK(yoke->pieces.size() == 8);
  CHECK(yoke->pieces[0].name == "front right 1");
  CHECK(yoke->pieces[0].bottom_cm.at(0) == doctest::Approx(43));
}

TEST_CASE("what no file may hold is refused by size, measure and remedy") {
  const Files files = pullover_files();
  const auto refused = [&](YokeKind kind, const BodyMeasures& body, const YokeRules& rules = {}) {
    YokeStart start;
    start.kind = kind;
    start.profile = "bulky-card-24";
    start.tiers = {"wide.repeat"};
    start.body = body;
    start.rules = rules;
    const auto yoke = started_yoke(start, "shore/harbour.yoke", files.reader());
    return yoke ? write_yoke(*yoke) : yoke.error().text();
  };
  using enum YokeKind;
  // 10 − 4 less 8 % of 86; 10 − 20 less 8 % of 40.
  CHECK(refused(pullover, {{"S", "M"}, {96, 90}, -4, {30, 10}, {}}) ==
        "size 'M': each sleeve would be -0.9 cm wide at the bottom; allowed: 0.5 to 500 cm: give another upper arm, or "
        "another ease");
  CHECK(refused(pullover, {{"S"}, {60}, -20, {10}, {}}).starts_with("size 'S': each sleeve would be -13.2 cm wide"));
  CHECK(refused(poncho, {{"S"}, {60}, -20, {10}, {}}).find("allowed: 0 to 500 cm") != std::string::npos);
  for (const double ease : {-10.0, -11.0}) {
    CHECK(refused(poncho, {{"S"}, {10}, ease, {}, {}}) ==
          "size 'S': the chest with its ease would be " + std::to_string(static_cast<int>(10 + ease)) +
              " cm; allowed: more than 0 cm: give more ease, or a larger chest");
  }
  CHECK(refused(pullover, {{"S"}, {20}, -19, {}, {}}) ==
        "size 'S': each sleeve would be 0.3 cm wide at the bottom; allowed: 0.5 to 500 cm: give another chest, or "
        "another ease");
  CHECK(refused(poncho, {{"S"}, {20}, -17, {}, {}}) == // a quarter of 40 % of 3
        "size 'S': piece 'front right' would be 0.3 cm wide at the top; allowed: 0.5 to 500 cm: give another chest, or "
        "another ease");
  YokeRules rules;
  rules.depth = 0.01;
  CHECK(refused(pullover, {{"S"}, {80}, 0, {}, {}}, rules) ==
        "size 'S': the yoke would be 0.8 cm deep; allowed: 1 to 200 cm: give another chest, another ease, or other "
        "shares");
  CHECK(refused(pullover, {{"S", "S"}, {80, 90}, 0, {}, {}}).find("twice; allowed: each name once") !=
        std::string::npos);
}
