// The built-in machines against what published sources and common practice say, and what a user's ruler says.
// Sources stand beside the checks; "from memory" marks what nobody has confirmed.
#include "machine/profile.hpp"
#include "machine/profile_keys.hpp"
#include "machine/usual_gauge.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <limits>

using namespace punchwright;

namespace {

const Profile& built_in(std::string_view name) {
  const Profile* const found = built_in_profile(name);
  REQUIRE(found != nullptr);
  return *found;
}

std::vector<std::string> names() {
  std::vector<std::string> all;
  for (const Profile& profile : built_in_profiles()) {
    all.push_back(profile.name);
  }
  return all;
}

// A ruler on a blank as the built-in profiles have it.
constexpr BlankReadings usual_readings{103.5, 250, 19.25, 142, 3.5};

} // namespace

TEST_CASE("five machines are built in") {
  CHECK(names() == std::vector<std::string>{"fine-card-24", "standard-card-24", "bulky-card-24", "bulky-card-12",
                                            "plastic-by-hand"});
  CHECK(built_in_profile("no such machine") == nullptr);
  CHECK(built_in("bulky-card-24").title == "bulky bed, 9 mm, 112 needles, 24-stitch card");
}

TEST_CASE("beds have the pitches and needles of their kind") {
  // Pitches 3.6, 4.5, 6 to 7 and 9 mm: backtobackknits.com. Needle counts: from memory.
  CHECK(built_in("fine-card-24").pitch_mm == 3.6);
  CHECK(built_in("fine-card-24").needles == 250);
  CHECK(built_in("standard-card-24").pitch_mm == 4.5);
  CHECK(built_in("standard-card-24").needles == 200);
  CHECK(built_in("plastic-by-hand").pitch_mm == 6.5);
  CHECK(built_in("plastic-by-hand").needles == 150);
  for (const char* name : {"bulky-card-24", "bulky-card-12"}) {
    CHECK(built_in(name).pitch_mm == 9.0);
    CHECK(built_in(name).needles >= 110); // about 110 to 114: from memory
    CHECK(built_in(name).needles <= 114);
  }
}

TEST_CASE("needles are numbered outwards from the middle, half on each side") {
  // Common practice.
  CHECK(name_of(built_in("standard-card-24").leftmost()) == "L100");
  CHECK(name_of(built_in("standard-card-24").rightmost()) == "R100");
  CHECK(name_of(built_in("fine-card-24").leftmost()) == "L125");
  CHECK(name_of(built_in("plastic-by-hand").rightmost()) == "R75");
}

TEST_CASE("a reader's repeat is centred on the bed: half its needles on either side of the middle") {
  // alessandrina.com, 2015-09-03, on punch cards: twelve needles on either side.
  for (const char* name : {"fine-card-24", "standard-card-24", "bulky-card-24"}) {
    CHECK(built_in(name).card->repeat == 24);
    CHECK(name_of(built_in(name).card->first_needle) == "L12");
  }
  CHECK(built_in("bulky-card-12").card->repeat == 12);
  CHECK(name_of(built_in("bulky-card-12").card->first_needle) == "L6");
}

TEST_CASE("blanks, loops, offsets, holes and floats are as published") {
  for (const Profile& profile : built_in_profiles()) {
    CAPTURE(profile.name);
    CHECK(profile.longest_float == 5); // knittingmagic.biz, guide 8: never over more than 5 stitches
    if (!profile.card) {
      continue;
    }
    CHECK(profile.card->blank_rows == 60);              // alessandrina.com, 2015-09-03: 24 by 60 rows
    CHECK(profile.card->loop_rows == 36);               // the same: at least 36 rows to run round
    CHECK(profile.card->reader_offset == 7);            // the same: 7 rows below the visible line
    CHECK(profile.card->hole == HoleMeans::contrast);   // vikkihaffenden.com, on punch cards
    CHECK(profile.card->geometry.row_pitch == 5.0);     // from memory
    CHECK(profile.card->geometry.sheet_width == 142.0); // from memory
    CHECK(profile.card->geometry.hole_diameter == 3.5); // from memory
    CHECK(profile.card->geometry.clips.size() == 2);    // hobbygaiety.com: 8 corner holes, 2 a corner
    CHECK_FALSE(profile.card->turned);
  }
}

TEST_CASE("columns stand in the middle of the sheet") {
  for (const Profile& profile : built_in_profiles()) {
    if (profile.card) {
      const CardGeometry& geometry = profile.card->geometry;
      const double last = geometry.column_1 + (profile.card->repeat - 1) * geometry.stitch_pitch;
      CHECK(geometry.column_1 == doctest::Approx(geometry.sheet_width - last));
    }
  }
  CHECK(built_in("bulky-card-24").card->geometry.stitch_pitch == 4.5); // from memory
  CHECK(built_in("bulky-card-24").card->geometry.column_1 == doctest::Approx(19.25));
  CHECK(built_in("bulky-card-12").card->geometry.stitch_pitch == 9.0); // from memory
  CHECK(built_in("bulky-card-12").card->geometry.column_1 == doctest::Approx(21.5));
}

TEST_CASE("a printed card's measures are near the pitches from memory") {
  // alessandrina.com, hints and tips, p. 8: 181.6 by 109.5 mm fits 24 by 36 cells of 4.56 by 5.04 mm (computed).
  const CardGeometry& geometry = built_in("standard-card-24").card->geometry;
  CHECK(geometry.stitch_pitch == doctest::Approx(109.5 / 24).epsilon(0.02));
  CHECK(geometry.row_pitch == doctest::Approx(181.6 / 36).epsilon(0.02));
}

TEST_CASE("holes neither touch one another nor the edge") {
  for (const Profile& profile : built_in_profiles()) {
    if (!profile.card) {
      continue;
    }
    const CardGeometry& geometry = profile.card->geometry;
    CHECK(geometry.hole_diameter < std::min(geometry.stitch_pitch, geometry.row_pitch));
    CHECK(geometry.feed_from_side - geometry.feed_diameter / 2 > 0);
    CHECK(geometry.feed_from_side + geometry.feed_diameter / 2 < geometry.column_1 - geometry.hole_diameter / 2);
    for (const ClipHole& clip : geometry.clips) {
      CHECK(clip.from_side - geometry.clip_diameter / 2 > 0);
      CHECK(clip.from_end - geometry.clip_diameter / 2 > 0);
      CHECK(clip.from_end + geometry.clip_diameter / 2 < geometry.first_row - geometry.feed_diameter / 2);
    }
  }
}

TEST_CASE(
    "card machines select for the next pass, with end needles; by hand there are two feeders and no end needles") {
  // Common practice.
  for (const Profile& profile : built_in_profiles()) {
    CAPTURE(profile.name);
    CHECK(profile.feeders == 2);
    CHECK((profile.selects == Selects::next_pass) == profile.card.has_value());
    CHECK(profile.end_needles == profile.card.has_value());
  }
  CHECK(built_in("plastic-by-hand").selects == Selects::by_hand);
}

TEST_CASE("every value of every built-in machine says where it comes from") {
  for (const Profile& profile : built_in_profiles()) {
    std::size_t values = 0;
    for (const ProfileKey& key : profile_keys()) {
      CAPTURE(key.key);
      const bool has_value = key.shown(profile).has_value();
      values += has_value ? 1 : 0;
      const auto source = profile.sources.find(std::string(key.key));
      REQUIRE((source != profile.sources.end()) == has_value);
    }
    CHECK(values == profile.sources.size());
  }
}

TEST_CASE("what is from memory or unknown is told, what is published is not") {
  const std::vector<std::string> unsure = unsure_values(built_in("bulky-card-24"));
  const auto tells = [&](const char* sentence) { return std::ranges::find(unsure, sentence) != unsure.end(); };
  CHECK(tells("needles 112: from memory: 110 to 114, depending on the make"));
  CHECK(tells("sheet width 142 mm: from memory"));
  CHECK(tells("feed holes from the side 6 mm: unknown: measure"));
  CHECK(tells("card's face shows the purl side: unknown: machines differ; knit the orientation swatch"));
  CHECK(unsure.size() == 13);
  for (const std::string& sentence : unsure) {
    CHECK(sentence.find("published for one family") == std::string::npos);
    CHECK(sentence.find("common practice") == std::string::npos);
  }
  CHECK(unsure_values(built_in("plastic-by-hand")).size() == 3); // needles, pitch, feeders
  CHECK(unsure_values(Profile{}).empty());
}

TEST_CASE("a ruler on the blank gives its geometry; what it does not tell stays") {
  CardGeometry before = built_in("standard-card-24").card->geometry;
  before.feed_from_side = 7.5;
  const auto found = geometry_from_readings({104.9, 252, 18.7, 141.5, 3.6}, 24, before);
  REQUIRE(found);
  CHECK(found->stitch_pitch == doctest::Approx(104.9 / 23));
  CHECK(found->row_pitch == doctest::Approx(5.04));
  CHECK(found->column_1 == 18.7);
  CHECK(found->sheet_width == 141.5);
  CHECK(found->hole_diameter == 3.6);
  CHECK(found->feed_from_side == 7.5);
  CHECK(found->clips == before.clips);
  CHECK(geometry_from_readings(usual_readings, 24, {}).ok());
}

TEST_CASE("on a 12-stitch card the ruler lies over 11 gaps, and a repeat of one column has none") {
  const auto twelve = geometry_from_readings({99, 250, 21.5, 142, 3.5}, 12, {});
  REQUIRE(twelve);
  CHECK(twelve->stitch_pitch == 9.0);
  const auto one = geometry_from_readings({0, 250, 71, 142, 3.5}, 1, {});
  REQUIRE(one);
  CHECK(one->stitch_pitch == CardGeometry{}.stitch_pitch);
}

TEST_CASE("impossible readings are refused by name") {
  const auto refused = [](BlankReadings readings, const char* expected) {
    const auto result = geometry_from_readings(readings, 24, {});
    REQUIRE_FALSE(result.ok());
    CHECK(result.error().text() == expected);
  };
  BlankReadings readings = usual_readings;
  readings.over_23_holes = 10.35; // centimetres, not millimetres
  refused(readings,
          "the distance over 23 holes reads 10.35 mm; possible are 23 to 460 mm; measure again, in millimetres");
  readings = usual_readings;
  readings.over_50_rows = 25;
  refused(readings, "the distance over 50 rows reads 25 mm; possible are 50 to 1000 mm; measure again, in millimetres");
  readings = usual_readings;
  readings.sheet_width = 0;
  refused(readings, "the sheet's width reads 0 mm; possible are 20 to 400 mm; measure again, in millimetres");
  readings = usual_readings;
  readings.hole_diameter = std::numeric_limits<double>::quiet_NaN();
  refused(readings, "the hole's diameter reads nan mm; possible are 0.5 to 15 mm; measure again, in millimetres");
  readings = usual_readings;
  readings.hole_diameter = 4.5;
  refused(readings,
          "the hole's diameter reads 4.5 mm; holes 4.50 mm by 5.00 mm apart would run into one another; measure "
          "the holes and the distances again");
  readings = usual_readings;
  readings.edge_to_first_hole = 38; // the other edge, or the second hole
  refused(readings,
          "the distance from the edge to the first hole reads 38 mm; so 24 columns would reach from 36.2 to 143.2 "
          "mm on a sheet 142.0 mm wide; measure the sheet and that distance again");
  readings.edge_to_first_hole = 1;
  refused(readings,
          "the distance from the edge to the first hole reads 1 mm; so 24 columns would reach from -0.8 to 106.2 "
          "mm on a sheet 142.0 mm wide; measure the sheet and that distance again");
}

TEST_CASE(
    "readings that would bring the pattern into the feed holes are refused, since a ruler told nothing of those") {
  BlankReadings readings = usual_readings;
  readings.edge_to_first_hole = 8;
  CHECK(
      geometry_from_readings(readings, 24, {}).error().text() ==
      "the distance from the edge to the first hole reads 8 mm; so the feed holes, 6 mm from the side, run into column "
      "1; measure that too, and write it as 'feed_from_side_mm' under [card.geometry] in a .machine file");
  CardGeometry measured;
  measured.feed_from_side = 3;
  measured.clips.clear();
  CHECK(geometry_from_readings(readings, 24, measured).ok());
}

TEST_CASE("what a ruler reads on a blank gives back its geometry, on narrow and on wide cards") {
  CardGeometry geometry;
  geometry.stitch_pitch = 2.25;
  geometry.hole_diameter = 1.75;
  geometry.column_1 = 12.5;
  for (const int repeat : {12, 24, 40}) {
    CAPTURE(repeat);
    const BlankReadings readings = readings_of(geometry, repeat);
    CHECK(readings.over_23_holes == doctest::Approx(2.25 * (repeat == 12 ? 11 : 23)));
    CHECK(geometry_from_readings(readings, repeat, geometry).value() == geometry);
  }
}

TEST_CASE("a new design begins with stitches as wide as the bed knits them") {
  for (const Profile& profile : built_in_profiles()) {
    CAPTURE(profile.name);
    const Gauge gauge = usual_gauge(profile);
    // A stitch is somewhat narrower than its needles are apart, and wider than it is high: common practice.
    CHECK(gauge.stitch_mm() > profile.pitch_mm * 0.6);
    CHECK(gauge.stitch_mm() < profile.pitch_mm);
    CHECK(gauge.row_mm() < gauge.stitch_mm());
  }
  CHECK(usual_gauge(built_in("standard-card-24")) == Gauge{28, 40});
  CHECK(usual_gauge(built_in("bulky-card-24")) == Gauge{16, 20});
}
