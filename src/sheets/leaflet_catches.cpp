// The leaflet's part on floats that are caught by hand: how that is done, and after which rows onto which needles. A
// design without such floats has none.
#include "sheets/leaflet_parts.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace punchwright {

using namespace leaflet;

namespace {

constexpr double room_for_catches = 60.0; // mm, of a list that takes more than a page

using Catches = std::vector<std::vector<Needle>>; // by row to knit

Catches catches_of(const LeafletMachine& machine) {
  Catches catches;
  for (const RowToKnit& row : machine.rows.rows) {
    catches.push_back(caught_needles(machine.document, machine.profile, row));
  }
  return catches;
}

bool any_in(const Catches& catches) {
  return std::ranges::any_of(catches, [](const auto& needles) { return !needles.empty(); });
}

// Common practice of catching floats on a single bed.
std::vector<FlowBlock> how(double width) {
  std::vector<FlowBlock> blocks{leaflet_text(
      tr("Some floats are longer than fingers and buttons leave in peace. They stay as they are drawn, and "
         "are caught while they are knitted:"),
      width)};
  for (const char* const text :
       {tr("Knit the row. Before anything else is done, look below each needle that is named for it: across its stitch "
           "lies the strand of the other yarn."),
        tr("Take up that strand with a transfer tool or a hook, without drawing it tight, and lay it over the needle "
           "into its hook, beside the stitch."),
        tr("The next row knits both off together. A strand drawn tight puckers the cloth, and shows as a speck on the "
           "knit side.")}) {
    blocks.push_back(leaflet_item(text, width));
  }
  return blocks;
}

// "7  L4 R9" for each row after which something is caught.
std::vector<FlowBlock> rows_of(const Catches& catches, int listed, double width) {
  const double indent = width_of(std::to_string(listed), body_type, true) + 2.4;
  std::vector<FlowBlock> rows;
  for (int row = 1; row <= listed; ++row) {
    const auto& needles = catches[static_cast<std::size_t>(row - 1)];
    if (needles.empty()) {
      continue;
    }
    rows.push_back(
        paragraph(text_of(runs_of(needles)), width, {body_type, false, indent},
                  {text_shape({indent - 1.6, base_line}, std::to_string(row), body_type, Anchor::end, true)}));
    rows.back().whole = true;
  }
  return rows;
}

void set_list(LeafletPages& pages, const std::string& heading, const Catches& catches) {
  const int listed = static_cast<int>(
      period_of(catches.size(), [&](std::size_t one, std::size_t other) { return catches[one] == catches[other]; }));
  pages.gap(half_line);
  pages.set({leaflet_subheading(heading, pages.width())}, 1);
  pages.set(rows_of(catches, listed, pages.column_width(2)), 2);
  if (const int rows = static_cast<int>(catches.size()); listed < rows) {
    pages.gap(half_line);
    pages.set({leaflet_text(again_words(listed, rows) + ".", pages.width())}, 1);
  }
}

} // namespace

void add_catches(LeafletPages& pages, const LeafletMachine& by_card, const LeafletMachine& by_hand) {
  std::vector<std::pair<const LeafletMachine*, Catches>> lists;
  for (const LeafletMachine* const machine : {&by_card, &by_hand}) {
    if (machine->misfits.empty()) {
      lists.emplace_back(machine, catches_of(*machine));
    }
  }
  std::erase_if(lists, [](const auto& list) { return !any_in(list.second); });
  if (lists.empty()) {
    return;
  }
  const bool one_for_both = lists.size() == 2 && lists.front().second == lists.back().second;
  pages.add_part(tr("Floats caught by hand"), room_for_catches, [&](LeafletPages& on) {
    on.set(how(on.width()), 1);
    if (one_for_both || lists.size() == 1) {
      set_list(on, tr("After the row, onto the needles"), lists.front().second);
      return;
    }
    for (const auto& [machine, catches] : lists) {
      set_list(on, said("{}, after the row, onto the needles", name_of_kind(machine->profile)), catches);
    }
  });
}

} // namespace punchwright
