// The print preview without a window: which sheet and page is looked at, how large, and what of it is seen.
// Pure functions, and the cache of pages, which are the writers' own.
#pragma once

#include "design/result.hpp"
#include "editor/canvas_layout.hpp"
#include "sheets/pages.hpp"
#include "sheets/writers.hpp"
#include "words/words.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::editor {

struct App;

enum class PageZoom { whole, width, own };

struct PreviewView {
  SheetKind kind = SheetKind::card;
  int page = 0; // from 0
  PageZoom zoom = PageZoom::whole;
  double px_per_mm = 0; // with a zoom of one's own
  Point corner;         // mm on the page: what lies in the room's upper left corner, where the page is larger
  ChartWishes chart;
  std::optional<int> only_card; // from 1; none: all
};

struct SheetKindInfo {
  SheetKind kind;
  const char* id;   // for tests and options
  const char* name; // on the button
};
inline constexpr std::array sheet_kinds = {SheetKindInfo{SheetKind::card, "card", noted("Card")},
                                           SheetKindInfo{SheetKind::chart, "chart", noted("Needle chart")},
                                           SheetKindInfo{SheetKind::steps, "steps", noted("Steps")},
                                           SheetKindInfo{SheetKind::leaflet, "leaflet", noted("Leaflet")},
                                           SheetKindInfo{SheetKind::pattern, "pattern", noted("Pattern chart")},
                                           SheetKindInfo{SheetKind::swatch, "swatch", noted("Orientation swatch")},
                                           SheetKindInfo{SheetKind::measure, "measure", noted("Measure your blank")}};

// What of a page is seen in a room of so many px, and where.
struct PageSight {
  double px_per_mm = 1;
  int left = 0; // px from the room's upper left corner
  int top = 0;
  int width = 0; // px of the page that are seen
  int height = 0;
  Point corner; // mm on the page: the upper left of what is seen
  bool operator==(const PageSight& other) const = default;
};
[[nodiscard]] PageSight sight_of(double page_width, double page_height, ScreenPoint room, const PreviewView& view);

// Another page, within the sheet, seen from its top; from its foot where one comes from below.
[[nodiscard]] PreviewView turned_to(PreviewView view, int page, int pages);
// The part that is seen moved by so many px; beyond the upper or lower edge the page is turned.
[[nodiscard]] PreviewView scrolled(PreviewView view, double page_width, double page_height, ScreenPoint room,
                                   ScreenPoint by, int pages);
// Larger or smaller about a place in the room.
[[nodiscard]] PreviewView zoomed(PreviewView view, double page_width, double page_height, ScreenPoint room,
                                 double factor, ScreenPoint about);

// The pages of the sheet that is shown, and the part that is seen as pixels. Kept while the preview is open.
struct PreviewCache {
  struct Key {
    std::uint64_t opening = 0;
    std::uint64_t revision = 0;
    SheetKind kind = SheetKind::card;
    bool stay_back = false;
    std::optional<int> only_card;
    bool operator==(const Key&) const = default;
  };
  std::optional<Key> made_for;
  std::vector<Sheet> pages;
  std::string trouble; // why there is no such sheet
  int cards = 0;       // of the design, whatever is chosen
  SheetPixels pixels;
  std::optional<PageSight> seen;
  int seen_page = -1;
  std::uint64_t serial = 0;   // grows with every new picture
  unsigned texture = 0;       // OpenGL's name for it, set by the window
  std::uint64_t uploaded = 0; // serial of the picture that the texture holds

  [[nodiscard]] int count() const { return static_cast<int>(pages.size()); }
};

// Brings the cache up to date while the preview is open, and lets go of the pages when it isn't. True where something
// was worked out.
bool refresh_preview(App& app);

} // namespace punchwright::editor
