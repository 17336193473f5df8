// Looking ahead between the rows: where a yarn is wanted again, and what stands forward after a pass.
#pragma once

#include "plan/plan.hpp"

#include <optional>
#include <vector>

namespace punchwright {

// Which yarn is wanted in which pass, so that a yarn that is taken out is cut or left hanging as its next use demands.
class YarnUses {
public:
  explicit YarnUses(const RowsToKnit& rows);
  // Where the carriage stands when the yarn is next wanted, from pass `pass` (from 0) on; nothing: not soon enough to
  // let it hang at the edge.
  [[nodiscard]] std::optional<Side> after(std::size_t pass, char yarn) const;

private:
  struct Use {
    Side side = Side::right; // where the carriage stands before the pass
    char main = 0;
    char contrast = 0;
  };
  std::vector<Use> uses_;
};

// The needles that a carriage that selects for the next pass leaves forward when it has read the card for row `number`
// to knit, from 1; beyond the last row too, where an open card shows its overlap rows and a joined one its first rows.
[[nodiscard]] std::vector<Needle> selected_needles(const Document& document, const Profile& profile,
                                                   const RowsToKnit& rows, int number);

} // namespace punchwright
