// One finding in the list: its sign, what it is and where, and its words in one line or two.
// The lists are long: only what can be seen is drawn.
#include "editor/finding_entries.hpp"

#include "design/words.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// What it is and where, in a few words: the heading of an entry.
std::string place_of(const Finding& finding, const Finding& last) {
  const std::string title = tr(title_of(finding.id).data());
  if (finding.id == FindingId::yarns_too_alike) {
    return said("{}: {} and {}", title, finding.yarn, finding.other);
  }
  if (finding.row != last.row) {
    return said("Rows {} to {}", std::min(finding.row, last.row) + 1, std::max(finding.row, last.row) + 1);
  }
  if (finding.row < 0) {
    return finding.line > 0 ? said("{}, line {}", title, finding.line) : title;
  }
  std::string place = said("Row {}", finding.row + 1);
  if (finding.first_needle && finding.last_needle) {
    place += fmt::format(", {}–{}", name_of(*finding.first_needle), name_of(*finding.last_needle));
  } else if (finding.first_column >= 0 && finding.first_column == finding.last_column) {
    place = said("{}, column {}", place, finding.first_column + 1);
  } else if (finding.first_column >= 0) {
    place = said("{}, columns {}–{}", place, finding.first_column + 1, finding.last_column + 1);
  }
  return finding.on_piece ? said("{} (piece)", place) : place;
}

Colour colour_of(const Theme& theme, Severity severity) {
  return severity == Severity::fault ? theme.fault : severity == Severity::warning ? theme.warning : theme.note;
}

// Its heading, and so many lines of words.
float height_of_entry(const Theme& theme, int lines) {
  return static_cast<float>(1 + lines) * ImGui::GetTextLineHeight() + 11 * theme.scale;
}

// Beside its sign, of the list's width.
float room_for_words(const Theme& theme, float wide) {
  return wide - 33 * theme.scale;
}

FindingGroup shown_of(const App& app, const Listed& listed) {
  const bool on_needles = app.view.finding >= 0 && app.view.finding == listed.on_piece;
  return on_needles ? FindingGroup{static_cast<std::size_t>(listed.on_piece), 1} : listed.group;
}

// What the heading doesn't say.
std::string words_of_entry(const App& app, const FindingGroup& group) {
  std::string text = words_of(group, app.caches.findings, app.work.design, app.work.profile, app.settings.lengths).text;
  const std::string known = said("row {}: ", app.caches.findings[group.first].row + 1);
  if (text.starts_with(known)) {
    text.erase(0, known.size());
  }
  return with_capital(text);
}

constexpr int most_lines = 4;

std::string in_so_many(const std::string& text, float room, int most) {
  std::string lines = in_lines(text, room);
  std::size_t last = 0; // where the last line begins that there is room for
  for (int line = 1; line < most; ++line) {
    const std::size_t end = lines.find('\n', last);
    if (end == std::string::npos) {
      return lines;
    }
    last = end + 1;
  }
  std::ranges::replace(lines.begin() + static_cast<std::ptrdiff_t>(last), lines.end(), '\n', ' ');
  return lines.substr(0, last) + shortened(lines.substr(last), room);
}

void entry(const App& app, Actions& actions, const Listed& listed, int lines) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  const bool chosen = listed.holds(app.view.finding);
  const FindingGroup group = shown_of(app, listed);
  const Finding& finding = app.caches.findings[group.first];
  const Finding& last = app.caches.findings[group.first + group.count - 1];
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float wide = ImGui::GetContentRegionAvail().x;
  ImGui::PushID(listed.finding());
  if (ImGui::Selectable("##finding", chosen, 0, ImVec2(wide, height_of_entry(theme, lines)))) {
    actions.push(ChooseFinding{listed.finding()});
  }
  ImGui::PopID();
  remember_place(actions, fmt::format("finding {}", listed.finding()));
  ImDrawList& list = *ImGui::GetWindowDrawList();
  if (chosen) { // told apart from the one under the pointer by more than its ground
    list.AddRectFilled(corner, {corner.x + 3 * unit, corner.y + height_of_entry(theme, lines)}, ink(theme.accent));
  }
  severity_sign(list, theme, {corner.x + 15 * unit, corner.y + 5 * unit + ImGui::GetTextLineHeight() / 2}, 7 * unit,
                finding.severity);
  const float left = corner.x + 29 * unit;
  const float room = room_for_words(theme, wide);
  ImGui::PushFont(theme.bold);
  list.AddText({left, corner.y + 4 * unit}, ink(colour_of(theme, finding.severity)),
               shortened(place_of(finding, last), room).c_str());
  ImGui::PopFont();
  list.AddText({left, corner.y + 6 * unit + ImGui::GetTextLineHeight()}, ink(theme.text),
               in_so_many(words_of_entry(app, group), room, lines).c_str()); // all of it stands in the details
  if (app.view.finding_wanted && chosen) {
    ImGui::SetScrollHereY(0.5F);
  }
}

} // namespace

float step_of_entry(const Theme& theme, int lines) {
  return height_of_entry(theme, lines) + 2 * theme.scale;
}

int lines_of_words(const App& app, float wide, float tall) {
  const auto& listed = app.caches.listed;
  const auto count = static_cast<float>(listed.size());
  if (count * step_of_entry(app.theme, 2) > tall) {
    return 1;
  }
  std::ptrdiff_t needed = 1;
  for (const Listed& one : listed) {
    const std::string lines = in_lines(words_of_entry(app, shown_of(app, one)), room_for_words(app.theme, wide));
    needed = std::max(needed, std::ranges::count(lines, '\n') + 1);
  }
  int lines = static_cast<int>(std::min<std::ptrdiff_t>(needed, most_lines));
  while (lines > 1 && count * step_of_entry(app.theme, lines) > tall) {
    --lines;
  }
  return lines;
}

void entries(const App& app, Actions& actions, std::ptrdiff_t first, std::ptrdiff_t last, std::ptrdiff_t wanted,
             int lines) {
  ImGuiListClipper clipper;
  clipper.Begin(static_cast<int>(last - first), step_of_entry(app.theme, lines));
  if (wanted >= first && wanted < last) {
    clipper.ForceDisplayRangeByIndices(static_cast<int>(wanted - first), static_cast<int>(wanted - first) + 1);
  }
  while (clipper.Step()) {
    for (int index = clipper.DisplayStart; index < clipper.DisplayEnd; ++index) {
      entry(app, actions, app.caches.listed[static_cast<std::size_t>(first + index)], lines);
    }
  }
}

} // namespace punchwright::editor
