// Looking ahead along the passes.
#include "plan/yarn_uses.hpp"

#include <algorithm>

namespace punchwright {
YarnUses::YarnUses(const RowsToKnit& rows) {
  uses_.reserve(rows.rows.size());
  for (const RowToKnit& row : rows.rows) {
    for (const Pass& pass : passes_of(row)) {
      uses_.push_back({other(end_of(pass.travel)), pass.main, pass.contrast});
    }
  }
}

std::optional<Side> YarnUses::after(std::size_t pass, char yarn) const {
  for (std::size_t use = pass; use < std::min(uses_.size(), pass + most_passes_hanging + 1); ++use) {
    if (uses_[use].main == yarn || uses_[use].contrast == yarn) {
      return uses_[use].side;
    }
  }
  return std::nullopt;
}

std::vector<Needle> selected_needles(const Document& document, const Profile& profile, const RowsToKnit& rows,
                                     int number) {
  const int count = static_cast<int>(rows.rows.size());
  std::vector<Needle> needles;
  if (number <= count || document.card.loop) {
    const int index = number <= count ? number - 1 : (number - 1) % rows.circuit;
    needles = needles_in_row(document, profile, rows.rows[static_cast<std::size_t>(index)]);
  } else if (profile.card && profile.card->hole == HoleMeans::contrast) {
    // The overlap rows are all holes.
    for (Needle needle = first_needle_of(document); needle <= last_needle_of(document); ++needle.position) {
      needles.push_back(needle);
    }
  }
  if (needles.empty() && end_needles_knit_contrast(document, profile)) {
    needles = {first_needle_of(document)};
    if (stitches_of(document) > 1) {
      needles.push_back(last_needle_of(document));
    }
  }
  return needles;
}

} // namespace punchwright
