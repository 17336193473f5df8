// Row numbers and actions laid onto the card's lines.
//
//     number n stands beside punched row n + offset: that line is visible while row n is under the reader.
#include "sheets/card_notes.hpp"

#include "sheets/card_layout.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <map>

namespace punchwright {
namespace {

using Actions = std::map<int, std::string>; // in words, by row to knit

// With one feeder the yarns change between the two passes of a row as well: "Oat in; then Ink".
Actions actions_by_row(const Document& document, const std::vector<RowActions>& done) {
  Actions actions;
  for (const RowActions& entry : done) {
    std::string& text = actions[entry.row];
    text += text.empty() ? "" : "; ";
    // What goes in; that the other one comes out of the only feeder goes without saying, and there is little room.
    text += entry.pass == 1 ? text_of(entry.actions, document)
                            : said("then {}", yarn_of(document, entry.actions.back().yarn).name);
  }
  return actions;
}

// What is done before row `number` of the card. On a loop the later circuits count, since the first begins with
// threading that is not repeated; where the two differ the first time is named.
std::string action_at(const Actions& actions, const CardPlan& plan, int rows_to_knit, int number) {
  const auto text_at = [&](int row) {
    const auto found = actions.find(row);
    return found == actions.end() || row > rows_to_knit ? std::string() : found->second;
  };
  std::string first = text_at(number);
  const int later_row = number + plan.circuit;
  if (!plan.loop || later_row > rows_to_knit) {
    return first;
  }
  std::string later = text_at(later_row);
  if (first == later || number > plan.circuit) {
    return later;
  }
  if (later.empty()) {
    return said("first time {}", first);
  }
  return first.empty() ? said("later {}", later) : said("first time {}; later {}", first, later);
}

} // namespace

std::string end_words(const CardNotes& notes) {
  return notes.loop ? tr("after the last time round") : tr("after the last row");
}

CardNotes card_notes(const Document& document, const Profile& profile, const RowsToKnit& rows, const CardPlan& plan) {
  const int knitted = static_cast<int>(rows.rows.size());
  const std::vector<RowActions> done = actions_of(document, profile, rows);
  const Actions actions = actions_by_row(document, done);
  CardNotes notes;
  notes.rows_in_all = plan.rows_in_all;
  notes.at_end = text_at_end(done, rows, document);
  notes.loop = plan.loop;
  for (int number = 1; number <= plan.rows_in_all; ++number) {
    LineNote note;
    note.number = number;
    const std::optional<int> row = row_beside_number(plan, *profile.card, number);
    note.row = row.value_or(number + profile.card->reader_offset);
    note.circuit_start = plan.loop && plan.circuit < plan.rows_in_all && number > 1 && (number - 1) % plan.circuit == 0;
    note.action = action_at(actions, plan, knitted, number);
    if (!note.action.empty()) {
      notes.all.emplace_back(number, note.action);
    }
    if (row) {
      notes.last_number = std::max(notes.last_number, number);
      notes.lines.push_back(std::move(note));
    } else if (!note.action.empty()) {
      notes.beyond.push_back(std::move(note));
    }
  }
  std::ranges::sort(notes.lines, {}, &LineNote::row);
  return notes;
}

} // namespace punchwright
