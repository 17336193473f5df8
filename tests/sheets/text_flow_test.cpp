// How text and tables break over columns and pages: as a careful typesetter would do it.
#include "sheets/shapes.hpp"
#include "sheets/text_flow.hpp"

#include <algorithm>
#include <deque>
#include <doctest/doctest.h>

using namespace punchwright;

namespace {

constexpr double step = 5.0;

FlowBlock block(const std::string& name, int lines) {
  FlowBlock made;
  for (int line = 1; line <= lines; ++line) {
    made.lines.push_back({{text_shape({0, 4}, name + std::to_string(line), 3)}, step});
  }
  return made;
}

FlowBlock heading(const std::string& name) {
  FlowBlock made = block(name, 1);
  made.with_next = true;
  return made;
}

FlowBlock row(const std::string& name, int lines) {
  FlowBlock made = block(name, lines);
  made.whole = true;
  return made;
}

struct Line {
  std::string text;
  std::size_t page = 0;
  double x = 0;
  double y = 0;
};

class Outcome {
public:
  // Pages of so many lines' room, of which `taken` of the first page are filled already.
  Outcome(const std::vector<FlowBlock>& blocks, int lines, int columns, const FlowBlock& head = {}, int taken = 0) {
    const FlowFrame frame{0, taken * step, 0, lines * step, 100, 10, columns};
    std::deque<std::vector<Shape>> pages(1);
    end_ = set_blocks(blocks, head, frame, &pages.front(), [&] {
      pages.emplace_back();
      return &pages.back();
    });
    for (std::size_t page = 0; page < pages.size(); ++page) {
      for (const Shape& shape : pages[page]) {
        const auto& text = std::get<TextShape>(shape);
        lines_.push_back({text.text, page, text.at.x, text.at.y - 4});
      }
    }
  }

  [[nodiscard]] Line at(const std::string& text) const {
    const auto found = std::ranges::find(lines_, text, &Line::text);
    REQUIRE(found != lines_.end());
    return *found;
  }
  [[nodiscard]] bool together(const std::string& one, const std::string& other) const {
    return at(one).page == at(other).page && at(one).x == at(other).x;
  }
  [[nodiscard]] auto count(const std::string& text) const { return std::ranges::count(lines_, text, &Line::text); }
  [[nodiscard]] std::size_t lines() const { return lines_.size(); }
  [[nodiscard]] double end() const { return end_; }

private:
  std::vector<Line> lines_;
  double end_ = 0;
};

} // namespace

TEST_CASE("lines follow each other down a column, then down the next, then on the next page") {
  const Outcome set({block("a", 25)}, 10, 2);
  CHECK(set.at("a1").y == 0);
  CHECK(set.at("a10").y == 45);
  CHECK(set.at("a11").x == 55);
  CHECK(set.at("a11").y == 0);
  CHECK(set.at("a21").page == 1);
  CHECK(set.lines() == 25);
}

TEST_CASE("a heading goes with what it stands above") {
  const Outcome set({block("a", 8), heading("h"), block("b", 6)}, 10, 1);
  CHECK(set.at("h1").page == 1);
  CHECK(set.together("h1", "b1"));
  SUBCASE("two lines of it are enough") {
    const Outcome near({block("a", 7), heading("h"), block("b", 6)}, 10, 1);
    CHECK(near.at("h1").page == 0);
    CHECK(near.together("h1", "b2"));
    CHECK(near.at("b3").page == 1);
  }
  SUBCASE("two headings go together") {
    const Outcome two({block("a", 7), heading("h"), heading("i"), block("b", 6)}, 10, 1);
    CHECK(two.at("h1").page == 1);
    CHECK(two.together("h1", "i1"));
  }
}

TEST_CASE("a heading does not stand alone at the foot of a page that was begun by something else") {
  // Three lines are left: room for the heading and two lines, but what follows can't be split.
  const Outcome set({heading("h"), row("a", 4), row("b", 2)}, 10, 1, {}, 7);
  CHECK(set.at("h1").page == 1);
  CHECK(set.together("h1", "a1"));
  const Outcome columns({heading("h"), row("a", 4), row("b", 4), row("c", 4)}, 10, 2, {}, 7);
  CHECK(columns.at("h1").page == 1);
  CHECK(columns.together("h1", "a1"));
  const Outcome rows({row("a", 4), row("b", 2)}, 10, 1, {}, 7);
  CHECK(rows.at("a1").page == 1); // nor is a row split there
  CHECK(rows.together("a1", "a4"));
}

TEST_CASE("a heading does not stand alone in the first column, where the last page's columns are made of one height") {
  const Outcome set({heading("h"), row("a", 3)}, 10, 2);
  CHECK(set.together("h1", "a1"));
}

TEST_CASE("a heading above what is higher than a page stands there all the same") {
  const Outcome set({heading("h"), row("a", 12)}, 10, 1);
  CHECK(set.at("h1").page == 0);
  CHECK(set.lines() == 13);
}

TEST_CASE("a table's row is never split") {
  const Outcome set({row("a", 4), row("b", 4), row("c", 4)}, 10, 1);
  CHECK(set.together("b1", "b4"));
  CHECK(set.together("c1", "c4"));
  CHECK(set.at("c1").page == 1);
}

TEST_CASE("a row that is higher than a page is split all the same, and nothing is lost") {
  const Outcome set({row("a", 23)}, 10, 1);
  CHECK(set.lines() == 23);
  CHECK(set.at("a23").page == 2);
}

TEST_CASE("no single line of a paragraph stands alone") {
  const Outcome foot({block("a", 9), block("b", 4)}, 10, 1);
  CHECK(foot.at("b1").page == 1); // its first line would have had room
  const Outcome top({block("a", 7), block("b", 4)}, 10, 1);
  CHECK(top.at("b2").page == 0);
  CHECK(top.together("b3", "b4")); // b3 would have had room
  CHECK(top.at("b3").page == 1);
}

TEST_CASE("the last page's columns are of one height") {
  const Outcome set({row("a", 2), row("b", 2), row("c", 2), row("d", 2)}, 10, 2);
  CHECK(set.together("a1", "b1"));
  CHECK(set.together("c1", "d1"));
  CHECK(set.at("c1").y == 0);
  CHECK(set.end() == doctest::Approx(20));
}

TEST_CASE("a table's head stands on top of every column") {
  const Outcome set({row("a", 15), row("b", 15)}, 20, 1, block("head", 1));
  CHECK(set.count("head1") == 2);
  CHECK(set.at("a1").y == step);
  CHECK(set.at("b1").y == step);
}

TEST_CASE("the room before a block is left out at the head of a column") {
  FlowBlock second = row("b", 3);
  second.before = 3;
  const Outcome apart({row("a", 3), second}, 10, 1);
  CHECK(apart.at("b1").y == 18);
  const Outcome turned({row("a", 9), second}, 10, 1);
  CHECK(turned.at("b1").y == 0);
}
