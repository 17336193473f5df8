// The machine: which one, what is known of it from memory only, and how its own blank is measured.
#include "editor/panels.hpp"
#include "editor/widgets.hpp"

#include <fmt/format.h>

namespace punchwright::editor {

namespace {

void choose_machine(const App& app, Actions& actions) {
  const Document& design = app.work.design;
  ImGui::SetNextItemWidth(-1);
  if (ImGui::BeginCombo("##machine", app.work.profile.name.c_str())) {
    for (const Profile& profile : built_in_profiles()) {
      if (ImGui::Selectable(profile.title.c_str(), profile.name == design.profile)) {
        Document settings = settings_of(design);
        settings.profile = profile.name;
        actions.push(EditDesign{ChangeSettings{std::move(settings)}});
      }
      remember_place(actions, "machine " + profile.name);
      tip(app.theme, profile.name);
    }
    ImGui::EndCombo();
  }
  remember_place(actions, "machine");
  hint(app.theme, app.work.profile.title);
  if (button(app.theme, actions, "machine file", "Use a .machine file…")) {
    PathDialog dialog;
    dialog.purpose = Purpose::choose_machine;
    dialog.folder = app.session.folder;
    dialog.entries = entries_of(dialog.folder, dialog.purpose);
    actions.push(SetDialog{dialog});
  }
}

const char* words_for(Selects selects) {
  switch (selects) {
  case Selects::next_pass: return "for the next pass";
  case Selects::same_pass: return "in the pass that knits";
  case Selects::by_hand: break;
  }
  return "by hand";
}

void facts(const App& app) {
  const Profile& profile = app.work.profile;
  const Theme& theme = app.theme;
  const auto fact = [&](const char* words, const std::string& value) {
    const float start = ImGui::GetCursorPosX();
    const float wide = ImGui::GetContentRegionAvail().x;
    ImGui::TextColored(tint(theme.quiet_text), "%s", words);
    ImGui::SameLine(start + wide * 0.46F);
    ImGui::PushTextWrapPos(0);
    ImGui::TextUnformatted(value.c_str());
    ImGui::PopTextWrapPos();
  };
  fact("Needles", fmt::format("{} at {} mm", profile.needles, profile.pitch_mm));
  fact("Selects", words_for(profile.selects));
  fact("Feeders", std::to_string(profile.feeders));
  fact("End needles", profile.end_needles ? "knit contrast" : "as drawn");
  fact("Longest float", fmt::format("{} stitches", profile.longest_float));
  if (profile.card) {
    fact("Card", fmt::format("{} stitches, {} rows", profile.card->repeat, profile.card->blank_rows));
    fact("Column 1 on", name_of(profile.card->first_needle));
    fact("Card shows", profile.card->face == CardFace::as_knitter_sees ? "the purl side" : "the knit side");
    fact("A hole means", profile.card->hole == HoleMeans::contrast ? "contrast" : "main");
  } else {
    fact("Card", "none: selected by hand");
  }
}

void measure_blank(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const CardReader& card = *app.work.profile.card;
  heading(theme, "Measure your blank");
  hint(theme, "A few readings on your own card, in millimetres, replace the values from memory.");
  const int gaps = gaps_measured(card.repeat);
  BlankReadings readings = app.session.readings.value_or(readings_of(card.geometry, card.repeat));
  bool changed = false;
  const std::string across = fmt::format("Over {} gaps", gaps);
  changed = number_field({app, actions, "reading across"}, across.c_str(), readings.over_23_holes, 1, 400, "%.1f");
  changed =
      number_field({app, actions, "reading rows"}, "Over 50 rows", readings.over_50_rows, 1, 1000, "%.1f") || changed;
  changed =
      number_field({app, actions, "reading edge"}, "Edge to first hole", readings.edge_to_first_hole, 0, 400, "%.1f") ||
      changed;
  changed =
      number_field({app, actions, "reading width"}, "Sheet width", readings.sheet_width, 1, 400, "%.1f") || changed;
  changed =
      number_field({app, actions, "reading hole"}, "Hole diameter", readings.hole_diameter, 0.1, 15, "%.1f") || changed;
  if (changed) {
    actions.push(SetReadings{readings});
  }
  if (button(theme, actions, "use readings", "Use these measures", Look::plain, 0, app.session.readings.has_value())) {
    actions.push(UseReadings{});
  }
  tip(theme, "They are kept in a .machine file beside the design, which then uses it");
  if (button(theme, actions, "measure page", "Export the page with what to measure…")) {
    actions.run(Command::export_measure_page);
  }

  heading(theme, "Orientation swatch");
  hint(theme, "A small card shows whether your machine reads cards mirrored, turned or inverted.");
  if (button(theme, actions, "export swatch", "1. Export its card…")) {
    actions.run(Command::export_swatch);
  }
  if (button(theme, actions, "answer swatch", "2. Say how it came out…")) {
    actions.push(SetDialog{SwatchDialog{}});
  }
}

} // namespace

void machine_tab(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  heading(theme, "Machine");
  choose_machine(app, actions);
  if (!app.work.profile_trouble.empty()) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextColored(tint(theme.fault), "%s", app.work.profile_trouble.c_str());
    ImGui::PopTextWrapPos();
    hint(theme, "The machine chosen before is used until then.");
  }
  facts(app);
  const std::vector<std::string> unsure = unsure_values(app.work.profile);
  if (!unsure.empty()) {
    heading(theme, "Not certain");
    hint(theme, "These values come from memory or are unknown; compare them with your own machine and blank.");
    for (const std::string& value : unsure) {
      ImGui::PushTextWrapPos(0);
      ImGui::TextUnformatted(("• " + value).c_str());
      ImGui::PopTextWrapPos();
    }
  }
  if (app.work.profile.card) {
    measure_blank(app, actions);
  }
}

} // namespace punchwright::editor
