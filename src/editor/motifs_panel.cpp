// Motifs to set down, in the tab of tools: the user's own first, then the collection.
#include "editor/panels.hpp"
#include "editor/tool_pictures.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <imgui_stdlib.h>

namespace punchwright::editor {

namespace {

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
      actions.push(HangOver{motif->drawing, fmt::format("set down \"{}\"", motif->name), false});
    }
    tip(theme, said("{}: {} × {} stitches", tr(motif->name.c_str()), motif->drawing.width(), motif->drawing.height()));
  }
}

bool any_own(const std::vector<const Motif*>& motifs) {
  return std::ranges::any_of(motifs, [](const Motif* motif) { return motif->group == MotifGroup::own; });
}

} // namespace

void motifs_part(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  heading(theme, tr("Motifs"));
  std::string words = app.session.motif_search;
  ImGui::SetNextItemWidth(-1);
  if (ImGui::InputTextWithHint("##motifs", tr("Search: bird, wave, border, own"), &words)) {
    actions.push(SearchMotifs{words});
  }
  remember_place(actions, "motif search", Stop::Kind::field);
  make_wanted(app, actions, WantedField::motif_search);
  command_button(app, actions, Command::keep_motif,
                 app.view.marked ? tr("Keep the marked area…") : tr("Keep the drawing…"));
  if (!app.caches.motifs_trouble.empty()) {
    ImGui::PushStyleColor(ImGuiCol_Text, tint(theme.warning));
    ImGui::PushTextWrapPos(0);
    ImGui::TextUnformatted(said("Not shown, since it can't be read:\n{}", app.caches.motifs_trouble).c_str());
    ImGui::PopTextWrapPos();
    ImGui::PopStyleColor();
    tip(theme, app.motif_folder.string());
  }
  const std::vector<const Motif*> found = motifs_found(app.caches.motifs, app.session.motif_search);
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
