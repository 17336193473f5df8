// What is found in the open yoke, the gravest first: sizes without an answer, seams that don't meet, rows, widths.
#include "editor/yoke_findings.hpp"

#include "design/words.hpp"
#include "editor/yoke_no_fit.hpp"
#include "pieces/tier_faults.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {
namespace {

// Beyond that a piece no longer has the width that it was wished to have (common practice).
constexpr double most_departure = 0.05;

void add_too_wide(std::vector<YokeFinding>& found, const OpenedYoke& opened) {
  if (const Failure wide = bed_failure(opened)) {
    YokeFinding finding{Severity::fault, with_capital(wide->message), with_capital(wide->remedy)};
    finding.can_split = static_cast<bool>(split_to_fit(opened));
    finding.piece = static_cast<int>(too_wide(opened).front().piece);
    found.push_back(std::move(finding));
  }
}

void add_seams(std::vector<YokeFinding>& found, const OpenedYoke& opened, const SizePlan& plan, std::size_t size) {
  const bool centred = opened.yoke.fit.seams == YokeSeams::centred;
  for (std::size_t tier = 0; tier < plan.seams.size(); ++tier) {
    const TierSeams& there = plan.seams[tier];
    const auto gap = std::ranges::find(there.seams, false, &SeamMeeting::meets);
    const bool at_seam = !centred && gap != there.seams.end();
    if (there.mend.empty() && !at_seam) {
      continue;
    }
    YokeFinding finding{opened.yoke.fit.seams == YokeSeams::free ? Severity::note : Severity::warning, {}, {}, size};
    finding.tier = static_cast<int>(tier);
    finding.seam = at_seam;
    finding.piece = at_seam ? static_cast<int>(gap->left) : -1;
    finding.words = at_seam ? said("Tier {}: the seam between {} and {} does not meet", tier + 1,
                                   plan.pieces[gap->left].name, plan.pieces[gap->right].name)
                            : said("Tier {}: not every piece has the middle of the repeat at its own", tier + 1);
    finding.remedy = with_capital(there.mend);
    found.push_back(std::move(finding));
  }
}

void add_rows(std::vector<YokeFinding>& found, const OpenedYoke& opened, const SizePlan& plan, std::size_t size,
              LengthUnit unit) {
  if (plan.rows.missing_rows == 0) {
    return;
  }
  YokeFinding finding{Severity::warning, with_capital(text_of(plan.rows, unit)), {}, size};
  const auto& proposal = plan.rows.proposal;
  for (std::size_t tier = 0; tier < proposal.size(); ++tier) {
    finding.rows = finding.rows || proposal[tier] != opened.yoke.tiers[tier].plain_above.at(size);
  }
  found.push_back(std::move(finding));
}

void add_widths(std::vector<YokeFinding>& found, const OpenedYoke& opened, const SizePlan& plan, std::size_t size,
                LengthUnit unit) {
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
    if (!opened.yoke.pieces[piece].like.empty()) {
      continue;
    }
    for (const bool top : {false, true}) {
      const KnittedWidth width = knitted_width(opened, plan, size, piece, top);
      if (!width.departs() || std::fabs(width.knitted_mm / width.wished_mm - 1) <= most_departure) {
        continue;
      }
      const std::string knitted = cloth_length(width.knitted_mm / 10, unit);
      const std::string wished = cloth_length(width.wished_mm / 10, unit);
      YokeFinding finding{
          Severity::warning,
          top ? said("{}: {} wide at the top, where {} are wished", plan.pieces[piece].name, knitted, wished)
              : said("{}: {} wide at the bottom, where {} are wished", plan.pieces[piece].name, knitted, wished),
          tr("A smaller tolerance, narrower repeats, more tiers or free seams bring it nearer"), size};
      finding.piece = static_cast<int>(piece);
      found.push_back(std::move(finding));
    }
  }
}

// Decreases that find no room where they were wished, or go the other way: of each tier, the pieces where it is the
// same.
void add_clearances(std::vector<YokeFinding>& found, const SizePlan& plan, std::size_t size) {
  for (std::size_t tier = 0; tier < plan.seams.size(); ++tier) {
    std::vector<std::pair<std::string, std::vector<std::string>>> pieces;
    for (const PieceOfSize& piece : plan.pieces) {
      const Shaping& shaping = piece.tiers[tier].shaping;
      if (shaping.every.empty() || shaping.as_wished()) {
        continue;
      }
      const std::string words = clearance_words(shaping);
      const auto present = std::ranges::find(pieces, words, &std::pair<std::string, std::vector<std::string>>::first);
      (present == pieces.end() ? pieces.emplace_back(words, std::vector<std::string>{}) : *present)
          .second.push_back(piece.name);
    }
    for (const auto& [words, names] : pieces) {
      YokeFinding finding{
          Severity::note, said("Tier {}, {}: of the decreases above it, {}", tier + 1, listed(names), words), {}, size};
      finding.tier = static_cast<int>(tier);
      found.push_back(std::move(finding));
    }
  }
}

} // namespace

KnittedWidth knitted_width(const OpenedYoke& opened, const SizePlan& plan, std::size_t size, std::size_t piece,
                           bool top) {
  const YokePiece& wished = opened.yoke.pieces[widths_of(opened.yoke, piece)];
  const auto& tiers = plan.pieces[piece].tiers;
  KnittedWidth width;
  width.stitches = top ? tiers.back().shaping.after : tiers.front().stitches;
  width.stitch_mm = (top ? opened.tiers.back() : opened.tiers.front()).document.gauge.stitch_mm();
  width.knitted_mm = (width.stitches - 2 * opened.yoke.edge) * width.stitch_mm;
  width.wished_mm = (top ? wished.top_cm : wished.bottom_cm).at(size) * 10;
  return width;
}

bool KnittedWidth::departs() const {
  return std::fabs(knitted_mm - wished_mm) > stitch_mm / 2 + 1e-6;
}

YokeView view_at_finding(const App& app, int finding) {
  const YokeFinding& chosen = app.caches.yoke.findings[static_cast<std::size_t>(finding)];
  YokeView next = app.view.yoke;
  next.finding = finding;
  next.size = chosen.size.value_or(next.size);
  next.piece = chosen.piece >= 0 ? static_cast<std::size_t>(chosen.piece) : next.piece;
  if (chosen.seam && next.shows != YokeShows::worn) {
    next.shows = YokeShows::flat;
  }
  return next;
}

std::vector<YokeFinding> yoke_findings(const OpenedYoke& opened, const YokeCache& cache, LengthUnit unit) {
  std::vector<YokeFinding> found;
  if (opened.machine_wanted) {
    const std::string machine = opened.profile.title.empty() ? opened.profile.name : tr(opened.profile.title.c_str());
    YokeFinding finding{Severity::fault, with_capital(opened.machine_wanted->message), {}};
    finding.remedy = said("Choose one machine for all tiers: Machine, on the left (Ctrl+5). Until then all of this is "
                          "worked out for {}",
                          machine);
    found.push_back(std::move(finding));
  }
  add_too_wide(found, opened);
  add_no_fit(found, opened, cache.troubles, unit);
  for (std::size_t size = 0; size < cache.sizes.size(); ++size) {
    if (!cache.sizes[size]) {
      continue;
    }
    const SizePlan& plan = *cache.sizes[size];
    add_seams(found, opened, plan, size);
    add_rows(found, opened, plan, size, unit);
    add_widths(found, opened, plan, size, unit);
    add_clearances(found, plan, size);
  }
  for (const TierFaults& tier : tiers_with_faults(opened)) {
    YokeFinding finding{Severity::fault, with_capital(words_of(tier)),
                        tr("Open its drawing: the findings there say where, and what would mend it"), std::nullopt};
    finding.tier = static_cast<int>(tier.tier);
    found.push_back(std::move(finding));
  }
  for (const LoopCheck& check : cache.loops) {
    if (!check.plausible) {
      found.push_back({Severity::warning, with_capital(text_of(check)), {}, std::nullopt});
    }
  }
  for (const ReadingNote& note : opened.notes) {
    found.push_back({Severity::note, with_capital(note.text), {}, std::nullopt});
  }
  std::ranges::stable_sort(found, {}, [](const YokeFinding& finding) {
    return finding.severity == Severity::fault ? 0 : finding.severity == Severity::warning ? 1 : 2;
  });
  return found;
}

} // namespace punchwright::editor
