// What a yoke's sheets are made from: chosen sizes and pieces, and what is the same for several of them, once.
#include "design/words.hpp"
#include "plan/other_machine.hpp"
#include "plan/step_words.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/yoke_parts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <numeric>

namespace punchwright {
namespace {

std::vector<std::size_t> chosen(const std::vector<std::size_t>& wished, std::size_t count) {
  if (!wished.empty()) {
    std::vector<std::size_t> ordered = wished;
    std::ranges::sort(ordered);
    ordered.erase(std::unique(ordered.begin(), ordered.end()), ordered.end());
    return ordered;
  }
  std::vector<std::size_t> all(count);
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

bool same_place(const TierOfPiece& one, const TierOfPiece& other) {
  return one.stitches == other.stitches && one.bed.first == other.bed.first &&
         one.bed.first_column == other.bed.first_column;
}
bool same_strip(const TierOfPiece& one, const TierOfPiece& other) {
  return one.stitches == other.stitches && one.bed.first == other.bed.first && one.first_after == other.first_after &&
         one.shaping.after == other.shaping.after && one.shaping.forward == other.shaping.forward &&
         one.shaping.transfers == other.shaping.transfers;
}

// "S: front and back; M: front", by sizes in order.
class Users {
public:
  void add(std::size_t size, std::size_t piece) {
    if (sizes_.empty() || sizes_.back().first != size) {
      sizes_.push_back({size, {}});
    }
    sizes_.back().second.push_back(piece);
  }
  [[nodiscard]] std::string text(const YokeJob& job) const {
    std::string text;
    for (const auto& [size, pieces] : sizes_) {
      text += fmt::format("{}{}: {}", text.empty() ? "" : "; ", job.plan.sizes[size].size, names_of(job, pieces));
    }
    return text;
  }

private:
  std::vector<std::pair<std::size_t, std::vector<std::size_t>>> sizes_;
};

// One of each kind, tier by tier, with all that have it. `skip` leaves a piece's tier out.
template <class Kind, class Same, class Skip>
std::vector<Kind> kinds_of(const YokeJob& job, std::size_t tier, const Same& same, const Skip& skip) {
  std::vector<Kind> kinds;
  std::vector<Users> users;
  for (const std::size_t size : job.sizes) {
    for (const std::size_t piece : job.pieces) {
      const TierOfPiece& here = job.at(size, piece, tier);
      if (skip(here)) {
        continue;
      }
      const auto found = std::ranges::find_if(
          kinds, [&](const Kind& kind) { return same(job.at(kind.size, kind.piece, tier), here); });
      const auto index = static_cast<std::size_t>(found - kinds.begin());
      if (found == kinds.end()) {
        kinds.push_back({tier, size, piece, {}});
        users.emplace_back();
      }
      users[index].add(size, piece);
    }
  }
  for (std::size_t index = 0; index < kinds.size(); ++index) {
    kinds[index].users = users[index].text(job);
  }
  return kinds;
}

void add_groups(YokeJob& job) {
  for (const std::size_t size : job.sizes) {
    const std::size_t first = job.groups.size();
    for (const std::size_t piece : job.pieces) {
      const auto alike = [&](const YokeGroup& group) {
        return group.size == size && std::ranges::equal(job.plan.sizes[size].pieces[group.pieces.front()].tiers,
                                                        job.plan.sizes[size].pieces[piece].tiers,
                                                        [](const TierOfPiece& one, const TierOfPiece& other) {
                                                          return same_place(one, other) && same_strip(one, other);
                                                        });
      };
      const auto found = std::find_if(job.groups.begin() + static_cast<std::ptrdiff_t>(first), job.groups.end(), alike);
      if (found != job.groups.end()) {
        found->pieces.push_back(piece);
      } else {
        job.groups.push_back({size, {piece}});
      }
    }
  }
}

} // namespace

bool YokeJob::wants(YokeSheet sheet) const {
  return sheets.empty() || std::ranges::find(sheets, sheet) != sheets.end();
}

bool shapes_nothing(const TierOfPiece& tier) {
  return tier.shaping.before == tier.shaping.after;
}

YokeJob yoke_job(const OpenedYoke& opened, const YokePlan& plan, const YokeSheetWishes& wishes) {
  const CardWishes& card = opened.tiers.front().document.card;
  const Paper paper = wishes.paper.value_or(card.paper);
  YokeJob job{opened,
              plan,
              paper == Paper::letter ? Paper::letter : Paper::a4,
              card.scale_x,
              card.scale_y,
              chosen(wishes.sizes, plan.sizes.size()),
              chosen(wishes.pieces, opened.yoke.pieces.size()),
              wishes.sheets,
              {},
              {},
              {}};
  add_groups(job);
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    for (YokeStrip& strip : kinds_of<YokeStrip>(job, tier, same_strip, shapes_nothing)) {
      job.strips.push_back(std::move(strip));
    }
    if (!reads_card(opened.profile)) {
      for (YokeNeedleList& list :
           kinds_of<YokeNeedleList>(job, tier, same_place, [](const TierOfPiece&) { return false; })) {
        job.lists.push_back(std::move(list));
      }
    }
  }
  return job;
}

std::string title_of_yoke(const YokeJob& job) {
  const std::string title = one_line(job.opened.yoke.title);
  return title.empty() ? tr("Yoke") : title;
}

std::string name_of_tier(const YokeJob& job, std::size_t tier) {
  const std::string title = one_line(job.opened.tiers[tier].document.title);
  return title.empty() ? said("tier {}", tier + 1) : said("tier {}, {}", tier + 1, title);
}

std::string names_of(const YokeJob& job, const std::vector<std::size_t>& pieces) {
  std::vector<std::string> names;
  for (const std::size_t piece : pieces) {
    names.push_back(one_line(job.opened.yoke.pieces[piece].name));
  }
  return listed(names);
}

std::size_t strip_of(const YokeJob& job, std::size_t size, std::size_t piece, std::size_t tier) {
  const auto found = std::ranges::find_if(job.strips, [&](const YokeStrip& strip) {
    return strip.tier == tier && same_strip(job.at(strip.size, strip.piece, tier), job.at(size, piece, tier));
  });
  return static_cast<std::size_t>(found - job.strips.begin());
}

std::size_t list_of(const YokeJob& job, std::size_t size, std::size_t piece, std::size_t tier) {
  const auto found = std::ranges::find_if(job.lists, [&](const YokeNeedleList& list) {
    return list.tier == tier && same_place(job.at(list.size, list.piece, tier), job.at(size, piece, tier));
  });
  return static_cast<std::size_t>(found - job.lists.begin());
}

} // namespace punchwright
