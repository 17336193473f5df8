// Orbits of the seven frieze groups, and strokes completed under them.
#include "design/wrap.hpp"
#include "drawing/frieze_parts.hpp"
#include "drawing/shapes.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>

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
  Grid covered(many ? width : 0, many ? height : 0);
  for (const Cell cell : stroke) {
    const auto inside = [&](const Movement& movement) {
      const int row = movement.of(cell).row;
      return row >= 0 && row < height;
    };
    if (!std::ranges::all_of(movements, inside)) {
      whole.without_partner.push_back(cell);
    } else if (many) {
      each_partner(cell, [&](Cell partner) { covered.set(partner.column, partner.row, true); });
    } else {
      each_partner(cell, [&](Cell partner) { whole.cells.push_back(partner); });
    }
  }
  if (many) {
    whole.cells = contrast_cells(covered);
  } else {
    sort_once(whole.cells);
  }
  sort_once(whole.without_partner);
  return whole;
}

} // namespace punchwright
