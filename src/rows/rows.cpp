// Deriving the rows to knit: the drawn rows from the bottom upwards, with what comes between them.
#include "rows/rows.hpp"

#include "machine/placement.hpp"
#include "rows/pass_order.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

// A drawn row as the derivation needs it, worked out once and not once for every repetition.
struct DrawnRow {
  std::size_t band = 0;
  bool all_main = false;
  bool all_contrast = false;
};

std::vector<DrawnRow> drawn_rows(const Document& document) {
  std::vector<DrawnRow> rows;
  rows.reserve(static_cast<std::size_t>(document.grid.height()));
  for (std::size_t band = 0; band < document.bands.size(); ++band) {
    for (int count = 0; count < document.bands[band].rows && std::ssize(rows) < document.grid.height(); ++count) {
      const int row = static_cast<int>(rows.size());
      rows.push_back({band, document.grid.all_main(row), document.grid.all_contrast(row)});
    }
  }
  return rows;
}

class Derivation {
public:
  Derivation(const Document& document, const Profile& profile)
      : document_(document), one_feeder_(profile.feeders == 1), drawn_(drawn_rows(document)),
        side_(document.piece.carriage) {}

  std::vector<RowToKnit> all_repetitions() {
    const int times = document_.piece.times;
    rows_.reserve(drawn_.size() * static_cast<std::size_t>(times) * 5 / 4);
    const bool ends = std::ranges::any_of(drawn_, [](const DrawnRow& row) { return !row.all_main; });
    for (int repetition = 0; repetition < times && std::ssize(rows_) <= most_rows_to_knit; ++repetition) {
      repetitions_left_ = times - 1 - repetition;
      // Whoever looks ahead from between the first and the last repetition comes to a contrast stitch within the next.
      if (!ends || repetition == 0 || repetitions_left_ == 0) {
        add_repetition(repetition > 0);
      } else {
        add_middle_repetition();
      }
    }
    return std::move(rows_);
  }

  std::vector<RowToKnit> one_circuit() {
    repetitions_left_ = 1; // the card goes round: above its last row comes its first
    add_drawn_rows();
    const Side start = document_.piece.carriage;
    int head = 0; // single-colour main rows at the beginning of the circuit, inserted ones included
    while (head < std::ssize(rows_) && rows_[static_cast<std::size_t>(head)].contrast == 0) {
      ++head;
    }
    add_rows_between(drawn_.size() - 1, 0, head);
    if (document_.rules.change_side != ChangeSide::any && side_ != start) {
      add_plain_row(drawn_.size() - 1, Why::even_circuit);
    }
    return std::move(rows_);
  }

private:
  // Between the first and the last repetition the side of its beginning is all that the rows depend on: the plain rows
  // below it are those above the drawing's last contrast stitch, each time as many.
  struct Repetition {
    Side begin = Side::left;
    Side after = Side::left;
    int plain_run = 0; // at its end
    std::vector<RowToKnit> rows;
  };

  void add_repetition(bool above_another) {
    if (above_another) {
      add_rows_between(drawn_.size() - 1, 0);
    }
    add_drawn_rows();
  }

  // As one that is known already: there may be a thousand of them.
  void add_middle_repetition() {
    const Side begin = side_;
    const auto known = std::ranges::find(middle_, begin, &Repetition::begin);
    if (known != middle_.end()) {
      rows_.insert(rows_.end(), known->rows.begin(), known->rows.end());
      side_ = known->after;
      plain_run_ = known->plain_run;
      return;
    }
    const auto first = static_cast<std::ptrdiff_t>(rows_.size());
    add_repetition(true);
    middle_.push_back({begin, side_, plain_run_, {rows_.begin() + first, rows_.end()}});
  }

  const Band& band_of(std::size_t row) const { return document_.bands[drawn_[row].band]; }

  void add(RowToKnit row) {
    row.travel = travel_from(side_);
    side_ = row.passes == 1 ? other(side_) : side_;
    plain_run_ = row.contrast == 0 ? plain_run_ + 1 : 0;
    rows_.push_back(row);
  }

  void add_plain_row(std::size_t below, Why why) {
    RowToKnit row;
    row.why = why;
    row.main = band_of(below).main;
    add(row);
  }

  void add_drawn_rows() {
    for (std::size_t index = 0; index < drawn_.size(); ++index) {
      if (index > 0 && drawn_[index].band != drawn_[index - 1].band) {
        add_rows_between(index - 1, index);
      }
      const Band& band = band_of(index);
      RowToKnit row;
      row.drawn = static_cast<std::int16_t>(index);
      row.main = band.main;
      row.contrast = drawn_[index].all_main ? char{0} : band.contrast.value_or(char{0});
      row.all_contrast = drawn_[index].all_contrast;
      row.passes = one_feeder_ && row.two_coloured() ? 2 : 1;
      add(row);
    }
  }

  // The rows between drawn row `below` and drawn row `above`, the first of a band; `plain_above` single-colour main
  // rows stand above them already, or are counted here when it isn't given.
  void add_rows_between(std::size_t below, std::size_t above, std::optional<int> plain_above = std::nullopt) {
    if (const auto wished = band_of(above).plain_below) {
      for (int count = 0; count < *wished; ++count) {
        add_plain_row(below, Why::plain_below);
      }
      return;
    }
    if (band_of(below).contrast == band_of(above).contrast) {
      return;
    }
    const int there = plain_run_ + plain_above.value_or(plain_rows_known_from(above));
    for (int missing = document_.rules.plain_rows - there; missing > 0; --missing) {
      add_plain_row(below, Why::yarn_change);
    }
    if (stands_on_wrong_side_for(above)) {
      add_plain_row(below, Why::change_side);
    }
  }

  // Single-colour main rows known to lie from drawn row `row` upwards, on into the next repetition: the drawn ones, and
  // those that a band there asks for below itself. More than 9 are never wanted.
  int plain_rows_known_from(std::size_t row) const {
    int count = 0;
    for (int left = repetitions_left_; count < document_.rules.plain_rows && drawn_[row].all_main;) {
      ++count;
      const std::size_t below = row++;
      const bool repeated = row == drawn_.size();
      if (repeated) {
        if (left == 0) {
          break;
        }
        --left;
        row = 0;
      }
      if (repeated || drawn_[row].band != drawn_[below].band) {
        count += band_of(row).plain_below.value_or(0);
      }
    }
    return count;
  }

  bool stands_on_wrong_side_for(std::size_t above) const {
    if (document_.rules.change_side == ChangeSide::any) {
      return false;
    }
    const auto passes = passes_until_threaded(above);
    if (!passes) {
      return false;
    }
    const Side wanted = document_.rules.change_side == ChangeSide::left ? Side::left : Side::right;
    return (*passes % 2 == 0 ? side_ : other(side_)) != wanted;
  }

  // Passes before the first row that knits the contrast of drawn row `row`'s band; none where that yarn is never
  // threaded, since it has no stitch before the contrast changes again or the knitting ends.
  std::optional<int> passes_until_threaded(std::size_t row) const {
    const auto contrast = band_of(row).contrast;
    if (!contrast) {
      return std::nullopt;
    }
    int passes = 0;
    for (int left = repetitions_left_; drawn_[row].all_main;) {
      ++passes;
      const std::size_t last = row++;
      const bool repeated = row == drawn_.size();
      if (repeated) {
        if (left == 0) {
          return std::nullopt;
        }
        --left;
        row = 0;
      }
      if (!repeated && drawn_[row].band == drawn_[last].band) {
        continue;
      }
      if (band_of(row).contrast != contrast || passes > most_passes_looked_at) {
        return std::nullopt;
      }
      passes += band_of(row).plain_below.value_or(0);
    }
    return passes;
  }

  // A drawing without any contrast stitch would be walked through once for every repetition.
  static constexpr int most_passes_looked_at = 4 * tallest_repeat;

  const Document& document_;
  bool one_feeder_;
  std::vector<DrawnRow> drawn_;
  std::vector<RowToKnit> rows_;
  Side side_;
  int plain_run_ = 0; // single-colour main rows at the end of rows_
  int repetitions_left_ = 0;
  std::vector<Repetition> middle_; // one for each side
};

void repeat_circuit(std::vector<RowToKnit>& rows, int times, Side carriage) {
  const std::size_t circuit = rows.size();
  constexpr std::size_t most = most_rows_to_knit;
  rows.reserve(std::min(circuit * static_cast<std::size_t>(times), most + circuit));
  const std::vector<RowToKnit> once = rows;
  for (int round = 1; round < times && rows.size() <= most; ++round) {
    rows.insert(rows.end(), once.begin(), once.end());
  }
  Side side = carriage;
  for (RowToKnit& row : rows) {
    row.travel = travel_from(side);
    side = row.passes == 1 ? other(side) : side;
  }
}

} // namespace

RowsToKnit rows_to_knit(const Document& document, const Profile& profile) {
  RowsToKnit result;
  Derivation derivation(document, profile);
  const bool loop = card_goes_round(document, profile);
  if (loop) {
    result.rows = derivation.one_circuit();
    result.circuit = static_cast<int>(result.rows.size());
    repeat_circuit(result.rows, document.piece.times, document.piece.carriage);
  } else {
    result.rows = derivation.all_repetitions();
  }
  if (std::ssize(result.rows) > most_rows_to_knit) {
    result.rows.resize(most_rows_to_knit);
    result.cut_off = true;
  }
  if (!loop) {
    result.circuit = static_cast<int>(result.rows.size());
  }
  if (profile.card) {
    int card_row = 0;
    for (RowToKnit& row : result.rows) {
      row.card_row = ++card_row;
      card_row = card_row == result.circuit ? 0 : card_row;
    }
  }
  if (profile.feeders == 1) {
    order_passes(result.rows);
  }
  return result;
}

Failure too_many_rows(const Document& document, const Profile& profile) {
  // At most: every band begins with as many plain rows as it can, one more for the side, and one for the circuit.
  long long in_each = document.grid.height() + 1LL;
  for (const Band& band : document.bands) {
    in_each += band.plain_below.value_or(document.rules.plain_rows + 1);
  }
  if (in_each * document.piece.times <= most_rows_to_knit || !rows_to_knit(document, profile).cut_off) {
    return std::nullopt;
  }
  constexpr int million = 1'000'000;
  return Error{{},
               0,
               0,
               said("the design comes to more than {} million rows to knit", most_rows_to_knit / million),
               tr("allowed: fewer; lower times in [piece], or plain_below in the bands")};
}

std::vector<Pass> passes_of(const RowToKnit& row) {
  if (row.passes == 1) {
    return {Pass{row.travel, row.all_contrast ? char{0} : row.main, row.contrast}};
  }
  const Travel back = travel_from(end_of(row.travel));
  if (row.contrast_first) {
    return {Pass{row.travel, 0, row.contrast}, Pass{back, row.main, 0}};
  }
  return {Pass{row.travel, row.main, 0}, Pass{back, 0, row.contrast}};
}

std::vector<SetupRow> setup_rows(const Document& document, const Profile& profile) {
  const char main = document.bands.front().main;
  const Travel last = travel_from(other(document.piece.carriage)); // ends where the carriage is to stand
  const Travel before = travel_from(document.piece.carriage);
  switch (profile.selects) {
  case Selects::next_pass: return {SetupRow{before, main, false}, SetupRow{last, main, true}};
  case Selects::same_pass: return {SetupRow{before, main, false}, SetupRow{last, std::nullopt, true}};
  case Selects::by_hand: break;
  }
  return {SetupRow{last, main, false}};
}

} // namespace punchwright
