// Two dialogs with many small pictures: a band in other yarns, and the palette. Typing searches, arrows choose, Return
// takes, and so does a click.
#include "drawing/word_search.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/small_picture.hpp"
#include "editor/widgets.hpp"
#include "editor/yarn_pairs.hpp"
#include "rules/findings.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <imgui_stdlib.h>

namespace punchwright::editor {

namespace {

constexpr double hardly_shows = 2; // contrast ratio, as in the check of yarns

// Pictures of one size, as many side by side as there is room for.
struct PictureGrid {
  float cell = 0; // px, with the gap
  float tall = 0;
  float gap = 0;
  int across = 1;
};

PictureGrid grid_for(const App& app, float picture_height, int lines) {
  const float unit = app.theme.scale;
  const float wide = ImGui::GetContentRegionAvail().x - ImGui::GetStyle().ScrollbarSize;
  PictureGrid grid;
  grid.gap = 6 * unit;
  grid.across = std::max(1, static_cast<int>(wide / (150 * unit)));
  grid.cell = std::floor(wide / static_cast<float>(grid.across));
  grid.tall = picture_height + static_cast<float>(lines) * ImGui::GetTextLineHeight() + 10 * unit;
  return grid;
}

// Arrows from picture to picture. True where another one is chosen by them.
bool choose_by_keys(int& chosen, int count, int across) {
  const auto pressed = [](ImGuiKey key) { return ImGui::IsKeyPressed(key) ? 1 : 0; };
  const int step = (pressed(ImGuiKey_RightArrow) - pressed(ImGuiKey_LeftArrow)) +
                   across * (pressed(ImGuiKey_DownArrow) - pressed(ImGuiKey_UpArrow));
  if (step == 0 || count == 0) {
    return false;
  }
  chosen = std::clamp(chosen + step, 0, count - 1);
  return true;
}

bool search_field(Actions& actions, const char* place, std::string& search) {
  ImGui::SetNextItemWidth(-1);
  if (ImGui::IsWindowAppearing()) {
    ImGui::SetKeyboardFocusHere();
  }
  const bool changed = ImGui::InputTextWithHint("##search", tr("A name, or light, dark, blue, red…"), &search);
  remember_place(actions, place, Stop::Kind::field);
  return changed;
}

bool return_pressed(const Actions& actions) {
  return (ImGui::IsKeyPressed(ImGuiKey_Enter) || ImGui::IsKeyPressed(ImGuiKey_KeyPadEnter)) && !actions.dialog_appears;
}

// One picture's place; true when it is clicked. The corner of what is drawn in it comes out.
bool picture_place(Actions& actions, const PictureGrid& grid, int index, const std::string& name, bool chosen,
                   bool scroll, ImVec2& corner) {
  if (index % grid.across != 0) {
    ImGui::SameLine(static_cast<float>(index % grid.across) * grid.cell);
  }
  corner = ImGui::GetCursorScreenPos();
  ImGui::PushID(index);
  const bool pressed = ImGui::Selectable("##picture", chosen, ImGuiSelectableFlags_DontClosePopups,
                                         ImVec2(grid.cell - grid.gap, grid.tall));
  ImGui::PopID();
  remember_place(actions, name, Stop::Kind::button);
  if (chosen && scroll) {
    ImGui::SetScrollHereY(0.5F);
  }
  corner.x += 4 * grid.gap / 6;
  corner.y += 4 * grid.gap / 6;
  return pressed;
}

bool has_room_for_words(const App& app) {
  return room_for_dialog(app).y > 360 * app.theme.scale;
}

float list_height(const App& app, int frames) {
  return std::max(84 * app.theme.scale,
                  std::min(470 * app.theme.scale,
                           room_for_dialog(app).y - static_cast<float>(frames) * ImGui::GetFrameHeightWithSpacing()));
}

SmallPicture dyed(SmallPicture picture, Colour main, Colour contrast) {
  for (Colour& cell : picture.cells) {
    cell = mixed(main, contrast, static_cast<float>(cell.red) / 255.0F); // the sample is black and white
  }
  return picture;
}

void show_pair(const App& app, const PictureGrid& grid, ImVec2 corner, const YarnPair& pair, PairChange change,
               const SmallPicture& sample) {
  const Theme& theme = app.theme;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float wide = grid.cell - grid.gap - 8 * theme.scale;
  const float line = ImGui::GetTextLineHeight();
  const float high = grid.tall - 2 * line - 10 * theme.scale;
  const auto seen = [&](Colour colour) { return seen_as(colour, app.view.sight); };
  draw_small_picture(theme, dyed(sample, seen(pair.main.colour), seen(pair.contrast.colour)),
                     {corner.x, corner.y, corner.x + wide, corner.y + high});
  const std::string& name = change == PairChange::contrast ? pair.contrast.name : pair.main.name;
  const std::string words = pair.present ? said("{}, as it is", name) : name;
  list.AddText({corner.x, corner.y + high + 2 * theme.scale}, ink(theme.text), shortened(words, wide).c_str());
  const bool weak = pair.ratio < hardly_shows;
  const std::string ratio =
      weak ? said("{}: hardly shows", decimal(pair.ratio, 1)) : said("{} contrast", decimal(pair.ratio, 1));
  list.AddText({corner.x, corner.y + high + line + 2 * theme.scale}, ink(weak ? theme.warning : theme.quiet_text),
               shortened(ratio, wide).c_str());
}

} // namespace

void pairs_dialog(const App& app, Actions& actions, const PairsDialog& dialog) {
  const Theme& theme = app.theme;
  PairsDialog next = dialog;
  const Document& design = app.work.design;
  bool changed = false;
  for (const auto& [change, place, words] : {std::tuple(PairChange::contrast, "try contrast", tr("Another contrast")),
                                             std::tuple(PairChange::main, "try main", tr("Another main"))}) {
    if (button(theme, actions, place, words, dialog.change == change ? Look::chosen : Look::plain)) {
      next.change = change;
      next.chosen = 0;
      changed = true;
    }
    tip(theme, tr("The other yarn stays"));
    ImGui::SameLine();
  }
  ImGui::NewLine();
  if (search_field(actions, "pair search", next.search)) {
    next.chosen = next.search.empty() ? 0 : 1; // the first that was found stands behind the pair as it is
    changed = true;
  }
  const auto pairs = pairs_to_try(design, dialog.main, dialog.contrast, dialog.change, next.search);
  const int count = static_cast<int>(pairs.size());
  const SmallPicture sample = small_picture(sample_of_pair(design, dialog.main, dialog.contrast, 40), 1.8, 48);
  ImGui::BeginChild("list", ImVec2(0, list_height(app, has_room_for_words(app) ? 6 : 5)));
  // With the words below them, where large text leaves little room.
  const float words = 2 * ImGui::GetTextLineHeight() + 12 * theme.scale;
  const float high = std::clamp(ImGui::GetWindowHeight() - words, 24 * theme.scale, 78 * theme.scale);
  const PictureGrid grid = grid_for(app, high, 2);
  const bool scroll = choose_by_keys(next.chosen, count, grid.across);
  next.chosen = std::clamp(next.chosen, 0, count - 1);
  int taken = return_pressed(actions) ? next.chosen : -1;
  for (int index = 0; index < count; ++index) {
    ImVec2 corner;
    const YarnPair& pair = pairs[static_cast<std::size_t>(index)];
    const std::string& name = dialog.change == PairChange::contrast ? pair.contrast.name : pair.main.name;
    if (picture_place(actions, grid, index, "pair " + name, index == next.chosen, scroll, corner)) {
      taken = index;
    }
    if (ImGui::IsItemVisible()) {
      show_pair(app, grid, corner, pair, dialog.change, sample);
    }
  }
  ImGui::EndChild();
  if (has_room_for_words(app)) {
    hint(theme, tr("All bands of this pair change together; one step, which undo takes back."));
  }
  if (taken >= 0 && taken < count) {
    actions.push(SetDialog{NoDialog{}});
    if (!pairs[static_cast<std::size_t>(taken)].present) {
      actions.push(TakePair{dialog.main, dialog.contrast, pairs[static_cast<std::size_t>(taken)]});
    }
    return;
  }
  if (changed || next.chosen != dialog.chosen) {
    actions.push(SetDialog{next});
  }
  cancel_button(app, actions, tr("Leave it as it is"));
}

void palette_dialog(const App& app, Actions& actions, const PaletteDialog& dialog) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  PaletteDialog next = dialog;
  const Document& design = app.work.design;
  const auto yarn = std::ranges::find(design.yarns, dialog.yarn, &Yarn::key);
  bool changed = search_field(actions, "palette search", next.search);
  if (changed) {
    next.chosen = next.search.empty() ? -1 : 0;
  }
  const auto colours = yarn_colours_found(next.search);
  const int count = static_cast<int>(colours.size());
  ImGui::BeginChild("list", ImVec2(0, list_height(app, has_room_for_words(app) ? 5 : 4)));
  const PictureGrid grid = grid_for(app, 40 * unit, 1);
  const bool scroll = choose_by_keys(next.chosen, count, grid.across);
  int taken = return_pressed(actions) ? next.chosen : -1;
  for (int index = 0; index < count; ++index) {
    const YarnColour& colour = colours[static_cast<std::size_t>(index)];
    ImVec2 corner;
    if (picture_place(actions, grid, index, "colour " + colour.name, index == next.chosen, scroll, corner)) {
      taken = index;
    }
    if (!ImGui::IsItemVisible()) {
      continue;
    }
    const float wide = grid.cell - grid.gap - 8 * unit;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    swatch(list, theme, {corner.x, corner.y, corner.x + wide, corner.y + 40 * unit},
           seen_as(colour.colour, app.view.sight));
    list.AddText({corner.x, corner.y + 42 * unit}, ink(theme.text), shortened(colour.name, wide).c_str());
  }
  if (count == 0) {
    hint(theme, tr("No colour has these words."));
  }
  ImGui::EndChild();
  if (taken >= 0 && taken < count && yarn != design.yarns.end()) {
    const YarnColour& colour = colours[static_cast<std::size_t>(taken)];
    Document settings = settings_of(design);
    Yarn& changed_yarn = settings.yarns[static_cast<std::size_t>(yarn - design.yarns.begin())];
    changed_yarn.name = colour.name;
    changed_yarn.colour = colour.colour;
    actions.push(SetDialog{NoDialog{}});
    actions.push(EditDesign{ChangeSettings{std::move(settings)}});
    return;
  }
  if (changed || next.chosen != dialog.chosen) {
    actions.push(SetDialog{next});
  }
  if (has_room_for_words(app)) {
    hint(theme,
         said("For yarn {}, everywhere. A colour of your own is mixed in the square before its name.", dialog.yarn));
  }
  cancel_button(app, actions, tr("Cancel"));
}

} // namespace punchwright::editor
