// Counts loops and floats row by row, and makes metres and grams of them.
#include "pieces/yarn_amounts.hpp"

#include "machine/placement.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {
namespace {

YarnUse& use_of(std::vector<YarnUse>& uses, const Yarn& yarn) {
  const auto found = std::ranges::find(uses, yarn, &YarnUse::yarn);
  if (found != uses.end()) {
    return *found;
  }
  uses.push_back({});
  uses.back().yarn = yarn;
  return uses.back();
}

class TierUses {
public:
  TierUses(std::vector<YarnUse>& uses, const TierKnitted& tier, const Profile& profile)
      : uses_(uses), tier_(tier), document_(*tier.document),
        end_needles_(end_needles_knit_contrast(document_, profile)), stitches_(stitches_of(document_)) {
    const Placement placement(document_, profile);
    Needle needle = first_needle_of(document_);
    for (int stitch = 0; stitch < stitches_; ++stitch, ++needle.position) {
      columns_.push_back(placement.column_of(needle));
    }
  }

  void run() {
    for (const RowToKnit& row : tier_.rows->rows) {
      if (row.contrast == 0) {
        add_plain(yarn_of(document_, row.main), stitches_, document_.gauge, 1);
      } else {
        add_two_colour(row);
      }
    }
    Gauge plain = document_.gauge;
    plain.stitches = tier_.plain_gauge.plain_stitches.value_or(plain.stitches);
    plain.rows = tier_.plain_gauge.plain_rows.value_or(plain.rows);
    const Yarn& main = yarn_of(document_, document_.bands.back().main);
    add_plain(main, stitches_, plain, tier_.plain_rows - tier_.needed.after_decreases - tier_.needed.setting_up);
    add_plain(main, std::min(stitches_, tier_.after), plain, tier_.needed.after_decreases); // filled afterwards
    add_plain(tier_.next_main, tier_.after, plain, tier_.needed.setting_up);
  }

private:
  static double area_cm2(int stitches, const Gauge& gauge, int rows) {
    return stitches * gauge.stitch_mm() * rows * gauge.row_mm() / 100;
  }

  void add_plain(const Yarn& yarn, int stitches, const Gauge& gauge, int rows) {
    if (rows > 0) {
      YarnUse& use = use_of(uses_, yarn);
      use.plain_loops += static_cast<double>(stitches) * rows;
      use.plain_cm2 += area_cm2(stitches, gauge, rows);
    }
  }

  [[nodiscard]] bool is_contrast(int stitch, const RowToKnit& row) const {
    return document_.grid.at(columns_[static_cast<std::size_t>(stitch)], row.drawn) ||
           (end_needles_ && (stitch == 0 || stitch == stitches_ - 1));
  }

  void add_two_colour(const RowToKnit& row) {
    struct Reach {
      int loops = 0;
      int first = 0;
      int last = 0;
    };
    Reach reaches[2]; // main, contrast
    for (int stitch = 0; stitch < stitches_; ++stitch) {
      Reach& reach = reaches[is_contrast(stitch, row) ? 1 : 0];
      reach.first = reach.loops == 0 ? stitch : reach.first;
      reach.last = stitch;
      ++reach.loops;
    }
    for (const bool contrast : {false, true}) {
      const Reach& reach = reaches[contrast ? 1 : 0];
      const Yarn& yarn = yarn_of(document_, contrast ? row.contrast : row.main);
      if (reach.loops == stitches_) {
        add_plain(yarn, stitches_, document_.gauge, 1);
      } else if (reach.loops > 0) {
        YarnUse& use = use_of(uses_, yarn);
        use.loops += reach.loops;
        use.floats_mm += (reach.last - reach.first + 1 - reach.loops) * document_.gauge.stitch_mm();
        use.two_colour_cm2 += area_cm2(stitches_, document_.gauge, 1);
      }
    }
  }

  std::vector<YarnUse>& uses_;
  const TierKnitted& tier_;
  const Document& document_;
  bool end_needles_;
  int stitches_;
  std::vector<int> columns_;
};

// Metres and grams of one part, each where it can be known.
struct Part {
  std::optional<double> grams;
  std::optional<double> metres;
  AmountFrom from = AmountFrom::gauge;
};

Part part_of(double mm, double cm2, const std::optional<double>& g_per_100cm2, const YokeYarn& yarn) {
  Part part;
  if (g_per_100cm2) {
    part.from = AmountFrom::swatch;
    part.grams = cm2 / 100 * *g_per_100cm2;
    if (yarn.metres_per_100g) {
      part.metres = *part.grams / 100 * *yarn.metres_per_100g;
    }
    return part;
  }
  part.from = yarn.loop_mm ? AmountFrom::loop : AmountFrom::gauge;
  part.metres = mm / 1000;
  if (yarn.metres_per_100g) {
    part.grams = *part.metres * 100 / *yarn.metres_per_100g;
  }
  return part;
}

std::optional<double> sum(const std::optional<double>& one, const std::optional<double>& other) {
  return one && other ? std::optional(*one + *other) : std::nullopt;
}

Gauge plain_gauge_of(const OpenedYoke& opened) {
  Gauge gauge = opened.tiers.front().document.gauge;
  gauge.stitches = opened.yoke.gauge.plain_stitches.value_or(gauge.stitches);
  gauge.rows = opened.yoke.gauge.plain_rows.value_or(gauge.rows);
  return gauge;
}

} // namespace

void add_uses(std::vector<YarnUse>& uses, const TierKnitted& tier, const Profile& profile) {
  TierUses(uses, tier, profile).run();
}

std::string_view word_for(AmountFrom from) {
  switch (from) {
  case AmountFrom::swatch: return "swatch";
  case AmountFrom::loop: return "loop";
  case AmountFrom::gauge: return "gauge";
  case AmountFrom::several: break;
  }
  return "several";
}

std::vector<YarnAmount> amounts_of(const OpenedYoke& opened, const std::vector<YarnUse>& uses) {
  std::vector<YarnAmount> amounts;
  const double estimated_mm = loop_of(munden_fully_relaxed, plain_gauge_of(opened));
  for (const OpenedTier& tier : opened.tiers) {
    for (const Yarn& yarn : tier.document.yarns) {
      const auto use = std::ranges::find(uses, yarn, &YarnUse::yarn);
      if (use == uses.end() || std::ranges::find(amounts, yarn, &YarnAmount::yarn) != amounts.end()) {
        continue;
      }
      const auto known = std::ranges::find(opened.yoke.yarns, yarn.key, &YokeYarn::key);
      const YokeYarn facts = known != opened.yoke.yarns.end() ? *known : YokeYarn{};
      const double loop = facts.loop_mm.value_or(estimated_mm);
      const Part plain = part_of(use->plain_loops * loop, use->plain_cm2, facts.plain_g_per_100cm2, facts);
      const Part coloured =
          part_of(use->loops * loop + use->floats_mm, use->two_colour_cm2, facts.two_colour_g_per_100cm2, facts);
      YarnAmount amount{yarn, sum(plain.grams, coloured.grams), sum(plain.metres, coloured.metres), plain.from};
      if (use->plain_loops == 0) {
        amount = {yarn, coloured.grams, coloured.metres, coloured.from};
      } else if (use->loops == 0) {
        amount = {yarn, plain.grams, plain.metres, plain.from};
      } else if (plain.from != coloured.from) {
        amount.from = AmountFrom::several;
      }
      amounts.push_back(amount);
    }
  }
  return amounts;
}

std::string told_apart(const Yarn& yarn, const std::vector<YarnAmount>& among) {
  bool shares_key = false;
  bool shares_name = false;
  for (const YarnAmount& other : among) {
    if (other.yarn.key == yarn.key && other.yarn != yarn) {
      shares_key = true;
      shares_name = shares_name || other.yarn.name == yarn.name;
    }
  }
  return !shares_key ? "" : shares_name || yarn.name.empty() ? hex_of(yarn.colour) : yarn.name;
}

double loop_of(double constant, const Gauge& gauge) {
  return 10 * std::sqrt(constant / (gauge.stitches / 10 * gauge.rows / 10));
}

std::vector<LoopCheck> check_loops(const OpenedYoke& opened) {
  std::vector<LoopCheck> checks;
  const Gauge gauge = plain_gauge_of(opened);
  for (const YokeYarn& yarn : opened.yoke.yarns) {
    if (!yarn.loop_mm) {
      continue;
    }
    LoopCheck check{yarn.key, *yarn.loop_mm, 0, true, 0, 0};
    check.constant = gauge.stitches / 10 * gauge.rows / 10 * *yarn.loop_mm * *yarn.loop_mm / 100;
    check.plausible = check.constant >= munden_dry_relaxed * (1 - munden_margin) &&
                      check.constant <= munden_fully_relaxed * (1 + munden_margin);
    check.shortest_mm = loop_of(munden_dry_relaxed, gauge);
    check.longest_mm = loop_of(munden_fully_relaxed, gauge);
    checks.push_back(check);
  }
  return checks;
}

std::string text_of(const LoopCheck& check) {
  const std::string loop = short_decimal(check.loop_mm, 3);
  const std::string constant = decimal(check.constant, 1);
  const std::string least = decimal(munden_dry_relaxed, 1);
  const std::string most = decimal(munden_fully_relaxed, 1);
  const std::string shortest = decimal(check.shortest_mm, 1);
  const std::string longest = decimal(check.longest_mm, 1);
  return check.plausible
             ? said("yarn {}: a loop of {} mm goes with the gauge: Munden's constant comes to {}, plain knitting has "
                    "{} to {}; loops of {} to {} mm would do",
                    check.key, loop, constant, least, most, shortest, longest)
             : said("yarn {}: a loop of {} mm does not go with the gauge: Munden's constant comes to {}, plain "
                    "knitting has {} to {}; loops of {} to {} mm would do",
                    check.key, loop, constant, least, most, shortest, longest);
}

} // namespace punchwright
