// All that can be taken away from a design at once, as files whose names sort in the order of the work: card, needles,
// steps, both sides of the cloth, rows, check, a leaflet to hand on, and the pattern chart.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"
#include "rules/findings.hpp"
#include "sheets/exports.hpp"

#include <string>
#include <vector>

namespace punchwright {

struct Everything {
  std::vector<OutputFile> files; // "puffin-cove-1-card.pdf", …
  std::vector<Error> left_out;   // what the design is too large for, with the reason
};

// `name` is what all the file names begin with, with their folder: "/work/puffin-cove". A machine without a card has no
// card, and begins with the needles as 1; a sheet with too many pages comes as text instead. `findings` are those of
// the check.
[[nodiscard]] Everything everything_of(const Document& document, const Profile& profile,
                                       const std::vector<Finding>& findings, const std::string& name,
                                       const ChartWishes& wishes = {});

// Those of the files that are there already, by their names.
[[nodiscard]] std::vector<std::string> present_among(const std::vector<OutputFile>& files);

} // namespace punchwright
