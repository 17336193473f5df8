// Adds up rows and millimetres, and moves plain rows one at a time to where the depth is nearest.
#include "pieces/yoke_rows.hpp"

#include "words/words.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {
namespace {

int pattern_rows_of(const OpenedTier& tier) {
  return static_cast<int>(tier.rows.rows.size());
}

// Where the next plain row goes, or is taken from: the tier whose number has been changed least, the lowest of them.
std::size_t next_tier(const std::vector<int>& plain, const std::vector<int>& before, const std::vector<int>& least,
                      bool more) {
  std::size_t best = plain.size();
  for (std::size_t tier = 0; tier < plain.size(); ++tier) {
    if (more ? plain[tier] >= most_plain_rows : plain[tier] <= least[tier]) {
      continue;
    }
    if (best == plain.size() || std::abs(plain[tier] - before[tier]) < std::abs(plain[best] - before[best])) {
      best = tier;
    }
  }
  return best;
}

void propose(const OpenedYoke& opened, std::size_t size, RowsOfYoke& rows) {
  std::vector<int> before;
  std::vector<int> least;
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    before.push_back(opened.yoke.tiers[tier].plain_above.at(size));
    least.push_back(plain_rows_needed(opened, tier).needed());
  }
  rows.proposal = before;
  rows.proposal_missing_mm = rows.missing_mm;
  const bool more = rows.missing_mm > 0;
  for (int moved = 0; moved < most_yoke_rows; ++moved) {
    const std::size_t tier = next_tier(rows.proposal, before, least, more);
    const bool full = more && rows.pattern_rows + rows.plain_rows + moved >= most_yoke_rows;
    if (tier == rows.proposal.size() || full) {
      rows.proposal_full = more && std::fabs(rows.proposal_missing_mm) > plain_row_mm(opened, 0) / 2;
      return;
    }
    const double then = rows.proposal_missing_mm - (more ? 1 : -1) * plain_row_mm(opened, tier);
    if (std::fabs(then) >= std::fabs(rows.proposal_missing_mm)) {
      return;
    }
    rows.proposal[tier] += more ? 1 : -1;
    rows.proposal_missing_mm = then;
  }
}

} // namespace

double plain_row_mm(const OpenedYoke& opened, std::size_t tier) {
  return opened.yoke.gauge.plain_rows ? 100.0 / *opened.yoke.gauge.plain_rows
                                      : opened.tiers[tier].document.gauge.row_mm();
}

std::vector<int> tier_heights(const OpenedYoke& opened, std::size_t size) {
  std::vector<int> heights{0};
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    heights.push_back(heights.back() + pattern_rows_of(opened.tiers[tier]) +
                      opened.yoke.tiers[tier].plain_above.at(size));
  }
  return heights;
}

std::vector<double> row_heights(const OpenedYoke& opened, std::size_t size) {
  std::vector<double> heights{0};
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const int pattern = pattern_rows_of(opened.tiers[tier]);
    const int all = pattern + opened.yoke.tiers[tier].plain_above.at(size);
    for (int row = 0; row < all; ++row) {
      heights.push_back(heights.back() +
                        (row < pattern ? opened.tiers[tier].document.gauge.row_mm() : plain_row_mm(opened, tier)));
    }
  }
  return heights;
}

RowsOfYoke rows_of_yoke(const OpenedYoke& opened, std::size_t size) {
  RowsOfYoke rows;
  double plain_mm = 0;
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const int plain = opened.yoke.tiers[tier].plain_above.at(size);
    rows.pattern_rows += pattern_rows_of(opened.tiers[tier]);
    rows.plain_rows += plain;
    rows.mm += pattern_rows_of(opened.tiers[tier]) * opened.tiers[tier].document.gauge.row_mm();
    plain_mm += plain * plain_row_mm(opened, tier);
  }
  rows.mm += plain_mm;
  rows.depth_mm = opened.yoke.depth_cm.at(size) * 10;
  rows.missing_mm = rows.depth_mm - rows.mm;
  rows.missing_rows = static_cast<int>(std::lround(rows.missing_mm / plain_row_mm(opened, opened.tiers.size() - 1)));
  propose(opened, size, rows);
  return rows;
}

std::string text_of(const RowsOfYoke& rows, LengthUnit unit) {
  const auto length = [unit](double mm) { return small_length_text(std::fabs(mm), unit, 0); };
  std::string text = said_count(rows.pattern_rows + rows.plain_rows, "{} row ({} in the tiers, {} plain), {} of {}",
                                "{} rows ({} in the tiers, {} plain), {} of {}", rows.pattern_rows, rows.plain_rows,
                                length(rows.mm), length(rows.depth_mm));
  if (rows.missing_rows == 0) {
    return text + ": " + tr("the depth comes out");
  }
  const std::string missing = length(rows.missing_mm);
  text += ": " + (rows.missing_rows < 0
                      ? said_count(-rows.missing_rows, "{} row ({}) too many", "{} rows ({}) too many", missing)
                      : said_count(rows.missing_rows, "{} row ({}) is missing", "{} rows ({}) are missing", missing));
  std::string proposal;
  for (const int plain : rows.proposal) {
    proposal += (proposal.empty() ? "" : ", ") + std::to_string(plain);
  }
  const bool nothing = std::fabs(rows.proposal_missing_mm) >= std::fabs(rows.missing_mm);
  if (nothing && !rows.proposal_full) {
    return text + "; " + tr("no plain row can be spared: leave out pattern rows, or make the yoke deeper");
  }
  if (!nothing) {
    const double off = std::fabs(rows.proposal_missing_mm);
    const std::string still = length(off);
    text += "; " + (off < 0.5 // no millimetre
                        ? said("with {} plain rows above the tiers the depth comes out", proposal)
                        : rows.proposal_missing_mm < 0
                              ? said("with {} plain rows above the tiers {} are too much", proposal, still)
                              : said("with {} plain rows above the tiers {} are missing", proposal, still));
  }
  if (rows.proposal_full) {
    text += "; " + said("a yoke holds no more than {} plain rows above a tier and {} rows in all: add a tier, or make "
                        "it less deep",
                        most_plain_rows, most_yoke_rows);
  }
  return text;
}

} // namespace punchwright
