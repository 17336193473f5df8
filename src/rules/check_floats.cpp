// Floats: a yarn passes behind the stitches of the other. On the repeat as it tiles, and on the piece on the bed.
#include "machine/placement.hpp"
#include "rules/checks.hpp"
#include "rules/float_runs.hpp"

#include <algorithm>
#include <optional>

namespace punchwright {
namespace {

Finding float_finding(const Band& band, int row, int stitches, int limit, bool behind_contrast) {
  Finding finding;
  finding.row = row;
  finding.yarn = behind_contrast ? band.main : band.contrast.value_or(band.main);
  finding.other = behind_contrast ? band.contrast.value_or(band.main) : band.main;
  finding.stitches = stitches;
  finding.limit = limit;
  return finding;
}

void judge(Finding& finding, bool accepted) {
  finding.id = accepted ? FindingId::float_accepted : FindingId::float_too_long;
  finding.severity = accepted ? Severity::note : Severity::fault;
}

// The piece: which drawn column each needle knits, worked out once for all rows, and only if a row needs it.
class PieceFloats {
public:
  PieceFloats(const Document& document, const Profile& profile, int limit)
      : document_(document), limit_(limit), first_(first_needle_of(document)),
        end_needles_(end_needles_knit_contrast(document, profile)) {
    const Placement placement(document, profile);
    for (int stitch = 0; stitch < stitches_of(document); ++stitch) {
      columns_.push_back(placement.column_of(Needle{first_.position + stitch}));
    }
  }

  void check_row(const Band& band, int row, std::vector<Finding>& findings) const {
    const auto first_of_row = static_cast<std::ptrdiff_t>(findings.size());
    const int stitches = static_cast<int>(columns_.size());
    for (int begin = 0; begin < stitches;) {
      const bool contrast = contrast_at(begin, row);
      int end = begin + 1;
      while (end < stitches && contrast_at(end, row) == contrast) {
        ++end;
      }
      const bool reaches_edge = begin == 0 || end == stitches;
      if (!reaches_edge && end - begin > limit_) {
        const auto column_at = [&](int place) { return columns_[static_cast<std::size_t>(begin + place)]; };
        each_part_beyond(document_.marks, row, end - begin, limit_, column_at, [&](const FloatPart& part) {
          Finding finding = float_finding(band, row, part.stitches, limit_, contrast);
          judge(finding, part.accepted);
          const int first = begin + part.first;
          report(std::move(finding), first, first + part.stitches - 1, findings, first_of_row);
        });
      }
      begin = end;
    }
  }

private:
  bool contrast_at(int stitch, int row) const {
    const bool is_end = stitch == 0 || stitch + 1 == static_cast<int>(columns_.size());
    return (is_end && end_needles_) || document_.grid.at(columns_[static_cast<std::size_t>(stitch)], row);
  }

  // The same run of the drawing comes back with every repeat: it is reported once, at its leftmost place.
  void report(Finding finding, int begin, int last, std::vector<Finding>& findings, std::ptrdiff_t first_of_row) const {
    finding.on_piece = true;
    finding.first_column = columns_[static_cast<std::size_t>(last)]; // the drawing runs leftwards along the bed
    finding.last_column = columns_[static_cast<std::size_t>(begin)];
    const auto known = std::find_if(findings.begin() + first_of_row, findings.end(), [&](const Finding& other) {
      return other.yarn == finding.yarn && other.stitches == finding.stitches &&
             other.first_column == finding.first_column;
    });
    if (known != findings.end()) {
      ++known->times;
      return;
    }
    finding.first_needle = Needle{first_.position + begin};
    finding.last_needle = Needle{first_.position + last};
    findings.push_back(std::move(finding));
  }

  const Document& document_;
  int limit_;
  Needle first_;
  bool end_needles_;
  std::vector<int> columns_;
};

void check_catches(const Document& document, int limit, std::vector<Finding>& findings) {
  const Grid& caught = document.marks.caught;
  for (int row = 0; row < caught.height(); ++row) {
    if (!caught.has_contrast(row)) {
      continue;
    }
    std::vector<char> needed(static_cast<std::size_t>(caught.width()), 0);
    for (const StitchRun& run : runs_beyond(document.grid, row, limit)) {
      for (int place = 0; place < run.stitches; ++place) {
        needed[static_cast<std::size_t>((run.first + place) % caught.width())] = 1;
      }
    }
    Finding finding;
    finding.id = FindingId::catch_not_needed;
    finding.severity = Severity::note;
    finding.row = row;
    for (int column = 0; column < caught.width(); ++column) {
      if (caught.at(column, row) && needed[static_cast<std::size_t>(column)] == 0) {
        finding.first_column = finding.stitches == 0 ? column : finding.first_column;
        finding.last_column = column;
        ++finding.stitches;
      }
    }
    if (finding.stitches > 0) {
      findings.push_back(std::move(finding));
    }
  }
}

} // namespace

void check_floats(const Document& document, const Profile& profile, std::vector<Finding>& findings) {
  const Grid& grid = document.grid;
  const int limit = longest_float_of(document, profile);
  std::optional<PieceFloats> piece;
  int row = 0;
  for (const Band& band : document.bands) {
    for (const int above = row + band.rows; row < above; ++row) {
      const auto words = grid.row(row);
      if (!has_run_beyond(words, grid.width(), limit, false) && !has_run_beyond(words, grid.width(), limit, true)) {
        continue;
      }
      for (const StitchRun& run : runs_beyond(grid, row, limit)) {
        const auto column_at = [&](int place) { return (run.first + place) % grid.width(); };
        each_part_beyond(document.marks, row, run.stitches, limit, column_at, [&](const FloatPart& part) {
          Finding finding = float_finding(band, row, part.stitches, limit, run.contrast);
          judge(finding, part.accepted);
          finding.first_column = column_at(part.first);
          finding.last_column = column_at(part.first + part.stitches - 1);
          findings.push_back(std::move(finding));
        });
      }
      // A float on the piece is a part of one on the repeat, cut by an end needle at most: rows without a long run on
      // the repeat have none on the piece.
      if (grid.mixed(row)) {
        if (!piece) {
          piece.emplace(document, profile, limit);
        }
        piece->check_row(band, row, findings);
      }
    }
  }
  check_catches(document, limit, findings);
}

} // namespace punchwright
