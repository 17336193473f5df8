// What of a page is seen, how pages are turned, and that the preview's pages are the writers'.
#include "editor/actions.hpp"
#include "editor/preview.hpp"
#include "editor/status_words.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

constexpr ScreenPoint room{800, 600};

App previewing(SheetKind kind) {
  App app = make_app();
  app.session.dialog = PreviewDialog{};
  app.view.preview.kind = kind;
  app.view.preview_box = {0, 0, room.x, room.y};
  refresh(app);
  return app;
}

} // namespace

TEST_CASE("a whole page lies in the middle of the room") {
  const PageSight sight = sight_of(210, 297, room, {});
  CHECK(sight.height == doctest::Approx(580).epsilon(0.01));
  CHECK(sight.width == doctest::Approx(580.0 * 210 / 297).epsilon(0.01));
  CHECK(2 * sight.left + sight.width == doctest::Approx(room.x).epsilon(0.01));
  CHECK(sight.corner == Point{});
}

TEST_CASE("a page as wide as the room is seen in part, and no farther than its foot") {
  PreviewView view;
  view.zoom = PageZoom::width;
  view.corner.y = 1000;
  const PageSight sight = sight_of(210, 297, room, view);
  CHECK(sight.width == doctest::Approx(780).epsilon(0.01));
  CHECK(sight.height == 600);
  CHECK(sight.corner.y + sight.height / sight.px_per_mm == doctest::Approx(297));
}

TEST_CASE("scrolling turns the page at its ends") {
  PreviewView view;
  view.zoom = PageZoom::width;
  view = scrolled(view, 210, 297, room, {0, 100}, 2);
  CHECK(view.page == 0);
  CHECK(view.corner.y > 0);
  view = scrolled(view, 210, 297, room, {0, 5000}, 2); // to the foot
  CHECK(view.page == 0);
  view = scrolled(view, 210, 297, room, {0, 100}, 2);
  CHECK(view.page == 1);
  CHECK(view.corner.y == 0);
  view = scrolled(view, 210, 297, room, {0, -100}, 2);
  CHECK(view.page == 0);
  const PageSight foot = sight_of(210, 297, room, view);
  CHECK(foot.corner.y + foot.height / foot.px_per_mm == doctest::Approx(297));
  view = scrolled(turned_to(view, 1, 2), 210, 297, room, {0, 5000}, 2);
  CHECK(scrolled(view, 210, 297, room, {0, 100}, 2).page == 1); // there is no third
}

TEST_CASE("zooming keeps the place under the pointer") {
  const ScreenPoint about{400, 300};
  const auto place = [&](const PreviewView& view) {
    const PageSight sight = sight_of(210, 297, room, view);
    return sight.corner.y + (static_cast<double>(about.y) - sight.top) / sight.px_per_mm;
  };
  const PreviewView before;
  const PreviewView after = zoomed(before, 210, 297, room, 4, about);
  CHECK(place(after) == doctest::Approx(place(before)).epsilon(0.01));
}

TEST_CASE("the preview has the pages that the writers get, and draws the one that is looked at") {
  App app = previewing(SheetKind::card);
  const PreviewCache& cache = app.caches.preview;
  const auto pages = pages_of(app.work.design, app.work.profile, {});
  REQUIRE(pages.ok());
  CHECK(cache.count() == static_cast<int>(pages->size()));
  CHECK(cache.pixels.width > 100);
  const auto first = cache.pixels.rgb;
  editor::apply(app, SetPreview{turned_to(app.view.preview, 1, cache.count())});
  refresh(app);
  CHECK(cache.seen_page == 1);
  CHECK(cache.pixels.rgb != first);
}

TEST_CASE("the pages follow the design and go with the preview") {
  App app = previewing(SheetKind::card);
  const double before = app.caches.preview.pages.front().width;
  Document settings = settings_of(app.work.design);
  settings.card.paper = Paper::letter;
  editor::apply(app, EditDesign{ChangeSettings{settings}});
  refresh(app);
  CHECK(app.caches.preview.pages.front().width != before);
  editor::apply(app, SetDialog{NoDialog{}});
  refresh(app);
  CHECK(app.caches.preview.pages.empty());
  CHECK(app.caches.preview.pixels.rgb.empty());
}

TEST_CASE("a machine without a card says why there is no page") {
  App app = previewing(SheetKind::card);
  Document settings = settings_of(app.work.design);
  settings.profile = "plastic-by-hand";
  editor::apply(app, EditDesign{ChangeSettings{settings}});
  refresh(app);
  CHECK(app.caches.preview.pages.empty());
  CHECK(app.caches.preview.trouble.find("reads no card") != std::string::npos);
  PreviewView view = app.view.preview;
  view.kind = SheetKind::chart;
  editor::apply(app, SetPreview{view});
  refresh(app);
  CHECK(app.caches.preview.count() > 0);
}

namespace {

App beginning_on(const char* machine) {
  App app = make_app();
  NewDialog wishes;
  wishes.profile = machine;
  editor::apply(app, BeginDesign{wishes});
  return app;
}

} // namespace

TEST_CASE("on a bed without a reader the preview opens on the needle chart") {
  App app = beginning_on("plastic-by-hand");
  REQUIRE_FALSE(app.work.profile.card.has_value());
  editor::apply(app, Run{Command::preview});
  CHECK(app.view.preview.kind == SheetKind::chart);
  refresh(app);
  CHECK(app.caches.preview.trouble.empty());
}

TEST_CASE("another design begins on its own first sheet and without the symmetry that was chosen for the last") {
  App app = beginning_on("bulky-card-24");
  app.view.preview.kind = SheetKind::leaflet;
  app.view.preview.page = 3;
  const Grid& grid = app.work.design.grid;
  app.view.symmetry = centred_frieze(FriezeGroup::p1m1, grid.width(), grid.height());
  NewDialog wishes;
  wishes.profile = "bulky-card-24";
  editor::apply(app, BeginDesign{wishes});
  editor::apply(app, Run{Command::preview});
  CHECK(app.view.preview.kind == SheetKind::card);
  CHECK(app.view.preview.page == 0);
  CHECK_FALSE(app.view.symmetry.has_value());
}

TEST_CASE("a design that was never saved is offered a name made of its title") {
  App app = beginning_on("bulky-card-24");
  const auto offered = [&] {
    editor::apply(app, Run{Command::save_as});
    return std::get<PathDialog>(app.session.dialog).name;
  };
  CHECK(offered() == "untitled.repeat");
  app.work.design.title = "  Tide crabs, no. 2! ";
  CHECK(offered() == "tide-crabs-no-2.repeat");
  app.work.design.title = "Möwen/Hafen";
  CHECK(offered() == "möwen-hafen.repeat");
}

TEST_CASE("how colours are seen is said once, at the foot's right end, for as long as they aren't as they are") {
  App app = beginning_on("bulky-card-24");
  CHECK(words_for_sight(app).empty());
  editor::apply(app, Run{Command::sight_lightness});
  CHECK(app.session.message.empty());
  CHECK(words_for_sight(app) == "Lightness only");
  editor::apply(app, Say{"Saved", Tone::good});
  CHECK(words_for_sight(app) == "Lightness only");
  editor::apply(app, Run{Command::sight_lightness});
  CHECK(app.session.message == "Colours as they are");
  CHECK(words_for_sight(app).empty());
}
