// The way back from a fabric that is wrong from some row on.
#pragma once

#include "diagnosis/diagnosis.hpp"

namespace punchwright {

// `first_wrong`: of the fabric, from 0; -1: nothing is wrong in what is seen.
[[nodiscard]] Remedy remedy_for(const Setting& setting, int first_wrong, int rows_seen, bool only_dropped,
                                const std::vector<Departure>& departures);

// The lowest row, from 0, in which two fabrics differ; -1: none does.
[[nodiscard]] int first_difference(const Fabric& planned, const Fabric& real, int rows);

} // namespace punchwright
