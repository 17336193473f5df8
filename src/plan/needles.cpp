// The needles of a row, one by one and in runs.
#include "plan/plan.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {

void lay_stitches(const Document& document, const Profile& profile, const RowToKnit& row, std::vector<char>& stitches) {
  const auto count = static_cast<std::size_t>(stitches_of(document));
  stitches.assign(count, 0);
  if (row.contrast == 0) {
    return;
  }
  const Placement placement(document, profile);
  const Grid& grid = document.grid;
  const auto drawn = grid.row(row.drawn);
  const auto repeat = static_cast<std::size_t>(grid.width());
  Needle needle = first_needle_of(document);
  for (std::size_t stitch = 0; stitch < std::min(repeat, count); ++stitch, ++needle.position) {
    const auto column = static_cast<std::size_t>(placement.column_of(needle));
    stitches[stitch] = static_cast<char>(drawn[column / Grid::bits_in_word] >> (column % Grid::bits_in_word) & 1U);
  }
  for (std::size_t laid = repeat; laid < count; laid *= 2) { // as many whole repeats again
    std::copy_n(stitches.begin(), std::min(laid, count - laid), stitches.begin() + static_cast<std::ptrdiff_t>(laid));
  }
  if (end_needles_knit_contrast(document, profile)) {
    stitches.front() = 1;
    stitches.back() = 1;
  }
}

std::vector<bool> stitches_in_row(const Document& document, const Profile& profile, const RowToKnit& row) {
  std::vector<char> stitches;
  lay_stitches(document, profile, row, stitches);
  return {stitches.begin(), stitches.end()};
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
