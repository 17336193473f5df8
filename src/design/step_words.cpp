// The rows of a step are those of the differences that it keeps, from the lowest to the highest.
#include "design/step_words.hpp"

#include "design/words.hpp"

#include <algorithm>

namespace punchwright {

std::string words_of(const History::Step& step) {
  int first = -1;
  int last = -1;
  for (const Change& change : step.changes) {
    const auto* const rows = std::get_if<std::vector<Change::RowDifference>>(&change.content);
    if (rows == nullptr) {
      return step.name;
    }
    for (const Change::RowDifference& difference : *rows) {
      first = first < 0 ? difference.row : std::min(first, difference.row);
      last = std::max(last, difference.row);
    }
  }
  return first < 0 ? step.name : step.name + ", " + first_to_last(first + 1, last + 1, "row", "rows");
}

} // namespace punchwright
