// Between millimetres and what is shown.
#include "design/lengths.hpp"

#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright {

namespace {

constexpr double gauge_inches = 4;
constexpr double gauge_mm = 100;

bool in_inches(LengthUnit unit) {
  return unit == LengthUnit::inches;
}

// Half a centimetre would round to none, or to twice as much.
std::string centimetres(double mm) {
  return decimal(mm / 10, mm < 10 && mm > 0 ? 1 : 0);
}

// The language's, for the point.
std::string with_decimal_sign(std::string number) {
  std::ranges::replace(number, '.', chosen_language().decimal_sign);
  return number;
}

double rounded(double value, double parts) {
  return std::round(value * parts) / parts;
}

} // namespace

std::string plain_number(double number) {
  return with_decimal_sign(fmt::format("{:.6g}", number));
}

std::string typed_number(double number) {
  return with_decimal_sign(fmt::format("{}", number));
}

double small_length(double mm, LengthUnit unit) {
  return in_inches(unit) ? rounded(mm / mm_per_inch, 10000) : mm;
}

double mm_of(double typed, LengthUnit unit) {
  return in_inches(unit) ? rounded(typed * mm_per_inch, 10000) : typed;
}

std::string_view small_unit(LengthUnit unit) {
  return in_inches(unit) ? tr("in") : tr("mm");
}

std::string small_length_text(double mm, LengthUnit unit, int decimals) {
  return in_inches(unit) ? said("{} in", decimal(mm / mm_per_inch, decimals + 1))
                         : said("{} mm", decimal(mm, decimals));
}

std::string long_length_text(double mm, LengthUnit unit) {
  return in_inches(unit) ? said("{} in", decimal(mm / mm_per_inch, 1)) : said("{} cm", centimetres(mm));
}

std::string size_text(double across_mm, double upwards_mm, LengthUnit unit) {
  return in_inches(unit) ? said("{} × {} in", decimal(across_mm / mm_per_inch, 1), decimal(upwards_mm / mm_per_inch, 1))
                         : said("{} × {} cm", centimetres(across_mm), centimetres(upwards_mm));
}

std::string distance_text(double metres, LengthUnit unit) {
  // Rounded down, so that it isn't promised too far.
  const double shown = std::floor((in_inches(unit) ? metres / metres_per_foot : metres) * 10 + 1e-6) / 10;
  return in_inches(unit) ? said("{} ft", decimal(shown, 1)) : said("{} m", decimal(shown, 1));
}

std::string yarn_length_text(double metres, LengthUnit unit) {
  const double shown = std::ceil((in_inches(unit) ? metres / metres_per_yard : metres) - 1e-6);
  return in_inches(unit) ? said("{} yd", decimal(shown, 0)) : said("{} m", decimal(shown, 0));
}

std::string_view gauge_span_text(LengthUnit unit) {
  return in_inches(unit) ? tr("4 inches") : tr("10 cm");
}

double gauge_shown(double over_10_cm, LengthUnit unit) {
  return in_inches(unit) ? rounded(over_10_cm * gauge_inches * mm_per_inch / gauge_mm, 100) : over_10_cm;
}

double gauge_kept(double typed, LengthUnit unit) {
  return in_inches(unit) ? rounded(typed * gauge_mm / (gauge_inches * mm_per_inch), 10000) : typed;
}

} // namespace punchwright
