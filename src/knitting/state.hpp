// The machine with the work on it, as it stands between two actions: a plain value that can be kept and compared.
// It knows nothing of drawings, rows to knit or plans, so that it can prove them.
#pragma once

#include "design/units.hpp"
#include "machine/profile.hpp"

#include <array>
#include <cstdint>
#include <memory>
#include <vector>

namespace punchwright {

// Positions by what they do. A needle in upper working position stands forward: it knits the second yarn, or slips
// where the carriage is set so.
enum class NeedlePosition : std::uint8_t { out_of_work, working, upper, holding };

struct BedNeedle {
  NeedlePosition position = NeedlePosition::out_of_work;
  std::uint8_t loops = 0; // hanging on it; two or more after a transfer
  char yarn = 0;          // of the newest loop; 0: none
  bool operator==(const BedNeedle&) const = default;
};

// What the carriage does with the needles that it passes.
enum class KnitSetting : std::uint8_t {
  plain,        // all knit from the first feeder
  two_colour,   // those that stand back from the first feeder, those that stand forward from the second
  back_only,    // one feeder: those that stand back knit, those that stand forward slip
  forward_only, // one feeder: those that stand forward knit, the others slip
};

struct CarriageSettings {
  bool selecting = false;   // reads the card
  bool end_needles = false; // brings the end needles forward when it selects
  KnitSetting knitting = KnitSetting::plain;
  bool operator==(const CarriageSettings&) const = default;
};

// The holes of a card as the reader feels them: row 1 is read first, column 1 selects the reader's first needle. Beyond
// its rows lie the fully punched overlap rows, and beyond these nothing that could hold a feeler back: all holes.
class PunchedCard {
public:
  PunchedCard() = default;
  PunchedCard(int columns, int rows)
      : columns_(columns), rows_(rows), holes_(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows)) {}

  [[nodiscard]] int columns() const { return columns_; }
  [[nodiscard]] int rows() const { return rows_; }
  [[nodiscard]] bool at(int row, int column) const { return row < 1 || row > rows_ || holes_[place(row, column)] != 0; }
  // Row and column on the card.
  void set(int row, int column, bool hole) { holes_[place(row, column)] = hole ? 1 : 0; }

  bool operator==(const PunchedCard&) const = default;

private:
  [[nodiscard]] std::size_t place(int row, int column) const {
    return static_cast<std::size_t>(row - 1) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(column - 1);
  }
  int columns_ = 0;
  int rows_ = 0;
  std::vector<std::uint8_t> holes_;
};

// The card in the machine. It moves on at the beginning of a pass, unless it is locked, and is read then.
struct CardInReader {
  std::shared_ptr<const PunchedCard> card; // null: none
  bool joined = false;                     // into a loop: after its last row comes its first
  int row = 1;                             // under the reader
  bool locked = false;
  bool double_length = false; // every row is read twice
  bool read_once = false;     // double length: the row has been read for the first time
  bool operator==(const CardInReader&) const = default;
};

// A yarn that is out of the feeders and still joined to the work.
struct HangingYarn {
  char yarn = 0;
  Side side = Side::right;
  bool operator==(const HangingYarn&) const = default;
};

// What hung on one needle, and is held by a comb or waste yarn now.
struct LoopsOff {
  std::uint8_t loops = 0;
  char yarn = 0;
  bool operator==(const LoopsOff&) const = default;
};

// The part of a profile that the machine is built from.
struct MachineBuild {
  Needle leftmost{-100};
  int needles = 200;
  int feeders = 2;
  Selects selects = Selects::next_pass;
  Needle reader_first{-12};
  HoleMeans hole = HoleMeans::contrast;
  bool operator==(const MachineBuild&) const = default;
};

struct MachineState {
  MachineBuild build;
  std::vector<BedNeedle> needles; // from the leftmost
  Side carriage = Side::right;
  CarriageSettings settings;
  std::array<char, 2> feeders{}; // yarn in each; 0: none
  std::vector<HangingYarn> hanging;
  std::vector<LoopsOff> off; // work that was taken off, from left to right
  CardInReader card;
  int stored_row = 0;      // selecting in the pass that knits: the card's row that the carriage carries
  bool has_stored = false; // and whether it carries one
  int counter = 0;         // a pass each

  [[nodiscard]] const BedNeedle& at(Needle needle) const {
    return needles[static_cast<std::size_t>(needle.position - build.leftmost.position)];
  }
  [[nodiscard]] BedNeedle& at(Needle needle) {
    return needles[static_cast<std::size_t>(needle.position - build.leftmost.position)];
  }
  [[nodiscard]] bool has(Needle needle) const {
    return needle >= build.leftmost && needle.position < build.leftmost.position + build.needles;
  }
  bool operator==(const MachineState&) const = default;
};

// Another card into the machine, with the length switch as it is found: at double. By hand there is none to put in.
void put_card_in(MachineState& state, std::shared_ptr<const PunchedCard> card, bool joined);

// The machine as the last knitter left it: empty, the length switch at double, nothing set, the carriage on that side.
[[nodiscard]] MachineState machine_as_found(const Profile& profile, Side carriage,
                                            std::shared_ptr<const PunchedCard> card = nullptr, bool joined = false);

} // namespace punchwright
