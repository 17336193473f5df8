// Passes to rows: a pass that fills what the one before passed by belongs to the same row of stitches.
#include "knitting/fabric.hpp"

#include <algorithm>

namespace punchwright {
namespace {

bool is_stitch(const Made& cell) {
  return cell.yarn != 0 || cell.missing || cell.slipped;
}

void merge(Made& below, const Made& made) {
  if (made.yarn != 0 || made.missing) {
    const bool caught = below.caught;
    below = made;
    below.caught = caught;
  }
}

} // namespace

int FabricFloat::longest_stretch() const {
  int longest = 0;
  int from = first.position;
  for (const Needle needle : caught) {
    longest = std::max(longest, needle.position - from);
    from = needle.position + 1;
  }
  // Needles out of work among those passed make a stretch no longer than the float has stitches.
  return std::min(std::max(longest, last.position - from + 1), stitches);
}

void Fabric::add(const std::vector<Event>& events) {
  for (const Event& event : events) {
    if (const auto* pass = std::get_if<PassMade>(&event)) {
      add_pass(*pass);
    } else if (const auto* across = std::get_if<YarnAcross>(&event)) {
      across_.push_back(across->yarn);
    } else if (const auto* caught = std::get_if<FloatCaught>(&event); caught != nullptr && !rows_.empty()) {
      cells_of_last()[caught->needle.position - leftmost_.position].caught = true;
    } else {
      add_move(event);
    }
  }
}

bool Fabric::fills_gaps(const PassMade& pass) const {
  if (rows_.empty() || !rows_.back().open) {
    return false;
  }
  const auto last = row(rows() - 1);
  for (std::size_t needle = 0; needle < needles_; ++needle) {
    if ((pass.cells[needle].yarn != 0 || pass.cells[needle].missing) &&
        (last[needle].yarn != 0 || last[needle].missing)) {
      return false;
    }
  }
  return true;
}

void Fabric::add_move(const Event& event) {
  if (const auto* moved = std::get_if<LoopMoved>(&event)) {
    moves_.push_back({rows(), Moved::How::transferred, {moved->from}, {moved->to}});
  } else if (const auto* off = std::get_if<WorkTakenOff>(&event)) {
    taken_off_ = off->from;
  } else if (const auto* back = std::get_if<WorkHungBack>(&event)) {
    moves_.push_back({rows(), Moved::How::hung_back, std::move(taken_off_), back->onto});
    taken_off_.clear();
  } else if (const auto* lifted = std::get_if<LoopLifted>(&event)) {
    moves_.push_back({rows(), Moved::How::lifted, {lifted->from}, {lifted->onto}});
  } else if (const auto* hung = std::get_if<LoopsHungOn>(&event); hung != nullptr && rows() > 0) {
    Moved move{rows(), Moved::How::hung_on, {}, {}};
    for (Needle needle = hung->needles.first; needle <= hung->needles.last; ++needle.position) {
      move.onto.push_back(needle);
    }
    moves_.push_back(std::move(move));
  }
}

// From where the loops that hang on `needles` after that move hung before it.
void Fabric::go_back(std::size_t move, std::vector<Needle>& needles, std::vector<StitchPlace>& stitches) const {
  const Moved& moved = moves_[move];
  std::vector<Needle> before;
  for (const Needle needle : needles) {
    const auto found = std::ranges::find(moved.onto, needle);
    const bool came = found != moved.onto.end();
    const auto place = static_cast<std::size_t>(found - moved.onto.begin());
    switch (moved.how) {
    case Moved::How::transferred:
      if (came) {
        before.push_back(moved.from.front());
      }
      if (needle != moved.from.front()) { // it was emptied
        before.push_back(needle);
      }
      break;
    case Moved::How::hung_back: before.push_back(came ? moved.from[place] : needle); break;
    case Moved::How::hung_on:
      if (!came) {
        before.push_back(needle);
      }
      break;
    case Moved::How::lifted:
      if (!came) {
        before.push_back(needle);
        break;
      }
      std::vector<StitchPlace> newest;
      add_loops(moved.rows, move, moved.from.front(), newest);
      for (const StitchPlace& stitch : newest) {
        const std::vector<StitchPlace> below = hangs_on(stitch);
        stitches.insert(stitches.end(), below.begin(), below.end());
      }
      break;
    }
  }
  needles = std::move(before);
}

// The stitches whose loops hung on that needle before row `row` was begun, and after the first `moves` moves.
void Fabric::add_loops(int row, std::size_t moves, Needle needle, std::vector<StitchPlace>& stitches) const {
  std::vector<Needle> needles{needle};
  for (int below = row - 1; below >= 0 && !needles.empty(); --below) {
    for (; moves > 0 && moves_[moves - 1].rows > below; --moves) {
      go_back(moves - 1, needles, stitches);
    }
    std::erase_if(needles, [&](Needle there) {
      const Made& made = at(below, there);
      if (made.yarn != 0) {
        stitches.push_back({below, there});
      }
      return made.yarn != 0 || made.missing;
    });
  }
}

std::vector<StitchPlace> Fabric::hangs_on(StitchPlace stitch) const {
  const auto later = std::ranges::upper_bound(moves_, stitch.row, {}, &Moved::rows);
  std::vector<StitchPlace> stitches;
  add_loops(stitch.row, static_cast<std::size_t>(later - moves_.begin()), stitch.needle, stitches);
  std::ranges::sort(stitches);
  return stitches;
}

void Fabric::mark_dropped_below(std::size_t needle) {
  for (const StitchPlace& stitch : hangs_on({rows() - 1, Needle{leftmost_.position + static_cast<int>(needle)}})) {
    cells_[static_cast<std::size_t>(stitch.row) * needles_ +
           static_cast<std::size_t>(stitch.needle.position - leftmost_.position)]
        .dropped = true;
  }
}

void Fabric::add_pass(const PassMade& pass) {
  const bool nothing = pass.formed == 0 && pass.let_go == 0;
  if (!rows_.empty() && (nothing || fills_gaps(pass))) {
    Made* const last = cells_of_last();
    for (std::size_t needle = 0; needle < needles_; ++needle) {
      merge(last[needle], pass.cells[needle]);
    }
    ++rows_.back().passes;
    rows_.back().open = std::any_of(last, last + needles_, [](const Made& cell) { return cell.slipped; });
  } else {
    cells_.insert(cells_.end(), pass.cells.begin(), pass.cells.end());
    rows_.push_back({pass.travel, 1, pass.slipped, {}});
  }
  RowMade& row = rows_.back();
  row.loose.insert(row.loose.end(), pass.loose.begin(), pass.loose.end());
  row.loose.insert(row.loose.end(), across_.begin(), across_.end());
  across_.clear();
  for (std::size_t needle = 0; pass.let_go > 0 && needle < needles_; ++needle) {
    if (pass.cells[needle].missing) {
      mark_dropped_below(needle);
      ++dropped_;
    }
  }
}

std::vector<FabricFloat> Fabric::floats(int row_index) const {
  const auto cells = row(row_index);
  std::vector<char> yarns;
  for (const Made& cell : cells) {
    if (cell.yarn != 0 && std::ranges::find(yarns, cell.yarn) == yarns.end()) {
      yarns.push_back(cell.yarn);
    }
  }
  std::vector<FabricFloat> found;
  for (const char yarn : yarns) {
    std::optional<FabricFloat> open; // behind the stitches since the yarn's latest one
    bool knitted = false;
    for (std::size_t index = 0; index < cells.size(); ++index) {
      const Needle needle{leftmost_.position + static_cast<int>(index)};
      if (cells[index].yarn == yarn) {
        if (open) {
          found.push_back(std::move(*open));
          open.reset();
        }
        knitted = true;
      } else if (knitted && is_stitch(cells[index])) {
        if (!open) {
          open = FabricFloat{yarn, needle, needle, 0, {}};
        }
        open->last = needle;
        ++open->stitches;
        if (cells[index].caught) {
          open->caught.push_back(needle);
        }
      }
    }
  }
  std::ranges::sort(found, {}, [](const FabricFloat& one) { return one.first; });
  return found;
}

int Fabric::longest_float(int row_index) const {
  int longest = 0;
  for (const FabricFloat& one : floats(row_index)) {
    longest = std::max(longest, one.longest_stretch());
  }
  return longest;
}

Knitting begin_knitting(MachineState state) {
  Fabric fabric(state);
  return {std::move(state), std::move(fabric), std::nullopt};
}

bool knit_on(Knitting& knitting, const MachineAction& action) {
  Outcome outcome = carry_out(std::move(knitting.state), action);
  knitting.state = std::move(outcome.state);
  if (outcome.refusal) {
    knitting.refusal = outcome.refusal;
    return false;
  }
  knitting.fabric.add(outcome.events);
  return true;
}

} // namespace punchwright
