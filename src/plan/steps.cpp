// From the rows to knit to what is done, in the order of doing it. Follows the common procedure of the trade for each
// way of selecting; the comments at the parts say which step of it they are.
#include "plan/steps.hpp"

#include "plan/step_words.hpp"
#include "plan/yarn_uses.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

std::vector<NeedleSpan> spans_of(const std::vector<Needle>& needles) {
  std::vector<NeedleSpan> spans;
  for (const NeedleRun& run : runs_of(needles)) {
    spans.push_back({run.first, run.last});
  }
  return spans;
}

class StepWriter {
public:
  StepWriter(const Document& document, const Profile& profile, const RowsToKnit& rows)
      : document_(document), profile_(profile), rows_(rows), end_needles_(end_needles_knit_contrast(document, profile)),
        actions_(actions_of(document, profile, rows)),
        rows_between_weights_(std::max(1, static_cast<int>(document.gauge.rows))) {}

  StepList all() {
    set_up();
    part_ = StepPart::knitting;
    for (std::size_t index = 0; index < rows_.rows.size(); ++index) {
      row_ = static_cast<int>(index) + 1;
      knit_row(rows_.rows[index]);
    }
    finish_gathered();
    part_ = StepPart::end;
    row_ = 0;
    finish();
    return std::move(list_);
  }

private:
  [[nodiscard]] bool by_card() const { return profile_.selects != Selects::by_hand; }
  [[nodiscard]] bool next_pass() const { return profile_.selects == Selects::next_pass; }
  [[nodiscard]] bool one_feeder() const { return profile_.feeders == 1; }
  [[nodiscard]] std::string yarn(char key) const { return name_of_yarn(document_, key); }
  [[nodiscard]] FeederName feeder_name(int feeder) const {
    return one_feeder() ? FeederName::only : feeder == 1 ? FeederName::first : FeederName::second;
  }

  Step& add(StepKind kind, std::string text, std::vector<MachineAction> actions = {}) {
    finish_gathered();
    for (const MachineAction& action : actions) {
      if (std::holds_alternative<KnitPass>(action)) {
        side_ = other(side_);
        ++counter_;
      }
    }
    list_.steps.push_back({kind, part_, std::move(text), std::move(actions), row_, row_, counter_, side_});
    return list_.steps.back();
  }

  // Up to the first row: lines 1 to 5 of the procedure.
  void set_up() {
    const auto setup = setup_rows(document_, profile_);
    part_ = StepPart::setting_up;
    side_ = other(end_of(setup.front().travel));
    list_.carriage = side_;
    const char main = document_.bands.front().main;
    add(StepKind::hang_on, starting_words(document_, side_),
        {HangOn{{first_needle_of(document_), last_needle_of(document_)}, main}, SetKnitting{KnitSetting::plain}});
    add(StepKind::main_in, threading_words(yarn(main), feeder_name(1), false), {ThreadYarn{1, main}});
    add(StepKind::tension, tr("Tension: at least one whole number looser than for plain knitting in this yarn."));
    add(StepKind::weights, tr("Hang weights on both edges of the work."));
    add(StepKind::counter, tr("Set the row counter to zero."), {SetCounter{0}});
    counter_ = 0;
    if (by_card()) {
      add(StepKind::card_in, card_in_words(), {TurnCard{1}, LockCard{true}});
      locked_ = true;
    }
    for (const SetupRow& row : setup) {
      row.selects ? add_selecting_row(row) : add_setup_plain_row(row);
    }
    if (by_card()) {
      add(StepKind::length_single, tr("See that the card's length switch stands at single, not at double."),
          {SetLength{false}});
      if (!one_feeder() || rows_.rows.empty() || rows_.rows.front().passes == 1) {
        release();
      }
    }
    if (!one_feeder()) {
      add(StepKind::two_colour_on, tr("Set the carriage to two-colour knitting."),
          {SetKnitting{KnitSetting::two_colour}});
    }
  }

  // A short card ends before the line that is in sight with its first row (see rows/cards.hpp).
  [[nodiscard]] std::string card_in_words() const {
    if (!row_beside_number(card_plan(document_, *profile_.card, rows_), *profile_.card, 1)) {
      return said(
          "Put the card in and lock it with its first row under the reader, the row marked \"{}\": the card ends "
          "before the number 1 would come in sight.",
          tr("knitting starts here"));
    }
    return document_.card.loop
               ? tr("Put the card in, joined into a loop, and lock it on its first row: the number 1 in "
                    "its margin is in sight.")
               : tr("Put the card in and lock it on its first row: the number 1 in its margin is in "
                    "sight.");
  }

  void add_setup_plain_row(const SetupRow& row) {
    ++list_.rows_before;
    add(StepKind::plain_row, said("Knit one plain row, to the {}.", word_for_side(end_of(row.travel))), {KnitPass{}});
  }

  void add_selecting_row(const SetupRow& row) {
    const Side to = end_of(row.travel);
    add(StepKind::selection_on,
        end_needles_ ? tr("Set the carriage to select from the card, end needles too.")
                     : tr("Set the carriage to select from the card, without the end needles."),
        {SetSelection{true, end_needles_}});
    if (row.main) {
      ++list_.rows_before;
      add(StepKind::selecting_row,
          said("Knit back to the {}: it knits plain and selects the needles of row 1.", word_for_side(to)),
          {KnitPass{}});
    } else {
      add(StepKind::selecting_row,
          said("Take the carriage to the {} in a free pass, without knitting: it stores row 1 of the card.",
               word_for_side(to)),
          {KnitPass{true}});
    }
  }

  void release() {
    add(StepKind::card_released, tr("Release the card, so that it moves on with each pass."), {LockCard{false}});
    locked_ = false;
  }

  void lock(bool locked) {
    if (!by_card() || locked == locked_) {
      return;
    }
    locked_ = locked;
    locked ? (void)add(StepKind::card_locked,
                       said("Lock the card: row {} takes two passes, and is read in both.", row_), {LockCard{true}})
           : (void)add(StepKind::card_released, tr("Release the card."), {LockCard{false}});
  }

  void knit_row(const RowToKnit& row) {
    const auto passes = passes_of(row);
    if (one_feeder()) {
      for (std::size_t index = 0; index < passes.size(); ++index) {
        one_yarn_pass(row, passes[index], index == 0, index + 1 == passes.size());
      }
      rows_since_weights_ += 1;
      move_weights();
      return;
    }
    act_before(row_, 1);
    if (by_card() || row.contrast == 0) {
      gather(row);
    } else {
      knit_by_hand(row);
    }
    rows_since_weights_ += 1;
    move_weights();
  }

  // Rows that need no hand between them.
  void gather(const RowToKnit& row) {
    const bool plain = row.contrast == 0;
    if (gathered_first_ != 0 && plain != gathered_plain_) {
      finish_gathered();
    }
    if (gathered_first_ == 0) {
      gathered_first_ = row_;
      gathered_plain_ = plain;
      gathered_ = {};
    }
    gathered_last_ = row_;
    gathered_.emplace_back(KnitPass{});
  }

  void finish_gathered() {
    if (gathered_first_ == 0) {
      return;
    }
    const int first = std::exchange(gathered_first_, 0);
    const int count = gathered_last_ - first + 1;
    for (int pass = 0; pass < count; ++pass) {
      side_ = other(side_);
    }
    counter_ += count;
    const RowToKnit& last = rows_.rows[static_cast<std::size_t>(gathered_last_ - 1)];
    std::string text = gathered_plain_ ? plain_words(first, gathered_last_, yarn(last.main), side_)
                                       : knit_words(first, gathered_last_, side_);
    if (by_card() && gathered_last_ < static_cast<int>(rows_.rows.size()) && gathered_plain_) {
      text += ' ' + (next_pass() ? said("The carriage selects row {} meanwhile.", gathered_last_ + 1)
                                 : said("The carriage stores row {} meanwhile.", gathered_last_ + 1));
    }
    text += ' ' + said("The counter shows {}.", counter_);
    list_.steps.push_back({StepKind::knit_rows, StepPart::knitting, std::move(text), std::move(gathered_), first,
                           gathered_last_, counter_, side_});
  }

  void knit_by_hand(const RowToKnit& row) {
    const auto needles = needles_in_row(document_, profile_, row);
    const std::string_view to = word_for_side(other(side_));
    add(StepKind::knit_by_hand,
        needles.empty()    ? said("Row {}: no needle comes forward. Knit to the {}.", row_, to)
        : row.all_contrast ? said("Row {}: bring forward every needle. Knit to the {}.", row_, to)
                           : said("Row {}: bring forward {}. Knit to the {}.", row_, needles_words(needles), to),
        {MoveNeedles{spans_of(needles), NeedlePosition::upper}, KnitPass{}});
  }

  void one_yarn_pass(const RowToKnit& row, const Pass& pass, bool first, bool last) {
    const bool contrast = pass.contrast != 0;
    const char wanted = contrast ? pass.contrast : pass.main;
    act_before(row_, first ? 1 : 2);
    if (row.passes == 1) {
      lock(false);
      needles_stayed_ = false;
      add(StepKind::knit_rows, one_yarn_words(row_, yarn(wanted), by_card(), other(side_)),
          {SetKnitting{KnitSetting::plain}, KnitPass{}});
      return;
    }
    lock(!last);
    std::vector<MachineAction> actions;
    std::string text = pass_words(row_, first, yarn(wanted));
    if (!by_card() && (first || row.contrast_first)) {
      const auto needles = needles_in_row(document_, profile_, row);
      text += ' ' + bringing_words(needles, needles_stayed_, !first);
      if (needles_stayed_) {
        actions.emplace_back(
            MoveNeedles{{{first_needle_of(document_), last_needle_of(document_)}}, NeedlePosition::working});
      }
      actions.emplace_back(MoveNeedles{spans_of(needles), NeedlePosition::upper});
    }
    needles_stayed_ = !contrast && last; // those that slipped in a row's last pass
    text += ' ' + setting_words(contrast, by_card() && !next_pass());
    actions.emplace_back(SetKnitting{contrast ? KnitSetting::forward_only : KnitSetting::back_only});
    actions.emplace_back(KnitPass{});
    text += ' ' + said("Knit to the {}.", word_for_side(other(side_)));
    if (last) {
      text += ' ' + said("The counter shows {}.", counter_ + 1);
    }
    add(by_card() ? StepKind::knit_rows : StepKind::knit_by_hand, std::move(text), std::move(actions));
  }

  void move_weights() {
    if (rows_since_weights_ < rows_between_weights_ || row_ == static_cast<int>(rows_.rows.size())) {
      return;
    }
    rows_since_weights_ = 0;
    finish_gathered();
    add(StepKind::weights_up,
        tr("Move the edge weights up.")); // every 10 cm of work: common practice, number from memory
  }

  // Line 7: contrast out, needles back; and the same for main before and behind an all-contrast row.
  void act_before(int row, int pass) {
    if (next_actions_ == actions_.size() || actions_[next_actions_].row != row ||
        actions_[next_actions_].pass != pass) {
      return;
    }
    for (const Action& action : actions_[next_actions_++].actions) {
      switch (action.doing) {
      case Doing::lift_floats: lift_floats(row - 1, action.needles); break;
      case Doing::contrast_out: take_out(action, StepKind::contrast_out); break;
      case Doing::main_out: take_out(action, StepKind::main_out); break;
      case Doing::contrast_in: thread(action, StepKind::contrast_in); break;
      case Doing::main_in: thread(action, StepKind::main_in); break;
      case Doing::end_needles_back:
      case Doing::all_needles_back: push_back(row); break;
      }
    }
  }

  // Once the row is knitted and before the next one holds the loop (common practice, see docs/mending.md).
  void lift_floats(int row, const std::vector<Needle>& needles) {
    std::vector<MachineAction> actions;
    actions.reserve(needles.size());
    for (const Needle needle : needles) {
      actions.emplace_back(LiftFloat{needle});
    }
    add(StepKind::lift_float, lifting_words(row, needles), std::move(actions));
  }

  // The end needles before a plain row; behind the last row, before the plain row at the end and behind that.
  [[nodiscard]] PushedBack pushed_back_why(int row) const {
    const int last = static_cast<int>(rows_.rows.size());
    return row <= last           ? PushedBack::no_contrast
           : row > last + 1      ? PushedBack::plain
           : document_.card.loop ? PushedBack::first_rows
                                 : PushedBack::overlap;
  }

  void push_back(int row) {
    const std::vector<Needle> needles = selected_needles(document_, profile_, rows_, row);
    const bool every = static_cast<int>(needles.size()) == stitches_of(document_) && needles.size() > 2;
    add(StepKind::needles_back, pushing_back_words(pushed_back_why(row), row, needles, every),
        {MoveNeedles{spans_of(needles), NeedlePosition::working}});
  }

  void take_out(const Action& action, StepKind kind) {
    finish_gathered(); // the carriage's side is that behind the rows gathered so far
    std::vector<MachineAction> actions{TakeOut{action.feeder}};
    if (!action.hangs) {
      actions.emplace_back(CutYarn{action.yarn});
    }
    const TakenOut how = action.hangs ? TakenOut::hangs : action.far_side ? TakenOut::cut_far_side : TakenOut::cut;
    add(kind, taking_out_words(yarn(action.yarn), how, side_), std::move(actions));
  }

  void thread(const Action& action, StepKind kind) {
    add(kind, threading_words(yarn(action.yarn), feeder_name(action.feeder), !action.hangs),
        {ThreadYarn{action.feeder, action.yarn}});
  }

  // Line 9: contrast out and cut, needles back, one plain row, needles back again, the carriage to plain.
  void finish() {
    const int last = static_cast<int>(rows_.rows.size());
    const bool drops = next_pass() && !one_feeder();
    act_before(last + 1, 1);
    if (!drops) {
      set_plain();
    }
    add(StepKind::end_row, said("Knit one plain row, to the {}.", word_for_side(other(side_))), {KnitPass{}});
    act_before(last + 2, 1);
    if (drops) {
      set_plain();
    }
  }

  void set_plain() {
    std::vector<MachineAction> actions{SetKnitting{KnitSetting::plain}};
    if (by_card()) {
      actions.emplace_back(SetSelection{false, false});
    }
    add(StepKind::set_plain,
        by_card()
            ? tr("Set the carriage to plain knitting, selecting nothing, so that no stitch can drop from here on.")
            : tr("Set the carriage to plain knitting."),
        std::move(actions));
  }

  const Document& document_;
  const Profile& profile_;
  const RowsToKnit& rows_;
  bool end_needles_;
  StepList list_;
  StepPart part_ = StepPart::setting_up;
  Side side_ = Side::right;
  int row_ = 0;
  int counter_ = 0;
  bool locked_ = false;
  bool needles_stayed_ = false; // by hand, one feeder: some still stand forward from the row before
  std::vector<RowActions> actions_;
  std::size_t next_actions_ = 0;
  int rows_between_weights_; // 10 cm of work
  int rows_since_weights_ = 0;
  std::vector<MachineAction> gathered_;
  int gathered_first_ = 0;
  int gathered_last_ = 0;
  bool gathered_plain_ = false;
};

} // namespace

StepList steps_of(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  return StepWriter(document, profile, rows).all();
}

} // namespace punchwright
