// The user's settings, each in effect as soon as it is chosen.
#include "editor/dialog_parts.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <string>
#include <vector>

namespace punchwright::editor {

namespace {

template <class Value> struct Choice {
  const char* place; // its name for tests
  const char* words;
  Value value;
};

// One line of choices, or several where there is no room; the chosen one is told by its dot.
template <class Value, class Choices>
bool choose(Actions& actions, const char* words, Value& value, const Choices& choices) {
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(words);
  bool changed = false;
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  for (const Choice<Value>& choice : choices) {
    const ImGuiStyle& style = ImGui::GetStyle();
    const char* const shown = tr(choice.words);
    const float wide = ImGui::GetFrameHeight() + style.ItemInnerSpacing.x + ImGui::CalcTextSize(shown).x;
    if (&choice != &choices.front() && ImGui::GetItemRectMax().x + 2 * style.ItemSpacing.x + wide < right) {
      ImGui::SameLine(0, 2 * style.ItemSpacing.x);
    }
    if (ImGui::RadioButton(shown, value == choice.value) && value != choice.value) {
      value = choice.value;
      changed = true;
    }
    remember_place(actions, choice.place, Stop::Kind::button);
  }
  return changed;
}

} // namespace

namespace {

// Each by the name that its speakers give it.
bool choose_language_of(Actions& actions, std::string& code) {
  std::vector<std::string> places;
  for (const Language& language : languages()) {
    places.push_back(fmt::format("language {}", language.code));
  }
  std::vector<Choice<std::string>> choices = {{"language system", noted("As the system says"), {}}};
  for (std::size_t place = 0; place < places.size(); ++place) {
    const Language& language = languages()[place];
    choices.push_back({places[place].c_str(), language.name.data(), std::string(language.code)});
  }
  return choose(actions, tr("Of the words"), code, choices);
}

// How far away the bench is read, and the screen that it is read from.
bool bench_measures(const App& app, Actions& actions, Settings& next) {
  const Field distance{app, actions, "bench distance"};
  const Field width{app, actions, "screen width"};
  if (app.settings.lengths == LengthUnit::centimetres) {
    const bool changed = number_field(distance, tr("Read from, m"), next.bench_distance_m, least_bench_distance_m,
                                      most_bench_distance_m, 1);
    return count_field(width, tr("Screen's width, mm"), next.screen_width_mm, 0, most_screen_width_mm) || changed;
  }
  const auto in_feet = [](double metres) { return std::round(metres / metres_per_foot * 10) / 10; };
  double feet = in_feet(next.bench_distance_m);
  bool changed = false;
  if (number_field(distance, tr("Read from, ft"), feet, in_feet(least_bench_distance_m), in_feet(most_bench_distance_m),
                   1)) {
    next.bench_distance_m = std::clamp(feet * metres_per_foot, least_bench_distance_m, most_bench_distance_m);
    changed = true;
  }
  const auto in_inches = [](int mm) { return std::round(mm / mm_per_inch * 10) / 10; };
  double inches = in_inches(next.screen_width_mm);
  if (number_field(width, tr("Screen's width, in"), inches, 0, in_inches(most_screen_width_mm), 1)) {
    next.screen_width_mm = std::min(static_cast<int>(std::lround(inches * mm_per_inch)), most_screen_width_mm);
    changed = true;
  }
  return changed;
}

void all_settings(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  Settings next = app.settings;
  constexpr std::array colours = {Choice<Appearance>{"theme desktop", noted("As the desktop"), Appearance::as_desktop},
                                  Choice<Appearance>{"theme light", noted("Light"), Appearance::light},
                                  Choice<Appearance>{"theme dark", noted("Dark"), Appearance::dark}};
  heading(theme, tr("How the window looks"));
  bool changed = choose(actions, tr("Colours"), next.appearance, colours);
  changed = count_field({app, actions, "text percent"}, tr("Size of text, %"), next.text_percent, least_text_percent,
                        most_text_percent) ||
            changed;
  hint(theme, tr("Ctrl++ and Ctrl+- do it anywhere."));
  heading(theme, tr("Language"));
  changed = choose_language_of(actions, next.language) || changed;
  heading(theme, tr("Lengths on the screen"));
  constexpr std::array units = {
      Choice<LengthUnit>{"lengths centimetres", noted("Centimetres"), LengthUnit::centimetres},
      Choice<LengthUnit>{"lengths inches", noted("Inches"), LengthUnit::inches}};
  changed = choose(actions, tr("Shown and typed in"), next.lengths, units) || changed;
  hint(theme, next.lengths == LengthUnit::inches ? tr("Gauge counts over 4 inches. Files and sheets keep millimetres.")
                                                 : tr("Gauge counts over 10 cm, as in the files."));
  heading(theme, tr("At the bench"));
  changed = bench_measures(app, actions, next) || changed;
  hint(theme, tr("0: as the screen says of itself. Measure it where the letters come out too small or too large."));
  changed = check_box(actions, "speak steps", tr("Speak the steps"), next.speak_steps) || changed;
  if (next.speak_steps) {
    changed = count_field({app, actions, "speech rate"}, tr("Rate of speech"), next.speech_rate, least_speech_rate,
                          most_speech_rate) ||
              changed;
  }
  if (next.speak_steps && !app.bench.speaks) {
    hint(theme, tr("No program that speaks is there: install speech-dispatcher or espeak-ng."));
  }
  heading(theme, tr("New designs"));
  constexpr std::array papers = {Choice<Paper>{"new paper a4", noted("A4"), Paper::a4},
                                 Choice<Paper>{"new paper letter", noted("Letter"), Paper::letter},
                                 Choice<Paper>{"new paper roll", noted("Roll"), Paper::roll}};
  changed = choose(actions, tr("Paper of the card"), next.paper, papers) || changed;
  ImGui::Dummy(ImVec2(0, 4 * theme.scale));
  hint(theme, app.settings_file.path.empty()
                  ? std::string(tr("They last until the window closes: there is no file to keep them in."))
                  : said("Kept in {}", app.settings_file.path.string()));
  if (changed) {
    actions.push(ChangeUserSettings{next});
  }
}

} // namespace

// Where large text leaves no room for all of them they scroll, and the button stays in sight.
void settings_dialog(const App& app, Actions& actions) {
  ImGuiStorage& kept = *ImGui::GetStateStorage();
  const ImGuiID key = ImGui::GetID("height of all settings");
  const float most = height_beside_lines(app, 2);
  ImGui::BeginChild("all settings", ImVec2(0, std::min(most, kept.GetFloat(key, most))));
  all_settings(app, actions);
  kept.SetFloat(key, ImGui::GetCursorPosY());
  ImGui::EndChild();
  ImGui::Dummy(ImVec2(0, 2 * app.theme.scale));
  close_button(app, actions);
}

} // namespace punchwright::editor
