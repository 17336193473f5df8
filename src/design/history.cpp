// The list of what was done.
#include "design/history.hpp"

#include <algorithm>
#include <ranges>

namespace punchwright {
namespace {

// What leads from `from` to `to`, with the content of `to`.
std::vector<Change> changes_between(const Document& from, const Document& to) {
  Document settings = to;
  settings.grid = from.grid;
  settings.marks = from.marks;
  settings.bands = from.bands;
  const bool drawing_differs = from.grid != to.grid || from.bands != to.bands;
  std::vector<Change> changes;
  if (settings != from) {
    settings.grid = {};
    settings.marks = {};
    settings.bands.clear();
    changes.push_back({Change::Settings{std::move(settings)}, std::nullopt});
  }
  if (drawing_differs) {
    changes.push_back({Change::Drawing{to.grid, to.bands, to.extras}, std::nullopt});
  }
  if (from.marks != to.marks) {
    changes.push_back({std::vector<Change::RowDifference>{}, to.marks});
  }
  return changes;
}

} // namespace

History History::restored(const Document& now, const std::vector<KeptStep>& done, const std::vector<KeptStep>& undone) {
  History history;
  const Document* here = &now;
  for (const KeptStep& step : done) {
    history.steps_.push_back({step.name, changes_between(*here, step.other)});
    here = &step.other;
  }
  std::ranges::reverse(history.steps_);
  history.done_ = done.size();
  here = &now;
  for (const KeptStep& step : undone) {
    history.steps_.push_back({step.name, changes_between(*here, step.other)});
    here = &step.other;
  }
  history.saved_at_.reset();
  return history;
}

History History::latest(std::size_t most) const {
  History copy;
  const std::size_t first = done_ - std::min(done_, most);
  const std::size_t end = done_ + std::min(steps_.size() - done_, most);
  copy.steps_.assign(steps_.begin() + static_cast<std::ptrdiff_t>(first),
                     steps_.begin() + static_cast<std::ptrdiff_t>(end));
  copy.done_ = done_ - first;
  copy.saved_at_ =
      saved_at_ && *saved_at_ >= first && *saved_at_ <= end ? std::optional(*saved_at_ - first) : std::nullopt;
  copy.revision_ = revision_;
  return copy;
}

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
  Step step{drag_open_ ? drag_name_ : name_of(edit), {}, document.grid.height()};
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

void History::forget_saved() {
  end_drag();
  saved_at_.reset();
}

} // namespace punchwright
