// The picture of the cloth: what is drawn anew is the same as what would be drawn from nothing, floats lie where they
// lie, and nearer or farther the colours stay.
#include "editor/actions.hpp"
#include "editor/piece_picture.hpp"
#include "rows/rows_key.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <optional>
#include <random>
#include <utility>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

Colour at(const PiecePixels& picture, int x, int y) {
  const auto place =
      (static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) + static_cast<std::size_t>(x)) * 3;
  return Colour{picture.rgb[place], picture.rgb[place + 1], picture.rgb[place + 2]};
}

// Mean of the numbers of one part of the picture.
double brightness(const PiecePixels& picture, int left, int top, int right, int bottom) {
  double sum = 0;
  for (int y = top; y < bottom; ++y) {
    for (int x = left; x < right; ++x) {
      const Colour colour = at(picture, x, y);
      sum += colour.red + colour.green + colour.blue;
    }
  }
  return sum / (3.0 * (right - left) * (bottom - top));
}

Document black_on_white(int width, int height) {
  Document design = make_app().work.design;
  design.grid = Grid(width, height);
  design.bands = {Band{height, 'A', 'B', {}}};
  design.yarns[0].colour = Colour{255, 255, 255};
  design.yarns[1].colour = Colour{0, 0, 0};
  design.piece.end_needles = EndNeedles::never;
  return design;
}

} // namespace

TEST_CASE("what is painted anew after a stroke equals what is painted from nothing, at every size and side") {
  std::mt19937 random(20261125); // printed by its failure through CAPTURE
  const Profile profile = make_app().work.profile;
  for (int round = 0; round < 60; ++round) {
    CAPTURE(round);
    Document design = black_on_white(24, 1 + static_cast<int>(random() % 30));
    ClothView view{random() % 2 == 0 ? Face::knit : Face::purl,
                   random() % 4 == 0,
                   60 + static_cast<int>(random() % 200),
                   60 + static_cast<int>(random() % 200),
                   0,
                   0,
                   0};
    if (random() % 2 == 0) {
      view.px_per_mm = 0.3 + static_cast<double>(random() % 80) / 10;
      view.middle_x = static_cast<double>(random() % 60) - 30;
    }
    ClothPainter painter;
    for (int stroke = 0; stroke < 4; ++stroke) {
      const int height = design.grid.height();
      design.grid.flip(static_cast<int>(random() % 24), static_cast<int>(random() % static_cast<unsigned>(height)));
      const RowsToKnit rows = rows_to_knit(design, profile);
      painter.paint(design, profile, rows, view);
      ClothPainter fresh;
      fresh.paint(design, profile, rows, view);
      CHECK(painter.pixels().rgb == fresh.pixels().rgb);
    }
  }
}

TEST_CASE("with the rows known to be the same, what is painted anew equals what is painted from nothing") {
  std::mt19937 random(20261126); // printed by its failure through CAPTURE
  const Profile profile = make_app().work.profile;
  Document design = black_on_white(8, 12);
  design.piece.times = 3;
  const ClothView view{Face::purl, false, 200, 240, 0, 0, 0, ColourSight::as_is};
  ClothPainter painter;
  std::optional<RowsKey> known;
  RowsToKnit rows;
  std::uint64_t serial = 0;
  for (int round = 0; round < 200; ++round) {
    CAPTURE(round);
    const int row = static_cast<int>(random() % 12);
    if (random() % 8 == 0) { // the row becomes one of main, and the rows to knit change
      for (int column = 0; column < 8; ++column) {
        design.grid.set(column, row, false);
      }
    } else if (random() % 16 == 0) {
      design.yarns[1].colour.green = static_cast<std::uint8_t>(random() % 256);
    } else {
      design.grid.set(static_cast<int>(random() % 8), row, random() % 2 == 0);
    }
    RowsKey key = rows_key(design, profile);
    if (known != key) {
      rows = rows_to_knit(design, profile);
      known = std::move(key);
      ++serial;
    }
    CHECK(rows.rows == rows_to_knit(design, profile).rows);
    painter.paint(design, profile, rows, view, serial);
    ClothPainter fresh;
    fresh.paint(design, profile, rows, view);
    CHECK(painter.pixels().rgb == fresh.pixels().rgb);
  }
}

TEST_CASE("rows that are knitted again look as if they were drawn again") {
  std::mt19937 random(20261128);
  const Profile profile = make_app().work.profile;
  for (const Face face : {Face::knit, Face::purl}) {
    Document design = black_on_white(8, 12);
    Document drawn_again = black_on_white(8, 36);
    design.yarns.push_back({'C', "red", {200, 30, 30}});
    drawn_again.yarns = design.yarns;
    design.bands = {{5, 'A', 'B', {}}, {7, 'A', 'C', {}}};
    drawn_again.bands = {{5, 'A', 'B', {}}, {7, 'A', 'C', {}}, {5, 'A', 'B', {}},
                         {7, 'A', 'C', {}}, {5, 'A', 'B', {}}, {7, 'A', 'C', {}}};
    for (int row = 0; row < 36; ++row) {
      for (int column = 0; column < 8; ++column) {
        const bool contrast = row < 12 ? random() % 2 == 0 : design.grid.at(column, row % 12);
        drawn_again.grid.set(column, row, contrast);
        if (row < 12) {
          design.grid.set(column, row, contrast);
        }
      }
    }
    design.piece.times = 3;
    drawn_again.piece.times = 1;
    const ClothView view{face, false, 120, 50, 0, 0, 0, ColourSight::as_is};
    ClothPainter painter;
    painter.paint(design, profile, rows_to_knit(design, profile), view);
    ClothPainter other;
    other.paint(drawn_again, profile, rows_to_knit(drawn_again, profile), view);
    CHECK(painter.pixels().rgb == other.pixels().rgb);
  }
}

TEST_CASE(
    "a small stitch is what a large one looks like from farther off, on either side, wherever it falls on pixels") {
  const Profile profile = make_app().work.profile;
  Document design = black_on_white(4, 4);
  design.yarns[1].colour = Colour{120, 60, 30};
  for (int row = 0; row < 4; ++row) {
    design.grid.set(row, row, true);
    design.grid.set((row + 1) % 4, row, true);
  }
  design.gauge = {16, 20}; // 6.25 × 5 mm
  design.piece.stitches = 24;
  design.piece.times = 2;
  const RowsToKnit rows = rows_to_knit(design, profile);
  for (const Face face : {Face::knit, Face::purl}) {
    for (const double px : {2.4, 2.56, 2.72}) { // a mm: from 12 px a row on, all of the form is there
      constexpr int times = 6;
      const auto painted = [&](double px_per_mm, int room) {
        ClothPainter painter;
        painter.paint(design, profile, rows, ClothView{face, false, room, room, px_per_mm, 0, 0, ColourSight::as_is});
        return painter.pixels();
      };
      const PiecePixels small = painted(px, 96);
      const PiecePixels large = painted(times * px, times * 96);
      REQUIRE(small.width * times == large.width);
      REQUIRE(small.height * times == large.height);
      double squares = 0;
      for (int y = 0; y < small.height; ++y) {
        for (int x = 0; x < small.width; ++x) {
          const double mean = brightness(large, times * x, times * y, times * (x + 1), times * (y + 1));
          squares += std::pow(brightness(small, x, y, x + 1, y + 1) - mean, 2);
        }
      }
      CAPTURE(px);
      CHECK(std::sqrt(squares / (small.width * small.height)) < 12);
    }
  }
}

TEST_CASE("a stroke that changes nothing leaves the picture as it is") {
  const Profile profile = make_app().work.profile;
  const Document design = black_on_white(24, 8);
  const RowsToKnit rows = rows_to_knit(design, profile);
  const ClothView view{Face::knit, false, 200, 200, 0, 0, 0};
  ClothPainter painter;
  CHECK(painter.paint(design, profile, rows, view));
  CHECK_FALSE(painter.paint(design, profile, rows, view));
}

TEST_CASE("on the purl side the floats lie over the other yarn's stitches, on the knit side nothing does") {
  const Profile profile = make_app().work.profile;
  Document design = black_on_white(24, 1);
  for (int column = 4; column < 20; ++column) {
    design.grid.set(column, 0, true); // main passes behind the middle one of three repeats whole, and behind the others
  }
  design.piece.stitches = 24;
  const RowsToKnit rows = rows_to_knit(design, profile);
  const auto painted = [&](Face face) {
    ClothPainter painter;
    painter.paint(design, profile, rows, ClothView{face, false, 240, 60, 0, 0, 0});
    return painter.pixels();
  };
  const PiecePixels knit = painted(Face::knit);
  const PiecePixels purl = painted(Face::purl);
  CHECK(brightness(knit, 60, 0, 180, knit.height) < 3);
  CHECK(brightness(purl, 60, 0, 180, purl.height) > 15); // white strands over black stitches
  // Contrast isn't carried to the piece's edges: no float there.
  CHECK(brightness(purl, 0, 0, 30, purl.height) > brightness(knit, 0, 0, 30, knit.height) * 0.8);
}

TEST_CASE("on the purl side a caught float rises to its needle and hangs less beside it; the knit side stays") {
  const Profile profile = make_app().work.profile;
  Document design = black_on_white(24, 1);
  for (int column = 4; column < 20; ++column) {
    design.grid.set(column, 0, true);
  }
  design.piece.stitches = 24;
  const RowsToKnit rows = rows_to_knit(design, profile);
  ClothPainter purl;
  ClothPainter knit;
  const ClothView purl_view{Face::purl, false, 240, 60, 0, 0, 0};
  const ClothView knit_view{Face::knit, false, 240, 60, 0, 0, 0};
  design.marks = {};
  purl.paint(design, profile, rows, purl_view, 1);
  knit.paint(design, profile, rows, knit_view, 1);
  const PiecePixels hanging = purl.pixels();
  const PiecePixels front = knit.pixels();
  for (const int column : {9, 14}) {
    set_mark(design.marks.caught, design.grid, column, 0, true);
  }
  CHECK(purl.paint(design, profile, rows, purl_view, 1)); // a mark alone, with the rows as they were
  knit.paint(design, profile, rows, knit_view, 1);
  CHECK(knit.pixels().rgb == front.rgb);
  CHECK(purl.pixels().rgb != hanging.rgb);
  ClothPainter anew;
  anew.paint(design, profile, rows, purl_view);
  CHECK(anew.pixels().rgb == purl.pixels().rgb);
  const PiecePixels& lifted = purl.pixels();
  const int stitch = lifted.width / 24;
  const auto strand = [&](const PiecePixels& picture, int x) { // the brightest line of the lower rows
    int best = 0;
    for (int y = 0; y < picture.height; ++y) {
      best = at(picture, x, y).red > at(picture, x, best).red ? y : best;
    }
    return best;
  };
  CHECK(strand(lifted, 9 * stitch + stitch / 2) < strand(hanging, 9 * stitch + stitch / 2));
  CHECK(strand(lifted, 14 * stitch + stitch / 2) < strand(hanging, 14 * stitch + stitch / 2));
  CHECK(strand(lifted, 12 * stitch) <= strand(hanging, 12 * stitch));
}

TEST_CASE("nearer or from afar, the cloth is equally light") {
  const Profile profile = make_app().work.profile;
  Document design = black_on_white(24, 24);
  design.yarns[1].colour = Colour{255, 255, 255};
  const RowsToKnit rows = rows_to_knit(design, profile);
  double before = -1;
  for (const double zoom : {0.4, 0.8, 1.2, 1.6, 2.0, 2.4, 3.0}) {
    CAPTURE(zoom);
    ClothPainter painter;
    painter.paint(design, profile, rows, ClothView{Face::knit, false, 200, 200, zoom, 0, 0});
    const PiecePixels& pixels = painter.pixels();
    const double light = brightness(pixels, 0, 0, pixels.width, pixels.height);
    if (before >= 0) {
      CHECK(std::abs(light - before) < 16); // no jump from one step to the next
    }
    before = light;
  }
}

TEST_CASE("from afar the side that is worn is seen, whichever side was looked at before") {
  const Profile profile = make_app().work.profile;
  Document design = black_on_white(12, 4);
  design.grid.set(1, 0, true);
  design.grid.set(2, 0, true);
  const RowsToKnit rows = rows_to_knit(design, profile);
  const auto seen = [&](Face before) {
    ClothPainter painter;
    painter.paint(design, profile, rows, ClothView{before, true, 960, 40, 0, 0, 0});
    return painter.pixels().rgb;
  };
  CHECK(seen(Face::purl) == seen(Face::knit));
}

TEST_CASE("from afar 60 cm of the repeat are seen, however narrow the piece") {
  const Profile profile = make_app().work.profile;
  Document design = black_on_white(12, 4);
  design.grid.set(0, 0, true);
  design.piece.stitches = 12;
  const RowsToKnit rows = rows_to_knit(design, profile);
  ClothPainter painter;
  painter.paint(design, profile, rows, ClothView{Face::knit, true, 960, 40, 0, 0, 0});
  const PiecePixels& pixels = painter.pixels(); // 96 stitches of 6.25 mm, 10 px each: eight repeats
  REQUIRE(pixels.width == 960);
  int dark = 0;
  for (int stitch = 0; stitch < 96; ++stitch) {
    dark += brightness(pixels, stitch * 10, pixels.height - 7, stitch * 10 + 10, pixels.height - 1) < 60 ? 1 : 0;
  }
  CHECK(dark == 8);
}

TEST_CASE("the place under the pointer stays there when the piece is brought nearer") {
  App app = make_app();
  app.view.piece_box = {100, 100, 400, 300};
  refresh(app);
  const ScreenPoint anchor{300, 150};
  const auto place_under = [&] {
    const double px = app.caches.piece.painter.px_per_mm();
    return std::pair{app.view.piece_middle.x + (anchor.x - 250) / px, app.view.piece_middle.y + (200 - anchor.y) / px};
  };
  const auto before = place_under();
  editor::apply(app, ZoomPiece{2.0F, anchor});
  refresh(app);
  CHECK(place_under().first == doctest::Approx(before.first).epsilon(0.01));
  CHECK(place_under().second == doctest::Approx(before.second).epsilon(0.01));
  editor::apply(app, Run{Command::piece_fit});
  refresh(app);
  CHECK_FALSE(app.view.piece_zoom.has_value());
}

TEST_CASE("of a million rows a pixel shows some, and their light is that of all") {
  const Profile profile = make_app().work.profile;
  Document design = black_on_white(24, 1000);
  design.piece.stitches = 24;
  for (int row = 0; row < 1000; ++row) {
    for (int column = 0; column < 24; ++column) {
      design.grid.set(column, row, row % 4 == 0); // a quarter of the light is missing in every repeat of four rows
    }
  }
  design.piece.times = 1000;
  const RowsToKnit rows = rows_to_knit(design, profile);
  REQUIRE(rows.rows.size() == 1'000'000);
  const PiecePixels picture = picture_of_piece(design, profile, rows, Face::knit, 200, 200);
  const double expected = 255 * (1.055 * std::pow(0.75, 1 / 2.4) - 0.055); // IEC 61966-2-1
  CHECK(brightness(picture, 0, 0, picture.width, picture.height) == doctest::Approx(expected).epsilon(0.01));
}
