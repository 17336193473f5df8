// One card serves all pieces and sizes of a tier, strips and needle lists are shared only by what stands on the same
// needles, and what is printed is what was chosen.
#include "pieces/yokes.hpp"
#include "sheets/card_pages.hpp"
#include "sheets/punch_list.hpp"
#include "sheets/rulers.hpp"
#include "sheets/strip_part.hpp"
#include "sheets/yoke_parts.hpp"

#include <algorithm>
#include <random>
#include <set>

using namespace punchwright;
using namespace punchwright::test;

TEST_CASE("all pieces and sizes of a tier have the same card") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
    std::set<std::string> cards;
    for (const SizePlan& size : plan->sizes) {
      for (std::size_t piece = 0; piece < size.pieces.size(); ++piece) {
        const Document document = document_of(yoke, size, piece, tier);
        const CardJob job = card_job(document, yoke.profile);
        std::string columns;
        for (int row = 1; row <= job.plan.rows_in_all; ++row) {
          columns += runs_text(punched_columns(document, yoke.profile, job.rows, row)) + "\n";
        }
        cards.insert(columns);
      }
    }
    CHECK(cards.size() == 1);
  }
}

TEST_CASE("a strip is shared by those that stand on the same needles, and by no others") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  const YokeJob job = yoke_job(yoke, *plan, {});
  std::size_t pieces = 0;
  for (const YokeGroup& group : job.groups) {
    pieces += group.pieces.size();
  }
  CHECK(pieces == 3 * 4);
  for (std::size_t size = 0; size < 3; ++size) {
    for (std::size_t piece = 0; piece < 4; ++piece) {
      for (std::size_t tier = 0; tier < 3; ++tier) {
        const std::size_t index = strip_of(job, size, piece, tier);
        REQUIRE(index < job.strips.size());
        const YokeStrip& strip = job.strips[index];
        CHECK(job.at(strip.size, strip.piece, tier).shaping.transfers == job.at(size, piece, tier).shaping.transfers);
        CHECK(job.at(strip.size, strip.piece, tier).first_after == job.at(size, piece, tier).first_after);
        CHECK(strip.users.find(yoke.yoke.sizes[size] + ": ") != std::string::npos);
        CHECK(strip.users.find(yoke.yoke.pieces[piece].name) != std::string::npos);
      }
    }
  }
}

TEST_CASE("only what was chosen") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  YokeSheetWishes wishes;
  wishes.sizes = {1};
  wishes.pieces = {2, 0, 2};
  const YokeJob job = yoke_job(yoke, *plan, wishes);
  CHECK(job.sizes == std::vector<std::size_t>{1});
  CHECK(job.pieces == std::vector<std::size_t>{0, 2});
  for (const YokeStrip& strip : job.strips) {
    CHECK(strip.users.starts_with("medium: "));
  }
  const auto all = pages_of_yoke(yoke, *plan, {});
  const auto some = pages_of_yoke(yoke, *plan, wishes);
  REQUIRE(all);
  REQUIRE(some);
  CHECK(some->size() < all->size());
}

namespace {

struct Extent {
  double left = 0;
  double right = 0;
  double top = 0;
  double bottom = 0;
  [[nodiscard]] bool meets(const Extent& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
};

// Of text that is not turned: from the base line to the height of its figures.
Extent extent_of(const TextShape& text) {
  const double width = width_of(text.text, text.height_mm, text.bold);
  const double left = text.at.x - (text.anchor == Anchor::start ? 0 : text.anchor == Anchor::end ? width : width / 2);
  return {left, left + width, text.at.y - 0.72 * text.height_mm, text.at.y};
}

// Two parts of a strip that are joined there; nothing is drawn through the words on them but what they name.
void check_words_stay_clear(const StripFacts& facts, int joined_at) {
  int number = 0;
  for (const auto& [first, end] : {std::pair(facts.first, joined_at), std::pair(joined_at, facts.end)}) {
    std::vector<Shape> shapes;
    draw_strip_part(facts, {++number, 2, first, end, {20, 100}}, shapes);
    for (const Shape& shape : shapes) {
      const auto* const text = std::get_if<TextShape>(&shape);
      if (text == nullptr || text->turned_degrees != 0) {
        continue;
      }
      CAPTURE(text->text);
      for (const Shape& other : shapes) {
        const auto* const line = std::get_if<PolylineShape>(&other);
        if (line != nullptr && !line->closed && line->points.size() == 2) {
          const auto [x0, x1] = std::minmax(line->points[0].x, line->points[1].x);
          const auto [y0, y1] = std::minmax(line->points[0].y, line->points[1].y);
          CHECK_FALSE(extent_of(*text).meets({x0 - 0.05, x1 + 0.05, y0 - 0.05, y1 + 0.05}));
        }
      }
    }
  }
}

} // namespace

TEST_CASE("no line crosses the words of a strip, wherever its parts are joined") {
  const Files files = pullover_files();
  const OpenedYoke yoke = opened(pullover(), files);
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  const YokeJob job = yoke_job(yoke, *plan, {});
  for (const YokeStrip& strip : job.strips) {
    const StripFacts facts = facts_of(job, strip);
    for (int joined_at = facts.first + 4; joined_at <= facts.end - 4; ++joined_at) {
      CAPTURE(joined_at);
      check_words_stay_clear(facts, joined_at);
    }
  }
}

namespace {

// Of a piece whose row of decreases or increases is as wished, on a bed of that pitch.
StripFacts strip_facts(TierOfPiece& tier, double pitch, const ShapingWishes& wishes) {
  tier.stitches = wishes.before;
  tier.shaping = shaping_between(wishes);
  tier.bed.first = wishes.first;
  tier.bed.last = {wishes.first.position + wishes.before - 1};
  tier.first_after = {wishes.first.position + (wishes.before - wishes.after) / 2};
  tier.last_after = {tier.first_after.position + wishes.after - 1};
  StripFacts facts{tier, pitch, wishes.edge, true, marks_of(tier), 0, 0};
  facts.first = std::min(tier.bed.first.position, tier.first_after.position) - 1;
  facts.end = std::max(tier.bed.last.position, tier.last_after.position) + 2;
  return facts;
}

// On a bed of 250 needles; every second one, or every third, is as dense as it gets.
ShapingWishes random_shaping(std::mt19937& dice) {
  const auto from = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(dice); };
  ShapingWishes wishes;
  wishes.edge = from(0, 3);
  wishes.before = from(20, 230);
  wishes.first = {from(-120, 120 - wishes.before)};
  const int most = (wishes.before - 2 * wishes.edge - 2) / 2;
  const int changed = from(0, 1) == 0 ? most - from(0, 2) : from(1, most);
  const bool fewer = from(0, 1) == 0;
  wishes.after = fewer ? wishes.before - changed : std::min(wishes.before + changed, 240);
  wishes.how.way = from(0, 1) == 0 ? DecreaseWay::spread : DecreaseWay::gathered;
  wishes.how.towards = from(0, 1) == 0 ? DecreaseTowards::centre : DecreaseTowards::edges;
  return wishes;
}

struct Seen {
  std::vector<std::pair<std::string, Extent>> words;
  std::vector<Extent> lines;
};

Seen seen_on(const std::vector<Shape>& shapes) {
  Seen seen;
  for (const Shape& shape : shapes) {
    if (const auto* const text = std::get_if<TextShape>(&shape); text != nullptr) {
      Extent extent = extent_of(*text);
      if (text->turned_degrees != 0) { // a quarter to the right about the middle of its base line
        const double half = (extent.right - extent.left) / 2;
        extent = {text->at.x, text->at.x + 0.72 * text->height_mm, text->at.y - half, text->at.y + half};
      }
      seen.words.emplace_back(text->text, extent);
    } else if (const auto* const line = std::get_if<PolylineShape>(&shape);
               line != nullptr && !line->closed && line->points.size() == 2) {
      const auto [x0, x1] = std::minmax(line->points[0].x, line->points[1].x);
      const auto [y0, y1] = std::minmax(line->points[0].y, line->points[1].y);
      seen.lines.push_back({x0 - 0.05, x1 + 0.05, y0 - 0.05, y1 + 0.05});
    }
  }
  return seen;
}

void check_words_of_part(const StripFacts& facts, const StripPart& part) {
  std::vector<Shape> shapes;
  draw_strip_part(facts, part, shapes);
  const double right = part.corner.x + (part.end - part.first) * facts.pitch;
  const double bottom = part.corner.y + strip_part_height;
  const Seen seen = seen_on(shapes);
  for (std::size_t index = 0; index < seen.words.size(); ++index) {
    const auto& [words, extent] = seen.words[index];
    CAPTURE(words);
    const bool on_flap = words.starts_with("flap");
    if (extent.bottom > part.corner.y) { // others stand above the part, where nothing is kept
      CHECK(extent.left >= (on_flap ? right : part.corner.x) + 0.3);
      CHECK(extent.right <= (on_flap ? right + strip_flap : right) - 0.3);
      CHECK(extent.top >= part.corner.y);
      CHECK(extent.bottom <= bottom);
    }
    for (const Extent& line : seen.lines) {
      CHECK_FALSE(extent.meets(line));
    }
    for (std::size_t other = 0; other < index; ++other) {
      CAPTURE(seen.words[other].first);
      CHECK_FALSE(extent.meets(seen.words[other].second));
    }
  }
}

} // namespace

TEST_CASE("the words of a strip stand on their part, clear of cuts, outlines, flaps, the middle and each other") {
  std::mt19937 dice(20261127);
  for (int strip = 0; strip < 400; ++strip) {
    CAPTURE(strip);
    const double pitch = strip % 4 == 0 ? 3.6 : std::uniform_int_distribution<int>(36, 90)(dice) / 10.0;
    TierOfPiece tier;
    const StripFacts facts = strip_facts(tier, pitch, random_shaping(dice));
    CAPTURE(pitch);
    for (StripPart part : parts_of_strip(facts, std::uniform_int_distribution<int>(100, 180)(dice))) {
      CAPTURE(part.number);
      part.corner = {20, 100};
      check_words_of_part(facts, part);
    }
  }
}

TEST_CASE("what a strip takes away stands on one line of its heading") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  for (int longer = 0; longer < 30; ++longer) { // somewhere the heading would break within it
    yoke.pieces[0].name += longer % 5 == 4 ? ' ' : 'n';
    yoke.pieces[2].like = yoke.pieces[0].name;
    const OpenedYoke one = opened(yoke, files);
    const auto plan = plan_yoke(one);
    REQUIRE(plan);
    YokeSheetWishes wishes;
    wishes.sheets = {YokeSheet::strips};
    const YokeJob job = yoke_job(one, *plan, wishes);
    std::vector<int> pages;
    const PageFrame frame = frame_for(job.paper, 1, 1);
    int told = 0;
    for (const Group& group : strip_groups(job, frame, pages)) {
      for (const Shape& shape : group.shapes) {
        const auto* const text = std::get_if<TextShape>(&shape);
        if (text != nullptr && text->bold && text->text.find("less,") != std::string::npos) {
          ++told;
          CHECK(text->text.find("\u00a0to\u00a0") != std::string::npos);
        }
      }
    }
    CHECK(told == static_cast<int>(job.strips.size()));
  }
}

namespace {

std::string text_of_pages(const OpenedYoke& yoke) {
  const auto plan = plan_yoke(yoke);
  REQUIRE(plan);
  const auto pages = pages_of_yoke(yoke, *plan, {});
  REQUIRE(pages);
  std::string words;
  for (const Sheet& sheet : *pages) {
    for (const Group& group : sheet.groups) {
      for (const Shape& shape : group.shapes) {
        if (const auto* const text = std::get_if<TextShape>(&shape)) {
          words += text->text + "\n";
        }
      }
    }
  }
  return words;
}

bool says(const std::string& words, const std::string& line) {
  return words.find(line) != std::string::npos;
}

} // namespace

TEST_CASE("increases are called increases") {
  const Files files = pullover_files();
  Yoke yoke = of_one_width(40, 22);
  yoke.fit = {0.2, YokeSeams::free};
  const std::string narrowing = text_of_pages(opened(yoke, files));
  for (const char* const words :
       {"strips for the rows of decreases\n", "Strips for the decreases\n", "after the last decreases\n", "\nless\n"}) {
    CAPTURE(words);
    CHECK(says(narrowing, words));
  }
  CHECK_FALSE(says(narrowing, "ncreases\n"));
  std::swap(yoke.pieces[0].bottom_cm, yoke.pieces[0].top_cm);
  const std::string widening = text_of_pages(opened(yoke, files));
  for (const char* const words :
       {"strips for the rows of increases\n", "Strips for the increases\n", "after the last increases\n", "\nmore\n"}) {
    CAPTURE(words);
    CHECK(says(widening, words));
  }
  CHECK_FALSE(says(widening, "decreases\n"));
  CHECK_FALSE(says(widening, "\nless\n"));
  yoke.pieces.push_back({"back", {{40.0}}, {{22.0}}, ""});
  const std::string both = text_of_pages(opened(yoke, files));
  for (const char* const words :
       {"strips for the rows of decreases and increases\n", "Strips for the decreases and increases\n",
        "after the last increases\n", "after the last decreases\n", "\nless\n", "\nmore\n"}) {
    CAPTURE(words);
    CHECK(says(both, words));
  }
}
