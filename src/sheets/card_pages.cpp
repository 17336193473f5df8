// Card parts placed on paper, with rulers, flap and registration crosses.
#include "sheets/card_pages.hpp"

#include "sheets/rulers.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace punchwright {
namespace {

constexpr double foot_room = 5.0;   // between the card and the ruler across
constexpr double flap_height = 8.0; // goes under the next part
constexpr double cross_at = 3.4;    // from the card's edge to a registration cross
constexpr double roll_notes = 45.0; // mm for the notes beside a card on a roll or on its own

// From the paper's free edge to the card: the ruler, then room for a cross.
double card_left(const PageFrame& frame) {
  return frame.left() + ruler_breadth + cross_room;
}
double zone_height(const PageFrame& frame) {
  return frame.height() - head_room - foot_room - ruler_breadth;
}
double least_width(double sheet_width) {
  return ruler_breadth + cross_room + sheet_width + cross_room;
}

// The strip beyond a part's upper edge that is glued under the next one.
void add_flap(std::vector<Shape>& marks, Point corner, double width, int next_part) {
  const double top = corner.y - flap_height;
  const Paint hatch = line_paint(ink::faint, 0.3);
  constexpr double apart = 3.0; // mm
  const int lines = static_cast<int>(std::ceil((width + flap_height) / apart));
  for (int line = 0; line < lines; ++line) {
    const double x = corner.x - flap_height + line * apart;
    const double from = std::max(x, corner.x);
    const double to = std::min(x + flap_height, corner.x + width);
    if (to > from) {
      marks.push_back(line_shape({from, corner.y - (from - x)}, {to, corner.y - (to - x)}, hatch));
    }
  }
  marks.push_back(PolylineShape{{corner, {corner.x, top}, {corner.x + width, top}, {corner.x + width, corner.y}},
                                false,
                                dashed_paint(ink::dark, 0.2),
                                {}});
  marks.push_back(line_shape(corner, {corner.x + width, corner.y}, line_paint(ink::dark, 0.15)));
  marks.push_back(text_shape({corner.x + width / 2, corner.y - flap_height / 2 + 1.0},
                             said("flap: glue under part {}, crosses upon crosses", next_part), 2.8, Anchor::middle));
}

void add_joints(std::vector<Shape>& marks, const CardLayout& layout, const CardPage& page, Point origin) {
  const double left = origin.x;
  const double right = origin.x + layout.width();
  if (page.number < page.parts) {
    const double y = origin.y + page.part.top;
    add_flap(marks, {left, y}, layout.width(), page.number + 1);
    add_cross(marks, {left - cross_at, y});
    add_cross(marks, {right + cross_at, y});
  }
  if (page.number > 1) {
    const double y = origin.y + page.part.bottom;
    marks.push_back(line_shape({left, y}, {right, y}, line_paint(ink::black, 0.15)));
    marks.push_back(text_shape({left + layout.width() / 2, y + 3.2},
                               said("cut along this line; lay it on the flap of part {}", page.number - 1), 2.6,
                               Anchor::middle));
    add_cross(marks, {left - cross_at, y});
    add_cross(marks, {right + cross_at, y});
  }
}

std::string title_of(const CardJob& job) {
  return job.document.title.empty() ? job.profile.name : job.document.title;
}

// `list`: the page on which the list begins.
std::string name_of_page(const CardJob& job, const CardPage& page, int list) {
  std::string text;
  if (job.plan.cards.size() > 1) {
    text += said("card {} of {}", page.card + 1, job.plan.cards.size()) + " · ";
  }
  if (page.parts > 1) {
    text += said("part {} of {}", page.number, page.parts) + " · ";
  }
  text += page.first_row <= page.last_row ? rows_from_to(page.first_row, page.last_row) + " · " : "";
  text += page.margin.told == Told::in_full ? "" : said("what is done: list on page {}", list) + " · ";
  return text + tr("print at 100 %, do not scale");
}

// The card's top left corner on the page.
Point origin_on_page(const CardPart& part, const PageFrame& frame) {
  return {card_left(frame), frame.bottom() - ruler_breadth - foot_room - part.bottom};
}

// Beside the part and, where the page has more height, above it.
NoteRoom note_room(const CardLayout& layout, const CardPart& part, const PageFrame& frame) {
  const Point origin = origin_on_page(part, frame);
  return {frame.top() + head_room - origin.y, part.bottom, frame.right() - origin.x - layout.width() - notes_gap};
}

Sheet page_sheet(const CardJob& job, const CardLayout& layout, const CardPage& page, const PageFrame& frame, int number,
                 int pages, int list) {
  Sheet sheet;
  sheet.title = job.document.title;
  const Point origin = origin_on_page(page.part, frame);
  DrawnCard drawn = draw_card(layout, job.notes, card_words(job, layout.card()), page.part, page.margin, origin,
                              CardStyle{true, false});
  Group page_marks{"page", {}};
  add_head_and_rulers(page_marks.shapes, frame, title_of(job), name_of_page(job, page, list), number, pages);
  add_joints(page_marks.shapes, layout, page, origin);
  sheet.groups.push_back(std::move(page_marks));
  sheet.groups.push_back({"cut-outline", std::move(drawn.outline)});
  sheet.groups.push_back({"cut-holes", std::move(drawn.holes)});
  sheet.groups.push_back({"marks", std::move(drawn.marks)});
  return printed_sheet(std::move(sheet), frame);
}

std::vector<CardPage> pages_of(const CardLayout& layout, std::size_t card, const std::vector<CardPart>& parts) {
  std::vector<CardPage> pages;
  for (std::size_t index = 0; index < parts.size(); ++index) {
    CardPage page{card, parts[index], static_cast<int>(index) + 1, static_cast<int>(parts.size()), 0, -1, {}};
    for (int row = layout.first_row(); row <= layout.last_row(); ++row) {
      if (page.part.holds(layout.y_of_line(layout.line_of(row)))) {
        page.first_row = page.first_row == 0 ? row : page.first_row;
        page.last_row = row;
      }
    }
    pages.push_back(page);
  }
  return pages;
}

Error too_wide(const CardJob& job, const PageFrame& frame) {
  const double sheet = job.profile.card->geometry.sheet_width;
  return Error{{},
               0,
               0,
               said("a card {} mm wide doesn't fit on this paper with its rulers ({} of {} mm)", decimal(sheet, 1),
                    decimal(least_width(sheet), 1), decimal(frame.width(), 1)),
               tr("choose paper = \"roll\" in [card], or export .svg")};
}

} // namespace

void add_head_and_rulers(std::vector<Shape>& marks, const PageFrame& frame, const std::string& title,
                         const std::string& what, int number, int pages) {
  const std::string page = said("page {} of {}", number, pages);
  const double page_width = width_of(page, 3.0, false) + 6.0;
  marks.push_back(text_shape({frame.left(), frame.top() + 3.4},
                             fitting_text(title, 3.8, true, frame.width() - page_width), 3.8, Anchor::start, true));
  marks.push_back(text_shape({frame.right(), frame.top() + 3.4}, page, 3.0, Anchor::end));
  marks.push_back(text_shape({frame.left(), frame.top() + 8.0}, fitting_text(what, 2.9, false, frame.width()), 2.9));
  const Point corner{frame.left() + ruler_breadth, frame.bottom() - ruler_breadth};
  add_ruler_across(marks, corner);
  add_ruler_up(marks, corner);
}

CardJob card_job(const Document& document, const Profile& profile) {
  return card_job(document, profile, rows_to_knit(document, profile));
}

CardJob card_job(const Document& document, const Profile& profile, RowsToKnit rows) {
  CardJob job{document, profile, std::move(rows), {}, {}};
  job.plan = card_plan(document, *profile.card, job.rows);
  job.notes = card_notes(document, profile, job.rows, job.plan);
  return job;
}

CardWords card_words(const CardJob& job, const Card& card) {
  const bool several = job.plan.cards.size() > 1;
  return {job.document.title, job.profile.name,
          several ? said("card {} of {}", card.number, job.plan.cards.size()) : std::string(),
          job.profile.card->reader_offset};
}

std::vector<CardPart> parts_of(const CardLayout& layout, double zone_height) {
  std::vector<CardPart> parts;
  const double lowest_line = std::max(layout.y_of_line(0), layout.y_of_line(layout.lines() - 1));
  double bottom = layout.height();
  while (bottom > zone_height + 1e-9) {
    // The highest boundary, half-way between two lines, that this page still reaches with a flap above it.
    const double reach = bottom - (zone_height - flap_height);
    const int line = static_cast<int>(std::floor((lowest_line - reach) / layout.row_pitch() - 0.5 + 1e-9));
    const double top = lowest_line - (line + 0.5) * layout.row_pitch();
    if (line < 0 || top >= bottom - layout.row_pitch() / 2) {
      return {};
    }
    parts.push_back({top, bottom});
    bottom = top;
  }
  parts.push_back({0, bottom});
  return parts;
}

Result<std::vector<Sheet>> card_pages(const CardJob& job, std::optional<int> only_card) {
  const CardWishes& wishes = job.document.card;
  const bool roll = wishes.paper == Paper::roll;
  const PageFrame cover_frame = frame_for(wishes.paper, wishes.scale_x, wishes.scale_y);
  const double sheet_width = job.profile.card->geometry.sheet_width;
  if (!roll && least_width(sheet_width) > cover_frame.width()) {
    return too_wide(job, cover_frame);
  }
  std::vector<CardPage> pages;
  std::vector<CardLayout> layouts;
  for (const Card& card : job.plan.cards) {
    layouts.emplace_back(job.document, job.profile, job.rows, card);
    const CardLayout& layout = layouts.back();
    if (only_card && *only_card != card.number) {
      continue;
    }
    const auto parts = roll ? std::vector<CardPart>{{0, layout.height()}} : parts_of(layout, zone_height(cover_frame));
    if (parts.empty()) {
      return Error{
          {}, 0, 0, tr("not even one row of the card fits on this paper"), tr("choose paper = \"roll\" in [card]")};
    }
    for (const CardPage& page : pages_of(layout, layouts.size() - 1, parts)) {
      pages.push_back(page);
    }
  }
  const auto frame_of = [&](const CardPage& page) {
    const double card_and_ruler = std::max(layouts[page.card].height() + foot_room, ruler_length) + ruler_breadth;
    return roll ? roll_frame(least_width(sheet_width) + roll_notes, head_room + card_and_ruler, wishes.scale_x,
                             wishes.scale_y)
                : cover_frame;
  };
  for (CardPage& page : pages) {
    const CardLayout& layout = layouts[page.card];
    page.margin =
        margin_column(notes_beside(layout, job.notes, page.part), note_room(layout, page.part, frame_of(page)));
  }
  auto lists = list_of_actions(job, layouts, pages, cover_frame);
  const int first_list = static_cast<int>(pages.size()) + 2;
  const int count = first_list - 1 + static_cast<int>(lists.size());
  std::vector<Sheet> sheets;
  sheets.reserve(static_cast<std::size_t>(count));
  sheets.push_back(printed_sheet(cover_sheet(job, pages, static_cast<int>(lists.size()), cover_frame), cover_frame));
  for (const CardPage& page : pages) {
    sheets.push_back(page_sheet(job, layouts[page.card], page, frame_of(page), static_cast<int>(sheets.size()) + 1,
                                count, first_list));
  }
  for (Group& list : lists) {
    add_head_and_rulers(list.shapes, cover_frame, title_of(job), tr("what is done before which row"),
                        static_cast<int>(sheets.size()) + 1, count);
    Sheet sheet;
    sheet.title = job.document.title;
    sheet.groups.push_back(std::move(list));
    sheets.push_back(printed_sheet(std::move(sheet), cover_frame));
  }
  return sheets;
}

Sheet card_on_its_own(const CardJob& job, const Card& card) {
  constexpr double rim = 5.0; // around the card's outline, so that the whole stroke is seen
  const CardLayout layout(job.document, job.profile, job.rows, card);
  Sheet sheet;
  sheet.title = job.document.title;
  const GrownColumn grown =
      margin_column_in_full(notes_beside(layout, job.notes), {0, layout.height(), roll_notes - rim});
  sheet.width = rim + layout.width() + notes_gap + grown.room.width + rim;
  sheet.height = grown.room.bottom + 2 * rim;
  DrawnCard drawn = draw_card(layout, job.notes, card_words(job, card), {0, layout.height()}, grown.column, {rim, rim},
                              CardStyle{false, true});
  sheet.groups.push_back({"cut-outline", std::move(drawn.outline)});
  sheet.groups.push_back({"cut-holes", std::move(drawn.holes)});
  sheet.groups.push_back({"marks", std::move(drawn.marks)});
  return sheet;
}

} // namespace punchwright
