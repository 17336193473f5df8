// The question page of the orientation swatch, in front of its card: eight pictures, one of which the knitted piece is.
#include "sheets/card_pages.hpp"
#include "sheets/output_names.hpp"
#include "sheets/page_files.hpp"
#include "sheets/pages.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/swatch_answers.hpp"
#include "sheets/text_column.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr double widest_stitch = 2.4; // mm, in the pictures
constexpr double row_to_stitch = 0.8; // the usual proportion of a row's height to a stitch's width

// The picture of a knitted result, its top left corner at `corner`.
void add_picture(std::vector<Shape>& shapes, const Grid& seen, Point corner, double stitch, double row) {
  RectangleShape ground;
  ground.corner = corner;
  ground.width = stitch * seen.width();
  ground.height = row * seen.height();
  ground.paint = Paint{ink::middle, 0.2, ink::wash, false};
  shapes.push_back(ground);
  for (int index = 0; index < seen.height(); ++index) {
    for (int column = 0; column < seen.width();) {
      int end = column;
      while (end < seen.width() && seen.at(end, index)) {
        ++end;
      }
      if (end > column) {
        RectangleShape run;
        run.corner = {corner.x + stitch * column, corner.y + row * (seen.height() - 1 - index)};
        run.width = stitch * (end - column);
        run.height = row;
        run.paint = fill_paint(ink::dark);
        shapes.push_back(run);
      }
      column = std::max(end, column + 1);
    }
  }
}

std::string meaning_of(const Profile& profile, const SwatchAnswer& answer) {
  const Profile after = profile_after_swatch(profile, answer);
  std::vector<std::string> changes;
  if (after.card->face != profile.card->face) {
    changes.emplace_back(after.card->face == CardFace::as_knitter_sees ? tr("the face shows the purl side")
                                                                       : tr("the face shows the knit side"));
  }
  if (after.card->turned != profile.card->turned) {
    changes.emplace_back(after.card->turned ? tr("the card goes in by its other end")
                                            : tr("the card goes in by its lower end"));
  }
  if (after.card->hole != profile.card->hole) {
    changes.emplace_back(after.card->hole == HoleMeans::contrast ? tr("a hole is contrast") : tr("a hole is main"));
  }
  std::string text;
  for (const std::string& change : changes) {
    text += (text.empty() ? "" : "; ") + change;
  }
  return text.empty() ? tr("The profile is right. Nothing to change.") : said("On this machine: {}.", text);
}

void add_answers(std::vector<Shape>& shapes, const Profile& profile, const Grid& drawn, const PageFrame& frame,
                 double top) {
  const double column_width = frame.width() / 4;
  const double stitch = std::min(widest_stitch, (column_width - 5) / drawn.width());
  const double row = stitch * row_to_stitch;
  const double block = (frame.bottom() - top) / 2;
  for (int number = 1; number <= swatch_answers; ++number) {
    const SwatchAnswer answer = swatch_answer(number);
    const int place = number - 1;
    const int line = place / 4;
    const Point corner{frame.left() + column_width * (place % 4), top + block * line};
    shapes.push_back(text_shape({corner.x, corner.y + 6.5}, fmt::format("{}", number), 8.0, Anchor::start, true));
    TextColumn title(shapes, {corner.x + 8.5, corner.y + 0.5}, column_width - 11, corner.y + 8.5);
    title.paragraph(words_of(answer), 2.8, true);
    add_picture(shapes, swatch_seen(drawn, answer), {corner.x, corner.y + 9.5}, stitch, row);
    TextColumn meaning(shapes, {corner.x, corner.y + 11 + row * drawn.height()}, column_width - 4, corner.y + block);
    meaning.paragraph(meaning_of(profile, answer), 2.5);
  }
}

Sheet question_sheet(const Document& swatch, const Profile& profile, const PageFrame& frame) {
  Sheet sheet;
  sheet.title = swatch.title;
  Group page{"page", {}};
  auto& shapes = page.shapes;
  shapes.push_back(
      text_shape({frame.left(), frame.top() + 5.6}, tr("Which of these did you knit?"), 7.0, Anchor::start, true));
  shapes.push_back(
      text_shape({frame.left(), frame.top() + 11.4},
                 fitting_text(said("orientation swatch · {} · {}", profile.name, title_of_machine(profile)), 3.1, false,
                              frame.width()),
                 3.1, Anchor::start, false, ink::dark));
  TextColumn text(shapes, {frame.left(), frame.top() + 16}, frame.width(), frame.bottom());
  text.paragraph(
      tr("Machines differ in which side of a card faces the knitter, in which end goes in first and in what a hole "
         "means. This swatch finds it out, once for each machine."),
      3.0);
  text.gap(1.5);
  text.item(said("Punch the card on the following pages and knit its {} rows on the {} needles of the card's repeat, "
                 "with a light main yarn and a dark contrast.",
                 swatch.grid.height(), swatch.grid.width()),
            3.0);
  text.item(tr("Take it off and look at the knit side (the smooth one), cast-on edge down."), 3.0);
  text.item(
      tr("Find the picture that it matches. Type its number into the editor's machine panel, and the profile is set; "
         "from then on every card comes out right."),
      3.0);
  text.item(tr("Colours changed? See first whether the two yarns sat in each other's feeders: then it isn't the card."),
            3.0);
  add_answers(shapes, profile, swatch.grid, frame, text.y() + 6);
  sheet.groups.push_back(std::move(page));
  return printed_sheet(std::move(sheet), frame);
}

} // namespace

std::string words_of(const SwatchAnswer& answer) {
  std::string text;
  const auto add = [&](bool so, const char* words) {
    if (so) {
      text += text.empty() ? "" : ", ";
      text += words;
    }
  };
  add(answer.mirrored, tr("mirrored"));
  add(answer.upside_down, tr("upside down"));
  add(answer.inverted, tr("colours changed"));
  return text.empty() ? tr("as drawn") : text;
}

Grid swatch_seen(const Grid& drawn, const SwatchAnswer& answer) {
  Grid seen(drawn.width(), drawn.height());
  for (int row = 0; row < drawn.height(); ++row) {
    for (int column = 0; column < drawn.width(); ++column) {
      const bool contrast = drawn.at(column, row) != answer.inverted;
      seen.set(answer.mirrored ? drawn.width() - 1 - column : column,
               answer.upside_down ? drawn.height() - 1 - row : row, contrast);
    }
  }
  return seen;
}

Result<std::vector<Sheet>> pages_of_swatch(const Profile& profile, Paper paper) {
  if (!profile.card) {
    return Error{{},
                 0,
                 0,
                 said("the machine '{}' reads no card, so there is nothing to find out", profile.name),
                 tr("choose a machine with a card")};
  }
  Document swatch = swatch_document(profile);
  swatch.card.paper = paper;
  auto pages = card_pages(card_job(swatch, profile));
  if (!pages) {
    return pages.error();
  }
  std::vector<Sheet> all = {question_sheet(swatch, profile, frame_for(paper, 1, 1))};
  all.insert(all.end(), pages->begin(), pages->end());
  return all;
}

Result<std::vector<OutputFile>> swatch_files(const Profile& profile, Paper paper, const std::string& path) {
  const std::string extension = extension_in(path);
  if (profile.card && extension != ".pdf" && extension != ".png") {
    return Error{
        {}, 0, 0, said("the orientation swatch can't be written as '{}'", extension), tr("allowed: .pdf, .png")};
  }
  const auto pages = pages_of_swatch(profile, paper);
  return pages ? files_of_pages(*pages, path) : Result<std::vector<OutputFile>>(pages.error());
}

} // namespace punchwright
