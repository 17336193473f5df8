// Two fabrics held against each other, from the bottom upwards.
#include "diagnosis/visible.hpp"

#include "words/words.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace punchwright {
namespace {

constexpr char missing = '\1';

// A fabric as rows of yarns, over the piece alone.
class Seen {
public:
  Seen(const Fabric& fabric, Needle first, Needle last) {
    for (int row = 0; row < fabric.rows(); ++row) {
      std::string text;
      for (Needle needle = first; needle <= last; ++needle.position) {
        const Made& cell = fabric.at(row, needle);
        text += cell.missing || cell.yarn == 0 ? missing : cell.yarn;
      }
      rows.push_back(std::move(text));
      loose.push_back(fabric.loose(row));
    }
  }
  std::vector<std::string> rows;
  std::vector<std::vector<char>> loose;
};

bool one_colour(const std::string& row) {
  return row.find_first_not_of(row.front()) == std::string::npos;
}

class Holding {
public:
  Holding(const Seen& planned, const Seen& real) : planned_(planned.rows), real_(real.rows), seen_(real) {
    const std::size_t both = std::min(planned_.size(), real_.size());
    while (first_ < both && planned_[first_] == real_[first_]) {
      ++first_;
    }
    same_ = first_ == planned_.size() && first_ == real_.size();
    loose_ = seen_.loose != planned.loose;
  }

  VisibleFault fault() {
    if (same_) {
      return {loose_ ? Visible::loose_yarn : Visible::nothing, loose_ ? 0 : -1, 0};
    }
    const int row = static_cast<int>(first_);
    if (one_row_only()) {
      return {Visible::one_row_only, row, 0};
    }
    if (twice_tall()) {
      return {Visible::twice_tall, row, 0};
    }
    if (const auto dropped = what_dropped()) {
      return {*dropped, row, 0};
    }
    if (const int less = rows_less(); less > 0) {
      return {Visible::row_missing, row, less};
    }
    if (const int more = rows_more(); more > 0) {
      return {Visible::row_too_many, row, more};
    }
    if (from_here([](const std::string& one) { return one_colour(one); })) {
      return {everywhere(main()) ? Visible::no_pattern : Visible::all_contrast, row, 0};
    }
    if (const int off = pattern_off(); off != 0) {
      return {Visible::motif_low, row, off};
    }
    if (contrast_row()) {
      return {Visible::all_contrast, row, 0};
    }
    return {Visible::wrong_pattern, row, 0};
  }

private:
  [[nodiscard]] char main() const { return planned_.front().front(); }

  template <class Test> [[nodiscard]] bool from_here(Test&& test) const {
    return first_ < real_.size() && std::all_of(real_.begin() + static_cast<std::ptrdiff_t>(first_), real_.end(), test);
  }

  [[nodiscard]] bool everywhere(char yarn) const {
    return from_here([&](const std::string& row) { return row.front() == yarn; });
  }

  [[nodiscard]] std::optional<Visible> what_dropped() const {
    bool any = false;
    bool within = false;
    for (const std::string& row : real_) {
      for (std::size_t stitch = 0; stitch < row.size(); ++stitch) {
        if (row[stitch] == missing) {
          any = true;
          within = within || (stitch != 0 && stitch + 1 != row.size());
        }
      }
    }
    return any ? std::optional(within ? Visible::dropped_stitches : Visible::dropped_ends) : std::nullopt;
  }

  // The planned rows without some, from the first that differs on.
  [[nodiscard]] int rows_less() const {
    const auto less = static_cast<std::ptrdiff_t>(planned_.size()) - static_cast<std::ptrdiff_t>(real_.size());
    const auto at = static_cast<std::ptrdiff_t>(first_);
    return less > 0 && std::equal(real_.begin() + at, real_.end(), planned_.begin() + at + less)
               ? static_cast<int>(less)
               : 0;
  }

  [[nodiscard]] int rows_more() const {
    const auto more = static_cast<std::ptrdiff_t>(real_.size()) - static_cast<std::ptrdiff_t>(planned_.size());
    const auto at = static_cast<std::ptrdiff_t>(first_);
    return more > 0 && std::equal(planned_.begin() + at, planned_.end(), real_.begin() + at + more)
               ? static_cast<int>(more)
               : 0;
  }

  // Rows below the first dropped stitch.
  [[nodiscard]] std::size_t whole_rows() const {
    const auto with_gap =
        std::ranges::find_if(real_, [](const std::string& row) { return row.find(missing) != std::string::npos; });
    return static_cast<std::size_t>(with_gap - real_.begin());
  }

  // Counted where there is a pattern: mostly a row is followed by itself, and was not drawn so.
  [[nodiscard]] bool twice_tall() const {
    const auto [pairs, twice] = pairs_in(real_, whole_rows());
    const auto [planned_pairs, planned_twice] = pairs_in(planned_, std::min(whole_rows(), planned_.size()));
    return pairs > 1 && twice * 4 >= pairs * 3 && planned_twice * 2 < planned_pairs;
  }

  // Pairs of pattern rows, one above the other, and how many of them are alike.
  [[nodiscard]] std::pair<int, int> pairs_in(const std::vector<std::string>& rows, std::size_t end) const {
    int pairs = 0;
    int twice = 0;
    std::size_t row = first_ > 0 ? first_ - 1 : 0; // the row below the first that differs began the pair
    while (row + 1 < end) {
      if (one_colour(rows[row])) {
        ++row;
        continue;
      }
      ++pairs;
      twice += shape_of(rows[row]) == shape_of(rows[row + 1]) ? 1 : 0;
      row += 2;
    }
    return {pairs, twice};
  }

  // Main and contrast, whichever yarns they are: a pattern goes on through a change of yarn.
  [[nodiscard]] std::string shape_of(const std::string& row) const {
    std::string shape;
    for (const char yarn : row) {
      shape += yarn == main() ? '.' : '#';
    }
    return shape;
  }

  // By how many rows the pattern sits too high (more than none) or too low, while the number of rows is right.
  [[nodiscard]] int pattern_off() const {
    constexpr int farthest = 8;
    int best = 0;
    std::size_t most = 0;
    std::size_t pattern_rows = 0;
    std::vector<std::string> wanted;
    for (const std::string& row : planned_) {
      pattern_rows += one_colour(row) ? 0 : 1;
      wanted.push_back(one_colour(row) ? std::string() : inner(row));
    }
    std::vector<std::string> there_is;
    for (const std::string& row : real_) {
      there_is.push_back(inner(row));
    }
    for (int off = -farthest; off <= farthest; ++off) {
      std::size_t alike = 0;
      for (std::size_t row = 0; row < planned_.size(); ++row) {
        const auto there = static_cast<std::ptrdiff_t>(row) + off;
        if (there >= 0 && there < std::ssize(real_) && !wanted[row].empty() &&
            wanted[row] == there_is[static_cast<std::size_t>(there)]) {
          ++alike;
        }
      }
      if (alike > most) {
        most = alike;
        best = off;
      }
    }
    return most * 2 >= pattern_rows ? best : 0;
  }

  // Without the end stitches.
  [[nodiscard]] std::string inner(const std::string& row) const {
    return row.size() > 2 ? shape_of(row.substr(1, row.size() - 2)) : shape_of(row);
  }

  // Whatever pattern there is below the first dropped stitch, it is one row.
  [[nodiscard]] bool one_row_only() const {
    constexpr int least = 4;
    int rows = 0;
    std::string shape;
    for (std::size_t row = 0; row < whole_rows(); ++row) {
      if (!one_colour(real_[row])) {
        ++rows;
        shape = shape.empty() ? shape_of(real_[row]) : shape;
        if (shape != shape_of(real_[row])) {
          return false;
        }
      }
    }
    return rows >= least;
  }

  [[nodiscard]] bool contrast_row() const {
    return first_ < real_.size() && one_colour(real_[first_]) && real_[first_].front() != main();
  }

  const std::vector<std::string>& planned_;
  const std::vector<std::string>& real_;
  const Seen& seen_;
  std::size_t first_ = 0; // the lowest row that differs
  bool same_ = false;
  bool loose_ = false;
};

} // namespace

std::string_view words_of(Visible visible) {
  switch (visible) {
  case Visible::nothing: return tr("no difference");
  case Visible::refused: return tr("it can't be done, and is noticed at once");
  case Visible::loose_yarn: return tr("a yarn lies loose across the whole piece");
  case Visible::dropped_ends: return tr("dropped stitches at the edges");
  case Visible::dropped_stitches: return tr("dropped stitches within the piece");
  case Visible::row_missing: return tr("rows missing, the rest sits lower");
  case Visible::row_too_many: return tr("rows too many, or a plain row in the wrong place");
  case Visible::motif_low: return tr("the motif sits too low or too high");
  case Visible::twice_tall: return tr("rows twice as tall");
  case Visible::one_row_only: return tr("the same row of the motif over and over");
  case Visible::no_pattern: return tr("no pattern, all in main");
  case Visible::all_contrast: return tr("the whole width in contrast");
  case Visible::wrong_pattern: return tr("a pattern that was not drawn");
  }
  return "";
}

VisibleFault visible_fault(const Fabric& planned, const Fabric& real, Needle first, Needle last, bool refused) {
  if (refused) {
    return {Visible::refused, -1, 0};
  }
  const Seen wanted(planned, first, last);
  const Seen seen(real, first, last);
  return Holding(wanted, seen).fault();
}

} // namespace punchwright
