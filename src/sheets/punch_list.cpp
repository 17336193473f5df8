// One line a row, in the order in which the card is read, with the blank's own printed number beside it.
// "row 12: 1-3, 7" is read back, and stays so in every language; what is around it is for people.
#include "sheets/punch_list.hpp"

#include "sheets/sheet_words.hpp"
#include "words/words.hpp"

#include <fmt/format.h>
#include <iterator>

namespace punchwright {
namespace {

std::string heading(const CardJob& job) {
  const CardReader& reader = *job.profile.card;
  std::vector<std::string> lines;
  lines.push_back(said("Punch list: {}", job.document.title.empty() ? tr("card") : job.document.title));
  lines.push_back(said("Machine: {} ({})", job.profile.name, title_of_machine(job.profile)));
  lines.push_back(job.plan.circuits > 1 ? said("Rows on the card: {} (the circuit of {} rows, {} times)",
                                               job.plan.rows_in_all, job.plan.circuit, job.plan.circuits)
                                        : said("Rows on the card: {}", job.plan.rows_in_all));
  lines.emplace_back();
  lines.emplace_back(
      reader.turned
          ? tr("Hold the blank with its face towards you and the end that goes into the machine first up.")
          : tr("Hold the blank with its face towards you and the end that goes into the machine first down."));
  const bool column_1_left = (reader.face == CardFace::as_knitter_sees) != reader.turned;
  lines.push_back(column_1_left ? said("Column 1 is the leftmost column, column {} the rightmost one.", reader.repeat)
                                : said("Column 1 is the rightmost column, column {} the leftmost one.", reader.repeat));
  lines.emplace_back(reader.turned ? tr("Row 1 is read first; it lies just below the two overlap rows. Rows are "
                                        "counted downwards from there.")
                                   : tr("Row 1 is read first; it lies just above the two overlap rows. Rows are "
                                        "counted upwards from there."));
  if (reader.reader_offset > 0) {
    lines.push_back(said("[at n]: the number that a printed blank shows beside that row. Its numbers stand {} rows "
                         "higher than the rows\n"
                         "they mean, so that number n is in sight while row n is read.",
                         reader.reader_offset));
  }
  lines.emplace_back(reader.hole == HoleMeans::contrast ? tr("A hole is a contrast stitch.")
                                                        : tr("A hole is a main stitch."));
  return fmt::format("{}\n", fmt::join(lines, "\n"));
}

// The number that a printed blank shows beside the card's `line`-th row; every blank begins anew.
std::string blank_number(int line, int offset) {
  const int number = line - offset;
  return number >= 1 ? said("[at {}]", number) : tr("[below 1]");
}

void add_card(std::string& text, const CardJob& job, const Card& card) {
  auto out = std::back_inserter(text);
  const int repeat = job.profile.card->repeat;
  const int offset = job.profile.card->reader_offset;
  if (job.plan.cards.size() > 1) {
    text += '\n' +
            said("Card {} of {}: {}", card.number, job.plan.cards.size(),
                 rows_from_to(card.first_row, card.first_row + card.rows - 1)) +
            '\n';
  } else {
    text += '\n';
  }
  const std::string overlap = said("overlap, two rows: 1-{}", repeat) + '\n';
  text += overlap;
  for (int line = 1; line <= card.rows; ++line) {
    const int row = card.first_row + line - 1;
    const auto columns = punched_columns(job.document, job.profile, job.rows, row);
    const std::string runs = columns.empty() ? tr("no hole, a blank row") : runs_text(columns);
    fmt::format_to(out, "row {}: {}{}\n", row, runs, offset > 0 ? "   " + blank_number(line, offset) : "");
  }
  text += overlap;
}

} // namespace

std::string runs_text(const std::vector<int>& columns) {
  std::string text;
  std::size_t index = 0;
  while (index < columns.size()) {
    std::size_t end = index;
    while (end + 1 < columns.size() && columns[end + 1] == columns[end] + 1) {
      ++end;
    }
    text += text.empty() ? "" : ", ";
    text += end == index ? fmt::format("{}", columns[index]) : fmt::format("{}-{}", columns[index], columns[end]);
    index = end + 1;
  }
  return text;
}

double size_of_punch_list(const Document& document, const Profile& profile, const RowsToKnit& rows,
                          const CardPlan& plan) {
  constexpr double other_words = 50; // "row 1000000: ", the blank's number, and a share of the card's heading
  std::vector<double> of_drawn(static_cast<std::size_t>(document.grid.height()) + 1, 0.0); // rows alike are alike long
  double bytes = 0;
  for (int row = 1; row <= plan.rows_in_all; ++row) {
    const RowToKnit& to_knit = rows.rows[static_cast<std::size_t>((row - 1) % plan.circuit)];
    double& known = of_drawn[static_cast<std::size_t>(to_knit.drawn + 1)];
    if (known == 0.0) {
      known = other_words + static_cast<double>(runs_text(punched_columns(document, profile, rows, row)).size());
    }
    bytes += known;
  }
  return bytes;
}

std::string punch_list(const CardJob& job) {
  std::string text = heading(job);
  for (const Card& card : job.plan.cards) {
    add_card(text, job, card);
  }
  return text + '\n' +
         tr("Care: punches and knives on a mat, away from the body. The maker's manual goes before this list.") + '\n';
}

} // namespace punchwright
