// What is seen of a page, and the cache.
#include "editor/preview.hpp"

#include "editor/app.hpp"
#include "rows/cards.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

namespace {

constexpr double rim = 10; // px around a page that is smaller than the room
constexpr double least_px_per_mm = 0.2;
constexpr double most_px_per_mm = 24; // 600 dpi
constexpr double far_below = 1.0e9;   // mm: as far down as there is page

double wished_zoom(double width, double height, ScreenPoint room, const PreviewView& view) {
  const double across = (room.x - 2 * rim) / width;
  const double upwards = (room.y - 2 * rim) / height;
  const double wished = view.zoom == PageZoom::whole   ? std::min(across, upwards)
                        : view.zoom == PageZoom::width ? across
                                                       : view.px_per_mm;
  return std::clamp(wished, least_px_per_mm, most_px_per_mm);
}

// One direction: px of room before the page, px of it that are seen, and the first mm of it.
struct Stretch {
  int from = 0;
  int size = 0;
  double corner = 0;
};

Stretch stretch_of(double page, double room, double px_per_mm, double corner) {
  const double whole = std::round(page * px_per_mm);
  if (whole <= room) {
    return {static_cast<int>(std::floor((room - whole) / 2)), std::max(1, static_cast<int>(whole)), 0};
  }
  const double most = std::max(0.0, page - room / px_per_mm);
  return {0, std::max(1, static_cast<int>(room)), std::clamp(corner, 0.0, most)};
}

} // namespace

PageSight sight_of(double page_width, double page_height, ScreenPoint room, const PreviewView& view) {
  const double zoom = wished_zoom(page_width, page_height, room, view);
  const Stretch across = stretch_of(page_width, room.x, zoom, view.corner.x);
  const Stretch down = stretch_of(page_height, room.y, zoom, view.corner.y);
  return {zoom, across.from, down.from, across.size, down.size, {across.corner, down.corner}};
}

PreviewView turned_to(PreviewView view, int page, int pages) {
  const int wished = std::clamp(page, 0, std::max(0, pages - 1));
  if (wished != view.page) {
    view.page = wished;
    view.corner.y = 0;
  }
  return view;
}

PreviewView scrolled(PreviewView view, double page_width, double page_height, ScreenPoint room, ScreenPoint by,
                     int pages) {
  const PageSight before = sight_of(page_width, page_height, room, view);
  view.corner = {before.corner.x + by.x / before.px_per_mm, before.corner.y + by.y / before.px_per_mm};
  const PageSight after = sight_of(page_width, page_height, room, view);
  view.corner = after.corner;
  if (by.y != 0 && after.corner.y == before.corner.y) {
    const int page = view.page + (by.y > 0 ? 1 : -1);
    PreviewView next = turned_to(view, page, pages);
    if (by.y < 0 && next.page != view.page) {
      next.corner.y = far_below;
    }
    return next;
  }
  return view;
}

PreviewView zoomed(PreviewView view, double page_width, double page_height, ScreenPoint room, double factor,
                   ScreenPoint about) {
  const PageSight before = sight_of(page_width, page_height, room, view);
  const Point held{before.corner.x + (static_cast<double>(about.x) - before.left) / before.px_per_mm,
                   before.corner.y + (static_cast<double>(about.y) - before.top) / before.px_per_mm};
  view.zoom = PageZoom::own;
  view.px_per_mm = std::clamp(before.px_per_mm * factor, least_px_per_mm, most_px_per_mm);
  view.corner = {held.x - about.x / view.px_per_mm, held.y - about.y / view.px_per_mm};
  view.corner = sight_of(page_width, page_height, room, view).corner;
  return view;
}

namespace {

void make_pages(App& app, PreviewCache& cache) {
  const Work& work = app.work;
  const PreviewView& view = app.view.preview;
  cache.pages.clear();
  cache.trouble.clear();
  cache.cards = 0;
  if (work.profile.card) {
    cache.cards = static_cast<int>(card_plan(work.design, *work.profile.card, app.caches.rows).cards.size());
  }
  auto pages = pages_of(work.design, work.profile, {view.kind, view.chart, view.only_card});
  if (pages) {
    cache.pages = std::move(pages).value();
  } else {
    cache.trouble = pages.error().message + (pages.error().remedy.empty() ? "" : ".\n" + pages.error().remedy) + ".";
  }
  cache.seen.reset();
}

bool draw_page(App& app, PreviewCache& cache) {
  const PreviewView& view = app.view.preview;
  const ScreenPoint room{app.view.preview_box.width(), app.view.preview_box.height()};
  if (cache.pages.empty() || room.x < 8 || room.y < 8) {
    return false;
  }
  const Sheet& sheet = cache.pages[static_cast<std::size_t>(view.page)];
  const PageSight sight = sight_of(sheet.width, sheet.height, room, view);
  if (cache.seen == sight && cache.seen_page == view.page) {
    return false;
  }
  auto pixels = pixels_of(sheet, sight.px_per_mm, sight.corner, sight.width, sight.height);
  if (pixels) {
    cache.pixels = std::move(pixels).value();
  } else {
    cache.pages.clear();
    cache.trouble = pixels.error().text();
  }
  cache.seen = sight;
  cache.seen_page = view.page;
  ++cache.serial;
  return true;
}

} // namespace

bool refresh_preview(App& app) {
  PreviewCache& cache = app.caches.preview;
  if (!std::holds_alternative<PreviewDialog>(app.session.dialog)) {
    if (cache.made_for && !is_open(app.session.dialog)) {
      cache.made_for.reset();
      cache.pages = {};
      cache.pixels = {};
      cache.seen.reset();
    }
    return false;
  }
  PreviewView& view = app.view.preview;
  if (view.only_card && (view.kind != SheetKind::card || !app.work.profile.card)) {
    view.only_card.reset();
  }
  const PreviewCache::Key key{app.work.opening, app.work.history.revision(), view.kind,
                              view.chart.stay_back_where_fewer, view.only_card};
  bool changed = false;
  if (cache.made_for != key) {
    make_pages(app, cache);
    if (view.only_card && *view.only_card > cache.cards) { // the design has become shorter
      view.only_card.reset();
      make_pages(app, cache);
    }
    cache.made_for = key;
    cache.made_for->only_card = view.only_card;
    changed = true;
  }
  view.page = std::clamp(view.page, 0, std::max(0, cache.count() - 1));
  return draw_page(app, cache) || changed;
}

} // namespace punchwright::editor
