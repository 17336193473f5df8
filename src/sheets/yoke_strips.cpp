// Decrease strips over pages: parts on paper that are glued together, each strip begun where most of it fits, and the
// words that say what it is for and how it is used.
#include "design/words.hpp"
#include "sheets/card_pages.hpp"
#include "sheets/rulers.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/strip_part.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

constexpr double foot_room = 5.0; // above the ruler across
constexpr double line_step = 3.6;
constexpr double hair = 0.12;
constexpr double part_step = strip_part_height + 10.0; // with room for crosses

// "24 pieces of 3 sizes; their steps name this strip", in place of names that would fill a page.
std::string counted_users(const YokeJob& job, const YokeStrip& strip, std::size_t number) {
  std::ptrdiff_t pieces = 0;
  std::ptrdiff_t sizes = 0;
  for (const std::size_t size : job.sizes) {
    const auto of_size = std::ranges::count_if(
        job.pieces, [&](std::size_t piece) { return strip_of(job, size, piece, strip.tier) == number; });
    pieces += of_size;
    sizes += of_size > 0 ? 1 : 0;
  }
  return said("{} of {}; their steps name this strip", pieces_counted(pieces),
              said_count(sizes, "{} size", "{} sizes"));
}

struct StripLine {
  std::string words;
  double type = 2.8;
  bool bold = false;
};

// What the strip is for, and below it how its needles are counted.
std::vector<StripLine> strip_words(const YokeJob& job, const YokeStrip& strip, std::size_t number, double width) {
  constexpr std::size_t most_lines = 6;
  const StripLine heading{"", 3.0, true};
  const Shaping& shaping = job.at(strip.size, strip.piece, strip.tier).shaping;
  const std::string what = shaping.decreases() > 0
                               ? said("{} less, from {} to {}", shaping.decreases(), shaping.before, shaping.after)
                               : said("{} more, from {} to {}", shaping.increases(), shaping.before, shaping.after);
  const auto head = [&](const std::string& users) {
    return lines_of(
        said("Strip {}, above {} · {} · {}", number + 1, name_of_tier(job, strip.tier), users, unbroken(what)),
        heading.type, heading.bold, width);
  };
  std::vector<std::string> heads = head(strip.users);
  if (heads.size() > most_lines) {
    heads = head(counted_users(job, strip, number));
  }
  std::vector<StripLine> lines;
  for (std::string& line : heads) {
    lines.push_back({std::move(line), heading.type, heading.bold});
  }
  const std::string clear = clearance_words(shaping);
  const std::string every = with_capital(words_of(shaping.every));
  for (std::string& line : lines_of(clear.empty() ? said("{}, counted from the left.", every)
                                                  : said("{}, counted from the left, {}.", every, clear),
                                    StripLine{}.type, false, width)) {
    lines.push_back({std::move(line)});
  }
  return lines;
}

constexpr double legend_height = 20.0;

void add_legend(std::vector<Shape>& shapes, const PageFrame& frame, double y) {
  const double width = frame.width();
  double line = y + 2.8;
  const std::string words = tr(
      "Cut out along the lines, glue part to part (crosses upon crosses, cut upon line), and lay the upper edge along "
      "the bed, 0 at its middle. Thick mark and ring with a cross: bring this needle forward, pattern and end-needle "
      "selection off, and give its loop to the needle at the arrow; then it is empty and goes out of work before the "
      "next row. Thick mark and empty ring: leave it free when the work is hung on again, and lift the loop below "
      "its neighbour onto it. Bars: needles in work; darker, the seam stitches.");
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
  shapes.emplace_back(
      text_shape({from + 103.0, check + 1.0}, tr("this line is 100.0 mm: measure it before you cut"), 2.6));
}

class StripPages {
public:
  StripPages(const YokeJob& job, const PageFrame& frame) : job_(job), frame_(frame) {}

  void add(const YokeStrip& strip, std::size_t number, std::vector<int>& begins) {
    const StripFacts facts = facts_of(job_, strip);
    const double left = frame_.left() + ruler_breadth + strip_cross_away + cross_arm;
    const double right = frame_.right() - strip_flap;
    std::vector<StripPart> parts = parts_of_strip(facts, right - left);
    const std::vector<StripLine> words = strip_words(job_, strip, number, frame_.right() - left);
    const double head = line_step * static_cast<double>(words.size()) + 1.5;
    // Begun on a page where all of it fits, or as much as can be.
    const double all = head + static_cast<double>(parts.size()) * part_step;
    if (groups_.empty() || (y_ + all > bottom() && y_ > first_y())) {
      new_page();
    }
    begins.push_back(static_cast<int>(groups_.size()) - 1);
    double base = y_ + 3.0;
    for (const StripLine& line : words) {
      groups_.back().shapes.emplace_back(text_shape({left, base}, line.words, line.type, Anchor::start, line.bold));
      base += line_step;
    }
    y_ += head;
    for (StripPart& part : parts) {
      if (y_ + part_step > bottom() + 1e-9) {
        new_page();
      }
      part.corner = {left, y_ + strip_cross_away + cross_arm};
      draw_strip_part(facts, part, groups_.back().shapes);
      name_part(part, number, facts.pitch);
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
  // On the right where the bed's middle is in the left half and near.
  void name_part(const StripPart& part, std::size_t number, double pitch) {
    if (part.parts > 1) {
      const double aside = cross_arm + 2.0;
      const double middle = -part.first * pitch;
      const bool right = middle >= 0 && middle < 40.0 && 2 * middle < (part.end - part.first) * pitch;
      groups_.back().shapes.emplace_back(
          text_shape({part.corner.x + (right ? (part.end - part.first) * pitch - aside : aside), part.corner.y - 1.2},
                     said("strip {}, part {} of {}", number + 1, part.number, part.parts), 2.3,
                     right ? Anchor::end : Anchor::start, false, ink::dark));
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
