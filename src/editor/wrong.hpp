// What the knitter sees on her fabric, marked stitch by stitch; from it, what may have been done differently. The marks
// begin as the planned fabric, so that she marks only what is otherwise.
#pragma once

#include "design/edits.hpp"
#include "design/units.hpp"

#include <string>
#include <vector>

namespace punchwright {
struct Document;
struct Profile;
struct RowsToKnit;
} // namespace punchwright

namespace punchwright::editor {

struct SeenRow {
  std::string
      marks;       // along the bed, from the piece's leftmost needle: '.', '#', 'o', '?' as in a picture of the fabric
  int planned = 0; // row to knit, from 0, whose yarns it shows
  bool operator==(const SeenRow&) const = default;
};

struct SeenForm {
  std::vector<SeenRow> rows;    // from row 1 upwards
  std::vector<SeenRow> planned; // the same, as planned; all rows of the piece
  Face face = Face::purl;       // which side of the fabric is looked at
  Cell cursor;                  // column along the bed
  bool rest_unseen = false;     // what isn't marked wasn't looked at, else it is as planned
  bool operator==(const SeenForm&) const = default;

  [[nodiscard]] int width() const { return planned.empty() ? 0 : static_cast<int>(planned.front().marks.size()); }
  [[nodiscard]] int height() const { return static_cast<int>(rows.size()); }
};

enum class SeenChange {
  other_yarn, // of the stitch at the cursor
  dropped,
  not_looked_at,
  as_planned,
  row_main, // the cursor's whole row
  row_contrast,
  row_missing, // it is left out, what lies above sits lower
  row_twice,   // it stands there twice
  shift_left,  // the row and all above it, as they are looked at
  shift_right,
  all_as_planned,
};

// More rows than this are no picture that one marks by hand.
inline constexpr int most_seen_rows = 300;

// The planned fabric's lowest `knitted` rows.
[[nodiscard]] SeenForm seen_form(const Document& document, const Profile& profile, const RowsToKnit& rows, int knitted);
[[nodiscard]] SeenForm with_change(SeenForm form, SeenChange change);
// More or fewer rows of what is seen; new ones are as planned.
[[nodiscard]] SeenForm with_height(SeenForm form, int rows);
[[nodiscard]] SeenForm with_cursor(SeenForm form, int columns, int rows); // moved by so many, as it is looked at
// Whether the stitch is otherwise than planned.
[[nodiscard]] bool is_marked(const SeenForm& form, int column, int row);
[[nodiscard]] int marked_stitches(const SeenForm& form);
// The picture that the search reads: what isn't marked as '?' where the rest wasn't looked at.
[[nodiscard]] std::vector<std::string> picture_of(const SeenForm& form);

struct Explained {
  std::vector<std::string> causes; // one, or two together
  std::string remedy;
};
struct WrongAnswer {
  bool as_planned = false;
  int tried = 0;
  std::vector<Explained> explanations; // the likeliest first
  std::string trouble;                 // why nothing, or not everything, was looked for
};

} // namespace punchwright::editor
