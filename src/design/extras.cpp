// Comments beside rows follow their rows when rows come, go or change places.
// A comment outlives its row: it moves to the next row below.
#include "design/extras.hpp"

#include <charconv>
#include <optional>
#include <string_view>

namespace punchwright {
namespace {

constexpr std::string_view row_place = "repeat.rows.";
constexpr std::string_view rows_end = "repeat.rows.$";

// The row, from 0, of "repeat.rows.17".
std::optional<int> row_of(std::string_view place) {
  if (!place.starts_with(row_place)) {
    return std::nullopt;
  }
  const std::string_view digits = place.substr(row_place.size());
  int number = 0;
  const auto [stop, trouble] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  if (trouble != std::errc{} || stop != digits.data() + digits.size()) {
    return std::nullopt;
  }
  return number - 1;
}

std::string place_of(int row) {
  return std::string(row_place) + std::to_string(row + 1);
}

std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  return first == std::string_view::npos ? std::string() : std::string(text.substr(first));
}

} // namespace

Extras extras_for_rows(const Extras& extras, const std::vector<int>& sources) {
  std::map<int, int> now_at; // old row → lowest new row that shows it
  for (std::size_t row = sources.size(); row-- > 0;) {
    if (sources[row] >= 0) {
      now_at[sources[row]] = static_cast<int>(row);
    }
  }
  // The place of the nearest old row below `row` that is left.
  const auto place_below = [&](int row) {
    const auto above = now_at.lower_bound(row);
    return above == now_at.begin() ? std::string(rows_end) : place_of(std::prev(above)->second);
  };

  Extras moved;
  moved.unknown = extras.unknown;
  std::map<int, std::vector<std::string>> before_row; // by old row
  for (const auto& [place, lines] : extras.comments_before) {
    if (const auto row = row_of(place)) {
      before_row[*row] = lines;
    } else {
      moved.comments_before[place] = lines;
    }
  }
  for (const auto& [place, comment] : extras.comments_after) {
    const auto row = row_of(place);
    if (!row) {
      moved.comments_after[place] = comment;
    } else if (const auto found = now_at.find(*row); found != now_at.end()) {
      moved.comments_after[place_of(found->second)] = comment;
    } else {
      before_row[*row].push_back(trimmed(comment));
    }
  }
  // From the lowest row up, each put before what is there already: higher rows stand earlier in the file.
  for (const auto& [row, lines] : before_row) {
    const auto found = now_at.find(row);
    auto& there = moved.comments_before[found != now_at.end() ? place_of(found->second) : place_below(row)];
    there.insert(there.begin(), lines.begin(), lines.end());
  }
  return moved;
}

} // namespace punchwright
