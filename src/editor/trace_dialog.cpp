// A picture with the part that is traced, the drawing that comes of it, and what can be chosen between them.
#include "editor/choice_field.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/trace_view.hpp"
#include "editor/typed_text.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// The frame of the part on the photo.
void draw_part(const Theme& theme, const TraceDialog& dialog, const ScreenBox& box) {
  const Lattice lattice = lattice_of(dialog);
  const auto scale = box.width() / static_cast<float>(dialog.photo->width);
  const ImVec2 low{box.left + static_cast<float>(lattice.left) * scale,
                   box.top + static_cast<float>(lattice.top) * scale};
  const ImVec2 high{low.x + static_cast<float>(lattice.stitch_width * lattice.columns) * scale,
                    low.y + static_cast<float>(lattice.row_height * lattice.rows) * scale};
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({box.left - 2, box.top - 2}, {box.right + 2, box.bottom + 2}, true);
  list.AddRect({low.x - 1, low.y - 1}, {high.x + 1, high.y + 1}, IM_COL32(255, 255, 255, 255), 0, 0, 4 * theme.scale);
  list.AddRect(low, high, ink(theme.accent), 0, 0, 2 * theme.scale);
  list.PopClipRect();
}

// The photo: dragging moves the part, the wheel makes it wider or narrower, a click picks the colour to ignore.
bool photo_with_part(const App& app, Actions& actions, TraceDialog& wishes, const ImVec2& size) {
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const ScreenBox box = box_of_small_picture(wishes.shown, {corner.x, corner.y, corner.x + size.x, corner.y + size.y});
  ImGui::InvisibleButton("##photo", size);
  remember_place(actions, "photo");
  tip(app.theme, wishes.picking ? tr("Click on the colour that is to count as white paper")
                                : tr("Drag to move the part, turn the wheel to make it wider or narrower"));
  draw_small_picture(app.theme, wishes.shown, box);
  draw_part(app.theme, wishes, box);
  const ImGuiIO& io = ImGui::GetIO();
  const double px = wishes.photo->width / static_cast<double>(std::max(1.0F, box.width())); // of the photo, a screen px
  if (wishes.picking && ImGui::IsItemClicked()) {
    const int x = std::clamp(static_cast<int>((io.MousePos.x - box.left) * px), 0, wishes.photo->width - 1);
    const int y = std::clamp(static_cast<int>((io.MousePos.y - box.top) * px), 0, wishes.photo->height - 1);
    wishes.ignored = IgnoredColour{wishes.photo->colour_at(x, y), wishes.ignored.value_or(IgnoredColour{}).within};
    wishes.picking = false;
    return true;
  }
  if (const auto way = way_of_frame(); way && !wishes.picking) {
    wishes.left += way->x * px;
    wishes.top += way->y * px;
    return true;
  }
  if (ImGui::IsItemHovered() && io.MouseWheel != 0) {
    const double before = wishes.width;
    const double tall = before * wishes.rows * wishes.gauge.row_mm() / (wishes.columns * wishes.gauge.stitch_mm());
    wishes.width = std::clamp(before * std::pow(1.05, io.MouseWheel), 4.0, 2.0 * wishes.photo->width);
    wishes.left += (before - wishes.width) / 2; // about the part's middle
    wishes.top += tall * (1 - wishes.width / before) / 2;
    return true;
  }
  return false;
}

// Where a protected area lies in the result, in each of the repeats side by side.
void draw_kept(const Theme& theme, const TraceDialog& dialog, const Area& area, const ScreenBox& box) {
  const float wide = box.width() / static_cast<float>(dialog.columns * repeats_shown); // px a stitch
  const float tall = box.height() / static_cast<float>(dialog.rows);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.PushClipRect({box.left, box.top}, {box.right, box.bottom}, true);
  for (int repeat = -1; repeat < repeats_shown; ++repeat) { // from the one before the first it may reach into that
    const float left = box.left + static_cast<float>(repeat * dialog.columns + area.corner.column) * wide;
    const float low = box.bottom - static_cast<float>(area.corner.row) * tall;
    const ImVec2 upper_left{left, low - static_cast<float>(area.rows) * tall};
    const ImVec2 lower_right{left + static_cast<float>(area.columns) * wide, low};
    list.AddRect(upper_left, lower_right, IM_COL32(255, 255, 255, 255), 0, 0, 4 * theme.scale);
    list.AddRect(upper_left, lower_right, ink(theme.accent), 0, 0, 2 * theme.scale);
  }
  list.PopClipRect();
}

// The drawing that comes of it: while an area is protected, dragging over the result chooses it.
bool result_with_kept(const App& app, Actions& actions, TraceDialog& wishes, const ImVec2& size) {
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const ScreenBox room{corner.x + 1, corner.y, corner.x + size.x - 1, corner.y + size.y};
  const ScreenBox box = box_of_small_picture(wishes.result, room);
  if (wishes.how.kept.empty()) {
    ImGui::Dummy(size);
    draw_small_picture(app.theme, wishes.result, room);
    return false;
  }
  ImGui::InvisibleButton("##result", size);
  remember_place(actions, "trace result");
  tip(app.theme, tr("Drag over the stitches that are to stay as the picture has them"));
  draw_small_picture(app.theme, wishes.result, room);
  bool changed = false;
  if (ImGui::IsItemActive() || way_of_frame()) {
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const int stitches = wishes.columns * repeats_shown;
    const auto part_of = [](float from, float to, int cells) {
      return std::clamp(static_cast<int>(from / std::max(1.0F, to) * static_cast<float>(cells)), 0, cells - 1);
    };
    const Cell here{part_of(mouse.x - box.left, box.width(), stitches),
                    part_of(box.bottom - mouse.y, box.height(), wishes.rows)};
    wishes.kept_from = ImGui::IsItemActivated() ? here : wishes.kept_from.value_or(here);
    const Area area = area_between(wishes, *wishes.kept_from, here);
    changed = area != wishes.how.kept.front() || ImGui::IsItemActivated();
    wishes.how.kept.front() = area;
  }
  draw_kept(app.theme, wishes, wishes.how.kept.front(), box);
  return changed;
}

bool whole_number(const App& app, Actions& actions, const char* name, const char* words, TraceDialog& wishes,
                  double& value, int low, int high) {
  int number = static_cast<int>(std::lround(value));
  if (!count_field({app, actions, name, &wishes.remark}, words, number, low, high)) {
    return false;
  }
  value = number;
  return true;
}

bool percent_field(const App& app, Actions& actions, const char* name, const char* words, TraceDialog& wishes,
                   double& value, int low, int high) {
  double percent = value * 100;
  const bool changed = whole_number(app, actions, name, words, wishes, percent, low, high);
  value = changed ? percent / 100 : value;
  return changed;
}

bool part_fields(const App& app, Actions& actions, TraceDialog& wishes) {
  const Photo& photo = *wishes.photo;
  bool changed =
      count_field({app, actions, "trace width", &wishes.remark}, tr("Stitches"), wishes.columns, 1, widest_repeat);
  changed =
      count_field({app, actions, "trace rows", &wishes.remark}, tr("Rows"), wishes.rows, 1, tallest_repeat) || changed;
  changed = whole_number(app, actions, "trace left", tr("Part from left, px"), wishes, wishes.left, -photo.width,
                         photo.width) ||
            changed;
  changed = whole_number(app, actions, "trace top", tr("Part from top, px"), wishes, wishes.top, -photo.height,
                         photo.height) ||
            changed;
  return whole_number(app, actions, "trace part", tr("Width of the part, px"), wishes, wishes.width, 4,
                      2 * photo.width) ||
         changed;
}

bool tone_fields(const App& app, Actions& actions, TraceDialog& wishes) {
  const std::array shadings = {Choice{tr("one split"), static_cast<int>(Shading::split)},
                               Choice{tr("diffused"), static_cast<int>(Shading::diffusion)},
                               Choice{tr("in a grain"), static_cast<int>(Shading::dither)}};
  double split = wishes.traced.split;
  bool changed = false;
  if (percent_field(app, actions, "trace split", tr("Contrast from darkness, %"), wishes, split, 1, 99)) {
    wishes.how.split = split;
    changed = true;
  }
  bool automatic = !wishes.how.split;
  if (check_box(actions, "trace automatic", tr("Found from the picture"), automatic)) {
    wishes.how.split = automatic ? std::nullopt : std::optional(wishes.traced.split);
    changed = true;
  }
  make_first_stop(actions);
  changed = percent_field(app, actions, "trace emphasis", tr("Areas (-) or edges (+), %"), wishes, wishes.how.emphasis,
                          -100, 100) ||
            changed;
  changed =
      choose({app, actions, "trace shading", &wishes.remark}, tr("Shades"), wishes.how.shading, shadings) || changed;
  changed = check_box(actions, "trace light", tr("Light becomes contrast"), wishes.how.light_is_contrast) || changed;
  return check_box(actions, "trace mirror", tr("Mirrored"), wishes.how.mirrored) || changed;
}

bool ignore_fields(const App& app, Actions& actions, TraceDialog& wishes) {
  bool changed = false;
  bool ignoring = wishes.ignored.has_value() || wishes.picking;
  if (check_box(actions, "trace ignore", tr("Ignore a colour of the background"), ignoring)) {
    wishes.picking = ignoring;
    if (!ignoring) {
      wishes.ignored.reset();
    } else { // until another is clicked: that of the upper left corner
      wishes.ignored = IgnoredColour{wishes.photo->colour_at(0, 0), IgnoredColour{}.within};
    }
    changed = true;
  }
  if (!wishes.ignored) {
    return changed;
  }
  if (button(app.theme, actions, "trace pick", tr("Pick it in the picture"),
             wishes.picking ? Look::chosen : Look::plain)) {
    wishes.picking = !wishes.picking;
    changed = true;
  }
  ImGui::SameLine();
  const float side = ImGui::GetFrameHeight();
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  swatch(*ImGui::GetWindowDrawList(), app.theme, {corner.x, corner.y, corner.x + side, corner.y + side},
         wishes.ignored->colour);
  ImGui::Dummy({side, side});
  return count_field({app, actions, "trace within", &wishes.remark}, tr("How near to it"), wishes.ignored->within, 0,
                     441) ||
         changed;
}

// Numbers from 1, as rulers and the command line have them.
bool kept_fields(const App& app, Actions& actions, TraceDialog& wishes) {
  bool protecting = !wishes.how.kept.empty();
  bool changed = false;
  if (check_box(actions, "trace protect", tr("Protect an area, such as an eye or a letter"), protecting)) {
    wishes.how.kept.clear();
    if (protecting) { // until another is dragged: the middle
      wishes.how.kept.push_back(
          {{wishes.columns / 3, wishes.rows / 3}, std::max(1, wishes.columns / 3), std::max(1, wishes.rows / 3)});
    }
    changed = true;
  }
  if (wishes.how.kept.empty()) {
    return changed;
  }
  Area& area = wishes.how.kept.front();
  int column = area.corner.column + 1;
  int row = area.corner.row + 1;
  if (count_field({app, actions, "kept column", &wishes.remark}, tr("From stitch"), column, 1, wishes.columns)) {
    area.corner.column = column - 1;
    changed = true;
  }
  changed = count_field({app, actions, "kept columns", &wishes.remark}, tr("Protected stitches"), area.columns, 1,
                        wishes.columns) ||
            changed;
  if (count_field({app, actions, "kept row", &wishes.remark}, tr("From row"), row, 1, wishes.rows)) {
    area.corner.row = row - 1;
    changed = true;
  }
  return count_field({app, actions, "kept rows", &wishes.remark}, tr("Protected rows"), area.rows, 1, wishes.rows) ||
         changed;
}

std::string words_for(const TraceDialog& dialog) {
  const std::string size = said("{} stitches × {} rows", dialog.columns, dialog.rows) + ". ";
  if (!dialog.traced.unmendable.empty()) {
    return size + said_count(static_cast<long>(dialog.traced.unmendable.size()),
                             "What is protected leaves a float too long in {} row, first in row {}.",
                             "What is protected leaves a float too long in {} rows, first in row {}.",
                             dialog.traced.unmendable.front().row + 1);
  }
  if (dialog.traced.moved == 0) {
    return size + tr("No float had to be caught.");
  }
  return size + said_count(dialog.traced.moved,
                           "{} stitch is otherwise than in the picture, where it matters least, so that no float "
                           "passes more than {}.",
                           "{} stitches are otherwise than in the picture, where it matters least, so that no float "
                           "passes more than {}.",
                           dialog.how.limit);
}

} // namespace

void trace_panel(const App& app, Actions& actions, const TraceDialog& dialog) {
  const Theme& theme = app.theme;
  const Document& design = app.work.design;
  const bool untouched = app.session.path.empty() && app.work.history.done() == 0;
  TraceDialog wishes = dialog;
  const float wide = ImGui::GetContentRegionAvail().x;
  const float gap = ImGui::GetStyle().ItemSpacing.x;
  const float lines = 12 * ImGui::GetFrameHeightWithSpacing();
  const float tall = std::clamp(room_for_dialog(app).y - lines, 90 * theme.scale, 360 * theme.scale);
  bool changed = photo_with_part(app, actions, wishes, {(wide - gap) / 2, tall});
  ImGui::SameLine();
  changed = result_with_kept(app, actions, wishes, {(wide - gap) / 2, tall}) || changed;
  hint(theme, words_for(dialog));

  const float room = std::max(4 * ImGui::GetFrameHeightWithSpacing(),
                              std::min(8.4F * ImGui::GetFrameHeightWithSpacing(),
                                       room_for_dialog(app).y - tall - 5 * ImGui::GetFrameHeightWithSpacing()));
  ImGui::BeginChild("##controls", {0, room}, false, ImGuiWindowFlags_NavFlattened);
  const bool two_columns = wide > 620 * theme.scale && ImGui::BeginTable("##columns", 2);
  if (two_columns) {
    ImGui::TableNextColumn();
  }
  changed = part_fields(app, actions, wishes) || changed;
  if (button(theme, actions, "best place", tr("Where it tiles best"))) {
    wishes = at_best_place(wishes, design);
    changed = true;
  }
  tip(theme, tr("Looks for the place and the width at which the repeat beside itself is nearest to the picture"));
  width_words(app, &app.work.profile, wishes.columns);
  if (two_columns) {
    ImGui::TableNextColumn();
  }
  changed = tone_fields(app, actions, wishes) || changed;
  changed = ignore_fields(app, actions, wishes) || changed;
  changed = kept_fields(app, actions, wishes) || changed;
  if (two_columns) {
    ImGui::EndTable();
  }
  ImGui::EndChild();
  remarks_above_buttons([&] { warning_lines(theme, dialog.remark); });
  if (changed) {
    actions.push(SetDialog{retraced(wishes, design)});
  } else if (wishes.remark != dialog.remark) {
    actions.push(SetDialog{wishes});
  }

  if (button(theme, actions, "trace new", tr("As a new design"), untouched ? Look::main : Look::plain)) {
    actions.push(TakeTrace{true});
  }
  if (untouched) {
    make_default(actions);
  }
  tip(theme, tr("For this machine, gauge and yarns; what is not saved is asked for first"));
  ImGui::SameLine();
  if (button(theme, actions, "trace place", tr("Put it over this drawing"), untouched ? Look::plain : Look::main)) {
    actions.push(TakeTrace{false});
  }
  if (!untouched) {
    make_default(actions);
  }
  tip(theme, tr("It hangs over the drawing until it is set down"));
  ImGui::SameLine();
  cancel_button(app, actions, tr("Cancel"));
}

} // namespace punchwright::editor
