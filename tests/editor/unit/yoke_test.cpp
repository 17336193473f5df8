// The open yoke without a window: its picture against what the simulated machine knits, its shapes, its steps, its
// file.
#include "design/repeat_file.hpp"
#include "editor/actions.hpp"
#include "editor/applying.hpp"
#include "editor/widgets.hpp"
#include "editor/yoke_cache.hpp"
#include "editor/yoke_parts.hpp"
#include "files/files.hpp"
#include "pieces/knit_pieces.hpp"
#include "pieces/yoke_file.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <filesystem>
#include <numbers>
#include <unistd.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace fs = std::filesystem;

namespace {

const fs::path patterns = PUNCHWRIGHT_SOURCE_DIR "/patterns";

App with_yoke(const fs::path& path) {
  App app = make_app();
  apply(app, DropFile{path});
  refresh(app);
  return app;
}

// A folder of its own with the demos in it; gone at the end.
struct Desk {
  fs::path folder = fs::temp_directory_path() / ("punchwright-yokes-" + std::to_string(::getpid()));
  Desk() {
    fs::remove_all(folder);
    fs::copy(patterns, folder, fs::copy_options::recursive);
  }
  // A copy of the tier that names another machine.
  [[nodiscard]] fs::path for_another_machine(const std::string& tier) const {
    constexpr std::size_t most = 1'000'000;
    const std::string text = read_file(folder / "tiers" / (tier + ".repeat"), most).value();
    Document document = read_repeat(text, tier).value().document;
    REQUIRE(document.profile == "bulky-card-24");
    document.profile = "standard-card-24";
    const fs::path path = folder / (tier + "-for-another.repeat");
    REQUIRE_FALSE(write_file(path, write_repeat(document)));
    return path;
  }
  ~Desk() {
    std::error_code ignored;
    fs::remove_all(folder, ignored);
  }
};

Colour pixel_at(const YokePicture& picture, int column, int row) {
  const auto place = (static_cast<std::size_t>(picture.height - 1 - row) * static_cast<std::size_t>(picture.width) +
                      static_cast<std::size_t>(column)) *
                     3;
  return {picture.rgb[place], picture.rgb[place + 1], picture.rgb[place + 2]};
}

// Stitches of the picture that are of another colour than the yarn in the simulated machine's fabric.
int stitches_unlike_fabric(const App& app, const PieceFabric& knitted, std::size_t piece, std::size_t tier) {
  const OpenedYoke& opened = *app.yoke.opened;
  const SizePlan& plan = *shown_plan(app);
  const TierOfPiece& there = plan.pieces[piece].tiers[tier];
  const TierRows& rows = knitted.tiers[tier];
  const YokePicture& picture = app.caches.yoke.picture;
  int unlike = 0;
  for (int row = 0; row < rows.pattern_rows; ++row) {
    for (int stitch = 0; stitch < there.stitches; ++stitch) {
      // The knit side's leftmost stitch hangs on the rightmost needle.
      const Made& made = knitted.fabric.at(rows.first_row + row, Needle{there.bed.last.position - stitch});
      const Colour seen = pixel_at(picture, picture.left[tier][piece] + stitch, plan.heights[tier] + row);
      unlike += seen == yarn_of(opened.tiers[tier].document, made.yarn).colour ? 0 : 1;
    }
  }
  return unlike;
}

} // namespace

TEST_CASE("every stitch of a yoke's picture is of the yarn that the simulated machine knits there") {
  for (const char* name : {"harbour-pullover.yoke", "anchor-yoke.yoke", "puffin-poncho.yoke"}) {
    CAPTURE(name);
    const App app = with_yoke(patterns / name);
    REQUIRE(shown_plan(app) != nullptr);
    for (std::size_t piece = 0; piece < shown_plan(app)->pieces.size(); ++piece) {
      CAPTURE(piece);
      const PieceFabric knitted = knit_piece(*app.yoke.opened, *shown_plan(app), piece);
      REQUIRE(knitted.trouble == "");
      for (std::size_t tier = 0; tier < app.yoke.opened->tiers.size(); ++tier) {
        CAPTURE(tier);
        CHECK(stitches_unlike_fabric(app, knitted, piece, tier) == 0);
      }
    }
  }
}

TEST_CASE("seen from above, the lowest edge is as long as its visible stitches are wide, and the front is below") {
  const App app = with_yoke(patterns / "harbour-pullover.yoke");
  const OpenedYoke& opened = *app.yoke.opened;
  const SizePlan& plan = *shown_plan(app);
  double stitches = 0;
  for (const PieceOfSize& piece : plan.pieces) {
    stitches += piece.tiers.front().stitches - 2 * opened.yoke.edge;
  }
  const double round = stitches * opened.tiers.front().document.gauge.stitch_mm();
  const YokeShape& worn = app.caches.yoke.worn;
  CHECK(worn.width * std::numbers::pi == doctest::Approx(round).epsilon(0.001));
  CHECK(worn.blocks.front().piece == 0);
  CHECK(std::abs(worn.blocks.front().left) < 0.01F * worn.width); // its middle, across
  CHECK(worn.blocks.front().right == doctest::Approx(-worn.width / 2).epsilon(0.001));
  const YokeSeamLine& seam = worn.seams.front(); // right of the front
  CHECK(seam.x0 > 0);
  CHECK(std::hypot(seam.x1, seam.y1) < std::hypot(seam.x0, seam.y0));
}

TEST_CASE(
    "seen from above, the rings of a yoke are told from the outside; one that widens, from the inside, named outside") {
  const App narrows = with_yoke(patterns / "harbour-pullover.yoke");
  CHECK(words_of_rings(narrows, *shown_plan(narrows)).starts_with("From outside inwards: 1. "));

  const Desk desk;
  const fs::path path = desk.folder / "cape.yoke";
  const char* const text = R"(format = 1
title = "Cape"
sizes = ["all"]
edge = 1
[[piece]]
name = "front"
bottom_cm = 20.0
top_cm = 45.0
[[piece]]
name = "back"
like = "front"
[depth]
cm = 18.0
[[tier]]
repeat = "tiers/pot-buoys.repeat"
plain_above = 6
[[tier]]
repeat = "tiers/corks.repeat"
plain_above = 6
[fit]
tolerance = 0.1
seams = "continuous"
)";
  REQUIRE_FALSE(write_file(path, text));
  const App widens = with_yoke(path);
  REQUIRE(shown_plan(widens) != nullptr);
  CHECK(words_of_rings(widens, *shown_plan(widens)).starts_with("From inside outwards: 1. Pot buoys"));
  const YokeShape& worn = widens.caches.yoke.worn;
  CHECK(std::hypot(worn.blocks.front().left, worn.blocks.front().right) ==
        doctest::Approx(worn.width / 2).epsilon(0.001));
}

TEST_CASE("on the bed each tier lies on its needles, the knit side's right end at the left") {
  const App app = with_yoke(patterns / "puffin-poncho.yoke");
  const SizePlan& plan = *shown_plan(app);
  const int leftmost = app.yoke.opened->profile.leftmost().position;
  const YokeShape& bed = app.caches.yoke.on_bed[1];
  REQUIRE(bed.blocks.size() == app.yoke.opened->tiers.size());
  for (std::size_t tier = 0; tier < bed.blocks.size(); ++tier) {
    const PieceOnBed& there = plan.pieces[1].tiers[tier].bed;
    CHECK(static_cast<int>(bed.blocks[tier].left) == there.first.position - leftmost);
    CHECK(static_cast<int>(bed.blocks[tier].right) == there.last.position - leftmost + 1);
    CHECK(bed.quads[2 * tier].corners[0].u > bed.quads[2 * tier].corners[1].u); // mirrored
  }
}

TEST_CASE("on the bed there is a gap where the work is off the machine, and nowhere else") {
  const App app = with_yoke(patterns / "harbour-pullover.yoke");
  const OpenedYoke& opened = *app.yoke.opened;
  const YokeShape& together = app.caches.yoke.on_bed[0];
  constexpr float gap = 20; // mm
  const YokeShape apart = parted(together, gap);
  REQUIRE(apart.quads.size() == together.quads.size());
  // Rows from below; of each part of the picture the first row and the one behind its last, and how far it is raised.
  int gaps = 0;
  float end_before = 0;
  for (std::size_t place = 0; place < apart.quads.size(); ++place) {
    const std::size_t tier = place / quads_of_block;
    const YokeCorner& foot = together.quads[place].corners[0];
    const float raised = apart.quads[place].corners[0].y - foot.y;
    const double set_up = app.caches.yoke.row_mm[static_cast<std::size_t>(shown_plan(app)->heights[tier + 1] -
                                                                          plain_rows_needed(opened, tier).setting_up)];
    const bool hung_again = foot.y >= set_up - 0.01; // the rows that set up the next tier
    const bool last = tier + 1 == opened.tiers.size();
    CHECK(raised == doctest::Approx(gap * static_cast<float>(tier + (hung_again && !last ? 1 : 0))));
    const float step = apart.quads[place].corners[0].y - end_before;
    CHECK((std::fabs(step) < 0.01F || std::fabs(step - gap) < 0.01F));
    gaps += step > 1 ? 1 : 0;
    end_before = apart.quads[place].corners[2].y;
    CHECK(apart.quads[place].corners[2].y - apart.quads[place].corners[0].y ==
          doctest::Approx(together.quads[place].corners[2].y - foot.y));
  }
  CHECK(gaps == static_cast<int>(opened.tiers.size()) - 1);
  CHECK(apart.height == doctest::Approx(together.height + gap * static_cast<float>(gaps)));
  for (std::size_t tier = 0; tier + 1 < opened.tiers.size(); ++tier) {
    CHECK(apart.blocks[tier].hung_again - apart.blocks[tier].hung == doctest::Approx(gap));
    CHECK(apart.blocks[tier].top == doctest::Approx(apart.blocks[tier + 1].bottom));
  }
  YokeShape staying = together;
  staying.blocks[0].stays = true; // the work is not taken off above the first tier
  CHECK(parted(staying, gap).height == doctest::Approx(together.height + gap * static_cast<float>(gaps - 1)));
  CHECK(parted(staying, gap).blocks[0].hung_again == parted(staying, gap).blocks[0].hung);
}

TEST_CASE("changes of one field are one step, are undone, and Escape takes them back") {
  App app = with_yoke(patterns / "harbour-pullover.yoke");
  const Yoke before = app.yoke.opened->yoke;
  for (const double cm : {40.0, 41.0, 42.0}) {
    Yoke next = app.yoke.opened->yoke;
    next.pieces[0].bottom_cm.values[0] = cm;
    apply(app, ChangeYoke{next, "front at the bottom, S"});
  }
  apply(app, CloseField{});
  CHECK(app.yoke.steps.size() == 1);
  CHECK_FALSE(app.yoke.saved());
  CHECK(window_title(app) == "• harbour-pullover.yoke — Punchwright");
  apply(app, Run{Command::undo});
  CHECK(app.yoke.opened->yoke == before);
  CHECK(app.yoke.saved());
  apply(app, Run{Command::redo});
  CHECK(app.yoke.opened->yoke.pieces[0].bottom_cm.at(0) == 42.0);
  Yoke next = app.yoke.opened->yoke;
  next.depth_cm.values[0] = 30;
  apply(app, ChangeYoke{next, "depth, S"});
  apply(app, DropField{});
  CHECK(app.yoke.steps.size() == 1);
  CHECK(app.yoke.opened->yoke.depth_cm.at(0) == before.depth_cm.at(0));
}

TEST_CASE("what can't be is refused with a reason, and nothing changes") {
  App app = with_yoke(patterns / "harbour-pullover.yoke");
  const Yoke before = app.yoke.opened->yoke;
  Yoke next = before;
  next.tiers[0].plain_above = {{0}};
  apply(app, ChangeYoke{next, "plain rows"});
  CHECK(app.yoke.opened->yoke == before);
  CHECK(app.yoke.steps.empty());
  CHECK(app.session.message.find("procedure needs") != std::string::npos);
}

TEST_CASE("why nothing fits is sought beside the window, and told when it is found, with the tolerance in per cent") {
  App app = with_yoke(patterns / "puffin-poncho.yoke");
  Yoke next = app.yoke.opened->yoke;
  next.fit.tolerance = 0.001;
  apply(app, ChangeYoke{next, "tolerance"});
  refresh(app);
  REQUIRE_FALSE(app.caches.yoke.findings.empty());
  CHECK(app.caches.yoke.findings.front().severity == Severity::fault);
  CHECK(shown_plan(app) == nullptr);
  CHECK(app.caches.yoke.findings.front().remedy.ends_with("being worked out …"));
  finish_yoke_search(app);
  refresh(app);
  CHECK(app.caches.yoke.findings.front().remedy.find("tolerance of 4.") != std::string::npos);
}

TEST_CASE("pieces that are wider than the bed are found and split") {
  App app = with_yoke(patterns / "harbour-pullover.yoke");
  Yoke next = app.yoke.opened->yoke;
  next.pieces[0].bottom_cm = {{120.0}};
  next.pieces[0].top_cm = {{36.0}};
  apply(app, ChangeYoke{next, "front"});
  apply(app, CloseField{});
  refresh(app);
  REQUIRE_FALSE(app.caches.yoke.findings.empty());
  CHECK(app.caches.yoke.findings.front().can_split);
  apply(app, SplitYoke{});
  refresh(app);
  CHECK(app.yoke.opened->yoke.pieces.size() > 4);
  CHECK((app.caches.yoke.findings.empty() || !app.caches.yoke.findings.front().can_split));
}

TEST_CASE("pieces so wide that no file could hold their parts are not offered to be split, and it is said") {
  App app = with_yoke(patterns / "harbour-pullover.yoke");
  Yoke next = app.yoke.opened->yoke;
  next.fit.tolerance = 0.01; // with more, narrower parts are within it
  next.pieces[0].bottom_cm = {{480.0}};
  next.pieces[1].bottom_cm = {{480.0}};
  apply(app, ChangeYoke{next, "front"});
  apply(app, CloseField{});
  refresh(app);
  REQUIRE_FALSE(app.caches.yoke.findings.empty());
  CHECK_FALSE(app.caches.yoke.findings.front().can_split);
  const Yoke before = app.yoke.opened->yoke;
  apply(app, SplitYoke{});
  CHECK(app.yoke.opened->yoke == before);
  CHECK(app.session.message.find("24 pieces at most") != std::string::npos);
}

TEST_CASE("a yoke saved in another folder still names its tiers, and the commands read it") {
  const Desk desk;
  App app = with_yoke(desk.folder / "anchor-yoke.yoke");
  const fs::path elsewhere = desk.folder / "mine";
  fs::create_directories(elsewhere);
  apply(app, Run{Command::save_as});
  auto* const dialog = std::get_if<PathDialog>(&app.session.dialog);
  REQUIRE(dialog != nullptr);
  PathDialog named = *dialog;
  named.folder = elsewhere;
  named.name = "copy";
  apply(app, SetDialog{named});
  apply(app, ChoosePath{});
  CHECK(app.yoke.path == elsewhere / "copy.yoke");
  const auto text = read_file(elsewhere / "copy.yoke", 100'000);
  REQUIRE(text);
  const auto read = read_yoke(*text, "copy.yoke");
  REQUIRE(read);
  CHECK(read->yoke.tiers.front().repeat == "../tiers/anchors.repeat");
  const auto opened = open_yoke(*text, (elsewhere / "copy.yoke").string(),
                                [](const fs::path& path) { return read_file(path, 1'000'000); });
  CHECK(opened);
}

TEST_CASE("a yoke from measurements has the starter's numbers and its changes") {
  const Desk desk;
  App app = make_app();
  app.session.folder = desk.folder;
  NewYokeDialog wishes;
  wishes.kind = YokeKind::poncho;
  wishes.sizes = {{"mine", 100, 33}};
  wishes.ease_cm = 12;
  apply(app, BeginYoke{wishes}); // without tiers
  const auto* const refused = std::get_if<NewYokeDialog>(&app.session.dialog);
  REQUIRE(refused != nullptr);
  CHECK(refused->remark.find("tier") != std::string::npos);
  wishes.tiers = {desk.folder / "tiers" / "pot-buoys.repeat", desk.folder / "tiers" / "corks.repeat"};
  apply(app, BeginYoke{wishes});
  REQUIRE(app.yoke.opened);
  CHECK(app.yoke.shown);
  CHECK_FALSE(app.yoke.saved());
  const Yoke& yoke = app.yoke.opened->yoke;
  const YokeMeasures measures = yoke_measures(100, 12, std::nullopt);
  CHECK(yoke.pieces.size() == 4);
  CHECK(yoke.pieces[0].bottom_cm.at(0) == doctest::Approx(measures.ring() / 4).epsilon(0.01));
}

TEST_CASE("measures of which no yoke can be made leave the dialog open, with the remark and what to do") {
  const Desk desk;
  App app = make_app();
  app.session.folder = desk.folder;
  NewYokeDialog wishes;
  wishes.sizes = {{"mine", 90, 10}};
  wishes.own_arms = true;
  wishes.ease_cm = -4;
  wishes.tiers = {desk.folder / "tiers" / "corks.repeat"};
  apply(app, BeginYoke{wishes});
  CHECK_FALSE(app.yoke.opened);
  const auto* const refused = std::get_if<NewYokeDialog>(&app.session.dialog);
  REQUIRE(refused != nullptr);
  CHECK(refused->remark == "Size 'mine': each sleeve would be -0.9 cm wide at the bottom");
  CHECK(refused->remedy == "allowed: 0.5 to 500 cm: give another upper arm, or another ease");
}

TEST_CASE("tiers for two machines: refused with what to do, and begun on one that is chosen for all") {
  const Desk desk;
  App app = make_app();
  NewYokeDialog dialog;
  dialog.sizes = {BodySize{"M", 100, 33, 0}};
  dialog.tiers = {desk.folder / "tiers" / "corks.repeat", desk.for_another_machine("corks")};
  apply(app, BeginYoke{dialog});
  CHECK_FALSE(app.yoke.opened);
  const auto& again = std::get<NewYokeDialog>(app.session.dialog);
  CHECK(again.remark == "Tier 2 is for another machine than tier 1: standard-card-24 and bulky-card-24");
  CHECK(again.remedy == "name one machine for all: [machine] in the file, Machine in the editor");
  dialog.profile = "standard-card-24";
  apply(app, BeginYoke{dialog});
  REQUIRE(app.yoke.opened);
  CHECK(app.yoke.opened->profile.name == "standard-card-24");
  for (const OpenedTier& tier : app.yoke.opened->tiers) {
    CHECK(tier.document.profile == "standard-card-24");
  }
}

TEST_CASE("a tier for another machine joins a yoke once a machine is chosen, which can't be taken away then") {
  const Desk desk;
  App app = with_yoke(desk.folder / "harbour-pullover.yoke");
  REQUIRE(app.yoke.opened);
  const std::size_t tiers = app.yoke.opened->yoke.tiers.size();
  const fs::path other = desk.for_another_machine("corks");
  add_tier(app, other);
  CHECK(app.yoke.opened->yoke.tiers.size() == tiers);
  CHECK(app.session.message.find("is for another machine than tier 1") != std::string::npos);

  const auto choose = [&](std::optional<std::string> machine) {
    Yoke yoke = app.yoke.opened->yoke;
    yoke.profile = std::move(machine);
    apply(app, ChangeYoke{yoke, "machine for all tiers"});
  };
  choose("bulky-card-24");
  add_tier(app, other);
  REQUIRE(app.yoke.opened->yoke.tiers.size() == tiers + 1);
  CHECK(app.yoke.opened->tiers.back().document.profile == "bulky-card-24");
  choose(std::nullopt);
  CHECK(app.yoke.opened->yoke.profile == "bulky-card-24");
  CHECK(app.session.message.find("is for another machine than tier 1") != std::string::npos);
  choose("plastic-by-hand");
  CHECK(app.yoke.opened->profile.name == "plastic-by-hand");
}

TEST_CASE("a file whose tiers name two machines opens, says what to choose, and has no sheets before that") {
  const Desk desk;
  const fs::path path = desk.folder / "two-machines.yoke";
  constexpr std::size_t most = 1'000'000;
  std::string text = read_file(desk.folder / "harbour-pullover.yoke", most).value();
  const std::string tier = "tiers/corks.repeat";
  text.replace(text.find(tier), tier.size(), desk.for_another_machine("corks").string());
  if (const auto machine = text.find("[machine]"); machine != std::string::npos) {
    text.erase(machine, text.find('[', machine + 1) - machine);
  }
  REQUIRE_FALSE(write_file(path, text));
  App app = with_yoke(path);
  REQUIRE(app.yoke.opened);
  CHECK(app.yoke.shown);
  CHECK(app.session.message ==
        "Opened two-machines.yoke; its tiers' files name different machines: choose one for all (Ctrl+5)");
  REQUIRE_FALSE(app.caches.yoke.findings.empty());
  const YokeFinding& first = app.caches.yoke.findings.front();
  CHECK(first.severity == Severity::fault);
  CHECK(first.words == "Tier 2 is for another machine than tier 1: standard-card-24 and bulky-card-24");
  CHECK(first.remedy.starts_with("Choose one machine for all tiers: Machine, on the left (Ctrl+5)"));
  CHECK(why_not(app, Command::export_yoke) == "Choose one machine for all tiers first (Ctrl+5)");
  CHECK(why_not(app, Command::yoke_machine).empty());
  // It can be worked on meanwhile.
  Yoke next = app.yoke.opened->yoke;
  next.depth_cm.values[0] = 30;
  apply(app, ChangeYoke{next, "depth, S"});
  CHECK(app.yoke.opened->yoke.depth_cm.at(0) == 30);
  apply(app, CloseField{});
  next.profile = "bulky-card-24";
  apply(app, ChangeYoke{next, "machine for all tiers"});
  refresh(app);
  CHECK(app.yoke.opened->profile.name == "bulky-card-24");
  CHECK(app.caches.yoke.findings.end() ==
        std::ranges::find(app.caches.yoke.findings, first.words, &YokeFinding::words));
  CHECK(why_not(app, Command::export_yoke).empty());
  apply(app, CloseField{});
  apply(app, Run{Command::undo});
  CHECK_FALSE(app.yoke.opened->yoke.profile); // as it was in the file
  CHECK(why_not(app, Command::export_yoke) == "Choose one machine for all tiers first (Ctrl+5)");
}

TEST_CASE("closing the window asks for the yoke after the repeat") {
  App app = with_yoke(patterns / "harbour-pullover.yoke");
  Yoke next = app.yoke.opened->yoke;
  next.depth_cm.values[0] = 30;
  apply(app, ChangeYoke{next, "depth, S"});
  apply(app, Run{Command::show_yoke}); // the drawing
  apply(app, EditDesign{Fill{Area{Cell{}, 1, 1}, true}});
  apply(app, Run{Command::quit});
  REQUIRE(std::holds_alternative<GuardDialog>(app.session.dialog));
  CHECK_FALSE(std::get<GuardDialog>(app.session.dialog).yoke);
  apply(app, AnswerGuard{GuardAnswer::discard});
  REQUIRE(std::holds_alternative<GuardDialog>(app.session.dialog));
  CHECK(std::get<GuardDialog>(app.session.dialog).yoke);
  CHECK_FALSE(app.session.quit);
  apply(app, AnswerGuard{GuardAnswer::discard});
  CHECK(app.session.quit);
}
