// The leaflet's pages, of every demo and on both papers, as a printer's reader would look at them: nothing beyond the
// margins, nothing on top of another, no heading alone, one grid of base lines.
#include "sheets/drawn_chart.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/pages.hpp"
#include "support/demos.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <functional>

using namespace punchwright;

namespace {

struct Box {
  const TextShape* text = nullptr;
  double left = 0;
  double right = 0;
  double top = 0;
  double bottom = 0;
};

Box box_of(const TextShape& text) {
  const double width = width_of(text.text, text.height_mm, text.bold);
  const double left = text.at.x - (text.anchor == Anchor::start ? 0 : text.anchor == Anchor::end ? width : width / 2);
  // Above the base line as high as capitals, below it as deep as tails.
  return {&text, left, left + width, text.at.y - 0.73 * text.height_mm, text.at.y + 0.2 * text.height_mm};
}

std::vector<Box> texts_on(const Sheet& sheet) {
  std::vector<Box> boxes;
  for (const Group& group : sheet.groups) {
    for (const Shape& shape : group.shapes) {
      if (const auto* const text = std::get_if<TextShape>(&shape)) {
        boxes.push_back(box_of(*text));
      }
    }
  }
  return boxes;
}

std::vector<Sheet> leaflet_of(const OpenedDocument& opened, Paper paper = Paper::a4) {
  return pages_of_leaflet(opened.document, opened.profile, paper).value();
}

void for_each_page(const std::function<void(const Sheet&, std::size_t page, std::size_t pages)>& look) {
  for (const auto& path : test::demo_paths()) {
    const OpenedDocument opened = test::open_demo(path);
    for (const Paper paper : {Paper::a4, Paper::letter}) {
      const auto pages = leaflet_of(opened, paper);
      for (std::size_t page = 0; page < pages.size(); ++page) {
        CAPTURE(path.filename().string());
        CAPTURE(page + 1);
        look(pages[page], page, pages.size());
      }
    }
  }
}

OpenedDocument demo(const std::string& name) {
  return test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/" + name + ".repeat");
}

bool has_text(const std::vector<Sheet>& pages, const std::string& wanted) {
  return std::ranges::any_of(pages, [&](const Sheet& page) {
    return std::ranges::any_of(texts_on(page), [&](const Box& box) { return box.text->text == wanted; });
  });
}

} // namespace

TEST_CASE("every page says which of how many it is, and keeps its margins") {
  for_each_page([](const Sheet& sheet, std::size_t page, std::size_t pages) {
    CHECK(has_text({sheet}, fmt::format("page {} of {}", page + 1, pages)));
    for (const Box& box : texts_on(sheet)) {
      CAPTURE(box.text->text);
      CHECK(box.left >= leaflet::side_margin - 0.01);
      CHECK(box.right <= sheet.width - leaflet::side_margin + 0.01);
      CHECK(box.top >= 10.0);
      CHECK(box.bottom <= sheet.height - 10.0);
    }
  });
}

TEST_CASE("no words lie over others") {
  for_each_page([](const Sheet& sheet, std::size_t, std::size_t) {
    const auto boxes = texts_on(sheet);
    for (std::size_t one = 0; one < boxes.size(); ++one) {
      for (std::size_t other = one + 1; other < boxes.size(); ++other) {
        const Box& a = boxes[one];
        const Box& b = boxes[other];
        const bool apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
        if (!apart) {
          FAIL_CHECK(a.text->text << " over " << b.text->text);
        }
      }
    }
  });
}

TEST_CASE("all lines of a page stand on one grid, also across its columns") {
  for_each_page([](const Sheet& sheet, std::size_t, std::size_t) {
    const TextShape* first = nullptr;
    for (const Box& box : texts_on(sheet)) {
      if (box.text->height_mm != leaflet::body_type) {
        continue; // the head and foot, and the numbers in charts
      }
      first = first == nullptr ? box.text : first;
      const double lines = (box.text->at.y - first->at.y) / leaflet::half_line;
      CAPTURE(box.text->text);
      CHECK(std::abs(lines - std::round(lines)) < 1e-6);
    }
  });
}

TEST_CASE("below every heading stands what it is about") {
  for_each_page([](const Sheet& sheet, std::size_t, std::size_t) {
    const auto boxes = texts_on(sheet);
    for (const Box& heading : boxes) {
      if (heading.text->height_mm != leaflet::heading_type && heading.text->height_mm != leaflet::subheading_type) {
        continue;
      }
      CAPTURE(heading.text->text);
      CHECK(std::ranges::any_of(boxes, [&](const Box& box) {
        return box.text->at.y > heading.text->at.y && box.top < heading.bottom + 10.0 &&
               box.left >= heading.left - 0.01 && box.left < heading.left + 25.0 &&
               box.text->height_mm <= leaflet::body_type && box.bottom < sheet.height - 15.0;
      }));
    }
  });
}

TEST_CASE(
    "a page that a part begins bears its name, one on which it goes on says so, in its steps under a heading too") {
  int continued = 0;
  for_each_page([&](const Sheet& sheet, std::size_t page, std::size_t) {
    if (page == 0) {
      return;
    }
    auto boxes = texts_on(sheet);
    std::ranges::sort(boxes, {}, [](const Box& box) { return box.text->at.y; });
    const auto first = std::ranges::find_if(boxes, [](const Box& box) { return box.top > 16.0; });
    REQUIRE(first != boxes.end());
    const auto head = std::ranges::find_if(boxes, [](const Box& box) { return box.text->anchor == Anchor::end; });
    REQUIRE(head->top < 16.0);
    const std::string& name = head->text->text;
    CAPTURE(name);
    if (first->text->height_mm == leaflet::heading_type) {
      CHECK(name == first->text->text);
      return;
    }
    CHECK(name.ends_with(", continued"));
    if (name.starts_with("By ")) {
      CAPTURE(first->text->text);
      CHECK(first->text->height_mm == leaflet::subheading_type);
    }
    ++continued;
  });
  CHECK(continued > 10);
}

TEST_CASE("what is done at the end stands on the page of the last row") {
  int ends = 0;
  for_each_page([&](const Sheet& sheet, std::size_t, std::size_t) {
    const auto boxes = texts_on(sheet);
    if (std::ranges::any_of(boxes, [](const Box& box) { return box.text->text.starts_with("at the end: "); })) {
      ++ends;
      CHECK((has_text({sheet}, "←") || has_text({sheet}, "→")));
    }
  });
  CHECK(ends > 0);
}

TEST_CASE("no demo's cautions stand alone on a page") {
  for_each_page([](const Sheet& sheet, std::size_t, std::size_t) {
    if (has_text({sheet}, "Cautions") && !has_text({sheet}, "In this leaflet")) {
      const auto boxes = texts_on(sheet);
      const auto heading =
          std::ranges::find_if(boxes, [](const Box& box) { return box.text->height_mm == leaflet::heading_type; });
      CHECK(std::ranges::any_of(boxes, [&](const Box& box) { return box.top > 16.0 && box.bottom < heading->top; }));
    }
  });
}

TEST_CASE("the chart is as wide as the page, or as high, or has the largest cells; no demo's is cut") {
  for (const auto& path : test::demo_paths()) {
    const OpenedDocument opened = test::open_demo(path);
    const DrawnChart chart(opened.document);
    for (const auto& [width, height] : {std::pair{170.0, 215.0}, std::pair{175.9, 198.0}}) {
      CAPTURE(path.filename().string());
      const auto windows = chart_windows(chart, opened.document, width, height);
      REQUIRE(windows.size() == 1);
      CHECK(chart.width_of(windows[0]) < width + 0.01);
      CHECK(chart.height_of(windows[0]) < height + 0.01);
      CHECK((chart.width_of(windows[0]) > width - 0.01 || chart.height_of(windows[0]) > height - 0.01 ||
             windows[0].cell_width == 10.0));
    }
  }
}

TEST_CASE("whichever is the design's own machine, both ways are there") {
  OpenedDocument by_hand = demo("shore-crabs");
  CHECK_FALSE(has_text(leaflet_of(by_hand), "The card")); // no card holds 20 stitches
  by_hand.document.grid = Grid(12, by_hand.document.grid.height());
  for (const OpenedDocument& own : {demo("hood-border"), by_hand}) {
    const auto pages = leaflet_of(own);
    for (const char* const part : {"Chart", "By card", "By hand", "The card", "Cautions"}) {
      CAPTURE(std::string(part));
      CHECK(has_text(pages, part));
    }
  }
}

TEST_CASE("what keeps the drawing off a machine is said in place of its steps") {
  const std::string said = "The drawing can't be knitted on this machine as it is:";
  CHECK(has_text(leaflet_of(demo("shore-crabs")), said)); // no card holds 20 stitches
  OpenedDocument border = demo("hood-border");
  CHECK_FALSE(has_text(leaflet_of(border), said));
  border.profile.needles = 250;
  border.document.piece.stitches = 240; // the bed by hand has 150 needles
  const auto pages = leaflet_of(border);
  CHECK(has_text(pages, said));
  CHECK(has_text(pages, "Needles by card"));
  CHECK_FALSE(has_text(pages, "Needles by hand"));
}

TEST_CASE("the steps by hand are gathered, and knit every row once") {
  for (const auto& path : test::demo_paths()) {
    CAPTURE(path.filename().string());
    OpenedDocument opened = test::open_demo(path);
    if (reads_card(opened.profile)) {
      const OnMachine there = on_other_kind(opened.document, opened.profile);
      opened.document = there.document;
      opened.profile = there.profile;
    }
    const RowsToKnit rows = rows_to_knit(opened.document, opened.profile);
    const StepList list = steps_of(opened.document, opened.profile, rows);
    const auto steps = leaflet_steps(list, opened.profile);
    CHECK(steps.size() < list.steps.size());
    int next = 1;
    for (const Step& step : steps) {
      if (step.kind == StepKind::knit_by_hand || step.kind == StepKind::knit_rows) {
        CHECK(step.first_row == next);
        next = step.last_row + 1;
        CHECK(step.text.find(fmt::format("The counter shows {}.", step.counter)) != std::string::npos);
      }
    }
    CHECK(next == static_cast<int>(rows.rows.size()) + 1);
  }
}

TEST_CASE("one needle list serves both, where by card only the end needles are added") {
  const OpenedDocument own = demo("hood-border");
  const OnMachine there = on_other_kind(own.document, own.profile);
  const LeafletMachine by_card{own.document, own.profile, rows_to_knit(own.document, own.profile)};
  const LeafletMachine by_hand{there.document, there.profile, rows_to_knit(there.document, there.profile)};
  const auto list = one_list_for(by_card, by_hand);
  REQUIRE(list.has_value());
  CHECK(list->end_needles == std::vector<Needle>{left_needle(31), right_needle(31)});
  SUBCASE("another place on the bed needs another list") {
    Document moved = there.document;
    moved.piece.first_needle = left_needle(30);
    const LeafletMachine elsewhere{moved, there.profile, rows_to_knit(moved, there.profile)};
    CHECK_FALSE(one_list_for(by_card, elsewhere).has_value());
  }
  SUBCASE("and so do two passes a row") {
    Profile one_feeder = there.profile;
    one_feeder.feeders = 1;
    const LeafletMachine twice{there.document, one_feeder, rows_to_knit(there.document, one_feeder)};
    CHECK_FALSE(one_list_for(by_card, twice).has_value());
  }
}

TEST_CASE("rows that come again are listed once") {
  const auto same = [](const std::string& rows) {
    return period_of(rows.size(), [&](std::size_t one, std::size_t other) { return rows[one] == rows[other]; });
  };
  CHECK(same("abcabcabc") == 3);
  CHECK(same("abcabca") == 3);
  CHECK(same("abcabd") == 6);
  CHECK(same("abca") == 4); // one row is no repeat worth the words
  CHECK(same("aaaa") == 1);
  CHECK(same("a") == 1);
  CHECK(again_words(34, 68) == "Rows 35 to 68 are as rows 1 to 34");
  CHECK(again_words(30, 180) == "Rows 31 to 180 are as rows 1 to 30, again and again");
  const auto pages = leaflet_of(demo("poncho-hem"));
  CHECK(has_text(pages, "Rows 35 to 68 are as rows 1 to 34."));
  CHECK(has_text(pages, "Rows 35 to 68 are as rows 1 to 34"));
}

TEST_CASE("floats caught by hand have a part of their own, with the rows and the needles") {
  const std::string heading = "Floats caught by hand";
  OpenedDocument opened = demo("hood-border");
  CHECK_FALSE(has_text(leaflet_of(opened), heading));
  Grid& drawing = opened.document.grid;
  for (int column = 0; column < drawing.width(); ++column) {
    drawing.set(column, 2, column == 0);
  }
  set_mark(opened.document.marks.caught, drawing, 6, 2, true);
  const RowsToKnit rows = rows_to_knit(opened.document, opened.profile);
  std::string after;
  std::string needles;
  for (const RowToKnit& row : rows.rows) {
    const auto caught = caught_needles(opened.document, opened.profile, row);
    if (!caught.empty() && after.empty()) {
      after = std::to_string(&row - rows.rows.data() + 1);
      needles = text_of(runs_of(caught));
    }
  }
  REQUIRE_FALSE(needles.empty());
  const auto pages = leaflet_of(opened);
  CHECK(has_text(pages, heading));
  const auto listed = [&](const Sheet& page) {
    const auto boxes = texts_on(page);
    return std::ranges::any_of(boxes, [&](const Box& one) {
      return one.text->text == needles && std::ranges::any_of(boxes, [&](const Box& other) {
               return other.text->text == after && other.text->at.y == one.text->at.y &&
                      other.text->at.x < one.text->at.x;
             });
    });
  };
  CHECK(std::ranges::any_of(pages, [&](const Sheet& page) {
    const auto boxes = texts_on(page);
    const bool here =
        std::ranges::any_of(boxes, [&](const Box& box) { return box.text->text == "After the row, onto the needles"; });
    return here && listed(page);
  }));
}

TEST_CASE("what is done before a row is told whole, however long the yarns' names are") {
  OpenedDocument opened = demo("puffin-cove");
  for (Yarn& yarn : opened.document.yarns) {
    yarn.name += ", a worsted-spun two-ply of the harbour's own flock in its natural colour";
  }
  for (const Sheet& sheet : leaflet_of(opened)) {
    for (const Box& box : texts_on(sheet)) {
      CAPTURE(box.text->text);
      CHECK_FALSE((box.text->text.starts_with("before row") && box.text->text.ends_with("…")));
    }
  }
}

TEST_CASE("a yarn name that is too long ends in an ellipsis within its column") {
  OpenedDocument opened = demo("hood-border");
  opened.document.yarns.front().name = std::string(200, 'W');
  opened.document.title = std::string(300, 'M');
  for (const Sheet& sheet : leaflet_of(opened)) {
    for (const Box& box : texts_on(sheet)) {
      CAPTURE(box.text->text);
      CHECK(box.right <= sheet.width - leaflet::side_margin + 0.01);
    }
  }
}

TEST_CASE("what is too large for a leaflet is refused, with the reason and the remedy") {
  OpenedDocument opened = demo("hood-border");
  opened.document.piece.times = 1000;
  const auto refused = pages_of_leaflet(opened.document, opened.profile, Paper::a4);
  REQUIRE_FALSE(refused.ok());
  CHECK(refused.error().message.find("too many for a leaflet") != std::string::npos);
  CHECK_FALSE(refused.error().remedy.empty());
  const auto text = leaflet_files(demo("hood-border").document, opened.profile, "leaflet.svg", Paper::a4);
  REQUIRE_FALSE(text.ok());
  CHECK(text.error().remedy == "allowed: .pdf");
}
