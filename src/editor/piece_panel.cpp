// The piece as it will look: knit side, purl side with its floats, or the band from afar; larger and nearer as wished.
#include "editor/choice_field.hpp"
#include "editor/closed_list.hpp"
#include "editor/panels.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// Ways to look at the piece.
struct SightOfPiece {
  const char* name;
  const char* words;
  const char* tip;
  bool chosen;
  Action action;
};

std::array<SightOfPiece, 3> sights_of(const View& view) {
  return {SightOfPiece{"knit side", tr("Knit side"), tr("As it is worn (K changes sides)"),
                       !view.afar && view.face == Face::knit, ChooseFace{Face::knit}},
          SightOfPiece{"purl side", tr("Purl side"),
                       tr("As it hangs on the machine, with the floats as they lie (K changes sides)"),
                       !view.afar && view.face == Face::purl, ChooseFace{Face::purl}},
          SightOfPiece{"from afar", tr("From afar"),
                       tr("The band small and repeated, as the eye sees it across a room (J)"), view.afar,
                       Run{Command::from_afar}}};
}

void choose_sight(const App& app, Actions& actions, float wide) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  const auto sights = sights_of(app.view);
  float buttons = 0;
  for (const SightOfPiece& sight : sights) {
    buttons += ImGui::CalcTextSize(sight.words).x + 2 * ImGui::GetStyle().FramePadding.x + 4 * unit;
  }
  ImGui::PushFont(theme.bold);
  if (ImGui::CalcTextSize(tr("The piece")).x + buttons + 36 * unit < wide) {
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(tr("The piece"));
    ImGui::SameLine(ImGui::GetWindowContentRegionMax().x - buttons); // up to the edge, else the last one wraps
  }
  ImGui::PopFont();
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  for (const SightOfPiece& sight : sights) {
    const float needs = ImGui::CalcTextSize(sight.words).x + 2 * ImGui::GetStyle().FramePadding.x;
    if (&sight != &sights.front() && ImGui::GetItemRectMax().x + 4 * unit + needs <= right) {
      ImGui::SameLine(0, 4 * unit);
    }
    if (button(theme, actions, sight.name, sight.words, sight.chosen ? Look::chosen : Look::quiet)) {
      actions.push(sight.action);
    }
    tip(theme, sight.tip);
  }
}

std::string size_in_words(const App& app) {
  const Document& design = app.work.design;
  if (app.view.afar) {
    return said("The band's knit side over {}", long_length_text(afar_mm, app.settings.lengths));
  }
  const int stitches = stitches_of(design);
  const auto rows = std::ssize(app.caches.rows.rows);
  const std::string size = fmt::format(
      "{} × {}: {}", said_count(stitches, "{} stitch", "{} stitches"), said_count(rows, "{} row", "{} rows"),
      size_text(stitches * design.gauge.stitch_mm(), static_cast<double>(rows) * design.gauge.row_mm(),
                app.settings.lengths));
  return app.session.mend ? said("{}; with the mend that is shown", size) : size;
}

void use_mouse(const App& app, Actions& actions, const ScreenBox& room, const std::string& facts) {
  ImGui::SetCursorScreenPos({room.left, room.top});
  ImGui::InvisibleButton("cloth", {room.width(), room.height()});
  remember_place(actions, "cloth");
  const ImGuiIO& io = ImGui::GetIO();
  if (app.view.afar) {
    return;
  }
  if (ImGui::IsItemHovered() && io.MouseWheel != 0) {
    actions.push(ZoomPiece{std::pow(1.18F, io.MouseWheel), from_imgui(io.MousePos)});
  }
  if (ImGui::IsItemHovered() && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) {
    actions.run(Command::piece_fit);
  } else if (const auto way = way_of_frame()) {
    actions.push(PanPiece{*way});
  }
  tip(app.theme, facts + tr("The wheel brings it nearer, dragging moves it, a double click shows all of it"));
}

} // namespace

void choose_at_right(const App& app, Actions& actions) {
  const auto sights = sights_of(app.view);
  const bool takes_turns = !app.view.piece_large; // else the findings have a place of their own
  const bool findings = app.view.findings_in_front && takes_turns;
  const FindingCounts seen = counts_in_sight(app);
  // The number first: large text may leave no room for more.
  const std::string counted = said_count(seen.all(), "{} finding", "{} findings");
  const auto present = std::ranges::find(sights, true, &SightOfPiece::chosen);
  ImGui::SetNextItemWidth(-1);
  const std::string wished = findings ? counted : present->words;
  const float room = ImGui::GetContentRegionAvail().x;
  // Where large text leaves no room for both, the words rather than the arrow, and rather than room beside them.
  const float words = ImGui::CalcTextSize(wished.c_str()).x;
  const bool arrow = words <= room_in_closed_list(room);
  const ImVec2 usual = ImGui::GetStyle().FramePadding;
  const float beside = arrow ? usual.x : std::clamp(std::floor((room - words) / 2), 1.0F, usual.x);
  const std::string shown = arrow ? wished : shortened(wished, room - 2 * beside);
  const float taken = words + 2 * beside + (arrow ? ImGui::GetFrameHeight() : 0);
  if (actions.publish_places && shown == wished && taken <= room) {
    actions.places.push_back({"right side whole", {}});
  }
  ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {beside, usual.y});
  if (ImGui::BeginCombo("##right", shown.c_str(), arrow ? 0 : ImGuiComboFlags_NoArrowButton)) {
    for (const SightOfPiece& sight : sights) {
      if (list_entry(sight.words, sight.chosen && !findings)) {
        actions.push(BringToFront{false});
        if (!sight.chosen) {
          actions.push(sight.action);
        }
      }
      remember_place(actions, sight.name);
      tip(app.theme, sight.tip);
    }
    if (takes_turns) {
      if (list_entry(counted.c_str(), findings)) {
        actions.push(BringToFront{true});
      }
      remember_place(actions, "right findings");
    }
    ImGui::EndCombo();
  }
  ImGui::PopStyleVar();
  remember_place(actions, "right side");
  if (findings) {
    tip(app.theme, fmt::format("{}, {}, {}", said_count(seen.faults, "{} fault", "{} faults"),
                               said_count(seen.warnings, "{} warning", "{} warnings"),
                               said_count(seen.notes, "{} note", "{} notes")));
  }
}

void piece_panel(const App& app, Actions& actions, const Parts& parts, Placed& placed) {
  const ScreenBox& box = parts.piece;
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  // In the drawing's place it has the drawing's keys: the arrows move it, and don't walk about its buttons.
  begin_part(app, piece_part, box, app.view.piece_large ? ImGuiWindowFlags_NoNavInputs : 0);
  if (app.view.piece_large && app.view.focus_drawing) {
    ImGui::SetWindowFocus();
  }
  if (parts.low) {
    choose_at_right(app, actions);
  } else {
    choose_sight(app, actions, box.width());
  }
  std::string size = size_in_words(app);
  if (app.view.sight != ColourSight::as_is) {
    size += std::string("\n") + tr(info_of(app.view.sight).name);
  }
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  // Where there is little room the picture's tip says it.
  const float text =
      parts.low ? 0 : ImGui::CalcTextSize(size.c_str(), nullptr, false, ImGui::GetContentRegionAvail().x).y;
  const ScreenBox room{std::floor(corner.x), std::floor(corner.y), std::floor(box.right - 12 * unit),
                       std::max(std::floor(corner.y) + 1, std::floor(box.bottom - text - 16 * unit))};
  placed.piece = room;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddRectFilled({room.left, room.top}, {room.right, room.bottom}, ink(theme.ground), 6 * unit);
  use_mouse(app, actions, room, parts.low ? size + "\n" : std::string());
  const PiecePicture& piece = app.caches.piece;
  const PiecePixels& pixels = piece.painter.pixels();
  if (piece.texture != 0 && pixels.width > 0) {
    const ImVec2 low{room.left + static_cast<float>(pixels.left), room.top + static_cast<float>(pixels.top)};
    // Dear ImGui carries OpenGL's texture numbers as pointers.
    // NOLINTNEXTLINE(performance-no-int-to-ptr)
    list.AddImage(reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(piece.texture)), low,
                  {low.x + static_cast<float>(pixels.width), low.y + static_cast<float>(pixels.height)});
  }
  draw_piece_marks(app, list, room);
  ImGui::SetCursorScreenPos({room.left, room.bottom + 4 * unit});
  if (!parts.low) {
    hint(theme, size);
  }
  list.AddLine({box.left + 0.5F, box.top}, {box.left + 0.5F, box.bottom}, ink(theme.line));
  ImGui::End();
}

} // namespace punchwright::editor
