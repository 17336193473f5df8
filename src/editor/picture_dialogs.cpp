// Two dialogs with a picture that follows what is chosen: a picture that becomes a drawing, and the drawing laid out.
#include "design/words.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/picture_views.hpp"
#include "editor/typed_text.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// As high as the window has room for beside so many lines.
void picture_in_room(const App& app, const SmallPicture& picture, float lines) {
  const float wide = ImGui::GetContentRegionAvail().x;
  const float tall = std::min(0.7F * wide, height_beside_lines(app, lines));
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  ImGui::Dummy({wide, tall});
  draw_small_picture(app.theme, picture, {corner.x + 1, corner.y + 1, corner.x + wide - 1, corner.y + tall - 1});
}

void colour_line(const App& app, const char* words, Colour colour) {
  const float side = ImGui::GetTextLineHeight();
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  swatch(*ImGui::GetWindowDrawList(), app.theme, {corner.x, corner.y, corner.x + side, corner.y + side}, colour);
  ImGui::SetCursorScreenPos({corner.x + side + 6 * app.theme.scale, corner.y});
  ImGui::TextUnformatted(fmt::format("{}: {}", words, hex_of(colour)).c_str());
}

// Whether the picture hangs over the edges of this drawing.
std::string words_for_placing(const Grid& picture, const Grid& repeat) {
  if (picture.width() <= repeat.width() && picture.height() <= repeat.height()) {
    return {};
  }
  return said("This drawing has {} × {} stitches: over it, what reaches beyond them would be cut off.", repeat.width(),
              repeat.height());
}

} // namespace

void picture_panel(const App& app, Actions& actions, const PictureDialog& dialog) {
  const Theme& theme = app.theme;
  const Grid& drawing = dialog.picture->darker;
  const bool darker = dialog.contrast == ContrastIs::darker;
  const bool untouched = app.session.path.empty() && app.work.history.done() == 0;
  picture_in_room(app, dialog.shown, 11);
  text_lines(said("{}: {} stitches × {} rows", dialog.path.filename().string(), drawing.width(), drawing.height()));
  colour_line(app, tr("Contrast"), darker ? dialog.picture->dark : dialog.picture->light);
  colour_line(app, tr("Main"), darker ? dialog.picture->light : dialog.picture->dark);
  bool lighter = !darker;
  if (check_box(actions, "lighter", tr("The lighter colour is contrast"), lighter)) {
    actions.push(SetDialog{picture_dialog(dialog.path, dialog.picture,
                                          lighter ? ContrastIs::lighter : ContrastIs::darker, app.work.design.gauge)});
  }
  width_words(app, &app.work.profile, drawing.width());
  warning_lines(theme, words_for_placing(drawing, app.work.design.grid));
  ImGui::Dummy(ImVec2(0, 4 * theme.scale));
  if (button(theme, actions, "picture new", tr("As a new design"), untouched ? Look::main : Look::plain)) {
    actions.push(TakePicture{true});
  }
  if (untouched) {
    make_default(actions);
    make_first_stop(actions);
  }
  tip(theme, tr("For this machine and gauge; what is not saved is asked for first"));
  ImGui::SameLine();
  if (button(theme, actions, "picture place", tr("Put it over this drawing"), untouched ? Look::plain : Look::main)) {
    actions.push(TakePicture{false});
  }
  if (!untouched) {
    make_default(actions);
    make_first_stop(actions);
  }
  tip(theme, tr("It hangs over the drawing until it is set down"));
  if (button(theme, actions, "trace instead", tr("Trace it…"))) {
    actions.push(TraceInstead{});
  }
  tip(theme, tr("Fitted to so many stitches, with no float too long"));
  if (ImGui::GetContentRegionMax().x - ImGui::GetItemRectMax().x + ImGui::GetWindowPos().x >
      ImGui::CalcTextSize(tr("Cancel")).x + 4 * ImGui::GetStyle().FramePadding.x) {
    ImGui::SameLine();
  }
  cancel_button(app, actions, tr("Cancel"));
}

void layout_panel(const App& app, Actions& actions, const LayoutDialog& dialog) {
  const Theme& theme = app.theme;
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  for (const Layout layout : layouts()) {
    const std::string words = with_capital(tr(name_of(layout).data()));
    const float wide = ImGui::CalcTextSize(words.c_str()).x + 2 * ImGui::GetStyle().FramePadding.x;
    if (layout != layouts().front() && ImGui::GetItemRectMax().x + 4 * theme.scale + wide <= right) {
      ImGui::SameLine(0, 4 * theme.scale);
    }
    const bool chosen = layout == dialog.layout;
    if (button(theme, actions, fmt::format("layout {}", name_of(layout)).c_str(), words.c_str(),
               chosen ? Look::chosen : Look::plain)) {
      actions.push(SetDialog{layout_dialog(app.work.design, app.work.profile, layout)});
    }
    if (!chosen) { // whose words stand below
      tip(theme, tr(description_of(layout).data()));
    } else {
      make_first_stop(actions);
    }
  }
  hint(theme, with_capital(tr(description_of(dialog.layout).data())) + ".");
  if (dialog.shown.columns > 0) {
    picture_in_room(app, dialog.shown, 12);
    text_lines(said("The straight repeat: {} stitches × {} rows", dialog.width, dialog.rows));
  }
  warning_lines(theme, dialog.trouble.empty() ? "" : with_capital(dialog.trouble) + ".");
  ImGui::Dummy(ImVec2(0, 4 * theme.scale));
  if (button(theme, actions, "take layout", tr("Lay it out so"), Look::main, 0, dialog.trouble.empty())) {
    actions.push(SetDialog{NoDialog{}});
    actions.push(TakeLayout{dialog.layout});
  }
  if (dialog.trouble.empty()) {
    make_default(actions);
  }
  tip(theme, dialog.trouble.empty() ? tr("One step, which can be undone") : dialog.trouble);
  ImGui::SameLine();
  cancel_button(app, actions, tr("Cancel"));
}

} // namespace punchwright::editor
