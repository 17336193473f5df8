// The fabric as the machine made it: for each row and needle the loop's yarn, whether it dropped, and the floats
// behind. Built from the machine's events alone.
#pragma once

#include "knitting/machine.hpp"

#include <span>
#include <vector>

namespace punchwright {

// A yarn passing behind stitches of another one, between two of its own stitches.
struct FabricFloat {
  char yarn = 0;
  Needle first; // leftmost and rightmost needle passed
  Needle last;
  int stitches = 0;           // passed; needles out of work are no stitches
  std::vector<Needle> caught; // where it was lifted onto a needle
  // The longest stretch that hangs free.
  [[nodiscard]] int longest_stretch() const;
  bool operator==(const FabricFloat&) const = default;
};

// A stitch of the fabric.
struct StitchPlace {
  int row = 0;
  Needle needle;
  auto operator<=>(const StitchPlace&) const = default;
};

class Fabric {
public:
  Fabric() = default;
  explicit Fabric(const MachineState& state)
      : leftmost_(state.build.leftmost), needles_(static_cast<std::size_t>(state.build.needles)) {}

  void add(const std::vector<Event>& events);

  [[nodiscard]] int rows() const { return static_cast<int>(rows_.size()); }
  [[nodiscard]] Needle leftmost() const { return leftmost_; }
  // Row from 0, the first one that was knitted lowest.
  [[nodiscard]] std::span<const Made> row(int row) const {
    return {cells_.data() + static_cast<std::size_t>(row) * needles_, needles_};
  }
  [[nodiscard]] const Made& at(int row, Needle needle) const {
    return this->row(row)[static_cast<std::size_t>(needle.position - leftmost_.position)];
  }
  [[nodiscard]] Travel travel(int row) const { return rows_[static_cast<std::size_t>(row)].travel; }
  [[nodiscard]] int passes(int row) const { return rows_[static_cast<std::size_t>(row)].passes; }
  // Yarns that lie across the whole row without a stitch in it.
  [[nodiscard]] const std::vector<char>& loose(int row) const { return rows_[static_cast<std::size_t>(row)].loose; }

  [[nodiscard]] std::vector<FabricFloat> floats(int row) const;
  // The longest free stretch in a row, in stitches; the same as over all floats(), but quick.
  [[nodiscard]] int longest_float(int row) const;
  [[nodiscard]] bool any_dropped() const { return dropped_ > 0; }

  // The stitches through whose loops that one was drawn: of the row below, or of an earlier one where a needle was
  // passed by; on other needles where loops were transferred, lifted, or the work was hung on others. None: cast on, or
  // hung on.
  [[nodiscard]] std::vector<StitchPlace> hangs_on(StitchPlace stitch) const;

private:
  struct RowMade {
    Travel travel = Travel::leftwards;
    int passes = 1;
    bool open = false; // a needle in work was passed by, and may knit this row's stitch in the next pass
    std::vector<char> loose;
  };

  // Loops that came onto needles by hand, after so many rows were begun.
  struct Moved {
    enum class How { transferred, hung_back, lifted, hung_on };
    int rows = 0;
    How how = How::transferred;
    std::vector<Needle> from; // not where they are hung on anew
    std::vector<Needle> onto;
  };

  void add_move(const Event& event);
  void add_loops(int row, std::size_t moves, Needle needle, std::vector<StitchPlace>& stitches) const;
  void go_back(std::size_t move, std::vector<Needle>& needles, std::vector<StitchPlace>& stitches) const;
  void add_pass(const PassMade& pass);
  [[nodiscard]] bool fills_gaps(const PassMade& pass) const;
  void mark_dropped_below(std::size_t needle);
  [[nodiscard]] Made* cells_of_last() { return cells_.data() + (rows_.size() - 1) * needles_; }

  Needle leftmost_;
  std::size_t needles_ = 0;
  std::vector<Made> cells_;
  std::vector<RowMade> rows_;
  std::vector<char> across_; // threaded on the wrong side, before the row to come
  std::vector<Moved> moves_;
  std::vector<Needle> taken_off_; // from which the work was taken that is held now
  int dropped_ = 0;
};

// What came of a list of actions, up to the first that was refused.
struct Knitting {
  MachineState state;
  Fabric fabric;
  std::optional<Refusal> refusal;
};
[[nodiscard]] Knitting begin_knitting(MachineState state);
// False: refused, nothing changed but `refusal`.
bool knit_on(Knitting& knitting, const MachineAction& action);

} // namespace punchwright
