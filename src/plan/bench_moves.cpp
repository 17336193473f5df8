// Steps taken apart, their digest, and what is looked at in each.
#include "plan/bench_moves.hpp"

#include "plan/step_words.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {
namespace {

int passes_in(const Step& step) {
  return static_cast<int>(std::ranges::count_if(
      step.actions, [](const MachineAction& action) { return std::holds_alternative<KnitPass>(action); }));
}

// Only what is nothing but passes can be stopped at between any two of them.
bool is_taken_apart(const Step& step) {
  return step.kind == StepKind::knit_rows && passes_in(step) > 1 &&
         passes_in(step) == static_cast<int>(step.actions.size());
}

class Digest { // FNV-1a, 64 bits (Fowler, Noll, Vo; IETF draft-eastlake-fnv)
public:
  void add(std::string_view bytes) {
    for (const char byte : bytes) {
      value_ = (value_ ^ static_cast<unsigned char>(byte)) * 0x100000001b3U;
    }
    value_ = (value_ ^ 0xffU) * 0x100000001b3U; // no byte of UTF-8: where one text ends
  }
  [[nodiscard]] std::string text() const { return fmt::format("{:016x}", value_); }

private:
  std::uint64_t value_ = 0xcbf29ce484222325U;
};

// What an action is about, without the words for it: they are in the reader's language.
struct Facts {
  const Document& document;

  [[nodiscard]] std::string yarn(char key) const { return fmt::format("{} {}", key, yarn_of(document, key).name); }
  static std::string span(const NeedleSpan& needles) {
    return fmt::format("{}:{} ", needles.first.position, needles.last.position);
  }
  std::string operator()(const HangOn& action) const { return span(action.needles) + yarn(action.yarn); }
  std::string operator()(const KnitPass& action) const { return action.free ? "free" : ""; }
  std::string operator()(const SetSelection& action) const {
    return fmt::format("{} {}", action.on, action.end_needles);
  }
  std::string operator()(const SetKnitting& action) const { return std::to_string(static_cast<int>(action.to)); }
  std::string operator()(const LockCard& action) const { return std::to_string(static_cast<int>(action.locked)); }
  std::string operator()(const TurnCard& action) const { return std::to_string(action.row); }
  std::string operator()(const SetLength& action) const { return std::to_string(static_cast<int>(action.twice)); }
  std::string operator()(const ThreadYarn& action) const { return std::to_string(action.feeder) + yarn(action.yarn); }
  std::string operator()(const TakeOut& action) const { return std::to_string(action.feeder); }
  std::string operator()(const CutYarn& action) const { return yarn(action.yarn); }
  std::string operator()(const MoveNeedles& action) const {
    std::string text = std::to_string(static_cast<int>(action.to)) + ' ';
    for (const NeedleSpan& needles : action.needles) {
      text += span(needles);
    }
    return text;
  }
  std::string operator()(const TransferLoop& action) const { return span({action.from, action.to}); }
  std::string operator()(const LiftFloat& action) const { return std::to_string(action.needle.position); }
  std::string operator()(const SetCounter& action) const { return std::to_string(action.to); }
  std::string operator()(const TakeWorkOff& /*action*/) const { return "off"; }
  std::string operator()(const HangWorkBack& action) const {
    std::string text;
    for (const NeedleSpan& needles : action.needles) {
      text += span(needles);
    }
    return text;
  }
  std::string operator()(const LiftLoop& action) const { return span({action.from, action.onto}); }
};

std::string digest_of(const StepList& list, const Document& document, const Profile& profile, const RowsToKnit& rows) {
  Digest digest;
  digest.add(document.card.loop ? "loop" : "open");
  for (const Step& step : list.steps) {
    digest.add(word_for(step.kind));
    digest.add(fmt::format("{} {} {}", step.first_row, step.last_row, step.counter));
    for (const MachineAction& action : step.actions) {
      digest.add(std::to_string(action.index()) + ' ' + std::visit(Facts{document}, action));
    }
  }
  std::string line;
  for (const RowToKnit& row : rows.rows) { // by card the words don't name the needles
    line.assign(1, row.main);
    line += row.contrast != 0 ? row.contrast : '-';
    for (const bool contrast : stitches_in_row(document, profile, row)) {
      line += contrast ? '#' : '.';
    }
    digest.add(line);
  }
  return digest.text();
}

// A row in two passes is complete behind the second one. What is done between rows is done before the next one.
void count_rows(std::vector<BenchMove>& moves, int rows) {
  int complete = 0;
  for (std::size_t place = 0; place < moves.size(); ++place) {
    BenchMove& move = moves[place];
    move.rows_before = complete;
    if (!move.knits && move.row > 0) {
      move.row = complete < rows ? complete + 1 : 0;
    }
    if (move.knits && move.row > 0) {
      const auto again = std::find_if(moves.begin() + static_cast<std::ptrdiff_t>(place) + 1, moves.end(),
                                      [&](const BenchMove& later) { return later.knits && later.row >= move.row; });
      const bool once_more = again != moves.end() && again->row == move.row;
      complete = once_more ? complete : move.row;
    }
    move.rows_after = complete;
  }
}

} // namespace

BenchMoves bench_moves(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  BenchMoves bench;
  bench.rows = static_cast<int>(rows.rows.size());
  if (rows.rows.size() > most_rows_at_the_bench) {
    return bench;
  }
  bench.list = steps_of(document, profile, rows);
  Side side = bench.list.carriage;
  int counter = 0;
  for (std::size_t index = 0; index < bench.list.steps.size(); ++index) {
    const Step& step = bench.list.steps[index];
    const int passes = passes_in(step);
    BenchMove move;
    move.step = static_cast<int>(index);
    if (is_taken_apart(step)) {
      for (int pass = 1; pass <= passes; ++pass) {
        move.pass = pass;
        move.passes = passes;
        move.row = step.first_row + pass - 1;
        move.knits = true;
        move.before = side;
        move.after = side = other(side);
        move.counter = step.counter - passes + pass - 1;
        bench.moves.push_back(move);
      }
    } else {
      move.row = step.part == StepPart::knitting ? step.first_row : 0;
      move.knits = passes > 0;
      move.before = side;
      move.after = step.carriage;
      move.counter = counter;
      bench.moves.push_back(move);
    }
    side = step.carriage;
    counter = step.counter;
  }
  count_rows(bench.moves, bench.rows);
  bench.digest = digest_of(bench.list, document, profile, rows);
  return bench;
}

std::string words_of(const BenchMoves& bench, int move, const Document& document, const RowsToKnit& rows) {
  const BenchMove& here = bench.moves[static_cast<std::size_t>(move)];
  const Step& step = bench.list.steps[static_cast<std::size_t>(here.step)];
  if (here.pass == 0) {
    return step.text;
  }
  const RowToKnit& row = rows.rows[static_cast<std::size_t>(here.row - 1)];
  const std::string_view side = word_for_side(here.after);
  return row.contrast == 0
             ? said("Knit row {} plain in {}, to the {}.", here.row, name_of_yarn(document, row.main), side)
             : said("Knit row {}, to the {}.", here.row, side);
}

NeedlesToSee needles_to_see(const BenchMoves& bench, int move, const Document& document, const Profile& profile,
                            const RowsToKnit& rows) {
  using Are = NeedlesToSee::Are;
  const BenchMove& here = bench.moves[static_cast<std::size_t>(move)];
  const Step& step = bench.list.steps[static_cast<std::size_t>(here.step)];
  NeedlesToSee seen;
  if (step.kind == StepKind::needles_back) {
    seen.are = Are::pushed_back;
    for (const MachineAction& action : step.actions) {
      if (const auto* const back = std::get_if<MoveNeedles>(&action)) {
        for (const NeedleSpan& span : back->needles) {
          for (Needle needle = span.first; needle <= span.last; ++needle.position) {
            seen.needles.push_back(needle);
          }
        }
      }
    }
  } else if (step.kind == StepKind::lift_float) {
    seen.are = Are::lifted_onto;
    for (const MachineAction& action : step.actions) {
      seen.needles.push_back(std::get<LiftFloat>(action).needle);
    }
  } else if (step.kind == StepKind::hang_on) {
    seen.are = Are::hung_on;
  } else if (here.row > 0) {
    seen.are = Are::forward;
    seen.needles = needles_in_row(document, profile, rows.rows[static_cast<std::size_t>(here.row - 1)]);
  }
  return seen;
}

int move_after_rows(const BenchMoves& bench, int rows) {
  const auto found =
      std::ranges::find_if(bench.moves, [rows](const BenchMove& move) { return move.rows_before >= rows; });
  return static_cast<int>(found - bench.moves.begin());
}

} // namespace punchwright
