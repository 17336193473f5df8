// The cover of a card template: the size check first, since a card that is 1 % out doesn't run; then how to make the
// card and what is done while it is knitted.
#include "sheets/card_pages.hpp"
#include "sheets/cover_frame.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/text_column.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {
namespace {

std::string pages_text(int first, int last) {
  return first == last ? said("page {}", first) : said("pages {} to {}", first, last);
}

std::string list_words(const std::string& lists) {
  return said("{}: list of what is done before which row", lists);
}

void add_pages(TextColumn& column, const CardJob& job, const std::vector<CardPage>& pages, const std::string& lists) {
  column.heading(tr("What each page holds"));
  column.item(tr("page 1: this page"));
  std::size_t index = 0;
  while (index < pages.size()) {
    std::size_t end = index;
    while (end < pages.size() && pages[end].card == pages[index].card) {
      ++end;
    }
    const Card& card = job.plan.cards[pages[index].card];
    std::string held = rows_from_to(card.first_row, card.first_row + card.rows - 1);
    if (job.plan.cards.size() > 1) {
      held = said("card {}, {}", card.number, held);
    }
    if (end - index > 1) {
      held = said("{}, from the lower end upwards", held);
    }
    const std::string text =
        fmt::format("{}: {}", pages_text(static_cast<int>(index) + 2, static_cast<int>(end) + 1), held);
    // The last line that fits says that there is more.
    const double below = lists.empty() ? 0.0 : column.height_of_item(list_words(lists));
    if (column.room() < 9.0 + below && end < pages.size()) {
      column.item(said("… and so on up to page {}, card {}", pages.size() + 1, job.plan.cards.size()));
      break;
    }
    column.item(text);
    index = end;
  }
  if (!lists.empty()) {
    column.item(list_words(lists));
  }
}

void add_making(TextColumn& column, const CardJob& job, bool parts) {
  column.heading(tr("Making the card"));
  if (parts) {
    column.item(tr("Cut the upper page along its lower line and glue it onto the flap of the page below, crosses upon "
                   "crosses, before you punch."));
  }
  column.item(tr("Lay the sheet on the blank, edge upon edge, and punch every ring: the dark point is for the punch. "
                 "Dots stay whole."));
  column.item(tr("Two fully punched rows at each end: laid over the other end's rows they let its pattern show "
                 "through. Front end over the back, clips through the corner holes."));
  if (job.plan.cards.size() > 1) {
    column.item(said("There are {} cards. Join each card's last end to the next card's first end in the same way.",
                     job.plan.cards.size()));
  }
  if (job.plan.loop) {
    const int times = job.document.piece.times;
    column.item(job.plan.circuits > 1
                    ? said_count(times,
                                 "Join the card's two ends into a loop. It holds the circuit of {1} rows {2} times "
                                 "over, since a shorter loop doesn't run round; the circuit is knitted {0} time.",
                                 "Join the card's two ends into a loop. It holds the circuit of {1} rows {2} times "
                                 "over, since a shorter loop doesn't run round; the circuit is knitted {0} times.",
                                 job.plan.circuit, job.plan.circuits)
                    : said_count(times,
                                 "Join the card's two ends into a loop. The circuit of {1} rows is knitted {0} time.",
                                 "Join the card's two ends into a loop. The circuit of {1} rows is knitted {0} times.",
                                 job.plan.circuit));
  }
}

void add_numbers(TextColumn& column, const CardJob& job) {
  const int offset = job.profile.card->reader_offset;
  column.heading(tr("Row numbers"));
  if (offset == 0) {
    column.item(tr("The number beside a row is the row to knit for which it is read."));
    return;
  }
  column.item(said("You see a line {0} rows above the one that is read, so number n stands {0} rows above row n: it "
                   "is in sight while row n is read.",
                   offset));
  if (job.plan.loop) {
    column.item(tr("At the card's beginning stand the last numbers, since the loop goes on there."));
  } else if (job.notes.last_number < job.plan.rows_in_all) {
    const int first = job.notes.last_number + 1;
    column.item(first == job.plan.rows_in_all
                    ? said("The card ends before number {} would come in sight; it has no line on it.", first)
                    : said("The card ends before numbers {} to {} would come in sight; they have no line on it.", first,
                           job.plan.rows_in_all));
  }
}

// All of it or a word on where it stands: half a list would be worse than none.
void add_actions(TextColumn& column, const CardJob& job, const std::string& lists) {
  column.heading(tr("Before which row"));
  std::vector<std::string> lines;
  for (const auto& [row, text] : job.notes.all) {
    lines.push_back(fmt::format("{}: {}", row, text));
  }
  if (!job.notes.at_end.empty()) {
    lines.push_back(end_words(job.notes) + ": " + job.notes.at_end);
  }
  double height = 0;
  constexpr double size = 2.8;
  for (const std::string& line : lines) {
    height += column.height_of_item(line, size);
  }
  if (height > column.room()) {
    column.paragraph(
        lists.empty()
            ? said("{} places, too many to list here: each stands in the card's margin. All of them are in the needle "
                   "chart.",
                   lines.size())
            : said("{} places, too many to list here: each stands in the card's margin or, where there is no room for "
                   "it, in the list on {}. All of them are in the needle chart.",
                   lines.size(), lists));
    return;
  }
  for (const std::string& line : lines) {
    column.item(line, size);
  }
  if (lines.empty()) {
    column.paragraph(tr("Nothing is changed while this card is knitted."));
  }
}

// "sheet width 142 mm: from memory" and its like, gathered: "from memory: sheet width 142 mm, row pitch 5 mm".
std::vector<std::string> by_source(const std::vector<std::string>& sentences) {
  std::vector<std::pair<std::string, std::string>> sources; // source, values
  for (const std::string& sentence : sentences) {
    const std::size_t colon = std::min(sentence.find(": "), sentence.size());
    const std::string value = sentence.substr(0, colon);
    const std::string source = sentence.substr(std::min(colon + 2, sentence.size()));
    const auto found = std::ranges::find(sources, source, &std::pair<std::string, std::string>::first);
    if (found == sources.end()) {
      sources.emplace_back(source, value);
    } else {
      found->second += ", " + value;
    }
  }
  std::vector<std::string> gathered;
  for (const auto& [source, values] : sources) {
    gathered.push_back(source.empty() ? values : source + ": " + values);
  }
  return gathered;
}

void add_unsure(TextColumn& column, const Profile& profile) {
  const auto values = unsure_values(profile);
  column.heading(tr("Measure your blank"));
  if (values.empty()) {
    column.paragraph(tr("All sizes of this profile were measured or come from a named source. Still hold a blank "
                        "against the print before you punch."),
                     2.5);
    return;
  }
  column.paragraph(tr("These values of the profile are not certain. Hold your own blank against the print; where it "
                      "differs, measure it and put the readings into the profile."),
                   2.5);
  const std::vector<std::string> lines = by_source(values);
  const std::string more = tr("… and more: see the machine's panel in the editor");
  for (std::size_t index = 0; index < lines.size(); ++index) {
    const double below = index + 1 < lines.size() ? column.height_of_item(more, 2.4) : 0.0;
    if (column.height_of_item(lines[index], 2.4) + below > column.room()) {
      column.item(more, 2.4);
      return;
    }
    column.item(lines[index], 2.4);
  }
}

void add_care(TextColumn& column) {
  column.heading(tr("Care"));
  column.item(tr("Punches and knives: on a mat, away from the body."), 2.7);
  column.item(tr("Weights come off before the work does."), 2.7);
  column.item(tr("The maker's manual goes before this sheet."), 2.7);
}

} // namespace

Sheet cover_sheet(const CardJob& job, const std::vector<CardPage>& pages, int list_pages, const PageFrame& frame) {
  const int card_pages = static_cast<int>(pages.size()) + 1; // with this one
  const std::string lists = list_pages == 0 ? "" : pages_text(card_pages + 1, card_pages + list_pages);
  Sheet sheet;
  sheet.title = job.document.title;
  Group marks{"page", {}};
  const std::string title = job.document.title.empty() ? tr("Card template") : job.document.title;
  const CoverAreas areas = add_cover_frame(marks.shapes, frame, title,
                                           said("card template · {} · {} · {}", rows_counted(job.plan.rows_in_all),
                                                job.profile.name, title_of_machine(job.profile)),
                                           card_pages + list_pages);
  bool parts = false;
  for (const CardPage& page : pages) {
    parts = parts || page.parts > 1;
  }
  auto upper_left = areas.column(marks.shapes, areas.upper_left);
  add_pages(upper_left, job, pages, lists);
  add_numbers(upper_left, job);
  auto upper_right = areas.column(marks.shapes, areas.upper_right);
  add_actions(upper_right, job, lists);
  auto beside = areas.column(marks.shapes, areas.beside_square);
  add_making(beside, job, parts);
  auto below_left = areas.column(marks.shapes, areas.below_left);
  add_unsure(below_left, job.profile);
  auto below_right = areas.column(marks.shapes, areas.below_right);
  add_care(below_right);
  sheet.groups.push_back(std::move(marks));
  return sheet;
}

} // namespace punchwright
