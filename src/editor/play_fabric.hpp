// The fabric that hangs on the needles while the knitting is played: stitches, floats where they lie, and what went
// wrong as it looks, drawn with few shapes since it grows with every key.
#pragma once

#include "editor/app.hpp"
#include "editor/theme.hpp"
#include "knitting/fabric.hpp"

#include <imgui.h>

namespace punchwright::editor {

struct BedPlace { // px
  float left = 0;
  float pitch = 1;
  Needle first;
  int needles = 1;
  [[nodiscard]] float x_of(Needle needle) const {
    return left + pitch * static_cast<float>(needle.position - first.position);
  }
};

struct PlayedColours {
  const Theme& theme;
  ColourSight sight;
  const Document& document;
};

// Hangs below the needles, the newest row uppermost: as the knitter sees it, purl side. Floats lie over the stitches
// that they pass and rise to the needles on which they were caught.
//
//     dropped          an open loop: nothing holds it
//     no stitch there  the row's yarn alone passes the gap
//     slipped          the stitch below it drawn up over the row
//     cast on          an eyelet in the stitch
void draw_played_fabric(ImDrawList& list, const PlayedColours& colours, const Fabric& fabric, const BedPlace& bed,
                        const ScreenBox& box);

} // namespace punchwright::editor
