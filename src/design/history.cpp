// The list of what was done.
#include "design/history.hpp"

#include <algorithm>
#include <ranges>

namespace punchwright {

Failure History::apply(Document& document, const Edit& edit) {
  auto change = apply_edit(document, edit);
  if (!change) {
    return change.error();
  }
  if (change->nothing()) {
    return std::nullopt;
  }
  ++revision_;
  if (drag_open_ && drag_has_step_) {
    steps_.back().changes.push_back(std::move(change).value());
    return std::nullopt;
  }
  steps_.resize(done_);
  if (saved_at_ && *saved_at_ > done_) {
    saved_at_.reset();
  }
  Step step{drag_open_ ? drag_name_ : name_of(edit), {}};
  step.changes.push_back(std::move(change).value());
  steps_.push_back(std::move(step));
  done_ = steps_.size();
  drag_has_step_ = drag_open_;
  return std::nullopt;
}

void History::begin_drag(std::string name) {
  end_drag();
  drag_open_ = true;
  drag_has_step_ = false;
  drag_name_ = std::move(name);
}

void History::end_drag() {
  drag_open_ = false;
  drag_has_step_ = false;
}

void History::cancel_drag(Document& document) {
  const bool has_step = drag_open_ && drag_has_step_;
  end_drag();
  if (has_step) {
    undo(document);
    steps_.resize(done_);
  }
}

bool History::undo(Document& document) {
  end_drag();
  if (!can_undo()) {
    return false;
  }
  --done_;
  for (Change& change : std::views::reverse(steps_[done_].changes)) {
    exchange(document, change);
  }
  ++revision_;
  return true;
}

bool History::redo(Document& document) {
  end_drag();
  if (!can_redo()) {
    return false;
  }
  for (Change& change : steps_[done_].changes) {
    exchange(document, change);
  }
  ++done_;
  ++revision_;
  return true;
}

void History::mark_saved() {
  end_drag();
  saved_at_ = done_;
}

} // namespace punchwright
