// Points gathered into lines: every point in exactly one run, whatever their order.
#include "sheets/point_runs.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

TEST_SUITE("point runs") {
  TEST_CASE("level runs first, then upright ones, then points alone") {
    // o o o . .     three at 4.5
    // . . . . o     two above one another
    // . . . . o
    // . . . o .     one that has no neighbour
    const auto runs = point_runs({{9, 0}, {30, 5}, {0, 0}, {4.5, 0}, {30, 10}, {20, 17}});
    REQUIRE(runs.size() == 3);
    REQUIRE(runs.at(450000).size() == 1);
    CHECK(runs.at(450000).front().first == Point{0, 0});
    CHECK(runs.at(450000).front().last == Point{9, 0});
    CHECK(distance_of(450000) == doctest::Approx(4.5));
    REQUIRE(runs.at(500000).size() == 1);
    CHECK(runs.at(500000).front().first == Point{30, 5});
    CHECK(runs.at(500000).front().last == Point{30, 10});
    REQUIRE(runs.at(0).size() == 1);
    CHECK(runs.at(0).front().first == Point{20, 17});
  }

  TEST_CASE("upright runs first where that makes fewer") {
    // o o    two columns that are punched in every row
    // o o
    // o o
    const auto runs = point_runs({{0, 0}, {7, 0}, {0, 5}, {7, 5}, {0, 10}, {7, 10}});
    REQUIRE(runs.size() == 1);
    REQUIRE(runs.at(500000).size() == 2);
    CHECK(runs.at(500000).front().first == Point{0, 0});
    CHECK(runs.at(500000).front().last == Point{0, 10});
  }

  TEST_CASE("as many points in the runs as there were") {
    std::vector<Point> points;
    for (int row = 0; row < 20; ++row) {
      for (int column = 0; column < 24; ++column) {
        if ((row * 7 + column * column) % 5 < 3) {
          points.push_back({20 + 4.5 * column, 10 + 5.0 * row});
        }
      }
    }
    double counted = 0;
    for (const auto& [key, lines] : point_runs(points)) {
      for (const PointRun& line : lines) {
        const double length = (line.last.x - line.first.x) + (line.last.y - line.first.y);
        counted += key == 0 ? 1 : 1 + length / distance_of(key);
      }
    }
    CHECK(counted == doctest::Approx(static_cast<double>(points.size())));
  }

  TEST_CASE("no points, no runs") {
    CHECK(point_runs({}).empty());
  }
}
