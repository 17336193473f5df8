// A whole yoke worked out: for every size all pieces with their counts, places, decreases and columns, the seams, rows
// and yarn. The command line, the sheets and the editor show this; none of them works anything out again.
#pragma once

#include "pieces/ring_places.hpp"
#include "pieces/shaping.hpp"
#include "pieces/size_counts.hpp"
#include "pieces/yarn_amounts.hpp"
#include "pieces/yoke_rows.hpp"

#include <string>
#include <vector>

namespace punchwright {

struct TierOfPiece {
  int stitches = 0; // seam stitches included
  double ideal = 0; // the straight cone, at the height of the tier's first row
  PieceOnBed bed;
  Shaping shaping;    // above the tier's rows; shaping.after is the next tier's stitches
  Needle first_after; // needles in work afterwards: the next tier's place; above the last one the middle of the bed
  Needle last_after;
};

struct PieceOfSize {
  std::string name;
  std::vector<TierOfPiece> tiers; // from the bottom upwards
  double ideal_after = 0;         // the top, against the stitches after the last decreases
};

struct TierSeams {
  std::vector<SeamMeeting> seams;
  std::string mend;
};

struct SizePlan {
  std::string size;
  std::vector<PieceOfSize> pieces;
  std::vector<TierSeams> seams; // by tier
  std::vector<int> heights;     // see tier_heights()
  RowsOfYoke rows;
  std::vector<YarnAmount> yarns;
  Counts proof;
};

struct YokePlan {
  std::vector<SizePlan> sizes;
  std::vector<LoopCheck> loops;
};

// Of a size whose pieces fit the bed. Refused where no counts fit.
[[nodiscard]] Result<SizePlan> plan_size(const OpenedYoke& opened, std::size_t size);

// Every size by itself.
struct SizesPlanned {
  YokePlan plan;                          // of a size that doesn't fit the name alone: it has no pieces
  std::vector<std::vector<Error>> faults; // by size: all that keeps it from fitting; none: it fits
  [[nodiscard]] bool fits(std::size_t size) const { return faults[size].empty(); }
};
[[nodiscard]] SizesPlanned plan_sizes(const OpenedYoke& opened);

// With a search of so many parts at most, and without why nothing fits: for those who can't wait.
struct PlanTried {
  std::optional<SizePlan> plan;
  bool gave_up = false; // whether anything fits is not known
};
[[nodiscard]] PlanTried try_plan(const OpenedYoke& opened, std::size_t size, int most_parts = most_count_parts,
                                 const std::stop_token& stop = {});
// So many parts are searched in some hundredths of a second; 0: not even one is.
[[nodiscard]] int parts_at_once(const OpenedYoke& opened, std::size_t size);
// The first piece that is too wide, as an error.
[[nodiscard]] Failure bed_failure(const OpenedYoke& opened);
// All that are too wide in that size.
[[nodiscard]] std::vector<Error> bed_failures(const OpenedYoke& opened, std::size_t size);

// The tier as it is knitted in that piece: with it, rows, cards, needles, steps and checks are those of any design.
[[nodiscard]] Document document_of(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier);

// Whether the work goes onto needles after that tier: to the next one, and above the last one where stitches are made.
[[nodiscard]] bool is_hung_on_again(const OpenedYoke& opened, const TierOfPiece& there, std::size_t tier);

// The first row of the yoke above that tier's own stitches: on `shaping.after` of them. The row after the decreases is
// one of these; needles are filled when the work is hung on, behind that row.
[[nodiscard]] int first_shaped_row(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier);
// Of a row of the yoke that belongs to that tier.
[[nodiscard]] int stitches_in_row(const OpenedYoke& opened, const SizePlan& size, std::size_t piece, std::size_t tier,
                                  int row);

// Whether it hangs already where it should go on.
[[nodiscard]] bool stays_on_needles(const OpenedYoke& opened, const TierOfPiece& there, std::size_t tier);

// Between a tier's last row and the next tier's first one, beside moving the work.
struct BetweenTiers {
  int more_rows = 0;               // of one colour, before the decreases
  int rows_after = 0;              // after them, on the same needles
  char yarn = 'A';                 // in the feeder, from the tier's end on
  bool yarn_out = false;           // and cut
  std::optional<Side> begins;      // where the next tier begins; none: there is none
  std::optional<Side> carriage_to; // the same, if the carriage stands on the other side
};
[[nodiscard]] BetweenTiers between_tiers(const OpenedYoke& opened, const SizePlan& size, std::size_t piece,
                                         std::size_t tier);

// Moving the work from a tier to the next one, in the order of doing it, in plain words: decreases, the row after them,
// off, needles, on again. It follows the tier's steps, which end with the last plain row, and is followed by the next
// tier's, which begin with hanging on and the rows that set up. Above the last tier it ends with the work off, or,
// where stitches are made there, hung on again with the needles filled.
struct MovingStep {
  std::string words;
  bool is_remark = false; // nothing is done by it
};
[[nodiscard]] std::vector<MovingStep> moving_words(const OpenedYoke& opened, const SizePlan& size, std::size_t piece,
                                                   std::size_t tier);

} // namespace punchwright
