// The yoke from above, as it is worn: rings with the names of the pieces round them, and of the tiers below.
// The pointer is told which tier of which piece it rests on.
#include "editor/yoke_fitting.hpp"
#include "editor/yoke_parts.hpp"
#include "pieces/worn_yoke.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

namespace {

constexpr std::size_t most_lines_of_rings = 4;

// The tier and piece under the pointer.
void tip_of_ring(const App& app, const Fitting& fitting) {
  const std::vector<WornRing> rings = worn_rings(*app.yoke.opened, *shown_plan(app));
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  const ScreenPoint at = fitting.back(pointer);
  const auto place = place_on_rings(rings, at.x, at.y);
  if (!place) {
    return;
  }
  YokeBlock block;
  block.tier = place->tier;
  block.piece = place->piece;
  const auto radius = static_cast<float>(rings[place->tier].radius);
  const ImVec2 low = fitting.at(-radius, -radius);
  const ImVec2 high = fitting.at(radius, radius);
  block_tip(app, block, {pointer.x - 4, pointer.y - 4, pointer.x + 4, pointer.y + 4}, {low.x, high.y, high.x, low.y});
}

} // namespace

std::string words_of_rings(const App& app, const SizePlan& plan) {
  const auto& tiers = app.yoke.opened->yoke.tiers;
  std::vector<std::string> rings;
  for (std::size_t tier = 0; tier < tiers.size(); ++tier) {
    const int plain = tiers[tier].plain_above.at(app.view.yoke.size);
    rings.push_back(
        said("{}. {}, {}", tier + 1, app.caches.yoke.tiers[tier], said_count(plain, "{} plain row", "{} plain rows")));
  }
  std::string words;
  for (const std::string& ring : rings) {
    words += (words.empty() ? "" : "; ") + ring;
  }
  const std::vector<WornRing> worn = worn_rings(*app.yoke.opened, plan);
  return worn.front().radius < worn.back().radius ? said("From inside outwards: {}", words)
                                                  : said("From outside inwards: {}", words);
}

float room_beside_ring(const Theme& theme, const std::vector<std::string>& names, const ScreenBox& room) {
  float widest = 0;
  for (const std::string& name : names) {
    widest = std::max(widest, ImGui::CalcTextSize(name.c_str()).x * 1.15F + 16 * theme.scale);
  }
  return std::min(widest, 0.25F * room.width());
}

void name_beside_ring(const Theme& theme, ImDrawList& list, const Fitting& fitting, ImVec2 at, const std::string& words,
                      const ScreenBox& room, std::vector<ScreenBox>& named) {
  const float line = ImGui::GetTextLineHeightWithSpacing();
  // Beside the picture there is less room than above and below it.
  const bool beside = std::fabs(at.x - fitting.origin.x) > std::fabs(at.y - fitting.origin.y);
  const auto name =
      label_lines(theme, words, (beside ? room_beside_ring(theme, {words}, room) : room.width() / 2) - 8 * theme.scale,
                  beside ? 3 : 1, true);
  const ImVec2 size{width_of_label(theme, name, true), line * static_cast<float>(name.size())};
  const float from = std::max(0.01F, std::hypot(at.x - fitting.origin.x, at.y - fitting.origin.y));
  at.x += (at.x - fitting.origin.x) / from * (size.x / 2 + 8 * theme.scale);
  at.y += (at.y - fitting.origin.y) / from * (size.y / 2 + 8 * theme.scale);
  at.x = std::max(room.left + size.x / 2, std::min(at.x, room.right - size.x / 2));
  at.y = std::max(room.top + size.y / 2, std::min(at.y, room.bottom - size.y / 2));
  const ScreenBox box{at.x - size.x / 2, at.y - size.y / 2, at.x + size.x / 2, at.y + size.y / 2};
  if (std::ranges::none_of(named, [&box](const ScreenBox& other) { return box.meets(other); })) {
    named.push_back(box);
    label_on(list, theme, {at.x, at.y - (size.y - line) / 2}, name, true);
  }
}

void draw_worn(const App& app, Actions& actions, const ScreenBox& whole_room) {
  const Theme& theme = app.theme;
  const YokeCache& cache = app.caches.yoke;
  const YokeShape& shape = cache.worn;
  const SizePlan& plan = *shown_plan(app);
  (void)actions;
  const float line = ImGui::GetTextLineHeightWithSpacing();
  const auto rings = label_lines(theme, words_of_rings(app, plan), whole_room.width(), most_lines_of_rings);
  ScreenBox room = whole_room;
  room.bottom -= static_cast<float>(rings.size()) * ImGui::GetTextLineHeight();
  lines_at(*ImGui::GetWindowDrawList(), theme, room.left, room.bottom, rings);
  std::vector<std::string> names;
  for (const PieceOfSize& piece : plan.pieces) {
    names.push_back(piece.name);
  }
  const float aside = room_beside_ring(theme, names, room);
  const ScreenBox inner{room.left + aside, room.top + 1.6F * line, room.right - aside, room.bottom - 1.6F * line};
  Fitting fitting = fitted(shape.width, shape.height, inner);
  fitting.origin = {std::round(inner.middle().x), std::round(inner.middle().y)};
  ImDrawList& list = *ImGui::GetWindowDrawList();
  draw_quads(list, cache.picture, shape, fitting);
  for (const YokeSeamLine& seam : shape.seams) {
    list.AddLine(fitting.at(seam.x0, seam.y0), fitting.at(seam.x1, seam.y1), ink(theme.panel, 0.9F), 3 * theme.scale);
    list.AddLine(fitting.at(seam.x0, seam.y0), fitting.at(seam.x1, seam.y1), ink(theme.text), 1.2F * theme.scale);
  }
  std::vector<ScreenBox> named;
  for (const YokeBlock& block : shape.blocks) {
    if (block.tier == 0) {
      name_beside_ring(theme, list, fitting, fitting.at(block.left, block.right), plan.pieces[block.piece].name, room,
                       named);
    }
  }
  finding_signs(app, list, shape, fitting);
  if (ImGui::IsWindowHovered()) {
    tip_of_ring(app, fitting);
  }
}

} // namespace punchwright::editor
