// Lengths as people read and type them: centimetres and millimetres, or inches. Files keep millimetres; only what is
// shown and typed changes, in this one place.
#pragma once

#include <string>
#include <string_view>

namespace punchwright {

enum class LengthUnit { centimetres, inches };

// The inch is 25.4 mm exactly: international yard and pound agreement, 1959.
constexpr double mm_per_inch = 25.4;
constexpr double metres_per_yard = 0.9144; // of the same agreement
constexpr double metres_per_foot = metres_per_yard / 3;

// A number for people as exactly as it is known, six digits at most: "4.56", "142"; with the language's decimal sign.
[[nodiscard]] std::string plain_number(double number);
// The same with all its digits, as somebody typed it.
[[nodiscard]] std::string typed_number(double number);

// A small length in the unit that it is typed in: millimetres, or inches.
[[nodiscard]] double small_length(double mm, LengthUnit unit);
[[nodiscard]] double mm_of(double typed, LengthUnit unit);
// "mm" or "in".
[[nodiscard]] std::string_view small_unit(LengthUnit unit);

// "31.2 mm" or "1.23 in": with so many decimals in millimetres, and with what tells as much in inches.
[[nodiscard]] std::string small_length_text(double mm, LengthUnit unit, int decimals = 1);
// "58 cm" or "22.8 in".
[[nodiscard]] std::string long_length_text(double mm, LengthUnit unit);
// "58 × 84 cm" or "22.8 × 33.1 in"; below 1 cm "0.5 cm".
[[nodiscard]] std::string size_text(double across_mm, double upwards_mm, LengthUnit unit);
// "2.8 m" or "9.2 ft": how far away something is.
[[nodiscard]] std::string distance_text(double metres, LengthUnit unit);
// "742 m" or "812 yd" of yarn, rounded up, so that it is enough.
[[nodiscard]] std::string yarn_length_text(double metres, LengthUnit unit);

// What a gauge counts over: 10 cm, or 4 inches as patterns in inches do (Craft Yarn Council's yarn weights).
[[nodiscard]] std::string_view gauge_span_text(LengthUnit unit);
// Stitches or rows over that span, from those over 10 cm, and back.
[[nodiscard]] double gauge_shown(double over_10_cm, LengthUnit unit);
[[nodiscard]] double gauge_kept(double typed, LengthUnit unit);

} // namespace punchwright
