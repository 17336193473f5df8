// The machine: which one, what is known of it from memory only, and how its own blank is measured.
#include "design/words.hpp"
#include "editor/choice_field.hpp"
#include "editor/closed_list.hpp"
#include "editor/panels.hpp"
#include "editor/widgets.hpp"
#include "machine/profile_keys.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// At most six digits, for people.
std::string in_few_digits(double number) {
  std::string text = fmt::format("{:g}", number);
  std::ranges::replace(text, '.', chosen_language().decimal_sign);
  return text;
}

std::string gauge_text(const App& app) {
  const Gauge& gauge = app.work.design.gauge;
  const LengthUnit unit = app.settings.lengths;
  return said("{} × {} over {}", in_few_digits(gauge_shown(gauge.stitches, unit)),
              in_few_digits(gauge_shown(gauge.rows, unit)), gauge_span_text(unit));
}

void choose_machine(const App& app, Actions& actions) {
  const Document& design = app.work.design;
  const Theme& theme = app.theme;
  const Profile& present = app.work.profile;
  const std::string title = tr(present.title.c_str());
  const std::string shown = shortened_in_middle(title, room_in_closed_list(ImGui::GetContentRegionAvail().x));
  ImGui::SetNextItemWidth(-1);
  const bool open = ImGui::BeginCombo("##machine", shown.c_str());
  if (open) {
    for (const Profile& profile : built_in_profiles()) {
      if (list_entry(tr(profile.title.c_str()), profile.name == design.profile)) {
        actions.push(EditDesign{ChangeSettings{with_machine(settings_of(design), profile)}});
        actions.push(Say{said("The gauge stays {}: measure a swatch of this machine's", gauge_text(app))});
      }
      remember_place(actions, "machine " + profile.name);
    }
    ImGui::EndCombo();
  }
  remember_place(actions, "machine");
  if (shown != title) {
    hint(theme, title);
  }
  if (button(theme, actions, "machine file", tr("Use a .machine file…"))) {
    PathDialog dialog;
    dialog.purpose = Purpose::choose_machine;
    dialog.folder = app.session.folder;
    dialog.entries = entries_of(dialog.folder, dialog.purpose);
    actions.push(SetDialog{dialog});
  }
  tip(theme, tr("A machine of your own, kept in a file"));
  hint(theme, said("Gauge {}, as set under Design. Another machine knits another gauge.", gauge_text(app)));
}

const char* words_for(Selects selects) {
  switch (selects) {
  case Selects::next_pass: return tr("for the next pass");
  case Selects::same_pass: return tr("in the pass that knits");
  case Selects::by_hand: break;
  }
  return tr("by hand");
}

void facts(const App& app) {
  const Profile& profile = app.work.profile;
  const LengthUnit unit = app.settings.lengths;
  const Theme& theme = app.theme;
  const auto fact = [&](const char* words, const std::string& value) {
    ImGui::TableNextColumn();
    ImGui::PushTextWrapPos(0);
    ImGui::TextColored(tint(theme.quiet_text), "%s", words);
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(value.c_str());
    ImGui::PopTextWrapPos();
  };
  if (!ImGui::BeginTable("facts", 2)) {
    return;
  }
  ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch, 0.43F);
  ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch, 0.57F);
  fact(tr("Needles"),
       said("{} at {} {}", profile.needles, in_few_digits(small_length(profile.pitch_mm, unit)), small_unit(unit)));
  fact(tr("Selects"), words_for(profile.selects));
  fact(tr("Feeders"), std::to_string(profile.feeders));
  fact(tr("End needles"), profile.end_needles ? tr("knit contrast") : tr("as drawn"));
  fact(tr("Longest float"), said_count(profile.longest_float, "{} stitch", "{} stitches"));
  if (profile.card) {
    fact(tr("Card"), fmt::format("{}, {}", said_count(profile.card->repeat, "{} stitch", "{} stitches"),
                                 said_count(profile.card->blank_rows, "{} row", "{} rows")));
    fact(tr("Reader offset"), said_count(profile.card->reader_offset, "{} row", "{} rows"));
    fact(tr("Column 1 on"), name_of(profile.card->first_needle));
    fact(tr("Card shows"), profile.card->face == CardFace::as_knitter_sees ? tr("the purl side") : tr("the knit side"));
    fact(tr("A hole means"), profile.card->hole == HoleMeans::contrast ? tr("contrast") : tr("main"));
  } else {
    fact(tr("Card"), tr("none: selected by hand"));
  }
  ImGui::EndTable();
}

void measure_blank(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const CardReader& card = *app.work.profile.card;
  heading(theme, tr("Measure your blank"));
  const bool inches = app.settings.lengths == LengthUnit::inches;
  hint(theme, inches ? tr("A few readings on your own card, in inches, replace the values from memory.")
                     : tr("A few readings on your own card, in millimetres, replace the values from memory."));
  if (button(theme, actions, "measure page", tr("Export a page for it…"))) {
    actions.run(Command::export_measure_page);
  }
  tip(theme, tr("A page that shows what to measure, with places to write it down"));
  const int gaps = gaps_measured(card.repeat);
  BlankReadings readings = app.session.readings.value_or(readings_of(card.geometry, card.repeat));
  int offset = app.session.reader_offset.value_or(card.reader_offset);
  const auto reading = [&](const char* name, const char* words, double& value, double low, double high, int decimals,
                           const std::string& more) {
    const bool typed = length_field({app, actions, name}, words, value, low, high, decimals);
    tip(theme, more);
    return typed;
  };
  bool changed = false;
  if (gaps > 0) {
    const std::string over_gaps = said("Over {} gaps", gaps);
    changed = reading("reading across", over_gaps.c_str(), readings.over_23_holes, 1, 400, 2,
                      said("From the middle of column 1 to the middle of column {}", gaps + 1));
  }
  changed = reading("reading rows", tr("Over 50 rows"), readings.over_50_rows, 1, 1000, 2,
                    tr("From the middle of a row's holes to that of the 50th row after it")) ||
            changed;
  changed = reading("reading edge", tr("Edge to first hole"), readings.edge_to_first_hole, 0, 400, 2,
                    tr("From the side edge to the middle of the nearest column")) ||
            changed;
  changed =
      reading("reading width", tr("Sheet width"), readings.sheet_width, 1, 400, 2, tr("From side edge to side edge")) ||
      changed;
  changed = reading("reading hole", tr("Hole diameter"), readings.hole_diameter, 0.1, 15, 2, tr("Of a pattern hole")) ||
            changed;
  changed = count_field({app, actions, "reading offset"}, tr("Reader offset"), offset, 0, 30) || changed;
  tip(theme, tr("How many rows below the visible line the machine reads: count them on the machine"));
  if (changed) {
    actions.push(SetReadings{readings, offset});
  }
  const bool typed = app.session.readings.has_value();
  if (button(theme, actions, "use readings", tr("Use these measures"), Look::main, 0, typed)) {
    actions.push(UseReadings{});
  }
  tip(theme, typed ? tr("They are kept in a .machine file, which the design then uses")
                   : tr("These are the machine's values: type in what differs on your own blank"));
  if (!typed) {
    hint(theme, tr("These are the values now in use: type in what you read."));
  }
}

void orientation_swatch(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  heading(theme, tr("Orientation swatch"));
  hint(theme, tr("A small card shows whether your machine reads cards mirrored, turned or inverted."));
  if (button(theme, actions, "export swatch", tr("1. Export its card…"))) {
    actions.run(Command::export_swatch);
  }
  tip(theme, tr("A card of a motif that looks different from every side"));
  if (button(theme, actions, "answer swatch", tr("2. Say how it came out…"))) {
    actions.push(SetDialog{SwatchDialog{}});
  }
  tip(theme, tr("Eight pictures: the one that looks like your swatch tells how the card is read"));
}

// What is from memory or unknown, value by value; the whole source in the tip.
void not_certain(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const Profile& profile = app.work.profile;
  const std::size_t count = unsure_values(profile).size();
  if (count == 0) {
    return;
  }
  ImGui::Dummy(ImVec2(0, 4 * theme.scale));
  const std::string title =
      said_count(static_cast<long>(count), "Not certain: {} value", "Not certain: {} values") + "###not certain";
  const bool open =
      ImGui::TreeNodeEx(title.c_str(), ImGuiTreeNodeFlags_NoTreePushOnOpen | ImGuiTreeNodeFlags_SpanAvailWidth);
  remember_place(actions, "not certain");
  if (!open) {
    return;
  }
  hint(theme, tr("From memory or unknown: compare them with your own machine and blank."));
  for (const ProfileKey& key : profile_keys(app.settings.lengths)) {
    const auto source = profile.sources.find(std::string(key.key));
    const auto value = key.shown(profile);
    if (source == profile.sources.end() || !value || !is_unsure(source->second)) {
      continue;
    }
    const std::string from = tr(source->second.c_str());
    const std::string brief = from.substr(0, from.find_first_of(":;("));
    ImGui::PushTextWrapPos(0);
    ImGui::TextUnformatted(fmt::format("{}: {}", with_capital(tr(key.words.data())), *value).c_str());
    ImGui::PopTextWrapPos();
    tip(theme, from);
    ImGui::Indent(10 * theme.scale);
    hint(theme, brief);
    tip(theme, from);
    ImGui::Unindent(10 * theme.scale);
  }
}

} // namespace

void machine_tab(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  heading(theme, tr("Machine"));
  choose_machine(app, actions);
  if (!app.work.profile_trouble.empty()) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextColored(tint(theme.fault), "%s", app.work.profile_trouble.c_str());
    ImGui::PopTextWrapPos();
    hint(theme, tr("The machine chosen before is used until then."));
  }
  if (app.work.profile.card) {
    measure_blank(app, actions);
    orientation_swatch(app, actions);
  }
  heading(theme, tr("What is known of it"));
  facts(app);
  not_certain(app, actions);
}

} // namespace punchwright::editor
