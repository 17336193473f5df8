// Tries the places on the bed where a repeat begins; beds are short enough to try them all.
#include "rules/whole_repeats.hpp"

#include "machine/placement.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace punchwright {
namespace {

constexpr int most_stitches = 1000; // as the file form allows

class Search {
public:
  Search(const Document& document, const Profile& profile)
      : profile_(profile), placement_(document, profile), width_(document.grid.width()), edge_(document.piece.edge),
        stitches_(stitches_of(document)), first_(first_needle_of(document)), last_(last_needle_of(document)),
        free_column_(!profile.card && document.piece.first_column) {}

  std::vector<WholeRepeats> run() const {
    std::vector<WholeRepeats> found;
    const int visible = stitches_ - 2 * edge_;
    for (int repeats = visible / width_; repeats >= 1; --repeats) {
      if (const auto piece = nearest(repeats)) {
        found.push_back(*piece);
        break;
      }
    }
    const bool as_many = !found.empty() && found.front().stitches == stitches_;
    if (const auto piece = as_many ? std::nullopt : nearest(std::max(visible, 0) / width_ + 1)) {
      found.push_back(*piece);
    }
    return found;
  }

private:
  std::optional<WholeRepeats> nearest(int repeats) const {
    const int stitches = repeats * width_ + 2 * edge_;
    if (stitches > std::min(profile_.needles, most_stitches)) {
      return std::nullopt;
    }
    std::optional<WholeRepeats> best;
    std::pair<int, int> least; // of both ends, then of the first needle
    for (int first = profile_.leftmost().position; first + stitches - 1 <= profile_.rightmost().position; ++first) {
      const int left = std::abs(first - first_.position);
      const std::pair moved(left + std::abs(first + stitches - 1 - last_.position), left);
      const bool begins_here =
          free_column_ || placement_.column_of(Needle{first + edge_}) == width_ - 1; // leftmost, as the knitter sees it
      if (begins_here && (!best || moved < least)) {
        best = WholeRepeats{repeats, stitches, Needle{first}, column_for_edge()};
        least = moved;
      }
    }
    return best;
  }

  // The drawn column on the first needle that brings the last column to the first needle after the edge: columns run
  // leftwards in the drawing as needles run rightwards.
  std::optional<int> column_for_edge() const {
    if (!free_column_) {
      return std::nullopt;
    }
    const int column = edge_ % width_;
    return column == 0 ? width_ : column;
  }

  const Profile& profile_;
  Placement placement_;
  int width_;
  int edge_;
  int stitches_;
  Needle first_;
  Needle last_;
  bool free_column_;
};

} // namespace

std::optional<int> whole_repeats_in_the_middle(const Document& document, const Profile& profile) {
  const int width = document.grid.width();
  const Placement placement(document, profile);
  Document tried = document;
  tried.piece.first_needle.reset();
  const int most = std::min(profile.needles, most_stitches);
  for (int stitches = width + 2 * document.piece.edge; stitches <= most; stitches += width) {
    tried.piece.stitches = stitches;
    if (placement.column_of(Needle{first_needle_of(tried).position + document.piece.edge}) == width - 1) {
      return stitches;
    }
  }
  return std::nullopt;
}

std::vector<WholeRepeats> nearest_whole_repeats(const Document& document, const Profile& profile) {
  return Search(document, profile).run();
}

} // namespace punchwright
