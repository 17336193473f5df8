// How far a part of the window was dragged: a hand may be faster than the frames.
#include "editor/widgets.hpp"

#include <doctest/doctest.h>
#include <imgui.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

// A window without a screen, with one part that can be dragged, from 0, 0 to 100, 100.
class Hand {
public:
  Hand() : context_(ImGui::CreateContext()) {
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {400, 300};
    io.DeltaTime = 1.0F / 60;
    unsigned char* pixels = nullptr;
    int wide = 0;
    int high = 0;
    io.Fonts->GetTexDataAsAlpha8(&pixels, &wide, &high);
  }
  ~Hand() { ImGui::DestroyContext(context_); }
  Hand(const Hand&) = delete;
  Hand& operator=(const Hand&) = delete;

  Hand& move(float x, float y) {
    ImGui::GetIO().MousePos = {x, y};
    return *this;
  }
  Hand& press(int button = 0) {
    ImGui::GetIO().MouseDown[button] = true;
    return *this;
  }
  Hand& let_go(int button = 0) {
    ImGui::GetIO().MouseDown[button] = false;
    return *this;
  }

  struct Ways {
    std::optional<ScreenPoint> of_frame, of_drag;
  };
  Ways frame(int button = 0) {
    ImGui::NewFrame();
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize({400, 300});
    ImGui::Begin("window", nullptr, ImGuiWindowFlags_NoDecoration);
    ImGui::SetCursorScreenPos({0, 0});
    ImGui::InvisibleButton("part", {100, 100}, ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonMiddle);
    const Ways ways{way_of_frame(button), way_of_drag(button)};
    ImGui::End();
    ImGui::EndFrame();
    return ways;
  }
  // The pointer lies on the part, and its button is down.
  void take(int button = 0) {
    move(50, 50).frame();
    frame();
    press(button).frame();
  }

private:
  ImGuiContext* context_;
};

void check_way(const std::optional<ScreenPoint>& way, float x, float y) {
  REQUIRE(way);
  CHECK(way->x == x);
  CHECK(way->y == y);
}

} // namespace

TEST_CASE("a part is dragged by what the pointer moves in a frame, and in all") {
  Hand hand;
  hand.take();
  const auto first = hand.move(57, 48).frame();
  check_way(first.of_frame, 7, -2);
  check_way(first.of_drag, 7, -2);
  const auto second = hand.move(60, 60).frame();
  check_way(second.of_frame, 3, 12);
  check_way(second.of_drag, 10, 10);
}

TEST_CASE("the last movement counts where it comes in one frame with the letting go") {
  Hand hand;
  hand.take();
  hand.move(60, 60).frame();
  const auto last = hand.move(90, 55).let_go().frame();
  check_way(last.of_frame, 30, -5);
  check_way(last.of_drag, 40, 5);
  const auto after = hand.move(95, 95).frame();
  CHECK_FALSE(after.of_frame);
  CHECK_FALSE(after.of_drag);
}

TEST_CASE("what the pointer moved before it took the part drags nothing") {
  Hand hand;
  hand.move(20, 20).frame();
  hand.frame();
  const auto taken = hand.move(50, 50).press().frame();
  CHECK_FALSE(taken.of_frame);
  CHECK_FALSE(taken.of_drag);
}

TEST_CASE("a pointer that lies on a part without its button, or keeps still with it, drags nothing") {
  Hand hand;
  hand.move(50, 50).frame();
  CHECK_FALSE(hand.move(60, 60).frame().of_frame);
  hand.press().frame();
  CHECK_FALSE(hand.frame().of_frame);
}

TEST_CASE("each button drags by itself") {
  Hand hand;
  hand.take(ImGuiMouseButton_Middle);
  CHECK_FALSE(hand.move(70, 70).frame(ImGuiMouseButton_Left).of_frame);
  check_way(hand.move(75, 71).frame(ImGuiMouseButton_Middle).of_frame, 5, 1);
}
