// What is learnt about the user's own machine and printer: rulers read, blanks measured, swatches looked at.
#include "editor/applying.hpp"
#include "files/files.hpp"
#include "machine/profile_file.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr double ruler_mm = 150; // the length of the rulers on the card's pages

// A .machine file beside the design takes the profile, and the design then names that file.
void keep_profile(App& app, Profile profile, const std::string& learnt) {
  const fs::path& design_path = app.session.path;
  if (design_path.empty()) {
    say(app, "Save the design first: the machine's file is put beside it", Tone::trouble);
    return;
  }
  // A file of the user's own that is in use already is brought up to date; a new one never replaces another.
  fs::path path = design_path.parent_path() / app.work.design.profile;
  std::error_code ignored;
  if (path.extension() != ".machine") {
    path = design_path;
    path.replace_extension(".machine");
    for (int number = 2; fs::exists(path, ignored); ++number) {
      path = design_path.parent_path() / fmt::format("{}-{}.machine", design_path.stem().string(), number);
    }
    profile.name = path.stem().string();
  }
  if (const Failure failure = write_file(path, write_machine(profile))) {
    say(app, failure->text(), Tone::trouble);
    return;
  }
  Document settings = settings_of(app.work.design);
  const bool beside = path.parent_path() == design_path.parent_path();
  settings.profile = beside ? path.filename().string() : path.string();
  app.work.profile_name.clear(); // read anew, also where the name is the same
  app.caches.valid = false;
  if (edit(app, ChangeSettings{settings})) {
    say(app, fmt::format("{}: kept in {}", learnt, path.filename().string()), Tone::good);
  }
}

} // namespace

void correct_scale(App& app) {
  close_step(app);
  Document settings = settings_of(app.work.design);
  settings.card.scale_x *= app.session.ruler_across / ruler_mm;
  settings.card.scale_y *= app.session.ruler_upwards / ruler_mm;
  const auto possible = [](double scale) { return scale >= 0.5 && scale <= 2; };
  if (!possible(settings.card.scale_x) || !possible(settings.card.scale_y)) {
    say(app, "No printer is that far off: measure the 150 mm rulers once more", Tone::trouble);
    return;
  }
  if (edit(app, ChangeSettings{settings})) {
    app.session.ruler_across = ruler_mm;
    app.session.ruler_upwards = ruler_mm;
    say(app, "Corrected: print the card again and its rulers will measure 150 mm", Tone::good);
  }
}

void use_readings(App& app) {
  close_step(app);
  if (!app.session.readings || !app.work.profile.card) {
    return;
  }
  Profile profile = app.work.profile;
  CardReader& card = *profile.card;
  auto geometry = geometry_from_readings(*app.session.readings, card.repeat, card.geometry);
  if (!geometry) {
    say(app, geometry.error().text(), Tone::trouble);
    return;
  }
  card.geometry = *geometry;
  for (const char* const key :
       {"sheet_width_mm", "stitch_pitch_mm", "row_pitch_mm", "hole_diameter_mm", "column_1_mm"}) {
    profile.sources[std::string("card.geometry.") + key] = "measured";
  }
  keep_profile(app, std::move(profile), "Your blank's measures");
}

void use_swatch(App& app, const SwatchAnswer& answer) {
  close_step(app);
  app.session.dialog = NoDialog{};
  app.view.focus_drawing = true;
  if (!answer.mirrored && !answer.upside_down && !answer.inverted) {
    say(app, "The swatch came out right: nothing needs to change", Tone::good);
    return;
  }
  if (app.work.profile.card) {
    keep_profile(app, profile_after_swatch(app.work.profile, answer), "The card's orientation");
  }
}

} // namespace punchwright::editor
