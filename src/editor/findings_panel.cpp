// What is wrong with the design, in words; each finding jumps to its place in the drawing.
#include "design/words.hpp"
#include "editor/finding_entries.hpp"
#include "editor/panels.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <vector>

namespace punchwright::editor {

namespace {

constexpr std::size_t least_entries = 4; // for which the details leave room

// All that is said of the chosen one: what it is, the same on the piece, and what helps.
struct Details {
  std::string text;
  std::string on_piece;
  std::string remedy;
  std::string hint; // of a float: what would mend it
};

// "The fewest changes in row 3: stitch 12 to contrast", as the mend that is shown has them, where one is; "Row 3, so
// that the symmetry stays whole: …" where that takes more. Empty where the chosen finding is no float.
std::string hint_of(const App& app) {
  const auto& hint = app.caches.hint;
  if (!hint) {
    return {};
  }
  const auto& shown = app.session.mend;
  const std::string words = shown ? words_for_changes(shown->mended, hint->row) : words_for_changes(hint->mended, 0);
  if (words.empty()) {
    return words;
  }
  return shown && shown->symmetric ? said("Row {}, so that the symmetry stays whole: {}.", hint->row + 1, words)
                                   : said("The fewest changes in row {}: {}.", hint->row + 1, words);
}

Details details_of_chosen(const App& app) {
  const Caches& caches = app.caches;
  const auto words = [&](const FindingGroup& group) {
    return words_of(group, caches.findings, app.work.design, app.work.profile, app.settings.lengths);
  };
  const Listed* const listed = listed_for(caches, app.view.finding);
  const Words chosen =
      words(listed != nullptr ? listed->group : FindingGroup{static_cast<std::size_t>(app.view.finding), 1});
  Details details{with_capital(chosen.text), {}, with_capital(chosen.remedy), hint_of(app)};
  if (listed != nullptr && listed->on_piece >= 0) {
    details.on_piece = with_capital(words({static_cast<std::size_t>(listed->on_piece), 1}).text);
  }
  return details;
}

// What can be done with the chosen float, below the details: groups that begin a line each, and go on in the next where
// there is no room.
struct FloatButton {
  const char* name;
  const char* words;
  Command command;
  const char* tip;
};
using FloatButtons = std::vector<std::vector<FloatButton>>;

bool is_float(const App& app) {
  const auto& findings = app.caches.findings;
  return app.view.finding >= 0 && app.view.finding < static_cast<int>(findings.size()) &&
         findings[static_cast<std::size_t>(app.view.finding)].id == FindingId::float_too_long;
}

float width_of(const char* words) {
  return ImGui::CalcTextSize(words).x + 2 * ImGui::GetStyle().FramePadding.x;
}

// Where large text leaves so little room, the short form.
const char* words_with_room(const char* words, const char* in_short) {
  const ImGuiStyle& style = ImGui::GetStyle();
  const float room = ImGui::GetContentRegionAvail().x - 2 * style.WindowPadding.x - style.ScrollbarSize;
  return width_of(words) <= room ? words : in_short;
}

FloatButtons buttons_for(const App& app, const Details& details) {
  if (app.session.mend) {
    return {
        {{"take mend", tr("Take it"), Command::set_down, tr("The stitches are changed so (Return)")},
         {"other mend", tr("Another"), Command::other_mend, tr("Just as few stitches, at other places (Ctrl+Shift+M)")},
         {"leave mend", tr("Leave"), Command::focus_drawing, tr("The drawing stays as it is (Escape)")}}};
  }
  FloatButtons groups(1);
  if (!details.hint.empty()) {
    groups[0].push_back({"mend", words_with_room(tr("Mend the floats"), tr("Mend")), Command::mend,
                         tr("Shows the fewest stitches to change so that no float is too long (Ctrl+M)")});
  }
  if (!details.on_piece.empty()) { // the way to its place on the bed, and back
    const bool there = app.caches.findings[static_cast<std::size_t>(app.view.finding)].on_piece;
    groups[0].push_back(
        {"on the needles",
         there ? words_with_room(tr("On the repeat"), tr("Repeat"))
               : words_with_room(tr("On the needles"), tr("Needles")),
         Command::finding_on_needles,
         tr("The float in the drawing's columns, or by the needles of its first place on the bed (O)")});
  }
  if (is_float(app)) { // the menu has the row's and all
    groups.push_back({{"catch float", words_with_room(tr("Catch by hand"), tr("Catch")), Command::catch_float,
                       tr("Leaves the drawing: the float is lifted onto needles while it is knitted (Ctrl+Shift+C)")},
                      {"accept float", tr("Accept"), Command::accept_float,
                       tr("Leaves the float as long as it is (Ctrl+Shift+A)")}});
  }
  return groups;
}

int lines_of(const FloatButtons& groups, float room) {
  int lines = 0;
  for (const auto& group : groups) {
    float right = room + 1; // so the first begins a line
    for (const FloatButton& one : group) {
      const bool goes_on = right + ImGui::GetStyle().ItemSpacing.x + width_of(one.words) <= room;
      right = goes_on ? right + ImGui::GetStyle().ItemSpacing.x + width_of(one.words) : width_of(one.words);
      lines += goes_on ? 0 : 1;
    }
  }
  return lines;
}

void float_buttons(const App& app, Actions& actions, const FloatButtons& groups) {
  for (const auto& group : groups) {
    for (const FloatButton& one : group) {
      if (&one != &group.front()) {
        flow(width_of(one.words));
      }
      if (button(app.theme, actions, one.name, one.words)) {
        actions.run(one.command);
      }
      tip(app.theme, one.tip);
    }
  }
}

// Room that the details take.
float height_of(const Details& details) {
  const float wide = ImGui::GetContentRegionAvail().x - 2 * ImGui::GetStyle().WindowPadding.x;
  const auto tall = [wide](const std::string& text) {
    return text.empty() ? 0 : ImGui::CalcTextSize(in_lines(text, wide).c_str()).y + ImGui::GetStyle().ItemSpacing.y;
  };
  return tall(details.text) + tall(details.on_piece) + tall(details.remedy) + tall(details.hint) +
         ImGui::GetTextLineHeightWithSpacing() + 2 * ImGui::GetStyle().WindowPadding.y +
         ImGui::GetStyle().ItemSpacing.y;
}

// What can be seen of the last item, for tests; keys can't go to it.
void tell_place(Actions& actions, const char* name) {
  if (actions.publish_places) {
    const ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 low = ImGui::GetItemRectMin();
    const ImVec2 high = ImGui::GetItemRectMax();
    actions.places.push_back({name,
                              {std::max(low.x, list.GetClipRectMin().x), std::max(low.y, list.GetClipRectMin().y),
                               std::min(high.x, list.GetClipRectMax().x), std::min(high.y, list.GetClipRectMax().y)}});
  }
}

// How the room below the heading is shared out, px.
struct Shares {
  float list = 0;
  float details = 0;
  bool together =
      false; // large text leaves no room for both: the details unfold below their entry, and all of it scrolls
};

// The details: at least five lines; else what the list leaves, with room for some entries beside the chosen one.
Shares shares_of(const Theme& theme, const Details& details, float buttons, std::size_t listed, float room) {
  const float gap = 6 * theme.scale;
  const float one = step_of_entry(theme);
  const float entries = static_cast<float>(std::min<std::size_t>(listed, least_entries)) * one + gap;
  const float least = 5 * ImGui::GetTextLineHeight() + 2 * ImGui::GetStyle().WindowPadding.y;
  const float wish = height_of(details);
  const float both = room - buttons;
  if (both - gap - std::min(least, wish) < one) {
    return {room, 0, true};
  }
  const float tall = std::min({wish, std::max(least, both - entries), both * 0.6F});
  return {both - tall - gap, tall, false};
}

void say_details(const Theme& theme, const Details& details) {
  const auto say = [](const std::string& text) {
    if (!text.empty()) {
      ImGui::TextUnformatted(in_lines(text, ImGui::GetContentRegionAvail().x).c_str());
    }
  };
  say(details.text);
  say(details.hint);
  say(details.on_piece);
  if (!details.remedy.empty()) {
    ImGui::PushFont(theme.bold);
    ImGui::TextColored(tint(theme.good), "%s", tr("What helps"));
    ImGui::PopFont();
    say(details.remedy);
  }
}

void details_below_list(const App& app, Actions& actions, const Details& details, const FloatButtons& buttons,
                        float tall) {
  ImGui::PushStyleColor(ImGuiCol_ChildBg, tint(app.theme.ground));
  ImGui::BeginChild("details", ImVec2(0, tall), true, ImGuiWindowFlags_AlwaysUseWindowPadding);
  say_details(app.theme, details);
  ImGui::EndChild();
  tell_place(actions, "finding details");
  ImGui::PopStyleColor();
  float_buttons(app, actions, buttons);
}

void list_of_findings(const App& app, Actions& actions, const Details& details, const FloatButtons& buttons,
                      const Shares& shares) {
  const Theme& theme = app.theme;
  const auto& listed = app.caches.listed;
  const auto end = std::ssize(listed);
  const auto place =
      std::ranges::find_if(listed, [&](const Listed& one) { return one.holds(app.view.finding); }) - listed.begin();
  const auto wanted = app.view.finding_wanted ? place : end;
  const auto begin_entries = [&theme] {
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(0, 2 * theme.scale));
    ImGui::PushStyleColor(ImGuiCol_Header, tint(theme.accent_soft));
    ImGui::PushStyleColor(ImGuiCol_HeaderHovered, tint(theme.button));
  };
  const auto end_entries = [] {
    ImGui::PopStyleColor(2);
    ImGui::PopStyleVar();
  };
  const auto unfolded = shares.together ? std::min(place + 1, end) : end;
  begin_entries();
  ImGui::BeginChild("list", ImVec2(0, shares.list));
  entries(app, actions, 0, unfolded, wanted,
          shares.together ? 1 : lines_of_words(app, ImGui::GetContentRegionAvail().x, shares.list));
  end_entries();
  if (shares.together) {
    if (app.view.finding_wanted) { // the words at the top, below their entry where there is room for some of both
      const float entry_tall = step_of_entry(theme);
      const bool room = shares.list > entry_tall + 5 * ImGui::GetTextLineHeight();
      ImGui::SetScrollY(ImGui::GetCursorPosY() - (room ? entry_tall : 0));
    }
    ImGui::BeginGroup();
    say_details(theme, details);
    ImGui::EndGroup();
    tell_place(actions, "finding details");
    float_buttons(app, actions, buttons);
    begin_entries();
    entries(app, actions, unfolded, end, wanted);
    end_entries();
  }
  ImGui::EndChild();
}

void count(const Theme& theme, int number, Severity severity) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float unit = theme.scale;
  const float tall = ImGui::GetFrameHeight();
  severity_sign(list, theme, {corner.x + 7 * unit, corner.y + tall / 2}, 6 * unit, severity);
  ImGui::Dummy(ImVec2(14 * unit, tall));
  ImGui::SameLine(0, 4 * unit);
  ImGui::AlignTextToFramePadding();
  ImGui::Text("%d", number);
  tip(theme, severity == Severity::fault ? tr("Faults") : severity == Severity::warning ? tr("Warnings") : tr("Notes"));
}

void heading_with_counts(const App& app, float wide) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  const FindingCounts seen = counts_in_sight(app);
  const float counts = ImGui::CalcTextSize(fmt::format("{}{}{}", seen.faults, seen.warnings, seen.notes).c_str()).x +
                       3 * 18 * unit + 2 * 10 * unit;
  ImGui::PushFont(theme.bold);
  ImGui::AlignTextToFramePadding();
  if (ImGui::CalcTextSize(tr("Findings")).x + counts + 30 * unit <= wide) {
    ImGui::TextUnformatted(tr("Findings"));
    ImGui::SameLine(wide - counts - 12 * unit);
  }
  ImGui::PopFont();
  count(theme, seen.faults, Severity::fault);
  ImGui::SameLine(0, 10 * unit);
  count(theme, seen.warnings, Severity::warning);
  ImGui::SameLine(0, 10 * unit);
  count(theme, seen.notes, Severity::note);
}

} // namespace

void findings_panel(const App& app, Actions& actions, const Parts& parts) {
  const ScreenBox& box = parts.findings;
  const Theme& theme = app.theme;
  const Caches& caches = app.caches;
  begin_part(app, "findings", box);
  if (parts.by_turns) {
    choose_at_right(app, actions); // with how many there are
  } else {
    heading_with_counts(app, box.width());
  }
  const FindingCounts as_it_is{caches.faults, caches.warnings, caches.notes};
  if (app.session.floating && counts_in_sight(app) != as_it_is) {
    hint(theme, tr("Counted with what hangs over the drawing; the list is of the drawing as it is."));
  } else if (caches.findings.empty()) {
    hint(theme, tr("Nothing is wrong: the repeat can be knitted as it is drawn."));
  }
  const bool chosen = app.view.finding >= 0 && app.view.finding < static_cast<int>(caches.findings.size());
  const Details details = chosen ? details_of_chosen(app) : Details{};
  const float room = ImGui::GetContentRegionAvail().y;
  const FloatButtons buttons = chosen ? buttons_for(app, details) : FloatButtons{};
  const float buttons_tall =
      static_cast<float>(lines_of(buttons, ImGui::GetContentRegionAvail().x)) * ImGui::GetFrameHeightWithSpacing();
  const Shares shares =
      chosen ? shares_of(theme, details, buttons_tall, caches.listed.size(), room) : Shares{room, 0, false};
  list_of_findings(app, actions, details, buttons, shares);
  if (chosen && !shares.together) {
    details_below_list(app, actions, details, buttons, shares.details);
  }
  if (actions.publish_places && !details.hint.empty()) {
    actions.places.push_back({details.hint, {}});
  }
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddLine({box.left + 0.5F, box.top}, {box.left + 0.5F, box.bottom}, ink(theme.line));
  list.AddLine({box.left, box.top + 0.5F}, {box.right, box.top + 0.5F}, ink(theme.line));
  ImGui::End();
}

} // namespace punchwright::editor
