// The steps one at a time: nothing left out, nothing said twice, and a place that is found again.
#include "plan/bench_moves.hpp"
#include "support/demos.hpp"

#include <algorithm>
#include <doctest/doctest.h>

using namespace punchwright;

namespace {

struct AtTheBench {
  OpenedDocument demo;
  RowsToKnit rows;
  BenchMoves bench;

  explicit AtTheBench(OpenedDocument opened)
      : demo(std::move(opened)), rows(rows_to_knit(demo.document, demo.profile)),
        bench(bench_moves(demo.document, demo.profile, rows)) {}
  [[nodiscard]] std::string words(int move) const { return words_of(bench, move, demo.document, rows); }
  [[nodiscard]] NeedlesToSee needles(int move) const {
    return needles_to_see(bench, move, demo.document, demo.profile, rows);
  }
  // The move that knits that row first.
  [[nodiscard]] int knitting(int row) const {
    const auto found =
        std::ranges::find_if(bench.moves, [row](const BenchMove& move) { return move.knits && move.row == row; });
    REQUIRE(found != bench.moves.end());
    return static_cast<int>(found - bench.moves.begin());
  }
};

AtTheBench bench_of(const std::string& name) {
  return AtTheBench(test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/" + name + ".repeat"));
}

constexpr const char* demos[] = {"puffin-cove", "buoy-line",   "tide-waves", "harbour-lanterns",
                                 "hood-border", "shore-crabs", "poncho-hem"};

} // namespace

TEST_CASE("gathered rows are taken apart: a press for each row, with its direction and the counter") {
  const AtTheBench hood = bench_of("hood-border"); // "Knit 12 rows (rows 1 to 12), ending on the left."
  const int first = hood.knitting(1);
  CHECK(hood.words(first) == "Knit row 1, to the right.");
  CHECK(hood.words(first + 1) == "Knit row 2, to the left.");
  CHECK(hood.words(first + 11) == "Knit row 12, to the left.");
  const BenchMove& fifth = hood.bench.moves[static_cast<std::size_t>(first + 4)];
  CHECK(fifth.pass == 5);
  CHECK(fifth.passes == 12);
  CHECK(fifth.counter == 6); // two rows of the setting-up and four
  CHECK(fifth.before == Side::left);
  CHECK(fifth.after == Side::right);
  CHECK(fifth.rows_before == 4);
  CHECK(fifth.rows_after == 5);
}

TEST_CASE("a plain row says so, with its yarn") {
  const AtTheBench buoys = bench_of("buoy-line");
  bool found = false;
  for (int move = 0; move < buoys.bench.count(); ++move) {
    found = found || buoys.words(move).find(" plain in ") != std::string::npos;
  }
  CHECK(found);
}

TEST_CASE("of every demo each step is there, in its order, and the carriage goes from where it stands") {
  for (const char* const name : demos) {
    CAPTURE(name);
    const AtTheBench here = bench_of(name);
    int step = 0;
    Side side = here.bench.list.carriage;
    int rows = 0;
    for (const BenchMove& move : here.bench.moves) {
      CHECK((move.step == step || move.step == step + 1 || move.step == 0));
      step = move.step;
      CHECK(move.before == side);
      CHECK((move.after != move.before) == move.knits);
      side = move.after;
      CHECK(move.rows_before == rows);
      CHECK(move.rows_after >= rows);
      CHECK(move.rows_after <= rows + 1);
      rows = move.rows_after;
    }
    CHECK(step + 1 == static_cast<int>(here.bench.list.steps.size()));
    CHECK(rows == here.bench.rows);
  }
}

TEST_CASE("the needles to see are those of the row that comes next; before a plain row those to push back") {
  const AtTheBench hood = bench_of("hood-border");
  const int first = hood.knitting(1);
  const NeedlesToSee seen = hood.needles(first);
  CHECK(seen.are == NeedlesToSee::Are::forward);
  CHECK(seen.needles == needles_in_row(hood.demo.document, hood.demo.profile, hood.rows.rows.front()));
  CHECK(hood.needles(first - 1).needles == seen.needles); // the contrast is threaded before row 1
  CHECK(hood.needles(0).are == NeedlesToSee::Are::hung_on);

  const AtTheBench puffins = bench_of("puffin-cove"); // whose end needles are pushed back before plain rows
  bool pushed = false;
  for (int move = 0; move < puffins.bench.count(); ++move) {
    const NeedlesToSee back = puffins.needles(move);
    pushed = pushed || (back.are == NeedlesToSee::Are::pushed_back && back.needles.size() == 2);
  }
  CHECK(pushed);
}

TEST_CASE("a row in two passes is complete behind the second") {
  OpenedDocument demo = test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/shore-crabs.repeat");
  demo.profile.feeders = 1;
  const AtTheBench crabs(std::move(demo));
  int twice = 0;
  for (const RowToKnit& row : crabs.rows.rows) {
    twice += row.passes == 2 ? 1 : 0;
  }
  REQUIRE(twice > 0);
  int half = 0;
  for (const BenchMove& move : crabs.bench.moves) {
    half += move.knits && move.row > 0 && move.rows_after < move.row ? 1 : 0;
  }
  CHECK(half == twice);
  CHECK(crabs.bench.moves.back().rows_after == crabs.bench.rows);
}

TEST_CASE("the place after so many rows") {
  const AtTheBench puffins = bench_of("puffin-cove");
  CHECK(move_after_rows(puffins.bench, 0) == 0);
  for (int row = 1; row < puffins.bench.rows; ++row) {
    const int move = move_after_rows(puffins.bench, row);
    CHECK(puffins.bench.moves[static_cast<std::size_t>(move)].rows_before == row);
    CHECK(puffins.bench.moves[static_cast<std::size_t>(move - 1)].rows_after == row);
    CHECK(puffins.bench.moves[static_cast<std::size_t>(move - 1)].knits);
  }
  CHECK(move_after_rows(puffins.bench, puffins.bench.rows + 1) == puffins.bench.count());
}

TEST_CASE("one stitch more, or another yarn's name, is another digest; another title or gauge isn't") {
  const AtTheBench hood = bench_of("hood-border");
  CHECK(hood.bench.digest.size() == 16);
  CHECK(bench_of("hood-border").bench.digest == hood.bench.digest);
  OpenedDocument stitch = hood.demo;
  stitch.document.grid.set(3, 3, !stitch.document.grid.at(3, 3));
  CHECK(AtTheBench(stitch).bench.digest != hood.bench.digest);
  OpenedDocument yarn = hood.demo;
  yarn.document.yarns.front().name += " two";
  CHECK(AtTheBench(yarn).bench.digest != hood.bench.digest);
  OpenedDocument title = hood.demo;
  title.document.title += " two";
  CHECK(AtTheBench(title).bench.digest == hood.bench.digest);
}

TEST_CASE("more rows than an evening holds have no moves") {
  OpenedDocument demo = test::open_demo(PUNCHWRIGHT_SOURCE_DIR "/patterns/poncho-hem.repeat");
  demo.document.piece.times = 1000;
  const AtTheBench hem(std::move(demo));
  CHECK(hem.bench.rows > static_cast<int>(most_rows_at_the_bench));
  CHECK(hem.bench.count() == 0);
}
