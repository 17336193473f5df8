// Folders and files to choose from, a name to type, the kind of file, and whether one may be replaced.
#include "editor/path_panel.hpp"

#include "editor/dialog_parts.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

PathDialog in_folder(PathDialog dialog, const fs::path& folder) {
  dialog.folder = folder.lexically_normal();
  dialog.entries = entries_of(dialog.folder, dialog.purpose);
  dialog.trouble.clear();
  dialog.ask_replace = false;
  dialog.list_fresh = true;
  dialog.under_cursor.clear();
  return dialog;
}

void folder_line(const App& app, Actions& actions, PathDialog& next, bool& changed) {
  const Theme& theme = app.theme;
  const bool above = next.folder.has_parent_path() && next.folder != next.folder.parent_path();
  if (button(theme, actions, "folder up", "↑", Look::plain, 0, above)) {
    next = in_folder(next, next.folder.parent_path());
    changed = true;
  }
  tip(theme, above ? tr("The folder above") : tr("There is no folder above"));
  ImGui::SameLine();
  const float make = ImGui::CalcTextSize(tr("New folder")).x + 2 * ImGui::GetStyle().FramePadding.x;
  const float start = ImGui::GetCursorPosX();
  const float room = ImGui::GetContentRegionAvail().x - (writes_file(next.purpose) ? make + 8 * theme.scale : 0);
  ImGui::AlignTextToFramePadding();
  ImGui::PushTextWrapPos(start + room);
  ImGui::TextUnformatted(next.folder.string().c_str());
  ImGui::PopTextWrapPos();
  if (!writes_file(next.purpose)) {
    return;
  }
  ImGui::SameLine(start + room + 8 * theme.scale);
  if (button(theme, actions, "new folder", tr("New folder"), next.new_folder ? Look::chosen : Look::plain)) {
    next.new_folder = next.new_folder ? std::nullopt : std::optional<std::string>("");
    changed = true;
  }
  tip(theme, tr("Makes a folder in this one"));
}

// The name of a folder that is to be made.
void new_folder_line(const App& app, Actions& actions, PathDialog& next, bool& changed) {
  const float make = ImGui::CalcTextSize(tr("Make")).x + 2 * ImGui::GetStyle().FramePadding.x;
  label(app.theme, tr("Folder"), 0.12F);
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - make - 8 * app.theme.scale);
  std::string name = *next.new_folder;
  changed = text_input({app, actions, "folder name"}, name, tr("Its name")) || changed;
  next.new_folder = name;
  ImGui::SameLine();
  if (button(app.theme, actions, "make folder", tr("Make"), Look::plain, 0, !name.empty())) {
    actions.push(SetDialog{next});
    actions.push(MakeFolder{});
    changed = false;
  }
  tip(app.theme, name.empty() ? tr("Type its name first") : "");
  make_default(actions);
}

// Beside the list, where there is room for both.
float preview_width(const App& app, const PathDialog& dialog) {
  const float wide = 190 * app.theme.scale;
  return shows_preview(dialog.purpose) && ImGui::GetContentRegionAvail().x > 2.4F * wide ? wide : 0;
}

// The design that the pointer, the keys or the name rest on.
void preview(const App& app, Actions& actions, const PathDialog& dialog, float tall) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  ImGui::SameLine();
  ImGui::BeginChild("preview", ImVec2(0, tall), false, ImGuiWindowFlags_NoNav);
  if (!dialog.preview) {
    hint(theme, tr("What is in a file is shown here when the pointer or the keys rest on its name."));
    ImGui::EndChild();
    return;
  }
  const DesignCard& card = *dialog.preview;
  if (actions.publish_places) {
    actions.places.push_back({"preview " + card.path.filename().string(), {}});
  }
  const float wide = ImGui::GetContentRegionAvail().x;
  if (card.picture.columns > 0) {
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float high = std::min(wide, std::max(3 * ImGui::GetTextLineHeight(), tall - 5 * ImGui::GetTextLineHeight()));
    draw_small_picture(theme, card.picture, {corner.x + 1, corner.y + 1, corner.x + wide - 1, corner.y + high - 1});
    ImGui::Dummy(ImVec2(wide, high));
  }
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(card.title.c_str());
  ImGui::PopTextWrapPos();
  if (!card.trouble.empty()) {
    ImGui::TextColored(tint(theme.fault), "%s", card.trouble.c_str());
  } else {
    hint(theme, fmt::format("{} × {}", said_count(card.stitches, "{} stitch", "{} stitches"),
                            said_count(card.rows, "{} row", "{} rows")));
  }
  for (const Yarn& yarn : card.yarns) {
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const float side = ImGui::GetTextLineHeight();
    swatch(*ImGui::GetWindowDrawList(), theme, {corner.x, corner.y + unit, corner.x + side, corner.y + side - unit},
           yarn.colour);
    ImGui::Dummy(ImVec2(side, side));
    ImGui::SameLine();
    ImGui::TextUnformatted(
        shortened(yarn.name.empty() ? std::string(1, yarn.key) : yarn.name, wide - 2 * side).c_str());
  }
  ImGui::EndChild();
}

void list_entries(const App& app, Actions& actions, PathDialog& next, bool& changed, bool& chosen) {
  const float unit = app.theme.scale;
  const ImGuiStyle& style = ImGui::GetStyle();
  const ImVec2 border(10 * unit, 8 * unit);
  const float line = ImGui::GetTextLineHeight() + style.ItemSpacing.y;
  // Whole lines only, as many as the window has room for.
  const float room = ImGui::GetIO().DisplaySize.y - 330 * unit;
  const float lines = std::clamp(std::floor(room / line), 3.0F, 10.0F);
  ImGui::PushStyleColor(ImGuiCol_ChildBg, tint(app.theme.field));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, border);
  const float tall = lines * line - style.ItemSpacing.y + 2 * border.y;
  const float aside = preview_width(app, next);
  ImGui::BeginChild("entries", ImVec2(aside > 0 ? -aside : 0, tall), true, ImGuiWindowFlags_NavFlattened);
  ImGui::PopStyleVar();
  if (next.entries.empty()) {
    hint(app.theme, tr("Nothing of this kind in this folder"));
  }
  const PathDialog before = next;
  std::string under_cursor;
  ImGuiListClipper clipper;
  clipper.Begin(static_cast<int>(before.entries.size()), line);
  while (clipper.Step()) {
    for (int place = clipper.DisplayStart; place < clipper.DisplayEnd; ++place) {
      const FolderEntry& entry = before.entries[static_cast<std::size_t>(place)];
      const std::string shown = fmt::format("{}{}##{}", entry.name, entry.folder ? "/" : "", place);
      const bool marked = entry.name == before.name;
      if (ImGui::Selectable(shown.c_str(), marked,
                            ImGuiSelectableFlags_AllowDoubleClick | ImGuiSelectableFlags_DontClosePopups)) {
        changed = true;
        const bool by_keys =
            !ImGui::IsMouseClicked(ImGuiMouseButton_Left) && !ImGui::IsMouseReleased(ImGuiMouseButton_Left);
        if (entry.folder) {
          next = in_folder(before, before.folder / entry.name);
        } else {
          next.name = entry.name;
          next.ask_replace = false;
          next.trouble.clear();
          chosen = ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left) || (by_keys && marked);
        }
      }
      if (ImGui::IsItemHovered() || (under_cursor.empty() && ImGui::IsItemFocused() && keys_show_their_place())) {
        under_cursor = entry.name;
      }
      remember_place(actions, "entry " + entry.name, Stop::Kind::button);
      if (place == 0 && before.list_fresh) {
        make_first_stop(actions);
      }
    }
  }
  ImGui::EndChild();
  ImGui::PopStyleColor();
  if (under_cursor != next.under_cursor && next.folder == before.folder) {
    next.under_cursor = under_cursor;
    changed = true;
  }
  if (aside > 0) {
    preview(app, actions, before, tall);
  }
}

// One button for each kind of file, where there is a choice.
void kinds(const App& app, Actions& actions, PathDialog& next, bool& changed) {
  const auto choices = extensions_for(next.purpose);
  if (choices.size() < 2 || !writes_file(next.purpose)) {
    return;
  }
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(tr("Kind"));
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
    tip(app.theme, said("The name ends in {} then", kind));
  }
}

} // namespace

void path_panel(const App& app, Actions& actions, const PathDialog& dialog) {
  const Theme& theme = app.theme;
  PathDialog next = dialog;
  bool changed = false;
  bool chosen = false;
  if (!dialog.remark.empty()) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextUnformatted(dialog.remark.c_str());
    ImGui::PopTextWrapPos();
  }
  if (dialog.list_fresh) {
    // Who walks through folders by keys stays in the list.
    actions.dialog_appears = actions.dialog_appears || keys_show_their_place();
    next.list_fresh = false;
    changed = true;
  }
  folder_line(app, actions, next, changed);
  if (next.new_folder) {
    new_folder_line(app, actions, next, changed);
  }
  const unsigned make_folder = actions.default_button;
  list_entries(app, actions, next, changed, chosen);
  label(theme, tr("Name"), 0.12F);
  std::string name = next.name;
  if (text_input({app, actions, "path name"}, name, nullptr, ImGuiInputTextFlags_AutoSelectAll) &&
      !ImGui::IsKeyPressed(ImGuiKey_Escape)) {
    next.name = name;
    next.trouble.clear();
    next.ask_replace = false;
    changed = true;
  }
  if (!dialog.list_fresh) {
    make_first_stop(actions);
  }
  kinds(app, actions, next, changed);
  if (dialog.purpose == Purpose::everything) {
    const std::string begin = path_of(next).filename().string();
    hint(theme, app.work.profile.card
                    ? said("Card, needle chart, steps, knit side, purl side, rows, check, leaflet and pattern chart: "
                           "{0}-1-card.pdf to {0}-9-pattern-chart.png, together or not at all.",
                           begin)
                    : said("Needle chart, steps, knit side, purl side, rows, check, leaflet and pattern chart: "
                           "{0}-1-needles.pdf to {0}-8-pattern-chart.png, together or not at all.",
                           begin));
  }
  if (dialog.purpose == Purpose::chart) {
    changed = check_box(actions, "stay back", tr("List the needles that stay back, where they are fewer"),
                        next.chart.stay_back_where_fewer) ||
              changed;
  }
  if (!dialog.trouble.empty()) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextColored(tint(theme.fault), "%s", dialog.trouble.c_str());
    ImGui::PopTextWrapPos();
    if (actions.publish_places) {
      actions.places.push_back({"chooser trouble", {}});
    }
  }
  ImGui::Dummy(ImVec2(0, 4 * theme.scale));
  if (changed) {
    actions.push(SetDialog{next});
  }
  if (dialog.ask_replace) {
    const bool several = dialog.replaced > 1;
    const std::string words = several ? said("{} files of these names are there already.", dialog.replaced)
                                      : tr("There is a file of that name already.");
    ImGui::TextColored(tint(theme.warning), "%s", words.c_str());
    if (button(theme, actions, "replace", several ? tr("Replace them") : tr("Replace it"), Look::main)) {
      actions.push(ChoosePath{true});
    }
    tip(theme, tr("What is in the file now is gone then"));
  } else {
    const bool opens = !writes_file(dialog.purpose);
    const bool saves = dialog.purpose == Purpose::save || dialog.purpose == Purpose::keep_machine ||
                       dialog.purpose == Purpose::save_yoke;
    chosen = button(theme, actions, "choose",
                    saves                                  ? tr("Save")
                    : dialog.purpose == Purpose::yoke_tier ? tr("Take it")
                    : opens                                ? tr("Open")
                                                           : tr("Export"),
                    Look::main) ||
             chosen;
    if (make_folder == 0) {
      make_default(actions);
    }
  }
  ImGui::SameLine();
  if (button(theme, actions, "cancel", tr("Cancel")) || escape_pressed()) {
    actions.push(SetDialog{NoDialog{}});
  } else if (chosen) {
    actions.push(ChoosePath{false});
  }
}

} // namespace punchwright::editor
