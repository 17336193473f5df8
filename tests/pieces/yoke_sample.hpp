// A .yoke file with everything in it, as the program writes it, for the tests to change a line of.
#pragma once

#include <string>

namespace punchwright::test {

inline const std::string good_yoke = R"(format = 1
title = "Harbour poncho"
sizes = ["small", "medium", "large"]
edge = 1

[machine]
profile = "bulky-card-24"

[gauge]
stitches = 14.0
rows = 18.0

[gauge.plain]
stitches = 14.5
rows = 19.5

[[yarn]]
key = "A"
metres_per_100g = 180.0
loop_mm = 21.0
plain_g_per_100cm2 = 6.1
[[yarn]]
key = "B"
two_colour_g_per_100cm2 = 4.4

[[piece]]
name = "front"
bottom_cm = [48.0, 52.0, 56.0]
top_cm = 22.0

[[piece]]
name = "back"
like = "front"

[depth]
cm = [22.0, 23.5, 25.0]

[[tier]]
repeat = "buoys.repeat"
plain_above = 4

[[tier]]
repeat = "waves.repeat"
plain_above = [2, 4, 6]

[fit]
tolerance = 0.06
seams = "continuous"

[decreases]
way = "gathered"
towards = "centre"
clear_of_seam = 1
clear_of_centre = false
)";

// The sample with the first `from` made `to`.
inline std::string changed_yoke(const std::string& from, const std::string& to) {
  std::string text = good_yoke;
  const auto at = text.find(from);
  return at == std::string::npos ? std::string() : text.replace(at, from.size(), to);
}

} // namespace punchwright::test
