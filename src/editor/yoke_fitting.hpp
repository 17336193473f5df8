// Where a yoke's picture lies on the screen, and the bed that pieces hang on.
// Shared by the views of what is knitted and of what is wished.
#pragma once

#include "editor/app.hpp"

#include <algorithm>
#include <cmath>
#include <imgui.h>
#include <string>
#include <vector>

namespace punchwright::editor {

// mm of a view to px of the window.
struct Fitting {
  ScreenPoint origin; // where 0, 0 lies
  float across = 1;   // px per mm
  float upwards = 1;

  [[nodiscard]] ImVec2 at(float x, float y) const { return {origin.x + x * across, origin.y - y * upwards}; }
  [[nodiscard]] ScreenPoint back(ImVec2 px) const { return {(px.x - origin.x) / across, (origin.y - px.y) / upwards}; }
};

// As large as fits, in the middle.
inline Fitting fitted(float width, float height, const ScreenBox& room) {
  const float scale = std::min(room.width() / std::max(1.0F, width), room.height() / std::max(1.0F, height));
  Fitting fitting;
  fitting.across = scale;
  fitting.upwards = scale;
  fitting.origin = {std::round(room.middle().x - width * scale / 2), std::round(room.middle().y + height * scale / 2)};
  return fitting;
}

void draw_quads(ImDrawList& list, const YokePicture& picture, const YokeShape& shape, const Fitting& fitting);
// A sign where the chosen size has a finding, told by its form.
void finding_signs(const App& app, ImDrawList& list, const YokeShape& shape, const Fitting& fitting);
// What it says of that tier and piece lies beside the tier, and where there is room beside all that is `drawn`.
void block_tip(const App& app, const YokeBlock& block, const ScreenBox& tier, const ScreenBox& drawn);

// Below a piece: a tick for each needle, names at every tenth.
void draw_bed(const App& app, ImDrawList& list, const Fitting& fitting, float top, const ScreenBox& room);

// px: what the names of pieces take at either side of a ring.
[[nodiscard]] float room_beside_ring(const Theme& theme, const std::vector<std::string>& names, const ScreenBox& room);
// Outside the ring, beside `at` on its edge, and added to `named`; left out where it would lie over one of these: with
// so many pieces the tip says which one it is.
void name_beside_ring(const Theme& theme, ImDrawList& list, const Fitting& fitting, ImVec2 at, const std::string& words,
                      const ScreenBox& room, std::vector<ScreenBox>& named);

// Where no stitch counts fit: the outline that is wished, thin, in each of the views.
void draw_wished_flat(const App& app, const ScreenBox& room);
void draw_wished_worn(const App& app, const ScreenBox& room);
void draw_wished_on_bed(const App& app, const ScreenBox& room);

} // namespace punchwright::editor
