// Strokes gathered into dashed lines: the same ink, whatever they are drawn as.
#include "sheets/short_strokes.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

TEST_SUITE("short strokes") {
  TEST_CASE("the ticks of a ruler are the dashes of one broad line") {
    std::vector<Stroke> ticks;
    for (int millimetre = 0; millimetre <= 150; ++millimetre) {
      ticks.push_back({{20.0 + millimetre, 100}, {20.0 + millimetre, 101.6}});
    }
    const auto lines = dashed_lines(ticks, 0.12);
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].pen_mm == doctest::Approx(1.6));
    CHECK(lines[0].dash_mm == doctest::Approx(0.12));
    CHECK(lines[0].gap_mm == doctest::Approx(0.88));
    CHECK(lines[0].line.from.x == doctest::Approx(19.94));
    CHECK(lines[0].line.to.x == doctest::Approx(170.06));
    CHECK(lines[0].line.from.y == doctest::Approx(100.8));
    CHECK(lines[0].line.to.y == doctest::Approx(100.8));
  }

  TEST_CASE("upright ruler, ticks drawn towards the left") {
    std::vector<Stroke> ticks;
    for (int centimetre = 0; centimetre <= 15; ++centimetre) {
      ticks.push_back({{20, 200.0 - 10 * centimetre}, {16.4, 200.0 - 10 * centimetre}});
    }
    const auto lines = dashed_lines(ticks, 0.12);
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].pen_mm == doctest::Approx(3.6));
    CHECK(lines[0].line.from.x == doctest::Approx(18.2));
    CHECK(lines[0].line.from.y == doctest::Approx(49.94));
    CHECK(lines[0].line.to.y == doctest::Approx(200.06));
  }

  TEST_CASE("strokes end to end are the dashes of one thin line") {
    std::vector<Stroke> strokes;
    for (int column = 0; column < 23; ++column) {
      strokes.push_back({{30 + 4.5 * column + 1.9, 50}, {30 + 4.5 * column + 2.6, 50}});
    }
    const auto lines = dashed_lines(strokes, 0.2);
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].pen_mm == doctest::Approx(0.2));
    CHECK(lines[0].dash_mm == doctest::Approx(0.7));
    CHECK(lines[0].gap_mm == doctest::Approx(3.8));
    CHECK(lines[0].line.from.x == doctest::Approx(31.9));
    CHECK(lines[0].line.to.x == doctest::Approx(30 + 4.5 * 22 + 2.6));
  }

  TEST_CASE("a slanting stroke, a pair, and strokes that touch stay as they are") {
    const auto slanting = dashed_lines({{{0, 0}, {5, 5}}, {{3, 0}, {8, 5}}, {{6, 0}, {11, 5}}}, 0.3);
    REQUIRE(slanting.size() == 3);
    const auto pair = dashed_lines({{{0, 0}, {5, 0}}, {{9, 0}, {14, 0}}}, 0.3);
    REQUIRE(pair.size() == 2);
    const auto touching = dashed_lines({{{0, 0}, {5, 0}}, {{5, 0}, {10, 0}}, {{10, 0}, {15, 0}}}, 0.3);
    REQUIRE(touching.size() == 3);
    for (const auto& lines : {slanting, pair, touching}) {
      for (const DashedLine& line : lines) {
        CHECK(line.gap_mm == 0);
        CHECK(line.pen_mm == 0.3);
        CHECK(line.line.to.x - line.line.from.x == doctest::Approx(5));
      }
    }
  }
}
