// The ring of runs: cut open at each place where a run may begin, and the cheapest way round from there.
#include "mending/row_mender.hpp"

#include <algorithm>
#include <functional>
#include <limits>

namespace punchwright {

RowMender::RowMender(int width, int limit) : width_(width), limit_(std::min(limit, width)) {
  const auto twice = static_cast<std::size_t>(2 * width + 1);
  for (auto* list : {&sums_[0], &sums_[1], &rest_[0], &rest_[1], &ahead_[0], &ahead_[1]}) {
    list->resize(twice);
  }
  squares_.resize(static_cast<std::size_t>(limit_) + 1);
  found_.resize(static_cast<std::size_t>(width));
}

void RowMender::set_row(std::span<const char> contrast, std::span<const std::int32_t> prices,
                        std::span<const std::int16_t> pairs) {
  contrast_.assign(contrast.begin(), contrast.end());
  prices_.assign(prices.begin(), prices.end());
  pairs_.assign(pairs.begin(), pairs.end());
}

void RowMender::add_up(bool look, bool price_only) {
  const bool with_pairs = look && !price_only && !pairs_.empty();
  const auto width = static_cast<std::size_t>(width_);
  for (std::size_t place = 0; place < width; ++place) {
    Packed change = impossible;
    if (prices_[place] != never_changed) {
      change = Packed{std::min(prices_[place], dearest_change)} << price_shift;
      if (with_pairs) {
        change += Packed{pairs_[place]} << pairs_shift;
      }
    }
    const bool contrast = contrast_[place] != 0;
    sums_[0][place + 1] = sums_[0][place] + (contrast ? change : 0);
    sums_[1][place + 1] = sums_[1][place] + (contrast ? 0 : change);
  }
  for (auto& sums : sums_) {
    for (std::size_t place = 1; place <= width; ++place) {
      sums[width + place] = sums[width] + sums[place];
    }
  }
  for (int length = 0; length <= limit_; ++length) {
    squares_[static_cast<std::size_t>(length)] = look && !price_only ? Packed{length} * length : 0;
  }
}

// No row costs less; 0 where none better is known. A float of n stitches that is too long holds n / (limit + 1) pieces
// side by side that need a change each. Where all stitches have one price and a float may be longer than 1, as many
// changes are enough: apart from each other and from the float's ends, they leave one part more than there are changes,
// and parts as even as can be. Every other choice of as many leaves no more parts and no shorter runs beside them.
RowMender::Packed RowMender::lower_bound() const {
  if (limit_ < 2 || prices_[0] <= 0 || std::ranges::adjacent_find(prices_, std::not_equal_to{}) != prices_.end()) {
    return 0;
  }
  const Packed change = Packed{std::min(prices_[0], dearest_change)} << price_shift;
  const auto differs = std::ranges::adjacent_find(contrast_, std::not_equal_to{});
  if (differs == contrast_.end()) {
    return 0;
  }
  const int start = static_cast<int>(differs - contrast_.begin()) + 1; // a run begins here
  const bool with_squares = squares_[1] != 0;
  Packed bound = 0;
  for (int place = 0, run = 1; place < width_; ++place, ++run) {
    const int here = start + place < width_ ? start + place : start + place - width_;
    const int next = here + 1 < width_ ? here + 1 : 0;
    if (place + 1 < width_ && contrast_[index(here)] == contrast_[index(next)]) {
      continue;
    }
    const int changes = run / (limit_ + 1);
    const int part = (run - changes) / (changes + 1);
    const int longer = (run - changes) % (changes + 1); // parts that have a stitch more
    bound += changes * change;
    if (with_squares) {
      bound += changes + (changes + 1 - longer) * part * part + longer * (part + 1) * (part + 1);
    }
    run = 0;
  }
  return bound;
}

// The least cost of a ring that is cut open there, or `impossible` where it is dearer than the bound. The last run ends
// where the first begins, and has the other colour. It covers the places before the cut, or the ring would have been
// cut there.
RowMender::Packed RowMender::open(const Opening& opening, Packed no_dearer_than) {
  opened_ = opening;
  const int end = opening.cut + width_;
  // A run of a colour that begins at `place` and ends at `stop` costs ahead[colour][stop] - sums[colour][place].
  const auto set_ahead = [&](int place) {
    for (const int colour : {0, 1}) {
      ahead(colour, place) = sum(colour, place) + rest(1 - colour, place);
    }
  };
  rest(0, end) = rest(1, end) = impossible;
  set_ahead(end);
  int dear_places = 0;
  for (int place = end - 1; place >= opening.cut; --place) {
    if (opening.cut == 0 || place == width_ - 1) {
      ahead(1 - opening.colour, end) = sum(1 - opening.colour, end); // the last run may begin here
    }
    const int longest = std::min(limit_, end - place);
    for (const int colour : {0, 1}) {
      const Packed* const stops = &ahead(colour, place);
      Packed least = std::numeric_limits<Packed>::max();
      for (int length = 1; length <= longest; ++length) {
        least = std::min(least, stops[length] + squares_[static_cast<std::size_t>(length)]);
      }
      rest(colour, place) = std::min(impossible, least - sum(colour, place));
    }
    set_ahead(place);
    // On every way round a run begins in one of `limit` places side by side: where all are dear, so is the ring.
    dear_places = std::min(rest(0, place), rest(1, place)) > no_dearer_than ? dear_places + 1 : 0;
    if (dear_places == limit_) {
      return impossible;
    }
  }
  return rest(opening.colour, opening.cut);
}

// Where the drawn row itself begins a run in the colour that it has there is tried first: that bound ends most of the
// others early, or all of them where nothing can be less.
RowMender::Opening RowMender::find_least() {
  const Packed bound = lower_bound();
  least_ = impossible;
  Opening best;
  for (const bool as_drawn : {true, false}) {
    for (int cut = 0; cut < limit_; ++cut) {
      for (const int colour : {0, 1}) {
        const int own = contrast_[index(cut)] != 0 ? 1 : 0;
        const int before = contrast_[index((cut + width_ - 1) % width_)] != 0 ? 1 : 0;
        if ((colour == own && colour != before) != as_drawn) {
          continue;
        }
        const Packed cost = open({cut, colour}, least_);
        if (cost < least_) {
          least_ = cost;
          best = {cut, colour};
          if (least_ <= bound) {
            return best;
          }
        }
      }
    }
  }
  return best;
}

bool RowMender::solve(bool look) {
  add_up(look, false);
  const Opening best = find_least();
  if (least_ >= impossible) {
    return false;
  }
  if (opened_ != best) {
    open(best, impossible);
  }
  walk_cheapest(best);
  return true;
}

void RowMender::walk_cheapest(const Opening& opening) {
  const int end = opening.cut + width_;
  int colour = opening.colour;
  for (int place = opening.cut; place < end; colour = 1 - colour) {
    const Packed wanted = rest(colour, place);
    int length = 1;
    while (place + length < end ? run_cost(colour, place, place + length) + rest(1 - colour, place + length) != wanted
                                : run_cost(colour, place, end) != wanted) {
      ++length;
    }
    for (int covered = 0; covered < length; ++covered, ++place) {
      found_[static_cast<std::size_t>(place % width_)] = static_cast<char>(colour);
    }
  }
}

RowCost RowMender::cost() const {
  const Packed pairs_room = (Packed{1} << (price_shift - pairs_shift)) - 1;
  const Packed squares_room = (Packed{1} << pairs_shift) - 1;
  return {least_ >> price_shift, (least_ >> pairs_shift) & pairs_room, least_ & squares_room};
}

struct RowMender::Listing {
  Opening opening;
  std::size_t most = 0;
  std::vector<char> row;  // as far as it is laid
  std::vector<char> rows; // those that are whole
};

// Lays every cheapest way from a place to the end. False where they are too many.
bool RowMender::list(Listing& listing, int colour, int place, Packed left) {
  const int end = listing.opening.cut + width_;
  const auto width = static_cast<std::size_t>(width_);
  for (int length = 1; length <= std::min(limit_, end - place); ++length) {
    const bool last = place + length == end;
    if (last && (colour == listing.opening.colour || (listing.opening.cut > 0 && place >= width_))) {
      continue;
    }
    const Packed rest_of_it = left - run_cost(colour, place, place + length);
    if (last ? rest_of_it != 0 : rest(1 - colour, place + length) != rest_of_it) {
      continue;
    }
    for (int covered = place; covered < place + length; ++covered) {
      listing.row[static_cast<std::size_t>(covered % width_)] = static_cast<char>(colour);
    }
    if (last && listing.rows.size() / width >= listing.most) {
      return false;
    }
    if (last) {
      listing.rows.insert(listing.rows.end(), listing.row.begin(), listing.row.end());
    } else if (!list(listing, 1 - colour, place + length, rest_of_it)) {
      return false;
    }
  }
  return true;
}

std::vector<char> RowMender::all_cheapest(std::size_t most) {
  add_up(false, true);
  find_least();
  const Packed least = least_;
  if (least >= impossible) {
    return {};
  }
  Listing listing{{}, most, std::vector<char>(static_cast<std::size_t>(width_)), {}};
  for (int cut = 0; cut < limit_; ++cut) {
    for (const int colour : {0, 1}) {
      listing.opening = {cut, colour};
      if (open(listing.opening, least) == least && !list(listing, colour, cut, least)) {
        return {};
      }
    }
  }
  return std::move(listing.rows);
}

} // namespace punchwright
