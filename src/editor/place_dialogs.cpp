// Small dialogs about a part of the drawing: its size and where the old drawing stays, the yarns of a row or band, the
// marked area as a motif.
#include "design/band_rows.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/tool_pictures.hpp"
#include "editor/widgets.hpp"
#include "editor/yarn_pairs.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <imgui_stdlib.h>

namespace punchwright::editor {

namespace {

constexpr std::array across_choices = {AcrossAnchor::left, AcrossAnchor::middle, AcrossAnchor::right};
constexpr std::array up_choices = {UpAnchor::top, UpAnchor::middle, UpAnchor::bottom}; // as they lie on the screen

const char* name_of(AcrossAnchor across) {
  constexpr std::array names = {"left", "middle", "right"};
  return names[static_cast<std::size_t>(across)];
}

const char* name_of(UpAnchor up) {
  constexpr std::array names = {"bottom", "middle", "top"};
  return names[static_cast<std::size_t>(up)];
}

const char* words_for(UpAnchor up, AcrossAnchor across) {
  constexpr std::array<std::array<const char*, 3>, 3> words = {
      {{noted("The drawing stays at the bottom, on the left"),
        noted("The drawing stays at the bottom, in the middle across"),
        noted("The drawing stays at the bottom, on the right")},
       {noted("The drawing stays at the middle, on the left"),
        noted("The drawing stays at the middle, in the middle across"),
        noted("The drawing stays at the middle, on the right")},
       {noted("The drawing stays at the top, on the left"), noted("The drawing stays at the top, in the middle across"),
        noted("The drawing stays at the top, on the right")}}};
  return tr(words[static_cast<std::size_t>(up)][static_cast<std::size_t>(across)]);
}

// One of the nine places: a frame for the new size with a filled square where the old drawing stays.
bool anchor_button(const App& app, Actions& actions, AcrossAnchor across, UpAnchor up, bool chosen) {
  const Theme& theme = app.theme;
  const float side = ImGui::GetFrameHeight();
  const std::string name = fmt::format("anchor {} {}", name_of(up), name_of(across));
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const bool pressed = button(theme, actions, name.c_str(), " ", chosen ? Look::chosen : Look::plain, side);
  tip(theme, words_for(up, across));
  const float part = side / 5;
  const auto column = static_cast<float>(across);
  const float line = up == UpAnchor::top ? 0 : up == UpAnchor::middle ? 1 : 2;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImVec2 low{corner.x + part * (1 + column), corner.y + part * (1 + line)};
  const Colour colour = chosen ? theme.accent : theme.quiet_text;
  list.AddRect({corner.x + part, corner.y + part}, {corner.x + 4 * part, corner.y + 4 * part}, ink(colour, 0.6F));
  list.AddRectFilled(low, {low.x + part, low.y + part}, ink(colour));
  return pressed;
}

// "3 columns more, on the right": the change in words; empty where there is none.
std::string columns_in_words(int by, AcrossAnchor anchor) {
  if (by == 0) {
    return {};
  }
  const int count = by > 0 ? by : -by;
  const std::string amount = by > 0 ? said_count(count, "{} column more", "{} columns more")
                                    : said_count(count, "{} column fewer", "{} columns fewer");
  switch (anchor) {
  case AcrossAnchor::left: return said("{}, on the right", amount);
  case AcrossAnchor::right: return said("{}, on the left", amount);
  case AcrossAnchor::middle: break;
  }
  return said("{}: {} on the left, {} on the right", amount, count / 2, count - count / 2);
}

std::string rows_in_words(int by, UpAnchor anchor) {
  if (by == 0) {
    return {};
  }
  const int count = by > 0 ? by : -by;
  const std::string amount =
      by > 0 ? said_count(count, "{} row more", "{} rows more") : said_count(count, "{} row fewer", "{} rows fewer");
  switch (anchor) {
  case UpAnchor::bottom: return said("{}, at the top", amount);
  case UpAnchor::top: return said("{}, at the bottom", amount);
  case UpAnchor::middle: break;
  }
  return said("{}: {} at the bottom, {} at the top", amount, count / 2, count - count / 2);
}

std::string words_for(const SizeDialog& wishes, const Grid& grid) {
  const std::string columns = columns_in_words(wishes.width - grid.width(), wishes.across);
  const std::string rows = rows_in_words(wishes.rows - grid.height(), wishes.up);
  if (columns.empty() && rows.empty()) {
    return tr("The size that it has.");
  }
  return columns + (columns.empty() || rows.empty() ? "" : "; ") + rows + ".";
}

bool choose_anchor(const App& app, Actions& actions, SizeDialog& wishes) {
  bool changed = false;
  label(app.theme, tr("The drawing stays"));
  ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(3 * app.theme.scale, 3 * app.theme.scale));
  ImGui::BeginGroup();
  for (const UpAnchor up : up_choices) {
    for (const AcrossAnchor across : across_choices) {
      if (across != AcrossAnchor::left) {
        ImGui::SameLine();
      }
      if (anchor_button(app, actions, across, up, wishes.across == across && wishes.up == up)) {
        wishes.across = across;
        wishes.up = up;
        changed = true;
      }
    }
  }
  ImGui::EndGroup();
  ImGui::PopStyleVar();
  return changed;
}

struct RowsOfBand {
  int first = 0;
  int last = 0;
};

RowsOfBand rows_of_band(const Document& design, std::size_t band) {
  RowsOfBand rows;
  for (std::size_t below = 0; below < band; ++below) {
    rows.first += design.bands[below].rows;
  }
  rows.last = rows.first + design.bands[band].rows - 1;
  return rows;
}

} // namespace

void size_dialog(const App& app, Actions& actions, const SizeDialog& dialog) {
  SizeDialog wishes = dialog;
  bool changed =
      count_field({app, actions, "size width", &wishes.remark}, tr("Stitches"), wishes.width, 1, widest_repeat);
  changed =
      count_field({app, actions, "size rows", &wishes.remark}, tr("Rows"), wishes.rows, 1, tallest_repeat) || changed;
  changed = choose_anchor(app, actions, wishes) || changed;
  remarks_above_buttons([&] {
    hint(app.theme, said("{} New stitches are main.", words_for(wishes, app.work.design.grid)));
    width_words(app, &app.work.profile, wishes.width);
    warning_lines(app.theme, dialog.remark);
  });
  if (changed || wishes.remark != dialog.remark) {
    actions.push(SetDialog{wishes});
  }
  ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
  if (button(app.theme, actions, "set size", tr("Change the size"), Look::main)) {
    actions.push(SetDialog{NoDialog{}});
    actions.push(EditDesign{Resize{wishes.width, wishes.rows, wishes.across, wishes.up}});
  }
  make_default(actions);
  tip(app.theme, tr("One step, which can be undone"));
  ImGui::SameLine();
  cancel_button(app, actions, tr("Cancel"));
}

void yarns_here_dialog(const App& app, Actions& actions, const YarnsHereDialog& dialog) {
  const Theme& theme = app.theme;
  const Document& design = app.work.design;
  const std::size_t index = band_index_at(design, dialog.row);
  const Band& band = design.bands[index];
  const RowsOfBand rows = rows_of_band(design, index);
  const int first = dialog.row_only ? dialog.row : rows.first;
  const int last = dialog.row_only ? dialog.row : rows.last;
  const auto scope = [&](const char* name, const std::string& words, bool row_only) {
    if (button(theme, actions, name, words.c_str(), dialog.row_only == row_only ? Look::chosen : Look::plain)) {
      YarnsHereDialog next = dialog;
      next.row_only = row_only;
      actions.push(SetDialog{next});
    }
  };
  if (rows.first != rows.last) {
    scope("yarns of band", said("Rows {}–{}", rows.first + 1, rows.last + 1), false);
    ImGui::SameLine(0, 4 * theme.scale);
    scope("yarns of row", said("Row {} alone", dialog.row + 1), true);
  }
  const auto take = [&](char main, std::optional<char> contrast) {
    actions.push(SetDialog{NoDialog{}});
    actions.push(SetYarnsHere{first, last - first + 1, main, contrast});
  };
  const float role = std::max(ImGui::CalcTextSize(tr("Main")).x, ImGui::CalcTextSize(tr("Contrast")).x) +
                     2 * ImGui::GetStyle().FramePadding.x;
  const float gap = 4 * theme.scale;
  for (const Yarn& yarn : design.yarns) {
    ImGui::PushID(yarn.key);
    const float side = ImGui::GetFrameHeight();
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    swatch(*ImGui::GetWindowDrawList(), theme, {corner.x, corner.y, corner.x + side, corner.y + side},
           seen_yarn(app, yarn.key));
    const float room = ImGui::GetContentRegionAvail().x - side - 2 * role - 4 * gap;
    ImGui::SetCursorScreenPos({corner.x + side + gap, corner.y});
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(shortened(shown_name(yarn), room).c_str());
    ImGui::SameLine(ImGui::GetContentRegionMax().x - 2 * role - gap);
    if (button(theme, actions, fmt::format("main {}", yarn.key).c_str(), tr("Main"),
               yarn.key == band.main ? Look::chosen : Look::plain, role)) {
      take(yarn.key, band.contrast == yarn.key ? std::optional(band.main) : band.contrast);
    }
    ImGui::SameLine(0, gap);
    const bool possible = band.contrast || yarn.key != band.main; // it can't be both
    if (button(theme, actions, fmt::format("contrast {}", yarn.key).c_str(), tr("Contrast"),
               yarn.key == band.contrast ? Look::chosen : Look::plain, role, possible)) {
      take(band.main == yarn.key ? *band.contrast : band.main, yarn.key);
    }
    ImGui::PopID();
  }
  if (band.contrast) {
    if (button(theme, actions, "no contrast", tr("No contrast"))) {
      take(band.main, std::nullopt);
    }
    tip(theme, tr("Rows of main alone; they must not have contrast stitches"));
    ImGui::SameLine(0, gap);
  }
  const ImVec2 low = ImGui::GetWindowPos();
  const ImVec2 size = ImGui::GetWindowSize();
  // It may lie over parts of its own colour.
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect(low, {low.x + size.x, low.y + size.y});
  list.AddRect({low.x + 1, low.y + 1}, {low.x + size.x - 1, low.y + size.y - 1}, ink(theme.accent),
               ImGui::GetStyle().WindowRounding, 0, 2 * theme.scale);
  list.PopClipRect();
  const bool beside = ImGui::IsMouseClicked(ImGuiMouseButton_Left) && !actions.dialog_appears &&
                      !ImGui::IsMouseHoveringRect(low, {low.x + size.x, low.y + size.y}, false);
  cancel_button(app, actions, tr("Cancel"));
  if (beside) {
    actions.push(SetDialog{NoDialog{}});
  }
}

void keep_motif_dialog(const App& app, Actions& actions, const KeepMotifDialog& dialog) {
  const Theme& theme = app.theme;
  KeepMotifDialog next = dialog;
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float wide = ImGui::GetContentRegionAvail().x;
  const float tall = 6 * ImGui::GetTextLineHeight();
  ImGui::Dummy({wide, tall});
  thumbnail(theme, dialog.drawing, {corner.x, corner.y, corner.x + wide, corner.y + tall},
            app.work.design.gauge.stitch_mm() / app.work.design.gauge.row_mm());
  hint(theme,
       said("{} × {} stitches, into your own folder of motifs", dialog.drawing.width(), dialog.drawing.height()));
  label(theme, tr("Name"), 0.25F);
  bool changed = text_input({app, actions, "motif name"}, next.name, tr("Gull over the pier"));
  make_first_stop(actions);
  label(theme, tr("Words"), 0.25F);
  changed = text_input({app, actions, "motif words"}, next.words, tr("more to find it by: bird, sea")) || changed;
  if (!dialog.trouble.empty()) {
    ImGui::TextColored(tint(theme.fault), "%s", dialog.trouble.c_str());
  }
  if (changed) {
    next.trouble.clear();
    actions.push(SetDialog{next});
  }
  ImGui::Dummy(ImVec2(0, 4 * theme.scale));
  if (button(theme, actions, "keep", tr("Keep it"), Look::main)) {
    actions.push(KeepMotif{});
  }
  make_default(actions);
  tip(theme, app.motif_folder.string());
  ImGui::SameLine();
  cancel_button(app, actions, tr("Cancel"));
}

} // namespace punchwright::editor
