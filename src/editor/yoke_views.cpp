// The yoke's pictures: laid flat, and one piece on its bed. Shapes and stitches come from the
// cache; here they only get their place on the screen, with words beside them.
#include "editor/needle_strip.hpp"
#include "editor/yoke_fitting.hpp"
#include "editor/yoke_parts.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <fmt/format.h>
#include <optional>

namespace punchwright::editor {

void draw_quads(ImDrawList& list, const YokePicture& picture, const YokeShape& shape, const Fitting& fitting) {
  if (picture.texture == 0) {
    return;
  }
  // Dear ImGui carries OpenGL's texture numbers as pointers.
  // NOLINTNEXTLINE(performance-no-int-to-ptr)
  list.PushTextureID(reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(picture.texture)));
  for (const YokeQuad& quad : shape.quads) {
    const auto at = [&](std::size_t corner) { return fitting.at(quad.corners[corner].x, quad.corners[corner].y); };
    const auto uv = [&](std::size_t corner) { return ImVec2(quad.corners[corner].u, quad.corners[corner].v); };
    list.PrimReserve(6, 4);
    list.PrimQuadUV(at(0), at(1), at(2), at(3), uv(0), uv(1), uv(2), uv(3), IM_COL32_WHITE);
  }
  list.PopTextureID();
}

namespace {

void frame(ImDrawList& list, const Theme& theme, ImVec2 low, ImVec2 high) {
  list.AddRect({low.x - 0.5F, low.y - 0.5F}, {high.x + 0.5F, high.y + 0.5F}, ink(theme.text, 0.55F));
}

// The rows on the tier's stitches, and those on what is left of them.
void outline(ImDrawList& list, const Theme& theme, const YokeBlock& block, const Fitting& fitting) {
  const float end = block.narrows_at_once ? block.shaped : block.hung;
  const float then = block.narrows_at_once ? block.shaped : block.hung_again;
  frame(list, theme, fitting.at(block.left, end), fitting.at(block.right, block.bottom));
  if (block.top > then) {
    frame(list, theme, fitting.at(block.then_left, block.top), fitting.at(block.then_right, then));
  }
}

} // namespace

void finding_signs(const App& app, ImDrawList& list, const YokeShape& shape, const Fitting& fitting) {
  const YokeCache& cache = app.caches.yoke;
  const float radius = 9 * app.theme.scale;
  for (std::size_t index = 0; index < cache.findings.size(); ++index) {
    const YokeFinding& finding = cache.findings[index];
    if (!finding.seam || finding.size != app.view.yoke.size) {
      continue;
    }
    for (const YokeSeamLine& seam : shape.seams) {
      if (static_cast<int>(seam.tier) == finding.tier && static_cast<int>(seam.left) == finding.piece) {
        const ImVec2 at = fitting.at((seam.x0 + seam.x1) / 2, (seam.y0 + seam.y1) / 2);
        const bool chosen = app.view.yoke.finding == static_cast<int>(index);
        list.AddCircleFilled(at, radius * 1.5F, ink(app.theme.panel));
        list.AddCircle(at, radius * 1.5F, ink(chosen ? app.theme.accent : app.theme.text), 0,
                       (chosen ? 3.0F : 1.0F) * app.theme.scale);
        severity_sign(list, app.theme, from_imgui(at), radius, finding.severity);
        const ScreenBox sign{at.x - radius, at.y - radius, at.x + radius, at.y + radius};
        if (ImGui::IsWindowHovered() && sign.contains(from_imgui(ImGui::GetIO().MousePos))) {
          tip_beside(app.theme, finding.words, {sign});
        }
      }
    }
  }
}

namespace {

std::string shaping_text(const Shaping& shaping) {
  if (shaping.every.empty()) {
    return tr("no decreases or increases above");
  }
  const std::string clear = clearance_words(shaping);
  const std::string how = punchwright::words_of(shaping.every) + (clear.empty() ? "" : ";\n") + clear;
  const int count = shaping.decreases() + shaping.increases();
  return shaping.increases() > 0 ? said("then {} more: {}", count, how) : said("then {} fewer: {}", count, how);
}

} // namespace

void block_tip(const App& app, const YokeBlock& block, const ScreenBox& tier, const ScreenBox& drawn) {
  const SizePlan& plan = *shown_plan(app);
  const TierOfPiece& there = plan.pieces[block.piece].tiers[block.tier];
  const std::string words =
      said("{}, tier {}: {}\n{} stitches on {} to {}, columns {} to {}\n{}", plan.pieces[block.piece].name,
           block.tier + 1, app.caches.yoke.tiers[block.tier], there.stitches, name_of(there.bed.first),
           name_of(there.bed.last), there.bed.left_column + 1, there.bed.right_column + 1, shaping_text(there.shaping));
  tip_beside(app.theme, words, {tier, drawn});
}

namespace {

// Between the lower left corner and the upper right one, mm.
ScreenBox box_between(const Fitting& fitting, ScreenPoint low, ScreenPoint high) {
  const ImVec2 left = fitting.at(low.x, high.y);
  const ImVec2 right = fitting.at(high.x, low.y);
  return {left.x, left.y, right.x, right.y};
}

ScreenBox box_of(const YokeBlock& block, const Fitting& fitting) {
  return box_between(fitting, {block.left, block.bottom}, {block.right, block.top});
}

// The picture's room takes the pointer: what it rests on is said, and pressing a piece shows it on its bed.
void use_pointer(const App& app, Actions& actions, const YokeShape& shape, const Fitting& fitting,
                 const ScreenBox& room, bool chooses) {
  ImGui::SetCursorScreenPos({room.left, room.top});
  ImGui::InvisibleButton("yoke picture", {room.width(), room.height()});
  if (!ImGui::IsItemHovered()) {
    return;
  }
  const ScreenPoint at = fitting.back(ImGui::GetIO().MousePos);
  for (const YokeBlock& block : shape.blocks) {
    if (at.x >= block.left && at.x < block.right && at.y >= block.bottom && at.y < block.top) {
      const ScreenBox tier = box_of(block, fitting);
      block_tip(app, block, tier, tier);
      if (chooses && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) {
        YokeView next = app.view.yoke;
        next.piece = block.piece;
        next.shows = YokeShows::bed;
        actions.push(SetYokeView{next});
      }
    }
  }
}

} // namespace

void draw_flat(const App& app, Actions& actions, const ScreenBox& room) {
  const Theme& theme = app.theme;
  const YokeCache& cache = app.caches.yoke;
  const YokeShape& shape = cache.flat;
  const SizePlan& plan = *shown_plan(app);
  const float line = ImGui::GetTextLineHeightWithSpacing();
  const std::size_t tiers = app.yoke.opened->tiers.size();
  const auto room_of = [&](std::size_t piece, const Fitting& there) {
    const YokeBlock& low = shape.blocks[piece * tiers];
    return (low.right - low.left) * there.across - 8 * theme.scale;
  };
  // Below, names in one line or in two, and the counts.
  Fitting fitting;
  float lines_of_names = 0;
  bool in_two = false;
  for (const float lines : {1.0F, 2.0F}) {
    if (lines > 1 && !in_two) {
      break;
    }
    lines_of_names = lines;
    fitting = fitted(shape.width, shape.height,
                     {room.left, room.top + 2 * line, room.right, room.bottom - (1.4F + lines) * line});
    for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
      in_two = in_two || label_lines(theme, plan.pieces[piece].name, room_of(piece, fitting), 2, true).size() > 1;
    }
  }
  use_pointer(app, actions, shape, fitting, room, true);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  draw_quads(list, cache.picture, shape, fitting);
  for (const YokeBlock& block : shape.blocks) {
    outline(list, theme, block, fitting);
  }
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece) {
    const YokeBlock& low = shape.blocks[piece * tiers];
    const ImVec2 middle = fitting.at((low.left + low.right) / 2, 0);
    const float wide = room_of(piece, fitting);
    const auto most = static_cast<std::size_t>(lines_of_names);
    label_on(list, theme, {middle.x, middle.y + line * 0.8F},
             label_lines(theme, plan.pieces[piece].name, wide, most, true), true);
    const std::string counts =
        said("{0} to {1}", plan.pieces[piece].tiers.front().stitches, plan.pieces[piece].tiers.back().shaping.after);
    label_on(list, theme, {middle.x, middle.y + line * (0.8F + lines_of_names)}, label_lines(theme, counts, wide, 1));
  }
  finding_signs(app, list, shape, fitting);
}

void draw_bed(const App& app, ImDrawList& list, const Fitting& fitting, float top, const ScreenBox& room) {
  const Theme& theme = app.theme;
  const Profile& profile = app.yoke.opened->profile;
  const float needle = fitting.across;
  const float tall = 8 * theme.scale;
  list.AddLine({fitting.at(0, 0).x, top}, {fitting.at(static_cast<float>(profile.needles), 0).x, top}, ink(theme.text));
  float last_word = room.left - 1000;
  for (int place = 0; place < profile.needles; ++place) {
    const Needle there{profile.leftmost().position + place};
    const int number = number_of(there);
    const bool named = number % 10 == 0 || number == 1;
    const float x = fitting.at(static_cast<float>(place) + 0.5F, 0).x;
    if (needle >= 4 || named) {
      list.AddLine({x, top}, {x, top + (named ? tall : tall / 2)}, ink(theme.text, named ? 1.0F : 0.6F));
    }
    const std::string name = name_of(there);
    const float wide = ImGui::CalcTextSize(name.c_str()).x;
    // The outermost names would reach beyond the room: they stand inside it.
    const float left = std::clamp(x - wide / 2, room.left, std::max(room.left, room.right - wide));
    if (number % 10 == 0 && left > last_word) {
      list.AddText({std::round(left), top + tall + 2 * theme.scale}, ink(theme.text), name.c_str());
      last_word = left + wide + 10 * theme.scale;
    }
  }
  const float middle = fitting.at(static_cast<float>(profile.needles) / 2, 0).x;
  list.AddLine({middle, room.top}, {middle, top + tall}, ink(theme.accent, 0.7F), theme.scale);
}

namespace {

// Seam stitches are hatched, and each needle that is brought forward has an arrow to its neighbour, in the row above
// which it is done.
void draw_block_marks(const App& app, ImDrawList& list, const YokeBlock& block, const Fitting& fitting) {
  const Theme& theme = app.theme;
  const OpenedYoke& opened = *app.yoke.opened;
  const auto edge = static_cast<float>(opened.yoke.edge);
  const TierOfPiece& there = shown_plan(app)->pieces[block.piece].tiers[block.tier];
  struct Edge {
    float from;
    float bottom;
    float top;
  };
  for (const Edge& part :
       {Edge{block.left, block.bottom, block.hung}, Edge{block.right - edge, block.bottom, block.hung},
        Edge{block.then_left, block.hung_again, block.top},
        Edge{block.then_right - edge, block.hung_again, block.top}}) {
    const ImVec2 low = fitting.at(part.from, part.top);
    const ImVec2 high = fitting.at(part.from + edge, part.bottom);
    list.AddRectFilled(low, high, ink(theme.panel, 0.6F));
    const float step = 5 * theme.scale;
    list.PushClipRect(low, high, true);
    for (float y = low.y - (high.x - low.x); y < high.y; y += step) {
      list.AddLine({low.x, y}, {high.x, y + (high.x - low.x)}, ink(theme.text, 0.8F));
    }
    list.PopClipRect();
  }
  const int leftmost = opened.profile.leftmost().position;
  const float tall = std::clamp(fitting.across, 4 * theme.scale, 10 * theme.scale);
  for (const Transfer& transfer : there.shaping.transfers) {
    const ImVec2 from = fitting.at(static_cast<float>(transfer.from.position - leftmost) + 0.5F, block.shaped);
    const float x = fitting.at(static_cast<float>(transfer.to.position - leftmost) + 0.5F, block.shaped).x;
    const float way = x < from.x ? -1.0F : 1.0F;
    const ImVec2 low{from.x - way * tall / 2, from.y + tall / 2};
    const ImVec2 high{from.x - way * tall / 2, from.y - tall / 2};
    list.AddTriangleFilled(low, high, {from.x + way * tall / 2, from.y}, ink(theme.panel));
    list.AddTriangle(low, high, {from.x + way * tall / 2, from.y}, ink(theme.text), 1.2F * theme.scale);
  }
}

} // namespace

void draw_on_bed(const App& app, Actions& actions, const ScreenBox& room) {
  const Theme& theme = app.theme;
  const YokeCache& cache = app.caches.yoke;
  const std::size_t piece = std::min(app.view.yoke.piece, cache.on_bed.size() - 1);
  const YokeShape& together = cache.on_bed[piece];
  const SizePlan& plan = *shown_plan(app);
  const float line = ImGui::GetTextLineHeightWithSpacing();
  const float gap = std::min(line * 1.1F, 0.07F * room.height()); // where the work is off the machine
  const auto tiers = static_cast<float>(together.blocks.size());
  const std::size_t count = plan.pieces.size();
  const float half = room.width() / 2 - 8 * theme.scale;
  // A name stays in one line with its arrow, where one has room for it.
  const auto name = [&](std::size_t place) {
    const std::string whole = unbroken(plan.pieces[place % count].name);
    return ImGui::CalcTextSize(("← " + whole).c_str()).x <= half ? whole : plan.pieces[place % count].name;
  };
  const std::string to_left = said("← seam to {}", name(piece + 1));
  std::string to_right = said("seam to {} →", name(piece + count - 1));
  if (const std::size_t last = to_right.rfind(' '); last != std::string::npos) {
    to_right.replace(last, 1, "\u00a0"); // the arrow never stands alone
  }
  const auto left_seam = label_lines(theme, to_left, half, 2);
  const auto right_seam = label_lines(theme, to_right, half, 2);
  const float below = (1.8F + static_cast<float>(std::max(left_seam.size(), right_seam.size()))) * line;
  const ScreenBox inner{room.left, room.top + gap, room.right, room.bottom - below - gap * tiers};
  const double stitch = app.yoke.opened->tiers.front().document.gauge.stitch_mm();
  // The bed takes all of the width; rows are lower than they are wide where there is no room for them.
  Fitting fitting;
  fitting.across = inner.width() / together.width; // x counts needles
  fitting.upwards =
      std::min(fitting.across / static_cast<float>(stitch), std::max(1.0F, inner.height()) / together.height);
  const YokeShape shape = parted(together, gap / fitting.upwards);
  const float content = shape.height * fitting.upwards;
  const float bed_top = std::min(room.bottom - below, room.middle().y + content / 2);
  fitting.origin = {inner.left, bed_top - gap / 2};
  ImDrawList& list = *ImGui::GetWindowDrawList();
  std::optional<std::size_t> pointed_at;
  ScreenBox pointed_box;
  ScreenBox drawn{room.right, room.bottom, room.left, room.top}; // of all tiers
  draw_quads(list, cache.picture, shape, fitting);
  for (std::size_t tier = 0; tier < shape.blocks.size(); ++tier) {
    const YokeBlock& block = shape.blocks[tier];
    outline(list, theme, block, fitting);
    draw_block_marks(app, list, block, fitting);
    const ScreenBox low = box_between(fitting, {block.left, block.bottom}, {block.right, block.hung});
    const ScreenBox high = box_between(fitting, {block.then_left, block.hung_again}, {block.then_right, block.top});
    const ScreenBox box{std::min(low.left, high.left), high.top, std::max(low.right, high.right), low.bottom};
    drawn = {std::min(drawn.left, box.left), std::min(drawn.top, box.top), std::max(drawn.right, box.right),
             std::max(drawn.bottom, box.bottom)};
    for (const ScreenBox& part : {low, high}) {
      if (ImGui::IsMouseHoveringRect({part.left, part.top}, {part.right, part.bottom})) {
        pointed_at = tier;
        pointed_box = box;
      }
    }
    const TierOfPiece& there = plan.pieces[piece].tiers[tier];
    const std::string words = fmt::format("{}–{}", name_of(there.bed.first), name_of(there.bed.last));
    const ImVec2 size = ImGui::CalcTextSize(words.c_str());
    const ImVec2 at = fitting.at(block.right, (block.bottom + block.hung) / 2);
    const float x = std::min(at.x + size.x / 2 + 8 * theme.scale, room.right - size.x / 2);
    words_on(list, theme, {x, at.y}, words);
  }
  if (pointed_at) {
    block_tip(app, shape.blocks[*pointed_at], pointed_box, drawn);
  }
  draw_bed(app, list, fitting, bed_top, room);
  lines_at(list, theme, room.left, bed_top + 1.7F * line, left_seam);
  lines_at(list, theme, room.right, bed_top + 1.7F * line, right_seam, true);
  (void)actions;
}

} // namespace punchwright::editor
