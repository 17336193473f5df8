// Columns are filled by turns; where all that is left fits on one page, the lowest height at which it does is taken.
#include "sheets/text_flow.hpp"

#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"

#include <algorithm>

namespace punchwright {
namespace {

constexpr std::size_t least_lines = 2; // of a paragraph, at the foot and at the head of a column
constexpr double rounding = 1e-6;      // mm

struct Place {
  std::size_t block = 0;
  std::size_t line = 0;
};

struct Placed {
  const FlowLine* line = nullptr;
  int column = 0;
  double y = 0; // from the column's top
};

double height_of(const FlowBlock& block, std::size_t from, std::size_t to) {
  double height = 0;
  for (std::size_t line = from; line < to; ++line) {
    height += block.lines[line].height;
  }
  return height;
}

class Column {
public:
  // `highest`: no other column is higher, so that what does not fit here fits nowhere.
  Column(const std::vector<FlowBlock>& blocks, double room, bool highest)
      : blocks_(blocks), room_(room), highest_(highest) {}

  // What stands above that place on a later page.
  void begin_again(Place place, int column, std::vector<Placed>& placed) {
    for (const FlowLine& line : blocks_[place.block].again) {
      placed.push_back({&line, column, y_});
      y_ += line.height;
    }
    top_ = y_;
  }

  // From that place on, as much as the column holds.
  Place fill(Place place, int column, std::vector<Placed>& placed) {
    while (place.block < blocks_.size()) {
      const FlowBlock& block = blocks_[place.block];
      const double before = y_ > 0 && place.line == 0 ? block.before : 0;
      const std::size_t lines = lines_that_fit(place, before);
      if (lines == 0) {
        break;
      }
      y_ += before;
      for (std::size_t line = place.line; line < place.line + lines; ++line) {
        placed.push_back({&block.lines[line], column, y_});
        y_ += block.lines[line].height;
      }
      place.line += lines;
      if (place.line < block.lines.size()) {
        return place;
      }
      place = {place.block + 1, 0};
    }
    return place;
  }

  [[nodiscard]] double height() const { return y_; }

private:
  [[nodiscard]] std::size_t lines_that_fit(Place place, double before) const {
    const FlowBlock& block = blocks_[place.block];
    const std::size_t left = block.lines.size() - place.line;
    const double all = height_of(block, place.line, block.lines.size());
    const double room = room_ - y_ - before;
    if (all + followers_of(place.block) <= room + rounding) {
      return left;
    }
    const bool fresh = highest_ && y_ == top_;
    if ((block.with_next || block.whole) && !(fresh && all > room)) {
      return fresh ? left : 0; // a heading that is followed by something too high stands all the same
    }
    std::size_t fits = 0;
    while (fits < left && height_of(block, place.line, place.line + fits + 1) <= room + rounding) {
      ++fits;
    }
    if (left - fits < least_lines) {
      fits = left > least_lines ? left - least_lines : 0;
    }
    if (fits < least_lines) {
      fits = 0;
    }
    return fresh ? std::max<std::size_t>(fits, 1) : fits;
  }

  // What must stand below a heading: the next block, or the least lines of it.
  [[nodiscard]] double followers_of(std::size_t block) const {
    double height = 0;
    while (blocks_[block].with_next && block + 1 < blocks_.size()) {
      ++block;
      const FlowBlock& next = blocks_[block];
      const bool splits = !next.whole && !next.with_next && next.lines.size() >= 2 * least_lines;
      height += next.before + height_of(next, 0, splits ? least_lines : next.lines.size());
    }
    return height;
  }

  const std::vector<FlowBlock>& blocks_;
  double room_;
  bool highest_;
  double top_ = 0; // below what is said again
  double y_ = 0;
};

class Setting {
public:
  Setting(const std::vector<FlowBlock>& blocks, const FlowBlock& head, const FlowFrame& frame)
      : blocks_(blocks), head_(head), frame_(frame), head_height_(height_of(head, 0, head.lines.size())) {}

  double set(std::vector<Shape>* page, const std::function<std::vector<Shape>*()>& next_page) {
    Place place;
    double top = frame_.top;
    double end = top;
    bool turned = false;
    while (place.block < blocks_.size()) {
      const double room = frame_.bottom - top - head_height_;
      const bool highest = top <= frame_.page_top + rounding;
      std::vector<Placed> placed;
      Place after = fill_page(place, room, turned, highest, placed);
      // Where nothing but a heading's worth of room was left on this page, all begins on the next one.
      if (!turned && placed.empty()) {
        after = place;
      } else if (after.block == blocks_.size() && frame_.columns > 1) {
        const double lowest = lowest_room(place, room, turned);
        if (lowest < room) {
          placed.clear();
          after = fill_page(place, lowest, turned, false, placed);
        }
      }
      end = draw(*page, placed, top);
      place = after;
      if (place.block < blocks_.size()) {
        page = next_page();
        top = frame_.page_top;
        turned = true;
      }
    }
    return end;
  }

private:
  // `turned`: a later page than the first.
  Place fill_page(Place place, double room, bool turned, bool highest, std::vector<Placed>& placed) const {
    if (room < 12) { // mm: not even a heading with two lines
      return place;
    }
    for (int at = 0; at < frame_.columns && place.block < blocks_.size(); ++at) {
      Column column(blocks_, room, highest);
      if (turned && at == 0) {
        column.begin_again(place, at, placed);
      }
      place = column.fill(place, at, placed);
    }
    return place;
  }

  [[nodiscard]] double lowest_room(Place place, double room, bool turned) const {
    constexpr double step = 1.0; // mm
    for (double lower = 12; lower < room; lower += step) {
      std::vector<Placed> placed;
      if (fill_page(place, lower, turned, false, placed).block == blocks_.size() &&
          deepest(placed) <= lower + rounding) {
        return lower;
      }
    }
    return room;
  }

  static double deepest(const std::vector<Placed>& placed) {
    double deepest = 0;
    for (const Placed& one : placed) {
      deepest = std::max(deepest, one.y + one.line->height);
    }
    return deepest;
  }

  double draw(std::vector<Shape>& page, const std::vector<Placed>& placed, double top) const {
    int heads = 0;
    for (const Placed& one : placed) {
      const double left = frame_.left + (frame_.column_width() + frame_.gap) * one.column;
      for (; heads <= one.column; ++heads) {
        double y = top;
        for (const FlowLine& line : head_.lines) {
          add(page, line, frame_.left + (frame_.column_width() + frame_.gap) * heads, y);
          y += line.height;
        }
      }
      add(page, *one.line, left, top + head_height_ + one.y);
    }
    return placed.empty() ? top : top + head_height_ + deepest(placed);
  }

  static void add(std::vector<Shape>& page, const FlowLine& line, double x, double y) {
    for (const Shape& shape : line.shapes) {
      page.push_back(moved(shape, x, y));
    }
  }

  const std::vector<FlowBlock>& blocks_;
  const FlowBlock& head_;
  const FlowFrame& frame_;
  double head_height_;
};

// No single word in the last line, where a narrower column avoids it with as many lines.
std::vector<std::string> even_lines(const std::string& text, const Paragraph& how, double width) {
  const auto lines = lines_of(text, how.type, how.bold, width);
  const auto ends_alone = [](const std::vector<std::string>& set) {
    return set.size() > 1 && set.back().find(' ') == std::string::npos;
  };
  for (double part = 0.95; ends_alone(lines) && part > 0.6; part -= 0.05) {
    auto narrower = lines_of(text, how.type, how.bold, width * part);
    if (narrower.size() == lines.size() && !ends_alone(narrower)) {
      return narrower;
    }
  }
  return lines;
}

} // namespace

double set_blocks(const std::vector<FlowBlock>& blocks, const FlowBlock& head, const FlowFrame& frame,
                  std::vector<Shape>* first_page, const std::function<std::vector<Shape>*()>& next_page) {
  return Setting(blocks, head, frame).set(first_page, next_page);
}

double height_of(const std::vector<FlowBlock>& blocks) {
  double height = 0;
  for (const FlowBlock& block : blocks) {
    height += (height > 0 ? block.before : 0) + height_of(block, 0, block.lines.size());
  }
  return height;
}

FlowBlock paragraph(const std::string& text, double width, const Paragraph& how, std::vector<Shape> before_first_line) {
  FlowBlock block;
  block.before = how.before;
  for (const std::string& words : even_lines(text, how, width - how.indent)) {
    FlowLine line;
    line.height = how.leading;
    line.shapes.emplace_back(text_shape({how.indent, how.base},
                                        fitting_text(words, how.type, how.bold, width - how.indent), how.type,
                                        Anchor::start, how.bold));
    block.lines.push_back(std::move(line));
  }
  if (!block.lines.empty()) {
    auto& shapes = block.lines.front().shapes;
    shapes.insert(shapes.end(), before_first_line.begin(), before_first_line.end());
  }
  return block;
}

Shape moved(Shape shape, double x, double y) {
  struct Mover {
    double x;
    double y;
    void operator()(CircleShape& circle) const { move(circle.centre); }
    void operator()(RectangleShape& rectangle) const { move(rectangle.corner); }
    void operator()(TextShape& text) const { move(text.at); }
    void operator()(PolylineShape& line) const {
      for (Point& point : line.points) {
        move(point);
      }
    }
    void move(Point& point) const {
      point.x += x;
      point.y += y;
    }
  };
  std::visit(Mover{x, y}, shape);
  return shape;
}

} // namespace punchwright
