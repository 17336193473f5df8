// Words on the yoke's pictures stay within their room, whatever the names and the size of the text.
#include "editor/widgets.hpp"
#include "editor/yoke_labels.hpp"

#include <doctest/doctest.h>
#include <imgui.h>
#include <imgui_internal.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

// A frame in which text can be measured, in Dear ImGui's own face.
class Frame {
public:
  explicit Frame(float text_scale) : context_(ImGui::CreateContext()) {
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {800, 600};
    io.FontGlobalScale = text_scale;
    unsigned char* pixels = nullptr;
    int width = 0;
    int height = 0;
    io.Fonts->GetTexDataAsAlpha8(&pixels, &width, &height);
    ImGui::NewFrame();
    theme.regular = ImGui::GetFont();
    theme.bold = theme.regular;
  }
  Frame(const Frame&) = delete;
  Frame& operator=(const Frame&) = delete;
  ~Frame() {
    ImGui::EndFrame();
    ImGui::DestroyContext(context_);
  }

  Theme theme;

private:
  ImGuiContext* context_;
};

} // namespace

TEST_CASE("labels are broken at spaces, and nothing of them is wider than its room") {
  for (const float scale : {1.0F, 2.0F, 2.5F}) {
    const Frame frame(scale);
    const std::string words = "left sleeve, right sleeve and back";
    const float all = ImGui::CalcTextSize(words.c_str()).x;
    for (float room = 30; room < all; room += 7) {
      for (const std::size_t most : {1U, 2U, 3U}) {
        const auto lines = label_lines(frame.theme, words, room, most);
        CAPTURE(room);
        CHECK(lines.size() <= most);
        for (const std::string& line : lines) {
          // Where not even dots find room they stand all the same.
          CHECK(ImGui::CalcTextSize(line.c_str()).x <= std::max(room, ImGui::CalcTextSize("…").x + 1));
        }
      }
    }
    CHECK(label_lines(frame.theme, words, all + 1, 3) == std::vector<std::string>{words});
    const auto two = label_lines(frame.theme, words, all * 0.6F, 3);
    REQUIRE(two.size() == 2);
    CHECK(two[0] + " " + two[1] == words); // all of it is there
    const auto cut = label_lines(frame.theme, words, all * 0.4F, 2);
    CHECK(cut.back().ends_with("…"));
    CHECK(width_of_label(frame.theme, two) <= all * 0.6F);
  }
}

TEST_CASE("words beside a scale move apart, no further than they must") {
  using Places = std::vector<float>;
  CHECK(moved_apart({}, 10, 0, 100).empty());
  CHECK(moved_apart({20, 50, 70}, 10, 0, 100) == Places{20, 50, 70}); // apart already
  CHECK(moved_apart({48, 52}, 10, 0, 100) == Places{45, 55});         // each gives way by the same
  CHECK(moved_apart({50, 50, 50}, 10, 0, 100) == Places{40, 50, 60});
  CHECK(moved_apart({50, 50, 62}, 10, 0, 100) == Places{44, 54, 64}); // and what they come upon goes along
  CHECK(moved_apart({2, 4, 50}, 10, 5, 100) == Places{5, 15, 50});    // no higher than the room
  CHECK(moved_apart({50, 97, 99}, 10, 0, 95) == Places{50, 85, 95});
  CHECK(moved_apart({5, 5, 5, 5}, 10, 5, 35) == Places{5, 15, 25, 35}); // just enough room
}

TEST_CASE("a tip stands beside what it speaks about, at any size of text") {
  const std::string words = "front, tier 2: Corks\n40 stitches on L20 to R20, columns 6 to 1\n"
                            "then 10 fewer: every 4th needle 3 times, every 3rd 3 times, every 4th 4 times;\n"
                            "1 stitch clear of the seams";
  const ScreenBox tier{250, 280, 450, 330};
  const ScreenBox drawn{200, 240, 500, 380};
  for (const float scale : {1.0F, 2.0F}) {
    Frame frame(scale);
    frame.theme.scale = scale;
    for (int again = 0; again < 3; ++again) { // a window has its size from the frame before
      ImGui::GetIO().MousePos = {350, 300};
      tip_beside(frame.theme, words, {tier, drawn});
      ImGui::EndFrame();
      ImGui::NewFrame();
    }
    const ImGuiWindow* const tip = ImGui::FindWindowByName("##Tooltip_00");
    REQUIRE(tip != nullptr);
    const ScreenBox box{tip->Pos.x, tip->Pos.y, tip->Pos.x + tip->Size.x, tip->Pos.y + tip->Size.y};
    CAPTURE(box.left);
    CAPTURE(box.top);
    CHECK(box.width() > 100);
    const bool beside =
        box.right <= drawn.left || box.left >= drawn.right || box.bottom <= drawn.top || box.top >= drawn.bottom;
    CHECK(beside);
    CHECK(box.left >= 0);
    CHECK(box.top >= 0);
    CHECK(box.right <= 800);
    CHECK(box.bottom <= 600);
  }
}

TEST_CASE("a piece is named together with those that are like it") {
  Yoke yoke;
  yoke.pieces = {{"front", {{40.0}}, {{20.0}}, ""}, {"sleeve", {{30.0}}, {{15.0}}, ""}, {"back", {}, {}, "front"}};
  CHECK(names_with_widths_of(yoke, 0) == "front and back");
  CHECK(names_with_widths_of(yoke, 1) == "sleeve");
}
