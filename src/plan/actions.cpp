// What is done with the hands between the passes: yarns in and out of the feeders, needles pushed back.
#include "plan/plan.hpp"
#include "plan/yarn_uses.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright {
namespace {

// The feeders as they are threaded, and the yarns that hang at the edges, walked along the passes.
class Hands {
public:
  Hands(const Document& document, const Profile& profile, const RowsToKnit& rows)
      : document_(document), profile_(profile), rows_(rows), uses_(rows),
        // Where the carriage selects for the next pass, it has brought the end needles forward before a plain row as
        // well; the second feeder is empty then, and they would drop their stitches. With one feeder the carriage is
        // set to plain for such a row, and they knit as the others do.
        pushes_back_(profile.selects == Selects::next_pass && profile.feeders > 1),
        end_needles_(end_needles_knit_contrast(document, profile)) {
    thread_[0] = {rows.rows.front().main, Doing::main_out};
  }

  std::vector<RowActions> all() {
    int number = 0;
    for (const RowToKnit& row : rows_.rows) {
      ++number;
      int in_row = 0;
      lift_floats();
      for (const Pass& pass : passes_of(row)) {
        side_ = other(end_of(pass.travel));
        one_feeder() ? change_yarn(pass) : change_yarns(pass, row.contrast == 0 && pushes_back_ && end_needles_);
        side_ = end_of(pass.travel);
        ++pass_;
        keep(number, ++in_row);
      }
      lifted_ = caught_needles(document_, profile_, row);
    }
    finish(number);
    return std::move(result_);
  }

private:
  struct Threaded {
    char yarn = 0;
    Doing taken_out_as = Doing::main_out;
  };

  [[nodiscard]] bool one_feeder() const { return profile_.feeders == 1; }

  void keep(int row, int pass) {
    if (!actions_.empty()) {
      result_.push_back({row, pass, std::move(actions_)});
      actions_ = {};
    }
  }

  // Those of the row before, while the yarns still lie as they were knitted.
  void lift_floats() {
    if (!lifted_.empty()) {
      actions_.push_back({Doing::lift_floats, 0, 0, false, false, std::move(lifted_)});
      lifted_ = {};
    }
  }

  void change_yarns(const Pass& pass, bool needles_back) {
    take_out_unless(1, pass.contrast);
    if (needles_back) {
      actions_.push_back({Doing::end_needles_back, 0, 0, false, false});
    }
    take_out_unless(0, pass.main);
    put_in(0, pass.main, Doing::main_in);
    put_in(1, pass.contrast, Doing::contrast_in);
  }

  void change_yarn(const Pass& pass) {
    const char wanted = pass.main != 0 ? pass.main : pass.contrast;
    take_out_unless(0, wanted);
    put_in(0, wanted, pass.main != 0 ? Doing::main_in : Doing::contrast_in);
  }

  void take_out_unless(std::size_t feeder, char wanted) {
    Threaded& threaded = thread_[feeder];
    if (threaded.yarn == 0 || threaded.yarn == wanted) {
      return;
    }
    const auto again = uses_.after(pass_, threaded.yarn);
    const bool hangs = again == side_;
    actions_.push_back({threaded.taken_out_as, threaded.yarn, static_cast<int>(feeder) + 1, hangs, again && !hangs});
    if (hangs) {
      hanging_.push_back(threaded.yarn);
    } else {
      std::erase(hanging_, threaded.yarn);
    }
    threaded.yarn = 0;
  }

  void put_in(std::size_t feeder, char yarn, Doing doing) {
    Threaded& threaded = thread_[feeder];
    if (yarn == 0) {
      return;
    }
    if (threaded.yarn != yarn) {
      const bool hung = std::erase(hanging_, yarn) > 0;
      actions_.push_back({doing, yarn, static_cast<int>(feeder) + 1, hung, false});
    }
    threaded = {yarn, doing == Doing::main_in ? Doing::main_out : Doing::contrast_out};
  }

  // Nothing but main stays threaded behind the last row. Behind it an open card shows its fully punched overlap rows, a
  // loop its first rows: whatever the carriage has brought forward would drop its stitch.
  void finish(int last) {
    const Pass plain{travel_from(side_), rows_.rows.back().main, 0};
    lift_floats();
    one_feeder() ? change_yarn(plain) : change_yarns(plain, false);
    for (const int beyond : {1, 2}) {
      if (pushes_back_ && !selected_needles(document_, profile_, rows_, last + beyond).empty()) {
        actions_.push_back({Doing::all_needles_back, 0, 0, false, false});
      }
      keep(last + beyond, 1);
    }
  }

  const Document& document_;
  const Profile& profile_;
  const RowsToKnit& rows_;
  YarnUses uses_;
  bool pushes_back_;
  bool end_needles_;
  std::array<Threaded, 2> thread_{};
  std::vector<char> hanging_;
  Side side_ = Side::right; // of the carriage
  std::size_t pass_ = 0;
  std::vector<Action> actions_; // before the present pass
  std::vector<Needle> lifted_;  // floats of the row before, that are caught
  std::vector<RowActions> result_;
};

} // namespace

std::vector<RowActions> actions_of(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  return rows.rows.empty() ? std::vector<RowActions>{} : Hands(document, profile, rows).all();
}

std::string text_of(const Action& action, const Document& document) {
  const auto name = [&] { return action.yarn != 0 ? yarn_of(document, action.yarn).name : std::string(); };
  switch (action.doing) {
  case Doing::contrast_out:
  case Doing::main_out: return said("{0} out", name());
  case Doing::contrast_in:
  case Doing::main_in: return said("{0} in", name()); // "{} in" is a length
  case Doing::lift_floats: return said("lift floats onto {}", text_of(runs_of(action.needles)));
  case Doing::end_needles_back: return tr("end needles back");
  case Doing::all_needles_back: break;
  }
  return tr("all needles back");
}

std::string text_of(const std::vector<Action>& actions, const Document& document) {
  std::string text;
  for (const Action& action : actions) {
    text += (text.empty() ? "" : ", ") + text_of(action, document);
  }
  return text;
}

std::string text_at_end(const std::vector<RowActions>& actions, const RowsToKnit& rows, const Document& document) {
  const int last = static_cast<int>(rows.rows.size());
  std::string text;
  for (const RowActions& entry : actions) {
    if (entry.row > last + 1) {
      text += fmt::format("{}{}; ", text.empty() ? "" : "; ", tr("plain row"));
    }
    text += entry.row > last ? text_of(entry.actions, document) : "";
  }
  return text;
}

} // namespace punchwright
