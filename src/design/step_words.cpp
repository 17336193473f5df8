// The rows of a step are those of the differences that it keeps.
#include "design/step_words.hpp"

#include "design/words.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <fmt/format.h>
#include <optional>
#include <string_view>
#include <vector>

namespace punchwright {
namespace {

// Names that hold another one, from "{" to "}".
constexpr std::array holding_names = {noted("set down \"{}\""), noted("set down “{}”"), noted("lay out: {}")};

struct Rows {
  int first = 0; // from 1
  int last = 0;
};

// From the lowest to the highest; where they go round the upper edge without a gap, from where they begin below it, if
// that is half of the drawing at most: what changes more has a gap where rows came out as they were, such as by a
// mirror. Ascending, each once or more.
Rows from_to(const std::vector<int>& rows, int height) {
  Rows found{rows.front(), rows.back()};
  if (found.first != 1 || found.last != height) {
    return found;
  }
  int gaps = 0;
  int between = 0; // rows of the gap
  for (std::size_t place = 1; place < rows.size(); ++place) {
    if (rows[place] > rows[place - 1] + 1) {
      ++gaps;
      between = rows[place] - rows[place - 1] - 1;
      found = {rows[place], rows[place - 1]};
    }
  }
  return gaps == 1 && 2 * between >= height ? found : Rows{1, height};
}

// Of the stitches that a step changed; nothing where it changed more than stitches, or only marks.
std::optional<Rows> rows_of(const History::Step& step) {
  std::vector<int> found;
  for (const Change& change : step.changes) {
    const auto* const rows = std::get_if<std::vector<Change::RowDifference>>(&change.content);
    if (rows == nullptr) {
      return std::nullopt;
    }
    for (const Change::RowDifference& difference : *rows) {
      found.push_back(difference.row + 1);
    }
  }
  std::ranges::sort(found);
  return found.empty() ? std::nullopt : std::optional(from_to(found, step.rows));
}

std::optional<int> number_of(std::string_view digits) {
  int number = 0;
  const auto [stop, trouble] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  return trouble == std::errc{} && stop == digits.data() + digits.size() ? std::optional(number) : std::nullopt;
}

// ", row 3", ", rows 3 to 8": the end of a kept name, taken away from it.
std::optional<Rows> take_rows(std::string_view& name) {
  constexpr std::string_view one = ", row ";
  constexpr std::string_view many = ", rows ";
  constexpr std::string_view to = " to ";
  if (const auto at = name.rfind(many); at != std::string_view::npos) {
    const std::string_view rows = name.substr(at + many.size());
    const auto parted = rows.find(to);
    const auto first = number_of(rows.substr(0, parted));
    const auto last = parted == std::string_view::npos ? std::nullopt : number_of(rows.substr(parted + to.size()));
    name = first && last ? name.substr(0, at) : name;
    return first && last ? std::optional(Rows{*first, *last}) : std::nullopt;
  }
  if (const auto at = name.rfind(one); at != std::string_view::npos) {
    const auto row = number_of(name.substr(at + one.size()));
    name = row ? name.substr(0, at) : name;
    return row ? std::optional(Rows{*row, *row}) : std::nullopt;
  }
  return std::nullopt;
}

std::string translated(const std::string& name) {
  for (const char* const holding : holding_names) {
    const std::string_view form = holding;
    const std::string_view before = form.substr(0, form.find("{}"));
    const std::string_view after = form.substr(before.size() + 2);
    if (name.size() >= before.size() + after.size() && name.starts_with(before) && name.ends_with(after)) {
      const std::string held = name.substr(before.size(), name.size() - before.size() - after.size());
      return fmt::format(fmt::runtime(tr(holding)), tr(held.c_str()));
    }
  }
  return tr(name.c_str());
}

} // namespace

std::string kept_words_of(const History::Step& step) {
  const auto rows = rows_of(step);
  std::string_view name = step.name;
  if (!rows || take_rows(name)) { // it says its rows itself
    return step.name;
  }
  return rows->first == rows->last ? fmt::format("{}, row {}", step.name, rows->first)
                                   : fmt::format("{}, rows {} to {}", step.name, rows->first, rows->last);
}

std::string step_in_words(std::string_view kept) {
  const auto rows = take_rows(kept);
  const std::string name = translated(std::string(kept));
  return rows ? name + ", " + rows_from_to(rows->first, rows->last) : name;
}

std::string words_of(const History::Step& step) {
  return step_in_words(kept_words_of(step));
}

} // namespace punchwright
