// The axes of a chosen symmetry: those that the drawing has, where they go with rows and columns, and their signs. By
// definition: whatever is done to the lines on both sides of an axis alike, the drawing keeps its symmetry about it.
#include "design/edits.hpp"
#include "drawing/axes.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using test::Dice;

namespace {

// A strip that has the frieze: some stitches of it, and all that belong to them.
Grid strip_with(const Frieze& frieze, int width, int height, Dice& dice) {
  std::vector<Cell> stroke;
  for (int stitch = 0; stitch < width * height / 6; ++stitch) {
    stroke.push_back({dice.throw_one(width), dice.throw_one(height)});
  }
  Grid strip(width, height);
  for (const Cell cell : complete_stroke(stroke, frieze, width, height).cells) {
    strip.set(cell.column, cell.row, true);
  }
  return strip;
}

Frieze any_frieze(FriezeGroup group, int width, int height, Dice& dice) {
  return {group, width, uses_upright_axis(group) ? dice.throw_one(width) : 0,
          uses_level_axis(group) ? dice.throw_one(2 * height - 1) : 0};
}

Frieze after(const Frieze& frieze, const Edit& edit, int width, int height) {
  return axes_after(frieze, line_changes(edit, width, height), width, height);
}

} // namespace

TEST_CASE("a group that the drawing has is chosen with the drawing's own axes, wherever they lie") {
  Dice dice(41);
  for (const FriezeGroup group : frieze_groups()) {
    for (int time = 0; time < 200; ++time) {
      CAPTURE(notation_of(group));
      CAPTURE(time);
      const int width = 2 * (1 + dice.throw_one(16));
      const int height = 1 + dice.throw_one(12);
      const Grid strip = strip_with(any_frieze(group, width, height, dice), width, height, dice);
      const Frieze chosen = frieze_for(strip, group);
      CHECK(chosen.group == group);
      CHECK(has_symmetry(strip, chosen));
    }
  }
}

TEST_CASE("a group is chosen with the axes of a larger one that has it") {
  Dice dice(42);
  const Frieze both{FriezeGroup::p2mm, 24, 5, 7};
  const Grid strip = strip_with(both, 24, 12, dice);
  CHECK(frieze_for(strip, FriezeGroup::p1m1) == Frieze{FriezeGroup::p1m1, 24, 5, 0});
  CHECK(frieze_for(strip, FriezeGroup::p11m) == Frieze{FriezeGroup::p11m, 24, 0, 7});
  CHECK(frieze_for(strip, FriezeGroup::p2) == Frieze{FriezeGroup::p2, 24, 5, 7});
  const Frieze by_turns{FriezeGroup::p2mg, 24, 5, 7};
  const Grid other = strip_with(by_turns, 24, 12, dice);
  CHECK(frieze_for(other, FriezeGroup::p2) == Frieze{FriezeGroup::p2, 24, 17, 7}); // a quarter beside the mirror
  CHECK(frieze_for(other, FriezeGroup::p11g) == Frieze{FriezeGroup::p11g, 24, 0, 7});
}

TEST_CASE("where the drawing hasn't the group, its axes are in the middle; an empty drawing has them there, too") {
  Grid strip(24, 12);
  CHECK(frieze_for(strip, FriezeGroup::p2mg) == centred_frieze(FriezeGroup::p2mg, 24, 12));
  for (const Cell cell : {Cell{3, 2}, Cell{4, 2}, Cell{4, 5}}) {
    strip.set(cell.column, cell.row, true);
  }
  for (const FriezeGroup group : frieze_groups()) {
    CHECK(frieze_for(strip, group) == centred_frieze(group, 24, 12));
  }
}

TEST_CASE("rows and columns put in or taken out on one side of the axes leave the drawing's symmetry in them") {
  // Main round the drawing, so that what comes and goes there changes no stitch.
  Dice dice(43);
  const Frieze frieze{FriezeGroup::p2mm, 20, 19, 18};
  Document design = blank_document(20, 19);
  for (const Cell cell : complete_stroke(std::vector{Cell{6, 5}, Cell{7, 8}, Cell{9, 9}}, frieze, 20, 19).cells) {
    design.grid.set(cell.column, cell.row, true);
  }
  Frieze axes = frieze;
  const auto check = [&](const Edit& edit) {
    axes = after(axes, edit, design.grid.width(), design.grid.height());
    REQUIRE(apply_edit(design, edit));
    Grid alone(design.grid.width() * 3, design.grid.height() * 3); // main enough round it for the symmetry to be seen
    for (int row = 0; row < design.grid.height(); ++row) {
      for (int column = 0; column < design.grid.width(); ++column) {
        alone.set(column + design.grid.width(), row + design.grid.height(), design.grid.at(column, row));
      }
    }
    const int upright = (axes.upright + 2 * design.grid.width()) % alone.width();
    const int other = (axes.upright + 3 * design.grid.width()) % alone.width();
    const int level = axes.level + 2 * design.grid.height();
    CHECK((has_symmetry(alone, {FriezeGroup::p2mm, alone.width(), upright, level}) ||
           has_symmetry(alone, {FriezeGroup::p2mm, alone.width(), other, level})));
  };
  check(InsertRows{0, 1});
  check(InsertRows{2, 3});
  check(InsertColumns{1, 1});
  check(DeleteRows{0, 2});
  check(DuplicateRows{0, 2});
  check(DuplicateColumns{0, 3});
  check(DeleteColumns{1, 2});
  check(Resize{27, 25, AcrossAnchor::right, UpAnchor::top});
  check(Resize{24, 24, AcrossAnchor::middle, UpAnchor::middle});
  check(MoveRows{0, 2, 22});
  check(MoveRows{20, 3, 0});
  check(MoveColumns{0, 1, 23});
  check(Shift{1, -1});
  check(Shift{-2, 2});
  check(MirrorLeftRight{});
  check(MirrorUpsideDown{});
}

TEST_CASE("what is inserted at an axis has it in its middle, and deleted round it leaves it where it was") {
  const Frieze level{FriezeGroup::p11m, 8, 0, 9}; // between rows 5 and 6
  CHECK(after(level, InsertRows{5, 3}, 8, 12).level == 12);
  CHECK(after(level, InsertRows{4, 1}, 8, 12).level == 11);
  CHECK(after(level, InsertRows{6, 1}, 8, 12).level == 9);
  CHECK(after(level, DeleteRows{3, 4}, 8, 12).level == 5);
  const Frieze through{FriezeGroup::p11m, 8, 0, 8};            // through row 5
  CHECK(after(through, MoveRows{4, 1, 9}, 8, 12).level == 18); // it goes along
  CHECK(after(through, MoveRows{2, 1, 9}, 8, 12).level == 6);
  CHECK(after(through, MoveRows{7, 2, 1}, 8, 12).level == 12);
  CHECK(after(through, DeleteRows{0, 11}, 8, 12).level == 0);
}

TEST_CASE("taken back, the changes lead to where the axes were, but for those that were deleted themselves") {
  Dice dice(44);
  for (int time = 0; time < 2000; ++time) {
    CAPTURE(time);
    const int width = 2 + dice.throw_one(10);
    const int height = 2 + dice.throw_one(10);
    const Frieze frieze = any_frieze(FriezeGroup::p2mm, width, height, dice);
    const int first = dice.throw_one(height - 1);
    std::vector<Edit> edits{InsertRows{first, 2}, InsertColumns{dice.throw_one(width + 1), 2}, Shift{0, 0},
                            MirrorUpsideDown{}, Resize{width + 5, height + 3, AcrossAnchor::middle, UpAnchor::top}};
    if (frieze.level % 2 == 0) { // between two rows it may be at a place where the moved one comes between
      edits.push_back(MoveRows{first, 1, dice.throw_one(height)});
    }
    for (const Edit& edit : edits) {
      const auto changes = line_changes(edit, width, height);
      int wide = width;
      int tall = height;
      for (const LineChange& change : changes) {
        (change.rows ? tall : wide) += change.kind == LineChange::Kind::inserted ? change.count : 0;
      }
      const Frieze there = axes_after(frieze, changes, width, height);
      CHECK(axes_after(there, taken_back(changes), wide, tall).level == frieze.level);
    }
  }
}

TEST_CASE("a glide is unusable where the width becomes odd, says why, and is usable again where it becomes even") {
  const Frieze glide{FriezeGroup::p11g, 8, 0, 4};
  const Frieze odd = after(glide, InsertColumns{3, 1}, 8, 5);
  const Failure why = unusable_frieze(odd, 9, 5);
  REQUIRE(why);
  CHECK(why->text().find("even number") != std::string::npos);
  CHECK(after(odd, DeleteColumns{3, 1}, 9, 5) == glide);
  CHECK_FALSE(unusable_frieze(after(odd, Resize{18, 5, AcrossAnchor::left, UpAnchor::bottom}, 9, 5), 18, 5));
}

TEST_CASE("a frieze is found about its own axes where the drawing has it there, else about the drawing's, or nowhere") {
  Dice dice(45);
  for (const FriezeGroup group : frieze_groups()) {
    for (int time = 0; time < 100; ++time) {
      CAPTURE(notation_of(group));
      CAPTURE(time);
      const Frieze wished = any_frieze(group, 12, 7, dice);
      const Grid strip = strip_with(wished, 12, 7, dice);
      CHECK(frieze_in(strip, wished) == wished);
      const auto other = frieze_in(strip, any_frieze(group, 12, 7, dice));
      REQUIRE(other);
      CHECK(other->group == group);
      CHECK(has_symmetry(strip, *other));
    }
  }
  Grid corner(4, 4); // has none
  for (const Cell cell : {Cell{0, 0}, Cell{1, 0}, Cell{0, 1}, Cell{0, 2}}) {
    corner.set(cell.column, cell.row, true);
  }
  CHECK_FALSE(frieze_in(corner, centred_frieze(FriezeGroup::p2, 4, 4)));
  CHECK_FALSE(frieze_in(corner, centred_frieze(FriezeGroup::p11g, 4, 4)));
}

TEST_CASE("mirrors, glides and the middles of half turns have signs of their own, so that no two groups look alike") {
  using Level = AxisSigns::Level;
  const auto signs = [](FriezeGroup group) {
    return axis_signs({group, 8, uses_upright_axis(group) ? 3 : 0, uses_level_axis(group) ? 4 : 0}, 8);
  };
  CHECK(signs(FriezeGroup::p1).mirrors.empty());
  CHECK(signs(FriezeGroup::p1).level == Level::none);
  CHECK(signs(FriezeGroup::p11g).level == Level::glide);
  CHECK(signs(FriezeGroup::p1m1).mirrors == std::vector{3, 11});
  CHECK(signs(FriezeGroup::p1m1).level == Level::none);
  CHECK(signs(FriezeGroup::p11m).level == Level::mirror);
  CHECK(signs(FriezeGroup::p2).mirrors.empty());
  CHECK(signs(FriezeGroup::p2).centres == std::vector{3, 11});
  CHECK(signs(FriezeGroup::p2).level == Level::none);
  CHECK(signs(FriezeGroup::p2mg).mirrors == std::vector{3, 11});
  CHECK(signs(FriezeGroup::p2mg).centres == std::vector{7, 15});
  CHECK(signs(FriezeGroup::p2mg).level == Level::glide);
  CHECK(signs(FriezeGroup::p2mm).mirrors == std::vector{3, 11});
  CHECK(signs(FriezeGroup::p2mm).centres == std::vector{3, 11});
  CHECK(signs(FriezeGroup::p2mm).level == Level::mirror);
  CHECK(axis_signs({FriezeGroup::p1m1, 4, 1, 0}, 8).mirrors == std::vector{1, 5, 9, 13});
}
