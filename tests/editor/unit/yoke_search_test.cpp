// What the yoke's page says of a yoke for which no counts are found at once, or none fit, or none that are near.
#include "editor/actions.hpp"
#include "editor/yoke_findings.hpp"
#include "editor/yoke_no_fit.hpp"
#include "editor/yoke_search.hpp"
#include "files/files.hpp"
#include "pieces/starter.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>

using namespace punchwright;
using namespace punchwright::editor;

namespace fs = std::filesystem;

namespace {

const fs::path patterns = PUNCHWRIGHT_SOURCE_DIR "/patterns";

Result<std::string> file_at(const fs::path& path) {
  return read_file(path, 1'000'000);
}

// A pullover of one tier with the starter's numbers, as the dialog begins it, open in an editor.
App with_pullover(const std::string& tier, std::vector<double> chests, double tolerance = YokeFit{}.tolerance) {
  YokeStart start;
  for (std::size_t size = 0; size < chests.size(); ++size) {
    start.body.sizes.push_back(std::string(1, "SML"[size]));
  }
  start.body.chest_cm = std::move(chests);
  start.tiers = {(patterns / tier).string()};
  auto yoke = started_yoke(start, (patterns / "new.yoke").string(), file_at);
  REQUIRE(yoke);
  yoke->fit.tolerance = tolerance;
  auto opened = open_yoke(std::move(yoke).value(), (patterns / "new.yoke").string(), file_at);
  REQUIRE(opened);
  App app;
  app.yoke.opened = std::move(opened).value();
  app.yoke.shown = true;
  app.yoke.opening = 1;
  refresh_yoke(app);
  return app;
}

void take_offer(App& app, Yoke yoke) {
  app.yoke.opened->yoke = std::move(yoke);
  ++app.yoke.revision;
  refresh_yoke(app);
}

} // namespace

TEST_CASE("a yoke that takes long is worked out beside the window, and one that is changed meanwhile is let go") {
  App app = with_pullover("buoy-line.repeat", {300});
  YokeCache& cache = app.caches.yoke;
  REQUIRE(cache.findings.size() == 1);
  CHECK(cache.findings.front().remedy.ends_with("being worked out …"));
  CHECK_FALSE(cache.search);
  while (!cache.search) {
    CHECK(follow_yoke_search(app).look_again);
  }
  CHECK_FALSE(follow_yoke_search(app).taken);
  Yoke narrower = app.yoke.opened->yoke;
  for (YokePiece& piece : narrower.pieces) {
    piece.top_cm = piece.bottom_cm;
  }
  take_offer(app, narrower);
  CHECK_FALSE(cache.search);
  CHECK(cache.sizes.front());
  while (!cache.given_up.empty()) {
    static_cast<void>(follow_yoke_search(app));
  }
  CHECK(cache.sizes.front());
}

TEST_CASE("one tier that can't narrow so far says so once for all sizes, and what is offered can be taken") {
  App app = with_pullover("tide-waves.repeat", {86.4, 96.5, 106.7});
  YokeCache& cache = app.caches.yoke;
  const auto faults = [&] { return std::ranges::count(cache.findings, Severity::fault, &YokeFinding::severity); };
  CHECK(faults() == 1);
  finish_yoke_search(app);
  refresh_yoke(app);
  REQUIRE(faults() == 1);
  const YokeFinding finding = cache.findings.front();
  CHECK(finding.sizes.size() == 3);
  CHECK(finding.words.starts_with("1 tier can't narrow front"));
  CHECK(finding.remedy.starts_with("Add tiers, until there are 2 at least"));
  CHECK(finding.remedy.find("tolerance of 2") != std::string::npos);
  REQUIRE(finding.tolerance > 0.2);
  REQUIRE_FALSE(finding.widths.empty());
  const Yoke before = app.yoke.opened->yoke;
  take_offer(app, with_offered_widths(before, finding));
  CHECK(faults() == 0);
  take_offer(app, with_offered_tolerance(before, finding));
  CHECK(faults() == 0);
}

TEST_CASE("decreases that must go the other way are told, as those are that can't keep clear") {
  App app = with_pullover("tide-waves.repeat", {86.4, 96.5, 106.7}, 0.3);
  const auto told = [&app](const std::string& words) {
    return std::ranges::count_if(app.caches.yoke.findings, [&](const YokeFinding& finding) {
      return finding.severity == Severity::note && finding.words.find(words) != std::string::npos;
    });
  };
  REQUIRE(app.caches.yoke.sizes.front());
  CHECK(told("to go towards the edges") == 0);
  Shaping& shaping = app.caches.yoke.sizes.front()->pieces.front().tiers.front().shaping;
  REQUIRE(shaping.decreases() > 0);
  shaping.kept_off_seams = shaping.kept_off_centre = true; // as clear as is wished
  shaping.astray = 2;
  app.caches.yoke.findings = yoke_findings(*app.yoke.opened, app.caches.yoke, LengthUnit::centimetres);
  CHECK(told("no room for 2 decreases to go towards the edges") == 1);
}

TEST_CASE("a piece that departs from its measure is found, with size and both widths") {
  App app = with_pullover("tide-waves.repeat", {86.4, 96.5, 106.7}, 0.3);
  const YokeCache& cache = app.caches.yoke;
  REQUIRE(cache.sizes.front());
  const auto narrow = std::ranges::find_if(cache.findings, [](const YokeFinding& finding) {
    return finding.severity == Severity::warning && finding.size == std::size_t{0} &&
           finding.words.starts_with("front: ");
  });
  REQUIRE(narrow != cache.findings.end());
  const KnittedWidth width = knitted_width(*app.yoke.opened, *cache.sizes.front(), 0, 0, false);
  CHECK(width.departs());
  CHECK(width.knitted_mm == doctest::Approx((width.stitches - 2) * width.stitch_mm));
  CHECK(narrow->words.find(cloth_length(width.knitted_mm / 10, LengthUnit::centimetres)) != std::string::npos);
  CHECK(narrow->words.find(cloth_length(width.wished_mm / 10, LengthUnit::centimetres)) != std::string::npos);
}
