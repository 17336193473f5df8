// A design as a small picture, of a cell for each stitch or for several.
#include "pictures/small_picture.hpp"

#include <cstdlib>
#include <doctest/doctest.h>

using namespace punchwright;

TEST_CASE("a small picture has the drawing's colours, row 1 below, side by side to the wished shape") {
  Document design = blank_document(4, 2);
  design.gauge = {10, 10};
  design.grid.set(0, 0, true);
  const Colour main = yarn_of(design, design.bands[0].main).colour;
  const Colour contrast = yarn_of(design, *design.bands[0].contrast).colour;
  const SmallPicture one = small_picture(design, 2);
  CHECK(one.columns == 4);
  CHECK(one.rows == 2);
  CHECK(one.shape == doctest::Approx(1));
  CHECK(one.at(0, 0) == contrast);
  CHECK(one.at(1, 0) == main);
  CHECK(one.at(0, 1) == main);
  const SmallPicture two = small_picture(design, 4);
  CHECK(two.columns == 8);
  CHECK(two.at(4, 0) == contrast);
}

TEST_CASE("a large drawing is mixed down to its size, and keeps its shape") {
  Document design = blank_document(200, 2000);
  for (int row = 0; row < 2000; ++row) {
    for (int column = row % 2; column < 200; column += 2) {
      design.grid.set(column, row, true);
    }
  }
  const SmallPicture picture = small_picture(design, 1, 100);
  CHECK(picture.columns == 100);
  CHECK(picture.rows == 100);
  const Colour main = yarn_of(design, design.bands[0].main).colour;
  const Colour contrast = yarn_of(design, *design.bands[0].contrast).colour;
  CHECK(std::abs(picture.at(50, 50).red - (main.red + contrast.red) / 2) <= 1); // a chequered ground is their mean
}
