// The nearest drawing under the float limit, against trying every drawing; splits, shades and emphasis.
#include "design/lines_of_grid.hpp"
#include "support/builders.hpp"
#include "tracing/best_place.hpp"
#include "tracing/trace.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <numbers>
#include <numeric>

using namespace punchwright;

namespace {

bool bit(unsigned row, int column) {
  return (row >> column & 1U) != 0;
}

// Whether a row may be knitted: of one colour, or without a run beyond the limit as it tiles.
bool knittable(unsigned row, int width, int limit) {
  if (row == 0 || row == (1U << width) - 1) {
    return true;
  }
  for (int start = 0; start < width; ++start) {
    int run = 1;
    while (run < width && bit(row, (start + run) % width) == bit(row, start)) {
      ++run;
    }
    if (run > limit) {
      return false;
    }
  }
  return true;
}

double off(const std::vector<double>& darkness, unsigned row) {
  double sum = 0;
  for (std::size_t column = 0; column < darkness.size(); ++column) {
    const double difference = darkness[column] - (bit(row, static_cast<int>(column)) ? 1 : 0);
    sum += difference * difference;
  }
  return sum;
}

std::vector<double> light_of(const std::vector<double>& darkness) {
  std::vector<double> light;
  for (const double dark : darkness) {
    light.push_back(1 - dark);
  }
  return light;
}

TraceWishes split_at(double split, int limit) {
  TraceWishes wishes;
  wishes.split = split;
  wishes.limit = limit;
  return wishes;
}

} // namespace

TEST_CASE("no knittable row is nearer to the picture: every row of up to 12 stitches is tried") {
  test::Dice dice(11);
  for (int round = 0; round < 400; ++round) {
    const int width = 1 + dice.throw_one(12);
    const int limit = 1 + dice.throw_one(5);
    std::vector<double> darkness;
    for (int column = 0; column < width; ++column) {
      darkness.push_back(dice.throw_one(10001) / (dice.throw_one(3) == 0 ? 10000.0 : 30000.0));
    }
    double least = std::numeric_limits<double>::max();
    for (unsigned row = 0; row < 1U << width; ++row) {
      if (knittable(row, width, limit)) {
        least = std::min(least, off(darkness, row));
      }
    }
    const Traced traced = trace(light_of(darkness), width, split_at(0.5, limit));
    CHECK(traced.error * width == doctest::Approx(least).epsilon(1e-3));
    CHECK(traced.unmendable.empty());
  }
}

TEST_CASE("a knittable drawing traces to itself, whatever the limit of its own") {
  const Grid drawing = test::drawn({"#..#..", ".##.##", "......", "######"}).grid;
  std::vector<double> light;
  for (int row = 0; row < 4; ++row) {
    for (int column = 0; column < 6; ++column) {
      light.push_back(drawing.at(column, row) ? 0 : 1);
    }
  }
  const Traced traced = trace(light, 6, {});
  CHECK(traced.drawing == drawing);
  CHECK(traced.moved == 0);
  CHECK(traced.error == 0);
}

TEST_CASE("a faint mark in a wide row goes, since a row of one colour has no float") {
  std::vector<double> darkness(24, 0.1);
  darkness[5] = 0.6;
  const Traced traced = trace(light_of(darkness), 24, split_at(0.5, 5));
  CHECK(traced.drawing.all_main(0));
  darkness[5] = 0.6;
  TraceWishes kept = split_at(0.5, 5);
  kept.kept = {Area{{5, 0}, 1, 1}};
  const Traced with_mark = trace(light_of(darkness), 24, kept);
  CHECK(with_mark.drawing.at(5, 0));
  CHECK(with_mark.moved >= 3);
}

TEST_CASE("what is kept and leaves a float too long is named") {
  std::vector<double> darkness(24, 0.0);
  darkness[5] = 1;
  TraceWishes wishes = split_at(0.5, 5);
  wishes.kept = {Area{{0, 0}, 24, 1}};
  const Traced traced = trace(light_of(darkness), 24, wishes);
  REQUIRE(traced.unmendable.size() == 1);
  CHECK(traced.drawing.at(5, 0));
}

TEST_CASE("light as contrast and the mirror") {
  const std::vector<double> light = {1, 1, 0, 0, 1, 0};
  TraceWishes wishes = split_at(0.5, 6);
  CHECK(trace(light, 6, wishes).drawing.row_text(0) == "..##.#");
  wishes.mirrored = true;
  CHECK(trace(light, 6, wishes).drawing.row_text(0) == "#.##..");
  wishes.light_is_contrast = true;
  CHECK(trace(light, 6, wishes).drawing.row_text(0) == ".#..##");
}

TEST_CASE("Otsu's split is where the spread within both classes is least (Otsu 1979, eq. 2 to 18)") {
  test::Dice dice(5);
  for (int round = 0; round < 20; ++round) {
    std::vector<double> values;
    for (int count = 0; count < 500; ++count) {
      const double spread = (dice.throw_one(100) + dice.throw_one(100) + dice.throw_one(100)) / 1000.0;
      values.push_back(dice.throw_one(3) == 0 ? 0.6 + spread : 0.1 + spread / 2);
    }
    const auto within = [&](double split) {
      double sum = 0;
      for (const bool above : {false, true}) {
        std::vector<double> part;
        for (const double value : values) {
          if ((value * 256 >= split * 256) == above) {
            part.push_back(std::floor(value * 256));
          }
        }
        if (part.empty()) {
          continue;
        }
        const double mean = std::accumulate(part.begin(), part.end(), 0.0) / static_cast<double>(part.size());
        for (const double value : part) {
          sum += (value - mean) * (value - mean);
        }
      }
      return sum;
    };
    double least = std::numeric_limits<double>::max();
    for (int step = 1; step < 256; ++step) {
      least = std::min(least, within(step / 256.0));
    }
    CHECK(within(otsu_split(values)) == doctest::Approx(least));
  }
  CHECK(otsu_split({0.3, 0.3, 0.3}) == 0.5);
  CHECK(otsu_split({0, 1}) == doctest::Approx(0.5).epsilon(0.01));
}

TEST_CASE("the dither matrix is Bayer's: its first rows, and each quarter four times the half-sized one") {
  // As printed in N. Ahmed, Bayer's matrix of order 8, first row: 0 32 8 40 2 34 10 42 (Bayer 1973; common in
  // handbooks).
  const std::vector<int> first = {0, 32, 8, 40, 2, 34, 10, 42};
  const std::vector<int> second = {48, 16, 56, 24, 50, 18, 58, 26};
  for (int column = 0; column < 8; ++column) {
    CHECK(bayer_step(column, 0) == first[static_cast<std::size_t>(column)]);
    CHECK(bayer_step(column, 1) == second[static_cast<std::size_t>(column)]);
  }
  std::vector<bool> seen(64);
  for (int row = 0; row < 8; ++row) {
    for (int column = 0; column < 8; ++column) {
      seen[static_cast<std::size_t>(bayer_step(column, row))] = true;
    }
  }
  CHECK(std::ranges::all_of(seen, [](bool there) { return there; }));
}

TEST_CASE("shades keep their share of contrast by diffusion and by dither, with no float too long") {
  for (const Shading shading : {Shading::diffusion, Shading::dither}) {
    for (const double shade : {0.25, 0.375, 0.5, 0.7}) {
      CAPTURE(shade);
      TraceWishes wishes = split_at(0.5, 5);
      wishes.shading = shading;
      const Traced traced = trace(std::vector<double>(24 * 48, 1 - shade), 24, wishes);
      int contrast = 0;
      for (int row = 0; row < 48; ++row) {
        unsigned bits = 0;
        for (int column = 0; column < 24; ++column) {
          contrast += traced.drawing.at(column, row) ? 1 : 0;
          bits |= traced.drawing.at(column, row) ? 1U << column : 0U;
        }
        CHECK(knittable(bits, 24, 5));
      }
      CHECK(contrast / (24.0 * 48) == doctest::Approx(shade).epsilon(0.06));
    }
  }
}

TEST_CASE("edges are sharpened and areas smoothed") {
  // A soft edge: with emphasis of edges the grey beside the dark falls to main, with that of areas it doesn't.
  const std::vector<double> darkness = {0, 0.05, 0.1, 0.55, 0.9, 1, 1, 0.9, 0.55, 0.1, 0.05, 0};
  TraceWishes wishes = split_at(0.5, 12);
  CHECK(trace(light_of(darkness), 12, wishes).drawing.row_text(0) == "...######...");
  wishes.emphasis = 1;
  const double edges = trace(light_of(darkness), 12, wishes).error;
  wishes.emphasis = -1;
  const double areas = trace(light_of(darkness), 12, wishes).error;
  CHECK(edges < areas);
}

TEST_CASE("the best place on a pattern that repeats is one period, wherever it begins") {
  // Waves 150 px long on a picture of 400: the best width of a repeat is one wave or two.
  const int width = 400;
  const int height = 120;
  std::vector<std::uint8_t> colours;
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const double wave = 60 + 35 * std::sin(2 * std::numbers::pi * x / 150);
      const auto grey = static_cast<std::uint8_t>(y > wave ? 0 : 255);
      colours.insert(colours.end(), 3, grey);
    }
  }
  const Photo photo = photo_of(width, height, colours);
  TraceWishes wishes;
  wishes.limit = 24;
  const Gauge square{20, 20};
  const Lattice from = lattice_at(0, 0, 200, 24, 14, square);
  const auto places = best_places(photo, from, square, {}, wishes, 3);
  REQUIRE(!places.empty());
  const double waves = places.front().lattice.stitch_width * 24 / 150;
  CHECK(std::abs(waves - std::round(waves)) < 0.08);
  for (std::size_t place = 1; place < places.size(); ++place) {
    CHECK(places[place - 1].error <= places[place].error);
  }
}
