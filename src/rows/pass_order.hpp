// Which yarn goes first in the two passes that a two-colour row takes on a machine with one feeder.
// Apart from the derivation of the rows: the number and the sides of the passes are the same in either order.
#pragma once

#include "rows/rows.hpp"

#include <vector>

namespace punchwright {

// Chooses `contrast_first` for every row of two passes. The carriage can take a yarn along only from the side where it
// hangs: after an even number of passes without it (common practice). Otherwise the carriage would have to go across
// empty to fetch it, or the yarn is cut and joined anew. Of all orders one with the fewest such empty passes is found,
// by search over the whole knitting, so that main and contrast take turns in going first wherever that helps:
//
//     carriage    right  <-- A --   left   row 1: main first
//                 right  -- B -->   right         B comes back to the carriage's side
//                 right  <-- B --   left   row 2: contrast first, A waits on the left
//                 right  -- A -->   right
//
// Of orders that are equally good that one is taken in which the two take turns most often. A yarn that isn't wanted
// for more than most_passes_hanging passes is cut in any case, and may be joined on either side. Before row 1 its main
// has just knitted.
void order_passes(std::vector<RowToKnit>& rows);

// How many passes find their yarn on the other side, in the order that the rows have.
[[nodiscard]] int empty_passes(const std::vector<RowToKnit>& rows);

} // namespace punchwright
