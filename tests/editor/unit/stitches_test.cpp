// The drawing's cells on their way from flat to stitches: the colours that are laid over one another, by what is
// emitted.
#include "editor/actions.hpp"
#include "editor/drawing_parts.hpp"

#include <array>
#include <doctest/doctest.h>
#include <imgui.h>
#include <utility>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

// A window without a screen that draws the stitches of one design.
class Painted {
public:
  Painted(const App& app, const CanvasLayout& layout) : context_(ImGui::CreateContext()), layout_(layout) {
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {1000, 1000};
    unsigned char* pixels = nullptr;
    int wide = 0;
    int high = 0;
    io.Fonts->GetTexDataAsAlpha8(&pixels, &wide, &high);
    ImGui::NewFrame();
    list_ = ImGui::GetBackgroundDrawList();
    draw_stitches({app, *list_, layout, {0, 0, 1000, 1000}, 0, layout.rows - 1, 0, layout.columns - 1});
  }
  ~Painted() { ImGui::DestroyContext(context_); }
  Painted(const Painted&) = delete;
  Painted& operator=(const Painted&) = delete;

  using Parts = std::array<float, 3>; // red, green, blue

  // What lies over one another at a place of the cell, each as light as its yarn: the form's shading is left out.
  [[nodiscard]] Parts colour_at(Cell cell, float across, float down) const {
    const ScreenBox box = box_of(layout_, cell);
    const ImVec2 at(box.left + across * box.width(), box.top + down * box.height());
    Parts seen{};
    for (const ImDrawCmd& command : list_->CmdBuffer) {
      for (unsigned first = 0; first < command.ElemCount; first += 3) {
        const std::array corners = {&corner(command, first), &corner(command, first + 1), &corner(command, first + 2)};
        if (inside(corners, at)) {
          lay_over(seen, corners[0]->col);
        }
      }
    }
    return seen;
  }

private:
  [[nodiscard]] const ImDrawVert& corner(const ImDrawCmd& command, unsigned place) const {
    const ImDrawIdx index = list_->IdxBuffer[static_cast<int>(command.IdxOffset + place)];
    return list_->VtxBuffer[static_cast<int>(command.VtxOffset + index)];
  }
  static float turn(ImVec2 one, ImVec2 other, ImVec2 at) {
    return (other.x - one.x) * (at.y - one.y) - (other.y - one.y) * (at.x - one.x);
  }
  static bool inside(const std::array<const ImDrawVert*, 3>& corners, ImVec2 at) {
    const float a = turn(corners[0]->pos, corners[1]->pos, at);
    const float b = turn(corners[1]->pos, corners[2]->pos, at);
    const float c = turn(corners[2]->pos, corners[0]->pos, at);
    return (a > 0 && b > 0 && c > 0) || (a < 0 && b < 0 && c < 0);
  }
  static void lay_over(Parts& seen, ImU32 colour) {
    const float opacity = static_cast<float>(colour >> IM_COL32_A_SHIFT & 0xFF) / 255;
    constexpr std::array shifts = {IM_COL32_R_SHIFT, IM_COL32_G_SHIFT, IM_COL32_B_SHIFT};
    for (std::size_t part = 0; part < seen.size(); ++part) {
      const auto value = static_cast<float>(colour >> shifts[part] & 0xFF);
      seen[part] += (value - seen[part]) * opacity;
    }
  }

  ImGuiContext* context_;
  CanvasLayout layout_;
  ImDrawList* list_ = nullptr;
};

// Three columns of contrast in the middle of main, in all rows.
App striped() {
  App app = make_app();
  app.work.design = blank_document(9, 6);
  for (int row = 0; row < 6; ++row) {
    app.work.design.grid.set_row_text(row, "...###...");
  }
  app.caches.row_yarns = yarns_by_row(app.work.design.bands);
  app.caches.stitch = {1, 1}; // as if the textures were there
  return app;
}

} // namespace

TEST_CASE("a stitch keeps its yarn's colour at every size, from the flat cell to the whole form") {
  const App app = striped();
  constexpr std::array<int, 6> no_strips{};
  for (float cell = 6; cell < 70; cell *= 1.18F) { // a notch of the wheel
    CAPTURE(cell);
    CanvasLayout layout;
    layout.columns = 9;
    layout.rows = 6;
    layout.strips_up_to = no_strips;
    layout.cell_width = cell * 1.25F;
    layout.cell_height = cell;
    layout.origin = {20, 900};
    const Painted painted(app, layout);
    for (const auto& [column, key] : {std::pair{4, 'B'}, std::pair{1, 'A'}}) {
      const Colour yarn = seen_yarn(app, key);
      for (const float down : {0.12F, 0.55F, 0.87F}) {
        const Painted::Parts seen = painted.colour_at({column, 2}, 0.41F, down);
        CHECK(seen[0] == doctest::Approx(yarn.red).epsilon(0.02));
        CHECK(seen[1] == doctest::Approx(yarn.green).epsilon(0.02));
        CHECK(seen[2] == doctest::Approx(yarn.blue).epsilon(0.02));
      }
    }
  }
}
