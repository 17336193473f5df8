// A float hangs between the letters at its two ends, or behind the ones that it passes.
#include "editor/letter_floats.hpp"

#include "design/wrap.hpp"
#include "drawing/utf8.hpp"

#include <algorithm>
#include <iterator>

namespace punchwright::editor {

namespace {

// A float that was too long already, or a part of it, isn't the letters'.
bool was_there(const Finding& made, const std::vector<Finding>& there, int width) {
  return std::ranges::any_of(there, [&](const Finding& old) {
    const int from = round_edge(made.first_column - old.first_column, width);
    return is_long_float_of_repeat(old) && old.row == made.row && old.yarn == made.yarn &&
           from + made.stitches <= old.stitches;
  });
}

// Columns counted from the letters' left edge, round the repeat's edge.
std::vector<const LetterPlace*> letters_at(const Lettering& lettering, int first, int stitches, int width) {
  const auto holding = [&](auto&& holds) {
    std::vector<const LetterPlace*> found;
    for (const LetterPlace& place : lettering.places) {
      if (place.character != U' ' && holds(place)) {
        found.push_back(&place);
      }
    }
    return found;
  };
  const auto holds_column = [&](const LetterPlace& place, int column) {
    const int there = round_edge(column, width);
    return there >= place.column && there < place.column + place.columns;
  };
  const int last = first + stitches - 1;
  std::vector<const LetterPlace*> at_ends = holding([&](const LetterPlace& place) {
    return holds_column(place, first - 1) || holds_column(place, first) || holds_column(place, last) ||
           holds_column(place, last + 1);
  });
  return !at_ends.empty()
             ? at_ends
             : holding([&](const LetterPlace& place) { return round_edge(place.column - first, width) < stitches; });
}

LetterFloat place_of(int row, int first, int stitches, int letters_wide, int width) {
  if (first >= letters_wide && first + stitches > width) { // comes round the edge to the first letter
    first -= width;
  }
  const int from = std::clamp(first, -1, letters_wide);
  const int to = std::clamp(first + stitches, from + 1, letters_wide + 1);
  return {row, from, to - from};
}

} // namespace

LetterFloats floats_of_letters(const Lettering& lettering, Cell corner, const Grid& drawing,
                               const std::vector<Finding>& there, const std::vector<Finding>& then) {
  LetterFloats made;
  std::vector<const LetterPlace*> named;
  for (const Finding& finding : then) {
    if (was_there(finding, there, drawing.width())) {
      continue;
    }
    const int row = round_edge(finding.row - corner.row, drawing.height());
    const int first = round_edge(finding.first_column - corner.column, drawing.width());
    const int wide = std::min(lettering.drawing.width(), drawing.width());
    made.places.push_back(place_of(row, first, finding.stitches, wide, drawing.width()));
    std::ranges::copy(letters_at(lettering, first, finding.stitches, drawing.width()), std::back_inserter(named));
  }
  std::u32string said;
  for (const LetterPlace& place : lettering.places) { // in the order in which they are read
    const bool at = std::ranges::find(named, &place) != named.end();
    if (at && said.find(place.character) == std::u32string::npos) {
      said += place.character;
      made.letters += (made.letters.empty() ? "" : ", ") + encoded(place.character);
    }
  }
  return made;
}

} // namespace punchwright::editor
