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
        by_hand_(!profile.card), centred_(by_hand_ && !document.piece.first_needle),
        own_column_(by_hand_ && document.piece.first_column) {}

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
    if (std::ranges::any_of(found, [this](const WholeRepeats& piece) { return moves_drawing(piece); })) {
      for (WholeRepeats& piece : found) {
        piece.first_column = column_for_edge();
      }
    }
    return found;
  }

private:
  std::optional<WholeRepeats> nearest(int repeats) const {
    const int stitches = repeats * width_ + 2 * edge_;
    if (stitches > std::min(profile_.needles, most_stitches)) {
      return std::nullopt;
    }
    if (centred_) {
      return WholeRepeats{repeats, stitches, centred_first_needle(stitches), std::nullopt};
    }
    std::optional<WholeRepeats> best;
    std::pair<int, int> least; // of both ends, then of the first needle
    for (int first = profile_.leftmost().position; first + stitches - 1 <= profile_.rightmost().position; ++first) {
      const int left = std::abs(first - first_.position);
      const std::pair moved(left + std::abs(first + stitches - 1 - last_.position), left);
      if ((by_hand_ || begins_at(first)) && (!best || moved < least)) {
        best = WholeRepeats{repeats, stitches, Needle{first}, std::nullopt};
        least = moved;
      }
    }
    return best;
  }

  // The last column is leftmost, as the knitter sees it.
  bool begins_at(int first) const { return placement_.column_of(Needle{first + edge_}) == width_ - 1; }
  bool moves_drawing(const WholeRepeats& piece) const {
    return own_column_ || (by_hand_ && !begins_at(piece.first_needle.position));
  }

  // The drawn column on the first needle that brings the last column to the first needle after the edge: columns run
  // leftwards in the drawing as needles run rightwards.
  int column_for_edge() const {
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
  bool by_hand_;
  bool centred_;
  bool own_column_; // the piece says which column is on its first needle
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
