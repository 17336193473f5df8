// Cards on paper: parts, page sizes, rulers, the print correction.
#include "card_designs.hpp"
#include "sheets/card_pages.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace punchwright;

namespace {

std::vector<Sheet> pages_of(const Document& document, const Profile& profile) {
  auto pages = card_pages(card_job(document, profile));
  REQUIRE(pages.ok());
  return std::move(pages).value();
}

template <class Kind> std::vector<Kind> shapes_of(const Sheet& sheet) {
  std::vector<Kind> found;
  for (const Group& group : sheet.groups) {
    for (const Shape& shape : group.shapes) {
      if (const auto* kind = std::get_if<Kind>(&shape)) {
        found.push_back(*kind);
      }
    }
  }
  return found;
}

bool has_text(const Sheet& sheet, const std::string& part) {
  return std::ranges::any_of(shapes_of<TextShape>(sheet),
                             [&](const TextShape& text) { return text.text.find(part) != std::string::npos; });
}

std::vector<CircleShape> holes_of(const std::vector<Sheet>& sheets) {
  std::vector<CircleShape> holes;
  for (const Sheet& sheet : sheets) {
    for (const Group& group : sheet.groups) {
      if (group.id == "cut-holes") {
        for (const Shape& shape : group.shapes) {
          holes.push_back(std::get<CircleShape>(shape));
        }
      }
    }
  }
  return holes;
}

void check_inside(const Sheet& sheet) {
  // 10 mm stay free all round; half a line's width may reach over.
  constexpr double rim = free_margin - 0.3;
  const auto inside = [&](Point point) {
    return point.x >= rim && point.x <= sheet.width - rim && point.y >= rim && point.y <= sheet.height - rim;
  };
  for (const auto& line : shapes_of<PolylineShape>(sheet)) {
    for (const Point& point : line.points) {
      CHECK(inside(point));
    }
  }
  for (const auto& circle : shapes_of<CircleShape>(sheet)) {
    CHECK(inside(circle.centre));
  }
  for (const auto& text : shapes_of<TextShape>(sheet)) {
    CAPTURE(text.text);
    CHECK(inside(text.at));
    if (text.turned_degrees == 0) {
      const double width = width_of(text.text, text.height_mm, text.bold);
      const double from =
          text.at.x - (text.anchor == Anchor::start ? 0 : (text.anchor == Anchor::middle ? width / 2 : width));
      CHECK(inside({from, text.at.y}));
      CHECK(inside({from + width, text.at.y}));
    }
  }
}

// The longest straight lines across and upwards that begin at one corner: the rulers.
bool has_line(const Sheet& sheet, double across, double up) {
  return std::ranges::any_of(shapes_of<PolylineShape>(sheet), [&](const PolylineShape& line) {
    return line.points.size() == 2 && std::abs(std::abs(line.points[1].x - line.points[0].x) - across) < 1e-6 &&
           std::abs(std::abs(line.points[1].y - line.points[0].y) - up) < 1e-6;
  });
}

} // namespace

TEST_CASE("every page has rulers of 150 mm both ways, the first the 100 mm square too, and 10 mm stay free all round") {
  for (const Paper paper : {Paper::a4, Paper::letter, Paper::roll}) {
    for (const int rows : {1, 36, 100, 250}) {
      CAPTURE(rows);
      Document document = slanting_design(rows);
      document.card.paper = paper;
      const Profile profile = card_machine();
      const auto pages = card_pages(card_job(document, profile));
      REQUIRE(pages.ok());
      for (const Sheet& page : *pages) {
        CHECK(has_line(page, 150, 0));
        CHECK(has_line(page, 0, 150));
        check_inside(page);
      }
      const auto squares = shapes_of<RectangleShape>(pages->front());
      CHECK(std::ranges::any_of(squares, [](const RectangleShape& square) {
        return square.width == doctest::Approx(100.0) && square.height == doctest::Approx(100.0);
      }));
    }
  }
}

TEST_CASE("pages are as large as the paper") {
  Document document = slanting_design(60);
  const Profile profile = card_machine();
  for (const Sheet& page : pages_of(document, profile)) {
    CHECK(page.width == 210.0); // ISO 216
    CHECK(page.height == 297.0);
  }
  document.card.paper = Paper::letter;
  for (const Sheet& page : pages_of(document, profile)) {
    CHECK(page.width == 215.9); // ANSI Y14.1
    CHECK(page.height == 279.4);
  }
}

TEST_CASE("a roll has one page a card, as high as the card needs") {
  Document document = slanting_design(100);
  document.card.paper = Paper::roll;
  const Profile profile = card_machine();
  const auto pages = pages_of(document, profile);
  REQUIRE(pages.size() == 3);
  CHECK(pages[1].width >= 210.0);
  CHECK(pages[1].height > 2 * 12.5 + 63 * 5.0 + 20);
  CHECK(pages[2].height < pages[1].height);
}

TEST_CASE("parts follow one another without gap, split half-way between two rows") {
  const Profile profile = card_machine();
  const Document document = slanting_design(60);
  const CardJob job = card_job(document, profile);
  const CardLayout layout(document, profile, job.rows, job.plan.cards.front());
  const auto parts = parts_of(layout, 100.0);
  REQUIRE(parts.size() == 4);
  CHECK(parts.front().bottom == doctest::Approx(layout.height()));
  CHECK(parts.back().top == 0.0);
  for (std::size_t index = 0; index + 1 < parts.size(); ++index) {
    CHECK(parts[index].top == doctest::Approx(parts[index + 1].bottom));
    const double lines = (layout.y_of_line(0) - parts[index].top) / 5.0;
    CHECK(lines - std::floor(lines) == doctest::Approx(0.5));
    CHECK(parts[index].bottom - parts[index].top + 8.0 <= doctest::Approx(100.0)); // with the flap
    CHECK(parts[index].bottom - parts[index].top + 8.0 > 95.0);                    // no row more would fit
  }
  CHECK(parts_of(layout, 500.0).size() == 1);
  CHECK(parts_of(layout, 12.0).empty());
}

TEST_CASE("every hole is on exactly one page") {
  for (const bool turned : {false, true}) {
    Profile profile = card_machine();
    profile.card->turned = turned;
    const Document document = slanting_design(100);
    const auto pages = pages_of(document, profile);
    const auto holes = holes_of(pages);
    std::size_t pattern = 0;
    std::size_t overlap = 0;
    for (const CircleShape& hole : holes) {
      pattern += hole.label.class_name == "pattern" ? 1 : 0;
      overlap += hole.label.class_name == "overlap" ? 1 : 0;
    }
    CHECK(pattern == 100 * 8);
    CHECK(overlap == 2 * 4 * 24);
  }
}

TEST_CASE("where two pages join both carry registration crosses, the lower one a flap") {
  const Document document = slanting_design(60);
  const Profile profile = card_machine();
  const auto pages = pages_of(document, profile);
  REQUIRE(pages.size() == 3);
  CHECK(has_text(pages[1], "flap: glue under part 2"));
  CHECK(has_text(pages[2], "cut along this line"));
  for (const Sheet* page : {&pages[1], &pages[2]}) {
    const auto lines = shapes_of<PolylineShape>(*page);
    const auto crosses = std::ranges::count_if(lines, [](const PolylineShape& line) {
      return line.points.size() == 2 && std::abs(line.points[1].x - line.points[0].x) == doctest::Approx(4.4) &&
             line.points[1].y == line.points[0].y;
    });
    CHECK(crosses == 2);
  }
}

TEST_CASE("the correction divides every place, and the paper stays as it is") {
  Document document = slanting_design(30);
  const Profile profile = card_machine();
  const auto plain = pages_of(document, profile);
  document.card.scale_x = 0.985;
  document.card.scale_y = 1.012;
  const auto corrected = pages_of(document, profile);
  REQUIRE(corrected.size() == plain.size());
  CHECK(corrected[1].width == 210.0);
  const auto before = holes_of(plain);
  const auto after = holes_of(corrected);
  REQUIRE(before.size() == after.size());
  for (std::size_t index = 1; index < before.size(); ++index) {
    CHECK((after[index].centre.x - after[0].centre.x) * 0.985 ==
          doctest::Approx(before[index].centre.x - before[0].centre.x));
    CHECK((after[index].centre.y - after[0].centre.y) * 1.012 ==
          doctest::Approx(before[index].centre.y - before[0].centre.y));
  }
  CHECK(has_line(corrected[1], 150 / 0.985, 0));
  CHECK(has_line(corrected[1], 0, 150 / 1.012));
  for (const Sheet& page : corrected) {
    check_inside(page);
  }
}

TEST_CASE("a print that comes out small gets fewer rows on a page") {
  Document document = slanting_design(60);
  const Profile profile = card_machine();
  document.card.scale_y = 0.7;
  document.card.scale_x = 0.9;
  const auto pages = card_pages(card_job(document, profile));
  REQUIRE(pages.ok());
  CHECK(pages->size() == 5); // cover, three parts instead of two, and the list: there is no column beside the card
}

TEST_CASE("a sheet that is too wide for the paper is refused, with the roll as remedy") {
  Profile profile = card_machine();
  profile.card->geometry.sheet_width = 185;
  Document document = slanting_design(30);
  const auto pages = card_pages(card_job(document, profile));
  REQUIRE_FALSE(pages.ok());
  CHECK(pages.error().text().find("185.0 mm wide") != std::string::npos);
  CHECK(pages.error().remedy.find("roll") != std::string::npos);
  document.card.paper = Paper::roll;
  CHECK(card_pages(card_job(document, profile)).ok());
}

TEST_CASE("the sheets say in words what a knitter must know") {
  Document document = slanting_design(60);
  document.title = "Puffin cove";
  const Profile profile = card_machine();
  const auto pages = pages_of(document, profile);
  CHECK(has_text(pages[0], "PRINT AT 100 %"));
  CHECK(has_text(pages[0], "Puffin cove"));
  CHECK(has_text(pages[0], "test-card-24"));
  CHECK(has_text(pages[0], "× measured across / 150"));
  CHECK(has_text(pages[0], "Punches and knives: on a mat"));
  CHECK(has_text(pages[0], "they have no line on it"));
  CHECK(has_text(pages[1], "this side towards you"));
  CHECK(has_text(pages[1], "knitting starts here"));
  CHECK(has_text(pages[1], "the card travels this way"));
  CHECK(has_text(pages[1], "1: Ink in"));
  CHECK(has_text(pages[1], "page 2 of 3"));
  CHECK(has_text(pages[2], "2 overlap rows"));
}

TEST_CASE("which side and which card it is stands at the end of every card, however narrow") {
  for (const int repeat : {1, 4, 8, 12, 24}) {
    for (const double sheet : {60.0, 90.0, 142.0}) {
      CAPTURE(repeat);
      CAPTURE(sheet);
      Profile profile = card_machine();
      profile.name = "a machine whose name is longer than a card is wide";
      CardReader& reader = *profile.card;
      reader.repeat = repeat;
      reader.first_needle = left_needle(std::max(1, repeat / 2));
      reader.geometry.sheet_width = sheet;
      reader.geometry.column_1 = (sheet - (repeat - 1) * reader.geometry.stitch_pitch) / 2;
      if (reader.geometry.column_1 < 20) {
        continue; // the columns would lie on the feed holes
      }
      Document document = blank_document(repeat, 70); // one card and a short second one
      document.yarns = {{'A', "Oat", {232, 220, 194}}, {'B', "Ink", {32, 48, 74}}};
      document.bands = {{70, 'A', 'B', {}}};
      document.grid.set(0, 0, true);
      int ends = 0;
      int seconds = 0;
      for (const Sheet& page : pages_of(document, profile)) {
        for (const TextShape& text : shapes_of<TextShape>(page)) {
          const bool end = text.text.find("this side towards you") != std::string::npos && text.turned_degrees == 0;
          ends += end ? 1 : 0;
          seconds += end && text.text.find("card 2 of 2") != std::string::npos ? 1 : 0;
          CHECK_FALSE((end && width_of(text.text, text.height_mm, text.bold) > sheet));
        }
      }
      CHECK(ends >= 4);
      CHECK(seconds >= 2);
    }
  }
}
