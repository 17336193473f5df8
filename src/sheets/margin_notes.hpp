// What stands at the right of a card: what hands do before a row, where the knitting starts, the overlap. Nothing of it
// is lost or cut: where there is no room, the margin points to a list that has all of it.
#pragma once

#include "sheets/card_layout.hpp"
#include "sheets/card_notes.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright {

struct CardPart {
  double top = 0; // y of the card that the part starts and ends with
  double bottom = 0;
  [[nodiscard]] bool holds(double y) const { return y >= top && y < bottom; }
};

enum class NoteKind {
  action,  // beside a number
  start,   // beside row 1
  overlap, // beside the fully punched rows
  beyond   // its number has no line on the card any more
};

struct MarginNote {
  NoteKind kind = NoteKind::action;
  double line = 0;     // y of the card's line that it belongs to; beyond: of a line farther on
  int number = 0;      // row to knit before which it is done; 0: before the first
  std::string heading; // in bold, above the words
  std::string before;  // "12", "after the last row"; empty where it is no row before which something is done
  std::string words;   // "Ink out, end needles back"
};
// Where a note's number stands; none where it is on another card.
[[nodiscard]] std::optional<double> y_of_note(const CardLayout& layout, const CardNotes& notes, const LineNote& note);
// All notes of a card, from the top downwards.
[[nodiscard]] std::vector<MarginNote> notes_beside(const CardLayout& layout, const CardNotes& notes);
// Those that stand beside that part of it.
[[nodiscard]] std::vector<MarginNote> notes_beside(const CardLayout& layout, const CardNotes& notes,
                                                   const CardPart& part);

// Where notes may stand, in the card's own coordinates.
struct NoteRoom {
  double top = 0;
  double bottom = 0;
  double width = 0;
};

struct NoteLine {
  std::string text;
  bool bold = false;
};
struct PlacedNote {
  NoteKind kind = NoteKind::action;
  double line = 0;
  double middle = 0;           // y of the block's middle
  double type = 2.4;           // mm
  std::vector<NoteLine> lines; // none: only the mark on the card stands
};

enum class Told { in_full, by_pointer, by_mark }; // but for the first, a list must go with the card
struct MarginColumn {
  Told told = Told::in_full;
  std::vector<PlacedNote> notes;
};
constexpr double note_leading = 1.14; // of the type size

// In full where that is legible, else by pointers, else only by marks on the card.
[[nodiscard]] MarginColumn margin_column(const std::vector<MarginNote>& notes, const NoteRoom& room);

// In full whatever it takes: the room grows to the right and downwards.
struct GrownColumn {
  MarginColumn column;
  NoteRoom room;
};
[[nodiscard]] GrownColumn margin_column_in_full(const std::vector<MarginNote>& notes, NoteRoom room);

} // namespace punchwright
