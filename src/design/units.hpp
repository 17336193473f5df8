// The trade's own units and sides as types, so that a needle is never taken for a column or a row.
// Every conversion between needle and bed position stands in this file, with its picture.
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace punchwright {

enum class Side { left, right }; // as the knitter sees it, facing the bed

[[nodiscard]] constexpr Side other(Side side) {
  return side == Side::left ? Side::right : Side::left;
}

enum class Travel { leftwards, rightwards }; // which way the carriage goes

// A carriage that stands on the right can only travel leftwards, and ends on the left.
[[nodiscard]] constexpr Travel travel_from(Side side) {
  return side == Side::right ? Travel::leftwards : Travel::rightwards;
}
[[nodiscard]] constexpr Side end_of(Travel travel) {
  return travel == Travel::leftwards ? Side::left : Side::right;
}

enum class Face { knit, purl }; // which side of the cloth; the purl side faces the knitter

// A needle of the bed. Needles are named outwards from the middle, there is no needle 0; `position`
// counts them from left to right without a gap:
//
//     name      …  L3   L2   L1 | R1   R2   R3  …
//     position  …  -3   -2   -1 |  0    1    2  …
struct Needle {
  int position = 0;

  auto operator<=>(const Needle&) const = default;
};

[[nodiscard]] constexpr Needle left_needle(int number) {
  return Needle{-number};
}
[[nodiscard]] constexpr Needle right_needle(int number) {
  return Needle{number - 1};
}

// "L36", "R1".
[[nodiscard]] std::string name_of(Needle needle);

// The needle of that name: L or R and a number from 1 to 9999 without leading zeros; else nothing.
[[nodiscard]] std::optional<Needle> needle_named(std::string_view name);

// Leftmost needle of `stitches` stitches in the middle of the bed; an odd number has its extra
// needle on the right: 63 stitches stand on L31 to R32 (common practice).
[[nodiscard]] constexpr Needle centred_first_needle(int stitches) {
  return Needle{-(stitches / 2)};
}

} // namespace punchwright
