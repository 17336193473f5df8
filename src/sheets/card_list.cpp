// The list behind the card's pages: what the margins had no room for, whole and in the order of knitting.
#include "sheets/card_pages.hpp"
#include "sheets/rulers.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr double type = 3.4; // mm; read beside the machine, with the sheet in the hand
constexpr double heading_type = 4.2;
constexpr double leading = 1.3; // of the type size
constexpr double padding = 1.1; // above and below an entry
constexpr double before_words = 4.0;
constexpr double widest_number = 40.0; // a longer "before" goes over two lines

//     left                                right
//     |    12  Ink out, end needles back |
//     |--------------------------------- |
//     |    13  Moss in                   |
class ListPages {
public:
  ListPages(const PageFrame& frame, double numbers)
      : frame_(frame), left_(frame.left() + ruler_breadth + 5.0),
        words_(left_ + std::min(numbers, widest_number) + before_words) {}

  void heading(const std::string& text) {
    if (!pages_.empty()) {
      y_ += heading_type;
    }
    make_room(heading_type * leading + 3 * type * leading);
    shapes().push_back(text_shape({left_, y_ + heading_type}, text, heading_type, Anchor::start, true));
    y_ += heading_type * leading + padding;
  }

  void entry(const std::string& before, const std::string& words) {
    const auto left = lines_of(before, type, true, words_ - before_words - left_);
    auto right = lines_of(words, type, false, frame_.right() - words_);
    // A whole page holds an entry of any sensible length; of a longer one the lines are shared out.
    std::size_t from = 0;
    do {
      make_room(line_height() + 2 * padding);
      const auto fits = static_cast<std::size_t>((bottom() - y_ - 2 * padding) / line_height());
      const std::size_t wanted = std::max(right.size() - from, left.size());
      if (wanted > fits && y_ > top()) {
        new_page();
        continue;
      }
      const std::size_t to = std::min(right.size(), from + std::max<std::size_t>(fits, 1));
      y_ += padding;
      set(left, words_ - before_words, Anchor::end, true);
      set({right.begin() + static_cast<std::ptrdiff_t>(from), right.begin() + static_cast<std::ptrdiff_t>(to)}, words_,
          Anchor::start, false);
      y_ += static_cast<double>(std::max(to - from, left.size())) * line_height() + padding;
      shapes().push_back(line_shape({left_, y_}, {frame_.right(), y_}, line_paint(ink::light, 0.2)));
      from = to;
    } while (from < right.size());
  }

  std::vector<Group> take() { return std::move(pages_); }

private:
  [[nodiscard]] static double line_height() { return type * leading; }
  [[nodiscard]] double top() const { return frame_.top() + head_room + 2.0; }
  [[nodiscard]] double bottom() const { return frame_.bottom() - ruler_breadth - 4.0; }
  std::vector<Shape>& shapes() { return pages_.back().shapes; }

  void new_page() {
    pages_.push_back(Group{"page", {}});
    y_ = top();
  }
  void make_room(double height) {
    if (pages_.empty() || y_ + height > bottom()) {
      new_page();
    }
  }
  void set(const std::vector<std::string>& lines, double x, Anchor anchor, bool bold) {
    double base = y_ + type;
    for (const std::string& line : lines) {
      shapes().push_back(text_shape({x, base}, line, type, anchor, bold));
      base += line_height();
    }
  }

  const PageFrame& frame_;
  double left_;
  double words_;
  double y_ = 0;
  std::vector<Group> pages_;
};

std::string before_of(const MarginNote& note) {
  return note.kind == NoteKind::start ? "1" : note.before;
}

std::string words_of(const MarginNote& note) {
  return note.kind == NoteKind::start ? fmt::format("{}: {}", note.heading, note.words) : note.words;
}

// In the order of knitting, which on a loop isn't that of the lines; the overlap is on the cover.
std::vector<MarginNote> listed_notes(const CardLayout& layout, const CardNotes& notes) {
  auto all = notes_beside(layout, notes);
  std::erase_if(all, [](const MarginNote& note) { return note.kind == NoteKind::overlap; });
  std::ranges::stable_sort(all, {}, &MarginNote::number);
  return all;
}

} // namespace

std::vector<Group> list_of_actions(const CardJob& job, const std::vector<CardLayout>& layouts,
                                   const std::vector<CardPage>& pages, const PageFrame& frame) {
  std::vector<std::size_t> cards;
  for (const CardPage& page : pages) {
    if (page.margin.told != Told::in_full && (cards.empty() || cards.back() != page.card)) {
      cards.push_back(page.card);
    }
  }
  double numbers = 0;
  for (const std::size_t card : cards) {
    for (const MarginNote& note : listed_notes(layouts[card], job.notes)) {
      numbers = std::max(numbers, width_of(before_of(note), type, true));
    }
  }
  ListPages list(frame, numbers);
  for (const std::size_t card : cards) {
    const CardLayout& layout = layouts[card];
    list.heading(layouts.size() == 1 ? tr("Before row")
                                     : said("Card {} of {}: before row", layout.card().number, layouts.size()));
    for (const MarginNote& note : listed_notes(layout, job.notes)) {
      list.entry(before_of(note), words_of(note));
    }
  }
  return list.take();
}

} // namespace punchwright
