// Tips in real frames: what a tip tells about stays in sight beside it, and so does the line at the window's foot.
#include "editor/panels.hpp"
#include "load/frames.hpp"

#include <doctest/doctest.h>
#include <imgui_internal.h>
#include <optional>

using namespace punchwright;
using namespace punchwright::editor;
using test::Frames;

namespace {

ScreenBox box_of_window(const ImGuiWindow& window) {
  return {window.Pos.x, window.Pos.y, window.Pos.x + window.Size.x, window.Pos.y + window.Size.y};
}

ScreenBox box_of_part(const char* name) {
  const ImGuiWindow* const window = ImGui::FindWindowByName(name);
  REQUIRE(window != nullptr);
  return box_of_window(*window);
}

bool meet(const ScreenBox& one, const ScreenBox& other) {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}

// The tip that the last frame showed.
std::optional<ScreenBox> shown_tip() {
  for (const ImGuiWindow* const window : ImGui::GetCurrentContext()->Windows) {
    if ((window->Flags & ImGuiWindowFlags_Tooltip) != 0 && window->Active && !window->Hidden) {
      return box_of_window(*window);
    }
  }
  return std::nullopt;
}

void rest_at(Frames& frames, ScreenPoint at) {
  frames.queue.push(PointerEvent{at});
  frames.build_all();
  frames.build();
  frames.build();
}

} // namespace

TEST_CASE("the needle strip and the line at the foot stay in sight beside the strip's tip") {
  App app = make_app();
  Frames frames(app);
  const ScreenBox strip{app.view.canvas.left, app.view.canvas.bottom, app.view.canvas.right,
                        box_of_part(drawing_part).bottom};
  const ScreenBox foot = box_of_part(state_line_part);
  REQUIRE(strip.height() > 10);
  REQUIRE(foot.top >= strip.bottom);
  for (const float along : {0.02F, 0.3F, 0.6F, 0.98F}) {
    for (const float down : {0.1F, 0.5F, 0.9F}) {
      CAPTURE(along);
      CAPTURE(down);
      rest_at(frames, {strip.left + along * strip.width(), strip.top + down * strip.height()});
      const auto tip = shown_tip();
      REQUIRE(tip.has_value());
      CHECK_FALSE(meet(*tip, strip));
      CHECK_FALSE(meet(*tip, foot));
      CHECK(tip->left >= 0);
      CHECK(tip->right <= ImGui::GetIO().DisplaySize.x);
      CHECK(strip.top - tip->bottom < 20); // and it is near
    }
  }
}

TEST_CASE("while the keys lead, a pointer that was left on the needle strip has no tip over the drawing") {
  App app = make_app();
  Frames frames(app);
  rest_at(frames, {app.view.canvas.middle().x, app.view.canvas.bottom + 8});
  REQUIRE(shown_tip().has_value());
  ImGui::GetCurrentContext()->NavDisableMouseHover = true; // as after a key
  frames.build();
  CHECK_FALSE(shown_tip().has_value());
}

TEST_CASE("rows that are dragged stay in sight beside the words that say where they go") {
  App app = make_app();
  apply(app, Run{Command::zoom_fit});
  Frames frames(app);
  const CanvasLayout layout = layout_of(app, app.view.canvas);
  const float numbers = app.view.canvas.left - 12;
  const auto middle_of = [&](int row) { return ScreenPoint{numbers, box_of(layout, Cell{0, row}).middle().y}; };
  rest_at(frames, middle_of(5));
  frames.queue.push(ButtonEvent{0, true});
  for (const int to : {6, 12, 20, 1}) {
    CAPTURE(to);
    rest_at(frames, middle_of(to));
    REQUIRE(app.session.line_drag.has_value());
    REQUIRE(app.session.line_drag->to == to);
    const auto tip = shown_tip();
    REQUIRE(tip.has_value());
    const ScreenBox left_end = box_of(layout, Cell{0, to});
    const ScreenBox right_end = box_of(layout, Cell{layout.columns - 1, to});
    CHECK_FALSE(meet(*tip, {left_end.left, left_end.top, right_end.right, right_end.bottom}));
    CHECK_FALSE(tip->contains(middle_of(to)));
  }
}

TEST_CASE("the foot grows upwards for a message of several lines, which needs no tip then") {
  App app = make_app();
  Frames frames(app);
  rest_at(frames, {0, 0});
  const ScreenBox low = box_of_part(state_line_part);
  for (int word = 0; word < 20; ++word) {
    app.session.message += "Seepferdchen ";
  }
  rest_at(frames, {low.left + 40, low.middle().y});
  const ScreenBox foot = box_of_part(state_line_part);
  CHECK(foot.bottom >= ImGui::GetIO().DisplaySize.y);
  CHECK(foot.top <= low.top - ImGui::GetTextLineHeight());
  CHECK_FALSE(shown_tip().has_value());
}

TEST_CASE("a message that is too long even for several lines at the foot is told whole above it") {
  App app = make_app();
  for (int word = 0; word < 100; ++word) {
    app.session.message += "Seepferdchen ";
  }
  Frames frames(app);
  const ScreenBox foot = box_of_part(state_line_part);
  rest_at(frames, {foot.left + 40, foot.middle().y});
  const auto tip = shown_tip();
  REQUIRE(tip.has_value());
  CHECK_FALSE(meet(*tip, foot));
}
