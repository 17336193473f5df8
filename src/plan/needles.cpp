// The needles of a row, one by one and in runs.
#include "plan/plan.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {

std::vector<bool> stitches_in_row(const Document& document, const Profile& profile, const RowToKnit& row) {
  std::vector<bool> stitches(static_cast<std::size_t>(stitches_of(document)), false);
  if (row.contrast == 0) {
    return stitches;
  }
  const Placement placement(document, profile);
  const auto repeat = static_cast<std::size_t>(document.grid.width());
  Needle needle = first_needle_of(document);
  for (std::size_t stitch = 0; stitch < std::min(repeat, stitches.size()); ++stitch, ++needle.position) {
    stitches[stitch] = document.grid.at(placement.column_of(needle), row.drawn);
  }
  for (std::size_t stitch = repeat; stitch < stitches.size(); ++stitch) {
    stitches[stitch] = stitches[stitch - repeat];
  }
  if (end_needles_knit_contrast(document, profile)) {
    stitches.front() = true;
    stitches.back() = true;
  }
  return stitches;
}

std::vector<Needle> needles_in_row(const Document& document, const Profile& profile, const RowToKnit& row) {
  std::vector<Needle> needles;
  Needle needle = first_needle_of(document);
  for (const bool contrast : stitches_in_row(document, profile, row)) {
    if (contrast) {
      needles.push_back(needle);
    }
    ++needle.position;
  }
  return needles;
}

std::vector<Needle> caught_needles(const Document& document, const Profile& profile, const RowToKnit& row) {
  std::vector<Needle> needles;
  if (!row.two_coloured() || row.drawn < 0 || !any_marked(document.marks.caught, row.drawn)) {
    return needles;
  }
  const std::vector<bool> stitches = stitches_in_row(document, profile, row);
  const Placement placement(document, profile);
  const auto knits_beyond = [&](auto first, auto last, bool contrast) {
    return std::find(first, last, contrast) != last;
  };
  for (auto stitch = stitches.begin(); stitch != stitches.end(); ++stitch) {
    const Needle needle{first_needle_of(document).position + static_cast<int>(stitch - stitches.begin())};
    if (is_marked(document.marks.caught, placement.column_of(needle), row.drawn) &&
        knits_beyond(stitches.begin(), stitch, !*stitch) && knits_beyond(stitch, stitches.end(), !*stitch)) {
      needles.push_back(needle);
    }
  }
  return needles;
}

std::vector<NeedleRun> runs_of(const std::vector<Needle>& needles) {
  std::vector<NeedleRun> runs;
  for (const Needle needle : needles) {
    if (!runs.empty() && runs.back().last.position + 1 == needle.position) {
      runs.back().last = needle;
    } else {
      runs.push_back({needle, needle});
    }
  }
  return runs;
}

std::string text_of(const std::vector<NeedleRun>& runs) {
  if (runs.empty()) {
    return tr("none");
  }
  std::string text;
  for (const NeedleRun& run : runs) {
    if (!text.empty()) {
      text += ' ';
    }
    text += name_of(run.first);
    if (run.first != run.last) {
      text += "–" + name_of(run.last);
    }
  }
  return text;
}

std::vector<int> punched_columns(const Document& document, const Profile& profile, const RowsToKnit& rows, int row) {
  std::vector<int> columns;
  if (!profile.card || rows.circuit == 0) {
    return columns;
  }
  const Placement placement(document, profile);
  const RowToKnit& knitted = rows.rows[static_cast<std::size_t>((row - 1) % rows.circuit)];
  for (int column = 1; column <= profile.card->repeat; ++column) {
    const bool contrast = knitted.contrast != 0 && document.grid.at(placement.column_on_card(column), knitted.drawn);
    if (contrast == (profile.card->hole == HoleMeans::contrast)) {
      columns.push_back(column);
    }
  }
  return columns;
}

} // namespace punchwright
