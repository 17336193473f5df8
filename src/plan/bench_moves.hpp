// The steps one at a time, as they are done at the machine with one key press each: gathered rows are taken apart into
// their passes, so that a knitter who was called away knows which row is next.
#pragma once

#include "plan/steps.hpp"

#include <string>
#include <vector>

namespace punchwright {

// One thing to do: a step, or one pass of several in a step.
struct BenchMove {
  int step = 0;              // index in the list
  int pass = 0;              // from 1, of a step that is taken apart; 0: the step is one thing to do
  int passes = 0;            // of that step
  int row = 0;               // to knit, from 1: knitted by it, or next after it; 0: none
  bool knits = false;        // the carriage goes across
  Side before = Side::right; // where the carriage stands
  Side after = Side::right;
  int counter = 0;     // what the row counter shows before it
  int rows_before = 0; // rows of the piece that are complete before it
  int rows_after = 0;
};

struct BenchMoves {
  StepList list;
  std::vector<BenchMove> moves;
  int rows = 0;       // to knit, in all
  std::string digest; // 16 hexadecimal digits: other steps or other needles give another one

  [[nodiscard]] int count() const { return static_cast<int>(moves.size()); }
};

// More rows than this are no evening's work, and their words would fill the memory.
inline constexpr std::size_t most_rows_at_the_bench = 20'000;

// With more than `most_rows_at_the_bench` rows there are no moves.
[[nodiscard]] BenchMoves bench_moves(const Document& document, const Profile& profile, const RowsToKnit& rows);

// "Knit row 12 to the left.", or the step's own words.
[[nodiscard]] std::string words_of(const BenchMoves& bench, int move, const Document& document, const RowsToKnit& rows);

// The needles that the knitter looks at before and while she does it.
struct NeedlesToSee {
  enum class Are { forward, pushed_back, lifted_onto, hung_on, none };
  Are are = Are::none;
  std::vector<Needle> needles; // left to right
};
[[nodiscard]] NeedlesToSee needles_to_see(const BenchMoves& bench, int move, const Document& document,
                                          const Profile& profile, const RowsToKnit& rows);

// The first move after so many complete rows; the number of moves where there are not so many.
[[nodiscard]] int move_after_rows(const BenchMoves& bench, int rows);

} // namespace punchwright
