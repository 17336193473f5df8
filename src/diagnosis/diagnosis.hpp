// 'What went wrong?': the departures from the steps whose fabric is what the knitter sees, and the way back.
#pragma once

#include "design/result.hpp"
#include "diagnosis/departures.hpp"

#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

// What the knitter sees, row by row; row 1 is the first row to knit, and columns run along the bed from the piece's
// leftmost needle, as she sees it.
enum class Mark : char { main = '.', contrast = '#', dropped = 'o', not_looked_at = '?' };
struct SeenFabric {
  std::vector<std::vector<Mark>> rows; // from row 1 upwards; all as wide as the piece
};

// Lines of '.', '#', 'o' and '?', the top row first, the lowest line row 1; empty lines and lines that begin with ';'
// are left alone. `face`: which side of the fabric the lines show.
[[nodiscard]] Result<SeenFabric> read_seen(std::string_view text, const std::string& name, int stitches, Face face);

// How to go on.
struct Remedy {
  int back_to_row = 0;         // the last row that is right; 0: begin again with the setting-up
  int ravel_rows = 0;          // rows of what is seen to be ravelled back
  Side carriage = Side::right; // where it stands then
  int card_row = 0;            // to be put under the reader; 0: no card
  int counter = 0;             // what the row counter shows before the next row
  std::vector<Needle> forward; // needles that stand forward before the next row is knitted
  std::string text;
};

struct Explanation {
  std::vector<Departure> departures; // one or two
  double weight = 0;                 // likelier ones first
  Remedy remedy;
  std::shared_ptr<const Fabric> fabric; // as far as it was knitted to compare; null: a stitch slipped by itself
};

struct Diagnosis {
  bool as_planned = false; // the marks fit the planned fabric
  int tried = 0;           // departures, pairs of them counted once each
  bool complete = true;    // false: there were more pairs than are tried, and others may fit as well
  std::vector<Explanation> explanations;
};

// All single departures; where none fits, pairs of them, as many as about a second allows. It ends soon after it is
// told to stop; what it gives then is worth nothing.
[[nodiscard]] Diagnosis what_went_wrong(const Document& document, const Profile& profile, const RowsToKnit& rows,
                                        const SeenFabric& seen);

// The same with steps and card that are at hand already.
struct Setting {
  const Document& document;
  const Profile& profile;
  const RowsToKnit& rows;
  StepList steps;
  std::shared_ptr<const PunchedCard> card; // null: none
};
[[nodiscard]] Setting setting_of(const Document& document, const Profile& profile, const RowsToKnit& rows);
[[nodiscard]] Diagnosis what_went_wrong(const Setting& setting, const SeenFabric& seen, std::stop_token stop = {});

// What to tell of a search that wasn't complete; empty: it was.
[[nodiscard]] std::string words_of_search(const Diagnosis& diagnosis);

} // namespace punchwright
