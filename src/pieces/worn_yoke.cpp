// Rings from the stitches that can be seen; the picture asks for each point which stitch lies there.
#include "pieces/worn_yoke.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <string_view>

namespace punchwright {

namespace {

int visible(const OpenedYoke& opened, int stitches) {
  return stitches - 2 * opened.yoke.edge;
}

// Where the pieces begin round the ring, mm from the left end of the first piece; at last the whole ring.
using Begins = std::vector<double>;

// At the height of that tier's first row, or at the top.
Begins begins_round(const OpenedYoke& opened, const SizePlan& plan, std::size_t tier) {
  const bool top = tier == opened.tiers.size();
  const double stitch = opened.tiers[std::min(tier, opened.tiers.size() - 1)].document.gauge.stitch_mm();
  Begins begins{0};
  for (const PieceOfSize& piece : plan.pieces) {
    const int wide = visible(opened, top ? piece.tiers.back().shaping.after : piece.tiers[tier].stitches);
    begins.push_back(begins.back() + wide * stitch);
  }
  return begins;
}

Begins wished_round(const Yoke& yoke, std::size_t size, bool top) {
  Begins begins{0};
  for (std::size_t piece = 0; piece < yoke.pieces.size(); ++piece) {
    const YokePiece& wished = yoke.pieces[widths_of(yoke, piece)];
    begins.push_back(begins.back() + (top ? wished.top_cm : wished.bottom_cm).at(size) * 10);
  }
  return begins;
}

template <class Pieces> std::vector<std::string> names_of(const Pieces& pieces) {
  std::vector<std::string> names;
  for (const auto& piece : pieces) {
    names.push_back(piece.name);
  }
  return names;
}

// What is worn at the front is called so by whoever began the yoke (add_pullover, add_poncho), in her language; a file
// of hers is as right in any other.
bool is_front(std::string_view name) {
  constexpr std::array<std::string_view, 3> fronts{"front", "Vorderteil", "vorn "};
  return std::ranges::any_of(fronts, [name](std::string_view front) { return name.starts_with(front); });
}

std::string first_word(const std::string& name) {
  return name.substr(0, name.find(' '));
}

// Which pieces are worn at the front: those called so, else the first one and those beside it of the same
// first word, since names are in any language: "Vorderteil rechts", "Vorderteil links". Where all have that word it
// says nothing.
std::vector<bool> worn_at_front(const std::vector<std::string>& names) {
  std::vector<bool> front;
  for (const std::string& name : names) {
    front.push_back(is_front(name));
  }
  if (std::ranges::find(front, true) == front.end()) {
    const std::string word = first_word(names.front());
    std::size_t alike = 1;
    while (alike < names.size() && first_word(names[alike]) == word) {
      ++alike;
    }
    const std::size_t count = alike == names.size() ? 1 : alike;
    std::fill_n(front.begin(), count, true);
  }
  return front;
}

// The middle of what is worn at the front, as a share of the lowest tier's ring, from the left end of the first piece.
double middle_of_front(const Begins& lowest, const std::vector<std::string>& names) {
  double low = -1;
  double high = lowest[1];
  const std::vector<bool> front = worn_at_front(names);
  for (std::size_t piece = 0; piece < names.size(); ++piece) {
    if (front[piece]) {
      low = low < 0 ? lowest[piece] : low;
      high = lowest[piece + 1];
    }
  }
  return (std::max(low, 0.0) + high) / 2 / lowest.back();
}

// `front_share`: the middle of the front, as a share of the ring.
WornRing ring_of(const Begins& begins, double front_share) {
  const double all = begins.back();
  WornRing ring;
  ring.radius = all / (2 * std::numbers::pi);
  for (const double begin : begins) {
    ring.turns.push_back(begin / all - front_share);
  }
  return ring;
}

// Which stitch lies where.
class Worn {
public:
  Worn(const OpenedYoke& opened, const SizePlan& plan, std::size_t size)
      : opened_(opened), plan_(plan), cloth_(yoke_cloth(opened, plan, size)), row_mm_(row_heights(opened, size)),
        rings_(worn_rings(opened, plan)) {
    for (const WornRing& ring : rings_) {
      widest_ = std::max(widest_, ring.radius);
    }
  }

  double widest() const { return widest_; }

  // mm from the middle; y upwards. Nothing: no cloth there.
  std::optional<Colour> at(double x, double y) const {
    const auto place = place_on_rings(rings_, x, y);
    if (!place) {
      return std::nullopt;
    }
    const auto& [tier, piece, up, along] = *place;
    const int row = row_at(tier, up);
    const int stitches = visible(opened_, stitches_in_row(opened_, plan_, piece, tier, row));
    const int stitch = std::clamp(static_cast<int>(along * stitches), 0, stitches - 1);
    return cloth_.at(cloth_.left[tier][piece] + opened_.yoke.edge + stitch, row);
  }

private:
  // By its height: pattern rows and plain ones may be of different ones.
  int row_at(std::size_t tier, double up) const {
    const auto first = row_mm_.begin() + plan_.heights[tier];
    const auto end = row_mm_.begin() + plan_.heights[tier + 1];
    const auto above = std::upper_bound(first, end, std::lerp(*first, *end, up));
    return static_cast<int>(above - row_mm_.begin()) - 1;
  }

  const OpenedYoke& opened_;
  const SizePlan& plan_;
  YokeCloth cloth_;
  std::vector<double> row_mm_;
  std::vector<WornRing> rings_;
  double widest_ = 0; // mm
};

// The mean of points in the cell, some either way; white where there is no cloth. `at` tells the colour at x and y, mm
// from the middle.
template <class At> Colour mean_colour(const At& at, double widest, int column, int line, int cells) {
  constexpr int points = 4;
  const double cell = 2 * widest / cells; // mm
  int red = 0;
  int green = 0;
  int blue = 0;
  for (int up = 0; up < points; ++up) {
    for (int across = 0; across < points; ++across) {
      const double x = (column + (across + 0.5) / points) * cell - widest;
      const double y = widest - (line + (up + 0.5) / points) * cell;
      const Colour here = at(x, y).value_or(Colour{255, 255, 255});
      red += here.red;
      green += here.green;
      blue += here.blue;
    }
  }
  const auto mean = [](int sum) { return static_cast<std::uint8_t>((sum + points * points / 2) / (points * points)); };
  return {mean(red), mean(green), mean(blue)};
}

template <class At> std::vector<Colour> square_of(const At& at, double widest, int cells) {
  std::vector<Colour> picture;
  picture.reserve(static_cast<std::size_t>(cells) * static_cast<std::size_t>(cells));
  for (int line = 0; line < cells; ++line) {
    for (int column = 0; column < cells; ++column) {
      picture.push_back(mean_colour(at, widest, column, line, cells));
    }
  }
  return picture;
}

} // namespace

std::vector<WornRing> worn_rings(const OpenedYoke& opened, const SizePlan& plan) {
  const double front = middle_of_front(begins_round(opened, plan, 0), names_of(plan.pieces));
  std::vector<WornRing> rings;
  for (std::size_t tier = 0; tier <= opened.tiers.size(); ++tier) {
    rings.push_back(ring_of(begins_round(opened, plan, tier), front));
  }
  return rings;
}

std::optional<WornPlace> place_on_rings(const std::vector<WornRing>& rings, double x, double y) {
  const double radius = std::hypot(x, y);
  double turns = (std::atan2(y, x) + std::numbers::pi / 2) / (2 * std::numbers::pi);
  for (std::size_t tier = rings.size() - 1; tier-- > 0;) {
    const WornRing& low = rings[tier];
    const WornRing& high = rings[tier + 1];
    if (radius < std::min(low.radius, high.radius) || radius >= std::max(low.radius, high.radius)) {
      continue;
    }
    const double up = (radius - low.radius) / (high.radius - low.radius);
    const auto begin_of = [&](std::size_t piece) { return std::lerp(low.turns[piece], high.turns[piece], up); };
    turns -= std::floor(turns - begin_of(0)); // into the turn that begins with the first piece
    std::size_t piece = 0;
    while (piece + 2 < low.turns.size() && turns >= begin_of(piece + 1)) {
      ++piece;
    }
    const double along = (turns - begin_of(piece)) / (begin_of(piece + 1) - begin_of(piece));
    return WornPlace{tier, piece, up, along};
  }
  return std::nullopt;
}

std::array<WornRing, 2> wished_rings(const Yoke& yoke, std::size_t size) {
  const Begins bottom = wished_round(yoke, size, false);
  const double front = middle_of_front(bottom, names_of(yoke.pieces));
  return {ring_of(bottom, front), ring_of(wished_round(yoke, size, true), front)};
}

std::vector<Colour> worn_picture(const OpenedYoke& opened, const SizePlan& plan, std::size_t size, int cells) {
  const Worn worn(opened, plan, size);
  return square_of([&worn](double x, double y) { return worn.at(x, y); }, worn.widest(), cells);
}

std::vector<Colour> worn_outline(const Yoke& yoke, int cells) {
  double bottom = 0; // around, cm
  double top = 0;
  for (std::size_t piece = 0; piece < yoke.pieces.size(); ++piece) {
    bottom += yoke.pieces[widths_of(yoke, piece)].bottom_cm.at(0);
    top += yoke.pieces[widths_of(yoke, piece)].top_cm.at(0);
  }
  constexpr double mm = 10;
  const double outer = std::max(bottom, top) * mm / (2 * std::numbers::pi);
  const double inner = std::min(bottom, top) * mm / (2 * std::numbers::pi);
  const auto tiers = static_cast<double>(yoke.tiers.size());
  const auto at = [&](double x, double y) -> std::optional<Colour> {
    const double radius = std::hypot(x, y);
    if (radius >= outer || radius < inner) {
      return std::nullopt;
    }
    constexpr double band = 0.75; // of a tier; the rest is plain
    constexpr Colour pattern{112, 120, 130};
    constexpr Colour plain{196, 202, 208};
    const double up = (outer - radius) / (outer - inner) * tiers;
    return up - std::floor(up) < band ? pattern : plain;
  };
  return square_of(at, outer, cells);
}

} // namespace punchwright
