// The machine, action by action: what a pass does in each family, and what hands cannot do.
#include "knitting/fabric.hpp"
#include "support/machines.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

namespace {

std::shared_ptr<const PunchedCard> card_of(const std::vector<std::string>& rows_from_row_1) {
  PunchedCard card(static_cast<int>(rows_from_row_1.front().size()), static_cast<int>(rows_from_row_1.size()));
  for (int row = 1; row <= card.rows(); ++row) {
    for (int column = 1; column <= card.columns(); ++column) {
      card.set(row, column,
               rows_from_row_1[static_cast<std::size_t>(row - 1)][static_cast<std::size_t>(column - 1)] == 'o');
    }
  }
  return std::make_shared<const PunchedCard>(std::move(card));
}

// Six needles, L3 to R3, a card of three columns that begins at L3; the length switch at single.
Profile small(Selects selects, int feeders = 2, bool end_needles = false) {
  Profile profile;
  profile.needles = 6;
  profile.feeders = feeders;
  profile.selects = selects;
  profile.end_needles = end_needles;
  if (selects != Selects::by_hand) {
    profile.card = CardReader{};
    profile.card->repeat = 3;
    profile.card->first_needle = left_needle(3);
  }
  return profile;
}

class Bench {
public:
  Bench(const Profile& profile, std::shared_ptr<const PunchedCard> card = nullptr, bool joined = false)
      : knitting_(begin_knitting(machine_as_found(profile, Side::right, std::move(card), joined))) {
    (*this)(HangOn{{left_needle(3), right_needle(3)}, 'A'})(ThreadYarn{1, 'A'});
    if (knitting_.state.card.card) {
      (*this)(TurnCard{1})(LockCard{true})(SetLength{false});
    }
  }
  Bench& operator()(const MachineAction& action) {
    REQUIRE(knit_on(knitting_, action));
    return *this;
  }
  std::optional<Refusal> refused(const MachineAction& action) {
    const MachineState before = knitting_.state;
    const Outcome outcome = carry_out(before, action);
    if (outcome.refusal) {
      CHECK(outcome.state == before);
      CHECK(outcome.events.empty());
    }
    return outcome.refusal;
  }
  // Rows from the top; '-' no loop, 'x' let go. As the bed is seen.
  [[nodiscard]] std::vector<std::string> seen() const {
    std::vector<std::string> rows;
    for (int row = fabric().rows() - 1; row >= 0; --row) {
      std::string text;
      for (const Made& cell : fabric().row(row)) {
        text += cell.missing ? 'x' : cell.yarn != 0 ? cell.yarn : '-';
      }
      rows.push_back(text);
    }
    return rows;
  }
  [[nodiscard]] std::string forward() const {
    std::string text;
    for (const Needle needle : needles_forward(state())) {
      text += (text.empty() ? "" : " ") + name_of(needle);
    }
    return text;
  }
  [[nodiscard]] const MachineState& state() const { return knitting_.state; }
  [[nodiscard]] const Fabric& fabric() const { return knitting_.fabric; }

private:
  Knitting knitting_;
};

using Rows = std::vector<std::string>;

} // namespace

// The procedure is common practice: one plain row, one that selects over the locked card, release, contrast in.
TEST_CASE("selecting for the next pass: the row that was selected over the locked card is knitted first") {
  Bench bench(small(Selects::next_pass), card_of({"o..", ".o.", "..o"}));
  bench(KnitPass{})(SetSelection{true, false})(KnitPass{});
  CHECK(bench.forward() == "L3 R1");
  bench(LockCard{false})(SetKnitting{KnitSetting::two_colour})(ThreadYarn{2, 'B'})(KnitPass{});
  CHECK(bench.forward() == "L2 R2");
  bench(KnitPass{});
  CHECK(bench.seen() == Rows{"ABAABA", "BAABAA", "AAAAAA", "AAAAAA"});
  CHECK(bench.state().counter == 4);
  CHECK(bench.state().carriage == Side::right);
}

TEST_CASE("a selected needle whose feeder is empty drops its stitch, and casts on in the next pass") {
  Bench bench(small(Selects::next_pass, 2, true), card_of({"...", "..."}));
  bench(SetSelection{true, true})(KnitPass{})(SetKnitting{KnitSetting::two_colour});
  CHECK(bench.forward() == "L3 R3"); // the end needles, on a blank row as well
  bench(KnitPass{});
  CHECK(bench.seen() == Rows{"xAAAAx", "AAAAAA"});
  CHECK(bench.fabric().at(0, left_needle(3)).dropped);
  bench(MoveNeedles{{{left_needle(3), right_needle(3)}}, NeedlePosition::working})(KnitPass{});
  CHECK(bench.fabric().at(2, left_needle(3)).cast_on);
  CHECK_FALSE(bench.fabric().at(2, left_needle(2)).cast_on);
}

TEST_CASE("selecting in the pass that knits: a free pass over the locked card stores row 1; nothing stands forward") {
  Bench bench(small(Selects::same_pass), card_of({"o..", "...", "..o"}));
  bench(KnitPass{})(SetSelection{true, false})(KnitPass{true});
  CHECK(bench.seen() == Rows{"AAAAAA"}); // the free pass knits nothing
  CHECK(bench.forward().empty());
  bench(LockCard{false})(SetKnitting{KnitSetting::two_colour})(ThreadYarn{2, 'B'})(KnitPass{});
  bench(TakeOut{2})(KnitPass{})(ThreadYarn{2, 'B'})(KnitPass{});
  CHECK(bench.forward().empty());
  CHECK(bench.seen() == Rows{"AABAAB", "AAAAAA", "BAABAA", "AAAAAA"});
}

TEST_CASE("double length reads every card row twice; a locked card is read where it stands") {
  Bench bench(small(Selects::next_pass), card_of({"o..", ".o.", "..o"}));
  bench(SetLength{true})(SetSelection{true, false})(KnitPass{})(LockCard{false})(SetKnitting{KnitSetting::two_colour});
  bench(ThreadYarn{2, 'B'})(KnitPass{})(KnitPass{})(KnitPass{})(LockCard{true})(KnitPass{})(KnitPass{});
  CHECK(bench.seen() == Rows{"ABAABA", "ABAABA", "ABAABA", "BAABAA", "BAABAA", "AAAAAA"});
}

TEST_CASE("behind the last row an open card shows its overlap rows, a joined one its first row") {
  for (const bool joined : {false, true}) {
    Bench bench(small(Selects::next_pass), card_of({"o..", ".o."}), joined);
    bench(SetSelection{true, false})(KnitPass{})(LockCard{false})(SetKnitting{KnitSetting::two_colour});
    bench(ThreadYarn{2, 'B'})(KnitPass{})(KnitPass{});
    CHECK(bench.forward() == (joined ? "L3 R1" : "L3 L2 L1 R1 R2 R3"));
  }
}

TEST_CASE("one feeder: a row takes two passes, and the fabric has one row of them") {
  Bench bench(small(Selects::by_hand, 1));
  const MoveNeedles forward{{{left_needle(1), right_needle(1)}}, NeedlePosition::upper};
  bench(forward)(SetKnitting{KnitSetting::back_only})(KnitPass{});
  CHECK(bench.forward() == "L1 R1"); // they slipped
  bench(TakeOut{1})(ThreadYarn{1, 'B'})(SetKnitting{KnitSetting::forward_only})(KnitPass{});
  CHECK(bench.seen() == Rows{"AABBAA"});
  CHECK(bench.fabric().passes(0) == 2);
  bench(SetKnitting{KnitSetting::plain})(KnitPass{});
  CHECK(bench.seen() == Rows{"BBBBBB", "AABBAA"});
}

TEST_CASE("floats: behind the stitches of the other yarn, between two of its own, and where they are caught") {
  Bench bench(small(Selects::by_hand));
  bench(SetKnitting{KnitSetting::two_colour})(ThreadYarn{2, 'B'});
  bench(MoveNeedles{{{left_needle(3), left_needle(3)}, {right_needle(3), right_needle(3)}}, NeedlePosition::upper});
  bench(KnitPass{});
  REQUIRE(bench.fabric().floats(0).size() == 1);
  CHECK(bench.fabric().floats(0).front() == FabricFloat{'B', left_needle(2), right_needle(2), 4, {}});
  CHECK(bench.fabric().longest_float(0) == 4);
  bench(LiftFloat{left_needle(1)});
  CHECK(bench.fabric().floats(0).front().caught == std::vector<Needle>{left_needle(1)});
  CHECK(bench.fabric().longest_float(0) == 2); // R1 and R2 remain
}

TEST_CASE("a yarn in a feeder that knits no stitch lies across, and so does one threaded on the wrong side") {
  Bench bench(small(Selects::by_hand));
  bench(SetKnitting{KnitSetting::two_colour})(ThreadYarn{2, 'B'})(KnitPass{});
  CHECK(bench.fabric().loose(0) == std::vector<char>{'B'});
  bench(TakeOut{2})(KnitPass{})(ThreadYarn{2, 'B'});
  bench(MoveNeedles{{{left_needle(1), left_needle(1)}}, NeedlePosition::upper})(KnitPass{});
  CHECK(bench.fabric().loose(2) == std::vector<char>{'B'}); // hung on the left, threaded on the right
  bench(TakeOut{2})(CutYarn{'B'})(CutYarn{'B'})(KnitPass{})(ThreadYarn{2, 'B'}); // cut twice: nothing more to cut
  bench(MoveNeedles{{{left_needle(1), left_needle(1)}}, NeedlePosition::upper})(KnitPass{});
  CHECK(bench.fabric().loose(4).empty());
}

TEST_CASE("transferring empties a needle, which may go out of work then") {
  Bench bench(small(Selects::by_hand));
  const MoveNeedles out{{{left_needle(3), left_needle(3)}}, NeedlePosition::out_of_work};
  CHECK(bench.refused(out) == Refusal::needle_occupied);
  bench(TransferLoop{left_needle(3), left_needle(2)})(out);
  CHECK(bench.state().at(left_needle(2)).loops == 2);
  bench(KnitPass{});
  CHECK(bench.seen() == Rows{"-AAAAA"});
  CHECK(bench.state().at(left_needle(2)).loops == 1);
}

TEST_CASE("work that is taken off is hung back in its order, onto as many needles in work") {
  Bench bench(small(Selects::by_hand));
  bench(KnitPass{});
  bench(TransferLoop{left_needle(3), left_needle(2)})(TransferLoop{right_needle(3), right_needle(2)});
  CHECK(bench.refused(HangWorkBack{{{left_needle(2), left_needle(2)}}}) == Refusal::needle_occupied);
  bench(TakeWorkOff{});
  CHECK(bench.refused(TakeWorkOff{}) == Refusal::work_is_off);
  CHECK(bench.state().off == std::vector<LoopsOff>{{2, 'A'}, {1, 'A'}, {1, 'A'}, {2, 'A'}});
  bench(MoveNeedles{{{right_needle(3), right_needle(3)}}, NeedlePosition::out_of_work});
  CHECK(bench.refused(HangWorkBack{{{left_needle(3), left_needle(1)}}}) == Refusal::loops_differ);
  CHECK(bench.refused(HangWorkBack{{{left_needle(3), right_needle(2)}}}) == Refusal::loops_differ);
  CHECK(bench.refused(HangWorkBack{{{left_needle(1), right_needle(3)}}}) == Refusal::needle_not_in_work);
  CHECK(bench.refused(HangWorkBack{{{left_needle(3), Needle{100}}}}) == Refusal::no_such_needle);
  // The same needle twice, and from right to left.
  CHECK(bench.refused(HangWorkBack{{{left_needle(3), left_needle(1)}, {left_needle(1), left_needle(1)}}}) ==
        Refusal::loops_differ);
  CHECK(bench.refused(HangWorkBack{{{left_needle(1), right_needle(1)}, {left_needle(3), left_needle(2)}}}) ==
        Refusal::loops_differ);
  bench(KnitPass{true})(HangWorkBack{{{left_needle(3), left_needle(2)}, {right_needle(1), right_needle(2)}}});
  CHECK(bench.state().off.empty());
  CHECK(bench.state().at(left_needle(3)).loops == 2);
  CHECK(bench.state().at(left_needle(1)).loops == 0);
  CHECK(bench.state().at(right_needle(2)).loops == 2);
  CHECK(bench.state().carriage == Side::right); // across and back
  bench(MoveNeedles{{{left_needle(1), left_needle(1)}}, NeedlePosition::out_of_work})(KnitPass{});
  CHECK(bench.seen() == Rows{"AA-AA-", "AAAAAA"});
  // What hung on L3 and L2 hangs on L3 now, and so on.
  CHECK(bench.fabric().hangs_on({1, left_needle(3)}) ==
        std::vector<StitchPlace>{{0, left_needle(3)}, {0, left_needle(2)}});
  CHECK(bench.fabric().hangs_on({1, left_needle(2)}) == std::vector<StitchPlace>{{0, left_needle(1)}});
  CHECK(bench.fabric().hangs_on({1, right_needle(1)}) == std::vector<StitchPlace>{{0, right_needle(1)}});
  CHECK(bench.fabric().hangs_on({1, right_needle(2)}) ==
        std::vector<StitchPlace>{{0, right_needle(2)}, {0, right_needle(3)}});
}

TEST_CASE("a loop that is lost with the work off can't be hung back") {
  Bench bench(small(Selects::by_hand));
  bench(KnitPass{})(TakeWorkOff{});
  MachineState lost = bench.state();
  lost.off.pop_back();
  CHECK(carry_out(lost, HangWorkBack{{{left_needle(3), right_needle(3)}}}).refusal == Refusal::loops_differ);
}

TEST_CASE("a loop lifted from below a neighbour makes a stitch without an eyelet") {
  Bench bench(small(Selects::by_hand));
  bench(KnitPass{})(KnitPass{})(TransferLoop{left_needle(3), left_needle(2)});
  CHECK(bench.refused(LiftLoop{left_needle(3), left_needle(3)}) == Refusal::needle_empty);
  CHECK(bench.refused(LiftLoop{left_needle(2), left_needle(1)}) == Refusal::needle_occupied);
  bench(LiftLoop{left_needle(2), left_needle(3)})(KnitPass{});
  CHECK_FALSE(bench.fabric().at(2, left_needle(3)).cast_on);
  CHECK(bench.fabric().hangs_on({2, left_needle(3)}) ==
        std::vector<StitchPlace>{{0, left_needle(3)}, {0, left_needle(2)}}); // below both that hang on L2
  CHECK(bench.fabric().hangs_on({2, left_needle(2)}) ==
        std::vector<StitchPlace>{{1, left_needle(3)}, {1, left_needle(2)}});
  CHECK(bench.fabric().hangs_on({0, left_needle(2)}).empty()); // hung on
}

TEST_CASE("loops that were transferred drop as the stitches that they are") {
  Bench bench(small(Selects::by_hand));
  bench(SetKnitting{KnitSetting::two_colour})(KnitPass{})(TransferLoop{left_needle(3), left_needle(2)});
  bench(MoveNeedles{{{left_needle(2), left_needle(2)}}, NeedlePosition::upper})(KnitPass{}); // nothing in feeder 2
  CHECK(bench.fabric().at(0, left_needle(3)).dropped);
  CHECK(bench.fabric().at(0, left_needle(2)).dropped);
  CHECK_FALSE(bench.fabric().at(0, left_needle(1)).dropped);
}

TEST_CASE("what hands cannot do is refused and changes nothing") {
  Bench bench(small(Selects::by_hand));
  const Needle beyond{100};
  CHECK(bench.refused(ThreadYarn{3, 'B'}) == Refusal::no_such_feeder);
  CHECK(bench.refused(ThreadYarn{1, 'B'}) == Refusal::feeder_taken);
  CHECK(bench.refused(ThreadYarn{2, 'A'}) == Refusal::yarn_in_use);
  CHECK(bench.refused(SetSelection{true, false}) == Refusal::no_card);
  CHECK(bench.refused(LockCard{true}) == Refusal::no_card);
  CHECK(bench.refused(SetKnitting{KnitSetting::back_only}) == Refusal::not_on_this_carriage);
  CHECK(bench.refused(MoveNeedles{{{beyond, beyond}}, NeedlePosition::upper}) == Refusal::no_such_needle);
  CHECK(bench.refused(HangOn{{left_needle(1), left_needle(1)}, 'A'}) == Refusal::needle_occupied);
  CHECK(bench.refused(TransferLoop{beyond, left_needle(1)}) == Refusal::no_such_needle);
  bench(TakeOut{1});
  CHECK(bench.refused(KnitPass{}) == Refusal::no_yarn);
  CHECK_FALSE(bench.refused(KnitPass{true})); // a free pass needs no yarn
}
