// Other yarns for a pair: which are tried, and what taking one makes of the design.
#include "editor/actions.hpp"
#include "editor/bed_marks.hpp"
#include "editor/drawing_parts.hpp"
#include "editor/stitch_form.hpp"
#include "editor/yarn_pairs.hpp"
#include "rules/findings.hpp"

#include <algorithm>
#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

// Two bands of A and B with one of A and C between them.
Document three_bands() {
  Document design = blank_document(12, 9);
  design.yarns.push_back({'C', "Crab", {0xc4, 0x3d, 0x32}});
  design.bands = {Band{3, 'A', 'B', {}}, Band{3, 'A', 'C', {}}, Band{3, 'A', 'B', {}}};
  return design;
}

const YarnPair& pair_named(const std::vector<YarnPair>& pairs, const std::string& contrast) {
  const auto found = std::ranges::find(pairs, contrast, [](const YarnPair& pair) { return pair.contrast.name; });
  REQUIRE(found != pairs.end());
  return *found;
}

} // namespace

TEST_CASE("the pair as it is comes first, then own yarns and the palette, with their ratios, none twice") {
  const Document design = three_bands();
  const auto pairs = pairs_to_try(design, 'A', 'B', PairChange::contrast, "");
  CHECK(pairs.front().present);
  CHECK(pairs.front().contrast.name == "Ink");
  CHECK(pairs[1].contrast.name == "Crab");
  CHECK(std::ranges::count(pairs, "Crab", [](const YarnPair& pair) { return pair.contrast.name; }) == 1);
  for (const YarnPair& pair : pairs) {
    CHECK(pair.main.name == "Oat");
    CHECK(pair.ratio == contrast_ratio(pair.main.colour, pair.contrast.colour));
  }
  const auto mains = pairs_to_try(design, 'A', 'B', PairChange::main, "fog");
  REQUIRE(mains.size() == 2);
  CHECK(mains[1].main.name == "Fog");
  CHECK(mains[1].contrast.name == "Ink");
}

TEST_CASE("a yarn that no other band uses changes in its place; one that another band uses stays for that") {
  const Document design = three_bands();
  const auto contrasts = pairs_to_try(design, 'A', 'B', PairChange::contrast, "");
  const YarnsAndBands renamed = with_pair(design, 'A', 'B', pair_named(contrasts, "Kelp"));
  CHECK(renamed.yarns.size() == 3);
  CHECK(renamed.yarns[1].name == "Kelp");
  CHECK(renamed.bands == design.bands);

  YarnPair other_main = contrasts.front();
  other_main.main = {"Fog", {0xc4, 0xca, 0xcc}};
  const YarnsAndBands added = with_pair(design, 'A', 'B', other_main);
  REQUIRE(added.yarns.size() == 4);
  CHECK(added.yarns[3].key == 'D');
  CHECK(added.bands[0].main == 'D');
  CHECK(added.bands[1].main == 'A');
  CHECK(added.bands[2].main == 'D');

  const YarnsAndBands own = with_pair(design, 'A', 'B', pair_named(contrasts, "Crab"));
  CHECK(own.yarns == design.yarns);
  CHECK(own.bands[0].contrast == 'C');
}

TEST_CASE("taking a pair is one step, and trying changes nothing") {
  App app = make_app();
  app.work.design = three_bands();
  const Document before = app.work.design;
  editor::apply(app, Run{Command::try_pairs});
  REQUIRE(std::holds_alternative<PairsDialog>(app.session.dialog));
  CHECK(app.work.design == before);
  YarnPair other = pairs_to_try(before, 'A', 'B', PairChange::contrast, "")[1];
  other.main = {"Fog", {0xc4, 0xca, 0xcc}};
  editor::apply(app, TakePair{'A', 'B', other});
  CHECK(app.work.design != before);
  CHECK(app.work.history.done() == 1);
  editor::apply(app, Run{Command::undo});
  CHECK(app.work.design == before);
}

TEST_CASE("the yarns of the cursor's band are exchanged, and only they") {
  App app = make_app();
  app.work.design = three_bands();
  app.view.cursor = {0, 4};
  editor::apply(app, Run{Command::swap_yarns});
  CHECK(app.work.design.bands[1].main == 'C');
  CHECK(app.work.design.bands[1].contrast == 'A');
  CHECK(app.work.design.bands[0].main == 'A');
}

TEST_CASE("how colours are seen is no part of the design") {
  App app = make_app();
  editor::apply(app, Run{Command::sight_lightness});
  CHECK(app.view.sight == ColourSight::lightness);
  CHECK(app.work.history.saved());
  CHECK(seen_yarn(app, 'B').red == seen_yarn(app, 'B').blue);
  editor::apply(app, Run{Command::sight_lightness});
  CHECK(app.view.sight == ColourSight::as_is);
}

// 63 stitches stand on L31 to R32 (trade notes, section 1: common practice).
TEST_CASE("seams lie at the ends of the piece, the middle between L1 and R1") {
  Document design = blank_document(24, 4);
  design.piece.stitches = 63;
  design.piece.edge = 2;
  const Profile& profile = *built_in_profile("bulky-card-24");
  const BedMarks purl = bed_marks_of(design, profile, Face::purl);
  CHECK(purl.middle == 31);
  CHECK(purl.seam == 2);
  CHECK(bed_marks_of(design, profile, Face::knit).middle == 32);
  // L12 knits drawn column 24, and so R1 column 12; L31 lies 19 to the left of L12.
  CHECK(purl.middle_column == 11);
  CHECK(purl.left_seam == std::vector<int>{(23 + 19) % 24, (23 + 18) % 24});
  CHECK(purl.right_seam.size() == 2);
}

TEST_CASE("a flat cell becomes a stitch without a jump while it grows") {
  CHECK(form_shown(6) == 0);
  CHECK(form_shown(60) == 1);
  for (float cell = 4; cell < 64; cell *= 1.18F) { // a notch of the wheel
    const float step = form_shown(cell * 1.18F) - form_shown(cell);
    CHECK(step >= 0);
    CHECK(step < 0.4F);
  }
}

TEST_CASE("the drawing's stitch has the piece's form") {
  const StitchForm form;
  const auto pixels = stitch_pixels(form);
  const auto at = [&](int texture, int x, int y, int part) {
    return pixels[static_cast<std::size_t>(texture)][static_cast<std::size_t>((y * StitchForm::size + x) * 4 + part)];
  };
  CHECK(at(0, 32, 60, 0) < 120); // between the legs one sees into the cloth
  CHECK(at(0, 12, 30, 0) > 180); // on a leg
  CHECK(at(0, 12, 30, 3) == 255);
  CHECK(at(1, 32, 10, 3) == 0);   // no foot low in the stitch
  CHECK(at(1, 32, 62, 3) == 255); // the next stitch's foot comes out at its head
}
