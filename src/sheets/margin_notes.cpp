// Gathering a card's notes, and fitting them into the column beside it: in smaller type before anything is left to the
// list, and never over one another.
#include "sheets/margin_notes.hpp"

#include "sheets/note_places.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace punchwright {
namespace {

// mm of type. At 1.9 capitals are 1.4 mm high: still read with the sheet in the hand (ISO 9241-303 asks for 16 minutes
// of arc, from memory: 1.4 mm at 300 mm).
constexpr std::array<double, 4> types{2.4, 2.2, 2.05, 1.9};
constexpr double overlap_type = 2.1;  // no more than a reminder
constexpr double between_notes = 0.8; // mm
constexpr double narrowest = 12.0;    // mm: some ten letters of the smallest type
constexpr double usual_shift = 6.0;   // mm that a note may stand off its line before smaller type is tried
constexpr double farthest_shift = 25; // mm: farther, and the eye doesn't follow the leaders

void add_actions(std::vector<MarginNote>& all, const CardLayout& layout, const CardNotes& notes) {
  for (const LineNote& note : notes.lines) {
    const auto y = note.action.empty() ? std::nullopt : y_of_note(layout, notes, note);
    if (y) {
      all.push_back({NoteKind::action, *y, note.number, "", std::to_string(note.number), note.action});
    }
  }
}

// Only the card that holds the last row of all is followed by nothing.
void add_beyond(std::vector<MarginNote>& all, const CardLayout& layout, const CardNotes& notes) {
  if (layout.last_row() != notes.rows_in_all) {
    return;
  }
  const std::size_t first = all.size();
  int line = layout.lines();
  const auto add = [&](int number, const std::string& who, const std::string& what) {
    all.push_back({NoteKind::beyond, layout.y_of_line(line++), number, "", who, what});
  };
  for (const LineNote& note : notes.beyond) {
    add(note.number, std::to_string(note.number), note.action);
  }
  if (!notes.at_end.empty()) {
    add(notes.rows_in_all + 1, end_words(notes), notes.at_end);
  }
  if (!notes.beyond.empty()) { // at the top of them all
    all[layout.first_row_lowest() ? all.size() - 1 : first].heading = tr("beyond the card's last line:");
  }
}

void add_start_and_overlap(std::vector<MarginNote>& all, const CardLayout& layout) {
  if (layout.first_row() == 1) {
    all.push_back({NoteKind::start, layout.y_of_line(layout.line_of(1)), 0, tr("knitting starts here"), "",
                   tr("lock the card with row 1 under the reader")});
  }
  for (const int line : {0, layout.lines() - overlap_rows}) {
    all.push_back({NoteKind::overlap, (layout.y_of_line(line) + layout.y_of_line(line + overlap_rows - 1)) / 2, 0, "",
                   "", tr("2 overlap rows: punch all")});
  }
}

std::string words_told(const MarginNote& note, Told told) {
  if (note.before.empty()) {
    return note.words;
  }
  return fmt::format("{}: {}", note.before, told == Told::by_pointer ? tr("→ list") : note.words);
}

std::vector<NoteLine> lines_told(const MarginNote& note, Told told, double type, double width) {
  std::vector<NoteLine> lines;
  if (told == Told::in_full || note.kind == NoteKind::start) {
    for (std::string& line : lines_of(note.heading, type, true, width)) {
      lines.push_back({std::move(line), true});
    }
  }
  for (std::string& line : lines_of(words_told(note, told), type, false, width)) {
    lines.push_back({std::move(line), false});
  }
  return lines;
}

// A word that has to be broken is no easy reading.
bool words_fit(const std::vector<MarginNote>& notes, Told told, double type, double width) {
  return std::ranges::all_of(notes, [&](const MarginNote& note) {
    return widest_word(note.heading, type, true) <= width && widest_word(words_told(note, told), type, false) <= width;
  });
}

struct Fitted {
  MarginColumn column;
  double shift = 0; // the farthest of a note with a leader
};

std::optional<Fitted> fitted(const std::vector<MarginNote>& notes, const NoteRoom& room, Told told, double type) {
  Fitted result{{told, {}}, 0};
  std::vector<WishedPlace> wishes;
  for (const MarginNote& note : notes) {
    const double own_type = note.kind == NoteKind::overlap ? std::min(type, overlap_type) : type;
    PlacedNote placed{note.kind, note.line, note.line, own_type, lines_told(note, told, own_type, room.width)};
    wishes.push_back({note.line, static_cast<double>(placed.lines.size()) * own_type * note_leading + between_notes});
    result.column.notes.push_back(std::move(placed));
  }
  const auto middles = places_of(wishes, room.top, room.bottom);
  if (!middles) {
    return std::nullopt;
  }
  for (std::size_t index = 0; index < notes.size(); ++index) {
    PlacedNote& note = result.column.notes[index];
    note.middle = (*middles)[index];
    if (note.kind != NoteKind::beyond) {
      result.shift = std::max(result.shift, std::abs(note.middle - note.line));
    }
  }
  return result;
}

// The largest type in which every note stands near its line, else the one in which they stand nearest.
std::optional<Fitted> best_fitted(const std::vector<MarginNote>& notes, const NoteRoom& room, Told told) {
  std::optional<Fitted> best;
  for (const double type : types) {
    if (!words_fit(notes, told, type, room.width)) {
      continue;
    }
    auto next = fitted(notes, room, told, type);
    if (next && next->shift <= usual_shift) {
      return next;
    }
    if (next && (!best || next->shift < best->shift)) {
      best = std::move(next);
    }
  }
  return best;
}

MarginColumn by_marks(const std::vector<MarginNote>& notes) {
  MarginColumn column{Told::by_mark, {}};
  for (const MarginNote& note : notes) {
    column.notes.push_back({note.kind, note.line, note.line, types.back(), {}});
  }
  return column;
}

} // namespace

// Overlap rows lie over the neighbouring card's rows, and those carry the notes; only the last card's end has none.
std::optional<double> y_of_note(const CardLayout& layout, const CardNotes& notes, const LineNote& note) {
  const int line = layout.line_of(note.row);
  const bool elsewhere =
      note.row < layout.first_row() || (note.row > layout.last_row() && note.row <= notes.rows_in_all);
  return elsewhere || line >= layout.lines() ? std::nullopt : std::optional(layout.y_of_line(line));
}

std::vector<MarginNote> notes_beside(const CardLayout& layout, const CardNotes& notes) {
  std::vector<MarginNote> all;
  add_actions(all, layout, notes);
  add_start_and_overlap(all, layout);
  add_beyond(all, layout, notes);
  std::ranges::stable_sort(all, {}, &MarginNote::line);
  return all;
}

std::vector<MarginNote> notes_beside(const CardLayout& layout, const CardNotes& notes, const CardPart& part) {
  std::vector<MarginNote> all = notes_beside(layout, notes);
  const bool last_end = layout.first_row_lowest() ? part.top <= 0 : part.bottom >= layout.height();
  std::erase_if(
      all, [&](const MarginNote& note) { return note.kind == NoteKind::beyond ? !last_end : !part.holds(note.line); });
  return all;
}

MarginColumn margin_column(const std::vector<MarginNote>& notes, const NoteRoom& room) {
  if (notes.empty()) {
    return {};
  }
  if (room.width >= narrowest) {
    for (const Told told : {Told::in_full, Told::by_pointer}) {
      auto best = best_fitted(notes, room, told);
      if (best && best->shift <= farthest_shift) {
        return std::move(best->column);
      }
    }
  }
  return by_marks(notes);
}

GrownColumn margin_column_in_full(const std::vector<MarginNote>& notes, NoteRoom room) {
  for (const MarginNote& note : notes) {
    if (note.kind == NoteKind::action || note.kind == NoteKind::beyond) {
      room.width = std::max({room.width, width_of(note.heading, types.front(), true) + 0.1,
                             width_of(words_told(note, Told::in_full), types.front(), false) + 0.1});
    }
  }
  if (auto best = best_fitted(notes, room, Told::in_full)) {
    return {std::move(best->column), room};
  }
  NoteRoom endless = room;
  endless.bottom = std::numeric_limits<double>::max() / 4;
  MarginColumn column = fitted(notes, endless, Told::in_full, types.back())->column;
  for (const PlacedNote& note : column.notes) {
    room.bottom = std::max(room.bottom, note.middle + static_cast<double>(note.lines.size()) * note.type);
  }
  return {std::move(column), room};
}

} // namespace punchwright
