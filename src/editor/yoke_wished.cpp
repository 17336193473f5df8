// A yoke in whose size nothing fits, as it is wished: thin outlines by its measures, in place of stitches.
// So that the views say what is asked for while the findings say why it can't be.
#include "editor/yoke_fitting.hpp"
#include "editor/yoke_parts.hpp"
#include "pieces/worn_yoke.hpp"
#include "words/words.hpp"

#include <array>
#include <numbers>

namespace punchwright::editor {

namespace {

constexpr float thin = 1.2F;    // units of layout
constexpr float gap_mm = 12;    // between pieces that are laid flat
constexpr int round_parts = 96; // straight lines that a ring is drawn with

struct Wished {
  float bottom = 0; // mm
  float top = 0;
  float depth = 0;
};

Wished wished_of(const App& app, std::size_t piece) {
  const Yoke& yoke = app.yoke.opened->yoke;
  const std::size_t size = app.view.yoke.size;
  const YokePiece& there = yoke.pieces[widths_of(yoke, piece)];
  return {static_cast<float>(there.bottom_cm.at(size) * 10), static_cast<float>(there.top_cm.at(size) * 10),
          static_cast<float>(yoke.depth_cm.at(size) * 10)};
}

// Symmetric about `middle`, standing on y = 0; in the view's units.
void draw_outline(ImDrawList& list, const Theme& theme, const Fitting& fitting, float middle, const Wished& wished) {
  const std::array corners = {fitting.at(middle - wished.bottom / 2, 0), fitting.at(middle + wished.bottom / 2, 0),
                              fitting.at(middle + wished.top / 2, wished.depth),
                              fitting.at(middle - wished.top / 2, wished.depth)};
  list.AddPolyline(corners.data(), static_cast<int>(corners.size()), ink(theme.accent), ImDrawFlags_Closed,
                   thin * theme.scale);
}

} // namespace

void draw_wished_flat(const App& app, const ScreenBox& room) {
  const Theme& theme = app.theme;
  const Yoke& yoke = app.yoke.opened->yoke;
  const float line = ImGui::GetTextLineHeightWithSpacing();
  std::vector<Wished> pieces;
  float wide = -gap_mm;
  for (std::size_t piece = 0; piece < yoke.pieces.size(); ++piece) {
    pieces.push_back(wished_of(app, piece));
    wide += std::max(pieces.back().bottom, pieces.back().top) + gap_mm;
  }
  const Fitting fitting =
      fitted(wide, pieces.front().depth, {room.left, room.top + line, room.right, room.bottom - 2.4F * line});
  ImDrawList& list = *ImGui::GetWindowDrawList();
  float left = 0;
  for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
    const float widest = std::max(pieces[piece].bottom, pieces[piece].top);
    draw_outline(list, theme, fitting, left + widest / 2, pieces[piece]);
    const ImVec2 below = fitting.at(left + widest / 2, 0);
    label_on(list, theme, {below.x, below.y + 0.8F * line},
             label_lines(theme, yoke.pieces[piece].name, widest * fitting.across, 2, true), true);
    left += widest + gap_mm;
  }
}

void draw_wished_worn(const App& app, const ScreenBox& room) {
  const Theme& theme = app.theme;
  const Yoke& yoke = app.yoke.opened->yoke;
  const float line = ImGui::GetTextLineHeightWithSpacing();
  const std::array<WornRing, 2> rings = wished_rings(yoke, app.view.yoke.size);
  const auto radius = static_cast<float>(std::max(rings[0].radius, rings[1].radius));
  std::vector<std::string> names;
  for (const YokePiece& piece : yoke.pieces) {
    names.push_back(piece.name);
  }
  const float aside = room_beside_ring(theme, names, room);
  Fitting fitting = fitted(2 * radius, 2 * radius,
                           {room.left + aside, room.top + 1.6F * line, room.right - aside, room.bottom - 1.6F * line});
  fitting.origin = room.middle();
  const auto at = [&](double far, double turns) { // as in the view of what is knitted: the front below
    const double angle = 2 * std::numbers::pi * turns - std::numbers::pi / 2;
    return fitting.at(static_cast<float>(far * std::cos(angle)), static_cast<float>(far * std::sin(angle)));
  };
  ImDrawList& list = *ImGui::GetWindowDrawList();
  for (const WornRing& ring : rings) {
    list.AddCircle(fitting.at(0, 0), static_cast<float>(ring.radius) * fitting.across, ink(theme.accent), round_parts,
                   thin * theme.scale);
  }
  std::vector<ScreenBox> named;
  for (std::size_t piece = 0; piece < yoke.pieces.size(); ++piece) {
    list.AddLine(at(rings[0].radius, rings[0].turns[piece]), at(rings[1].radius, rings[1].turns[piece]),
                 ink(theme.accent), thin * theme.scale);
    const ImVec2 edge = at(rings[0].radius, (rings[0].turns[piece] + rings[0].turns[piece + 1]) / 2);
    name_beside_ring(theme, list, fitting, edge, names[piece], room, named);
  }
}

void draw_wished_on_bed(const App& app, const ScreenBox& room) {
  const Theme& theme = app.theme;
  const OpenedYoke& opened = *app.yoke.opened;
  const std::size_t piece = std::min(app.view.yoke.piece, opened.yoke.pieces.size() - 1);
  const float line = ImGui::GetTextLineHeightWithSpacing();
  const auto stitch_of = [&](const OpenedTier& tier) { return static_cast<float>(tier.document.gauge.stitch_mm()); };
  const auto seams = static_cast<float>(2 * opened.yoke.edge);
  const float stitch = stitch_of(opened.tiers.front());
  Wished wished = wished_of(app, piece); // widths in needles from here on
  wished.bottom = wished.bottom / stitch + seams;
  wished.top = wished.top / stitch_of(opened.tiers.back()) + seams;
  const auto needles = static_cast<float>(opened.profile.needles);
  const float middle = needles / 2; // as it hangs when it is set up in the middle
  const float wide = std::max({needles, wished.bottom, wished.top});
  const float bed_top = room.bottom - 2.2F * line;
  Fitting fitting;
  fitting.across = room.width() / wide;
  fitting.upwards = std::min(fitting.across / stitch, std::max(1.0F, bed_top - room.top - line) / wished.depth);
  fitting.origin = {room.left + (wide - needles) / 2 * fitting.across, bed_top};
  ImDrawList& list = *ImGui::GetWindowDrawList();
  draw_outline(list, theme, fitting, middle, wished);
  draw_bed(app, list, fitting, bed_top, room);
}

} // namespace punchwright::editor
