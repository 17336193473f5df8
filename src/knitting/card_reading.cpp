// Holes to rows of bits, the machine's way: the card goes in with its first row foremost, and its columns meet needles.
#include "knitting/card_reading.hpp"

#include "words/words.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace punchwright {
namespace {

constexpr double nearest = 0.3; // of a pitch: how far beside its place a hole is still felt
constexpr int joining_rows = 2; // fully punched, at each end: common practice
constexpr int most_rows = 2'000'000;

// "1-3, 7": where the text goes on with something else, that is the end.
class RunReader {
public:
  RunReader(std::string_view text, int columns) : text_(text), columns_(columns) {}

  // False: a column that the card has not.
  bool read(std::vector<int>& columns) {
    while (const auto first = number()) {
      int last = *first;
      skip_spaces();
      if (take('-')) {
        const auto end = number();
        if (!end) {
          return false;
        }
        last = *end;
      }
      if (*first < 1 || last < *first || last > columns_) {
        return false;
      }
      for (int column = *first; column <= last; ++column) {
        columns.push_back(column);
      }
      skip_spaces();
      if (!take(',')) {
        break;
      }
    }
    return true;
  }

  std::optional<int> number() {
    skip_spaces();
    int value = 0;
    const auto [end, error] = std::from_chars(text_.data(), text_.data() + text_.size(), value);
    if (error != std::errc{}) {
      return std::nullopt;
    }
    text_.remove_prefix(static_cast<std::size_t>(end - text_.data()));
    return value;
  }
  bool take(char wanted) {
    if (text_.empty() || text_.front() != wanted) {
      return false;
    }
    text_.remove_prefix(1);
    return true;
  }

private:
  void skip_spaces() {
    while (!text_.empty() && (text_.front() == ' ' || text_.front() == '\t')) {
      text_.remove_prefix(1);
    }
  }
  std::string_view text_;
  int columns_;
};

} // namespace

Result<PunchedCard> read_card(const std::vector<HolePlace>& holes, double width, double height,
                              const CardReader& reader) {
  const CardGeometry& size = reader.geometry;
  const int lines = static_cast<int>(std::lround((height - 2 * size.first_row) / size.row_pitch)) + 1;
  const int rows = lines - 2 * joining_rows;
  if (rows < 1 || std::abs(width - size.sheet_width) > size.stitch_pitch) {
    return Error{
        {}, 0, 0, said("a sheet of {} × {} mm is no card of this machine", decimal(width, 1), decimal(height, 1)), ""};
  }
  PunchedCard card(reader.repeat, rows);
  for (const HolePlace& hole : holes) {
    // As it goes in: the end that is read first below.
    const double x = reader.turned ? width - hole.x : hole.x;
    const double up = reader.turned ? hole.y : height - hole.y;
    const double across = reader.face == CardFace::as_knitter_sees ? x : width - x; // from column 1's edge
    const double column = (across - size.column_1) / size.stitch_pitch + 1;
    const double line = (up - size.first_row) / size.row_pitch;
    const int whole_column = static_cast<int>(std::lround(column));
    const int row = static_cast<int>(std::lround(line)) - joining_rows + 1;
    if (std::abs(column - whole_column) <= nearest && std::abs(line - std::round(line)) <= nearest &&
        whole_column >= 1 && whole_column <= reader.repeat && row >= 1 && row <= rows) {
      card.set(row, whole_column, true);
    }
  }
  return card;
}

PunchedCard joined_cards(const std::vector<PunchedCard>& cards) {
  int rows = 0;
  for (const PunchedCard& card : cards) {
    rows += card.rows();
  }
  PunchedCard all(cards.empty() ? 0 : cards.front().columns(), rows);
  int below = 0;
  for (const PunchedCard& card : cards) {
    for (int row = 1; row <= card.rows(); ++row) {
      for (int column = 1; column <= card.columns(); ++column) {
        all.set(below + row, column, card.at(row, column));
      }
    }
    below += card.rows();
  }
  return all;
}

Result<PunchedCard> read_punch_list(std::string_view text, const std::string& name, int columns) {
  std::vector<std::pair<int, std::vector<int>>> rows;
  int line_number = 0;
  int highest = 0;
  while (!text.empty()) {
    ++line_number;
    const auto end = text.find('\n');
    std::string_view line = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    if (!line.starts_with("row ")) {
      continue;
    }
    line.remove_prefix(4);
    RunReader reader(line, columns);
    const auto row = reader.number();
    if (!row || *row < 1 || *row > most_rows || !reader.take(':')) {
      return Error{name, line_number, 0, tr("this is no row of a punch list"), tr("write \"row 12: 1-3, 7\"")};
    }
    std::vector<int> punched;
    if (!reader.read(punched)) {
      return Error{name, line_number, 0, said("row {} names a column that the card has not", *row),
                   said("columns 1 to {} are allowed", columns)};
    }
    highest = std::max(highest, *row);
    rows.emplace_back(*row, std::move(punched));
  }
  if (rows.empty()) {
    return Error{name, 0, 0, tr("the punch list has no rows"), tr("write lines like \"row 12: 1-3, 7\"")};
  }
  // A row's number far beyond all others is a slip of the finger, and would take the memory of a card of that length.
  if (highest > most_rows / 100 && highest > 10 * static_cast<int>(rows.size())) {
    return Error{name, 0, 0, said("row {} lies far beyond the {} rows of the list", highest, rows.size()),
                 tr("number the rows from 1")};
  }
  PunchedCard card(columns, highest);
  for (const auto& [row, punched] : rows) {
    for (const int column : punched) {
      card.set(row, column, true);
    }
  }
  return card;
}

} // namespace punchwright
