// Floats: a yarn passes behind the stitches of the other. On the repeat as it tiles, and on the piece on the bed.
#include "design/wrap.hpp"
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

// The piece: each long run of the repeat, wherever it comes to lie on the needles. Worked out only if a row needs it.
class PieceFloats {
public:
  PieceFloats(const Document& document, const Profile& profile, int limit)
      : document_(document), limit_(limit), first_(first_needle_of(document)), stitches_(stitches_of(document)),
        first_column_(Placement(document, profile).column_of(first_)),
        end_needles_(end_needles_knit_contrast(document, profile)) {}

  // `runs`: those of the repeat that are too long, of a row with both colours.
  void check_row(const Band& band, int row, const std::vector<StitchRun>& runs, std::vector<Finding>& findings) {
    places_.clear();
    for (const StitchRun& run : runs) {
      find_places(run);
    }
    std::ranges::sort(places_, {}, &Place::begin);
    const auto first_of_row = static_cast<std::ptrdiff_t>(findings.size());
    for (const Place& place : places_) {
      const auto column_at = [&](int stitch) { return column_of(place.begin + stitch); };
      each_part_beyond(document_.marks, row, place.end - place.begin, limit_, column_at, [&](const FloatPart& part) {
        Finding finding = float_finding(band, row, part.stitches, limit_, place.contrast);
        judge(finding, part.accepted);
        const int first = place.begin + part.first;
        finding.times = place.times;
        report(std::move(finding), first, first + part.stitches - 1, findings, first_of_row);
      });
    }
  }

private:
  struct Place { // of a float, in stitches from the piece's left edge
    int begin = 0;
    int end = 0; // behind its last stitch
    bool contrast = false;
    int times = 1; // as often it comes back with the repeat, further to the right
  };

  // The drawing runs leftwards along the bed.
  [[nodiscard]] int column_of(int stitch) const { return round_edge(first_column_ - stitch, document_.grid.width()); }

  // A run that reaches the piece's edge is no float. End needles that knit contrast are contrast stitches: they cut a
  // run of main, which then ends beside them, and lengthen one of contrast up to the edge.
  void find_places(const StitchRun& run) {
    const int width = document_.grid.width();
    const int end_needle = end_needles_ ? 1 : 0;
    const int cut = run.contrast ? 0 : end_needle;
    const int first = round_edge(first_column_ - (run.first + run.stitches - 1), width);
    std::optional<std::size_t> whole; // the leftmost that isn't cut
    for (int begin = first - width; begin < stitches_; begin += width) {
      const Place place{std::max(begin, cut), std::min(begin + run.stitches, stitches_ - cut), run.contrast};
      const bool at_edge = place.begin <= end_needle || place.end >= stitches_ - end_needle;
      const bool may_reach_it = run.contrast || !end_needles_;
      if (place.end - place.begin <= limit_ || (at_edge && may_reach_it)) {
        continue;
      }
      const bool is_whole = place.end - place.begin == run.stitches;
      if (is_whole && whole) {
        ++places_[*whole].times;
        continue;
      }
      if (is_whole) {
        whole = places_.size();
      }
      places_.push_back(place);
    }
  }

  // The same run of the drawing comes back with every repeat: it is reported once, at its leftmost place.
  void report(Finding finding, int begin, int last, std::vector<Finding>& findings, std::ptrdiff_t first_of_row) const {
    finding.on_piece = true;
    finding.first_column = column_of(last);
    finding.last_column = column_of(begin);
    const auto known = std::find_if(findings.begin() + first_of_row, findings.end(), [&](const Finding& other) {
      return other.yarn == finding.yarn && other.stitches == finding.stitches &&
             other.first_column == finding.first_column;
    });
    if (known != findings.end()) {
      known->times += finding.times;
      return;
    }
    finding.first_needle = Needle{first_.position + begin};
    finding.last_needle = Needle{first_.position + last};
    findings.push_back(std::move(finding));
  }

  const Document& document_;
  int limit_;
  Needle first_;
  int stitches_;
  int first_column_; // that the first needle knits
  bool end_needles_;
  std::vector<Place> places_; // of a row
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
      const std::vector<StitchRun> runs = runs_beyond(grid, row, limit);
      for (const StitchRun& run : runs) {
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
        piece->check_row(band, row, runs, findings);
      }
    }
  }
  check_catches(document, limit, findings);
}

} // namespace punchwright
