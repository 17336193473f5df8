// Motifs to set down, in the tab of tools: the user's own first, then the collection.
#include "editor/panels.hpp"
#include "editor/tool_pictures.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <imgui_internal.h>
#include <imgui_stdlib.h>

namespace punchwright::editor {

namespace {

// Set down, a motif covers the ground or lets it through, as is wished.
void hang(const App& app, Actions& actions, const Motif& motif) {
  actions.push(HangOver{motif.drawing, fmt::format("set down \"{}\"", motif.name), app.settings.motifs_see_through});
}

// As many side by side as there is room for.
void pictures_of(const App& app, Actions& actions, const std::vector<const Motif*>& motifs, bool own) {
  const Theme& theme = app.theme;
  const float gap = 4 * theme.scale;
  const float room = ImGui::GetContentRegionAvail().x;
  const int columns = std::max(1, static_cast<int>((room + gap) / (76 * theme.scale + gap)));
  const float size = std::floor((room - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns));
  const double proportion = app.work.design.gauge.stitch_mm() / app.work.design.gauge.row_mm();
  int place = 0;
  for (const Motif* const motif : motifs) {
    if ((motif->group == MotifGroup::own) != own) {
      continue;
    }
    if (place++ % columns != 0) {
      ImGui::SameLine(0, gap);
    }
    const std::string name = fmt::format("{} {}", own ? "own motif" : "motif", motif->id);
    if (picture_button(app, actions, name, motif->drawing, {size, size}, false, proportion)) {
      hang(app, actions, *motif);
    }
    tip(theme, said("{}: {} × {} stitches", tr(motif->name.c_str()), motif->drawing.width(), motif->drawing.height()));
  }
}

bool any_own(const std::vector<const Motif*>& motifs) {
  return std::ranges::any_of(motifs, [](const Motif* motif) { return motif->group == MotifGroup::own; });
}

// Of those found, the one whose picture stands first.
const Motif& first_shown(const std::vector<const Motif*>& found) {
  const auto own = std::ranges::find(found, MotifGroup::own, [](const Motif* motif) { return motif->group; });
  return own == found.end() ? *found.front() : **own;
}

// While one searches, the first line of pictures is in sight below the field.
struct Searched {
  bool wanted = false;
  float top = 0; // px in the window: the field's
};

void bring_into_sight(const Searched& searched, float below) {
  if (searched.wanted) {
    ImGuiWindow* const window = ImGui::GetCurrentWindow();
    ImGui::ScrollToBringRectIntoView(window, {window->Pos.x, searched.top, window->Pos.x + 1, below});
  }
}

Searched search(const App& app, Actions& actions, const std::vector<const Motif*>& found) {
  std::string words = app.session.motif_search;
  ImGui::SetNextItemWidth(-1);
  const bool changed = ImGui::InputTextWithHint("##motifs", tr("Search: bird, wave, border, own"), &words);
  if (changed) {
    actions.push(SearchMotifs{words});
  }
  const bool returned = ImGui::IsKeyPressed(ImGuiKey_Enter) || ImGui::IsKeyPressed(ImGuiKey_KeyPadEnter);
  if (ImGui::IsItemDeactivated() && returned) {
    if (found.empty()) {
      ImGui::SetKeyboardFocusHere(-1); // what is typed next is a word still, and no command
    } else {
      hang(app, actions, first_shown(found));
    }
  }
  const Searched searched{changed || ImGui::IsItemActivated(), ImGui::GetItemRectMin().y};
  remember_place(actions, "motif search", Stop::Kind::field);
  tip(app.theme, tr("Return takes the first one found"));
  make_wanted(app, actions, WantedField::motif_search);
  return searched;
}

// Above the search, so that Tab goes from there to what was found.
void before_search(const App& app, Actions& actions) {
  command_button(app, actions, Command::keep_motif,
                 app.view.marked ? tr("Keep the marked area…") : tr("Keep the drawing…"));
  bool through = app.settings.motifs_see_through;
  if (check_box(actions, "motifs see through", tr("The ground shows through"), through)) {
    actions.run(Command::motifs_see_through);
  }
  const CommandInfo& info = info_of(Command::motifs_see_through);
  tip(app.theme, fmt::format("{} ({})", tr(info.tip), shown_keys(info.keys)));
}

} // namespace

void motifs_part(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  heading(theme, tr("Motifs"));
  before_search(app, actions);
  const std::vector<const Motif*> found = motifs_found(app.caches.motifs, app.session.motif_search);
  const Searched searched = search(app, actions, found);
  if (!app.caches.motifs_trouble.empty()) {
    ImGui::PushStyleColor(ImGuiCol_Text, tint(theme.warning));
    ImGui::PushTextWrapPos(0);
    ImGui::TextUnformatted(said("Not shown, since it can't be read:\n{}", app.caches.motifs_trouble).c_str());
    ImGui::PopTextWrapPos();
    ImGui::PopStyleColor();
    tip(theme, app.motif_folder.string());
  }
  // A hint and a line of pictures are as tall as that.
  bring_into_sight(searched, ImGui::GetCursorScreenPos().y + 110 * theme.scale);
  if (found.empty()) {
    return hint(theme, tr("No motif has these words."));
  }
  if (any_own(found)) {
    hint(theme, tr("Your own"));
    pictures_of(app, actions, found, true);
    hint(theme, tr("The collection"));
  }
  pictures_of(app, actions, found, false);
}

} // namespace punchwright::editor
