// Long names of sizes and pieces on a yoke's sheets: they stay whole, so that no two of them read alike, and what
// stands below them makes room.
#include "pieces/yokes.hpp"
#include "sheets/text_metrics.hpp"
#include "sheets/yoke_sheets.hpp"

#include <algorithm>
#include <cmath>
#include <map>

using namespace punchwright;
using namespace punchwright::test;

namespace {

const std::string long_name = "for the eldest grandchild with the very long arms, knitted loosely, number ";

// Names that are alike for longer than a column is wide; a piece's, where `words` is false, without any blank.
Yoke with_long_names(bool words) {
  Yoke yoke = pullover();
  for (std::size_t size = 0; size < yoke.sizes.size(); ++size) {
    yoke.sizes[size] = long_name + std::to_string(size + 1);
  }
  for (std::size_t piece = 0; piece < yoke.pieces.size(); ++piece) {
    std::string name = long_name + long_name + std::to_string(piece + 1);
    if (!words) {
      std::ranges::replace(name, ' ', '-');
    }
    for (YokePiece& other : yoke.pieces) {
      if (other.like == yoke.pieces[piece].name) {
        other.like = name;
      }
    }
    yoke.pieces[piece].name = name;
  }
  return yoke;
}

// Twelve alike, whose names together fill more than a page.
Yoke with_many_pieces() {
  Yoke yoke = pullover();
  yoke.pieces = {{"quarter 1", {{22.0}}, {{9.0}}, ""}};
  for (int piece = 2; piece <= 12; ++piece) {
    std::string name = "quarter " + std::to_string(piece) + ' ';
    for (int part = 0; part < 6; ++part) {
      name += long_name;
    }
    yoke.pieces.push_back({name, {}, {}, "quarter 1"});
  }
  yoke.fit.seams = YokeSeams::free;
  yoke.fit.tolerance = 0.2;
  return yoke;
}

// Behind the first page, where all names are listed.
std::vector<Sheet> pages_with(const Yoke& yoke, YokeSheet sheet) {
  const Files files = pullover_files();
  const OpenedYoke opened_yoke = opened(yoke, files);
  const YokePlan plan = planned(opened_yoke);
  auto pages = pages_of_yoke(opened_yoke, plan, {Paper::a4, {}, {}, {sheet}});
  REQUIRE(pages);
  REQUIRE(pages->size() > 1);
  return {pages->begin() + 1, pages->end()};
}

std::vector<TextShape> texts_of(const Sheet& page) {
  std::vector<TextShape> texts;
  for (const Group& group : page.groups) {
    for (const Shape& shape : group.shapes) {
      if (const auto* text = std::get_if<TextShape>(&shape)) {
        texts.push_back(*text);
      }
    }
  }
  return texts;
}

std::string without_blanks(std::string text) {
  std::erase(text, ' ');
  return text;
}

// Lines that begin, end or have their middle at the same place, from above, as one text without blanks.
std::vector<std::string> columns_of(const std::vector<Sheet>& pages) {
  std::vector<std::string> found;
  for (const Sheet& page : pages) {
    std::map<std::pair<long, Anchor>, std::vector<TextShape>> columns;
    for (const TextShape& text : texts_of(page)) {
      columns[{std::lround(text.at.x * 10), text.anchor}].push_back(text);
    }
    for (auto& [place, texts] : columns) {
      std::ranges::stable_sort(texts, {}, [](const TextShape& text) { return text.at.y; });
      std::string all;
      for (const TextShape& text : texts) {
        all += without_blanks(text.text);
      }
      found.push_back(all);
    }
  }
  return found;
}

bool stands_in(const std::vector<std::string>& columns, const std::string& name) {
  return std::ranges::any_of(
      columns, [&](const std::string& column) { return column.find(without_blanks(name)) != std::string::npos; });
}

struct Extent {
  double left = 0;
  double right = 0;
  double top = 0;
  double bottom = 0;
};

Extent extent_of(const TextShape& text) {
  const double width = width_of(text.text, text.height_mm, text.bold);
  const double left = text.at.x - (text.anchor == Anchor::start ? 0 : text.anchor == Anchor::end ? width : width / 2);
  return {left, left + width, text.at.y - 0.72 * text.height_mm, text.at.y};
}

// No text runs into another one, or over the paper's edge.
void check_texts_apart(const std::vector<Sheet>& pages) {
  for (const Sheet& page : pages) {
    const std::vector<TextShape> texts = texts_of(page);
    for (std::size_t one = 0; one < texts.size(); ++one) {
      const Extent extent = extent_of(texts[one]);
      CAPTURE(texts[one].text);
      CHECK(extent.left > 5);
      CHECK(extent.right < page.width - 5);
      CHECK(extent.bottom < page.height - 5);
      for (std::size_t other = one + 1; other < texts.size(); ++other) {
        const Extent beside = extent_of(texts[other]);
        CAPTURE(texts[other].text);
        CHECK_FALSE((extent.left < beside.right && beside.left < extent.right && extent.top < beside.bottom &&
                     beside.top < extent.bottom));
      }
    }
  }
}

} // namespace

TEST_CASE("names of sizes and pieces stand whole in the table of sizes") {
  for (const bool words : {true, false}) {
    const Yoke yoke = with_long_names(words);
    const std::vector<Sheet> pages = pages_with(yoke, YokeSheet::sizes);
    const std::vector<std::string> columns = columns_of(pages);
    for (const std::string& size : yoke.sizes) {
      CHECK(stands_in(columns, size));
    }
    for (const YokePiece& piece : yoke.pieces) {
      CHECK(stands_in(columns, piece.name));
    }
    check_texts_apart(pages);
  }
}

TEST_CASE("on every page of the table of sizes the columns have their names") {
  const Yoke yoke = with_many_pieces();
  const std::vector<Sheet> pages = pages_with(yoke, YokeSheet::sizes);
  const auto has_head = [](const Sheet& page) {
    const std::vector<TextShape> texts = texts_of(page);
    return std::ranges::find(texts, "size", &TextShape::text) != texts.end();
  };
  const auto first = std::ranges::find_if(pages, has_head);
  REQUIRE(pages.end() - first > 1);
  for (auto page = first; page != pages.end(); ++page) {
    const std::vector<std::string> columns = columns_of({*page});
    for (const std::string& size : yoke.sizes) {
      CHECK(stands_in(columns, size));
    }
  }
}

TEST_CASE("names below the outlines of the schematic stand whole, clear of what is below") {
  for (const bool words : {true, false}) {
    const Yoke yoke = with_long_names(words);
    const std::vector<Sheet> pages = pages_with(yoke, YokeSheet::schematic);
    const std::vector<std::string> columns = columns_of(pages);
    for (const YokePiece& piece : yoke.pieces) {
      CHECK(stands_in(columns, piece.name));
    }
    check_texts_apart(pages);
  }
}

TEST_CASE("where the names below an outline would fill more than a page, its pieces are counted") {
  const std::vector<Sheet> pages = pages_with(with_many_pieces(), YokeSheet::schematic);
  CHECK(stands_in(columns_of(pages), "12 pieces"));
  check_texts_apart(pages);
}
