// A card, or the part of it that fits on a page, as shapes: what is cut, and the marks that guide hand and eye.
// The same drawing serves PDF, PNG and SVG.
#pragma once

#include "sheets/card_layout.hpp"
#include "sheets/card_notes.hpp"
#include "sheets/margin_notes.hpp"

#include <string>
#include <vector>

namespace punchwright {

// Room that the marks beside the card take up.
constexpr double cross_room = 6.0; // mm at each side, for the registration crosses between two pages
constexpr double notes_gap = 6.5;  // mm from the card's edge to the notes at its right

struct CardStyle {
  bool filled_holes = true; // light grey inside, for paper; a cutting machine gets the bare outlines
  bool attributes = false;  // rows and columns at the holes, for scripts that read the SVG
};

struct CardWords {
  std::string title;
  std::string profile; // its name
  std::string number;  // "card 1 of 2"; empty for a single one
  int reader_offset = 0;
};

struct DrawnCard {
  std::vector<Shape> outline;
  std::vector<Shape> holes;
  std::vector<Shape> marks;
};

// `origin` is the place on the sheet of the card's top left corner.
[[nodiscard]] DrawnCard draw_card(const CardLayout& layout, const CardNotes& notes, const CardWords& words,
                                  const CardPart& part, const MarginColumn& column, Point origin,
                                  const CardStyle& style);

// The marks in the card's margins and to the right of it: numbers, notes, direction, words.
void add_margin_marks(std::vector<Shape>& marks, const CardLayout& layout, const CardNotes& notes,
                      const CardWords& words, const CardPart& part, const MarginColumn& column, Point origin);

// Strips of the card that are free of holes, in the card's own coordinates.
struct FreeStrips {
  double left_from = 0; // between feed holes and the leftmost column
  double left_to = 0;
  double right_from = 0;
  double right_to = 0;
  double end = 0; // from a sheet's end to the first row's holes
};
[[nodiscard]] FreeStrips free_strips(const CardLayout& layout);

} // namespace punchwright
