// What is done with the hands between the rows: yarns in and out of the feeders, end needles pushed back.
#include "plan/plan.hpp"

#include <fmt/format.h>

namespace punchwright {
namespace {

// Which yarns are threaded, and what it takes to have those that a row needs.
class Feeders {
public:
  explicit Feeders(char main) : main_(main) {}

  std::vector<Action> change_for(const RowToKnit& row) {
    std::vector<Action> actions;
    const char main = row.all_contrast ? char{0} : row.main;
    if (contrast_ != 0 && contrast_ != row.contrast) {
      actions.push_back({Doing::contrast_out, contrast_});
      contrast_ = 0;
    }
    if (main_ != 0 && main_ != main) {
      actions.push_back({Doing::main_out, main_});
      main_ = 0;
    }
    if (main != 0 && main_ == 0) {
      actions.push_back({Doing::main_in, main});
      main_ = main;
    }
    if (row.contrast != 0 && contrast_ == 0) {
      actions.push_back({Doing::contrast_in, row.contrast});
      contrast_ = row.contrast;
    }
    return actions;
  }

  // Nothing but main stays threaded behind the last row.
  std::vector<Action> change_for_end(char main) {
    RowToKnit plain;
    plain.main = main;
    return change_for(plain);
  }

private:
  char main_;
  char contrast_ = 0;
};

} // namespace

std::vector<RowActions> actions_of(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  // Where the carriage selects for the next pass, it has brought the end needles forward before a plain row as well;
  // the second feeder is empty then, and they would drop their stitches.
  const bool push_back = profile.selects == Selects::next_pass && end_needles_knit_contrast(document, profile);
  std::vector<RowActions> result;
  if (rows.rows.empty()) {
    return result;
  }
  Feeders feeders(rows.rows.front().main);
  int number = 0;
  for (const RowToKnit& row : rows.rows) {
    ++number;
    auto actions = feeders.change_for(row);
    if (row.contrast == 0 && push_back) {
      const bool contrast_went_first = !actions.empty() && actions.front().doing == Doing::contrast_out;
      actions.insert(actions.begin() + (contrast_went_first ? 1 : 0), Action{Doing::end_needles_back, 0});
    }
    if (!actions.empty()) {
      result.push_back({number, std::move(actions)});
    }
  }
  auto at_end = feeders.change_for_end(rows.rows.back().main);
  if (profile.selects == Selects::next_pass) {
    // Behind the last row an open card shows its fully punched overlap rows, a loop its first row: whatever the
    // carriage has brought forward would drop its stitch.
    at_end.push_back({Doing::all_needles_back, 0});
  }
  if (!at_end.empty()) {
    result.push_back({number + 1, std::move(at_end)});
  }
  return result;
}

std::string text_of(const Action& action, const Document& document) {
  const auto name = [&] { return action.yarn != 0 ? yarn_of(document, action.yarn).name : std::string(); };
  switch (action.doing) {
  case Doing::contrast_out:
  case Doing::main_out: return fmt::format("{} out", name());
  case Doing::contrast_in:
  case Doing::main_in: return fmt::format("{} in", name());
  case Doing::end_needles_back: return "end needles back";
  case Doing::all_needles_back: break;
  }
  return "all needles back";
}

} // namespace punchwright
