// Works the yoke out again when it has changed: first the plan of all sizes, then what the shown size looks like.
#include "editor/yoke_cache.hpp"

#include "design/words.hpp"
#include "editor/app.hpp"
#include "editor/yoke_findings.hpp"
#include "pieces/no_fit.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <filesystem>

namespace punchwright::editor {

namespace {

// While a measure is dragged, why nothing fits can wait: finding out may take longer than a frame.
std::optional<Error> plan_into(const OpenedYoke& opened, std::size_t size, bool dragging,
                               std::optional<SizePlan>& plan) {
  plan.reset();
  if (dragging) {
    const CountsFound found = nearest_counts(counts_problem(opened, size));
    if (!found.counts && !found.gave_up) {
      return Error{{},
                   0,
                   0,
                   said("no stitch counts of size {} keep to every rule", opened.yoke.sizes[size]),
                   tr("let go, and what would fit is sought")};
    }
  }
  auto found = plan_size(opened, size);
  if (!found) {
    return found.error();
  }
  plan = std::move(found).value();
  return std::nullopt;
}

std::string tier_name(const OpenedYoke& opened, std::size_t tier) {
  const std::string& title = opened.tiers[tier].document.title;
  return title.empty() ? std::filesystem::path(opened.yoke.tiers[tier].repeat).stem().string() : title;
}

void plan_all(YokeCache& cache, const OpenedYoke& opened) {
  cache.sizes.assign(opened.yoke.sizes.size(), std::nullopt);
  cache.loops = check_loops(opened);
  std::vector<std::optional<Error>> troubles(opened.yoke.sizes.size());
  if (const Failure wide = bed_failure(opened)) {
    troubles.front() = *wide;
  } else {
    for (std::size_t size = 0; size < cache.sizes.size(); ++size) {
      troubles[size] = plan_into(opened, size, cache.dragging, cache.sizes[size]);
    }
  }
  cache.tiers.clear();
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    cache.tiers.push_back(tier_name(opened, tier));
  }
  cache.findings = yoke_findings(opened, cache, troubles);
}

void draw_size(YokeCache& cache, const OpenedYoke& opened, std::size_t size) {
  cache.flat = {};
  cache.worn = {};
  cache.on_bed.clear();
  cache.heights = tier_heights(opened, size);
  cache.row_mm = row_heights(opened, size);
  if (!cache.sizes[size]) {
    return;
  }
  const SizePlan& plan = *cache.sizes[size];
  YokePicture next = picture_of(opened, plan, size, cache.sight);
  next.serial = cache.picture.serial + 1;
  next.texture = cache.picture.texture;
  next.uploaded = cache.picture.uploaded;
  cache.picture = std::move(next);
  cache.flat = flat_shape(opened, plan, cache.picture, cache.row_mm);
  cache.worn = worn_shape(opened, plan, cache.picture, cache.row_mm);
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
    cache.on_bed.push_back(bed_shape(opened, plan, cache.picture, cache.row_mm, piece));
  }
}

} // namespace

bool refresh_yoke(App& app) {
  YokeCache& cache = app.caches.yoke;
  const YokeWork& work = app.yoke;
  if (!work.opened || !work.shown) {
    return false;
  }
  const bool dragging = !work.open_field.empty();
  const bool unsought = cache.dragging && !dragging; // what waited for the end of the drag
  const bool planned = cache.opening != work.opening || cache.revision != work.revision || cache.sizes.empty();
  if (planned || unsought) {
    cache.dragging = dragging;
    plan_all(cache, *work.opened);
    cache.opening = work.opening;
    cache.revision = work.revision;
    app.view.yoke.finding = -1;
  }
  if (planned || unsought || cache.size != app.view.yoke.size || cache.sight != app.view.sight) {
    cache.size = app.view.yoke.size;
    cache.sight = app.view.sight;
    draw_size(cache, *work.opened, app.view.yoke.size);
    return true;
  }
  return false;
}

const SizePlan* shown_plan(const App& app) {
  const auto& sizes = app.caches.yoke.sizes;
  const std::size_t size = app.view.yoke.size;
  return size < sizes.size() && sizes[size] ? &*sizes[size] : nullptr;
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

std::vector<YokeFinding> yoke_findings(const OpenedYoke& opened, const YokeCache& cache,
                                       const std::vector<std::optional<Error>>& troubles) {
  std::vector<YokeFinding> found;
  const bool too_wide_somewhere = bed_failure(opened).has_value();
  for (std::size_t size = 0; size < troubles.size(); ++size) {
    if (troubles[size]) {
      YokeFinding finding{Severity::fault, with_capital(troubles[size]->message), with_capital(troubles[size]->remedy)};
      finding.size = too_wide_somewhere ? std::nullopt : std::optional(size);
      finding.can_split = too_wide_somewhere && split_to_fit(opened);
      finding.piece = too_wide_somewhere ? static_cast<int>(too_wide(opened).front().piece) : -1;
      found.push_back(std::move(finding));
    }
  }
  const bool centred = opened.yoke.fit.seams == YokeSeams::centred;
  for (std::size_t size = 0; size < cache.sizes.size(); ++size) {
    if (!cache.sizes[size]) {
      continue;
    }
    const SizePlan& plan = *cache.sizes[size];
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
    if (plan.rows.missing_rows != 0) {
      YokeFinding finding{Severity::warning, with_capital(text_of(plan.rows)), {}, size};
      const auto& proposal = plan.rows.proposal;
      for (std::size_t tier = 0; tier < proposal.size(); ++tier) {
        finding.rows = finding.rows || proposal[tier] != opened.yoke.tiers[tier].plain_above.at(size);
      }
      found.push_back(std::move(finding));
    }
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
