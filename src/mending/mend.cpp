// All rows together: each by itself first, then row by row with its neighbours in view, and where pairs are left, all
// cheapest forms of neighbouring rows against one another.
#include "mending/mend.hpp"

#include "design/wrap.hpp"
#include "machine/placement.hpp"
#include "mending/catches.hpp"
#include "mending/changes.hpp"
#include "mending/look.hpp"
#include "mending/orbits.hpp"
#include "mending/symmetry.hpp"
#include "rules/float_runs.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <tuple>

namespace punchwright {
namespace {

constexpr std::int32_t one_change = 1;

// Of the stitches, row by row.
class Prices {
public:
  Prices(const Grid& drawing, const MendWishes& wishes)
      : wishes_(wishes), even_(static_cast<std::size_t>(drawing.width()), one_change) {}

  [[nodiscard]] std::span<const std::int32_t> of_row(int row) const {
    if (wishes_.prices.empty()) {
      return even_;
    }
    return std::span(wishes_.prices).subspan(static_cast<std::size_t>(row) * even_.size(), even_.size());
  }

private:
  const MendWishes& wishes_;
  std::vector<std::int32_t> even_;
};

// The columns of a float that only stitches which must stay could break; the whole row where there is none.
Unmendable reason_of(const Grid& drawing, int row, int limit, std::span<const std::int32_t> prices) {
  const int width = drawing.width();
  for (const StitchRun& run : runs_beyond(drawing, row, limit)) {
    int held = 0; // stitches side by side that stay
    for (int place = 0; place < run.stitches; ++place) {
      const int column = (run.first + place) % width;
      held = prices[static_cast<std::size_t>(column)] == never_changed ? held + 1 : 0;
      if (held > limit) {
        return {row, run.first, (run.first + run.stitches - 1) % width};
      }
    }
  }
  return {row, 0, width - 1};
}

void take(std::span<const MendedRow> rows, Mended& answer) {
  for (const MendedRow& one : rows) {
    answer.squares += squares_of(one.stitches);
    for (int column = 0; column < answer.drawing.width(); ++column) {
      const auto place = static_cast<std::size_t>(column);
      if (one.stitches[place] != one.drawn[place]) {
        answer.drawing.flip(column, one.row);
        answer.changed.push_back({column, one.row});
      }
    }
  }
}

class MendForms : public RowForms {
public:
  explicit MendForms(RowMender& mender) : mender_(mender) {}
  bool solve(const MendedRow& row, std::span<const std::int16_t> pairs) override {
    mender_.set_row(row.drawn, row.prices, pairs);
    return mender_.solve(true);
  }
  [[nodiscard]] RowCost cost() const override { return mender_.cost(); }
  [[nodiscard]] std::span<const char> stitches() const override { return mender_.stitches(); }
  std::vector<char> all_cheapest(const MendedRow& row, std::size_t most) override {
    mender_.set_row(row.drawn, row.prices, {});
    return mender_.all_cheapest(most);
  }
  [[nodiscard]] std::int64_t squares(const MendedRow&, std::span<const char> stitches) const override {
    return squares_of(stitches);
  }

private:
  RowMender& mender_;
};

std::vector<char> stitches_in(const Grid& drawing, int row) {
  std::vector<char> stitches(static_cast<std::size_t>(drawing.width()));
  for (int column = 0; column < drawing.width(); ++column) {
    stitches[static_cast<std::size_t>(column)] = drawing.at(column, row) ? 1 : 0;
  }
  return stitches;
}

} // namespace

bool needs_mending(const Grid& drawing, int row, int limit) {
  const auto words = drawing.row(row);
  return drawing.mixed(row) &&
         (has_run_beyond(words, drawing.width(), limit, false) || has_run_beyond(words, drawing.width(), limit, true));
}

std::int64_t pairs_of_changes(const Grid& before, const Grid& after, bool stacked) {
  const int height = before.height();
  Changes changes(before.width(), height);
  for (int row = 0; row < height; ++row) {
    if (!std::ranges::equal(before.row(row), after.row(row))) {
      changes.set(row, stitches_in(before, row), stitches_in(after, row));
    }
  }
  std::int64_t pairs = 0;
  for (int row = 0; row < height; ++row) {
    const int above = (row + 1) % height;
    if (above != row && (above > row || stacked)) {
      pairs += changes.pairs(row, changes, above);
    }
  }
  return pairs;
}

MendWishes mend_wishes(const Document& design, const Profile& profile) {
  MendWishes wishes;
  wishes.limit = longest_float_of(design, profile);
  wishes.stacked = design.piece.times > 1 || card_goes_round(design, profile);
  if (!design.marks.none()) {
    wishes.rows.assign(static_cast<std::size_t>(design.grid.height()), 0);
    for (const DrawnFloat& one : floats_too_long(design, profile)) {
      wishes.rows[static_cast<std::size_t>(one.row)] = 1;
    }
  }
  const Grid& kept = design.marks.kept;
  for (int row = 0; row < kept.height(); ++row) {
    for (int column = 0; column < kept.width(); ++column) {
      if (kept.at(column, row)) {
        protect(wishes, design.grid, Area{{column, row}, 1, 1});
      }
    }
  }
  return wishes;
}

void protect(MendWishes& wishes, const Grid& drawing, const Area& area) {
  if (wishes.prices.empty()) {
    wishes.prices.assign(static_cast<std::size_t>(drawing.width()) * static_cast<std::size_t>(drawing.height()),
                         one_change);
  }
  for (int row = 0; row < area.rows; ++row) {
    for (int column = 0; column < area.columns; ++column) {
      const Cell cell = round_edges(Cell{area.corner.column + column, area.corner.row + row}, drawing);
      wishes.prices[static_cast<std::size_t>(cell.row * drawing.width() + cell.column)] = never_changed;
    }
  }
}

std::string words_for_changes(const Mended& mended, int row) {
  std::string words;
  for (const Cell& cell : mended.changed) {
    if (cell.row == row) {
      words += words.empty() ? "" : ", ";
      words += mended.drawing.at(cell.column, row) ? said("stitch {} to contrast", cell.column + 1)
                                                   : said("stitch {} to main", cell.column + 1);
    }
  }
  return words;
}

std::optional<Frieze> symmetry_to_keep(const Grid& drawing) {
  const Frieze frieze = classify(drawing);
  return makes_alike(frieze, drawing.width()) ? std::optional(frieze) : std::nullopt;
}

Mended mend(const Grid& drawing, const MendWishes& wishes) {
  Mended answer;
  answer.drawing = drawing;
  RowMender mender(drawing.width(), wishes.limit);
  const Prices prices(drawing, wishes);
  std::vector<MendedRow> mended;
  for (int row = 0; row < drawing.height(); ++row) {
    const bool wanted = wishes.rows.empty() || wishes.rows[static_cast<std::size_t>(row)] != 0;
    if (!wanted || !needs_mending(drawing, row, wishes.limit)) {
      continue;
    }
    const std::vector<char> stitches = stitches_in(drawing, row);
    mender.set_row(stitches, prices.of_row(row), {});
    if (!mender.solve(wishes.look)) {
      answer.unmendable.push_back(reason_of(drawing, row, wishes.limit, prices.of_row(row)));
      continue;
    }
    const auto found = mender.stitches();
    const RowCost cost = mender.cost();
    answer.price += cost.price;
    mended.push_back({row, stitches, prices.of_row(row), {found.begin(), found.end()}, cost.squares, cost.squares});
  }
  if (wishes.look) {
    MendForms forms(mender);
    answer.proved = improve_look(mended, drawing.height(), wishes.stacked, forms);
    if (wishes.symmetry) {
      answer.proved = improve_symmetry(mended, drawing, wishes.stacked, *wishes.symmetry, forms, answer.proved);
    }
  }
  take(mended, answer);
  answer.pairs = pairs_of_changes(drawing, answer.drawing, wishes.stacked);
  answer.unlike = wishes.look && wishes.symmetry ? unlike_pairs(answer.drawing, *wishes.symmetry) : 0;
  return answer;
}

std::vector<std::vector<char>> forms_of_row(const Grid& drawing, const Grid& mended, int row, const MendWishes& wishes,
                                            std::size_t most) {
  if (!needs_mending(drawing, row, wishes.limit)) {
    return {};
  }
  const std::vector<char> drawn = stitches_in(drawing, row);
  const Prices prices(drawing, wishes);
  RowMender mender(drawing.width(), wishes.limit);
  mender.set_row(drawn, prices.of_row(row), {});
  const std::vector<char> all = mender.all_cheapest(most);

  const int height = drawing.height();
  std::vector<Changes> beside; // the row below and the row above, where there are any
  for (const int other : {row - 1, row + 1}) {
    const bool inside = other >= 0 && other < height;
    if (height > 1 && (inside || wishes.stacked)) {
      const int there = round_edge(other, height);
      beside.emplace_back(drawing.width(), 1).set(0, stitches_in(drawing, there), stitches_in(mended, there));
    }
  }
  const auto unlike =
      wishes.symmetry ? std::optional<UnlikeInRow>(std::in_place, mended, *wishes.symmetry, row) : std::nullopt;
  struct Form {
    std::int64_t pairs = 0;
    std::int64_t squares = 0;
    std::int64_t unlike = 0;
    std::vector<char> stitches;
  };
  std::vector<Form> forms;
  for (auto from = all.begin(); from != all.end(); from += drawing.width()) {
    Form form{0, 0, 0, {from, from + drawing.width()}};
    Changes own(drawing.width(), 1);
    own.set(0, drawn, form.stitches);
    for (const Changes& other : beside) {
      form.pairs += own.pairs(0, other, 0);
    }
    form.squares = squares_of(form.stitches);
    form.unlike = unlike ? unlike->of(form.stitches) : 0;
    forms.push_back(std::move(form));
  }
  std::ranges::sort(forms, {},
                    [](const Form& form) { return std::tie(form.pairs, form.squares, form.unlike, form.stitches); });
  std::vector<std::vector<char>> stitches;
  for (Form& form : forms) {
    stitches.push_back(std::move(form.stitches));
  }
  return stitches;
}

} // namespace punchwright
