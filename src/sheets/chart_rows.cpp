// Needles of each drawn row, and the actions found again by row.
#include "sheets/chart_rows.hpp"

#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {

namespace {

std::vector<Needle> needles_where(const std::vector<bool>& forward, Needle first, bool wanted) {
  std::vector<Needle> needles;
  for (std::size_t stitch = 0; stitch < forward.size(); ++stitch) {
    if (forward[stitch] == wanted) {
      needles.push_back(Needle{first.position + static_cast<int>(stitch)});
    }
  }
  return needles;
}

ChartNeedles needles_from(std::vector<bool> forward, Needle first, const ChartWishes& wishes) {
  const std::vector<Needle> to_front = needles_where(forward, first, true);
  const std::vector<Needle> to_back = needles_where(forward, first, false);
  ChartNeedles needles;
  needles.runs = runs_of(to_front);
  needles.count = static_cast<int>(to_front.size());
  needles.lists_those_that_stay = wishes.stay_back_where_fewer && to_back.size() < to_front.size();
  needles.listed = needles.lists_those_that_stay ? runs_of(to_back) : needles.runs;
  needles.forward = std::move(forward);
  return needles;
}

} // namespace

ChartRows::ChartRows(const Document& document, const Profile& profile, const ChartWishes& wishes)
    : document_(document), profile_(profile), rows_(rows_to_knit(document, profile)),
      setup_(setup_rows(document, profile)), actions_(actions_of(document, profile, rows_)) {
  for (const Yarn& yarn : document.yarns) {
    const std::string name = utf8_of(characters_of(yarn.name));
    yarn_names_.emplace(yarn.key, name.empty() ? std::string(1, yarn.key) : name);
  }
  const Needle first = first_needle_of(document);
  const auto stitches = static_cast<std::size_t>(stitches_of(document));
  needles_.push_back(needles_from(std::vector<bool>(stitches, false), first, wishes));
  needles_.resize(static_cast<std::size_t>(document.grid.height()) + 1);
  for (const RowToKnit& row : rows_.rows) {
    const auto place = static_cast<std::size_t>(row.drawn + 1);
    if (needles_[place].forward.empty()) {
      needles_[place] = needles_from(stitches_in_row(document, profile, row), first, wishes);
      needles_[place].caught = caught_needles(document, profile, row);
    }
  }
}

const std::string& ChartRows::yarn_name(char key) const {
  return yarn_names_.at(yarn_of(document_, key).key);
}

const ChartNeedles& ChartRows::needles_of(const RowToKnit& row) const {
  return needles_[row.contrast == 0 ? 0 : static_cast<std::size_t>(row.drawn + 1)];
}

std::string ChartRows::list_of(const RowToKnit& row) const {
  const ChartNeedles& needles = needles_of(row);
  if (!needles.lists_those_that_stay) {
    return text_of(needles.listed);
  }
  return needles.listed.empty() ? tr("all") : said("all but {}", text_of(needles.listed));
}

std::string ChartRows::done_before(int row) const {
  const auto found = std::ranges::lower_bound(actions_, row, {}, &RowActions::row);
  // Between the two passes of a row the passes themselves say which yarn is wanted.
  return found != actions_.end() && found->row == row && found->pass == 1 ? text_of(found->actions, document_) : "";
}

std::string ChartRows::done_at_end() const {
  return text_at_end(actions_, rows_, document_);
}

} // namespace punchwright
