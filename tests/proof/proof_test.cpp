// Drawing to card and steps, to machine, to fabric: every demo on every family of machines, and mirrors planted in it.
#include "machine/placement.hpp"
#include "proof/proof.hpp"
#include "rules/findings.hpp"
#include "support/builders.hpp"
#include "support/demos.hpp"
#include "support/machines.hpp"

#include <doctest/doctest.h>
#include <map>
#include <tuple>

using namespace punchwright;

namespace {

std::string told(const Proof& proof, const OpenedDocument& demo) {
  return report(proof, demo.document, demo.profile);
}

PunchedCard mirrored(const PunchedCard& card) {
  PunchedCard other(card.columns(), card.rows());
  for (int row = 1; row <= card.rows(); ++row) {
    for (int column = 1; column <= card.columns(); ++column) {
      other.set(row, column, card.at(row, card.columns() + 1 - column));
    }
  }
  return other;
}

// A motif without any symmetry, so that every turn and mirror shows.
OpenedDocument lopsided(const test::Family& family) {
  OpenedDocument design;
  design.document = test::drawn({"#.....#.....", "##....##....", "#.#...#.#...", "#.....#.....", "#####.#####."});
  design.document.piece.stitches = 31;
  design.profile = test::card_machine();
  test::put_on(design, family);
  return design;
}

} // namespace

TEST_CASE("every demo knits as drawn, on every family of machines") {
  for (const auto& path : test::demo_paths()) {
    for (const test::Family& family : test::families()) {
      CAPTURE(path.filename().string());
      CAPTURE(family.name);
      OpenedDocument demo = test::open_demo(path);
      if (!test::put_on(demo, family)) {
        continue; // twenty stitches fit no card; that it is refused is below
      }
      const auto proof = prove(demo.document, demo.profile);
      REQUIRE(proof.ok());
      CAPTURE(told(*proof, demo));
      CHECK(proof->proved());
      CHECK(proof->comparison.rows == static_cast<int>(rows_to_knit(demo.document, demo.profile).rows.size()));
      CHECK(proof->comparison.longest_float <= 5); // the demos' own limit
      CHECK((proof->card != nullptr) == (family.selects != Selects::by_hand));
    }
  }
}

TEST_CASE("a repeat that fits no card is not proved") {
  OpenedDocument demo = test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/shore-crabs.repeat");
  REQUIRE_FALSE(test::put_on(demo, test::families().front()));
  const auto proof = prove(demo.document, demo.profile);
  REQUIRE(proof.ok());
  CHECK_FALSE(proof->proved());
}

TEST_CASE("a piece beyond the bed can't be knitted") {
  OpenedDocument design = lopsided(test::families().front());
  design.document.piece.first_needle = Needle{design.profile.rightmost().position - 3};
  CHECK_FALSE(prove(design.document, design.profile).ok());
}

TEST_CASE("a mirror in the card is found, on every demo that reads one") {
  for (const auto& path : test::demo_paths()) {
    OpenedDocument demo = test::open_demo(path);
    if (!demo.profile.card) {
      continue;
    }
    CAPTURE(path.filename().string());
    const auto card = card_on_sheets(demo.document, demo.profile);
    REQUIRE(card.ok());
    const auto proof = prove(demo.document, demo.profile, std::make_shared<const PunchedCard>(mirrored(*card)));
    REQUIRE(proof.ok());
    CHECK_FALSE(proof->proved());
  }
}

TEST_CASE("each face of the card and each end that goes in first: the reader feels the same card") {
  for (const CardFace face : {CardFace::as_knitter_sees, CardFace::as_knit_side}) {
    for (const bool turned : {false, true}) {
      OpenedDocument design = lopsided(test::families().front());
      design.profile.card->face = face;
      design.profile.card->turned = turned;
      const auto proof = prove(design.document, design.profile);
      REQUIRE(proof.ok());
      CHECK(proof->proved());
      // The machine takes it the other way than it was drawn for.
      Profile other = design.profile;
      other.card->face = face == CardFace::as_knit_side ? CardFace::as_knitter_sees : CardFace::as_knit_side;
      const auto drawn_for_other = card_on_sheets(design.document, other);
      REQUIRE(drawn_for_other.ok());
      CHECK(*drawn_for_other == *card_on_sheets(design.document, design.profile));
    }
  }
}

TEST_CASE("holes that mean main knit the same drawing") {
  OpenedDocument design = lopsided(test::families().front());
  design.profile.card->hole = HoleMeans::main;
  const auto proof = prove(design.document, design.profile);
  REQUIRE(proof.ok());
  CAPTURE(told(*proof, design));
  CHECK(proof->proved());
}

TEST_CASE("a mirror in the needle lists of the plan is found, on the demos and in both families by hand") {
  for (const auto& path : test::demo_paths()) {
    for (const int feeders : {1, 2}) {
      OpenedDocument demo = test::open_demo(path);
      test::put_on(demo, {"by hand", Selects::by_hand, feeders});
      CAPTURE(path.filename().string());
      StepList steps = steps_of(demo.document, demo.profile, rows_to_knit(demo.document, demo.profile));
      const int sum = first_needle_of(demo.document).position + last_needle_of(demo.document).position;
      bool changed = false;
      for (Step& step : steps.steps) {
        for (MachineAction& action : step.actions) {
          if (auto* moved = std::get_if<MoveNeedles>(&action)) {
            std::vector<NeedleSpan> other;
            for (const NeedleSpan& span : moved->needles) {
              other.insert(other.begin(), {Needle{sum - span.last.position}, Needle{sum - span.first.position}});
            }
            changed = changed || other != moved->needles;
            moved->needles = other;
          }
        }
      }
      const auto proof = prove(demo.document, demo.profile, nullptr, &steps);
      REQUIRE(proof.ok());
      CHECK(proof->proved() == !changed); // a drawing that is its own mirror image on this piece has no wrong side
      if (path.stem() == "puffin-cove" || path.stem() == "hood-border") {
        CHECK(changed);
      }
    }
  }
}

TEST_CASE("end needles pushed back on the wrong side drop their stitches, and the proof says where") {
  OpenedDocument demo = test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/puffin-cove.repeat");
  StepList steps = steps_of(demo.document, demo.profile, rows_to_knit(demo.document, demo.profile));
  for (Step& step : steps.steps) {
    if (step.kind == StepKind::needles_back && step.part == StepPart::knitting) {
      std::get<MoveNeedles>(step.actions.front()).needles.pop_back(); // R37 stays forward
      break;
    }
  }
  const auto proof = prove(demo.document, demo.profile, nullptr, &steps);
  REQUIRE(proof.ok());
  CHECK_FALSE(proof->proved());
  CHECK(told(*proof, demo).find("row 9, R37: no stitch") != std::string::npos);
}

// Spencer, Knitting Technology: a float is counted by the needles that the yarn passes.
TEST_CASE("floats of the fabric are those of the checks, for random designs on every family") {
  constexpr int designs = 300;
  int compared = 0;
  for (int seed = 1; seed <= designs; ++seed) {
    CAPTURE(seed);
    test::Dice dice(static_cast<std::uint64_t>(seed));
    const auto& family = test::families()[static_cast<std::size_t>(dice.throw_one(6))];
    CAPTURE(family.name);
    OpenedDocument design;
    design.profile = test::card_machine();
    constexpr std::array widths = {2, 3, 4, 6, 8, 12, 24};
    const int width = family.selects == Selects::by_hand ? 2 + dice.throw_one(40)
                                                         : widths[static_cast<std::size_t>(dice.throw_one(7))];
    design.document = blank_document(width, 1 + dice.throw_one(8));
    Grid& grid = design.document.grid;
    for (int row = 0; row < grid.height(); ++row) {
      const int kind = dice.throw_one(8);
      bool contrast = kind == 1;
      for (int column = 0; column < width; ++column) {
        contrast = kind < 2 ? contrast : kind < 5 ? dice.heads() : dice.throw_one(4) == 0 ? !contrast : contrast;
        grid.set(column, row, contrast);
      }
    }
    test::put_on(design, family);
    design.document.piece.stitches = width + 2 + dice.throw_one(100);
    design.document.piece.carriage = dice.heads() ? Side::left : Side::right;
    design.document.piece.end_needles = static_cast<EndNeedles>(dice.throw_one(3));
    design.document.rules.longest_float = 1;
    const auto proof = prove(design.document, design.profile);
    REQUIRE(proof.ok());
    CAPTURE(told(*proof, design));
    CHECK(proof->proved());

    // Row, yarn, first and last drawn column, stitches: how often, and the leftmost needle.
    using Key = std::tuple<int, char, int, int, int>;
    std::map<Key, std::pair<int, Needle>> checked;
    for (const Finding& finding : check(design.document, design.profile)) {
      if (finding.id == FindingId::float_too_long && finding.on_piece) {
        checked[{finding.row, finding.yarn, finding.first_column, finding.last_column, finding.stitches}] = {
            finding.times, *finding.first_needle};
      }
    }
    std::map<Key, std::pair<int, Needle>> knitted;
    const auto rows = rows_to_knit(design.document, design.profile);
    const auto fabric = knit_steps(proof->steps, design.document, design.profile, proof->card).knitting.fabric;
    const auto columns = columns_on_the_bed(design.document, design.profile);
    const int first = first_needle_of(design.document).position;
    for (std::size_t index = 0; index < rows.rows.size(); ++index) {
      for (const FabricFloat& one : fabric.floats(static_cast<int>(index) + proof->steps.rows_before)) {
        if (one.stitches > 1) {
          const Key key{rows.rows[index].drawn, one.yarn, columns[static_cast<std::size_t>(one.last.position - first)],
                        columns[static_cast<std::size_t>(one.first.position - first)], one.stitches};
          auto& entry = knitted.try_emplace(key, 0, one.first).first->second;
          ++entry.first;
          ++compared;
        }
      }
    }
    CHECK(knitted == checked);
  }
  CHECK(compared > designs * 10);
}

TEST_CASE("caught floats are proved on every family of machines, and a step that is left out shows") {
  for (const test::Family& family : test::families()) {
    CAPTURE(family.name);
    OpenedDocument design = lopsided(family);
    design.document.grid.set_row_text(1, "#...........");
    set_mark(design.document.marks.caught, design.document.grid, 6, 1, true); // eleven stitches: five and five are left
    const auto proof = prove(design.document, design.profile);
    REQUIRE(proof.ok());
    CAPTURE(told(*proof, design));
    CHECK(proof->proved());
    CHECK(proof->limit == 5);
    CHECK(proof->comparison.longest_float <= 5);
    StepList steps = proof->steps;
    REQUIRE(std::erase_if(steps.steps, [](const Step& step) { return step.kind == StepKind::lift_float; }) > 0);
    const auto without = prove(design.document, design.profile, nullptr, &steps);
    REQUIRE(without.ok());
    CHECK(std::ranges::any_of(without->comparison.differences, [](const Difference& difference) {
      return difference.kind == DifferenceKind::long_float;
    }));
    CHECK(std::ranges::any_of(without->comparison.differences, [](const Difference& difference) {
      return difference.kind == DifferenceKind::not_caught;
    }));
  }
}
