// A row and its image are chosen together, by the part of the row that decides both. Rows that aren't each other's
// image don't depend on one another but for how they look: that is bettered one by one, until nothing gets better.
#include "mending/symmetric_mend.hpp"

#include "design/wrap.hpp"
#include "mending/changes.hpp"
#include "mending/look.hpp"
#include "mending/run_chain.hpp"

#include <algorithm>
#include <compare>

namespace punchwright {
namespace {

struct Look {
  std::int64_t pairs = 0;
  std::int64_t squares = 0;
  auto operator<=>(const Look&) const = default;
};

// A row with its image, where that is another.
struct Images {
  std::vector<int> rows;
  std::vector<std::vector<Cell>> cells; // by place of the chain: the stitches that follow from it
  Chain chain;
  std::int64_t price = 0;
  std::int64_t least_squares = 0; // whatever lies beside it
};

// How a row falls on itself: it recurs, and it may have mirrors.
struct OwnSymmetry {
  int period = 1;
  bool mirrored = false;
};

OwnSymmetry own_symmetry(const Frieze& frieze, int row) {
  const bool on_axis = uses_level_axis(frieze.group) && 2 * row == frieze.level;
  const bool glides = frieze.group == FriezeGroup::p11g || frieze.group == FriezeGroup::p2mg;
  const bool turned = frieze.group == FriezeGroup::p2; // onto itself in the axis alone
  return {on_axis && glides ? frieze.repeat / 2 : frieze.repeat,
          uses_upright_axis(frieze.group) && (on_axis || !turned)};
}

class SymmetricMender {
public:
  SymmetricMender(const Grid& drawing, const MendWishes& wishes)
      : drawing_(drawing), wishes_(wishes), frieze_(*wishes.symmetry), mended_(drawing),
        changes_(drawing.width(), drawing.height()) {}

  [[nodiscard]] Grid& mended() { return mended_; }

  // The row and its image, ascending.
  [[nodiscard]] std::vector<int> rows_with(int row) const {
    const int image = uses_level_axis(frieze_.group) ? frieze_.level - row : row;
    return image == row ? std::vector{row} : std::vector{std::min(row, image), std::max(row, image)};
  }

  [[nodiscard]] Images images_of(int row) const {
    const OwnSymmetry own = own_symmetry(frieze_, row);
    Images images;
    images.rows = rows_with(row);
    images.chain.limit = wishes_.limit;
    int first = 0;
    int last = own.period - 1;
    if (own.mirrored) { // from one mirror to the next: axes are sums of two columns
      const int far = frieze_.upright + own.period;
      first = (frieze_.upright + 1) / 2;
      last = far / 2;
      images.chain.begin = frieze_.upright % 2 == 0 ? ChainEnd::mirror_through : ChainEnd::mirror_between;
      images.chain.end = far % 2 == 0 ? ChainEnd::mirror_through : ChainEnd::mirror_between;
    }
    for (int column = first; column <= last; ++column) {
      images.cells.push_back(orbit_of({round_edge(column, drawing_.width()), row}, frieze_, drawing_.width()));
      images.chain.places.push_back(place_of(images.cells.back()));
    }
    return images;
  }

  // False: there is no way.
  bool mend(Images& images) {
    const auto found = cheapest_chain(images.chain, wishes_.look);
    if (!found) {
      return false;
    }
    images.price = found->cost.price;
    set(images, found->contrast);
    images.least_squares = look_of(images).squares;
    return true;
  }

  // True: it lies better than before.
  bool improve(Images& images) {
    add_pairs(images);
    const auto found = cheapest_chain(images.chain, true);
    const Look before = look_of(images);
    const std::vector<char> as_it_was = contrast_of(images);
    set(images, found->contrast);
    if (look_of(images) < before) {
      return true;
    }
    set(images, as_it_was);
    return false;
  }

  void set(const Images& images, const std::vector<char>& contrast) {
    for (std::size_t place = 0; place < contrast.size(); ++place) {
      for (const Cell& cell : images.cells[place]) {
        mended_.set(cell.column, cell.row, contrast[place] != 0);
      }
    }
    for (const int row : images.rows) {
      note(row);
    }
  }
  void note(int row) { changes_.set(row, stitches_of(drawing_, row), stitches_of(mended_, row)); }

  // Pairs with the rows beside it, and its squares.
  [[nodiscard]] Look look_of(const Images& images) const {
    Look look;
    for (const int row : images.rows) {
      look.squares += squares_of(stitches_of(mended_, row));
      for (const int other : beside(row)) {
        const bool counted = other < row && std::ranges::find(images.rows, other) != images.rows.end();
        look.pairs += counted ? 0 : changes_.pairs(row, changes_, other);
      }
    }
    return look;
  }

  [[nodiscard]] std::vector<RowStitches> stitches(const Images& images) const {
    std::vector<RowStitches> rows;
    for (const int row : images.rows) {
      rows.push_back({row, stitches_of(mended_, row)});
    }
    return rows;
  }

private:
  static std::vector<char> stitches_of(const Grid& drawing, int row) {
    std::vector<char> stitches(static_cast<std::size_t>(drawing.width()));
    for (int column = 0; column < drawing.width(); ++column) {
      stitches[static_cast<std::size_t>(column)] = drawing.at(column, row) ? 1 : 0;
    }
    return stitches;
  }

  // To colour them otherwise than they are drawn costs the prices of all of them.
  [[nodiscard]] ChainPlace place_of(const std::vector<Cell>& cells) const {
    ChainPlace place;
    const bool drawn = drawing_.at(cells.front().column, cells.front().row);
    std::int64_t& price = place.price[drawn ? 0 : 1];
    for (const Cell& cell : cells) {
      const std::int32_t one = price_of(cell);
      price = one == never_changed || price == ChainPlace::impossible ? ChainPlace::impossible
                                                                      : price + std::min(one, dearest_change);
    }
    return place;
  }
  [[nodiscard]] std::int32_t price_of(const Cell& cell) const {
    return wishes_.prices.empty() ? 1
                                  : wishes_.prices[static_cast<std::size_t>(cell.row * drawing_.width() + cell.column)];
  }

  // The rows on which it lies and that lie on it; in a stacked drawing of two rows the other one twice.
  [[nodiscard]] std::vector<int> beside(int row) const {
    std::vector<int> rows;
    for (const int other : {row - 1, row + 1}) {
      const bool inside = other >= 0 && other < drawing_.height();
      if (drawing_.height() > 1 && (inside || wishes_.stacked)) {
        rows.push_back(round_edge(other, drawing_.height()));
      }
    }
    return rows;
  }

  // What a change would make with rows that aren't its image; with that one it is looked at afterwards.
  void add_pairs(Images& images) const {
    const auto width = static_cast<std::size_t>(drawing_.width());
    std::vector<std::vector<std::int16_t>> counts(images.rows.size(), std::vector<std::int16_t>(width, 0));
    for (std::size_t place = 0; place < images.rows.size(); ++place) {
      for (const int other : beside(images.rows[place])) {
        if (std::ranges::find(images.rows, other) == images.rows.end()) {
          changes_.add_pairs(other, counts[place]);
        }
      }
    }
    for (std::size_t place = 0; place < images.cells.size(); ++place) {
      const Cell& first = images.cells[place].front();
      std::int64_t& pairs = images.chain.places[place].pairs[drawing_.at(first.column, first.row) ? 0 : 1];
      pairs = 0;
      for (const Cell& cell : images.cells[place]) {
        pairs += counts[cell.row == images.rows.front() ? 0 : 1][static_cast<std::size_t>(cell.column)];
      }
    }
  }

  [[nodiscard]] std::vector<char> contrast_of(const Images& images) const {
    std::vector<char> contrast;
    for (const auto& cells : images.cells) {
      contrast.push_back(mended_.at(cells.front().column, cells.front().row) ? 1 : 0);
    }
    return contrast;
  }

  const Grid& drawing_;
  const MendWishes& wishes_;
  Frieze frieze_;
  Grid mended_;
  Changes changes_;
};

bool wanted(const MendWishes& wishes, int row) {
  return wishes.rows.empty() || wishes.rows[static_cast<std::size_t>(row)] != 0;
}

bool unmendable(const Mended& mended, int row) {
  return std::ranges::find(mended.unmendable, row, &Unmendable::row) != mended.unmendable.end();
}

// The rows that are to be mended with their images; nothing where a row is and its image isn't.
std::optional<std::vector<Images>> rows_to_mend(const SymmetricMender& mender, const Grid& drawing,
                                                const MendWishes& wishes, const Mended& fewest) {
  std::vector<Images> all;
  for (int row = 0; row < drawing.height(); ++row) {
    const std::vector<int> rows = mender.rows_with(row);
    if (!needs_mending(drawing, row, wishes.limit) || rows.front() != row) {
      continue;
    }
    const auto stays = [&](int one) { return !wanted(wishes, one) || unmendable(fewest, one); };
    if (std::ranges::all_of(rows, stays)) {
      continue;
    }
    if (std::ranges::any_of(rows, stays)) {
      return std::nullopt;
    }
    all.push_back(mender.images_of(row));
  }
  return all;
}

Mended answer_of(const Grid& drawing, const Grid& mended, const MendWishes& wishes) {
  Mended answer;
  answer.drawing = mended;
  for (int row = 0; row < drawing.height(); ++row) {
    for (int column = 0; column < drawing.width(); ++column) {
      if (drawing.at(column, row) != mended.at(column, row)) {
        answer.changed.push_back({column, row});
      }
    }
  }
  answer.pairs = pairs_of_changes(drawing, mended, wishes.stacked);
  return answer;
}

} // namespace

std::optional<Mended> mend_symmetrically(const Grid& drawing, const MendWishes& wishes, const Mended& fewest) {
  SymmetricMender mender(drawing, wishes);
  auto all = rows_to_mend(mender, drawing, wishes, fewest);
  if (!all || !std::ranges::all_of(*all, [&](Images& images) { return mender.mend(images); })) {
    return std::nullopt;
  }
  constexpr int rounds = 30;
  bool better = wishes.look;
  for (int round = 0; round < rounds && better; ++round) {
    better = false;
    for (Images& images : *all) {
      better = mender.improve(images) || better;
    }
  }
  Mended answer = answer_of(drawing, mender.mended(), wishes);
  answer.unmendable = fewest.unmendable;
  answer.proved = answer.pairs == 0; // and every row lies as evenly as it can by itself
  for (const Images& images : *all) {
    const std::int64_t squares = mender.look_of(images).squares;
    answer.price += images.price;
    answer.squares += squares;
    answer.proved = answer.proved && squares == images.least_squares;
  }
  return answer;
}

MendOffer offer_mend(const Grid& drawing, const MendWishes& wishes) {
  MendOffer offer{mend(drawing, wishes), std::nullopt};
  if (wishes.symmetry && offer.fewest.unlike > 0) {
    offer.symmetric = mend_symmetrically(drawing, wishes, offer.fewest);
  }
  return offer;
}

std::vector<std::vector<RowStitches>> symmetric_forms_of_row(const Grid& drawing, const Grid& mended, int row,
                                                             const MendWishes& wishes, std::size_t most) {
  if (!needs_mending(drawing, row, wishes.limit)) {
    return {};
  }
  SymmetricMender mender(drawing, wishes);
  mender.mended() = mended;
  for (int other = 0; other < drawing.height(); ++other) {
    mender.note(other);
  }
  const Images images = mender.images_of(row);
  std::vector<std::pair<Look, std::vector<RowStitches>>> forms;
  for (const auto& contrast : all_cheapest_chains(images.chain, most)) {
    mender.set(images, contrast);
    forms.emplace_back(mender.look_of(images), mender.stitches(images));
  }
  std::ranges::stable_sort(forms, {}, [](const auto& form) { return form.first; });
  std::vector<std::vector<RowStitches>> in_order;
  for (auto& form : forms) {
    in_order.push_back(std::move(form.second));
  }
  return in_order;
}

} // namespace punchwright
