// Where the holes of a card lie: the one place where rows and columns become millimetres.
#include "sheets/card_layout.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright {
namespace {

constexpr double least_rim = 0.5; // mm of card that stay between a feed hole and the sheet's end

} // namespace

CardLayout::CardLayout(const Document& document, const Profile& profile, const RowsToKnit& rows, const Card& card)
    : card_(card), width_(profile.card->geometry.sheet_width),
      height_(2 * profile.card->geometry.first_row +
              (card.rows + 2 * overlap_rows - 1) * profile.card->geometry.row_pitch),
      row_pitch_(profile.card->geometry.row_pitch), first_line_(profile.card->geometry.first_row),
      stitch_pitch_(profile.card->geometry.stitch_pitch), column_1_(profile.card->geometry.column_1),
      hole_diameter_(profile.card->geometry.hole_diameter), repeat_(profile.card->repeat),
      column_1_left_(profile.card->face == CardFace::as_knitter_sees), turned_(profile.card->turned) {
  add_lines(document, profile, rows);
  add_clip_holes(profile.card->geometry);
  add_feed_holes(profile.card->geometry);
}

double CardLayout::y_of_line(int line) const {
  const double from_first_end = first_line_ + line * row_pitch_;
  return turned_ ? from_first_end : height_ - from_first_end;
}

// Half a turn changes left and right as well as the ends.
double CardLayout::x_of_column(int column) const {
  const double from_side = column_1_ + (column - 1) * stitch_pitch_;
  return column_1_left_ != turned_ ? from_side : width_ - from_side;
}

void CardLayout::add_lines(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  holes_.reserve(static_cast<std::size_t>(lines() * (repeat_ + 2) + 16));
  for (int line = 0; line < lines(); ++line) {
    const double y = y_of_line(line);
    if (line < overlap_rows || line >= lines() - overlap_rows) {
      for (int column = 1; column <= repeat_; ++column) {
        holes_.push_back({HoleKind::overlap, {x_of_column(column), y}, hole_diameter_, 0, column});
      }
      continue;
    }
    const int row = card_.first_row + line - overlap_rows;
    const auto punched = punched_columns(document, profile, rows, row);
    for (int column = 1; column <= repeat_; ++column) {
      const Point centre{x_of_column(column), y};
      if (std::binary_search(punched.begin(), punched.end(), column)) {
        holes_.push_back({HoleKind::pattern, centre, hole_diameter_, row, column});
      } else {
        unpunched_.push_back(centre);
      }
    }
  }
}

void CardLayout::add_clip_holes(const CardGeometry& geometry) {
  for (const ClipHole& clip : geometry.clips) {
    for (const double x : {clip.from_side, width_ - clip.from_side}) {
      for (const double y : {clip.from_end, height_ - clip.from_end}) {
        holes_.push_back({HoleKind::clip, {x, y}, geometry.clip_diameter, 0, 0});
      }
    }
  }
}

bool CardLayout::meets_a_clip(Point centre, double diameter) const {
  return std::ranges::any_of(holes_, [&](const CardHole& hole) {
    return hole.kind == HoleKind::clip &&
           std::hypot(hole.centre.x - centre.x, hole.centre.y - centre.y) < (hole.diameter + diameter) / 2;
  });
}

// Feed holes stand level with line 0 and go on from it to both ends; where a clip hole lies, there is none.
void CardLayout::add_feed_holes(const CardGeometry& geometry) {
  const double rim = geometry.feed_diameter / 2 + least_rim;
  const int below = std::max(0, static_cast<int>(std::floor((first_line_ - rim) / geometry.feed_pitch)));
  const double lowest = first_line_ - below * geometry.feed_pitch;
  for (int index = 0; lowest + index * geometry.feed_pitch <= height_ - rim; ++index) {
    const double from_first_end = lowest + index * geometry.feed_pitch;
    const double y = turned_ ? from_first_end : height_ - from_first_end;
    for (const double x : {geometry.feed_from_side, width_ - geometry.feed_from_side}) {
      if (!meets_a_clip({x, y}, geometry.feed_diameter)) {
        holes_.push_back({HoleKind::feed, {x, y}, geometry.feed_diameter, 0, 0});
      }
    }
  }
}

} // namespace punchwright
