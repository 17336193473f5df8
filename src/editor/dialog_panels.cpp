// What stands in the middle of the window while something is asked: guard, trouble, new design, size, keys, swatch.
#include "editor/panels.hpp"
#include "editor/path_panel.hpp"
#include "editor/widgets.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

void text_lines(const std::string& text) {
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(text.c_str());
  ImGui::PopTextWrapPos();
}

void cancel_button(const Theme& theme, Actions& actions, const char* words) {
  if (button(theme, actions, "cancel", words) || ImGui::IsKeyPressed(ImGuiKey_Escape)) {
    actions.push(SetDialog{NoDialog{}});
  }
}

bool return_pressed() {
  return ImGui::IsKeyPressed(ImGuiKey_Enter) || ImGui::IsKeyPressed(ImGuiKey_KeyPadEnter);
}

struct Drawer {
  const App& app;
  Actions& actions;

  void operator()(const NoDialog&) const {}
  void operator()(const PathDialog& dialog) const { path_panel(app, actions, dialog); }

  void operator()(const GuardDialog&) const {
    const Theme& theme = app.theme;
    text_lines(fmt::format("“{}” has changes that are not saved.", file_name_of(app)));
    ImGui::Dummy(ImVec2(0, 4 * theme.scale));
    if (button(theme, actions, "guard save", "Save", Look::main) || return_pressed()) {
      actions.push(AnswerGuard{GuardAnswer::save});
    }
    ImGui::SameLine();
    if (button(theme, actions, "guard discard", "Discard the changes")) {
      actions.push(AnswerGuard{GuardAnswer::discard});
    }
    ImGui::SameLine();
    if (button(theme, actions, "guard cancel", "Cancel") || ImGui::IsKeyPressed(ImGuiKey_Escape)) {
      actions.push(AnswerGuard{GuardAnswer::cancel});
    }
  }

  void operator()(const TroubleDialog& dialog) const {
    text_lines(dialog.text);
    if (!dialog.remedy.empty()) {
      ImGui::PushFont(app.theme.bold);
      ImGui::TextColored(tint(app.theme.good), "What helps");
      ImGui::PopFont();
      text_lines(dialog.remedy);
    }
    hint(app.theme, "The design in the window is as it was.");
    ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
    if (button(app.theme, actions, "close", "Close", Look::main) || return_pressed() ||
        ImGui::IsKeyPressed(ImGuiKey_Escape)) {
      actions.push(SetDialog{NoDialog{}});
    }
  }

  void operator()(const NewDialog& dialog) const {
    NewDialog wishes = dialog;
    bool changed = false;
    label(app.theme, "Machine", 0.25F);
    const Profile* const profile = built_in_profile(wishes.profile);
    if (ImGui::BeginCombo("##machine", profile != nullptr ? profile->title.c_str() : wishes.profile.c_str())) {
      for (const Profile& choice : built_in_profiles()) {
        if (ImGui::Selectable(choice.title.c_str(), choice.name == wishes.profile)) {
          wishes.profile = choice.name;
          wishes.width = choice.card ? choice.card->repeat : 24;
          changed = true;
        }
      }
      ImGui::EndCombo();
    }
    changed = count_field({app, actions, "new width"}, "Stitches", wishes.width, 1, widest_repeat) || changed;
    changed = count_field({app, actions, "new rows"}, "Rows", wishes.rows, 1, tallest_repeat) || changed;
    if (profile != nullptr && profile->card && profile->card->repeat % std::max(1, wishes.width) != 0) {
      hint(app.theme, fmt::format("This machine's card has {} columns: a width that divides it can be punched.",
                                  profile->card->repeat));
    }
    if (changed) {
      actions.push(SetDialog{wishes});
    }
    ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
    if (button(app.theme, actions, "begin", "Begin", Look::main) || return_pressed()) {
      actions.push(BeginDesign{wishes});
    }
    ImGui::SameLine();
    cancel_button(app.theme, actions, "Cancel");
  }

  void operator()(const SizeDialog& dialog) const {
    SizeDialog wishes = dialog;
    hint(app.theme, "Row 1 and column 1 stay where they are; new stitches are main.");
    bool changed = count_field({app, actions, "size width"}, "Stitches", wishes.width, 1, widest_repeat);
    changed = count_field({app, actions, "size rows"}, "Rows", wishes.rows, 1, tallest_repeat) || changed;
    if (changed) {
      actions.push(SetDialog{wishes});
    }
    ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
    if (button(app.theme, actions, "set size", "Change the size", Look::main) || return_pressed()) {
      actions.push(SetDialog{NoDialog{}});
      actions.push(EditDesign{Resize{wishes.width, wishes.rows}});
    }
    ImGui::SameLine();
    cancel_button(app.theme, actions, "Cancel");
  }

  void operator()(const KeysDialog&) const;
  void operator()(const SwatchDialog&) const;
};

using KeyLines = std::vector<std::pair<std::string, std::string>>;

// Two columns of keys and what they do, in a table of four.
void key_table(const Theme& theme, const KeyLines& lines) {
  float keys_wide = 0;
  float words_wide = 0;
  for (const auto& [words, key] : lines) {
    words_wide = std::max(words_wide, ImGui::CalcTextSize(words.c_str()).x);
    keys_wide = std::max(keys_wide, ImGui::CalcTextSize(key.c_str()).x);
  }
  const float gap = 18 * theme.scale;
  const std::size_t half = (lines.size() + 1) / 2;
  if (!ImGui::BeginTable("keys", 4, ImGuiTableFlags_SizingFixedFit,
                         ImVec2(2 * (keys_wide + words_wide + 2 * gap), 0))) {
    return;
  }
  for (int column = 0; column < 4; ++column) {
    ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, (column % 2 == 0 ? keys_wide : words_wide) + gap / 2);
  }
  const auto cells = [&](const std::pair<std::string, std::string>& line) {
    ImGui::TableNextColumn();
    ImGui::TextColored(tint(theme.accent), "%s", line.second.c_str());
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(line.first.c_str());
  };
  for (std::size_t row = 0; row < half; ++row) {
    ImGui::TableNextRow();
    cells(lines[row]);
    if (row + half < lines.size()) {
      cells(lines[row + half]);
    }
  }
  ImGui::EndTable();
}

void Drawer::operator()(const KeysDialog&) const {
  KeyLines lines = {
      {"Draw; drag for a line", "Left button"},
      {"Erase to main", "Right button"},
      {"Move the drawing", "Middle button"},
      {"Larger and smaller", "Wheel"},
      {"Move sideways, up and down", "Shift, Ctrl + wheel"},
      {"Move the cursor", "Arrows"},
      {"Draw with the cursor", "Shift+Arrows"},
      {"Turn the stitch at the cursor", "Space, X"},
      {"Ten rows up or down", "Page Up, Page Down"},
      {"First and last column", "Home, End"},
  };
  for (const CommandInfo& info : all_commands()) {
    if (*info.keys != 0 && info.command != Command::toggle_stitch) {
      lines.emplace_back(info.name, info.keys);
    }
  }
  key_table(app.theme, lines);
  if (button(app.theme, actions, "close", "Close", Look::main) || return_pressed() ||
      ImGui::IsKeyPressed(ImGuiKey_Escape)) {
    actions.push(SetDialog{NoDialog{}});
  }
}

// The swatch's motif in one of the eight ways in which it can come out.
void swatch_picture(ImDrawList& list, const Theme& theme, ImVec2 corner, float side, const Document& motif,
                    const SwatchAnswer& answer) {
  const Grid& grid = motif.grid;
  const float cell = std::floor(side / static_cast<float>(std::max(grid.width(), grid.height())));
  const float left = corner.x + std::floor((side - cell * static_cast<float>(grid.width())) / 2);
  const float top = corner.y + std::floor((side - cell * static_cast<float>(grid.height())) / 2);
  const Colour main = motif.yarns[0].colour;
  const Colour contrast = motif.yarns[1].colour;
  for (int row = 0; row < grid.height(); ++row) {
    for (int column = 0; column < grid.width(); ++column) {
      const int from_column = answer.mirrored ? grid.width() - 1 - column : column;
      const int from_row = answer.upside_down ? grid.height() - 1 - row : row;
      const bool knits_contrast = grid.at(from_column, from_row) != answer.inverted;
      const float x = left + static_cast<float>(column) * cell;
      const float y = top + static_cast<float>(grid.height() - 1 - row) * cell;
      list.AddRectFilled({x, y}, {x + cell, y + cell}, ink(knits_contrast ? contrast : main));
    }
  }
  (void)theme;
}

void Drawer::operator()(const SwatchDialog&) const {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  const float side = 132 * unit;
  hint(theme,
       "Lay the knitted swatch before you, knit side up, cast-on edge towards you. Which picture does it look like?");
  const Document motif = swatch_document(app.work.profile);
  for (int number = 0; number < 8; ++number) {
    const SwatchAnswer answer{(number & 1) != 0, (number & 2) != 0, (number & 4) != 0};
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::PushID(number);
    if (ImGui::Selectable("##picture", false, 0, ImVec2(side + 12 * unit, side + 12 * unit))) {
      actions.push(UseSwatch{answer});
    }
    ImGui::PopID();
    remember_place(actions, fmt::format("swatch {}", number));
    swatch_picture(*ImGui::GetWindowDrawList(), theme, {corner.x + 6 * unit, corner.y + 6 * unit}, side, motif, answer);
    if (number % 4 != 3) {
      ImGui::SameLine(0, 8 * unit);
    }
  }
  cancel_button(theme, actions, "Not now");
}

const char* title_of_dialog(const Dialog& dialog) {
  if (const auto* const path = std::get_if<PathDialog>(&dialog)) {
    return title_of(path->purpose).data();
  }
  if (const auto* const trouble = std::get_if<TroubleDialog>(&dialog)) {
    return trouble->title.c_str();
  }
  constexpr std::array titles = {"",
                                 "",
                                 "Save before going on?",
                                 "",
                                 "New design",
                                 "Size of the repeat",
                                 "Keys and mouse",
                                 "How did the swatch come out?"};
  return titles[dialog.index()];
}

float width_of_dialog(const Dialog& dialog) {
  if (std::holds_alternative<PathDialog>(dialog)) {
    return 620;
  }
  if (std::holds_alternative<SwatchDialog>(dialog) || std::holds_alternative<KeysDialog>(dialog)) {
    return 0; // as wide as what is in it
  }
  return 470;
}

} // namespace

void dialogs(const App& app, Actions& actions) {
  const Dialog& dialog = app.session.dialog;
  if (!is_open(dialog)) {
    return;
  }
  constexpr const char* name = "###dialog";
  if (!ImGui::IsPopupOpen(name)) {
    ImGui::OpenPopup(name);
  }
  const Theme& theme = app.theme;
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  ImGui::SetNextWindowPos(ImVec2(size.x / 2, size.y / 2), ImGuiCond_Always, ImVec2(0.5F, 0.5F));
  const float wide = std::min(width_of_dialog(dialog) * theme.scale, size.x - 20);
  ImGui::SetNextWindowSize(ImVec2(wide, 0));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(20 * theme.scale, 16 * theme.scale));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 9 * theme.scale);
  if (ImGui::BeginPopupModal(name, nullptr,
                             ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoResize |
                                 ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_AlwaysAutoResize)) {
    ImGui::PushFont(theme.bold);
    ImGui::TextUnformatted(title_of_dialog(dialog));
    ImGui::PopFont();
    ImGui::Dummy(ImVec2(0, 2 * theme.scale));
    std::visit(Drawer{app, actions}, dialog);
    ImGui::EndPopup();
  }
  ImGui::PopStyleVar(2);
}

} // namespace punchwright::editor
