// What is worked out from the design: strips, marks, the picture of the piece; and when.
#include "editor/actions.hpp"
#include "editor/piece_picture.hpp"

#include <algorithm>
#include <cstdlib>
#include <doctest/doctest.h>
#include <iterator>
#include <vector>

using namespace punchwright;
using namespace punchwright::editor;

namespace {

App app_with_two_contrasts() {
  App app = make_app();
  Document& design = app.work.design;
  design.grid = Grid(24, 4);
  for (int row = 0; row < 4; ++row) {
    for (int column = row % 2; column < 24; column += 2) {
      design.grid.set(column, row, true);
    }
  }
  design.yarns.push_back({'C', "Kelp", Colour{0x3f, 0x7a, 0x6b}});
  design.bands = {Band{2, 'A', 'B', {}}, Band{2, 'A', 'C', {}}};
  app.view.piece_box = {0, 0, 240, 200};
  return app;
}

} // namespace

TEST_CASE("inserted rows show as a strip between the bands, and at the join when the rows are knitted again") {
  App app = app_with_two_contrasts();
  refresh(app);
  REQUIRE(app.caches.strips.below.size() == 4);
  CHECK(app.caches.strips.below[2].count == 1);
  CHECK(app.caches.strips.below[2].yarn == 'A');
  CHECK(app.caches.strips.below[0].count == 0);
  CHECK(app.caches.strips.up_to == std::vector<int>{0, 0, 1, 1});
  Document settings = settings_of(app.work.design);
  settings.piece.times = 3;
  editor::apply(app, EditDesign{ChangeSettings{settings}});
  refresh(app);
  CHECK(app.caches.strips.below[0].count == 1);
  CHECK(app.caches.strips.count == 2);
}

TEST_CASE("nothing is worked out again until the design changes") {
  App app = app_with_two_contrasts();
  CHECK(refresh(app));
  CHECK_FALSE(refresh(app));
  editor::apply(app, MoveCursor{1, 0, false});
  CHECK_FALSE(refresh(app));
  editor::apply(app, Run{Command::toggle_stitch});
  CHECK(refresh(app));
  editor::apply(app, Run{Command::other_face});
  CHECK(refresh(app)); // the picture only
}

TEST_CASE("the piece shows the mend that waits to be taken, each choice of it, and is as it was when it is left") {
  App app = app_with_two_contrasts();
  app.work.design.grid.set_row_text(1, "#........#.#.#.#.#.#.#.#");
  refresh(app);
  const auto before = app.caches.piece.painter.pixels().rgb;
  editor::apply(app, Run{Command::mend});
  REQUIRE(app.session.mend.has_value());
  CHECK(refresh(app));
  const auto with_mend = app.caches.piece.painter.pixels().rgb;
  CHECK(with_mend != before);
  CHECK_FALSE(refresh(app));
  editor::apply(app, Run{Command::focus_drawing});
  CHECK(refresh(app));
  CHECK(app.caches.piece.painter.pixels().rgb == before);
  editor::apply(app, Run{Command::mend});
  editor::apply(app, Run{Command::set_down});
  refresh(app);
  CHECK(app.caches.piece.painter.pixels().rgb == with_mend);
}

TEST_CASE("a mend that leaves a row of one yarn shows the rows that are knitted then") {
  App app = app_with_two_contrasts();
  refresh(app);
  const auto rows = app.caches.rows.rows.size();
  Mended mended;
  mended.drawing = app.work.design.grid;
  mended.drawing.set_row_text(1, std::string(24, '.'));
  app.session.mend = ShownMend{mended, app.work.history.revision()};
  refresh(app);
  const PiecePixels shown = app.caches.piece.painter.pixels();
  CHECK(app.caches.rows.rows.size() == rows);
  Document design = app.work.design;
  design.grid = mended.drawing;
  const PiecePixels alone =
      picture_of_piece(design, app.work.profile, rows_to_knit(design, app.work.profile), Face::knit, 240, 200);
  CHECK(shown.height == alone.height);
  CHECK(shown.rgb == alone.rgb);
}

TEST_CASE("a float that is too long is marked where it is, round the edge too") {
  App app = make_app();
  app.work.design.grid = Grid(24, 1);
  app.work.design.bands = {Band{1, 'A', 'B', {}}};
  for (const int column : {4, 8, 12, 16, 20}) {
    app.work.design.grid.set(column, 0, true);
  }
  refresh(app); // 21 … 24 and 1 … 4: contrast passes behind 7 stitches
  REQUIRE_FALSE(app.caches.marks.empty());
  CHECK(app.caches.marks[0].first_column == 21);
  CHECK(app.caches.marks[0].last_column == 3);
}

namespace {

// Two bands, of which the upper one has no contrast.
App app_with_a_quiet_band() {
  App app = app_with_two_contrasts();
  app.work.design.bands = {Band{2, 'A', 'B', {}}, Band{2, 'A', {}, {}}};
  app.work.design.grid.set_row_text(2, std::string(24, '.'));
  app.work.design.grid.set_row_text(3, std::string(24, '.'));
  return app;
}

struct Place {
  int row, first, last, stitches;
  bool operator==(const Place&) const = default;
};

std::vector<Place> long_floats(const std::vector<Mark>& marks, const std::vector<Finding>& findings) {
  std::vector<Place> places;
  for (const Mark& mark : marks) {
    const Finding& finding = findings[static_cast<std::size_t>(mark.finding)];
    if (finding.id == FindingId::float_too_long && !finding.on_piece) {
      places.push_back({mark.row, mark.first_column, mark.last_column, finding.stitches});
    }
  }
  return places;
}

// What is shown before it is drawn, and what is there once it is.
void check_shown_as_drawn(App& app, const Action& drawn) {
  refresh(app);
  REQUIRE(app.caches.waiting.has_value());
  const std::vector<Place> shown = long_floats(app.caches.waiting->marks, app.caches.waiting->floats);
  const auto cloth = app.caches.piece.painter.pixels().rgb;
  CHECK_FALSE(shown.empty());
  CHECK(long_floats(app.caches.marks, app.caches.findings).empty());
  CHECK_FALSE(refresh(app)); // looked over once
  editor::apply(app, drawn);
  refresh(app);
  CHECK_FALSE(app.caches.waiting.has_value());
  CHECK(long_floats(app.caches.marks, app.caches.findings) == shown);
  CHECK(app.caches.piece.painter.pixels().rgb == cloth);
}

} // namespace

TEST_CASE("the floats of a shape are marked before the button is released, and the piece shows it") {
  for (const Command tool : {Command::tool_line, Command::tool_rectangle, Command::tool_ellipse}) {
    CAPTURE(info_of(tool).name);
    App app = app_with_two_contrasts();
    editor::apply(app, Run{tool});
    editor::apply(app, Run{Command::filled});
    refresh(app);
    const auto before = app.caches.piece.painter.pixels().rgb;
    app.view.pen = Pen::contrast;
    editor::apply(app, BeginStroke{Cell{18, 0}, false});
    refresh(app);
    editor::apply(app, StrokeTo{Cell{30, 0}}); // over the join
    refresh(app);
    CHECK(app.caches.piece.painter.pixels().rgb != before);
    editor::apply(app, Run{Command::focus_drawing}); // Escape
    refresh(app);
    CHECK_FALSE(app.caches.waiting.has_value());
    CHECK(app.caches.piece.painter.pixels().rgb == before);
    editor::apply(app, BeginStroke{Cell{18, 0}, false});
    editor::apply(app, StrokeTo{Cell{30, 0}});
    check_shown_as_drawn(app, EndStroke{});
  }
}

TEST_CASE("the floats of what hangs over the drawing are marked where it hangs, and move with it") {
  App app = app_with_two_contrasts();
  refresh(app);
  Grid patch(9, 1);
  patch.set_row_text(0, "#########");
  app.view.cursor = Cell{4, 0};
  editor::apply(app, HangOver{patch, "motif", false});
  refresh(app);
  const auto first = long_floats(app.caches.waiting->marks, app.caches.waiting->floats);
  REQUIRE(first.size() == 1);
  editor::apply(app, MoveCursor{3, 1, false});
  refresh(app);
  const auto moved = long_floats(app.caches.waiting->marks, app.caches.waiting->floats);
  REQUIRE(moved.size() == 1);
  CHECK(moved[0].row == 1);
  CHECK(moved[0].first == first[0].first + 3);
  CHECK(moved[0].stitches == first[0].stitches);
  check_shown_as_drawn(app, SetDown{});
}

TEST_CASE("a shape shows no contrast on the piece where its row has none, as none is drawn there") {
  App app = app_with_a_quiet_band();
  editor::apply(app, Run{Command::tool_rectangle});
  app.view.pen = Pen::contrast;
  editor::apply(app, BeginStroke{Cell{3, 3}, false});
  editor::apply(app, StrokeTo{Cell{12, 3}});
  refresh(app);
  REQUIRE(app.caches.waiting.has_value());
  CHECK(app.caches.waiting->design.grid == app.work.design.grid);
}

TEST_CASE("letters are looked over where the cursor is, and again only when they or the place are others") {
  App app = app_with_two_contrasts();
  app.view.tab = Tab::tools;
  for (int row = 0; row < 4; ++row) { // 6 stitches of main, then one of contrast: none too long
    app.work.design.grid.set_row_text(row, "#.....#.....#.....#.....");
  }
  editor::apply(app, TypeLettering{"l", LetterHeight::five});
  refresh(app);
  REQUIRE(app.caches.lettering_floats_for.has_value());
  CHECK(app.caches.lettering_floats_for->floating->corner == app.view.cursor);
  app.caches.lettering_floats.letters = "kept"; // stays as long as nothing changes
  refresh(app);
  CHECK(app.caches.lettering_floats.letters == "kept");
  editor::apply(app, MoveCursor{1, 0, false});
  refresh(app);
  CHECK(app.caches.lettering_floats.places.empty());
  CHECK(app.caches.lettering_floats.letters.empty());
  app.caches.lettering_floats.letters = "kept";
  editor::apply(app, TypeLettering{"----------------", LetterHeight::five});
  refresh(app);
  CHECK(app.caches.lettering_floats.letters != "kept");
}

TEST_CASE("a float that the piece shows as it is on the repeat is one entry of the list, and counts once") {
  App app = make_app();
  app.work.design.grid = Grid(24, 1);
  app.work.design.bands = {Band{1, 'A', 'B', {}}};
  app.work.design.piece.stitches = 72;
  for (const int column : {4, 8, 12, 16, 20}) {
    app.work.design.grid.set(column, 0, true);
  }
  refresh(app);
  const auto floats = std::ranges::count(app.caches.findings, FindingId::float_too_long, &Finding::id);
  CHECK(floats == 2); // columns 22 to 4 of the repeat, and the same where repeats meet on the bed
  CHECK(app.caches.faults == 1);
  REQUIRE_FALSE(app.caches.listed.empty());
  CHECK(app.caches.listed[0].on_piece == 1);
}

TEST_CASE("a float of the repeat leads to its place on the needles, and back, and stays one entry") {
  App app = make_app();
  app.work.design.grid = Grid(24, 1);
  app.work.design.bands = {Band{1, 'A', 'B', {}}};
  app.work.design.piece.stitches = 72;
  for (const int column : {4, 8, 12, 16, 20}) {
    app.work.design.grid.set(column, 0, true);
  }
  refresh(app);
  editor::apply(app, Run{Command::next_finding});
  REQUIRE(app.view.finding == 0);
  editor::apply(app, Run{Command::finding_on_needles});
  CHECK(app.view.finding == 1);
  CHECK(app.caches.findings[1].on_piece);
  CHECK(listed_for(app.caches, app.view.finding) == &app.caches.listed[0]);
  const auto mark = std::ranges::find(app.caches.marks, 1, &Mark::finding);
  REQUIRE(mark != app.caches.marks.end());
  CHECK(app.view.cursor == Cell{mark->first_column, 0});
  editor::apply(app, Run{Command::finding_on_needles});
  CHECK(app.view.finding == 0);
  // From there the next one is the next of the list.
  editor::apply(app, Run{Command::finding_on_needles});
  editor::apply(app, Run{Command::next_finding});
  CHECK(app.view.finding == app.caches.listed[1].finding());
  // A finding that isn't on the piece as well leads nowhere.
  const int before = app.view.finding;
  editor::apply(app, Run{Command::finding_on_needles});
  CHECK(app.view.finding == before);
}

TEST_CASE("what is said of the bed is marked at the columns of both end needles, from bottom to top") {
  App app = make_app();
  Document& design = app.work.design;
  design.piece.stitches = 70; // L35 to R35
  refresh(app);
  const auto note = std::ranges::find(app.caches.findings, FindingId::repeat_on_needles, &Finding::id);
  REQUIRE(note != app.caches.findings.end());
  const auto index = static_cast<int>(note - app.caches.findings.begin());
  std::vector<Mark> marks;
  std::ranges::copy_if(app.caches.marks, std::back_inserter(marks),
                       [&](const Mark& mark) { return mark.finding == index; });
  REQUIRE(marks.size() == 2);
  CHECK(marks[0].first_column == note->first_column);
  CHECK(marks[0].needle == Needle{-35});
  CHECK(marks[1].first_column == note->last_column);
  CHECK(marks[1].needle == Needle{34});
  CHECK(marks[0].row == 0);
  CHECK(marks[0].last_row == design.grid.height() - 1);
  editor::apply(app, ChooseFinding{index});
  CHECK(app.view.tab == Tab::piece);
}

TEST_CASE("a pair of yarns that is too alike is marked in its bands") {
  App app = app_with_two_contrasts();
  app.work.design.yarns[2].colour = app.work.design.yarns[0].colour;
  refresh(app);
  const auto found = std::ranges::find(app.caches.findings, FindingId::yarns_too_alike, &Finding::id);
  REQUIRE(found != app.caches.findings.end());
  const auto mark =
      std::ranges::find(app.caches.marks, static_cast<int>(found - app.caches.findings.begin()), &Mark::finding);
  REQUIRE(mark != app.caches.marks.end());
  CHECK(mark->row == 2);
  CHECK(mark->last_row == 3);
  editor::apply(app, ChooseFinding{static_cast<int>(found - app.caches.findings.begin())});
  CHECK(app.view.cursor.row == 2);
}

TEST_CASE("the chosen finding stays chosen while others come and go") {
  App app = app_with_two_contrasts();
  for (int column = 0; column < 24; ++column) {
    app.work.design.grid.set(column, 3, column == 5);
  }
  refresh(app);
  const auto found = std::ranges::find(app.caches.findings, 3, &Finding::row);
  REQUIRE(found != app.caches.findings.end());
  const Finding chosen = *found;
  editor::apply(app, ChooseFinding{static_cast<int>(found - app.caches.findings.begin())});
  for (int column = 0; column < 24; ++column) {
    editor::apply(app, EditDesign{SetCells{{Cell{column, 0}}, column == 7}}); // another too long float, in row 1
  }
  refresh(app);
  REQUIRE(app.view.finding >= 0);
  CHECK(app.caches.findings[static_cast<std::size_t>(app.view.finding)].row == chosen.row);
}

TEST_CASE(
    "the piece shows the knit side as drawn and the purl side mirrored, row 1 lowest, in the gauge's proportion") {
  App app = make_app();
  Document& design = app.work.design;
  design.piece.end_needles = EndNeedles::never;
  design.grid.set(0, 0, true); // the lowest left stitch on the knit side
  const RowsToKnit rows = rows_to_knit(design, app.work.profile);
  const auto at = [](const PiecePixels& picture, int x, int y) {
    const auto place =
        (static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) + static_cast<std::size_t>(x)) * 3;
    return Colour{picture.rgb[place], picture.rgb[place + 1], picture.rgb[place + 2]};
  };
  const Colour ink = design.yarns[1].colour;
  const Colour oat = design.yarns[0].colour;
  // 24 stitches of 6.25 mm and 24 rows of 5 mm: 150 × 120 mm, here 2 px a stitch across.
  const PiecePixels knit = picture_of_piece(design, app.work.profile, rows, Face::knit, 48, 400);
  REQUIRE(knit.width == 48);
  CHECK(std::abs(knit.height - 38) <= 1);
  CHECK(at(knit, 0, knit.height - 1) == ink);
  CHECK(at(knit, 47, knit.height - 1) == oat);
  CHECK(at(knit, 0, 0) == oat);
  const PiecePixels purl = picture_of_piece(design, app.work.profile, rows, Face::purl, 48, 400);
  CHECK(at(purl, 47, purl.height - 1) == ink);
  CHECK(at(purl, 0, purl.height - 1) == oat);
}

TEST_CASE("a picture smaller than its stitches shows their mixture in light, without stripes") {
  App app = make_app();
  Document& design = app.work.design;
  design.piece.end_needles = EndNeedles::never;
  design.yarns[0].colour = Colour{255, 255, 255};
  design.yarns[1].colour = Colour{0, 0, 0};
  for (int row = 0; row < design.grid.height(); ++row) {
    for (int column = 0; column < design.grid.width(); column += 2) {
      design.grid.set(column, row, true);
    }
  }
  const RowsToKnit rows = rows_to_knit(design, app.work.profile);
  const PiecePixels picture = picture_of_piece(design, app.work.profile, rows, Face::knit, 12, 400);
  REQUIRE(picture.width == 12);
  // Half the light of white is 188 of 255 (sRGB, IEC 61966-2-1).
  CHECK(std::ranges::all_of(picture.rgb, [](unsigned char value) { return value >= 187 && value <= 189; }));
}

TEST_CASE("all text has at least 4.5:1 on the grounds that it stands on") {
  const Theme theme;
  for (const Colour ground : {theme.ground, theme.panel, theme.field, theme.strip, theme.accent_soft}) {
    CHECK(contrast_ratio(theme.text, ground) >= 4.5);
    CHECK(contrast_ratio(theme.accent, ground) >= 4.5);
  }
  for (const Colour ground : {theme.ground, theme.panel, theme.field}) {
    for (const Colour text : {theme.quiet_text, theme.fault, theme.warning, theme.note, theme.good}) {
      CAPTURE(hex_of(text));
      CHECK(contrast_ratio(text, ground) >= 4.5);
    }
  }
  CHECK(contrast_ratio(theme.on_accent, theme.accent) >= 4.5);
  CHECK(contrast_ratio(theme.text, theme.button_hover) >= 4.5);
}
