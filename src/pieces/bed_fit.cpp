// Whether the pieces fit the bed, and pieces that don't cut into such that do.
#include "pieces/size_counts.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {
namespace {

// The widest count of that piece, were it cut in so many parts.
int widest_part(const OpenedYoke& opened, std::size_t size, std::size_t piece, int parts) {
  const double seams = 2.0 * opened.yoke.edge;
  double widest = 0;
  for (const double ideal : ideal_counts(opened, size, piece)) {
    widest = std::max(widest, (ideal - seams) / parts + seams);
  }
  return static_cast<int>(std::lround(widest));
}

std::string part_name(const std::string& name, int part) {
  return name + ' ' + std::to_string(part + 1);
}

PerSize<double> divided(PerSize<double> widths, int parts) {
  for (double& width : widths.values) {
    width = std::round(width / parts * 1000) / 1000;
  }
  return widths;
}

} // namespace

std::vector<TooWide> too_wide(const OpenedYoke& opened) {
  std::vector<TooWide> found;
  const int bed = opened.profile.needles;
  for (std::size_t piece = 0; piece < opened.yoke.pieces.size(); ++piece) {
    TooWide wide{piece, 0, 0, 1};
    for (std::size_t size = 0; size < opened.yoke.sizes.size(); ++size) {
      const int stitches = widest_part(opened, size, piece, 1);
      if (stitches > wide.stitches) {
        wide.stitches = stitches;
        wide.size = size;
      }
      while (widest_part(opened, size, piece, wide.parts) > bed && wide.parts < opened.profile.needles * 100) {
        ++wide.parts;
      }
    }
    if (wide.stitches > bed) {
      found.push_back(wide);
    }
  }
  return found;
}

Yoke with_piece_split(const Yoke& yoke, std::size_t piece, int parts) {
  Yoke split = yoke;
  const std::string widths = yoke.pieces[widths_of(yoke, piece)].name;
  split.pieces.clear();
  const std::string first = part_name(widths, 0);
  for (const YokePiece& whole : yoke.pieces) {
    if (whole.name != widths && whole.like != widths) {
      split.pieces.push_back(whole);
      continue;
    }
    for (int part = 0; part < parts; ++part) {
      YokePiece next{part_name(whole.name, part), {}, {}, first};
      if (whole.name == widths && part == 0) {
        next = {first, divided(whole.bottom_cm, parts), divided(whole.top_cm, parts), ""};
      }
      split.pieces.push_back(std::move(next));
    }
  }
  return split;
}

Yoke split_to_fit(const OpenedYoke& opened) {
  Yoke yoke = opened.yoke;
  for (const TooWide& wide : too_wide(opened)) {
    if (widths_of(opened.yoke, wide.piece) != wide.piece) {
      continue; // goes with the piece that it is like
    }
    const auto now = std::ranges::find(yoke.pieces, opened.yoke.pieces[wide.piece].name, &YokePiece::name);
    yoke = with_piece_split(yoke, static_cast<std::size_t>(now - yoke.pieces.begin()), wide.parts);
  }
  return yoke;
}

} // namespace punchwright
