// The tab of tools: what the pointer draws, symmetry, lettering, motifs.
#include "drawing/marked_area.hpp"
#include "drawing/turns.hpp"
#include "editor/panels.hpp"
#include "editor/picture_views.hpp"
#include "editor/tab_commands.hpp"
#include "editor/tool_pictures.hpp"
#include "editor/widgets.hpp"
#include "machine/placement.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <imgui_stdlib.h>

namespace punchwright::editor {

namespace {

void choose_tool(const App& app, Actions& actions) {
  struct Choice {
    Command command;
    const char* label;
    Tool tool;
  };
  constexpr std::array choices = {Choice{Command::tool_pen, noted("Pen"), Tool::pen},
                                  Choice{Command::tool_line, noted("Line"), Tool::line},
                                  Choice{Command::tool_rectangle, noted("Rectangle"), Tool::rectangle},
                                  Choice{Command::tool_ellipse, noted("Ellipse"), Tool::ellipse},
                                  Choice{Command::tool_flood, noted("Fill"), Tool::flood},
                                  Choice{Command::tool_mark, noted("Mark"), Tool::mark}};
  const float right = ImGui::GetCursorPosX() + ImGui::GetContentRegionAvail().x;
  const float gap = 4 * app.theme.scale;
  const float third = std::floor((ImGui::GetContentRegionAvail().x - 2 * gap) / 3);
  bool first = true;
  for (const Choice& choice : choices) {
    const char* const words = tr(choice.label);
    const float needs = ImGui::CalcTextSize(words).x + 2 * ImGui::GetStyle().FramePadding.x;
    const float wide = std::max(third, std::ceil(needs));
    if (!first) {
      ImGui::SameLine(0, gap);
      if (ImGui::GetCursorPosX() + wide > right) {
        ImGui::NewLine();
      }
    }
    first = false;
    command_button(app, actions, choice.command, words, app.view.tool == choice.tool ? Look::chosen : Look::plain,
                   wide);
  }
  bool filled = app.view.interior == Interior::filled;
  if (check_box(actions, "filled", tr("Rectangles and ellipses filled"), filled)) {
    actions.push(ChooseInterior{filled ? Interior::filled : Interior::outline});
  }
  tip(app.theme, tr("Shift+F"));
}

void tip_of_command(const Theme& theme, Command command) {
  tip(theme, fmt::format("{} ({})", tr(info_of(command).tip), shown_keys(info_of(command).keys)));
}

// A flag without any symmetry of its own, repeated under the group: the picture says what the notation means.
Grid picture_of(FriezeGroup group) {
  constexpr int wide = 16;
  constexpr int tall = 9;
  const std::vector<Cell> flag = {{1, 5}, {1, 6}, {1, 7}, {2, 7}, {3, 7}, {2, 6}};
  Grid strip(wide, tall);
  for (const Cell cell : complete_stroke(flag, centred_frieze(group, wide, tall), wide, tall).cells) {
    strip.set(cell.column, cell.row, true);
  }
  return strip;
}

std::string upright_axis(int twice) {
  return twice % 2 == 0 ? said("Upright through column {}", twice / 2 + 1)
                        : said("Upright between columns {} and {}", twice / 2 + 1, twice / 2 + 2);
}

std::string level_axis(int twice) {
  return twice % 2 == 0 ? said("Level through row {}", twice / 2 + 1)
                        : said("Level between rows {} and {}", twice / 2 + 1, twice / 2 + 2);
}

void axis_field(const App& app, Actions& actions, const char* name, int Frieze::*axis, int count,
                std::string (*words)(int)) {
  const Frieze& frieze = *app.view.symmetry;
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(words(frieze.*axis).c_str());
  const auto step = [&](const char* sign, int by) {
    const std::string place = fmt::format("{} {}", name, sign);
    if (button(app.theme, actions, place.c_str(), sign)) {
      Frieze moved = frieze;
      moved.*axis = (moved.*axis + by + count) % count;
      actions.push(ChooseSymmetry{moved});
    }
  };
  const float padding = 2 * ImGui::GetStyle().FramePadding.x;
  const float wide = ImGui::CalcTextSize("−").x + ImGui::CalcTextSize("+").x + 2 * padding + 4 * app.theme.scale;
  ImGui::SameLine(ImGui::GetContentRegionMax().x - std::ceil(wide));
  step("−", -1);
  ImGui::SameLine(0, 4 * app.theme.scale);
  step("+", 1);
}

void symmetry(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const Grid& grid = app.work.design.grid;
  heading(theme, tr("Symmetry while drawing"));
  const float gap = 4 * theme.scale;
  const float wide = std::floor((ImGui::GetContentRegionAvail().x - gap) / 2);
  int place = 0;
  for (const FriezeGroup group : frieze_groups()) {
    if (place++ % 2 != 0) {
      ImGui::SameLine(0, gap);
    }
    const std::string name = fmt::format("frieze {}", notation_of(group));
    if (picture_button(app, actions, name, repeated(picture_of(group), 32, 9), {wide, 40 * theme.scale},
                       group == chosen_group(app), 1.0)) {
      actions.run(command_for(group));
    }
    tip(theme, fmt::format("{}: {} ({})", notation_of(group), description_of(group),
                           shown_keys(info_of(command_for(group)).keys)));
  }
  if (app.view.symmetry) {
    if (uses_upright_axis(app.view.symmetry->group) || app.view.symmetry->group == FriezeGroup::p2) {
      axis_field(app, actions, "upright", &Frieze::upright, app.view.symmetry->repeat, upright_axis);
    }
    if (uses_level_axis(app.view.symmetry->group)) {
      axis_field(app, actions, "level", &Frieze::level, 2 * grid.height() - 1, level_axis);
    }
    if (button(theme, actions, "make it so", tr("Make the drawing so"))) {
      actions.run(Command::make_symmetric);
    }
    tip_of_command(theme, Command::make_symmetric);
  }
  if (const auto aside = app.view.symmetry_aside) {
    hint(theme, said("Put aside: {} ({}). They need an even number of stitches, and come back when the repeat has one.",
                     short_name_of(*aside), notation_of(*aside)));
  }
  const FriezeGroup has = app.caches.frieze.group;
  hint(theme, said("The drawing has {} ({}).", description_of(has), notation_of(has)));
}

// Floats that the lettering would make at the cursor, beyond those that are there already.
std::string remark_on(const App& app, const Grid& lettering) {
  const Document& design = app.work.design;
  const LetterFloats& more = app.caches.lettering_floats;
  const std::string floats =
      more.places.empty() ? std::string()
                          : said_count(std::ssize(more.places),
                                       "set down at the cursor it makes {} float of more than {} stitches, at {}",
                                       "set down at the cursor it makes {} floats of more than {} stitches, at {}",
                                       longest_float_of(design, app.work.profile), more.letters);
  if (lettering.width() > design.grid.width()) {
    return said("{} stitches wide, and the repeat has {}: what reaches beyond it is cut off", lettering.width(),
                design.grid.width()) +
           (floats.empty() ? "" : "; ") + floats;
  }
  if (!floats.empty()) {
    return said("{} × {} stitches; {}", lettering.width(), lettering.height(), floats);
  }
  const bool there = std::ranges::any_of(app.caches.findings, is_long_float_of_repeat);
  return said("{} × {} stitches; {}", lettering.width(), lettering.height(),
              there ? tr("at the cursor it makes no further float that is too long") : tr("no float too long"));
}

// Where they are: a bar along each, with a stop at either end, as in the drawing.
void mark_floats(const Theme& theme, const Lettering& lettering, const LetterFloats& floats, const ScreenBox& box,
                 double stitch_by_row) {
  const ScreenBox picture = box_of_thumbnail(lettering.drawing, box, stitch_by_row);
  const float wide = picture.width() / static_cast<float>(lettering.drawing.width());
  const float tall = picture.height() / static_cast<float>(lettering.drawing.height());
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({box.left, box.top}, {box.right, box.bottom}, true);
  for (const LetterFloat& place : floats.places) {
    const float left = picture.left + static_cast<float>(place.column) * wide + 1;
    const float right = picture.left + static_cast<float>(place.column + place.columns) * wide - 1;
    const float y = std::round(picture.bottom - (static_cast<float>(place.row) + 0.5F) * tall);
    for (const bool halo : {true, false}) {
      const ImU32 colour = ink(halo ? theme.panel : theme.fault);
      const float thick = std::max(1.0F, tall * 0.3F) + (halo ? 2 : 0);
      list.AddLine({left, y}, {right, y}, colour, thick);
      list.AddLine({left, y - tall * 0.5F}, {left, y + tall * 0.5F}, colour, thick);
      list.AddLine({right, y - tall * 0.5F}, {right, y + tall * 0.5F}, colour, thick);
    }
  }
  list.PopClipRect();
}

// Where the letters are wider than the repeat: a repeat in which they have room.
void room_for(const App& app, Actions& actions, const Lettering& drawn) {
  const auto wider = widening_for(app, drawn);
  if (!wider) {
    return;
  }
  if (button(app.theme, actions, "widen repeat", said("Make the repeat {} wide", wider->width).c_str())) {
    actions.run(Command::widen_repeat);
  }
  const std::string keys = shown_keys(info_of(Command::widen_repeat).keys);
  tip(app.theme, wider->times > 1 ? said("The drawing {} times side by side, as one step ({})", wider->times, keys)
                                  : said("New stitches of main at its right, as one step ({})", keys));
  if (!wider->fits_card) {
    hint(app.theme, said("The card repeats over {} stitches: a repeat of {} is knitted without a card, the needles "
                         "brought forward by hand.",
                         *card_width_of(app.work.profile), wider->width));
  }
}

void lettering(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  heading(theme, tr("Lettering"));
  std::string words = app.session.lettering;
  LetterHeight height = app.session.letter_height;
  ImGui::SetNextItemWidth(-1);
  bool changed = ImGui::InputTextWithHint("##lettering", tr("Words to knit"), &words);
  remember_place(actions, "lettering", Stop::Kind::field);
  make_wanted(app, actions, WantedField::lettering);
  for (const LetterHeight choice : {LetterHeight::five, LetterHeight::seven}) {
    const std::string name = fmt::format("{} rows high", rows_of(choice));
    if (button(theme, actions, name.c_str(), said("{} rows high", rows_of(choice)).c_str(),
               height == choice ? Look::chosen : Look::quiet)) {
      height = choice;
      changed = true;
    }
    ImGui::SameLine(0, 4 * theme.scale);
  }
  ImGui::NewLine();
  if (changed) {
    actions.push(TypeLettering{words, height});
  }
  if (!app.caches.lettering) {
    return;
  }
  // Read on the side of the cloth that the piece shows.
  const Result<Lettering>& drawn = *app.caches.lettering;
  if (!drawn) {
    return hint(theme, drawn.error().text());
  }
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float wide = ImGui::GetContentRegionAvail().x;
  const float tall = 44 * theme.scale;
  ImGui::Dummy({wide, tall});
  const ScreenBox box{corner.x, corner.y, corner.x + wide, corner.y + tall};
  const double shape = app.work.design.gauge.stitch_mm() / app.work.design.gauge.row_mm();
  thumbnail(theme, drawn->drawing, box, shape);
  mark_floats(theme, *drawn, app.caches.lettering_floats, box, shape);
  hint(theme, remark_on(app, drawn->drawing));
  room_for(app, actions, *drawn);
  hint(theme, app.view.face == Face::knit
                  ? tr("To be read on the knit side; choose the purl side of the piece to mirror it.")
                  : tr("To be read on the purl side, so it is mirrored in the drawing."));
  if (button(theme, actions, "set lettering down", tr("Put it over the drawing"), Look::main)) {
    actions.run(Command::place_lettering);
  }
  tip_of_command(theme, Command::place_lettering);
}

} // namespace

void tools_tab(const App& app, Actions& actions) {
  heading(app.theme, tr("Tool"));
  choose_tool(app, actions);
  symmetry(app, actions);
  lettering(app, actions);
  motifs_part(app, actions);
}

} // namespace punchwright::editor
