// From the rows to knit to what is done, in the order of doing it. Follows the common procedure of the trade for each
// way of selecting; the comments at the parts say which step of it they are.
#include "plan/steps.hpp"

#include "design/words.hpp"
#include "plan/step_words.hpp"
#include "plan/yarn_uses.hpp"

#include <algorithm>
#include <fmt/format.h>

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
    add(StepKind::hang_on,
        fmt::format("Starting position: the work hangs on {} needles, {} to {}, all in working position, the needles "
                    "beside it out of work; the carriage stands on the {}, set to plain knitting, and selects nothing.",
                    stitches_of(document_), name_of(first_needle_of(document_)), name_of(last_needle_of(document_)),
                    word_for_side(side_)),
        {HangOn{{first_needle_of(document_), last_needle_of(document_)}, main}, SetKnitting{KnitSetting::plain}});
    add(StepKind::main_in,
        fmt::format("Thread {} into {}.", yarn(main), one_feeder() ? "the feeder" : "the first feeder (main)"),
        {ThreadYarn{1, main}});
    add(StepKind::tension, "Tension: at least one whole number looser than for plain knitting in this yarn.");
    add(StepKind::weights, "Hang weights on both edges of the work.");
    add(StepKind::counter, "Set the row counter to zero.", {SetCounter{0}});
    counter_ = 0;
    if (by_card()) {
      add(StepKind::card_in,
          fmt::format("Put the card in{} and lock it on its first row: the number 1 in its margin is in sight.",
                      document_.card.loop ? ", joined into a loop," : ""),
          {TurnCard{1}, LockCard{true}});
      locked_ = true;
    }
    for (const SetupRow& row : setup) {
      row.selects ? add_selecting_row(row) : add_setup_plain_row(row);
    }
    if (by_card()) {
      add(StepKind::length_single, "See that the card's length switch stands at single, not at double.",
          {SetLength{false}});
      if (!one_feeder() || rows_.rows.empty() || rows_.rows.front().passes == 1) {
        release();
      }
    }
    if (!one_feeder()) {
      add(StepKind::two_colour_on, "Set the carriage to two-colour knitting.", {SetKnitting{KnitSetting::two_colour}});
    }
  }

  void add_setup_plain_row(const SetupRow& row) {
    ++list_.rows_before;
    add(StepKind::plain_row, fmt::format("Knit one plain row, to the {}.", word_for_side(end_of(row.travel))),
        {KnitPass{}});
  }

  void add_selecting_row(const SetupRow& row) {
    const Side to = end_of(row.travel);
    add(StepKind::selection_on,
        fmt::format("Set the carriage to select from the card{}.",
                    end_needles_ ? ", end needles too" : ", without the end needles"),
        {SetSelection{true, end_needles_}});
    if (row.main) {
      ++list_.rows_before;
      add(StepKind::selecting_row,
          fmt::format("Knit back to the {}: it knits plain and selects the needles of row 1.", word_for_side(to)),
          {KnitPass{}});
    } else {
      add(StepKind::selecting_row,
          fmt::format("Take the carriage to the {} in a free pass, without knitting: it stores row 1 of the card.",
                      word_for_side(to)),
          {KnitPass{true}});
    }
  }

  void release() {
    add(StepKind::card_released, "Release the card, so that it moves on with each pass.", {LockCard{false}});
    locked_ = false;
  }

  void lock(bool locked) {
    if (!by_card() || locked == locked_) {
      return;
    }
    locked_ = locked;
    locked
        ? (void)add(StepKind::card_locked,
                    fmt::format("Lock the card: row {} takes two passes, and is read in both.", row_), {LockCard{true}})
        : (void)add(StepKind::card_released, "Release the card.", {LockCard{false}});
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
    std::string text = knit_words(first, gathered_last_, side_);
    if (gathered_plain_) {
      text = fmt::format("Knit {} plain in {} ({}), ending on the {}.",
                         count == 1 ? "one row" : fmt::format("{} rows", count), yarn(last.main),
                         first_to_last(first, gathered_last_, "row", "rows"), word_for_side(side_));
    }
    if (by_card() && gathered_last_ < static_cast<int>(rows_.rows.size()) && gathered_plain_) {
      text += next_pass() ? fmt::format(" The carriage selects row {} meanwhile.", gathered_last_ + 1)
                          : fmt::format(" The carriage stores row {} meanwhile.", gathered_last_ + 1);
    }
    text += fmt::format(" The counter shows {}.", counter_);
    list_.steps.push_back({StepKind::knit_rows, StepPart::knitting, std::move(text), std::move(gathered_), first,
                           gathered_last_, counter_, side_});
  }

  void knit_by_hand(const RowToKnit& row) {
    const auto needles = needles_in_row(document_, profile_, row);
    const std::string forward = row.all_contrast ? "every needle" : needles_words(needles);
    add(StepKind::knit_by_hand,
        needles.empty()
            ? fmt::format("Row {}: no needle comes forward. Knit to the {}.", row_, word_for_side(other(side_)))
            : fmt::format("Row {}: bring forward {}. Knit to the {}.", row_, forward, word_for_side(other(side_))),
        {MoveNeedles{spans_of(needles), NeedlePosition::upper}, KnitPass{}});
  }

  void one_yarn_pass(const RowToKnit& row, const Pass& pass, bool first, bool last) {
    const bool contrast = pass.contrast != 0;
    const char wanted = contrast ? pass.contrast : pass.main;
    act_before(row_, first ? 1 : 2);
    if (row.passes == 1) {
      lock(false);
      needles_stayed_ = false;
      add(StepKind::knit_rows,
          fmt::format("Row {}: every needle knits {}. Set the carriage to plain knitting{} and knit to the {}.", row_,
                      yarn(wanted), by_card() ? ", still selecting from the card," : "", word_for_side(other(side_))),
          {SetKnitting{KnitSetting::plain}, KnitPass{}});
      return;
    }
    lock(!last);
    std::vector<MachineAction> actions;
    std::string text = fmt::format("Row {}, {} pass, {}:", row_, first ? "first" : "second", yarn(wanted));
    if (!by_card() && (first || row.contrast_first)) {
      const auto needles = needles_in_row(document_, profile_, row);
      const std::string which = needles.empty() ? "no needle" : needles_words(needles);
      if (needles_stayed_) {
        text += " push every needle back, then";
        actions.emplace_back(
            MoveNeedles{{{first_needle_of(document_), last_needle_of(document_)}}, NeedlePosition::working});
      }
      text += fmt::format(" bring forward {}{}.", first ? "" : "the same needles again: ", which);
      actions.emplace_back(MoveNeedles{spans_of(needles), NeedlePosition::upper});
    }
    needles_stayed_ = !contrast && last; // those that slipped in a row's last pass
    const char* const chosen = by_card() && !next_pass() ? "needles that the card selects" : "needles standing forward";
    text += contrast ? fmt::format(" Set the carriage so that only the {} knit.", chosen)
                     : fmt::format(" Set the carriage so that the {} slip.", chosen);
    actions.emplace_back(SetKnitting{contrast ? KnitSetting::forward_only : KnitSetting::back_only});
    actions.emplace_back(KnitPass{});
    text += fmt::format(" Knit to the {}.", word_for_side(other(side_)));
    if (last) {
      text += fmt::format(" The counter shows {}.", counter_ + 1);
    }
    add(by_card() ? StepKind::knit_rows : StepKind::knit_by_hand, std::move(text), std::move(actions));
  }

  void move_weights() {
    if (rows_since_weights_ < rows_between_weights_ || row_ == static_cast<int>(rows_.rows.size())) {
      return;
    }
    rows_since_weights_ = 0;
    finish_gathered();
    add(StepKind::weights_up, "Move the edge weights up."); // every 10 cm of work: common practice, number from memory
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
        push_back(row, fmt::format("Push {{}} back to working position: row {} has no contrast stitch.", row));
        break;
      case Doing::all_needles_back: push_back(row, push_back_words(row)); break;
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
    add(StepKind::lift_float,
        needles.size() == 1
            ? fmt::format("Catch the float of row {}: with the transfer tool lift the yarn that passes "
                          "behind {} onto that needle, beside its stitch.",
                          row, name_of(needles.front()))
            : fmt::format("Catch the floats of row {}: with the transfer tool lift the yarn that passes "
                          "behind each of {} onto that needle, beside its stitch.",
                          row, needles_words(needles)),
        std::move(actions));
  }

  // Behind the last row; before the plain row at the end, and behind that.
  [[nodiscard]] std::string push_back_words(int row) const {
    if (row > static_cast<int>(rows_.rows.size()) + 1) {
      return "Push {} back to working position.";
    }
    return document_.card.loop
               ? "Push {} back to working position: the card has gone on to its first rows, which are not wanted now."
               : "Push {} back to working position: the card has come to its overlap rows, which select every needle.";
  }

  void push_back(int row, const std::string& words) {
    const std::vector<Needle> needles = selected_needles(document_, profile_, rows_, row);
    const std::string which =
        static_cast<int>(needles.size()) == stitches_of(document_) && needles.size() > 2
            ? fmt::format("every needle, {} to {},", name_of(needles.front()), name_of(needles.back()))
            : needles_words(needles);
    add(StepKind::needles_back, fmt::format(fmt::runtime(words), which),
        {MoveNeedles{spans_of(needles), NeedlePosition::working}});
  }

  void take_out(const Action& action, StepKind kind) {
    finish_gathered(); // the carriage's side is that behind the rows gathered so far
    std::vector<MachineAction> actions{TakeOut{action.feeder}};
    std::string text = fmt::format("Take {} out of the feeder", yarn(action.yarn));
    if (action.hangs) {
      text += fmt::format(" and let it hang on the {}, where it is wanted again.", word_for_side(side_));
    } else {
      actions.emplace_back(CutYarn{action.yarn});
      text += action.far_side ? " and cut it: it is wanted again on the other side." : " and cut it.";
    }
    add(kind, std::move(text), std::move(actions));
  }

  void thread(const Action& action, StepKind kind) {
    add(kind,
        fmt::format("Thread {} into {}{}", yarn(action.yarn),
                    one_feeder()         ? "the feeder"
                    : action.feeder == 1 ? "the first feeder (main)"
                                         : "the second feeder (contrast)",
                    action.hangs ? "." : "; hang a peg on its end as a weight."),
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
    add(StepKind::end_row, fmt::format("Knit one plain row, to the {}.", word_for_side(other(side_))), {KnitPass{}});
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
        by_card() ? "Set the carriage to plain knitting, selecting nothing, so that no stitch can drop from here on."
                  : "Set the carriage to plain knitting.",
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
