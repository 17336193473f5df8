// Orbits of the seven frieze groups, and strokes completed under them.
#include "design/row_ring.hpp"
#include "design/wrap.hpp"
#include "drawing/frieze_parts.hpp"
#include "drawing/shapes.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <functional>

namespace punchwright {
namespace {

constexpr std::array groups = {FriezeGroup::p1, FriezeGroup::p11g, FriezeGroup::p1m1, FriezeGroup::p11m,
                               FriezeGroup::p2, FriezeGroup::p2mg, FriezeGroup::p2mm};

struct Words {
  std::string_view notation;
  const char* description;
  const char* short_name;
};

Words words_of(FriezeGroup group) {
  switch (group) {
  case FriezeGroup::p1: return {"p1", noted("no symmetry"), noted("no symmetry")};
  case FriezeGroup::p11g: return {"p11g", noted("glides: turned upside down half a repeat on"), noted("glides")};
  case FriezeGroup::p1m1: return {"p1m1", noted("upright mirrors: left mirrors right"), noted("left mirrors right")};
  case FriezeGroup::p11m: return {"p11m", noted("a level mirror: below mirrors above"), noted("below mirrors above")};
  case FriezeGroup::p2: return {"p2", noted("half turns"), noted("half turns")};
  case FriezeGroup::p2mg:
    return {"p2mg", noted("upright mirrors and half turns by turns"), noted("mirrors and half turns")};
  case FriezeGroup::p2mm: return {"p2mm", noted("mirrors both ways"), noted("mirrors both ways")};
  }
  return {"", "", ""};
}

} // namespace

std::span<const FriezeGroup> frieze_groups() {
  return groups;
}

std::string_view notation_of(FriezeGroup group) {
  return words_of(group).notation;
}

std::string_view description_of(FriezeGroup group) {
  return tr(words_of(group).description);
}

std::string_view short_name_of(FriezeGroup group) {
  return tr(words_of(group).short_name);
}

bool uses_upright_axis(FriezeGroup group) {
  return group == FriezeGroup::p1m1 || group == FriezeGroup::p2 || group == FriezeGroup::p2mg ||
         group == FriezeGroup::p2mm;
}

bool uses_level_axis(FriezeGroup group) {
  return group != FriezeGroup::p1 && group != FriezeGroup::p1m1;
}

bool needs_even_repeat(FriezeGroup group) {
  return group == FriezeGroup::p11g || group == FriezeGroup::p2mg;
}

Frieze centred_frieze(FriezeGroup group, int width, int height) {
  return {group, width, uses_upright_axis(group) ? width - 1 : 0, uses_level_axis(group) ? height - 1 : 0};
}

Error odd_repeat(FriezeGroup group, int repeat) {
  return Error{{},
               0,
               0,
               said("{} needs a repeat of an even number of stitches, and this one has {}: half a repeat on, a "
                    "stitch would lie between two columns",
                    notation_of(group), repeat),
               tr("make the drawing one stitch wider or narrower, or choose another symmetry")};
}

Failure unusable_frieze(const Frieze& frieze, int width, int height) {
  const auto refused = [](std::string message, std::string remedy) {
    return Error{{}, 0, 0, std::move(message), std::move(remedy)};
  };
  if (frieze.repeat < 1 || width % frieze.repeat != 0) {
    return refused(said("a repeat of {} stitches doesn't divide the {} of the drawing", frieze.repeat, width),
                   tr("choose a repeat that fits a whole number of times"));
  }
  if (needs_even_repeat(frieze.group) && frieze.repeat % 2 != 0) {
    return odd_repeat(frieze.group, frieze.repeat);
  }
  if (frieze.upright < 0 || frieze.upright >= frieze.repeat || frieze.level < 0 || frieze.level > 2 * (height - 1)) {
    return refused(tr("an axis lies outside the drawing"),
                   said("an upright axis at 0 to {} half stitches, a level one at 0 to {} half rows", frieze.repeat - 1,
                        2 * (height - 1)));
  }
  return std::nullopt;
}

Movements movements_of(const Frieze& frieze) {
  const Movement mirror{Turned::yes, frieze.upright, Turned::no, 0};
  const Movement upside_down{Turned::no, 0, Turned::yes, frieze.level};
  const Movement glide{Turned::no, frieze.repeat / 2, Turned::yes, frieze.level};
  const Movement half_turn{Turned::yes, frieze.upright, Turned::yes, frieze.level};
  const Movement half_turn_aside{Turned::yes, frieze.upright + frieze.repeat / 2, Turned::yes, frieze.level};
  const Movement stay;
  switch (frieze.group) {
  case FriezeGroup::p1: return {stay};
  case FriezeGroup::p11g: return {stay, glide};
  case FriezeGroup::p1m1: return {stay, mirror};
  case FriezeGroup::p11m: return {stay, upside_down};
  case FriezeGroup::p2: return {stay, half_turn};
  case FriezeGroup::p2mg: return {stay, mirror, glide, half_turn_aside};
  case FriezeGroup::p2mm: return {stay, mirror, upside_down, half_turn};
  }
  return {stay};
}

std::vector<Cell> orbit_of(Cell cell, const Frieze& frieze, int width) {
  std::vector<Cell> orbit;
  for (const Movement& movement : movements_of(frieze)) {
    const Cell moved = movement.of(cell);
    for (int along = 0; along < width; along += frieze.repeat) {
      orbit.push_back({round_edge(moved.column + along, width), moved.row});
    }
  }
  std::ranges::sort(orbit);
  const auto repeated = std::ranges::unique(orbit);
  orbit.erase(repeated.begin(), repeated.end());
  return orbit;
}

namespace {

// Whether all movements leave the row in the strip; where it goes doesn't depend on the column.
bool stays_inside(const Movements& movements, int row, int height) {
  return std::ranges::all_of(movements, [&](const Movement& movement) {
    const int there = movement.of(Cell{0, row}).row;
    return there >= 0 && there < height;
  });
}

void add(RowWords& row, const RowWords& more) {
  std::ranges::transform(row, more, row.begin(), std::bit_or<>());
}

// The row with what lies whole repeats beside it: twice as far each time, until all of them are there.
RowWords along_repeats(RowWords row, int repeat, int width) {
  for (int along = repeat; along < width; along *= 2) {
    add(row, turned_ring(row, width, along));
  }
  return row;
}

// Where the movement takes the row's stitches; as in `turned_ring`, places count to the left.
RowWords moved(const RowWords& row, const Movement& movement, int width) {
  return movement.left_right == Turned::yes
             ? turned_ring(read_backwards(row, width), width, round_edge(width - 1 - movement.across, width))
             : turned_ring(row, width, round_edge(-movement.across, width));
}

} // namespace

Grid completed(const Grid& stroke, const Frieze& frieze) {
  const Movements movements = movements_of(frieze);
  Grid whole(stroke.width(), stroke.height());
  for (int row = 0; row < stroke.height(); ++row) {
    if (stroke.all_main(row) || !stays_inside(movements, row, stroke.height())) {
      continue;
    }
    const RowWords stitches = along_repeats(words_of(stroke.row(row)), frieze.repeat, stroke.width());
    for (const Movement& movement : movements) {
      const auto there = whole.row(movement.of(Cell{0, row}).row);
      std::ranges::transform(there, moved(stitches, movement, stroke.width()), there.begin(), std::bit_or<>());
    }
  }
  return whole;
}

CompletedStroke complete_stroke(std::span<const Cell> stroke, const Frieze& frieze, int width, int height) {
  CompletedStroke whole;
  const auto sort_once = [](std::vector<Cell>& cells) {
    std::ranges::sort(cells);
    const auto repeated = std::ranges::unique(cells);
    cells.erase(repeated.begin(), repeated.end());
  };
  const Movements movements = movements_of(frieze);
  const auto each_partner = [&](Cell cell, auto&& visit) {
    for (const Movement& movement : movements) {
      const Cell moved = movement.of(cell);
      for (int along = 0; along < width; along += frieze.repeat) {
        visit(Cell{round_edge(moved.column + along, width), moved.row});
      }
    }
  };
  const auto partners = movements.size() * static_cast<std::size_t>(width / frieze.repeat);
  const bool many = are_many(stroke.size() * partners, width, height);
  Grid drawn(many ? width : 0, many ? height : 0);
  for (const Cell cell : stroke) {
    if (!stays_inside(movements, cell.row, height)) {
      whole.without_partner.push_back(cell);
    } else if (many) {
      drawn.set(round_edge(cell.column, width), cell.row, true);
    } else {
      each_partner(cell, [&](Cell partner) { whole.cells.push_back(partner); });
    }
  }
  if (many) {
    whole.cells = contrast_cells(completed(drawn, frieze));
  } else {
    sort_once(whole.cells);
  }
  sort_once(whole.without_partner);
  return whole;
}

} // namespace punchwright
