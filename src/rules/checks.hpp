// The checks that have a file of their own; check() calls them all.
#pragma once

#include "rules/findings.hpp"

#include <vector>

namespace punchwright {

// Floats that are too long, on the repeat as it tiles and on the piece as it lies on the bed.
void check_floats(const Document& document, const Profile& profile, std::vector<Finding>& findings);

// Rows of two colours of which the piece shows one only.
void check_loose_yarns(const Document& document, const Profile& profile, std::vector<Finding>& findings);

// Where the piece stands on the bed, and where the repeat is cut at what shows of it.
void check_piece(const Document& document, const Profile& profile, std::vector<Finding>& findings);

// The card's length, its loop, and how it goes with one feeder.
void check_card(const Document& document, const Profile& profile, const RowsToKnit& rows,
                std::vector<Finding>& findings);

} // namespace punchwright
