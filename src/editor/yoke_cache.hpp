// What follows from the open yoke: the plan of all sizes, what is found, and of the size that is shown its stitches as
// a picture and the shapes of each view. Made anew only when the yoke changes or another size is shown.
#pragma once

#include "editor/colour_sight.hpp"
#include "editor/yoke_search.hpp"
#include "editor/yoke_view.hpp"
#include "editor/yoke_work.hpp"
#include "pieces/yoke_plan.hpp"
#include "rules/findings.hpp"

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::editor {

struct App;

// Of a size, with which it would fit.
struct OfferedWidth {
  std::size_t size = 0;
  WidthChange change;
};

struct YokeFinding {
  Severity severity = Severity::warning;
  std::string words;
  std::string remedy;                 // empty: the words say it
  std::optional<std::size_t> size{};  // none: of all sizes; of several, the first
  int piece = -1;                     // -1: of all; of a seam the piece on its left
  int tier = -1;                      // -1: of all
  bool seam = false;                  // between that piece and the next
  bool can_split = false;             // splitting the pieces would mend it
  bool rows = false;                  // other plain rows would mend it
  std::vector<std::size_t> sizes{};   // where it is of several
  double tolerance = 0;               // would mend it; 0: none does
  bool less_not_known = false;        // whether a smaller tolerance would, or one at all
  std::vector<OfferedWidth> widths{}; // would mend it
};

// Why a size has no plan, as far as is known.
enum class WhyNoPlan { none, too_wide, not_known_yet, nothing_fits, gave_up };
struct SizeTrouble {
  WhyNoPlan why = WhyNoPlan::none;
  std::optional<WouldFit> would_fit; // where nothing fits; none: it is being worked out
};

// A part of the picture at its place in a view, mm; y upwards, u and v from 0 to 1, v downwards.
struct YokeCorner {
  float x = 0;
  float y = 0;
  float u = 0;
  float v = 0;
};
struct YokeQuad {
  std::array<YokeCorner, 4> corners; // round it, from the lower left
};

// One tier of one piece in a flat view, mm.
struct YokeBlock {
  std::size_t piece = 0;
  std::size_t tier = 0;
  float left = 0;
  float right = 0;
  float bottom = 0;
  float pattern_top = 0; // above it the plain rows
  float shaped = 0;      // above it those on the stitches that are left; on the bed they hang where they hung
  float hung = 0;        // up to it they hang so; then the work is off the machine
  float hung_again = 0;  // above it they hang between these, where the next tier goes on
  bool stays = false;    // on its needles, all the while
  float top = 0;
  float then_left = 0;
  float then_right = 0;
  bool narrows_at_once = false; // laid flat, so does the row after the decreases
  float shaped_left() const { return narrows_at_once ? then_left : left; }
  float shaped_right() const { return narrows_at_once ? then_right : right; }
};

struct YokeSeamLine {
  std::size_t tier = 0;
  std::size_t left = 0; // the piece on its left
  float x0 = 0;
  float y0 = 0;
  float x1 = 0;
  float y1 = 0;
};

constexpr std::size_t quads_of_block = 4; // in a flat view, the uppermost last

// A view in mm.
struct YokeShape {
  std::vector<YokeQuad> quads;
  std::vector<YokeBlock> blocks;
  std::vector<YokeSeamLine> seams;
  float width = 0; // all of it, from 0
  float height = 0;
};

// All stitches of the shown size, a pixel each; the lowest row last. In a row the pieces of a tier follow each other.
struct YokePicture {
  int width = 0;
  int height = 0;
  std::vector<unsigned char> rgb;
  std::vector<std::vector<int>> left; // [tier][piece]: its first pixel, seam stitches included
  std::uint64_t serial = 0;
  unsigned texture = 0; // OpenGL's name for it, set by the window
  std::uint64_t uploaded = 0;
};

struct YokeCache {
  std::uint64_t opening = 0;
  std::uint64_t revision = 0;
  std::uint64_t planned = 0;                         // how often
  std::vector<std::optional<SizePlan>> sizes;        // none: nothing fits, as far as is known
  std::vector<SizeTrouble> troubles;                 // of each size
  std::vector<std::size_t> waiting;                  // sizes that the search is for
  std::shared_ptr<YokeSearch> search;                // none: not begun, or done
  std::vector<std::shared_ptr<YokeSearch>> given_up; // until their threads have ended
  std::uint64_t looked_at = 0;                       // `planned` when the search was last asked for
  std::vector<LoopCheck> loops;
  std::vector<YokeFinding> findings;            // the gravest first
  LengthUnit lengths = LengthUnit::centimetres; // in which they are said
  std::vector<int> heights;                     // of the shown size: see tier_heights()
  std::vector<double> row_mm;                   // of the shown size: how high each row begins, one more at the end
  std::optional<std::size_t> size;              // for which picture and shapes are
  ColourSight sight = ColourSight::as_is;
  YokePicture picture;
  YokeShape flat;
  YokeShape worn;                 // its middle at the middle
  std::vector<YokeShape> on_bed;  // by piece; x in needles from the bed's left end
  std::vector<std::string> tiers; // what each tier's repeat is called
};

// Brings it up to date; true where something was worked out.
bool refresh_yoke(App& app);

// What the search has found.
void take_yoke_answers(App& app, std::vector<SizeAnswer> answers);

// The plan of the size that is shown; null where nothing fits.
[[nodiscard]] const SizePlan* shown_plan(const App& app);

// Parts of it, for tests and for refresh_yoke().
[[nodiscard]] YokePicture picture_of(const OpenedYoke& opened, const SizePlan& plan, std::size_t size,
                                     ColourSight sight);
[[nodiscard]] YokeShape flat_shape(const OpenedYoke& opened, const SizePlan& plan, const YokePicture& picture,
                                   const std::vector<double>& row_mm);
[[nodiscard]] YokeShape worn_shape(const OpenedYoke& opened, const SizePlan& plan, const YokePicture& picture,
                                   const std::vector<double>& row_mm);
[[nodiscard]] YokeShape bed_shape(const OpenedYoke& opened, const SizePlan& plan, const YokePicture& picture,
                                  const std::vector<double>& row_mm, std::size_t piece);
// A piece on its bed, with so many mm between its parts wherever the work is off the machine from tier to tier: between
// the rows on the needles where a tier hung, and those that set up the next one.
[[nodiscard]] YokeShape parted(YokeShape on_bed, float gap);
[[nodiscard]] std::vector<YokeFinding> yoke_findings(const OpenedYoke& opened, const YokeCache& cache, LengthUnit unit);

} // namespace punchwright::editor
