// Works the yoke out again when it has changed: first the plan of all sizes, then what the shown size looks like.
#include "editor/yoke_cache.hpp"

#include "editor/app.hpp"

#include <filesystem>
#include <utility>

namespace punchwright::editor {

namespace {

// At once, where that is soon done; else it waits for the search.
void plan_into(YokeCache& cache, const OpenedYoke& opened, std::size_t size) {
  const int parts = parts_at_once(opened, size) / static_cast<int>(opened.yoke.sizes.size());
  PlanTried tried = parts > 0 ? try_plan(opened, size, parts) : PlanTried{std::nullopt, true};
  cache.sizes[size] = std::move(tried.plan);
  if (!cache.sizes[size]) {
    cache.troubles[size].why = tried.gave_up ? WhyNoPlan::not_known_yet : WhyNoPlan::nothing_fits;
    cache.waiting.push_back(size);
  }
}

// Nobody waits for it any more; letting go of it would wait for its thread.
void give_up_search(YokeCache& cache) {
  if (cache.search) {
    cache.search->stop();
    cache.given_up.push_back(std::exchange(cache.search, nullptr));
  }
}

std::string tier_name(const OpenedYoke& opened, std::size_t tier) {
  const std::string& title = opened.tiers[tier].document.title;
  return title.empty() ? std::filesystem::path(opened.yoke.tiers[tier].repeat).stem().string() : title;
}

void plan_all(YokeCache& cache, const OpenedYoke& opened) {
  give_up_search(cache);
  ++cache.planned;
  cache.sizes.assign(opened.yoke.sizes.size(), std::nullopt);
  cache.troubles.assign(opened.yoke.sizes.size(), {});
  cache.waiting.clear();
  cache.loops = check_loops(opened);
  if (bed_failure(opened)) {
    cache.troubles.assign(opened.yoke.sizes.size(), {WhyNoPlan::too_wide, std::nullopt});
  } else {
    for (std::size_t size = 0; size < cache.sizes.size(); ++size) {
      plan_into(cache, opened, size);
    }
  }
  cache.tiers.clear();
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    cache.tiers.push_back(tier_name(opened, tier));
  }
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

void find_anew(App& app) {
  YokeCache& cache = app.caches.yoke;
  cache.lengths = app.settings.lengths;
  cache.findings = yoke_findings(*app.yoke.opened, cache, cache.lengths);
  app.view.yoke.finding = -1;
}

} // namespace

bool refresh_yoke(App& app) {
  YokeCache& cache = app.caches.yoke;
  const YokeWork& work = app.yoke;
  if (!work.opened || !work.shown) {
    return false;
  }
  const bool planned = cache.opening != work.opening || cache.revision != work.revision || cache.sizes.empty();
  if (planned) {
    plan_all(cache, *work.opened);
    cache.opening = work.opening;
    cache.revision = work.revision;
  }
  if (planned || cache.lengths != app.settings.lengths) {
    find_anew(app);
  }
  if (planned || cache.size != app.view.yoke.size || cache.sight != app.view.sight) {
    cache.size = app.view.yoke.size;
    cache.sight = app.view.sight;
    draw_size(cache, *work.opened, app.view.yoke.size);
    return true;
  }
  return false;
}

void take_yoke_answers(App& app, std::vector<SizeAnswer> answers) {
  YokeCache& cache = app.caches.yoke;
  cache.waiting.clear();
  for (SizeAnswer& answer : answers) {
    SizeTrouble& trouble = cache.troubles[answer.size];
    trouble.why = answer.plan ? WhyNoPlan::none : answer.would_fit ? WhyNoPlan::nothing_fits : WhyNoPlan::gave_up;
    trouble.would_fit = std::move(answer.would_fit);
    cache.sizes[answer.size] = std::move(answer.plan);
  }
  find_anew(app);
  cache.size.reset(); // what it looks like is drawn anew
}

const SizePlan* shown_plan(const App& app) {
  const auto& sizes = app.caches.yoke.sizes;
  const std::size_t size = app.view.yoke.size;
  return size < sizes.size() && sizes[size] ? &*sizes[size] : nullptr;
}

} // namespace punchwright::editor
