// A float of n stitches needs n / (limit + 1) catches; which, is found by dynamic programming along each float, and for
// all rows together by what the mend uses for its changed stitches.
#include "mending/catches.hpp"

#include "design/words.hpp"
#include "machine/placement.hpp"
#include "mending/changes.hpp"
#include "mending/look.hpp"
#include "mending/mend.hpp"
#include "rules/float_runs.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <limits>
#include <map>

namespace punchwright {
namespace {

// The catches of a row: some stay, those of its floats are looked for.
struct RowToCatch {
  std::vector<char> staying;
  std::vector<DrawnFloat> floats;
};

class CatchForms : public RowForms {
public:
  CatchForms(int width, int limit) : width_(width), limit_(limit), found_(static_cast<std::size_t>(width)) {}

  void set(int row, RowToCatch catches) { rows_[row] = std::move(catches); }
  [[nodiscard]] const std::map<int, RowToCatch>& rows() const { return rows_; }

  bool solve(const MendedRow& row, std::span<const std::int16_t> pairs) override {
    const RowToCatch& catches = rows_.at(row.row);
    found_ = catches.staying;
    cost_ = {};
    for (const DrawnFloat& one : catches.floats) {
      least_from(one, pairs);
      for (int place = -1; next_[index(place)] < one.stitches;) {
        place = next_[index(place)];
        found_[column(one, place)] = 1;
      }
    }
    for (int stitch = 0; stitch < width_; ++stitch) {
      const auto at = static_cast<std::size_t>(stitch);
      cost_.price += found_[at];
      cost_.pairs += found_[at] != 0 && !pairs.empty() ? pairs[at] : 0;
    }
    cost_.squares = squares(row, found_);
    return true;
  }
  [[nodiscard]] RowCost cost() const override { return cost_; }
  [[nodiscard]] std::span<const char> stitches() const override { return found_; }

  std::vector<char> all_cheapest(const MendedRow& row, std::size_t most) override {
    const RowToCatch& catches = rows_.at(row.row);
    std::vector<char> forms = catches.staying;
    for (const DrawnFloat& one : catches.floats) {
      std::vector<char> longer;
      for (auto form = forms.begin(); form != forms.end(); form += width_) {
        std::vector<char> begun(form, form + width_);
        if (!list(one, -1, one.stitches / (limit_ + 1), most, begun, longer)) {
          return {};
        }
      }
      forms = std::move(longer);
    }
    return forms;
  }

  [[nodiscard]] std::int64_t squares(const MendedRow& row, std::span<const char> stitches) const override {
    std::int64_t sum = 0;
    for (const DrawnFloat& one : rows_.at(row.row).floats) {
      std::int64_t part = 0;
      for (int place = 0; place <= one.stitches; ++place) {
        if (place == one.stitches || stitches[column(one, place)] != 0) {
          sum += part * part;
          part = 0;
        } else {
          ++part;
        }
      }
    }
    return sum;
  }

private:
  // Places of a float count from 0; before them stands -1, so that a list over them begins there.
  static std::size_t index(int place) { return static_cast<std::size_t>(place + 1); }
  [[nodiscard]] std::size_t column(const DrawnFloat& one, int place) const {
    return static_cast<std::size_t>((one.first + place) % width_);
  }

  // From each place, where the float is caught next; the number of stitches stands for its end.
  void least_from(const DrawnFloat& one, std::span<const std::int16_t> pairs) {
    constexpr int price_shift = 40; // above 20,000 pairs and the squares of 200 stitches
    constexpr int pairs_shift = 20;
    std::vector<std::int64_t> rest(index(one.stitches) + 1, 0);
    next_.assign(index(one.stitches) + 1, one.stitches);
    for (int place = one.stitches - 1; place >= -1; --place) {
      std::int64_t least = std::numeric_limits<std::int64_t>::max();
      for (int next = place + 1; next <= std::min(one.stitches, place + limit_ + 1); ++next) {
        const std::int64_t part = next - place - 1;
        std::int64_t cost = rest[index(next)] + part * part;
        if (next < one.stitches) {
          const std::int64_t beside = pairs.empty() ? 0 : pairs[column(one, next)];
          cost += (std::int64_t{1} << price_shift) + (beside << pairs_shift);
        }
        if (cost < least) {
          least = cost;
          next_[index(place)] = next;
        }
      }
      rest[index(place)] = least;
    }
  }

  // Lays so many catches behind `place` in every way. False where the forms are too many.
  bool list(const DrawnFloat& one, int place, int left, std::size_t most, std::vector<char>& form,
            std::vector<char>& forms) const {
    if (left == 0) {
      if (forms.size() / form.size() >= most) {
        return false;
      }
      forms.insert(forms.end(), form.begin(), form.end());
      return true;
    }
    for (int next = place + 1; next <= place + limit_ + 1; ++next) {
      if (next + 1 + left * (limit_ + 1) - 1 < one.stitches || next >= one.stitches) {
        continue; // the catches that are left would not do from there
      }
      form[column(one, next)] = 1;
      const bool listed = list(one, next, left - 1, most, form, forms);
      form[column(one, next)] = 0;
      if (!listed) {
        return false;
      }
    }
    return true;
  }

  int width_;
  int limit_;
  std::map<int, RowToCatch> rows_;
  std::vector<int> next_;
  std::vector<char> found_;
  RowCost cost_;
};

bool short_enough(const Document& design, const DrawnFloat& one, int limit) {
  bool short_parts = true;
  const auto column_at = [&](int place) { return (one.first + place) % design.grid.width(); };
  each_part_beyond(design.marks, one.row, one.stitches, limit, column_at,
                   [&](const FloatPart& part) { short_parts = short_parts && part.accepted; });
  return short_parts;
}

void clear(Grid& layer, const std::vector<DrawnFloat>& floats) {
  for (const DrawnFloat& one : floats) {
    if (!any_marked(layer, one.row)) {
      continue;
    }
    for (int place = 0; place < one.stitches; ++place) {
      layer.set((one.first + place) % layer.width(), one.row, false);
    }
  }
  layer = without_blank(std::move(layer));
}

// Tells `forms` of every row that has a float to catch, or catches that stay.
void add_rows(CatchForms& forms, const Grid& drawing, const std::vector<DrawnFloat>& floats, const Grid& staying) {
  std::vector<std::vector<DrawnFloat>> by_row(static_cast<std::size_t>(drawing.height()));
  for (const DrawnFloat& one : floats) {
    by_row[static_cast<std::size_t>(one.row)].push_back(one);
  }
  for (int row = 0; row < drawing.height(); ++row) {
    std::vector<DrawnFloat>& of_row = by_row[static_cast<std::size_t>(row)];
    if (of_row.empty() && !any_marked(staying, row)) {
      continue;
    }
    RowToCatch catches{std::vector<char>(static_cast<std::size_t>(drawing.width())), std::move(of_row)};
    for (int column = 0; column < drawing.width(); ++column) {
      catches.staying[static_cast<std::size_t>(column)] = is_marked(staying, column, row) ? 1 : 0;
    }
    forms.set(row, std::move(catches));
  }
}

} // namespace

std::vector<DrawnFloat> floats_too_long(const Document& design, const Profile& profile) {
  const int limit = longest_float_of(design, profile);
  std::vector<DrawnFloat> floats;
  for (int row = 0; row < design.grid.height(); ++row) {
    if (!needs_mending(design.grid, row, limit)) {
      continue;
    }
    for (const StitchRun& run : runs_beyond(design.grid, row, limit)) {
      const DrawnFloat one{row, run.first, run.stitches};
      if (!short_enough(design, one, limit)) {
        floats.push_back(one);
      }
    }
  }
  return floats;
}

Caught catch_floats(const Document& design, const Profile& profile, const std::vector<DrawnFloat>& floats) {
  const MendWishes wishes = mend_wishes(design, profile);
  const Grid& drawing = design.grid;
  Caught answer;
  answer.marks = design.marks;
  clear(answer.marks.caught, floats);
  clear(answer.marks.accepted, floats);
  CatchForms forms(drawing.width(), wishes.limit);
  add_rows(forms, drawing, floats, answer.marks.caught);
  std::vector<MendedRow> rows;
  for (const auto& [row, catches] : forms.rows()) {
    MendedRow one{row, std::vector<char>(static_cast<std::size_t>(drawing.width())), {}, {}, 0, 0};
    (void)forms.solve(one, {});
    one.stitches.assign(forms.stitches().begin(), forms.stitches().end());
    one.squares = one.least_squares = forms.cost().squares;
    rows.push_back(std::move(one));
  }
  answer.proved = improve_look(rows, drawing.height(), wishes.stacked, forms);
  Grid all(drawing.width(), drawing.height());
  for (const MendedRow& one : rows) {
    answer.squares += one.squares;
    for (int column = 0; column < drawing.width(); ++column) {
      const bool caught = one.stitches[static_cast<std::size_t>(column)] != 0;
      answer.catches += caught && !is_marked(answer.marks.caught, column, one.row) ? 1 : 0;
      all.set(column, one.row, caught);
    }
  }
  answer.pairs = pairs_of_changes(Grid(drawing.width(), drawing.height()), all, wishes.stacked);
  answer.marks.caught = without_blank(std::move(all));
  return answer;
}

StitchMarks accept_floats(const Document& design, const std::vector<DrawnFloat>& floats) {
  StitchMarks marks = design.marks;
  clear(marks.caught, floats);
  for (const DrawnFloat& one : floats) {
    for (int place = 0; place < one.stitches; ++place) {
      set_mark(marks.accepted, design.grid, (one.first + place) % design.grid.width(), one.row, true);
    }
  }
  return marks;
}

std::string words_for_catches(const Grid& caught, int row) {
  std::vector<std::string> columns;
  for (int column = 0; column < caught.width(); ++column) {
    if (caught.at(column, row)) {
      columns.push_back(std::to_string(column + 1));
    }
  }
  if (columns.empty()) {
    return {};
  }
  return columns.size() == 1 ? said("column {}", columns.front()) : said("columns {}", listed(columns));
}

} // namespace punchwright
