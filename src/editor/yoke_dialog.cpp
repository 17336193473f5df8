// A new yoke from body measurements: every number and rule in a field, with its source, and the tiers from the bottom.
#include "editor/applying.hpp"
#include "editor/demos.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/yoke_parts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr double smallest_body_cm = 10;
constexpr double largest_body_cm = 300;

BodySize size_of(const BustSize& bust) {
  return {std::string(bust.name), bust.chest_cm, bust.chest_cm * YokeRules{}.sleeve, 0};
}

// The table has no chests: begun with the one whose sleeve by the share is the arm's.
BodySize size_of(const ChildSize& child) {
  const double arm = child.upper_arm_cm;
  return {std::string(child.name), std::round(arm / YokeRules{}.sleeve), arm, child.armhole_cm};
}

template <class Table>
void sizes_of(const App& app, Actions& actions, const Table& table, NewYokeDialog& next, bool& changed) {
  for (const auto& entry : table) {
    const auto present = std::ranges::find(next.sizes, entry.name, &BodySize::name);
    const bool chosen = present != next.sizes.end();
    const std::string words = size_in_words(entry.name);
    if (&entry != &table.front()) {
      flow(ImGui::CalcTextSize(words.c_str()).x + 2 * ImGui::GetStyle().FramePadding.x);
    }
    if (button(app.theme, actions, ("new size " + std::string(entry.name)).c_str(), words.c_str(),
               chosen ? Look::chosen : Look::plain) &&
        (!chosen || next.sizes.size() > 1)) {
      if (chosen) {
        next.sizes.erase(present);
      } else {
        next.sizes.push_back(size_of(entry));
        std::ranges::stable_sort(next.sizes, {}, &BodySize::chest_cm);
      }
      changed = true;
    }
    tip(app.theme, chosen ? tr("Leave this size out") : tr("Take this size too"));
  }
}

void sizes(const App& app, Actions& actions, NewYokeDialog& next, bool& changed) {
  heading(app.theme, tr("Sizes: round the chest"));
  sizes_of(app, actions, bust_sizes(), next, changed);
  hint(app.theme, tr("Chests of the table at yayforyarn.com; each can be changed."));
  sizes_of(app, actions, child_sizes(), next, changed);
  hint(app.theme,
       tr("Children: arms and armholes of the table at crochetkitten.com, which has no chests: they are made from the "
          "arm by the sleeve's share, so measure them."));
  for (std::size_t index = 0; index < next.sizes.size(); ++index) {
    BodySize& size = next.sizes[index];
    ImGui::PushID(static_cast<int>(index));
    const std::string name = fmt::format("new chest {}", index + 1);
    changed =
        cloth_field({app, actions, name.c_str(), &next.remark}, said("Chest, {}", size_in_words(size.name)).c_str(),
                    size.chest_cm, smallest_body_cm, largest_body_cm) ||
        changed;
    if (next.own_arms && next.kind == YokeKind::pullover) {
      const std::string arm = fmt::format("new arm {}", index + 1);
      changed = cloth_field({app, actions, arm.c_str(), &next.remark},
                            said("Upper arm, {}", size_in_words(size.name)).c_str(), size.upper_arm_cm,
                            smallest_body_cm, largest_body_cm) ||
                changed;
    }
    ImGui::PopID();
  }
}

void share(const App& app, Actions& actions, NewYokeDialog& next, bool& changed, const char* name, const char* words,
           double& part) {
  double percent = part * 100;
  if (number_field({app, actions, name, &next.remark}, words, percent, 1, 100, 0)) {
    part = percent / 100;
    changed = true;
  }
}

// A quarter of a large body is too deep: what a published table of sizes has, and between its ends a straight line.
void most_depth(const App& app, Actions& actions, NewYokeDialog& next, bool& changed) {
  YokeRules& rules = next.rules;
  const auto field = [&](const char* name, const char* words, double& cm, double low, double high) {
    changed = cloth_field({app, actions, name, &next.remark}, words, cm, low, high) || changed;
  };
  field("new shallow", tr("No deeper than"), rules.shallow_cm, shallowest_cm, deepest_cm);
  field("new shallow chest", tr("up to a chest of"), rules.shallow_chest_cm, smallest_body_cm, largest_body_cm);
  field("new deep", tr("No deeper than"), rules.deep_cm, shallowest_cm, deepest_cm);
  field("new deep chest", tr("from a chest of"), rules.deep_chest_cm, smallest_body_cm, largest_body_cm);
  hint(app.theme, tr("Depths of a table of sizes (morrisandsons.com.au); between the two chests they grow evenly."));
}

void rules(const App& app, Actions& actions, NewYokeDialog& next, bool& changed) {
  heading(app.theme, tr("Rules"));
  const Field ease{app, actions, "new ease", &next.remark};
  changed = cloth_field(ease, tr("Ease, added to the chest"), next.ease_cm, -20, 100) || changed;
  hint(app.theme, tr("Standard ease is 2 to 4 inches, 5 to 10 cm (gratefullyinhisgrace.blogspot.com, 2011)."));
  if (next.kind == YokeKind::pullover) {
    changed =
        check_box(actions, "new own arms", tr("Sleeves from measured arms, not as a share"), next.own_arms) || changed;
    if (!next.own_arms) {
      share(app, actions, next, changed, "new sleeve", tr("Sleeve, % of the body"), next.rules.sleeve);
    }
  } else {
    share(app, actions, next, changed, "new sleeve", tr("Room for each arm, % of the body"), next.rules.sleeve);
  }
  share(app, actions, next, changed, "new underarm", tr("Each underarm, % of the body"), next.rules.underarm);
  share(app, actions, next, changed, "new neck", tr("Neck, % of the body"), next.rules.neck);
  share(app, actions, next, changed, "new depth", tr("Depth, % of the body"), next.rules.depth);
  hint(app.theme, tr("Shares: summary of Knitting Without Tears and Knitting Around "
                     "(handmadestitchbystitch.wordpress.com); depth: jenjoycedesign.com, 2012-08-16."));
  most_depth(app, actions, next, changed);
}

// What comes of the numbers, size by size.
void outcome(const App& app, const NewYokeDialog& dialog) {
  const LengthUnit unit = app.settings.lengths;
  for (const BodySize& size : dialog.sizes) {
    const bool arms = dialog.own_arms && dialog.kind == YokeKind::pullover;
    const YokeMeasures measures =
        yoke_measures(size.chest_cm, dialog.ease_cm, arms ? std::optional(size.upper_arm_cm) : std::nullopt,
                      dialog.rules, size.armhole_cm > 0 ? std::optional(size.armhole_cm) : std::nullopt);
    const std::string pieces = dialog.kind == YokeKind::pullover
                                   ? said("front and back {}, sleeves {}", cloth_length(measures.front, unit),
                                          cloth_length(measures.sleeve, unit))
                                   : said("each quarter {}", cloth_length(measures.ring() / 4, unit));
    const std::string by_share = cloth_length(dialog.rules.depth * measures.body, unit);
    const std::string because = measures.depth_raised   ? said(" (the armhole's; {} by its share)", by_share)
                                : measures.depth_capped ? said(" (no deeper; {} by its share)", by_share)
                                                        : "";
    hint(app.theme, said("{}: {}; neck {}; depth {}{}", size_in_words(size.name), pieces,
                         cloth_length(measures.neck, unit), cloth_length(measures.depth, unit), because));
  }
}

// Repeats that lie at hand, as a drop-down.
void known_tiers(const App& app, Actions& actions, NewYokeDialog& next, bool& changed) {
  ImGui::SetNextItemWidth(-1);
  if (ImGui::BeginCombo("##known", tr("Add one of these repeats"))) {
    for (const fs::path& path : next.known) {
      if (ImGui::Selectable(path.filename().string().c_str(), false)) {
        next.tiers.push_back(path);
        changed = true;
      }
      remember_place(actions, "new known " + path.stem().string());
      tip(app.theme, path.string());
    }
    ImGui::EndCombo();
  }
  remember_place(actions, "new known");
}

void tiers(const App& app, Actions& actions, NewYokeDialog& next, bool& changed) {
  heading(app.theme, tr("Tiers, from the bottom upwards"));
  const std::vector<fs::path> present = next.tiers;
  for (std::size_t tier = 0; tier < present.size(); ++tier) {
    ImGui::PushID(static_cast<int>(tier));
    ImGui::AlignTextToFramePadding();
    const std::string remove = tr("Remove");
    const float wide = ImGui::CalcTextSize(remove.c_str()).x + 2 * ImGui::GetStyle().FramePadding.x;
    ImGui::TextUnformatted(shortened(fmt::format("{}. {}", tier + 1, present[tier].filename().string()),
                                     ImGui::GetContentRegionAvail().x - wide - ImGui::GetStyle().ItemSpacing.x)
                               .c_str());
    tip(app.theme, present[tier].string());
    ImGui::SameLine(ImGui::GetWindowContentRegionMax().x - wide);
    if (button(app.theme, actions, fmt::format("new remove {}", tier + 1).c_str(), remove.c_str(), Look::quiet)) {
      next.tiers.erase(next.tiers.begin() + static_cast<std::ptrdiff_t>(tier));
      changed = true;
    }
    ImGui::PopID();
  }
  if (!next.known.empty()) {
    known_tiers(app, actions, next, changed);
  }
  if (button(app.theme, actions, "new tier", tr("Choose a file…"))) {
    actions.push(AddTierTo{next});
  }
  std::optional<std::string> profile = next.profile.empty() ? std::nullopt : std::optional(next.profile);
  if (yoke_machine_field({app, actions, "new machine"}, profile)) {
    next.profile = profile.value_or("");
    changed = true;
  }
}

void kinds(const App& app, Actions& actions, NewYokeDialog& next, bool& changed) {
  for (const auto& [kind, name, words] :
       {std::tuple{YokeKind::pullover, "new pullover", tr("Pullover: front, back, two sleeves")},
        std::tuple{YokeKind::poncho, "new poncho", tr("Poncho: four quarters")}}) {
    if (kind != YokeKind::pullover) {
      flow(ImGui::CalcTextSize(words).x + 2 * ImGui::GetStyle().FramePadding.x);
    }
    if (button(app.theme, actions, name, words, next.kind == kind ? Look::chosen : Look::plain) && next.kind != kind) {
      next.kind = kind;
      changed = true;
    }
    if (kind == YokeKind::pullover) {
      make_first_stop(actions);
    }
  }
}

} // namespace

NewYokeDialog new_yoke_dialog(const App& app) {
  NewYokeDialog dialog;
  for (const BustSize& bust : bust_sizes()) {
    if (bust.name == "S" || bust.name == "M" || bust.name == "L") {
      dialog.sizes.push_back(size_of(bust));
    }
  }
  std::error_code ignored;
  const fs::path demos = demos_folder(fs::read_symlink("/proc/self/exe", ignored));
  for (const fs::path& folder : {app.session.folder, demos / "tiers"}) {
    for (const fs::path& path : demos_in(folder)) {
      if (path.extension() == ".repeat" && std::ranges::find(dialog.known, path) == dialog.known.end()) {
        dialog.known.push_back(path);
      }
    }
  }
  if (!app.session.path.empty()) {
    dialog.tiers.push_back(app.session.path); // what is being drawn is the likely first tier
  }
  return dialog;
}

void new_yoke_dialog_panel(const App& app, Actions& actions, const NewYokeDialog& dialog) {
  const Theme& theme = app.theme;
  NewYokeDialog next = dialog;
  bool changed = false;
  const float remarks = room_of_remarks();
  const float buttons = ImGui::GetStyle().ItemSpacing.y + ImGui::GetFrameHeight();
  scrolling(actions, std::max(ImGui::GetFrameHeight(), room_below_here() - buttons - remarks), [&] {
    kinds(app, actions, next, changed);
    tiers(app, actions, next, changed);
    sizes(app, actions, next, changed);
    rules(app, actions, next, changed);
    heading(theme, tr("What comes of it"));
    outcome(app, dialog);
  });
  remarks_above_buttons([&] {
    warning_lines(theme, dialog.remark);
    if (!dialog.remedy.empty()) {
      hint(theme, dialog.remedy);
    }
  });
  actions.unsettled = actions.unsettled || room_of_remarks() != remarks;
  if (changed || next.remark != dialog.remark) {
    next.remedy.clear();
    if (changed && next.remark == dialog.remark) {
      next.remark.clear();
    }
    actions.push(SetDialog{next});
  }
  if (button(theme, actions, "begin yoke", tr("Begin the yoke"), Look::main)) {
    actions.push(BeginYoke{dialog});
  }
  make_default(actions);
  tip(theme, tr("Every measure can be changed afterwards; pieces that are wider than the bed are split"));
  ImGui::SameLine();
  cancel_button(app, actions, tr("Cancel"));
}

} // namespace punchwright::editor
