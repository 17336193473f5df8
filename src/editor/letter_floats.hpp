// Which letters make a float too long, and where: for the remark beside the words that are typed, before they are set
// down.
#pragma once

#include "design/edits.hpp"
#include "drawing/alphabet.hpp"
#include "rules/findings.hpp"

#include <string>
#include <vector>

namespace punchwright::editor {

// Among the lettering's own rows and columns; a float that lies beside all letters shows at their edge.
struct LetterFloat {
  int row = 0;
  int column = 0;
  int columns = 0;

  bool operator==(const LetterFloat&) const = default;
};

struct LetterFloats {
  std::vector<LetterFloat> places; // one a float
  std::string letters;             // at which they are: "i, l"
};

// The floats of `then` that aren't among `there`, of letters that lie with their lowest left stitch on `corner`.
[[nodiscard]] LetterFloats floats_of_letters(const Lettering& lettering, Cell corner, const Grid& drawing,
                                             const std::vector<Finding>& there, const std::vector<Finding>& then);

} // namespace punchwright::editor
