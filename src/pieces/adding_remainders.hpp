// Remainders of several tiers added up, each tier by itself, millions of times.
// A remainder is taken in two halves, so that the sums with one of them are two short tables.
#pragma once

#include "design/wrap.hpp"
#include "pieces/stitch_counts.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace punchwright {

class AddingRemainders {
public:
  explicit AddingRemainders(const std::vector<int>& of_tier) : zero_(of_tier.size()), of_tier_(of_tier) {
    for (const int one : of_tier) {
      count_ *= static_cast<std::size_t>(one);
    }
    std::size_t high = 1;
    while (split_ < of_tier.size() && high * high < count_) {
      high *= static_cast<std::size_t>(of_tier[split_++]);
    }
    low_count_ = count_ / high;
  }

  [[nodiscard]] std::size_t count() const { return count_; }
  [[nodiscard]] std::uint32_t high(std::size_t remainder) const {
    return static_cast<std::uint32_t>(remainder / low_count_);
  }
  [[nodiscard]] std::uint32_t low(std::size_t remainder) const {
    return static_cast<std::uint32_t>(remainder % low_count_);
  }
  [[nodiscard]] std::size_t tables() const { return count_ / low_count_ + low_count_; }

  // From now on, what `plus` adds.
  void set(std::size_t added) {
    const std::vector<int> parts = parts_of(added);
    tabulate(high_sums_, 0, split_, parts);
    for (std::uint32_t& sum : high_sums_) {
      sum *= static_cast<std::uint32_t>(low_count_);
    }
    tabulate(low_sums_, split_, of_tier_.size(), parts);
  }
  [[nodiscard]] std::size_t plus(std::uint32_t high, std::uint32_t low) const {
    return std::size_t{high_sums_[high]} + low_sums_[low];
  }

  [[nodiscard]] std::size_t difference(std::size_t one, std::size_t other) const {
    const std::vector<int> parts = parts_of(one);
    const std::vector<int> others = parts_of(other);
    std::size_t all = 0;
    for (std::size_t tier = 0; tier < of_tier_.size(); ++tier) {
      const int part = remainder_of(parts[tier] - others[tier], of_tier_[tier]);
      all = all * static_cast<std::size_t>(of_tier_[tier]) + static_cast<std::size_t>(part);
    }
    return all;
  }

private:
  [[nodiscard]] std::vector<int> parts_of(std::size_t remainder) const {
    std::vector<int> parts = zero_;
    for (std::size_t tier = parts.size(); tier-- > 0;) {
      const auto count = static_cast<std::size_t>(of_tier_[tier]);
      parts[tier] = static_cast<int>(remainder % count);
      remainder /= count;
    }
    return parts;
  }

  void tabulate(std::vector<std::uint32_t>& sums, std::size_t first, std::size_t last, const std::vector<int>& parts) {
    sums.assign(1, 0);
    for (std::size_t tier = first; tier < last; ++tier) {
      const auto count = static_cast<std::uint32_t>(of_tier_[tier]);
      const auto part = static_cast<std::uint32_t>(parts[tier]);
      shorter_.swap(sums);
      sums.clear();
      for (const std::uint32_t sum : shorter_) {
        for (std::uint32_t other = 0; other < count; ++other) {
          sums.push_back(sum * count + (other + part < count ? other + part : other + part - count));
        }
      }
    }
  }

  std::vector<int> zero_;
  std::vector<int> of_tier_;
  std::size_t count_ = 1;
  std::size_t split_ = 0; // the first tier of the low half
  std::size_t low_count_ = 1;
  std::vector<std::uint32_t> high_sums_;
  std::vector<std::uint32_t> low_sums_;
  std::vector<std::uint32_t> shorter_; // while a table is made
};

} // namespace punchwright
