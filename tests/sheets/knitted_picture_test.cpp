// The fabric of the machine as a picture: what is right looks as planned, what is wrong as it would on the cloth.
#include "knitting/fabric.hpp"
#include "plan/knit_steps.hpp"
#include "sheets/knitted_picture.hpp"
#include "support/builders.hpp"
#include "support/machines.hpp"

#include <algorithm>
#include <doctest/doctest.h>

using namespace punchwright;
using test::drawn;

namespace {

Profile with_two_feeders() {
  return test::by_hand();
}

Document small() {
  Document document = drawn({"........", "..####..", "#......#"});
  document.piece.stitches = 8;
  document.piece.first_column = 1;
  document.gauge = {20.0, 20.0}; // cells of the same size both ways
  return document;
}

// Middle of a cell, line 0 uppermost.
Colour middle(const FabricPicture& picture, const Document& document, int rows, int column, int line) {
  const int columns = stitches_of(document);
  const int x = (2 * column + 1) * picture.width / (2 * columns);
  const int y = (2 * line + 1) * picture.height / (2 * rows);
  const auto at =
      3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) + static_cast<std::size_t>(x));
  return {picture.rgb[at], picture.rgb[at + 1], picture.rgb[at + 2]};
}

bool same_cell(const FabricPicture& one, const FabricPicture& other, int rows, int columns, int column, int line) {
  for (int y = line * one.height / rows; y < (line + 1) * one.height / rows; ++y) {
    const auto row = static_cast<std::size_t>(y) * static_cast<std::size_t>(one.width) * 3;
    const auto from = row + static_cast<std::size_t>(column * one.width / columns) * 3;
    const auto to = row + static_cast<std::size_t>((column + 1) * one.width / columns) * 3;
    if (!std::equal(one.rgb.begin() + static_cast<std::ptrdiff_t>(from),
                    one.rgb.begin() + static_cast<std::ptrdiff_t>(to),
                    other.rgb.begin() + static_cast<std::ptrdiff_t>(from))) {
      return false;
    }
  }
  return true;
}

double share_of(const FabricPicture& picture, Colour colour) {
  std::size_t found = 0;
  for (std::size_t at = 0; at < picture.rgb.size(); at += 3) {
    found += Colour{picture.rgb[at], picture.rgb[at + 1], picture.rgb[at + 2]} == colour ? 1 : 0;
  }
  return static_cast<double>(found) * 3 / static_cast<double>(picture.rgb.size());
}

Knitting knitted(const Document& document, const std::vector<MachineAction>& more) {
  Knitting knitting = begin_knitting(machine_as_found(with_two_feeders(), Side::right));
  const NeedleSpan all{first_needle_of(document), last_needle_of(document)};
  std::vector<MachineAction> actions{HangOn{all, 'A'}, ThreadYarn{1, 'A'}, KnitPass{}, KnitPass{}};
  actions.insert(actions.end(), more.begin(), more.end());
  for (const MachineAction& action : actions) {
    REQUIRE(knit_on(knitting, action));
  }
  return knitting;
}

FabricPicture picture_of(const Fabric& fabric, const Document& document, Face side) {
  auto picture = knitted_picture(fabric, document, side);
  REQUIRE(picture.ok());
  return std::move(picture).value();
}

const MachineAction two_colour = SetKnitting{KnitSetting::two_colour};

} // namespace

TEST_CASE("the steps as planned give the picture of the planned cloth, the setting-up below it, on both sides") {
  const Document document = small();
  const Profile profile = with_two_feeders();
  const RowsToKnit rows = rows_to_knit(document, profile);
  const StepsKnitted done = knit_steps(steps_of(document, profile, rows), document, profile, nullptr);
  REQUIRE(done.refused_step < 0);
  const int height = done.knitting.fabric.rows();
  CHECK(height == 1 + 3 + 1); // a plain row before and behind
  for (const Face side : {Face::knit, Face::purl}) {
    const FabricPicture planned = fabric_picture(document, profile, side).value();
    const FabricPicture picture = picture_of(done.knitting.fabric, document, side);
    for (int line = 0; line < 3; ++line) {
      for (int column = 0; column < 8; ++column) {
        CHECK(middle(picture, document, height, column, line + 1) == middle(planned, document, 3, column, line));
      }
    }
  }
}

TEST_CASE("a dropped stitch is an open loop, and a ladder in the row that met no yarn") {
  const Document document = small();
  const Needle dropped{0}; // R1
  const Knitting good = knitted(document, {KnitPass{}, KnitPass{}});
  const Knitting bad = knitted(document, {two_colour, MoveNeedles{{{dropped, dropped}}, NeedlePosition::upper},
                                          KnitPass{}, SetKnitting{}, KnitPass{}});
  REQUIRE(bad.fabric.any_dropped());
  const FabricPicture right = picture_of(good.fabric, document, Face::purl);
  const FabricPicture wrong = picture_of(bad.fabric, document, Face::purl);
  const int column = 4;                                  // L4 to R4, as the knitter sees them
  CHECK_FALSE(same_cell(right, wrong, 4, 8, column, 2)); // the loop that was let go
  CHECK_FALSE(same_cell(right, wrong, 4, 8, column, 1)); // no stitch: a ladder
  CHECK_FALSE(same_cell(right, wrong, 4, 8, column, 0)); // cast on: an eyelet
  CHECK(same_cell(right, wrong, 4, 8, column, 3));
  for (int line = 0; line < 4; ++line) {
    CHECK(same_cell(right, wrong, 4, 8, 2, line)); // elsewhere all is as it was
  }
  // On the knit side the same needle is seen from behind.
  const FabricPicture right_knit = picture_of(good.fabric, document, Face::knit);
  const FabricPicture wrong_knit = picture_of(bad.fabric, document, Face::knit);
  CHECK_FALSE(same_cell(right_knit, wrong_knit, 4, 8, 7 - column, 1));
  CHECK(same_cell(right_knit, wrong_knit, 4, 8, column, 1));
}

TEST_CASE("a slipped stitch is drawn up over the row above it") {
  const Document document = small();
  const Needle slips{-1};
  const Knitting bad = knitted(document, {MoveNeedles{{{slips, slips}}, NeedlePosition::holding}, KnitPass{},
                                          MoveNeedles{{{slips, slips}}, NeedlePosition::working}, KnitPass{}});
  const FabricPicture picture = picture_of(bad.fabric, document, Face::knit);
  const Knitting good = knitted(document, {KnitPass{}, KnitPass{}});
  const FabricPicture right = picture_of(good.fabric, document, Face::knit);
  CHECK_FALSE(same_cell(right, picture, 4, 8, 4, 1));
  CHECK_FALSE(same_cell(right, picture, 4, 8, 4, 2)); // its foot, one row below
  CHECK(same_cell(right, picture, 4, 8, 4, 3));
  CHECK(share_of(picture, document.yarns[0].colour) > 0.5); // and is of its own yarn
}

TEST_CASE("floats lie over the stitches on the purl side only, and look different where they were caught") {
  const Document document = small();
  const std::vector<NeedleSpan> ends{{Needle{-4}, Needle{-4}}, {Needle{3}, Needle{3}}};
  std::vector<MachineAction> actions{two_colour, ThreadYarn{2, 'B'}, MoveNeedles{ends, NeedlePosition::upper},
                                     KnitPass{}};
  const Knitting floating = knitted(document, actions);
  actions.emplace_back(LiftFloat{Needle{0}});
  const Knitting caught = knitted(document, actions);
  const FabricPicture free = picture_of(floating.fabric, document, Face::purl);
  const FabricPicture lifted = picture_of(caught.fabric, document, Face::purl);
  CHECK_FALSE(same_cell(free, lifted, 3, 8, 4, 0));
  CHECK(same_cell(free, lifted, 3, 8, 2, 0));
  const Knitting plain = knitted(document, {KnitPass{}});
  CHECK_FALSE(same_cell(free, picture_of(plain.fabric, document, Face::purl), 3, 8, 2, 0));
  CHECK(same_cell(picture_of(floating.fabric, document, Face::knit), picture_of(plain.fabric, document, Face::knit), 3,
                  8, 2, 0));
}

TEST_CASE("a fabric without rows is refused in words") {
  const auto picture = knitted_picture(Fabric(machine_as_found(with_two_feeders(), Side::right)), small(), Face::knit);
  REQUIRE_FALSE(picture.ok());
  CHECK(picture.error().text().find("nothing was knitted") != std::string::npos);
}
