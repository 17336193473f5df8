// Draws a part: edges and joints, ticks, marks with their neighbours, and the bars of needles in work.
// Each is a small function of the part's place, so that nothing but the place differs from part to part.
#include "sheets/strip_part.hpp"

#include "sheets/rulers.hpp"
#include "sheets/shapes.hpp"
#include "sheets/strip_labels.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace punchwright {
namespace {

constexpr double hair = 0.12;
constexpr double label_type = 2.3;
constexpr double neighbour_type = 2.1;
constexpr double clear_of_ends = 0.6; // words from cuts and outlines
// From a part's upper edge.
constexpr double numbers_line = 8.6;
constexpr double marks_line = 12.2;
constexpr double first_labels = 17.0;
constexpr double label_step = 5.0; // to the second line of labels
constexpr double before_bar = 25.2;
constexpr double after_bar = 29.6;
constexpr double bar_height = 3.4;

struct MarkWords {
  std::string name;
  std::string neighbour;
};

class PartPainter {
public:
  PartPainter(const StripFacts& facts, const StripPart& part, std::vector<Shape>& shapes)
      : facts_(facts), part_(part), shapes_(shapes) {}

  void draw() {
    frame();
    joints();
    bar(facts_.tier.bed.first, facts_.tier.bed.last, before_bar, true);
    if (facts_.hung_on_again) {
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
    line(left(), strip_part_height, right(), strip_part_height, line_paint(ink::dark, 0.15));
    for (const double x : {left(), right()}) {
      line(x, 0, x, strip_part_height, line_paint(ink::black, 0.15));
    }
  }

  void joints() {
    if (part_.number < part_.parts) {
      shapes_.emplace_back(PolylineShape{{{right(), top()},
                                          {right() + strip_flap, top()},
                                          {right() + strip_flap, top() + strip_part_height},
                                          {right(), top() + strip_part_height}},
                                         false,
                                         dashed_paint(ink::dark, 0.2),
                                         {}});
      const std::string glue = said("flap: glue under part {}", part_.number + 1);
      const double room = strip_part_height - 2 * clear_of_ends;
      const double type = label_type * std::min(1.0, room / width_of(glue, label_type, false)); // longer in German
      TextShape words =
          text_shape({right() + strip_flap / 2 - 0.9, top() + strip_part_height / 2}, glue, type, Anchor::middle);
      words.turned_degrees = 90;
      shapes_.emplace_back(words);
      crosses(right());
    }
    if (part_.number > 1) {
      crosses(left());
    }
  }
  void crosses(double x) {
    add_cross(shapes_, {x, top() - strip_cross_away});
    add_cross(shapes_, {x, top() + strip_part_height + strip_cross_away});
  }

  [[nodiscard]] bool shown(int position) const { return position >= part_.first && position < part_.end; }

  // The bed's middle lies between L1 and R1. Its line ends above the marks' words; where parts are joined there,
  // its number stands beside the cross.
  void middle() {
    if (part_.first <= 0 && part_.end >= 0) {
      constexpr double aside = cross_arm + 0.8;
      const double x = left() - part_.first * facts_.pitch;
      const bool at_next = part_.end == 0 && part_.number < part_.parts;
      const bool at_last = part_.first == 0 && part_.number > 1;
      line(x, 0, x, first_labels - 0.8 * label_type - 0.4, dashed_paint(ink::dark, 0.25));
      text(at_next   ? x - aside
           : at_last ? x + aside
                     : x,
           -1.2, "0", 3.0,
           at_next   ? Anchor::end
           : at_last ? Anchor::start
                     : Anchor::middle,
           true);
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
        const bool bold = number % 5 == 0;
        const double half = width_of(name_of(needle), label_type, bold) / 2;
        const double end = right() - clear_of_ends - half;
        const double x = std::min(std::max(x_of(position), left() + clear_of_ends + half), end);
        text(x, numbers_line, name_of(needle), label_type, Anchor::middle, bold);
      }
    }
  }

  void marks() {
    const bool out = facts_.tier.shaping.decreases() > 0;
    std::vector<MarkWords> words;
    std::vector<LabelWish> wishes;
    for (const StripMark& mark : facts_.marks) {
      if (!shown(mark.needle.position)) {
        continue;
      }
      const double x = x_of(mark.needle.position);
      line(x, 0, x, 6.6, line_paint(ink::black, 0.9));
      ring(x, out);
      arrow(x, x_of(mark.neighbour.position), out);
      words.push_back({name_of(mark.needle),
                       out ? said("to {}", name_of(mark.neighbour)) : said("from {}", name_of(mark.neighbour))});
      wishes.push_back({x, std::max(width_of(words.back().name, label_type, true),
                                    width_of(words.back().neighbour, neighbour_type, false))});
    }
    const std::vector<LabelPlace> places = label_places(wishes, left() + clear_of_ends, right() - clear_of_ends);
    for (std::size_t index = 0; index < places.size(); ++index) {
      const double y = first_labels + label_step * places[index].line;
      leader(wishes[index], places[index].middle, y);
      text(places[index].middle, y, words[index].name, label_type, Anchor::middle, true);
      text(places[index].middle, y + 2.3, words[index].neighbour, neighbour_type, Anchor::middle);
    }
  }

  // From the ring to words that don't stand in the middle below it.
  void leader(const LabelWish& wish, double middle, double y) {
    if (std::fabs(middle - wish.x) > 0.4) {
      const double within = std::max(0.0, wish.width / 2 - 0.6);
      line(wish.x, marks_line + ring_radius() + 0.3, std::clamp(wish.x, middle - within, middle + within),
           y - 0.8 * label_type - 0.1, line_paint(ink::dark, 0.15));
    }
  }

  [[nodiscard]] double ring_radius() const { return std::min(1.4, facts_.pitch * 0.28); }

  void ring(double x, bool out) {
    const double radius = ring_radius();
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
    const double near = needle + way * ring_radius();
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
    const std::string needles = said("{} to {}", name_of(first), name_of(last));
    const std::string all = before ? said("in work now: {}", needles) : said("hung on again: {}", needles);
    const double inset = facts_.pitch * std::max(0, facts_.edge - (from - first.position)) + 1.2;
    const double room = (end - from) * facts_.pitch - inset - facts_.pitch * facts_.edge - clear_of_ends;
    for (const std::string& words : {all, needles}) { // on a narrow piece the needles alone
      if (width_of(words, 2.2, false) <= room) {
        text(x + inset, y + bar_height - 1.0, words, 2.2, Anchor::start);
        break;
      }
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

} // namespace

std::vector<StripMark> marks_of(const TierOfPiece& tier) {
  std::vector<StripMark> marks;
  for (const Transfer& transfer : tier.shaping.transfers) {
    marks.push_back({transfer.from, transfer.to});
  }
  if (tier.shaping.increases() > 0) {
    for (const Needle needle : needles_to_fill(tier.shaping, tier.first_after)) {
      marks.push_back({needle, Needle{needle.position - 1}});
    }
  }
  return marks;
}

StripFacts facts_of(const YokeJob& job, const YokeStrip& strip) {
  const TierOfPiece& tier = job.at(strip.size, strip.piece, strip.tier);
  StripFacts facts{tier,
                   job.opened.profile.pitch_mm,
                   job.opened.yoke.edge,
                   is_hung_on_again(job.opened, tier, strip.tier),
                   marks_of(tier),
                   0,
                   0};
  facts.first = tier.bed.first.position;
  facts.end = tier.bed.last.position + 1;
  if (facts.hung_on_again) {
    facts.first = std::min(facts.first, tier.first_after.position);
    facts.end = std::max(facts.end, tier.last_after.position + 1);
  }
  facts.first = std::max(facts.first - 1, job.opened.profile.leftmost().position);
  facts.end = std::min(facts.end + 1, job.opened.profile.rightmost().position + 1);
  return facts;
}

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

void draw_strip_part(const StripFacts& facts, const StripPart& part, std::vector<Shape>& shapes) {
  PartPainter(facts, part, shapes).draw();
}

} // namespace punchwright
