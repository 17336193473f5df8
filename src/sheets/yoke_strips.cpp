// Decrease strips at the bed's true pitch: parts on paper that are glued together, with the needles to transfer, where
// each loop goes, and the needles in work before and after.
#include "design/words.hpp"
#include "sheets/card_pages.hpp"
#include "sheets/rulers.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"
#include "sheets/yoke_parts.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <utility>

namespace punchwright {
namespace {

constexpr double hair = 0.12;
constexpr double flap = 8.0;       // goes under the next part
constexpr double foot_room = 5.0;  // above the ruler across
constexpr double cross_away = 2.8; // from the part's edge to a cross
constexpr double part_height = 34.0;
constexpr double part_step = part_height + 10.0; // with room for crosses
constexpr double label_type = 2.3;
// From a part's upper edge.
constexpr double numbers_line = 8.6;
constexpr double marks_line = 12.2;
constexpr double first_labels = 17.0;
constexpr double label_step = 5.0; // to the second line of labels
constexpr double before_bar = 25.2;
constexpr double after_bar = 29.6;
constexpr double bar_height = 3.4;

// One mark: the needle, and the neighbour that takes its loop, or from which a loop is lifted.
struct StripMark {
  Needle needle;
  Needle neighbour;
};

struct StripFacts {
  const TierOfPiece& tier;
  double pitch = 9;
  int edge = 1;
  bool last = false; // nothing is hung on again
  std::vector<StripMark> marks;
  int first = 0; // positions of the needles shown
  int end = 0;   // behind the last one
};

// Drawn between these; the upper left corner's place on the page.
struct StripPart {
  int number = 1;
  int parts = 1;
  int first = 0;
  int end = 0;
  Point corner;
};

StripFacts facts_of(const YokeJob& job, const YokeStrip& strip) {
  const TierOfPiece& tier = job.at(strip.size, strip.piece, strip.tier);
  StripFacts facts{
      tier, job.opened.profile.pitch_mm, job.opened.yoke.edge, strip.tier + 1 == job.opened.tiers.size(), {}, 0, 0};
  for (const Transfer& transfer : tier.shaping.transfers) {
    facts.marks.push_back({transfer.from, transfer.to});
  }
  if (tier.shaping.increases() > 0) {
    for (const Needle needle : needles_to_fill(tier.shaping, tier.first_after)) {
      facts.marks.push_back({needle, Needle{needle.position - 1}});
    }
  }
  facts.first = tier.bed.first.position;
  facts.end = tier.bed.last.position + 1;
  if (!facts.last) {
    facts.first = std::min(facts.first, tier.first_after.position);
    facts.end = std::max(facts.end, tier.last_after.position + 1);
  }
  facts.first = std::max(facts.first - 1, job.opened.profile.leftmost().position);
  facts.end = std::min(facts.end + 1, job.opened.profile.rightmost().position + 1);
  return facts;
}

class PartPainter {
public:
  PartPainter(const StripFacts& facts, const StripPart& part, std::vector<Shape>& shapes)
      : facts_(facts), part_(part), shapes_(shapes) {}

  void draw() {
    frame();
    joints();
    bar(facts_.tier.bed.first, facts_.tier.bed.last, before_bar, true);
    if (!facts_.last) {
      bar(facts_.tier.first_after, facts_.tier.last_after, after_bar, false);
    }
    middle();
    ticks();
    marks();
  }

private:
  [[nodiscard]] double top() const { return part_.corner.y; }
  [[nodiscard]] double left() const { return part_.corner.x; }
  [[nodiscard]] double right() const { return left() + (part_.end - part_.first) * facts_.pitch; }
  [[nodiscard]] double x_of(int position) const { return left() + (position - part_.first + 0.5) * facts_.pitch; }

  void line(double x1, double y1, double x2, double y2, Paint paint) {
    shapes_.emplace_back(line_shape({x1, top() + y1}, {x2, top() + y2}, std::move(paint)));
  }
  void text(double x, double y, const std::string& words, double type, Anchor anchor, bool bold = false,
            Colour colour = ink::black) {
    shapes_.emplace_back(text_shape({x, top() + y}, words, type, anchor, bold, colour));
  }

  void frame() {
    line(left(), 0, right(), 0, line_paint(ink::black, hair));
    line(left(), part_height, right(), part_height, line_paint(ink::dark, 0.15));
    for (const double x : {left(), right()}) {
      line(x, 0, x, part_height, line_paint(ink::black, 0.15));
    }
  }

  void joints() {
    if (part_.number < part_.parts) {
      shapes_.emplace_back(PolylineShape{{{right(), top()},
                                          {right() + flap, top()},
                                          {right() + flap, top() + part_height},
                                          {right(), top() + part_height}},
                                         false,
                                         dashed_paint(ink::dark, 0.2),
                                         {}});
      TextShape words = text_shape({right() + flap / 2 - 0.9, top() + part_height / 2},
                                   fmt::format("flap: glue under part {}", part_.number + 1), 2.3, Anchor::middle);
      words.turned_degrees = 90;
      shapes_.emplace_back(words);
      crosses(right());
    }
    if (part_.number > 1) {
      crosses(left());
    }
  }
  void crosses(double x) {
    add_cross(shapes_, {x, top() - cross_away});
    add_cross(shapes_, {x, top() + part_height + cross_away});
  }

  [[nodiscard]] bool shown(int position) const { return position >= part_.first && position < part_.end; }

  // The bed's middle lies between L1 and R1.
  void middle() {
    if (part_.first <= 0 && part_.end >= 0) {
      const double x = left() - part_.first * facts_.pitch;
      line(x, 0, x, part_height, dashed_paint(ink::dark, 0.25));
      text(x, -1.2, "0", 3.0, Anchor::middle, true);
    }
  }

  void ticks() {
    const bool all_named = facts_.pitch >= 7.0;
    for (int position = part_.first; position < part_.end; ++position) {
      const Needle needle{position};
      const int number = position < 0 ? -position : position + 1;
      const double length = number % 10 == 0 ? 6.0 : number % 5 == 0 ? 5.0 : 3.5;
      line(x_of(position), 0, x_of(position), length, line_paint(ink::black, hair));
      if (all_named || number % 5 == 0) {
        text(x_of(position), numbers_line, name_of(needle), label_type, Anchor::middle, number % 5 == 0);
      }
    }
  }

  void marks() {
    const bool out = facts_.tier.shaping.decreases() > 0;
    double ends[] = {-1e9, -1e9}; // of the labels in both lines
    for (const StripMark& mark : facts_.marks) {
      const int position = mark.needle.position;
      if (!shown(position)) {
        continue;
      }
      const double x = x_of(position);
      const std::string name = name_of(mark.needle);
      const std::string neighbour = (out ? "to " : "from ") + name_of(mark.neighbour);
      line(x, 0, x, 6.6, line_paint(ink::black, 0.9));
      ring(x, out);
      arrow(x, x_of(mark.neighbour.position), out);
      const double half = std::max(width_of(name, label_type, true), width_of(neighbour, label_type, false)) / 2;
      const std::size_t row = x - half > ends[0] + 0.6 ? 0 : 1;
      ends[row] = x + half;
      const double y = first_labels + label_step * static_cast<double>(row);
      text(x, y, name, label_type, Anchor::middle, true);
      text(x, y + 2.3, neighbour, label_type - 0.2, Anchor::middle);
    }
  }

  void ring(double x, bool out) {
    const double radius = std::min(1.4, facts_.pitch * 0.28);
    CircleShape circle;
    circle.centre = {x, top() + marks_line};
    circle.radius = radius;
    circle.paint = Paint{ink::black, 0.3, Colour{255, 255, 255}, false};
    shapes_.emplace_back(circle);
    if (out) {
      const double arm = radius * 0.66;
      line(x - arm, marks_line - arm, x + arm, marks_line + arm, line_paint(ink::black, 0.25));
      line(x - arm, marks_line + arm, x + arm, marks_line - arm, line_paint(ink::black, 0.25));
    }
  }

  // From the needle to the one that takes its loop; of increases the other way.
  void arrow(double needle, double neighbour, bool out) {
    const double way = neighbour > needle ? 1.0 : -1.0;
    const double near = needle + way * std::min(1.4, facts_.pitch * 0.28);
    const double far = neighbour - way * 0.2;
    const auto [from, to] = out ? std::pair(near, far) : std::pair(far, near);
    const double back = to > from ? -1.0 : 1.0;
    line(from, marks_line, to, marks_line, line_paint(ink::black, 0.35));
    shapes_.emplace_back(PolylineShape{{{to, top() + marks_line},
                                        {to + back * 1.3, top() + marks_line - 0.8},
                                        {to + back * 1.3, top() + marks_line + 0.8}},
                                       true,
                                       fill_paint(ink::black),
                                       {}});
  }

  // From needle to needle, as much of it as lies on this part; the seam stitches are darker.
  void bar(Needle first, Needle last, double y, bool before) {
    const int from = std::max(first.position, part_.first);
    const int end = std::min(last.position + 1, part_.end);
    if (end <= from) {
      return;
    }
    const double x = x_of(from) - facts_.pitch / 2;
    piece_of_bar(x, (end - from) * facts_.pitch, y,
                 Paint{ink::dark, 0.2, before ? ink::faint : Colour{255, 255, 255}, false});
    for (int stitch = 0; stitch < facts_.edge; ++stitch) {
      for (const int seam : {first.position + stitch, last.position - stitch}) {
        if (shown(seam)) {
          piece_of_bar(x_of(seam) - facts_.pitch / 2, facts_.pitch, y, Paint{ink::dark, 0.2, ink::light, false});
        }
      }
    }
    const std::string words =
        fmt::format("{}: {} to {}", before ? "in work now" : "hung on again", name_of(first), name_of(last));
    const double inset = facts_.pitch * std::max(0, facts_.edge - (from - first.position)) + 1.2;
    const double room = (end - from) * facts_.pitch - inset - facts_.pitch * facts_.edge;
    if (width_of(words, 2.2, false) <= room) {
      text(x + inset, y + bar_height - 1.0, words, 2.2, Anchor::start);
    }
  }
  void piece_of_bar(double x, double width, double y, Paint paint) {
    RectangleShape bar;
    bar.corner = {x, top() + y};
    bar.width = width;
    bar.height = bar_height;
    bar.paint = std::move(paint);
    shapes_.emplace_back(bar);
  }

  const StripFacts& facts_;
  const StripPart& part_;
  std::vector<Shape>& shapes_;
};

// Parts of about equal length, cut half-way between two needles, and never between a needle and the one that takes its
// loop.
std::vector<StripPart> parts_of_strip(const StripFacts& facts, double width) {
  const int most = std::max(2, static_cast<int>(std::floor(width / facts.pitch + 1e-9)));
  const auto between_two = [&](int cut) {
    return std::ranges::any_of(facts.marks, [&](const StripMark& mark) {
      return std::max(mark.needle.position, mark.neighbour.position) == cut;
    });
  };
  std::vector<StripPart> parts;
  for (int first = facts.first; first < facts.end;) {
    const int left = facts.end - first;
    const int more = (left + most - 1) / most;
    int end = first + (left + more - 1) / more;
    for (int moved = 0; moved < 2 && end < facts.end && end > first + 2 && between_two(end); ++moved) {
      --end;
    }
    parts.push_back({static_cast<int>(parts.size()) + 1, 0, first, end, {}});
    first = end;
  }
  for (StripPart& part : parts) {
    part.parts = static_cast<int>(parts.size());
  }
  return parts;
}

// What the strip is for.
std::vector<std::string> strip_words(const YokeJob& job, const YokeStrip& strip, std::size_t number, double width) {
  const Shaping& shaping = job.at(strip.size, strip.piece, strip.tier).shaping;
  const std::string what =
      shaping.decreases() > 0
          ? fmt::format("{} less, from {} to {}", shaping.decreases(), shaping.before, shaping.after)
          : fmt::format("{} more, from {} to {}", shaping.increases(), shaping.before, shaping.after);
  std::vector<std::string> lines = lines_of(
      fmt::format("Strip {}, above {} · {} · {}", number + 1, name_of_tier(job, strip.tier), strip.users, what), 3.0,
      true, width);
  for (std::string& line :
       lines_of(with_capital(words_of(shaping.every)) + ", counted from the left.", 2.8, false, width)) {
    lines.push_back(std::move(line));
  }
  return lines;
}

constexpr double legend_height = 20.0;

void add_legend(std::vector<Shape>& shapes, const PageFrame& frame, double y) {
  const double width = frame.width();
  double line = y + 2.8;
  const std::string words =
      "Cut out along the lines, glue part to part (crosses upon crosses, cut upon line), and lay the upper edge along "
      "the "
      "bed, 0 at its middle. Thick mark: bring this needle forward, pattern and end-needle selection off, and give its "
      "loop to the needle at the arrow; ring with a cross: then it is empty and goes out of work before the next row. "
      "Empty ring: left free when the work is hung on again; lift the loop below its neighbour onto it. "
      "Bars: needles in work; darker, the seam stitches.";
  for (const std::string& part : lines_of(words, 2.6, false, width)) {
    shapes.emplace_back(text_shape({frame.left(), line}, part, 2.6));
    line += 3.5;
  }
  const double check = y + legend_height - 1.5;
  const Paint paint = line_paint(ink::black, hair);
  const double from = frame.left() + ruler_breadth;
  shapes.emplace_back(line_shape({from, check}, {from + 100.0, check}, paint));
  for (const double end : {from, from + 100.0}) {
    shapes.emplace_back(line_shape({end, check - 1.6}, {end, check + 1.6}, paint));
  }
  shapes.emplace_back(text_shape({from + 103.0, check + 1.0}, "this line is 100.0 mm: measure it before you cut", 2.6));
}

class StripPages {
public:
  StripPages(const YokeJob& job, const PageFrame& frame) : job_(job), frame_(frame) {}

  void add(const YokeStrip& strip, std::size_t number, std::vector<int>& begins) {
    const StripFacts facts = facts_of(job_, strip);
    const double left = frame_.left() + ruler_breadth + cross_away + cross_arm;
    const double right = frame_.right() - flap;
    std::vector<StripPart> parts = parts_of_strip(facts, right - left);
    const std::vector<std::string> words = strip_words(job_, strip, number, frame_.width());
    const double head = 3.6 * static_cast<double>(words.size()) + 1.5;
    // Begun on a page where all of it fits, or as much as can be.
    const double all = head + static_cast<double>(parts.size()) * part_step;
    if (groups_.empty() || (y_ + all > bottom() && y_ > first_y())) {
      new_page();
    }
    begins.push_back(static_cast<int>(groups_.size()) - 1);
    for (std::size_t line = 0; line < words.size(); ++line) {
      groups_.back().shapes.emplace_back(text_shape({frame_.left(), y_ + 3.0 + 3.6 * static_cast<double>(line)},
                                                    words[line], line + 1 < words.size() ? 3.0 : 2.8, Anchor::start,
                                                    line + 1 < words.size()));
    }
    y_ += head;
    for (StripPart& part : parts) {
      if (y_ + part_step > bottom() + 1e-9) {
        new_page();
      }
      part.corner = {left, y_ + cross_away + cross_arm};
      PartPainter(facts, part, groups_.back().shapes).draw();
      name_part(part, number);
      y_ += part_step;
    }
  }

  std::vector<Group> take() { return std::move(groups_); }

private:
  [[nodiscard]] double first_y() const { return frame_.top() + head_room + legend_height; }
  [[nodiscard]] double bottom() const { return frame_.bottom() - ruler_breadth - foot_room; }

  void new_page() {
    groups_.push_back({"strips", {}});
    add_legend(groups_.back().shapes, frame_, frame_.top() + head_room);
    y_ = first_y() + 2.0;
  }
  void name_part(const StripPart& part, std::size_t number) {
    if (part.parts > 1) {
      groups_.back().shapes.emplace_back(
          text_shape({part.corner.x + cross_arm + 2.0, part.corner.y - 1.2},
                     fmt::format("strip {}, part {} of {}", number + 1, part.number, part.parts), 2.3, Anchor::start,
                     false, ink::dark));
    }
  }

  const YokeJob& job_;
  const PageFrame& frame_;
  std::vector<Group> groups_;
  double y_ = 0;
};

} // namespace

std::vector<Group> strip_groups(const YokeJob& job, const PageFrame& frame, std::vector<int>& pages_of_strips) {
  StripPages pages(job, frame);
  for (std::size_t index = 0; index < job.strips.size(); ++index) {
    pages.add(job.strips[index], index, pages_of_strips);
  }
  return pages.take();
}

} // namespace punchwright
