// The places that a bed offers to each piece, and the chain of columns through all of them.
// Needle and column are converted by machine/placement alone.
#include "pieces/ring_places.hpp"

#include "design/edits.hpp"
#include "design/wrap.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstdlib>

namespace punchwright {
namespace {

struct Place {
  PieceOnBed piece;
  long long off = 0; // squared needles from the middle of the bed
};

// By the left column: the place that is nearest to the middle of the bed, where there is one.
using Places = std::vector<std::optional<Place>>;

// Left column with which the repeat's middle lies at the middle of the piece, or half a stitch beside it.
int centred_column_of(int visible, int width) {
  const int missing = width - visible;
  return round_edge(missing >= 0 ? missing / 2 : (missing - 1) / 2, width);
}

class RingSearch {
public:
  RingSearch(const Document& tier, const Profile& profile, const std::vector<int>& stitches, int edge)
      : document_(tier), profile_(profile), stitches_(stitches), edge_(edge), width_(tier.grid.width()) {
    for (const int count : stitches_) {
      places_.push_back(profile_.card ? by_card(count) : by_hand(count));
    }
  }

  RingOnBed run(YokeSeams seams) {
    RingOnBed ring;
    ring.pieces = seams == YokeSeams::centred ? centred() : chained();
    for (std::size_t left = 0; left < ring.pieces.size(); ++left) {
      ring.seams.push_back(seam_between(ring.pieces, left, (left + 1) % ring.pieces.size()));
    }
    ring.mend = seams == YokeSeams::centred ? mend_of_centres(ring) : what_keeps_seams(ring);
    return ring;
  }

private:
  void offer(Places& places, Needle first, int count, const Placement& placement) const {
    const Needle last{first.position + count - 1};
    Place place;
    place.piece = {first, last, placement.column_of(Needle{last.position - edge_}),
                   placement.column_of(Needle{first.position + edge_}), document_.piece.first_column};
    const long long off = first.position - centred_first_needle(count).position;
    place.off = off * off;
    auto& there = places[static_cast<std::size_t>(place.piece.left_column)];
    if (!there || place.off < there->off) {
      there = place;
    }
  }

  [[nodiscard]] Places by_card(int count) const {
    Places places(static_cast<std::size_t>(width_));
    const Placement placement(document_, profile_);
    for (int first = profile_.leftmost().position; first + count - 1 <= profile_.rightmost().position; ++first) {
      offer(places, Needle{first}, count, placement);
    }
    return places;
  }

  [[nodiscard]] Places by_hand(int count) {
    Places places(static_cast<std::size_t>(width_));
    const Piece before = document_.piece;
    document_.piece.stitches = count;
    document_.piece.first_needle = centred_first_needle(count);
    for (int column = 1; column <= width_; ++column) {
      document_.piece.first_column = column;
      offer(places, centred_first_needle(count), count, Placement(document_, profile_));
    }
    document_.piece = before;
    return places;
  }

  [[nodiscard]] int column_after(int left_column, std::size_t piece) const {
    return round_edge(left_column + stitches_[piece] - 2 * edge_, width_);
  }

  [[nodiscard]] int centred_column(std::size_t piece) const {
    return centred_column_of(stitches_[piece] - 2 * edge_, width_);
  }

  [[nodiscard]] std::vector<PieceOnBed> centred() const {
    std::vector<PieceOnBed> pieces;
    for (std::size_t piece = 0; piece < places_.size(); ++piece) {
      for (int away = 0; away <= width_; ++away) { // 0, 1, -1, 2, -2 …
        const int step = away % 2 == 1 ? away / 2 + 1 : -(away / 2);
        const auto& place = places_[piece][static_cast<std::size_t>(round_edge(centred_column(piece) + step, width_))];
        if (place) {
          pieces.push_back(place->piece);
          break;
        }
      }
    }
    return pieces;
  }

  struct Chain {
    int broken = 0; // seams that don't meet
    long long off = 0;
    auto operator<=>(const Chain&) const = default;
  };
  struct Step {
    std::optional<Chain> chain;
    int before = 0; // left column of the piece before
  };

  // Steps of all pieces, by left column, when the first piece begins at `start`.
  [[nodiscard]] std::vector<std::vector<Step>> steps_from(int start) const {
    std::vector<std::vector<Step>> steps(places_.size(), std::vector<Step>(static_cast<std::size_t>(width_)));
    const auto& first = places_[0][static_cast<std::size_t>(start)];
    steps[0][static_cast<std::size_t>(start)] = {Chain{0, first->off}, 0};
    for (std::size_t piece = 1; piece < places_.size(); ++piece) {
      const auto& before = steps[piece - 1];
      std::optional<int> cheapest;
      for (int column = 0; column < width_; ++column) {
        const auto& chain = before[static_cast<std::size_t>(column)].chain;
        if (chain && (!cheapest || *chain < *before[static_cast<std::size_t>(*cheapest)].chain)) {
          cheapest = column;
        }
      }
      for (int column = 0; column < width_; ++column) {
        const auto& place = places_[piece][static_cast<std::size_t>(column)];
        if (!place) {
          continue;
        }
        const int met = round_edge(column - (stitches_[piece - 1] - 2 * edge_), width_);
        const auto& meeting = before[static_cast<std::size_t>(met)].chain;
        Chain best = *before[static_cast<std::size_t>(*cheapest)].chain;
        ++best.broken;
        int from = *cheapest;
        if (meeting && *meeting <= best) {
          best = *meeting;
          from = met;
        }
        best.off += place->off;
        steps[piece][static_cast<std::size_t>(column)] = {best, from};
      }
    }
    return steps;
  }

  [[nodiscard]] std::vector<PieceOnBed> chained() const {
    std::optional<Chain> best;
    std::vector<int> columns(places_.size());
    for (int start = 0; start < width_; ++start) {
      // By hand every place is in the middle of the bed: there the first piece shows the middle of the repeat.
      if (!places_[0][static_cast<std::size_t>(start)] || (!profile_.card && start != centred_column(0))) {
        continue;
      }
      const auto steps = steps_from(start);
      for (int last = 0; last < width_; ++last) {
        auto chain = steps.back()[static_cast<std::size_t>(last)].chain;
        if (!chain) {
          continue;
        }
        chain->broken += column_after(last, places_.size() - 1) == start ? 0 : 1;
        if (best && *best <= *chain) {
          continue;
        }
        best = chain;
        int column = last;
        for (std::size_t piece = places_.size(); piece-- > 0;) {
          columns[piece] = column;
          column = steps[piece][static_cast<std::size_t>(column)].before;
        }
      }
    }
    std::vector<PieceOnBed> pieces;
    for (std::size_t piece = 0; piece < places_.size(); ++piece) {
      pieces.push_back(places_[piece][static_cast<std::size_t>(columns[piece])]->piece);
    }
    return pieces;
  }

  [[nodiscard]] SeamMeeting seam_between(const std::vector<PieceOnBed>& pieces, std::size_t left,
                                         std::size_t right) const {
    SeamMeeting seam{left, right, true, 0, true};
    seam.mismatch = round_edge(pieces[right].left_column - pieces[left].right_column - 1, width_);
    if (2 * seam.mismatch > width_) {
      seam.mismatch -= width_;
    }
    seam.meets = seam.mismatch == 0;
    const auto columns = [&](std::size_t one, std::size_t next) {
      return std::pair(pieces[one].right_column, pieces[next].left_column);
    };
    const auto first = columns(0, 1 % pieces.size());
    const std::pair mirrored(width_ - 1 - first.second, width_ - 1 - first.first);
    seam.alike = columns(left, right) == first || columns(left, right) == mirrored;
    return seam;
  }

  [[nodiscard]] int visible_in_all() const {
    int visible = 0;
    for (const int count : stitches_) {
      visible += count - 2 * edge_;
    }
    return visible;
  }

  [[nodiscard]] std::string what_keeps_seams(const RingOnBed& ring) const {
    if (std::ranges::all_of(ring.seams, &SeamMeeting::meets)) {
      return "";
    }
    const bool closes = visible_in_all() % width_ == 0;
    const auto broken = std::ranges::count(ring.seams, false, &SeamMeeting::meets);
    if (!closes && broken > 1) { // closing it would not make the others meet
      return said(
          "{} visible stitches all round are no multiple of {}, and the bed of {} needles leaves too little room "
          "to move the work",
          visible_in_all(), width_, profile_.needles);
    }
    if (!closes) {
      return said("{} visible stitches all round are no multiple of {}", visible_in_all(), width_);
    }
    return said("the bed of {} needles leaves too little room to move the work", profile_.needles);
  }

  // "; with 90 stitches …", the nearest count that is centred; empty: none is.
  template <class Words> [[nodiscard]] std::string with_nearest_centred(int count, const Words& words) const {
    const std::vector<bool> barred = counts_not_centred(document_, profile_, edge_);
    for (int away = 1; away <= profile_.needles; ++away) {
      for (const int other : {count - away, count + away}) {
        if (other > 0 && other <= profile_.needles && !barred[static_cast<std::size_t>(other)]) {
          return "; " + words(other);
        }
      }
    }
    return "";
  }

  [[nodiscard]] std::string mend_of_centres(const RingOnBed& ring) const {
    for (std::size_t piece = 0; piece < stitches_.size(); ++piece) {
      if ((stitches_[piece] - width_) % 2 != 0) {
        return said_count(stitches_[piece],
                          "a piece of {} stitch has the middle of the repeat half a stitch beside its own",
                          "a piece of {} stitches has the middle of the repeat half a stitch beside its own") +
               with_nearest_centred(stitches_[piece], [](int count) {
                 return said_count(count, "with {} stitch it would lie there", "with {} stitches it would lie there");
               });
      }
      if (ring.pieces[piece].left_column != centred_column(piece)) {
        return said_count(
                   stitches_[piece],
                   "a piece of {} stitch can't be moved so far that the middle of the repeat lies at its own",
                   "a piece of {} stitches can't be moved so far that the middle of the repeat lies at its own") +
               with_nearest_centred(stitches_[piece], [](int count) {
                 return said_count(count, "a piece of {} stitch could", "a piece of {} stitches could");
               });
      }
    }
    for (std::size_t piece = 0; piece < stitches_.size(); ++piece) {
      const int other = stitches_[(piece + 2) % stitches_.size()];
      if (!ring.seams[(piece + 1) % stitches_.size()].alike && (stitches_[piece] - other) % (2 * width_) != 0) {
        return said("the seams are not alike: pieces of {} and {} stitches, next but one to each other, would have "
                    "to be equal or differ by a multiple of {}",
                    stitches_[piece], other, 2 * width_);
      }
    }
    return "";
  }

  Document document_;
  const Profile& profile_;
  const std::vector<int>& stitches_;
  int edge_;
  int width_;
  std::vector<Places> places_;
};

} // namespace

RingOnBed ring_on_bed(const Document& tier, const Profile& profile, const std::vector<int>& stitches, int edge,
                      YokeSeams seams) {
  return RingSearch(tier, profile, stitches, edge).run(seams);
}

std::vector<bool> counts_not_centred(const Document& tier, const Profile& profile, int edge) {
  const int width = tier.grid.width();
  const int leftmost = profile.leftmost().position;
  const Placement placement(tier, profile);
  std::vector<bool> barred(static_cast<std::size_t>(profile.needles) + 1, true);
  for (int count = 2 * edge + 1; count <= profile.needles; ++count) {
    if ((count - width) % 2 != 0) {
      continue;
    }
    bool found = !profile.card;
    const int wished = centred_column_of(count - 2 * edge, width);
    for (int first = 0; !found && first + count <= profile.needles; ++first) {
      found = placement.column_of(Needle{leftmost + first + count - 1 - edge}) == wished;
    }
    barred[static_cast<std::size_t>(count)] = !found;
  }
  return barred;
}

Document document_of_piece(const Document& tier, const PieceOnBed& piece) {
  Document document = tier;
  document.piece.stitches = piece.last.position - piece.first.position + 1;
  document.piece.first_needle = piece.first;
  document.piece.first_column = piece.first_column;
  return document;
}

} // namespace punchwright
