// The checks that have a file of their own; check() calls them all.
#pragma once

#include "rules/findings.hpp"

#include <vector>

namespace punchwright {

// Floats that are too long, on the repeat as it tiles and on the piece as it lies on the bed.
void check_floats(const Document& document, const Profile& profile, std::vector<Finding>& findings);

} // namespace punchwright
