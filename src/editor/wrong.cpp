// Marks and the questions that they make.
#include "editor/wrong.hpp"

#include "editor/applying.hpp"
#include "plan/plan.hpp"

#include <algorithm>

namespace punchwright::editor {
namespace {

char& mark_at_cursor(SeenForm& form) {
  return form.rows[static_cast<std::size_t>(form.cursor.row)].marks[static_cast<std::size_t>(form.cursor.column)];
}

void turn_yarn(SeenForm& form) {
  char& mark = mark_at_cursor(form);
  const SeenRow& row = form.rows[static_cast<std::size_t>(form.cursor.row)];
  const char planned =
      form.planned[static_cast<std::size_t>(row.planned)].marks[static_cast<std::size_t>(form.cursor.column)];
  const char before = mark == '.' || mark == '#' ? mark : planned;
  mark = before == '#' ? '.' : '#';
}

// As it is looked at: on the knit side left and right are exchanged. What comes in at the edge, and the end stitches,
// whose needles knit by a rule of their own, are marked as not looked at.
void shift(SeenForm& form, int by) {
  const bool right = (form.face == Face::purl ? by : -by) > 0;
  for (int row = form.cursor.row; row < form.height(); ++row) {
    std::string& marks = form.rows[static_cast<std::size_t>(row)].marks;
    marks.front() = marks.back() = '?';
    if (right) {
      marks.insert(marks.begin(), '?');
      marks.pop_back();
    } else {
      marks.erase(marks.begin());
      marks += '?';
    }
    marks.front() = marks.back() = '?';
  }
}

void keep_inside(SeenForm& form) {
  form.cursor.row = std::clamp(form.cursor.row, 0, std::max(0, form.height() - 1));
  form.cursor.column = std::clamp(form.cursor.column, 0, std::max(0, form.width() - 1));
}

} // namespace

SeenForm seen_form(const Document& document, const Profile& profile, const RowsToKnit& rows, int knitted) {
  SeenForm form;
  const int count = std::min(static_cast<int>(rows.rows.size()), most_seen_rows);
  for (int row = 0; row < count; ++row) {
    SeenRow planned;
    planned.planned = row;
    for (const bool contrast : stitches_in_row(document, profile, rows.rows[static_cast<std::size_t>(row)])) {
      planned.marks += contrast ? '#' : '.';
    }
    form.planned.push_back(std::move(planned));
  }
  form = with_height(std::move(form), knitted);
  form.cursor.row = form.height() - 1;
  keep_inside(form);
  return form;
}

SeenForm with_height(SeenForm form, int rows) {
  const auto most = form.planned.size();
  const auto wanted = std::min(most, static_cast<std::size_t>(std::max(1, rows)));
  while (form.rows.size() < wanted) {
    form.rows.push_back(form.planned[form.rows.size()]);
  }
  form.rows.resize(wanted);
  keep_inside(form);
  return form;
}

SeenForm with_cursor(SeenForm form, int columns, int rows) {
  form.cursor.column += form.face == Face::purl ? columns : -columns;
  form.cursor.row += rows;
  keep_inside(form);
  return form;
}

SeenForm with_change(SeenForm form, SeenChange change) {
  if (form.rows.empty() || form.width() == 0) {
    return form;
  }
  const auto row = static_cast<std::size_t>(form.cursor.row);
  SeenRow& here = form.rows[row];
  switch (change) {
  case SeenChange::other_yarn: turn_yarn(form); break;
  case SeenChange::dropped: mark_at_cursor(form) = 'o'; break;
  case SeenChange::not_looked_at: mark_at_cursor(form) = '?'; break;
  case SeenChange::as_planned: here = form.planned[row]; break;
  case SeenChange::row_main: here.marks.assign(here.marks.size(), '.'); break;
  case SeenChange::row_contrast: here.marks.assign(here.marks.size(), '#'); break;
  case SeenChange::row_missing:
    if (form.rows.size() > 1) {
      form.rows.erase(form.rows.begin() + static_cast<std::ptrdiff_t>(row));
    }
    break;
  case SeenChange::row_twice:
    form.rows.insert(form.rows.begin() + static_cast<std::ptrdiff_t>(row), SeenRow(here));
    break;
  case SeenChange::shift_left: shift(form, -1); break;
  case SeenChange::shift_right: shift(form, 1); break;
  case SeenChange::all_as_planned: {
    const int height = form.height();
    form.rows.clear();
    form = with_height(std::move(form), height);
    break;
  }
  }
  keep_inside(form);
  return form;
}

bool is_marked(const SeenForm& form, int column, int row) {
  const auto place = static_cast<std::size_t>(row);
  const SeenRow& here = form.rows[place];
  return place >= form.planned.size() ||
         here.marks[static_cast<std::size_t>(column)] != form.planned[place].marks[static_cast<std::size_t>(column)];
}

int marked_stitches(const SeenForm& form) {
  int count = 0;
  for (int row = 0; row < form.height(); ++row) {
    for (int column = 0; column < form.width(); ++column) {
      count += is_marked(form, column, row) ? 1 : 0;
    }
  }
  return count;
}

std::vector<std::string> picture_of(const SeenForm& form) {
  std::vector<std::string> picture;
  for (int row = 0; row < form.height(); ++row) {
    std::string marks = form.rows[static_cast<std::size_t>(row)].marks;
    for (int column = 0; column < form.width() && form.rest_unseen; ++column) {
      if (!is_marked(form, column, row)) {
        marks[static_cast<std::size_t>(column)] = '?';
      }
    }
    picture.push_back(std::move(marks));
  }
  return picture;
}

WrongDialog wrong_dialog_for(App& app) {
  refresh(app);
  const auto rows = static_cast<int>(app.caches.rows.rows.size());
  const int known = app.bench.place.rows; // as the bench left it
  return {seen_form(app.work.design, app.work.profile, app.caches.rows, known > 0 ? known : rows), nullptr, nullptr};
}

} // namespace punchwright::editor
