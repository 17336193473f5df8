// Centimetres and inches: what is shown, and that typing it back changes nothing.
#include "design/lengths.hpp"
#include "words/words.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace punchwright;

TEST_CASE("lengths in the unit that is wished") {
  CHECK(small_length_text(31.25, LengthUnit::centimetres) == "31.2 mm");
  CHECK(small_length_text(25.4, LengthUnit::inches) == "1.00 in");
  CHECK(small_length_text(6.25, LengthUnit::centimetres, 2) == "6.25 mm");
  CHECK(small_length_text(6.25, LengthUnit::inches, 2) == "0.246 in");
  CHECK(long_length_text(600, LengthUnit::centimetres) == "60 cm");
  CHECK(long_length_text(609.6, LengthUnit::inches) == "24.0 in");
  CHECK(size_text(508, 254, LengthUnit::inches) == "20.0 × 10.0 in");
  CHECK(size_text(508, 254, LengthUnit::centimetres) == "51 × 25 cm");
  CHECK(size_text(440, 3.6, LengthUnit::centimetres) == "44 × 0.4 cm"); // one row is no row
  CHECK(size_text(440, 10, LengthUnit::centimetres) == "44 × 1 cm");
  CHECK(long_length_text(4, LengthUnit::centimetres) == "0.4 cm");
}

TEST_CASE("a distance in metres or feet, never more than it is") {
  CHECK(distance_text(2.8, LengthUnit::centimetres) == "2.8 m");
  CHECK(distance_text(2.89, LengthUnit::centimetres) == "2.8 m");
  CHECK(distance_text(2.8, LengthUnit::inches) == "9.1 ft");    // 9.186 ft
  CHECK(distance_text(0.9144, LengthUnit::inches) == "3.0 ft"); // a yard
}

TEST_CASE("yarn in metres or yards, never less than it takes") {
  CHECK(yarn_length_text(742, LengthUnit::centimetres) == "742 m");
  CHECK(yarn_length_text(741.2, LengthUnit::centimetres) == "742 m");
  CHECK(yarn_length_text(742, LengthUnit::inches) == "812 yd");   // 811.5 yd
  CHECK(yarn_length_text(91.44, LengthUnit::inches) == "100 yd"); // a yard is 0.9144 m
}

TEST_CASE("a gauge over four inches: 18 stitches are 17.7 over 10 cm") {
  // 18 stitches over 4 inches (10.16 cm) make 108 stitches 24 inches: a published size table's count.
  const double kept = gauge_kept(18, LengthUnit::inches);
  CHECK(kept == doctest::Approx(17.7165).epsilon(1e-5));
  CHECK(108 * 100.0 / kept / mm_per_inch == doctest::Approx(24).epsilon(1e-4));
  CHECK(gauge_shown(kept, LengthUnit::inches) == doctest::Approx(18));
  CHECK(gauge_kept(16, LengthUnit::centimetres) == 16);
  CHECK(gauge_shown(16, LengthUnit::centimetres) == 16);
}

TEST_CASE("what is shown in inches and typed again is the same length to a twentieth of a millimetre") {
  for (double mm = 0.5; mm < 400; mm += 0.37) {
    CHECK(mm_of(small_length(mm, LengthUnit::inches), LengthUnit::inches) == doctest::Approx(mm).epsilon(0.01));
    CHECK(std::abs(mm_of(small_length(mm, LengthUnit::inches), LengthUnit::inches) - mm) < 0.05);
  }
}

TEST_CASE("lengths for people have the language's decimal sign") {
  CHECK(plain_number(142) == "142");
  CHECK(plain_number(4.56) == "4.56");
  CHECK(typed_number(103.1234567) == "103.1234567");
  choose_language(language_of("de"), "/nowhere");
  CHECK(plain_number(4.56) == "4,56");
  CHECK(typed_number(103.1234567) == "103,1234567");
  CHECK(small_length_text(31.25, LengthUnit::centimetres, 2) == "31,25 mm");
  CHECK(size_text(5, 25.4, LengthUnit::centimetres) == "0,5 × 3 cm");
  choose_language(language_of("en"), {});
}
