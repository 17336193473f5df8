// Yarns and bands: names, colours, and which rows are knitted in which pair.
#include "editor/choice_field.hpp"
#include "editor/panels.hpp"
#include "editor/widgets.hpp"
#include "editor/yarn_pairs.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

bool in_use(const Document& design, char key) {
  return std::ranges::any_of(design.bands,
                             [key](const Band& band) { return band.main == key || band.contrast == key; });
}

// Mixed by eye with the mouse, or typed: its parts, or all of it. Tab goes through what is typed in, which ImGui's own
// fields in its picker don't let it.
bool mix_colour(const App& app, Actions& actions, Colour& colour) {
  std::array<float, 3> shares = {static_cast<float>(colour.red) / 255, static_cast<float>(colour.green) / 255,
                                 static_cast<float>(colour.blue) / 255};
  const auto part = [](float share) { return static_cast<std::uint8_t>(std::clamp(share, 0.0F, 1.0F) * 255 + 0.5F); };
  bool changed = false;
  if (ImGui::ColorPicker3("##picker", shares.data(),
                          ImGuiColorEditFlags_NoSidePreview | ImGuiColorEditFlags_NoInputs)) {
    colour = {part(shares[0]), part(shares[1]), part(shares[2])};
    changed = true;
  }
  const auto typed = [&](const char* name, const char* words, std::uint8_t& value) {
    int number = value;
    if (count_field({app, actions, name}, words, number, 0, 255)) {
      value = static_cast<std::uint8_t>(number);
      changed = true;
    }
  };
  typed("mix red", tr("Red"), colour.red);
  typed("mix green", tr("Green"), colour.green);
  typed("mix blue", tr("Blue"), colour.blue);
  label(app.theme, "#rrggbb");
  std::string hex = hex_of(colour);
  if (text_input({app, actions, "mix hex"}, hex, nullptr, ImGuiInputTextFlags_AutoSelectAll)) {
    if (const auto read = colour_from_hex(hex); read && *read != colour) {
      colour = *read;
      changed = true;
    }
  }
  return changed;
}

// A square of the yarn's colour; pressed, it opens where the colour is chosen.
void yarn_colour(const App& app, Actions& actions, std::size_t index) {
  const Document& design = app.work.design;
  const Yarn& yarn = design.yarns[index];
  const float square = ImGui::GetFrameHeight();
  if (ImGui::ColorButton("##colour", tint(yarn.colour), ImGuiColorEditFlags_NoTooltip, ImVec2(square, square))) {
    ImGui::OpenPopup("colour");
  }
  remember_place(actions, fmt::format("yarn {} colour", yarn.key), Stop::Kind::button);
  tip(app.theme, said("Choose the colour ({})", hex_of(yarn.colour)));
  if (ImGui::BeginPopup("colour")) {
    if (Colour colour = yarn.colour; mix_colour(app, actions, colour)) {
      Document settings = settings_of(design);
      settings.yarns[index].colour = colour;
      send({app, actions, noted("yarn colour")}, std::move(settings));
    }
    ImGui::EndPopup();
  }
}

// Behind the name, or below it where that would leave the name no room.
bool buttons_below() {
  return ImGui::GetContentRegionAvail().x < 15 * ImGui::GetFontSize();
}

// From the palette, and off the list.
void yarn_buttons(const App& app, Actions& actions, std::size_t index) {
  const Document& design = app.work.design;
  const Yarn& yarn = design.yarns[index];
  const Theme& theme = app.theme;
  const std::string palette = fmt::format("yarn {} palette", yarn.key);
  if (button(theme, actions, palette.c_str(), "…", Look::quiet)) {
    PaletteDialog dialog;
    dialog.yarn = yarn.key;
    actions.push(SetDialog{dialog});
  }
  tip(theme, tr("A colour with a name from the palette"));
  ImGui::SameLine(0, 4 * theme.scale);
  const bool used = in_use(design, yarn.key);
  const bool few = design.yarns.size() <= 2;
  if (button(theme, actions, "remove yarn", "×", Look::quiet, 0, !used && !few)) {
    Document settings = settings_of(design);
    settings.yarns.erase(settings.yarns.begin() + static_cast<std::ptrdiff_t>(index));
    actions.push(EditDesign{ChangeSettings{std::move(settings)}});
  }
  tip(theme, used  ? tr("It can't be taken off the list: a band is knitted in it")
             : few ? tr("Two yarns always stay on the list")
                   : tr("Take it off the list"));
}

// One line of the table: colour, letter, name, and the buttons.
void one_yarn(const App& app, Actions& actions, std::size_t index, bool below) {
  const Document& design = app.work.design;
  const Yarn& yarn = design.yarns[index];
  ImGui::PushID(static_cast<int>(index));
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  yarn_colour(app, actions, index);
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::Text("%c", yarn.key);
  ImGui::TableNextColumn();
  ImGui::SetNextItemWidth(-1);
  std::string name = yarn.name;
  const std::string place = fmt::format("yarn {} name", yarn.key);
  if (text_input({app, actions, place.c_str()}, name)) {
    Document settings = settings_of(design);
    settings.yarns[index].name = name;
    send({app, actions, noted("yarn name")}, std::move(settings));
  }
  if (!below) {
    ImGui::TableNextColumn();
  }
  yarn_buttons(app, actions, index);
  ImGui::PopID();
}

// Chooses one of the yarns, or, where it may be, none.
bool choose_yarn(const App& app, Actions& actions, const std::string& name, char& key, bool may_be_none) {
  const Document& design = app.work.design;
  bool changed = false;
  const float square = ImGui::GetFrameHeight();
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const std::string shown = key == 0 ? std::string(tr("none")) : "      " + shown_name(yarn_of(design, key));
  ImGui::PushID(name.c_str());
  if (ImGui::BeginCombo("##yarn", shown.c_str())) {
    for (const Yarn& yarn : design.yarns) {
      const ImVec2 at = ImGui::GetCursorScreenPos();
      const std::string line = fmt::format("      {}##{}", shown_name(yarn), yarn.key);
      if (list_entry(line.c_str(), yarn.key == key)) {
        key = yarn.key;
        changed = true;
      }
      remember_place(actions, fmt::format("{} {}", name, yarn.key));
      swatch(*ImGui::GetWindowDrawList(), app.theme,
             {at.x + 2, at.y + 1, at.x + 2 + square * 0.55F, at.y + square * 0.6F}, yarn.colour);
    }
    if (may_be_none) {
      if (list_entry(tr("none"), key == 0)) {
        key = 0;
        changed = true;
      }
      remember_place(actions, name + " none");
    }
    ImGui::EndCombo();
  }
  ImGui::PopID();
  remember_place(actions, name);
  if (key != 0) {
    swatch(*ImGui::GetWindowDrawList(), app.theme,
           {corner.x + 6, corner.y + square * 0.22F, corner.x + 6 + square * 0.56F, corner.y + square * 0.78F},
           yarn_of(design, key).colour);
  }
  return changed;
}

// Whether both yarns of a band have room beside each other with their whole names.
bool side_by_side(const App& app) {
  float widest = 0;
  for (const Yarn& yarn : app.work.design.yarns) {
    widest = std::max(widest, ImGui::CalcTextSize(("      " + shown_name(yarn)).c_str()).x);
  }
  const float needs = widest + ImGui::GetFrameHeight() + 2 * ImGui::GetStyle().FramePadding.x;
  return 2 * needs + 6 * app.theme.scale <= ImGui::GetContentRegionAvail().x;
}

void plain_below(const App& app, Actions& actions, std::size_t index, int first_row) {
  const Theme& theme = app.theme;
  std::vector<Band> bands = app.work.design.bands;
  Band& band = bands[index];
  bool own = band.plain_below.has_value();
  const auto derived = app.caches.strips.below[static_cast<std::size_t>(first_row)].count;
  if (check_box(actions, fmt::format("band {} plain", index + 1).c_str(), tr("Plain rows below: own number"), own)) {
    band.plain_below = own ? std::optional<int>(derived) : std::nullopt;
    actions.push(EditDesign{ChangeBands{bands}});
  }
  tip(theme, said("Instead of the number that follows from the rules; now {}", derived));
  if (band.plain_below) {
    int count = *band.plain_below;
    const std::string place = fmt::format("band {} plain rows", index + 1);
    if (count_field({app, actions, place.c_str()}, tr("Plain rows"), count, 0, 99)) {
      band.plain_below = count;
      if (!ImGui::IsKeyPressed(ImGuiKey_Escape)) { // then DropField takes the typing back
        actions.push(ChangeField{{}, said("band {} plain rows", index + 1), bands});
      }
    }
  }
}

// How well the pattern will show: the contrast ratio, and what the value check looks at.
void pair_words(const App& app, const Band& band) {
  const Colour main = yarn_of(app.work.design, band.main).colour;
  const Colour contrast = yarn_of(app.work.design, *band.contrast).colour;
  hint(app.theme, said("Contrast ratio {}; lightness {:.0f} and {:.0f}", decimal(contrast_ratio(main, contrast), 1),
                       lightness_of(main), lightness_of(contrast)));
}

// For the cursor's band, or the one that is pressed: the cursor goes there first.
void pair_buttons(const App& app, Actions& actions, std::size_t index, int first_row, bool here) {
  const auto act = [&](Command command) {
    if (!here) {
      actions.push(PlaceCursor{Cell{app.view.cursor.column, first_row}});
    }
    actions.run(command);
  };
  if (button(app.theme, actions, fmt::format("swap {}", index + 1).c_str(), "⇄")) {
    act(Command::swap_yarns);
  }
  tip(app.theme, tr("Exchange main and contrast (W)"));
  ImGui::SameLine();
  if (button(app.theme, actions, fmt::format("try pairs {}", index + 1).c_str(), tr("Try other pairs…"))) {
    act(Command::try_pairs);
  }
  tip(app.theme, tr("This band in other yarns, as small pictures (Y)"));
}

// How the colours are seen; the design keeps its own.
void choose_sight(const App& app, Actions& actions) {
  label(app.theme, tr("Seen"), 0.24F);
  if (ImGui::BeginCombo("##sight", tr(info_of(app.view.sight).name))) {
    for (const SightInfo& info : colour_sights) {
      if (list_entry(tr(info.name), info.sight == app.view.sight)) {
        constexpr std::array commands = {Command::sight_as_is, Command::sight_lightness, Command::sight_protan,
                                         Command::sight_deutan, Command::sight_tritan};
        actions.run(commands[static_cast<std::size_t>(info.sight)]);
      }
      remember_place(actions, std::string("sight ") + info.id);
      tip(app.theme, tr(info.tip));
    }
    ImGui::EndCombo();
  }
  remember_place(actions, "sight");
  tip(app.theme, tr("How the drawing and the piece are shown; the yarns stay as they are"));
}

void one_band(const App& app, Actions& actions, std::size_t index, int first_row) {
  const Theme& theme = app.theme;
  const Document& design = app.work.design;
  const Band& band = design.bands[index];
  const int last_row = first_row + band.rows - 1;
  const bool here = app.view.cursor.row >= first_row && app.view.cursor.row <= last_row;
  ImGui::PushID(static_cast<int>(index));
  ImGui::PushFont(theme.bold);
  ImGui::PushStyleColor(ImGuiCol_Text, tint(here ? theme.accent : theme.text));
  const std::string title =
      band.rows == 1 ? said("Row {}", first_row + 1) : said("Rows {}–{}", first_row + 1, last_row + 1);
  if (ImGui::Selectable((title + "##band").c_str(), false)) {
    actions.push(PlaceCursor{Cell{app.view.cursor.column, first_row}});
  }
  ImGui::PopStyleColor();
  ImGui::PopFont();
  remember_place(actions, fmt::format("band {}", index + 1), Stop::Kind::button);
  char main = band.main;
  char contrast = band.contrast.value_or('\0');
  bool changed = false;
  if (side_by_side(app)) {
    const float half = (ImGui::GetContentRegionAvail().x - 6 * theme.scale) / 2;
    ImGui::SetNextItemWidth(half);
    changed = choose_yarn(app, actions, fmt::format("band {} main", index + 1), main, false);
    ImGui::SameLine(0, 6 * theme.scale);
    ImGui::SetNextItemWidth(half);
    changed = choose_yarn(app, actions, fmt::format("band {} contrast", index + 1), contrast, true) || changed;
  } else {
    label(theme, tr("Main"), 0.36F);
    changed = choose_yarn(app, actions, fmt::format("band {} main", index + 1), main, false);
    label(theme, tr("Contrast"), 0.36F);
    changed = choose_yarn(app, actions, fmt::format("band {} contrast", index + 1), contrast, true) || changed;
  }
  if (changed) {
    std::vector<Band> bands = design.bands;
    bands[index].main = main;
    bands[index].contrast = contrast == 0 ? std::nullopt : std::optional<char>(contrast);
    actions.push(EditDesign{ChangeBands{bands}});
  }
  if (band.contrast) {
    pair_words(app, band);
    pair_buttons(app, actions, index, first_row, here);
  }
  plain_below(app, actions, index, first_row);
  ImGui::PopID();
}

} // namespace

void yarns_tab(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const Document& design = app.work.design;
  heading(theme, tr("Yarns"));
  const bool below = buttons_below();
  if (ImGui::BeginTable("yarns", below ? 3 : 4)) {
    const ImGuiStyle& style = ImGui::GetStyle();
    ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, ImGui::GetFrameHeight());
    ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, ImGui::CalcTextSize("W").x);
    ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch);
    if (!below) {
      ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed,
                              ImGui::CalcTextSize("…×").x + 4 * style.FramePadding.x + 4 * theme.scale);
    }
    for (std::size_t index = 0; index < design.yarns.size(); ++index) {
      one_yarn(app, actions, index, below);
    }
    ImGui::EndTable();
  }
  if (button(theme, actions, "add yarn", tr("Add a yarn"))) {
    actions.run(Command::add_yarn);
  }
  tip(theme, tr("One more for the bands to choose from (Shift+U)"));
  choose_sight(app, actions);
  heading(theme, tr("Bands, from the top"));
  if (side_by_side(app)) {
    hint(theme, tr("Main at the left, contrast at the right."));
  }
  if (button(theme, actions, "split band", tr("New band at cursor"))) {
    actions.run(Command::split_band);
  }
  tip(theme, tr("Cut below the cursor's row (B)"));
  const float join = ImGui::CalcTextSize(tr("Join below")).x + 2 * ImGui::GetStyle().FramePadding.x;
  ImGui::SameLine();
  if (ImGui::GetContentRegionAvail().x < join) {
    ImGui::NewLine();
  }
  if (button(theme, actions, "join band", tr("Join below"))) {
    actions.run(Command::join_band);
  }
  tip(theme, tr("The cursor's band takes the yarns of the one below it (Shift+B)"));
  int row = design.grid.height();
  for (std::size_t index = design.bands.size(); index-- > 0;) {
    row -= design.bands[index].rows;
    ImGui::Dummy(ImVec2(0, 2 * theme.scale));
    one_band(app, actions, index, row);
  }
}

} // namespace punchwright::editor
