// What stands in the middle of the window while something is asked: guard, trouble, new design, size, and the rest.
#include "design/words.hpp"
#include "editor/choice_field.hpp"
#include "editor/closed_list.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/panels.hpp"
#include "editor/path_panel.hpp"
#include "editor/widgets.hpp"
#include "machine/usual_gauge.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <imgui_internal.h>

namespace punchwright::editor {

namespace {

// The button that Return presses.
bool main_button(const App& app, Actions& actions, const char* name, const char* words) {
  const bool pressed = button(app.theme, actions, name, words, Look::main);
  make_default(actions);
  return pressed;
}

// A drop-down of the built-in machines; true where another one was chosen.
bool choose_built_in(const App& app, Actions& actions, std::string& name) {
  bool changed = false;
  const Profile* const present = built_in_profile(name);
  const std::string title = with_capital(present != nullptr ? tr(present->title.c_str()) : name);
  label(app.theme, tr("Machine"), 0.25F);
  const std::string shown = shortened_in_middle(title, room_in_closed_list(ImGui::CalcItemWidth()));
  if (ImGui::BeginCombo("##machine", shown.c_str())) {
    for (const Profile& choice : built_in_profiles()) {
      if (list_entry(with_capital(tr(choice.title.c_str())).c_str(), choice.name == name)) {
        name = choice.name;
        changed = true;
      }
      remember_place(actions, "new machine " + choice.name);
    }
    ImGui::EndCombo();
  }
  remember_place(actions, "new machine");
  if (shown != title) {
    hint(app.theme, title);
  }
  return changed;
}

struct Drawer {
  const App& app;
  Actions& actions;
  Placed& placed;

  void operator()(const NoDialog&) const {}
  void operator()(const PathDialog& dialog) const { path_panel(app, actions, dialog); }
  void operator()(const KeysDialog&) const { keys_dialog(app, actions); }
  void operator()(const SwatchDialog&) const { swatch_dialog(app, actions); }
  void operator()(const CommandsDialog& dialog) const { commands_dialog(app, actions, dialog); }
  void operator()(const StepsDialog&) const { steps_dialog(app, actions); }
  void operator()(const SettingsDialog&) const { settings_dialog(app, actions); }
  void operator()(const StartDialog& dialog) const { start_page(app, actions, dialog); }
  void operator()(const HelpDialog& dialog) const { help_page(app, actions, dialog); }
  void operator()(const PreviewDialog&) const { preview_dialog(app, actions, placed); }
  void operator()(const PairsDialog& dialog) const { pairs_dialog(app, actions, dialog); }
  void operator()(const PaletteDialog& dialog) const { palette_dialog(app, actions, dialog); }
  void operator()(const TraceDialog& dialog) const { trace_panel(app, actions, dialog); }
  void operator()(const PictureDialog& dialog) const { picture_panel(app, actions, dialog); }
  void operator()(const LayoutDialog& dialog) const { layout_panel(app, actions, dialog); }
  void operator()(const SizeDialog& dialog) const { size_dialog(app, actions, dialog); }
  void operator()(const YarnsHereDialog& dialog) const { yarns_here_dialog(app, actions, dialog); }
  void operator()(const KeepMotifDialog& dialog) const { keep_motif_dialog(app, actions, dialog); }
  void operator()(const BenchChangedDialog& dialog) const { bench_changed_dialog(app, actions, dialog); }
  void operator()(const StepListDialog& dialog) const { step_list_dialog(app, actions, dialog); }
  void operator()(const PlayDialog& dialog) const { play_dialog(app, actions, dialog); }
  void operator()(const WrongDialog& dialog) const { wrong_dialog(app, actions, dialog); }
  void operator()(const RecoveryDialog& dialog) const { recovery_dialog(app, actions, dialog); }
  void operator()(const ChangedDialog& dialog) const { changed_dialog(app, actions, dialog); }
  void operator()(const NewYokeDialog& dialog) const { new_yoke_dialog_panel(app, actions, dialog); }

  void operator()(const DroppedDialog& dialog) const {
    text_lines(said("“{}” was dropped here.", dialog.path.filename().string()));
    ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
    if (main_button(app, actions, "dropped open", tr("Open it"))) {
      actions.push(SetDialog{NoDialog{}});
      actions.push(OpenDropped{dialog.path});
    }
    tip(app.theme, tr("It takes the place of this design; what is not saved is asked for first"));
    ImGui::SameLine();
    if (button(app.theme, actions, "dropped place", tr("Put it over this drawing"))) {
      actions.push(SetDialog{NoDialog{}});
      actions.push(PlaceDropped{dialog.path});
    }
    tip(app.theme, tr("It hangs over the drawing until it is set down"));
    ImGui::SameLine();
    cancel_button(app, actions, tr("Cancel"));
  }

  void operator()(const GuardDialog& dialog) const {
    const Theme& theme = app.theme;
    text_lines(said("“{}” has changes that are not saved.", dialog.yoke ? yoke_name_of(app) : file_name_of(app)));
    ImGui::Dummy(ImVec2(0, 4 * theme.scale));
    if (main_button(app, actions, "guard save", tr("Save"))) {
      actions.push(AnswerGuard{GuardAnswer::save});
    }
    ImGui::SameLine();
    if (button(theme, actions, "guard discard", tr("Discard the changes"))) {
      actions.push(AnswerGuard{GuardAnswer::discard});
    }
    tip(theme, tr("They are gone then"));
    ImGui::SameLine();
    if (button(theme, actions, "guard cancel", tr("Cancel")) || escape_pressed()) {
      actions.push(AnswerGuard{GuardAnswer::cancel});
    }
  }

  void operator()(const TroubleDialog& dialog) const {
    text_lines(dialog.text);
    if (!dialog.remedy.empty()) {
      ImGui::PushFont(app.theme.bold);
      ImGui::TextColored(tint(app.theme.good), tr("What helps"));
      ImGui::PopFont();
      text_lines(with_capital(dialog.remedy));
    }
    if (!dialog.rest.empty()) {
      hint(app.theme, dialog.rest);
    }
    ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
    if (dialog.not_saved) {
      return save_after_all();
    }
    if (!dialog.missing) {
      return close_button(app, actions);
    }
    ImGui::Separator();
    text_lines(tr("The design itself is whole. Open it with another machine? Nothing is written before you save."));
    TroubleDialog next = dialog;
    if (choose_built_in(app, actions, next.missing->instead)) {
      actions.push(SetDialog{next});
    }
    if (main_button(app, actions, "open instead", tr("Open with this machine"))) {
      actions.push(OpenWithMachine{dialog.missing->instead});
    }
    make_first_stop(actions);
    ImGui::SameLine();
    cancel_button(app, actions, tr("Don't open it"));
  }

  void save_after_all() const {
    if (main_button(app, actions, "save elsewhere", tr("Save elsewhere…"))) {
      actions.push(SaveAfterTrouble{SavedAgain::elsewhere});
    }
    tip(app.theme, tr("Asks for another folder or name"));
    make_first_stop(actions);
    flow(ImGui::CalcTextSize(tr("Try again")).x + 2 * ImGui::GetStyle().FramePadding.x);
    if (button(app.theme, actions, "save again", tr("Try again"))) {
      actions.push(SaveAfterTrouble{SavedAgain::there});
    }
    tip(app.theme, tr("In the same file, when there is room on the disk or it may be written to"));
    flow(ImGui::CalcTextSize(tr("Close")).x + 2 * ImGui::GetStyle().FramePadding.x);
    cancel_button(app, actions, tr("Close"));
  }

  void operator()(const NewDialog& dialog) const {
    const float buttons = 4 * app.theme.scale + ImGui::GetStyle().ItemSpacing.y + ImGui::GetFrameHeightWithSpacing();
    NewDialog wishes = dialog;
    scrolling(actions, room_below_here() - buttons, [&] { new_design(dialog, wishes); }); // the buttons stay in sight
    ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
    if (main_button(app, actions, "begin", tr("Begin"))) {
      actions.push(BeginDesign{wishes});
    }
    tip(app.theme, tr("A drawing all main, of that size"));
    ImGui::SameLine();
    cancel_button(app, actions, tr("Cancel"));
  }

  void new_design(const NewDialog& dialog, NewDialog& wishes) const {
    bool changed = choose_built_in(app, actions, wishes.profile);
    const Profile* const profile = built_in_profile(wishes.profile);
    if (changed && profile != nullptr) {
      wishes.width = profile->card ? profile->card->repeat : 24;
      wishes.remark.clear();
    }
    changed =
        count_field({app, actions, "new width", &wishes.remark}, tr("Stitches"), wishes.width, 1, widest_repeat) ||
        changed;
    changed =
        count_field({app, actions, "new rows", &wishes.remark}, tr("Rows"), wishes.rows, 1, tallest_repeat) || changed;
    const LengthUnit unit = app.settings.lengths;
    remarks_above_buttons([&] {
      width_words(app, profile, wishes.width);
      if (profile != nullptr) {
        const Gauge gauge = usual_gauge(*profile);
        hint(app.theme, said("Begins with {} stitches and {} rows to {}; your swatch says better.",
                             short_decimal(gauge_shown(gauge.stitches, unit), 1),
                             short_decimal(gauge_shown(gauge.rows, unit), 1), gauge_span_text(unit)));
      }
      warning_lines(app.theme, dialog.remark);
    });
    if (changed || wishes.remark != dialog.remark) {
      actions.push(SetDialog{wishes});
    }
  }
};

const char* title_of_dialog(const Dialog& dialog) {
  if (const auto* const path = std::get_if<PathDialog>(&dialog)) {
    return title_of(path->purpose).data();
  }
  if (const auto* const trouble = std::get_if<TroubleDialog>(&dialog)) {
    return trouble->title.c_str();
  }
  constexpr std::array titles = {"",
                                 "",
                                 noted("Save before going on?"),
                                 "",
                                 noted("New design"),
                                 noted("Size of the repeat"),
                                 noted("Keys and mouse"),
                                 noted("How did the swatch come out?"),
                                 noted("All commands"),
                                 noted("What was done"),
                                 noted("Open it, or set it down?"),
                                 noted("Settings"),
                                 noted("Where to begin"),
                                 noted("The guide"),
                                 noted("Print preview"),
                                 noted("Try other pairs"),
                                 noted("Yarn colours"),
                                 noted("A picture as a drawing"),
                                 noted("Lay out the drawing"),
                                 noted("Yarns here"),
                                 noted("Keep as a motif"),
                                 noted("The steps have changed"),
                                 noted("Steps at the machine"),
                                 noted("Play the knitting"),
                                 noted("What went wrong?"),
                                 noted("Trace a picture"),
                                 noted("Your work is still here"),
                                 noted("The file has changed meanwhile"),
                                 noted("A yoke from measurements")};
  return tr(titles[dialog.index()]);
}

// px, without the borders: known before anything is drawn, so that a dialog has its size at once.
float width_of_dialog(const App& app) {
  const Dialog& dialog = app.session.dialog;
  const float unit = app.theme.scale;
  const float wished =
      std::holds_alternative<PathDialog>(dialog)     ? 680 * unit
      : std::holds_alternative<KeysDialog>(dialog)   ? width_of_keys_dialog(app)
      : std::holds_alternative<SwatchDialog>(dialog) ? width_of_swatch_dialog(app)
      : std::holds_alternative<PreviewDialog>(dialog) || std::holds_alternative<PlayDialog>(dialog) ||
              std::holds_alternative<WrongDialog>(dialog)
          ? room_for_dialog(app).x
      : std::holds_alternative<StepListDialog>(dialog)                                                  ? 900 * unit
      : std::holds_alternative<PairsDialog>(dialog) || std::holds_alternative<PaletteDialog>(dialog)    ? 760 * unit
      : std::holds_alternative<LayoutDialog>(dialog)                                                    ? 620 * unit
      : std::holds_alternative<YarnsHereDialog>(dialog)                                                 ? 320 * unit
      : std::holds_alternative<RecoveryDialog>(dialog) || std::holds_alternative<ChangedDialog>(dialog) ? 560 * unit
      : std::holds_alternative<TraceDialog>(dialog)                                                     ? 900 * unit
      : std::holds_alternative<NewYokeDialog>(dialog)                                                   ? 760 * unit
      : std::holds_alternative<StartDialog>(dialog)                                                     ? 900 * unit
      : std::holds_alternative<HelpDialog>(dialog)                                                      ? 960 * unit
                                                                                                        : 450 * unit;
  return std::min(wished, room_for_dialog(app).x);
}

} // namespace

namespace {

// In the middle of the window; the yarns of a row open beside it, as far as there is room.
void place_dialog(const Dialog& dialog, const std::string& name, float wide) {
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  const auto* const here = std::get_if<YarnsHereDialog>(&dialog);
  if (here == nullptr) {
    return ImGui::SetNextWindowPos(ImVec2(size.x / 2, size.y / 2), ImGuiCond_Always, ImVec2(0.5F, 0.5F));
  }
  const ImGuiWindow* const window = ImGui::FindWindowByName(name.c_str());
  const float tall = window == nullptr ? 0 : window->Size.y;
  const float left = std::clamp(here->at.x - wide / 2, 0.0F, std::max(0.0F, size.x - wide));
  ImGui::SetNextWindowPos({left, std::clamp(here->at.y, 0.0F, std::max(0.0F, size.y - tall))});
}

// Those that large text in a small window makes taller than it: below their title they scroll, and have no lists of
// their own that do.
bool scrolls_below_title(const Dialog& dialog) {
  return std::holds_alternative<StartDialog>(dialog) || std::holds_alternative<SizeDialog>(dialog) ||
         std::holds_alternative<TroubleDialog>(dialog) || std::holds_alternative<SwatchDialog>(dialog);
}

} // namespace

void dialogs(const App& app, Actions& actions, Placed& placed) {
  const Dialog& dialog = app.session.dialog;
  if (!is_open(dialog)) {
    return;
  }
  const std::string name = "###dialog " + name_of(dialog); // another dialog is another window, with its own size
  if (!ImGui::IsPopupOpen(name.c_str())) {
    ImGui::OpenPopup(name.c_str());
  }
  const Theme& theme = app.theme;
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  const ImVec2 border(20 * theme.scale, 16 * theme.scale);
  const float wide = std::floor(width_of_dialog(app) + 2 * border.x);
  place_dialog(dialog, name, wide);
  ImGui::SetNextWindowSizeConstraints(ImVec2(wide, 0), ImVec2(wide, size.y - 20));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, border);
  ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 9 * theme.scale);
  if (ImGui::BeginPopupModal(name.c_str(), nullptr,
                             ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoResize |
                                 ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_AlwaysAutoResize)) {
    actions.dialog_appears = ImGui::IsWindowAppearing();
    // At once: fading would need frames. What stands at its place leaves the drawing in sight.
    ImGui::GetCurrentContext()->DimBgRatio = std::holds_alternative<YarnsHereDialog>(dialog) ? 0 : 1;
    if (!std::holds_alternative<PreviewDialog>(dialog)) { // whose sheets say what they are
      ImGui::PushFont(theme.bold);
      ImGui::TextUnformatted(title_of_dialog(dialog));
      ImGui::PopFont();
      ImGui::Dummy(ImVec2(0, 2 * theme.scale));
    }
    const auto draw = [&] { std::visit(Drawer{app, actions, placed}, dialog); };
    if (scrolls_below_title(dialog)) {
      scrolling(actions, room_below_here(), draw);
    } else {
      draw();
    }
    ImGui::EndPopup();
  }
  ImGui::PopStyleVar(2);
}

} // namespace punchwright::editor
