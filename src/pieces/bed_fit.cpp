// Whether the pieces fit the bed, and pieces that don't cut into such that do.
// What is cut stays a yoke that can be written and read: names of its own, no more pieces than a file holds.
#include "pieces/cone.hpp"
#include "pieces/size_counts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <set>

namespace punchwright {
namespace {

double part_of(double width, int parts) {
  return std::round(width / parts * 1000) / 1000;
}

// The ideal of a part of that piece, cut in so many, by the widths that it would have in the file: its numerator.
std::int64_t part_count(const Cone& cone, const YokePiece& widths, std::size_t size, int parts, std::size_t tier) {
  return cone.at(tier, in_thousandths(part_of(widths.bottom_cm.at(size), parts)),
                 in_thousandths(part_of(widths.top_cm.at(size), parts)));
}

// Of such a part at its widest, rounded.
int widest(const Cone& cone, const YokePiece& widths, std::size_t size, int parts = 1) {
  std::int64_t most = 0;
  for (std::size_t tier = 0; tier < cone.of_top.size(); ++tier) {
    most = std::max(most, rounded_count(part_count(cone, widths, size, parts, tier), cone.denominator));
  }
  return static_cast<int>(most);
}

// The fewest stitches that the tolerance allows such a part, where these are the most.
int fewest_at_widest(const OpenedYoke& opened, const Cone& cone, const YokePiece& widths, std::size_t size, int parts) {
  int most = 0;
  for (std::size_t tier = 0; tier < cone.of_top.size(); ++tier) {
    const std::int64_t ideal = part_count(cone, widths, size, parts, tier);
    most = std::max(most, counts_around(opened, ideal, cone.denominator, true).least);
  }
  return most;
}

// Whether each tier of such a part has a count within the tolerance that the bed holds.
bool fits_bed(const OpenedYoke& opened, const Cone& cone, const YokePiece& widths, std::size_t size, int parts) {
  return fewest_at_widest(opened, cone, widths, size, parts) <= opened.profile.needles;
}

// "front 1", "front 2"; where a piece has one of these names already, "front part 1", "front part 2".
std::vector<std::string> part_names(const std::string& name, int parts, std::set<std::string>& taken) {
  std::string stem = name;
  std::vector<std::string> names;
  while (names.empty()) {
    for (int part = 1; part <= parts; ++part) {
      names.push_back(fmt::format("{} {}", stem, part));
    }
    if (std::ranges::any_of(names, [&](const std::string& one) { return taken.contains(one); })) {
      names.clear();
      stem += " part";
    }
  }
  taken.insert(names.begin(), names.end());
  return names;
}

PerSize<double> divided(PerSize<double> widths, int parts) {
  for (double& width : widths.values) {
    width = part_of(width, parts);
  }
  return widths;
}

// Comments and unknown keys of a piece go where its first part goes: "piece.2.name" becomes "piece.4.name".
template <class Value>
std::map<std::string, Value> moved(const std::map<std::string, Value>& by_place, const std::vector<std::size_t>& now) {
  constexpr std::string_view before = "piece.";
  std::map<std::string, Value> found;
  for (const auto& [place, value] : by_place) {
    std::size_t number = 0;
    std::size_t end = place.starts_with(before) ? before.size() : std::string::npos;
    while (end < place.size() && place[end] >= '0' && place[end] <= '9') {
      number = number * 10 + static_cast<std::size_t>(place[end++] - '0');
    }
    const bool of_piece = number >= 1 && number <= now.size();
    found[of_piece ? fmt::format("{}{}{}", before, now[number - 1] + 1, place.substr(end)) : place] = value;
  }
  return found;
}

Error not_split(const OpenedYoke& opened, std::size_t piece, std::string message, std::string remedy) {
  const auto place = opened.places.find(fmt::format("piece.{}.bottom_cm", piece + 1));
  const Spot spot = place == opened.places.end() ? Spot{} : place->second;
  return Error{opened.file, spot.line, spot.column, std::move(message), std::move(remedy)};
}

// A part, or a piece that is not cut, is narrower or wider than the file form allows.
Failure not_allowed(const OpenedYoke& opened, std::size_t number, int parts) {
  const YokePiece& piece = opened.yoke.pieces[number];
  const std::string least = short_decimal(narrowest_yoke_piece_cm, 3);
  for (const auto* const widths : {&piece.bottom_cm, &piece.top_cm}) {
    const bool top = widths == &piece.top_cm;
    for (const double width : divided(*widths, parts).values) {
      if (width >= narrowest_yoke_piece_cm && width <= widest_yoke_piece_cm) {
        continue;
      }
      const std::string cm = short_decimal(width, 3);
      if (parts == 1 || width > widest_yoke_piece_cm) {
        return not_split(opened, number,
                         top ? said("piece '{}' would be {} cm wide at the top", piece.name, cm)
                             : said("piece '{}' would be {} cm wide at the bottom", piece.name, cm),
                         said("allowed: {} to {} cm", least, short_decimal(widest_yoke_piece_cm, 3)));
      }
      return not_split(
          opened, number,
          top ? said("cut in {}, a part of piece '{}' would be {} cm wide at the top", parts, piece.name, cm)
              : said("cut in {}, a part of piece '{}' would be {} cm wide at the bottom", parts, piece.name, cm),
          said("allowed: {} cm and more: make the piece wider there, or narrower where it is too wide for the bed",
               least));
    }
  }
  return std::nullopt;
}

} // namespace

std::vector<TooWide> too_wide(const OpenedYoke& opened) {
  std::vector<TooWide> found;
  const int bed = opened.profile.needles;
  for (std::size_t piece = 0; piece < opened.yoke.pieces.size(); ++piece) {
    const YokePiece& widths = opened.yoke.pieces[widths_of(opened.yoke, piece)];
    TooWide wide{piece, 0, 0, 0, 1};
    for (std::size_t size = 0; size < opened.yoke.sizes.size(); ++size) {
      const Cone cone = cone_of(opened, size);
      if (const int stitches = widest(cone, widths, size); stitches > wide.stitches) {
        wide.stitches = stitches;
        wide.fewest = fewest_at_widest(opened, cone, widths, size, 1);
        wide.size = size;
      }
      // Parts become narrower by their visible stitches only.
      while (wide.parts > 0 && !fits_bed(opened, cone, widths, size, wide.parts)) {
        wide.parts = 2 * opened.yoke.edge < bed ? wide.parts + 1 : 0;
      }
    }
    if (wide.parts != 1) {
      found.push_back(wide);
    }
  }
  return found;
}

std::vector<TooWide> too_wide(const OpenedYoke& opened, std::size_t size) {
  std::vector<TooWide> found;
  const Cone cone = cone_of(opened, size);
  for (TooWide wide : too_wide(opened)) {
    const YokePiece& widths = opened.yoke.pieces[widths_of(opened.yoke, wide.piece)];
    wide.stitches = widest(cone, widths, size);
    wide.fewest = fewest_at_widest(opened, cone, widths, size, 1);
    wide.size = size;
    if (!fits_bed(opened, cone, widths, size, 1)) {
      found.push_back(wide);
    }
  }
  return found;
}

int parts_on_bed(const OpenedYoke& opened, std::size_t size, std::size_t piece) {
  const Cone cone = cone_of(opened, size);
  const YokePiece& widths = opened.yoke.pieces[widths_of(opened.yoke, piece)];
  int parts = 2;
  while (parts < static_cast<int>(most_yoke_pieces) && widest(cone, widths, size, parts) > opened.profile.needles) {
    ++parts;
  }
  return parts;
}

Yoke with_piece_split(const Yoke& yoke, std::size_t piece, int parts) {
  Yoke split = yoke;
  const std::string widths = yoke.pieces[widths_of(yoke, piece)].name;
  split.pieces.clear();
  std::set<std::string> taken;
  for (const YokePiece& whole : yoke.pieces) {
    taken.insert(whole.name);
  }
  const std::vector<std::string> first = part_names(widths, parts, taken);
  std::vector<std::size_t> now; // of each piece, where its first part is
  for (const YokePiece& whole : yoke.pieces) {
    now.push_back(split.pieces.size());
    if (whole.name != widths && whole.like != widths) {
      split.pieces.push_back(whole);
      continue;
    }
    const std::vector<std::string> names = whole.name == widths ? first : part_names(whole.name, parts, taken);
    for (const std::string& name : names) {
      YokePiece next{name, {}, {}, first.front()};
      if (name == first.front()) {
        next = {name, divided(whole.bottom_cm, parts), divided(whole.top_cm, parts), ""};
      }
      split.pieces.push_back(std::move(next));
    }
  }
  split.extras.comments_before = moved(yoke.extras.comments_before, now);
  split.extras.comments_after = moved(yoke.extras.comments_after, now);
  split.extras.unknown = moved(yoke.extras.unknown, now);
  return split;
}

Result<Yoke> split_to_fit(const OpenedYoke& opened) {
  Yoke yoke = opened.yoke;
  const std::vector<TooWide> wide_pieces = too_wide(opened);
  std::size_t pieces = yoke.pieces.size();
  for (const TooWide& wide : wide_pieces) {
    if (wide.parts == 0) {
      return not_split(opened, wide.piece,
                       said("{} seam stitches on each side of each piece fill the bed of {} needles", opened.yoke.edge,
                            opened.profile.needles),
                       tr("allowed: fewer of them: 'edge'"));
    }
    pieces += static_cast<std::size_t>(wide.parts) - 1;
  }
  if (!wide_pieces.empty() && pieces > most_yoke_pieces) {
    return not_split(
        opened, wide_pieces.front().piece,
        said("split so that they fit the bed of {} needles, the pieces would be {}", opened.profile.needles, pieces),
        said("allowed: {} pieces at most: make them narrower, or choose a coarser gauge", most_yoke_pieces));
  }
  for (std::size_t piece = 0; piece < opened.yoke.pieces.size(); ++piece) {
    const auto wide = std::ranges::find(wide_pieces, piece, &TooWide::piece);
    if (const Failure failure = not_allowed(opened, piece, wide == wide_pieces.end() ? 1 : wide->parts)) {
      return *failure;
    }
  }
  for (const TooWide& wide : wide_pieces) {
    if (widths_of(opened.yoke, wide.piece) != wide.piece) {
      continue; // goes with the piece that it is like
    }
    const auto now = std::ranges::find(yoke.pieces, opened.yoke.pieces[wide.piece].name, &YokePiece::name);
    yoke = with_piece_split(yoke, static_cast<std::size_t>(now - yoke.pieces.begin()), wide.parts);
  }
  return yoke;
}

} // namespace punchwright
