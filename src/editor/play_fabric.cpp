// Row by row downwards from the needles: first the stitches, then the floats that lie over them.
#include "editor/play_fabric.hpp"

#include "editor/colour_sight.hpp"
#include "editor/widgets.hpp"
#include "machine/placement.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace punchwright::editor {
namespace {

constexpr float least_for_strands = 4; // px: narrower stitches show their colours only

class Painter {
public:
  Painter(ImDrawList& list, const PlayedColours& colours, const Fabric& fabric, const BedPlace& bed,
          const ScreenBox& box)
      : list_(list), colours_(colours), fabric_(fabric), bed_(bed), box_(box) {
    const Gauge& gauge = colours.document.gauge;
    tall_ = std::max(2.0F, std::round(bed.pitch * static_cast<float>(gauge.row_mm() / gauge.stitch_mm())));
    gap_ = bed.pitch > 5 ? 1.0F : 0.0F;
  }

  void run() {
    float top = box_.top;
    for (int row = fabric_.rows() - 1; row >= 0 && top < box_.bottom; --row, top += tall_) {
      add_stitches(row, top);
      if (std::min(bed_.pitch, tall_) >= least_for_strands) {
        add_floats(row, top);
      }
    }
  }

private:
  [[nodiscard]] ImU32 yarn(char key) const {
    return ink(seen_as(yarn_of(colours_.document, key).colour, colours_.sight));
  }
  [[nodiscard]] bool on_fabric(Needle needle) const {
    const int place = needle.position - fabric_.leftmost().position;
    return place >= 0 && place < static_cast<int>(fabric_.row(0).size());
  }
  [[nodiscard]] float thread() const { return std::max(1.0F, std::min(bed_.pitch, tall_) * 0.22F); }

  void add_stitches(int row, float top) {
    for (int place = 0; place < bed_.needles; ++place) {
      const Needle needle{bed_.first.position + place};
      if (on_fabric(needle)) {
        add_cell(row, needle,
                 {std::round(bed_.x_of(needle)), top, std::round(bed_.x_of(Needle{needle.position + 1})) - gap_,
                  std::min(top + tall_, box_.bottom) - gap_});
      }
    }
  }

  void add_cell(int row, Needle needle, const ScreenBox& cell) {
    int below = row;
    while (below > 0 && fabric_.at(below, needle).yarn == 0 && fabric_.at(below, needle).slipped) {
      --below; // a slipped stitch is drawn up from there
    }
    const Made& made = fabric_.at(below, needle);
    if (made.yarn == 0) {
      add_ladder(row, needle, cell);
    } else if (made.dropped) {
      add_open_loop(made.yarn, cell);
    } else {
      list_.AddRectFilled({cell.left, cell.top}, {cell.right, cell.bottom}, yarn(made.yarn));
      if (made.cast_on && bed_.pitch >= least_for_strands) {
        const ScreenPoint middle = cell.middle();
        const float radius = std::min(cell.width(), cell.height()) * 0.25F;
        list_.AddCircleFilled({middle.x, middle.y}, radius, ink(colours_.theme.panel), 8);
      }
    }
  }

  // Open at the top, where nothing holds it.
  void add_open_loop(char key, const ScreenBox& cell) {
    const ScreenPoint middle = cell.middle();
    const float radius = std::min(cell.width(), cell.height()) * 0.35F;
    constexpr float pi = 3.14159265F;
    list_.PathArcTo({middle.x, middle.y}, radius, -0.3F * pi, 1.3F * pi, 10);
    list_.PathStroke(yarn(key), 0, thread());
  }

  // Between stitches of its row the yarn goes on; beyond the row's ends there is nothing.
  void add_ladder(int row, Needle needle, const ScreenBox& cell) {
    char left = 0;
    char right = 0;
    for (int place = 0; place < bed_.needles; ++place) {
      const Needle one{bed_.first.position + place};
      const char key = on_fabric(one) ? fabric_.at(row, one).yarn : '\0';
      if (key != 0 && one < needle) {
        left = key;
      } else if (key != 0 && right == 0 && needle < one) {
        right = key;
      }
    }
    if (left != 0 && right != 0) {
      const float y = cell.middle().y;
      list_.AddLine({cell.left - gap_, y}, {cell.right + gap_, y}, yarn(left), thread());
    }
  }

  void add_floats(int row, float top) {
    for (const FabricFloat& one : fabric_.floats(row)) {
      std::vector<Needle> caught = one.caught;
      std::ranges::sort(caught);
      add_strand(one.yarn, bed_.x_of(one.first) - bed_.pitch * 0.3F, bed_.x_of(one.last) + bed_.pitch * 1.3F, top,
                 caught);
    }
    for (const char key : fabric_.loose(row)) {
      add_strand(key, bed_.x_of(bed_.first), bed_.x_of(Needle{bed_.first.position + bed_.needles}), top, {});
    }
  }

  // Low across the row, up to the upper edge where it was caught; with an edge, to be seen on its own colour.
  void add_strand(char key, float from, float to, float top, const std::vector<Needle>& caught) {
    const float low = top + tall_ * 0.6F;
    const float high = top + tall_ * 0.08F;
    if (low > box_.bottom) {
      return;
    }
    std::vector<ImVec2> points = {{from, low}};
    for (const Needle needle : caught) {
      const float x = bed_.x_of(needle) + bed_.pitch / 2;
      points.emplace_back(x - bed_.pitch * 0.45F, low);
      points.emplace_back(x, high);
      points.emplace_back(x + bed_.pitch * 0.45F, low);
    }
    points.emplace_back(to, low);
    const int count = static_cast<int>(points.size());
    list_.AddPolyline(points.data(), count, ink(colours_.theme.text, 0.55F), 0, thread() + 2);
    list_.AddPolyline(points.data(), count, yarn(key), 0, thread());
  }

  ImDrawList& list_;
  const PlayedColours& colours_;
  const Fabric& fabric_;
  const BedPlace& bed_;
  const ScreenBox& box_;
  float tall_ = 1;
  float gap_ = 0;
};

} // namespace

void draw_played_fabric(ImDrawList& list, const PlayedColours& colours, const Fabric& fabric, const BedPlace& bed,
                        const ScreenBox& box) {
  if (fabric.rows() == 0) {
    list.AddText({box.left, box.top}, ink(colours.theme.quiet_text), tr("Nothing is knitted yet"));
    return;
  }
  list.PushClipRect({bed.left, box.top}, {box.right, box.bottom}, true);
  Painter(list, colours, fabric, bed, box).run();
  list.PopClipRect();
}

} // namespace punchwright::editor
