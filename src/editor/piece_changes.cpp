// What of the cloth is painted anew: another frame changes every row, else only rows whose fingerprints have changed.
#include "editor/piece_picture.hpp"
#include "machine/placement.hpp"

#include <algorithm>
#include <bit>
#include <utility>

namespace punchwright::editor {

namespace {

constexpr double largest_row = 90; // px: larger than that shows nothing more
constexpr double fitted_row = 22;  // px: how large a small piece is shown where all of it fits

// A running fingerprint (FNV-1a, 64 bits: Fowler, Noll and Vo).
struct Fingerprint {
  std::uint64_t value = 0xcbf29ce484222325U;
  void add(std::uint64_t number) {
    for (int byte = 0; byte < 8; ++byte) {
      value = (value ^ (number & 0xff)) * 0x100000001b3U;
      number >>= 8;
    }
  }
  void add(Colour colour) {
    add(static_cast<std::uint64_t>(colour.red) << 16 | static_cast<std::uint64_t>(colour.green) << 8 | colour.blue);
  }
};

// Where the piece lies and which stitches its ends knit: what all rows depend on besides their own stitches.
std::uint64_t settings_of(const Document& design, const Profile& profile) {
  const Placement placement(design, profile);
  Fingerprint print;
  print.add(static_cast<std::uint64_t>(stitches_of(design)));
  print.add(static_cast<std::uint64_t>(placement.column_of(first_needle_of(design))));
  print.add(end_needles_knit_contrast(design, profile) ? 1 : 0);
  print.add(static_cast<std::uint64_t>(design.grid.width()));
  print.add(std::bit_cast<std::uint64_t>(design.gauge.stitches));
  print.add(std::bit_cast<std::uint64_t>(design.gauge.rows));
  return print.value;
}

// Of each drawn row's stitches, and of those on which floats are caught.
std::vector<std::uint64_t> fingerprints_of(const Document& design) {
  const Grid& grid = design.grid;
  const Grid& caught = design.marks.caught;
  std::vector<std::uint64_t> prints;
  prints.reserve(static_cast<std::size_t>(grid.height()));
  for (int row = 0; row < grid.height(); ++row) {
    Fingerprint print;
    for (const Grid::Word word : grid.row(row)) {
      print.add(word);
    }
    if (any_marked(caught, row)) {
      for (const Grid::Word word : caught.row(row)) {
        print.add(word);
      }
    }
    prints.push_back(print.value);
  }
  return prints;
}

// Of each drawn row's stitches, and behind them one of all the yarns' colours.
std::vector<std::uint64_t> drawn_prints(const Document& design) {
  std::vector<std::uint64_t> prints = fingerprints_of(design);
  Fingerprint colours;
  for (const Yarn& yarn : design.yarns) {
    colours.add(static_cast<std::uint64_t>(static_cast<unsigned char>(yarn.key)));
    colours.add(yarn.colour);
  }
  prints.push_back(colours.value);
  return prints;
}

// Of rows to knit, of which there may be a thousand times as many as drawn ones: neighbours share their yarns.
class RowPrints {
public:
  explicit RowPrints(const Document& design) : design_(design), drawn_(fingerprints_of(design)) {}

  std::uint64_t of(const RowToKnit& row) {
    if (row.main != main_ || row.contrast != contrast_) {
      main_ = row.main;
      contrast_ = row.contrast;
      Fingerprint print;
      print.add(yarn_of(design_, main_).colour);
      print.add(yarn_of(design_, contrast_ != 0 ? contrast_ : main_).colour);
      print.add(contrast_ != 0 ? 1 : 0);
      yarns_ = print.value;
    }
    return row.drawn < 0 ? yarns_ : yarns_ * 31 + drawn_[static_cast<std::size_t>(row.drawn)];
  }

private:
  const Document& design_;
  std::vector<std::uint64_t> drawn_;
  char main_ = 0;
  char contrast_ = 0;
  std::uint64_t yarns_ = 0;
};

} // namespace

ClothPainter::Frame ClothPainter::frame_for(const Document& design, const Profile& profile, int knitted,
                                            const ClothView& view) {
  const double stitch_mm = design.gauge.stitch_mm();
  const double row_mm = design.gauge.row_mm();
  Frame frame{view, stitches_of(design), knitted, 0, settings_of(design, profile)};
  if (view.afar) {
    frame.view.face = Face::knit; // that is worn, whichever side was looked at before
    frame.stitches = std::max(1, static_cast<int>(afar_mm / stitch_mm));
    frame.px_per_mm = view.width / afar_mm;
    frame.rows = std::max(1, static_cast<int>(view.height / (row_mm * frame.px_per_mm)));
  } else if (view.px_per_mm <= 0) {
    frame.px_per_mm =
        std::min({view.width / (frame.stitches * stitch_mm), view.height / (frame.rows * row_mm), fitted_row / row_mm});
  } else {
    frame.px_per_mm = std::min(view.px_per_mm, largest_row / row_mm);
  }
  return frame;
}

// A line of pixels shows its rows, and the foot of the one above.
bool ClothPainter::scan_due(int scan, const RowsToKnit& rows, const Changes& changes) const {
  if (changes.all) {
    return true;
  }
  const auto from_below = static_cast<std::size_t>(pixels_.height - 1 - scan);
  const auto is_changed = [&](std::size_t place, int number) {
    if (!changes.by_drawn_row) {
      return changes.rows[place] == true;
    }
    const int drawn = rows.rows[static_cast<std::size_t>(number) % rows.rows.size()].drawn;
    return drawn >= 0 && changes.rows[static_cast<std::size_t>(drawn)];
  };
  bool due =
      is_changed(upwards_.shares.size() + from_below, std::min(upwards_.middle[from_below] + 1, frame_.rows - 1));
  for (std::size_t share = upwards_.from[from_below]; !due && share < upwards_.from[from_below + 1]; ++share) {
    due = is_changed(share, upwards_.shares[share].cell);
  }
  return due;
}

ClothPainter::Changes ClothPainter::changes_since(const Document& design, const RowsToKnit& rows,
                                                  std::uint64_t rows_serial, bool all) {
  Changes changes;
  const std::vector<std::uint64_t> before = std::exchange(drawn_, drawn_prints(design));
  changes.by_drawn_row = rows_serial != 0 && rows_serial == rows_serial_ && before.size() == drawn_.size();
  rows_serial_ = rows_serial;
  outdated_.resize(drawn_.size());
  if (changes.by_drawn_row) {
    changes.all = all || before.back() != drawn_.back(); // the yarns' colours, which inserted rows have too
    changes.rows.resize(drawn_.size());
    for (std::size_t row = 0; row < drawn_.size(); ++row) {
      changes.rows[row] = before[row] != drawn_[row];
      outdated_[row] = outdated_[row] || changes.rows[row];
    }
    return changes;
  }
  changes.all = all;
  // Only of the rows that lines of pixels show: first those that have a share of one, then for each line that above it.
  const std::size_t shares = upwards_.shares.size();
  fingerprints_.resize(shares + upwards_.middle.size());
  changes.rows.assign(fingerprints_.size(), all);
  RowPrints prints(design);
  for (std::size_t place = 0; place < fingerprints_.size(); ++place) {
    const int number =
        place < shares ? upwards_.shares[place].cell : std::min(upwards_.middle[place - shares] + 1, frame_.rows - 1);
    const RowToKnit& knitted = rows.rows[static_cast<std::size_t>(number) % rows.rows.size()];
    const std::uint64_t print = prints.of(knitted);
    const bool outdated = knitted.drawn >= 0 && outdated_[static_cast<std::size_t>(knitted.drawn)];
    changes.rows[place] = all || outdated || print != fingerprints_[place];
    fingerprints_[place] = print;
  }
  outdated_.assign(drawn_.size(), false);
  return changes;
}

} // namespace punchwright::editor
