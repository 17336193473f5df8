// One line a row, in the order in which the card is read, with the blank's own printed number beside it.
#include "sheets/punch_list.hpp"

#include "design/words.hpp"

#include <fmt/format.h>
#include <iterator>

namespace punchwright {
namespace {

std::string heading(const CardJob& job) {
  const CardReader& reader = *job.profile.card;
  std::string text;
  auto out = std::back_inserter(text);
  fmt::format_to(out, "Punch list: {}\n", job.document.title.empty() ? "card" : job.document.title);
  fmt::format_to(out, "Machine: {} ({})\n", job.profile.name, job.profile.title);
  fmt::format_to(out, "Rows on the card: {}{}\n", job.plan.rows_in_all,
                 job.plan.circuits > 1
                     ? fmt::format(" (the circuit of {} rows, {} times)", job.plan.circuit, job.plan.circuits)
                     : "");
  fmt::format_to(out, "\nHold the blank with its face towards you and the end that goes into the machine first {}.\n",
                 reader.turned ? "up" : "down");
  const bool column_1_left = (reader.face == CardFace::as_knitter_sees) != reader.turned;
  fmt::format_to(out, "Column 1 is the {} column, column {} the {} one.\n", column_1_left ? "leftmost" : "rightmost",
                 reader.repeat, column_1_left ? "rightmost" : "leftmost");
  fmt::format_to(out, "Row 1 is read first; it lies just {} the two overlap rows. Rows are counted {} from there.\n",
                 reader.turned ? "below" : "above", reader.turned ? "downwards" : "upwards");
  if (reader.reader_offset > 0) {
    fmt::format_to(out,
                   "[at n]: the number that a printed blank shows beside that row. Its numbers stand {} rows higher "
                   "than the rows\n"
                   "they mean, so that number n is in sight while row n is read.\n",
                   reader.reader_offset);
  }
  text += "A hole is a " + std::string(reader.hole == HoleMeans::contrast ? "contrast" : "main") + " stitch.\n";
  return text;
}

// The number that a printed blank shows beside the card's `line`-th row; every blank begins anew.
std::string blank_number(int line, int offset) {
  const int number = line - offset;
  return number >= 1 ? fmt::format("[at {}]", number) : "[below 1]";
}

void add_card(std::string& text, const CardJob& job, const Card& card) {
  auto out = std::back_inserter(text);
  const int repeat = job.profile.card->repeat;
  const int offset = job.profile.card->reader_offset;
  if (job.plan.cards.size() > 1) {
    fmt::format_to(out, "\nCard {} of {}: {}\n", card.number, job.plan.cards.size(),
                   first_to_last(card.first_row, card.first_row + card.rows - 1, "row", "rows"));
  } else {
    text += '\n';
  }
  const std::string overlap = fmt::format("overlap, two rows: 1-{}\n", repeat);
  text += overlap;
  for (int line = 1; line <= card.rows; ++line) {
    const int row = card.first_row + line - 1;
    const auto columns = punched_columns(job.document, job.profile, job.rows, row);
    const std::string runs = columns.empty() ? "no hole, a blank row" : runs_text(columns);
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
  text += "\nCare: punches and knives on a mat, away from the body. The maker's manual goes before this list.\n";
  return text;
}

} // namespace punchwright
