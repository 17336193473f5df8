// Folders and files to choose from, a name to type, the kind of file, and whether one may be replaced.
#include "editor/path_panel.hpp"

#include "editor/widgets.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <imgui_stdlib.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

PathDialog in_folder(PathDialog dialog, const fs::path& folder) {
  dialog.folder = folder.lexically_normal();
  dialog.entries = entries_of(dialog.folder, dialog.purpose);
  dialog.trouble.clear();
  dialog.ask_replace = false;
  return dialog;
}

void folder_line(const App& app, Actions& actions, const PathDialog& dialog) {
  if (button(app.theme, actions, "folder up", "↑", Look::plain, 0, dialog.folder.has_parent_path())) {
    actions.push(SetDialog{in_folder(dialog, dialog.folder.parent_path())});
  }
  tip(app.theme, "The folder above");
  ImGui::SameLine();
  ImGui::AlignTextToFramePadding();
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(dialog.folder.string().c_str());
  ImGui::PopTextWrapPos();
}

void list_entries(const App& app, Actions& actions, const PathDialog& dialog) {
  const float unit = app.theme.scale;
  ImGui::PushStyleColor(ImGuiCol_ChildBg, tint(app.theme.field));
  ImGui::BeginChild("entries", ImVec2(0, 230 * unit), true);
  if (dialog.entries.empty()) {
    hint(app.theme, "Nothing of this kind in this folder");
  }
  ImGuiListClipper clipper;
  clipper.Begin(static_cast<int>(dialog.entries.size()));
  while (clipper.Step()) {
    for (int place = clipper.DisplayStart; place < clipper.DisplayEnd; ++place) {
      const FolderEntry& entry = dialog.entries[static_cast<std::size_t>(place)];
      const std::string shown = fmt::format("{}{}##{}", entry.name, entry.folder ? "/" : "", place);
      const bool chosen = entry.name == dialog.name;
      if (ImGui::Selectable(shown.c_str(), chosen,
                            ImGuiSelectableFlags_AllowDoubleClick | ImGuiSelectableFlags_DontClosePopups)) {
        if (entry.folder) {
          actions.push(SetDialog{in_folder(dialog, dialog.folder / entry.name)});
        } else {
          PathDialog next = dialog;
          next.name = entry.name;
          next.ask_replace = false;
          actions.push(SetDialog{next});
          if (ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) {
            actions.push(ChoosePath{});
          }
        }
      }
      remember_place(actions, "entry " + entry.name);
    }
  }
  ImGui::EndChild();
  ImGui::PopStyleColor();
}

// One button for each kind of file, where there is a choice.
void kinds(const App& app, Actions& actions, PathDialog& next, bool& changed) {
  const auto choices = extensions_for(next.purpose);
  if (choices.size() < 2) {
    return;
  }
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Kind");
  const std::string present = path_of(next).extension().string();
  for (const std::string& kind : choices) {
    ImGui::SameLine();
    std::string words = kind.substr(1);
    std::ranges::transform(words, words.begin(), [](char letter) { return static_cast<char>(letter - 32); });
    if (button(app.theme, actions, ("kind " + kind).c_str(), words.c_str(),
               kind == present ? Look::chosen : Look::plain)) {
      const fs::path name(next.name);
      const auto known = std::ranges::find(choices, name.extension().string()) != choices.end();
      next.name = (known ? (name.parent_path() / name.stem()).string() : next.name) + kind;
      next.ask_replace = false;
      changed = true;
    }
  }
}

} // namespace

void path_panel(const App& app, Actions& actions, const PathDialog& dialog) {
  const Theme& theme = app.theme;
  PathDialog next = dialog;
  bool changed = false;
  bool chosen = false;
  folder_line(app, actions, dialog);
  list_entries(app, actions, dialog);
  if (dialog.fresh) {
    ImGui::SetKeyboardFocusHere();
    next.fresh = false;
    changed = true;
  }
  label(theme, "Name", 0.12F);
  if (ImGui::InputText("##name", &next.name,
                       ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll)) {
    chosen = true;
  }
  remember_place(actions, "path name");
  if (next.name != dialog.name) {
    next.trouble.clear();
    next.ask_replace = false;
    changed = true;
  }
  kinds(app, actions, next, changed);
  if (dialog.purpose == Purpose::chart &&
      ImGui::Checkbox("List the needles that stay back, where they are fewer", &next.chart.stay_back_where_fewer)) {
    changed = true;
  }
  if (!dialog.trouble.empty()) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextColored(tint(theme.fault), "%s", dialog.trouble.c_str());
    ImGui::PopTextWrapPos();
  }
  ImGui::Dummy(ImVec2(0, 4 * theme.scale));
  if (changed) {
    actions.push(SetDialog{next});
  }
  if (dialog.ask_replace) {
    ImGui::TextColored(tint(theme.warning), "%s", "There is a file of that name already.");
    if (button(theme, actions, "replace", "Replace it", Look::main)) {
      actions.push(ChoosePath{true});
    }
  } else {
    const char* const words = dialog.purpose == Purpose::save                                                ? "Save"
                              : dialog.purpose == Purpose::open || dialog.purpose == Purpose::choose_machine ? "Open"
                                                                                                             : "Export";
    chosen = button(theme, actions, "choose", words, Look::main) || chosen;
  }
  ImGui::SameLine();
  if (button(theme, actions, "cancel", "Cancel") || ImGui::IsKeyPressed(ImGuiKey_Escape)) {
    actions.push(SetDialog{NoDialog{}});
  } else if (chosen) {
    actions.push(ChoosePath{false});
  }
}

} // namespace punchwright::editor
