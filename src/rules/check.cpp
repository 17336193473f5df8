// All checks of a design on a machine, gathered and put in order.
#include "rules/check_rows.hpp"
#include "rules/checks.hpp"
#include "rules/findings.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

namespace punchwright {
namespace {

void check_width(const Document& document, const Profile& profile, std::vector<Finding>& findings) {
  if (!profile.card || profile.card->repeat % document.grid.width() == 0) {
    return;
  }
  Finding finding;
  finding.id = FindingId::repeat_width;
  finding.severity = Severity::fault;
  finding.stitches = document.grid.width();
  finding.limit = profile.card->repeat;
  findings.push_back(std::move(finding));
}

void check_single_colour_rows(const Document& document, std::vector<Finding>& findings) {
  int row = 0;
  for (const Band& band : document.bands) {
    for (const int above = row + band.rows; row < above; ++row) {
      const bool all_main = document.grid.all_main(row);
      if (!all_main && !document.grid.all_contrast(row)) {
        continue;
      }
      Finding finding;
      finding.id = all_main ? FindingId::row_all_main : FindingId::row_all_contrast;
      finding.severity = Severity::note;
      finding.row = row;
      finding.yarn = all_main ? band.main : band.contrast.value_or(band.main);
      finding.other = all_main ? band.contrast.value_or(char{0}) : band.main;
      findings.push_back(std::move(finding));
    }
  }
}

// A yarn hangs at the side where its last pass ended. After an odd number of passes without it the carriage stands at
// the other side (common practice).
void check_yarn_sides(const RowsToKnit& rows, std::vector<Finding>& findings) {
  std::array<long long, 128> last_pass{};
  last_pass.fill(-1);
  std::vector<std::size_t> reported; // by drawn row, the place among the findings behind which it is; 0: nowhere
  long long pass = 0;
  for (const RowToKnit& row : rows.rows) {
    const auto contrast = static_cast<std::size_t>(row.contrast) % last_pass.size();
    if (row.contrast != 0) {
      const bool goes_second = row.passes == 2 && !row.contrast_first;
      const long long before = last_pass[contrast];
      const long long gap = pass + (goes_second ? 1 : 0) - before - 1;
      if (before >= 0 && gap % 2 != 0) {
        const auto drawn = static_cast<std::size_t>(row.drawn); // an inserted row has no contrast
        reported.resize(std::max(reported.size(), drawn + 1));
        if (reported[drawn] != 0) {
          ++findings[reported[drawn] - 1].times;
        } else {
          reported[drawn] = findings.size() + 1;
          Finding finding;
          finding.id = FindingId::yarn_on_other_side;
          finding.severity = Severity::warning;
          finding.row = row.drawn;
          finding.yarn = row.contrast;
          finding.gap = static_cast<int>(gap);
          findings.push_back(std::move(finding));
        }
      }
      last_pass[contrast] = pass + (goes_second ? 1 : 0);
    }
    if (!row.all_contrast) {
      last_pass[static_cast<std::size_t>(row.main) % last_pass.size()] =
          pass + (row.passes == 2 && row.contrast_first ? 1 : 0);
    }
    pass += row.passes;
  }
}

// Knitting that nobody can finish is cut off, so that it takes no memory; what is left out must be said.
void check_amount(const RowsToKnit& rows, std::vector<Finding>& findings) {
  if (!rows.cut_off) {
    return;
  }
  Finding finding;
  finding.id = FindingId::too_many_rows;
  finding.severity = Severity::fault;
  finding.limit = most_rows_to_knit;
  findings.push_back(std::move(finding));
}

void check_yarns(const Document& document, std::vector<Finding>& findings) {
  constexpr double hardly_shows = 2.0; // to 1: below that the pattern hardly shows (common practice)
  std::vector<std::pair<char, char>> seen;
  int row = 0; // lowest of the band
  for (const Band& band : document.bands) {
    const int lowest = std::exchange(row, row + band.rows);
    if (!band.contrast) {
      continue;
    }
    const std::pair pair{band.main, *band.contrast};
    if (std::ranges::find(seen, pair) != seen.end()) {
      continue;
    }
    seen.push_back(pair);
    const double ratio = contrast_ratio(yarn_of(document, pair.first).colour, yarn_of(document, pair.second).colour);
    if (ratio < hardly_shows) {
      Finding finding;
      finding.id = FindingId::yarns_too_alike;
      finding.severity = Severity::warning;
      finding.row = lowest;
      finding.yarn = pair.second;
      finding.other = pair.first;
      finding.number = ratio;
      findings.push_back(std::move(finding));
    }
  }
}

// Findings about the same row stay as they are. Their places are sorted rather than they themselves, which are large:
// severity, row and place in one number.
std::vector<Finding> in_order(std::vector<Finding> findings) {
  constexpr unsigned bits_of_row = 16; // 0: not about one
  constexpr unsigned bits_of_place = 40;
  static_assert(tallest_repeat + 1 < 1 << bits_of_row);
  std::vector<std::uint64_t> order;
  order.reserve(findings.size());
  for (const Finding& finding : findings) {
    const auto severity = static_cast<std::uint64_t>(finding.severity);
    const auto row = static_cast<std::uint64_t>(finding.row + 1);
    order.push_back((severity << bits_of_row | row) << bits_of_place | order.size());
  }
  std::ranges::sort(order);
  std::vector<Finding> ordered;
  ordered.reserve(findings.size());
  for (const std::uint64_t number : order) {
    ordered.push_back(std::move(findings[number & ((std::uint64_t{1} << bits_of_place) - 1)]));
  }
  return ordered;
}

} // namespace

std::vector<RowRange> rows_of_pair(const Document& document, char main, char contrast) {
  std::vector<RowRange> ranges;
  int row = 0;
  for (const Band& band : document.bands) {
    const int lowest = std::exchange(row, row + band.rows);
    if (band.main != main || band.contrast != contrast) {
      continue;
    }
    if (!ranges.empty() && ranges.back().last + 1 == lowest) {
      ranges.back().last = row - 1;
    } else {
      ranges.push_back({lowest, row - 1});
    }
  }
  return ranges;
}

std::vector<Finding> check(const Document& document, const Profile& profile) {
  return check(document, profile, rows_to_knit(document, profile));
}

std::vector<Finding> check(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  return check_beside_rows(document, profile, check_rows(document, profile, rows));
}

RowFindings check_rows(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  RowFindings findings;
  check_amount(rows, findings.amount);
  check_yarn_sides(rows, findings.others);
  check_card(document, profile, rows, findings.others);
  return findings;
}

std::vector<Finding> check_beside_rows(const Document& document, const Profile& profile, const RowFindings& of_rows) {
  std::vector<Finding> findings;
  check_width(document, profile, findings);
  check_piece(document, profile, findings);
  findings.insert(findings.end(), of_rows.amount.begin(), of_rows.amount.end());
  check_floats(document, profile, findings);
  check_single_colour_rows(document, findings);
  check_loose_yarns(document, profile, findings);
  findings.insert(findings.end(), of_rows.others.begin(), of_rows.others.end());
  check_yarns(document, findings);
  return in_order(std::move(findings));
}

std::vector<Finding> with_notes(std::vector<Finding> findings, const std::vector<ReadingNote>& notes) {
  for (const ReadingNote& note : notes) {
    Finding finding;
    finding.id = FindingId::unknown_key;
    finding.severity = Severity::note;
    finding.line = note.line;
    finding.text = note.text;
    findings.push_back(std::move(finding));
  }
  return findings;
}

} // namespace punchwright
