// Causes, sizes that share one, and what they are offered.
#include "editor/yoke_no_fit.hpp"

#include "design/words.hpp"
#include "editor/yoke_work.hpp"
#include "pieces/size_counts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::editor {
namespace {

// A piece that narrows faster than rows of decreases can.
struct TooSteep {
  std::size_t piece = 0;
  int tiers_needed = 0; // by halves from the bottom to the top
};

std::optional<TooSteep> too_steep(const OpenedYoke& opened, std::size_t size) {
  for (std::size_t piece = 0; piece < opened.yoke.pieces.size(); ++piece) {
    const std::vector<double> ideals = ideal_counts(opened, size, piece);
    const double bottom = ideals.front() - 2 * opened.yoke.edge;
    const double top = std::max(1.0, ideals.back() - 2 * opened.yoke.edge);
    const int needed = static_cast<int>(std::ceil(std::log2(bottom / top) - 1e-9));
    if (needed > static_cast<int>(opened.tiers.size())) {
      return TooSteep{piece, needed};
    }
  }
  return std::nullopt;
}

// Sizes with the same trouble.
struct Trouble {
  std::string what; // told apart by it
  std::vector<std::size_t> sizes;
};

std::string steep_words(const OpenedYoke& opened, std::size_t size, const TooSteep& steep, LengthUnit unit) {
  const YokePiece& piece = opened.yoke.pieces[widths_of(opened.yoke, steep.piece)];
  const auto tiers = static_cast<long>(opened.tiers.size());
  return said_count(tiers,
                    "{} tier can't narrow {} from {} to {}: the row of decreases above a tier takes every other stitch "
                    "at most",
                    "{} tiers can't narrow {} from {} to {}: the row of decreases above each takes every other stitch "
                    "at most",
                    opened.yoke.pieces[steep.piece].name, cloth_length(piece.bottom_cm.at(size), unit),
                    cloth_length(piece.top_cm.at(size), unit));
}

std::string other_words(const OpenedYoke& opened, const std::optional<WouldFit>& would) {
  if (!would || would->costs_most.empty()) {
    return tr("No stitch counts keep to every rule");
  }
  return would->costly_tolerance ? said("No stitch counts keep to every rule; the tolerance of {} % costs most",
                                        short_decimal(opened.yoke.fit.tolerance * 100, 2))
                                 : said("No stitch counts keep to every rule; {}", would->costs_most);
}

std::string widths_in_words(const Yoke& yoke, const std::vector<OfferedWidth>& widths, bool name_sizes,
                            LengthUnit unit) {
  std::vector<std::string> words;
  for (const OfferedWidth& width : widths) {
    const WidthChange& change = width.change;
    const std::string name = name_sizes ? fmt::format("{} ({})", yoke.pieces[change.piece].name, yoke.sizes[width.size])
                                        : yoke.pieces[change.piece].name;
    const std::string to = cloth_length(change.to_cm, unit);
    const std::string from = cloth_length(change.from_cm, unit);
    words.push_back(change.top ? said("{} {} at the top in place of {}", name, to, from)
                               : said("{} {} at the bottom in place of {}", name, to, from));
  }
  return listed(words);
}

// What all of the sizes are offered, into the finding; what isn't offered to each of them would leave some as they are.
void offer(YokeFinding& finding, const std::vector<SizeTrouble>& troubles) {
  bool all_widths = true;
  bool all_tolerances = true;
  for (const std::size_t size : finding.sizes) {
    const WouldFit& would = *troubles[size].would_fit;
    all_tolerances = all_tolerances && would.tolerance > 0;
    all_widths = all_widths && !would.widths.changes.empty();
    finding.tolerance = std::max(finding.tolerance, would.tolerance);
    finding.less_not_known = finding.less_not_known || would.less_not_known;
    for (const WidthChange& change : would.widths.changes) {
      finding.widths.push_back({size, change});
    }
  }
  finding.tolerance = all_tolerances ? finding.tolerance : 0;
  if (!all_widths) {
    finding.widths.clear();
  }
}

std::string offer_in_words(const YokeFinding& finding, const OpenedYoke& opened, LengthUnit unit) {
  const std::string smallest = short_decimal(finding.tolerance * 100, 1);
  const std::string percent = finding.less_not_known ? said("{} (perhaps less would do)", smallest) : smallest;
  const std::string widths = widths_in_words(opened.yoke, finding.widths, finding.sizes.size() > 1, unit);
  if (finding.tolerance > 0 && !finding.widths.empty()) {
    return said("It fits with a tolerance of {} %, or with these widths: {}", percent, widths);
  }
  if (finding.tolerance > 0) {
    return said("It fits with a tolerance of {} %", percent);
  }
  if (!finding.widths.empty()) {
    return said("It fits with these widths: {}", widths);
  }
  if (finding.less_not_known) {
    return tr("No widths nearby would fit; whether another tolerance would is not known");
  }
  return opened.yoke.fit.seams == YokeSeams::free
             ? tr("Neither another tolerance nor widths nearby would fit")
             : tr("Neither another tolerance nor widths nearby would fit: choose narrower repeats, or free seams");
}

YokeFinding finding_of(const Trouble& trouble, const OpenedYoke& opened, const std::vector<SizeTrouble>& troubles,
                       LengthUnit unit) {
  YokeFinding finding{Severity::fault, trouble.what, {}, trouble.sizes.front()};
  finding.sizes = trouble.sizes;
  const auto steep = too_steep(opened, trouble.sizes.front());
  if (steep) {
    finding.piece = static_cast<int>(steep->piece);
    finding.words = steep_words(opened, trouble.sizes.front(), *steep, unit);
    finding.remedy =
        said("Add tiers, until there are {} at least, or make the pieces wider at the top. ", steep->tiers_needed);
  }
  if (!troubles[trouble.sizes.front()].would_fit) {
    finding.remedy += tr("What else would fit is being worked out …");
    return finding;
  }
  offer(finding, troubles);
  if (!steep || finding.tolerance > 0 || !finding.widths.empty()) {
    finding.remedy += offer_in_words(finding, opened, unit);
  }
  return finding;
}

} // namespace

std::string cloth_length(double cm, LengthUnit unit) {
  return unit == LengthUnit::inches ? said("{} in", decimal(cm * 10 / mm_per_inch, 1)) : said("{} cm", decimal(cm, 1));
}

void add_no_fit(std::vector<YokeFinding>& found, const OpenedYoke& opened, const std::vector<SizeTrouble>& troubles,
                LengthUnit unit) {
  std::vector<Trouble> kinds;
  for (std::size_t size = 0; size < troubles.size(); ++size) {
    const SizeTrouble& trouble = troubles[size];
    if (trouble.why == WhyNoPlan::not_known_yet || trouble.why == WhyNoPlan::gave_up) {
      const bool working = trouble.why == WhyNoPlan::not_known_yet;
      const Error error = gave_up(opened, size);
      YokeFinding finding{working ? Severity::note : Severity::fault,
                          working ? tr("Working out the stitch counts …") : with_capital(error.message),
                          working ? std::string() : with_capital(error.remedy), size};
      found.push_back(std::move(finding));
    }
    if (trouble.why != WhyNoPlan::nothing_fits) {
      continue;
    }
    const std::string what =
        too_steep(opened, size) ? std::string("too steep") : other_words(opened, trouble.would_fit);
    const auto present = std::ranges::find_if(kinds, [&](const Trouble& kind) {
      return kind.what == what && troubles[kind.sizes.front()].would_fit.has_value() == trouble.would_fit.has_value();
    });
    (present == kinds.end() ? kinds.emplace_back(what, std::vector<std::size_t>{}) : *present).sizes.push_back(size);
  }
  for (const Trouble& kind : kinds) {
    found.push_back(finding_of(kind, opened, troubles, unit));
  }
}

Yoke with_offered_tolerance(Yoke yoke, const YokeFinding& finding) {
  yoke.fit.tolerance = finding.tolerance;
  return yoke;
}

Yoke with_offered_widths(Yoke yoke, const YokeFinding& finding) {
  for (const OfferedWidth& width : finding.widths) {
    YokePiece& piece = yoke.pieces[width.change.piece];
    set_for_size(width.change.top ? piece.top_cm : piece.bottom_cm, yoke.sizes.size(), width.size, width.change.to_cm);
  }
  return yoke;
}

} // namespace punchwright::editor
