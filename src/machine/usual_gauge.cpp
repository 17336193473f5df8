// What is usual on fine, standard, mid-gauge and bulky beds, by the distance of their needles.
// Nothing here is measured: it is where a design begins, and the user's swatch replaces it.
#include "machine/usual_gauge.hpp"

#include <array>

namespace punchwright {

Gauge usual_gauge(const Profile& profile) {
  struct Usual {
    double up_to; // mm between needles
    Gauge gauge;
  };
  constexpr std::array usual = {Usual{4.0, {36, 52}}, Usual{5.5, {28, 40}}, Usual{7.5, {18, 26}}}; // common practice
  for (const Usual& bed : usual) {
    if (profile.pitch_mm <= bed.up_to) {
      return bed.gauge;
    }
  }
  return Gauge{16, 20}; // common practice
}

} // namespace punchwright
