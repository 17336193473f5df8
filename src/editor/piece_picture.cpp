// Painting the cloth, line by line of pixels.
#include "editor/piece_picture.hpp"

#include "plan/plan.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>

namespace punchwright::editor {

namespace {

unsigned char byte_of(float value) {
  return static_cast<unsigned char>(std::clamp(value + 0.5F, 0.0F, 255.0F));
}

} // namespace

// A float over the stitches from one to before another, in its parts between those on which it is caught.
void ClothPainter::lay_float(int from, int to, const std::vector<char>& caught, std::vector<Over>& floats) {
  for (int over = from; over <= to; ++over) {
    const bool lifted = over < to && caught[static_cast<std::size_t>(over)] != 0;
    if (over < to && !lifted) {
      continue;
    }
    std::fill(floats.begin() + from, floats.begin() + over, Over{from, over - from});
    if (lifted) {
      floats[static_cast<std::size_t>(over)] = {over, 1, true};
    }
    from = over + 1;
  }
}

// The floats of one yarn over the stitches of the other: between its outermost stitches it is carried along.
void ClothPainter::lay_floats(const Line& line, char yarn, std::vector<Over>& floats) {
  int last = -1;
  for (int stitch = 0; stitch < static_cast<int>(line.contrast.size()); ++stitch) {
    if (line.contrast[static_cast<std::size_t>(stitch)] != yarn) {
      continue;
    }
    if (last >= 0) {
      lay_float(last + 1, stitch, line.caught, floats);
    }
    last = stitch;
  }
}

// How far below its ends the float hangs at a place in stitches, in parts of a row: more, the longer the way is. Where
// it is caught it rises to the needle instead.
float ClothPainter::sag_of(const Over& over, float place) {
  const float part = (place - static_cast<float>(over.from)) / static_cast<float>(over.length);
  if (over.caught) {
    return -0.3F * 4 * part * (1 - part);
  }
  return std::min(0.2F, 0.035F * static_cast<float>(over.length)) * 4 * part * (1 - part);
}

// Each cell under a pixel by how much of the pixel it covers.
void ClothPainter::Lattice::cover(double low, double high) {
  for (int cell = static_cast<int>(low); cell < high; ++cell) {
    const double covered = std::min<double>(high, cell + 1) - std::max<double>(low, cell);
    if (covered > (high - low) * 1.0e-6) {
      shares.push_back({cell, static_cast<float>(covered / (high - low))});
    }
  }
}

// Of very many cells under a pixel some, at uneven steps (multiples of the golden ratio), so that no repeat falls in
// with them.
void ClothPainter::Lattice::sample(double low, double high) {
  for (int number = 0; number < most_cells; ++number) {
    const double jitter = std::fmod(number * std::numbers::phi, 1.0);
    const double place = low + (number + jitter) * (high - low) / most_cells;
    shares.push_back({static_cast<int>(place), 1.0F / most_cells});
  }
}

ClothPainter::Lattice ClothPainter::Lattice::over(int pixels, double first_cell, double cells_per_pixel, int cells) {
  Lattice out;
  for (int pixel = 0; pixel < pixels; ++pixel) {
    const double low = std::clamp<double>(first_cell + pixel * cells_per_pixel, 0, cells - 1.0e-6);
    const double high = std::clamp<double>(low + cells_per_pixel, low + 1.0e-9, cells);
    out.from.push_back(out.shares.size());
    if (high - low > most_cells) {
      out.sample(low, high);
    } else {
      out.cover(low, high);
    }
    const double middle = (low + high) / 2;
    out.middle.push_back(std::min(cells - 1, static_cast<int>(middle)));
    out.part.push_back(std::clamp(static_cast<float>(middle - out.middle.back()), 0.0F, 0.9999F));
  }
  out.from.push_back(out.shares.size());
  return out;
}

void ClothPainter::lay_out(const Frame& frame, double stitch_mm, double row_mm) {
  frame_ = frame;
  px_per_mm_ = frame.px_per_mm;
  const double wide = frame.stitches * stitch_mm * frame.px_per_mm; // of the cloth, px
  const double tall = frame.rows * row_mm * frame.px_per_mm;
  // The cloth's edges in the room; what lies outside it isn't painted.
  const double left = frame.view.width / 2.0 - wide / 2 - frame.view.middle_x * frame.px_per_mm;
  const double top = frame.view.height / 2.0 - tall / 2 + frame.view.middle_y * frame.px_per_mm;
  pixels_.left = static_cast<int>(std::clamp<double>(std::round(left), 0, frame.view.width));
  pixels_.top = static_cast<int>(std::clamp<double>(std::round(top), 0, frame.view.height));
  const auto end = [](double edge, int room) {
    return static_cast<int>(std::clamp<double>(std::floor(edge), 0, room));
  };
  pixels_.width = std::max(1, end(left + wide, frame.view.width) - pixels_.left);
  pixels_.height = std::max(1, end(top + tall, frame.view.height) - pixels_.top);
  const double stitch_px = stitch_mm * frame.px_per_mm;
  left_px_ = left;
  stitch_px_ = stitch_px;
  const double row_px = row_mm * frame.px_per_mm;
  across_ = Lattice::over(pixels_.width, std::max(0.0, pixels_.left - left) / stitch_px, 1 / stitch_px, frame.stitches);
  const double below = std::max(0.0, top + tall - (pixels_.top + pixels_.height)); // px of cloth below the picture
  upwards_ = Lattice::over(pixels_.height, below / row_px, 1 / row_px, frame.rows);
  // From 5 px a stitch on its form begins to show, from 12 px it is all there.
  detail_ = std::clamp((static_cast<float>(std::min(stitch_px, row_px)) - 5.0F) / 7.0F, 0.0F, 1.0F);
  if (detail_ > 0) {
    seen_ = StitchInPixels(form_, stitch_px, row_px);
  }
  pixels_.rgb.assign(static_cast<std::size_t>(pixels_.width) * static_cast<std::size_t>(pixels_.height) * 3, 0);
  seen_colours_.clear();
  fingerprints_.clear();
  outdated_.clear();
  lines_.clear();
}

Colour ClothPainter::seen(Colour colour) {
  const auto known = std::ranges::find(seen_colours_, colour, &std::pair<Colour, Colour>::first);
  if (known != seen_colours_.end()) {
    return known->second;
  }
  return seen_colours_.emplace_back(colour, seen_as(colour, frame_.view.sight)).second;
}

ClothPainter::Light ClothPainter::light_of(Colour colour) const {
  return {table_.light(colour.red), table_.light(colour.green), table_.light(colour.blue)};
}

void ClothPainter::fill_stitches(const Document& design, const Profile& profile, const RowToKnit& knitted,
                                 Line& line) const {
  line.floats.clear();
  if (frame_.view.afar) {
    const auto stitches = static_cast<std::size_t>(frame_.stitches);
    line.contrast.assign(stitches, 0);
    for (std::size_t stitch = 0; knitted.drawn >= 0 && stitch < stitches; ++stitch) {
      const auto column = static_cast<int>(stitch % static_cast<std::size_t>(design.grid.width()));
      line.contrast[stitch] = design.grid.at(column, knitted.drawn) ? 1 : 0;
    }
    return;
  }
  lay_stitches(design, profile, knitted, line.contrast); // as the knitter sees them, on the purl side
  if (frame_.view.face == Face::knit) {
    std::reverse(line.contrast.begin(), line.contrast.end());
    return;
  }
  line.caught.assign(line.contrast.size(), 0);
  line.floats.assign(line.contrast.size(), Over{});
  for (const Needle needle : caught_needles(design, profile, knitted)) {
    line.caught[static_cast<std::size_t>(needle.position - first_needle_of(design).position)] = 1;
  }
  if (knitted.two_coloured()) {
    lay_floats(line, 1, line.floats);
    lay_floats(line, 0, line.floats);
  }
}

// The part of a pixel that contrast covers, its floats on the purl side too.
float ClothPainter::contrast_in(const Line& line, std::size_t pixel) const {
  constexpr float strand = 2 * StitchForm::strand_half; // share of a stitch that a float hides
  float covered = 0;
  for (std::size_t share = across_.from[pixel]; share < across_.from[pixel + 1]; ++share) {
    const auto stitch = static_cast<std::size_t>(across_.shares[share].cell);
    const bool hidden = !line.floats.empty() && line.floats[stitch].length > 0;
    const auto own = static_cast<float>(line.contrast[stitch]);
    covered += across_.shares[share].part * (hidden ? own + (1 - 2 * own) * strand : own);
  }
  return covered;
}

void ClothPainter::fill_line(const Document& design, const Profile& profile, const RowToKnit& knitted, Line& line) {
  line.main = seen(yarn_of(design, knitted.main).colour);
  line.contrast_colour = knitted.contrast != 0 ? seen(yarn_of(design, knitted.contrast).colour) : line.main;
  fill_stitches(design, profile, knitted, line);
  line.share.resize(static_cast<std::size_t>(across_.pixels()));
  for (std::size_t pixel = 0; pixel < line.share.size(); ++pixel) {
    line.share[pixel] = contrast_in(line, pixel);
  }
}

// The rows under a line of pixels and the one above them are asked for again and again. Where there are many more rows
// than drawn ones and no stitch's form shows, the drawn ones are held instead: a thousand rows may lie under a pixel.
const ClothPainter::Line& ClothPainter::line_of(const Document& design, const Profile& profile, const RowsToKnit& rows,
                                                int row) {
  constexpr std::size_t neighbours = 4;
  const bool by_drawn_row = detail_ <= 0 && frame_.rows > 2 * design.grid.height();
  const RowToKnit& knitted = rows.rows[static_cast<std::size_t>(row) % rows.rows.size()]; // from afar they are repeated
  const std::size_t held = by_drawn_row ? static_cast<std::size_t>(design.grid.height()) + 1 : neighbours;
  const int number = by_drawn_row ? knitted.drawn + 1 : row; // an inserted row isn't drawn
  lines_.resize(held);
  Line& line = lines_[static_cast<std::size_t>(number) % held];
  if (line.row != number || (by_drawn_row && (line.of_main != knitted.main || line.of_contrast != knitted.contrast))) {
    line.row = number;
    line.of_main = knitted.main;
    line.of_contrast = knitted.contrast;
    fill_line(design, profile, knitted, line);
  }
  return line;
}

// One line of pixels of stitches, `height` (0 to 1) up in the row.
void ClothPainter::texture_scan(const Line& line, const Line& above, float height, unsigned char* out) const {
  const bool knit = frame_.view.face == Face::knit;
  for (std::size_t pixel = 0; pixel < across_.middle.size(); ++pixel) {
    const auto stitch = static_cast<std::size_t>(across_.middle[pixel]);
    const float across = across_.part[pixel];
    const bool is_contrast = line.contrast[stitch] != 0;
    const Colour own = is_contrast ? line.contrast_colour : line.main;
    Colour other = own; // that is seen in the same pixel
    float own_light = 1;
    float other_light = 0;
    if (knit) {
      const StitchInPixels::Place& place = seen_.knit(across, height);
      own_light = place.own;
      other_light = place.above;
      other = above.contrast[stitch] != 0 ? above.contrast_colour : above.main;
    } else {
      own_light = seen_.purl(across, height);
      const Over& over = line.floats[stitch];
      if (over.length > 0) {
        const StitchInPixels::Strand strand = seen_.strand(height, sag_of(over, static_cast<float>(stitch) + across));
        own_light *= 1 - strand.share;
        other_light = strand.light * strand.share;
        other = is_contrast ? line.main : line.contrast_colour;
      }
    }
    const auto part = [&](std::uint8_t one, std::uint8_t two, float light) {
      const float flat = table_.value(std::min(1.0F, light));
      const float form = static_cast<float>(one) * own_light + static_cast<float>(two) * other_light;
      return byte_of(flat + (form - flat) * detail_);
    };
    *out++ = part(own.red, other.red, sum_.red[pixel]);
    *out++ = part(own.green, other.green, sum_.green[pixel]);
    *out++ = part(own.blue, other.blue, sum_.blue[pixel]);
  }
}

// Adds a row's light to that of the line of pixels, of which it covers that part.
void ClothPainter::mix(const Line& line, float part) {
  const Light main = light_of(line.main);
  const Light contrast = light_of(line.contrast_colour);
  const auto add = [&](std::vector<float>& sum, float of_main, float of_contrast) {
    const float least = of_main * part;
    const float more = (of_contrast - of_main) * part;
    for (std::size_t pixel = 0; pixel < sum.size(); ++pixel) {
      sum[pixel] += least + more * line.share[pixel];
    }
  };
  add(sum_.red, main.red, contrast.red);
  add(sum_.green, main.green, contrast.green);
  add(sum_.blue, main.blue, contrast.blue);
}

void ClothPainter::paint_scan(const Document& design, const Profile& profile, const RowsToKnit& rows, int scan) {
  const auto from_below = static_cast<std::size_t>(pixels_.height - 1 - scan); // row 1 lies lowest
  const auto width = static_cast<std::size_t>(pixels_.width);
  sum_.red.assign(width, 0);
  sum_.green.assign(width, 0);
  sum_.blue.assign(width, 0);
  for (std::size_t share = upwards_.from[from_below]; share < upwards_.from[from_below + 1]; ++share) {
    mix(line_of(design, profile, rows, upwards_.shares[share].cell), upwards_.shares[share].part);
  }
  unsigned char* out = pixels_.rgb.data() + static_cast<std::size_t>(scan) * width * 3;
  if (detail_ > 0) {
    const int row = upwards_.middle[from_below];
    const Line& line = line_of(design, profile, rows, row);
    const Line& above = line_of(design, profile, rows, std::min(row + 1, frame_.rows - 1));
    return texture_scan(line, above, upwards_.part[from_below], out);
  }
  for (std::size_t pixel = 0; pixel < width; ++pixel) {
    *out++ = table_.byte(std::min(1.0F, sum_.red[pixel]));
    *out++ = table_.byte(std::min(1.0F, sum_.green[pixel]));
    *out++ = table_.byte(std::min(1.0F, sum_.blue[pixel]));
  }
}

bool ClothPainter::paint(const Document& design, const Profile& profile, const RowsToKnit& rows, const ClothView& view,
                         std::uint64_t rows_serial) {
  const std::size_t knitted = rows.rows.size();
  if (view.width < 8 || view.height < 8 || knitted < 1 || stitches_of(design) < 1) {
    pixels_ = {};
    frame_ = {};
    return true;
  }
  const Frame frame = frame_for(design, profile, static_cast<int>(knitted), view);
  const bool all = !(frame == frame_);
  if (all) {
    lay_out(frame, design.gauge.stitch_mm(), design.gauge.row_mm());
  }
  const Changes changes = changes_since(design, rows, rows_serial, all);
  lines_.clear();
  bool any = false;
  for (int scan = 0; scan < pixels_.height; ++scan) {
    if (scan_due(scan, rows, changes)) {
      paint_scan(design, profile, rows, scan);
      any = true;
    }
  }
  return any;
}

PiecePixels picture_of_piece(const Document& design, const Profile& profile, const RowsToKnit& rows, Face face,
                             int widest, int tallest) {
  ClothPainter painter;
  painter.paint(design, profile, rows, ClothView{face, false, widest, tallest, 0, 0, 0, ColourSight::as_is});
  return painter.pixels();
}

} // namespace punchwright::editor
