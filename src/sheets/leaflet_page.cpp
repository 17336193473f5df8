// Pages, heads and feet; what stands between them is set by the parts.
#include "sheets/leaflet_page.hpp"

#include "sheets/shapes.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace punchwright {

using namespace leaflet;

namespace {
constexpr double heading_height = 2.5 * line_step;
} // namespace

LeafletPages::LeafletPages(Paper paper, std::string title) : frame_(frame_for(paper, 1, 1)), title_(std::move(title)) {
  add_page({});
}

void LeafletPages::add_page(const std::string& running_head) {
  sheets_.push_back({title_, frame_.paper_width, frame_.paper_height, {Group{"leaflet", {}}}});
  running_heads_.push_back(running_head);
  y_ = page_top;
}

void LeafletPages::new_page() {
  add_page(part_.empty() ? part_ : said("{}, continued", part_));
}

LeafletPages LeafletPages::blank_from(double y) const {
  LeafletPages blank = *this;
  blank.sheets_.erase(blank.sheets_.begin(), blank.sheets_.end() - 1);
  blank.shapes().clear();
  blank.y_ = y;
  return blank;
}

void LeafletPages::gap(double mm) {
  constexpr double rounding = 1e-6;
  y_ = page_top + std::ceil((y_ + mm - page_top) / half_line - rounding) * half_line;
}

void LeafletPages::begin_part(const std::string& name) {
  part_ = name;
  add_page(name);
  add_heading(name);
}

void LeafletPages::begin_part_below(const std::string& name, double room_wanted) {
  constexpr double above = 2 * line_step;
  if (room() < above + heading_height + room_wanted) {
    begin_part(name);
    return;
  }
  part_ = name;
  gap(above);
  add_heading(name);
}

void LeafletPages::add_heading(const std::string& name) {
  parts_.push_back({name, static_cast<int>(sheets_.size())});
  shapes().push_back(text_shape({left(), y_ + base_line + half_line}, name, heading_type, Anchor::start, true));
  y_ += heading_height;
}

double LeafletPages::column_width(int columns) const {
  return (width() - column_gap * (columns - 1)) / columns;
}

void LeafletPages::set(const std::vector<FlowBlock>& blocks, int columns, const FlowBlock& head) {
  const FlowFrame frame{left(), y_, page_top, bottom(), width(), column_gap, columns};
  y_ = set_blocks(blocks, head, frame, &shapes(), [&] {
    new_page();
    return &shapes();
  });
}

void LeafletPages::set_beside(const std::vector<FlowBlock>& left_blocks, const std::vector<FlowBlock>& right_blocks) {
  const double column = column_width(2);
  const auto set_one = [&](const std::vector<FlowBlock>& blocks, double x, std::vector<Shape>& shapes, bool& fits) {
    const FlowFrame frame{x, y_, page_top, bottom(), column, 0, 1};
    std::vector<Shape> beyond;
    return set_blocks(blocks, {}, frame, &shapes, [&] {
      fits = false;
      return &beyond;
    });
  };
  std::vector<Shape> both;
  bool fits = true;
  const double left_end = set_one(left_blocks, left(), both, fits);
  const double right_end = set_one(right_blocks, left() + column + column_gap, both, fits);
  if (fits) {
    shapes().insert(shapes().end(), both.begin(), both.end());
    y_ = std::max(left_end, right_end);
    return;
  }
  std::vector<FlowBlock> all = left_blocks;
  all.insert(all.end(), right_blocks.begin(), right_blocks.end());
  set(all, 2);
}

std::vector<Sheet> LeafletPages::finish(int more_pages) {
  const int count = pages() + more_pages;
  for (std::size_t page = 0; page < sheets_.size(); ++page) {
    auto& shapes = sheets_[page].groups.back().shapes;
    const double right = left() + width();
    const double foot_line = frame_.paper_height - 12.0;
    shapes.push_back(text_shape({right, foot_line}, said("page {} of {}", page + 1, count), small_type, Anchor::end,
                                false, ink::dark));
    if (page == 0) {
      continue;
    }
    const std::string& part = running_heads_[page];
    const double head_line = 14.5;
    shapes.push_back(text_shape({right, head_line}, part, small_type, Anchor::end, false, ink::dark));
    shapes.push_back(text_shape(
        {left(), head_line}, fitting_text(title_, small_type, false, width() - width_of(part, small_type, false) - 6.0),
        small_type, Anchor::start, false, ink::dark));
    shapes.push_back(line_shape({left(), head_line + 1.8}, {right, head_line + 1.8}, line_paint(ink::light, 0.2)));
  }
  return std::move(sheets_);
}

} // namespace punchwright
