// Counts what the rules find.
#include "pieces/tier_faults.hpp"

#include "design/words.hpp"
#include "rules/findings.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <filesystem>

namespace punchwright {

std::vector<TierFaults> tiers_with_faults(const OpenedYoke& opened) {
  std::vector<TierFaults> tiers;
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const OpenedTier& there = opened.tiers[tier];
    const auto faults =
        std::ranges::count_if(check(there.document, opened.profile, there.rows), is_long_float_of_repeat);
    if (faults > 0) {
      tiers.push_back({tier, static_cast<int>(faults)});
    }
  }
  return tiers;
}

std::string words_of(const TierFaults& faults) {
  return said_count(faults.faults, "tier {1}: its drawing has {0} fault, a float that is too long",
                    "tier {1}: its drawing has {0} faults, floats that are too long", faults.tier + 1);
}

std::string remedy_of(const OpenedYoke& opened, const TierFaults& faults) {
  const std::filesystem::path folder = std::filesystem::path(opened.file).parent_path();
  const std::string repeat = (folder / opened.yoke.tiers[faults.tier].repeat).lexically_normal().string();
  return said("see punchwright check {}", shell_word(repeat));
}

} // namespace punchwright
