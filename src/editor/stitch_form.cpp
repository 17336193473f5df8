// Filling the tables.
#include "editor/stitch_form.hpp"

#include "design/light.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace punchwright::editor {

namespace {

constexpr float gap = 0.42F; // light between the strands, where one sees into the cloth

// Roundness of a strand: 1 along its middle, falling to the sides; 0 beyond its edge.
float round_strand(float off, float half) {
  const float part = off / half;
  return std::abs(part) >= 1 ? 0.0F : std::sqrt(1 - part * part);
}

// The two legs lean towards each other at the foot, and are thickest in the middle. `up` may lie below 0: the foot
// inside the stitch below.
float leg(float across, float up) {
  const float aside = std::abs(across - 0.5F) * 2; // 0 in the middle of the stitch, 1 at its edge
  const float middle = 0.16F + 0.50F * std::clamp(up + 0.1F, 0.0F, 1.1F);
  const float half = 0.40F - 0.10F * std::abs(up - 0.45F);
  const float ply = 0.05F * std::sin(2 * std::numbers::pi_v<float> * (up * 2.5F + aside * 1.2F)); // the yarn's twist
  const float roundness = round_strand(aside - middle, half);
  return roundness <= 0 ? 0.0F : 0.58F + 0.46F * roundness + ply * roundness;
}

// The loop's head lies over the foot of the loop above it; heads of neighbours meet at their sides.
float head(float across, float up) {
  const float aside = std::abs(across - 0.5F) * 2;
  const float arc = 0.30F + 0.42F * (1 - aside * aside * aside);
  const float half = 0.30F;
  const float ply = 0.05F * std::sin(2 * std::numbers::pi_v<float> * (across * 3 + up * 1.1F));
  const float roundness = round_strand(up - arc, half);
  return roundness <= 0 ? 0.0F : 0.60F + 0.44F * roundness + ply * roundness;
}

} // namespace

StitchForm::StitchForm() {
  for (int y = 0; y < size; ++y) {
    for (int x = 0; x < size; ++x) {
      const float across = (static_cast<float>(x) + 0.5F) / size;
      const float up = (static_cast<float>(y) + 0.5F) / size;
      const auto at = static_cast<std::size_t>(y * size + x);
      const float own = leg(across, up);
      const float aside = std::abs(across - 0.5F) * 2;
      const float foot = 0.70F + 0.5F * aside * aside; // its lower end is round
      const float next = up > foot ? leg(across, up - 1) : 0.0F;
      knit_[at] = {own > 0 ? own : gap, next, next > 0 ? 1.0F : 0.0F};
      const float loop = std::max(head(across, up), head(across, up + 1) * 0.92F);
      purl_[at] = loop > 0 ? loop : gap;
    }
  }
}

namespace {

// What is seen at a place of the tables, whose rows go on below 0 in the stitch below, and above the last in the one
// above.
struct SeenPlace {
  float own = 0;
  float above = 0;
  float purl = 0;
};

SeenPlace seen_at(const StitchForm& form, int x, int y) {
  constexpr int size = StitchForm::size;
  const auto part = [](int place) { return (static_cast<float>((place + size) % size) + 0.5F) / size; };
  const StitchForm::Place& knit = form.knit(part(x), part(y));
  const float leg = knit.own * (1 - knit.share);
  const float foot = knit.next * knit.share;
  const float purl = form.purl(part(x), part(y));
  if (y < 0) { // the foot down there is this stitch's own
    return {leg + foot, 0, purl};
  }
  return y < size ? SeenPlace{leg, foot, purl} : SeenPlace{0, leg + foot, purl};
}

// How many places of the tables a pixel covers to either side of its middle.
int reach_of(double px) {
  return std::clamp(static_cast<int>(std::lround((StitchForm::size / px - 1) / 2)), 0, StitchForm::size / 2);
}

} // namespace

StitchInPixels::StitchInPixels(const StitchForm& form, double stitch_px, double row_px)
    : half_pixel_(static_cast<float>(0.5 / row_px)) {
  constexpr int size = StitchForm::size;
  const int aside = reach_of(stitch_px);
  const int along = reach_of(row_px);
  const float count = static_cast<float>((2 * aside + 1) * (2 * along + 1));
  std::vector<SeenPlace> sums(static_cast<std::size_t>(size) * size); // over the pixel's height
  for (int y = -along; y < size + along; ++y) {
    for (int x = 0; x < size; ++x) {
      const SeenPlace seen = seen_at(form, x, y);
      for (int row = std::max(0, y - along); row <= std::min(size - 1, y + along); ++row) {
        SeenPlace& sum = sums[static_cast<std::size_t>(row * size + x)];
        sum.own += seen.own;
        sum.above += seen.above;
        sum.purl += seen.purl;
      }
    }
  }
  for (int y = 0; y < size; ++y) {
    for (int x = 0; x < size; ++x) {
      SeenPlace mean;
      for (int column = x - aside; column <= x + aside; ++column) { // neighbours have the same form
        const SeenPlace& sum = sums[static_cast<std::size_t>(y * size + (column + size) % size)];
        mean.own += sum.own / count;
        mean.above += sum.above / count;
        mean.purl += sum.purl / count;
      }
      knit_.push_back({mean.own, mean.above});
      purl_.push_back(mean.purl);
    }
  }
}

StitchInPixels::Strand StitchInPixels::strand(float upwards, float sag) const {
  constexpr float half = StitchForm::strand_half;
  const float middle = StitchForm::strand_height - sag;
  const float low = std::max(upwards - half_pixel_, middle - half);
  const float high = std::min(upwards + half_pixel_, middle + half);
  if (high <= low) {
    return {};
  }
  const float off = ((low + high) / 2 - middle) / half;
  return {std::min(1.0F, (high - low) / (2 * half_pixel_)), 0.62F + 0.44F * std::sqrt(std::max(0.0F, 1 - off * off))};
}

std::array<std::vector<unsigned char>, 2> stitch_pixels(const StitchForm& form) {
  std::array<std::vector<unsigned char>, 2> pixels;
  const auto byte = [](float part) { return static_cast<unsigned char>(std::clamp(part, 0.0F, 1.0F) * 255 + 0.5F); };
  for (int y = 0; y < StitchForm::size; ++y) {
    for (int x = 0; x < StitchForm::size; ++x) {
      const StitchForm::Place& place = form.knit((static_cast<float>(x) + 0.5F) / StitchForm::size,
                                                 (static_cast<float>(y) + 0.5F) / StitchForm::size);
      const unsigned char own = byte(place.own);
      const unsigned char next = byte(place.share > 0 ? place.next : 0.6F); // smoothing mixes this in at the edge
      pixels[0].insert(pixels[0].end(), {own, own, own, 255});
      pixels[1].insert(pixels[1].end(), {next, next, next, byte(place.share)});
    }
  }
  return pixels;
}

float value_of_light(float light) {
  return 255 * (light <= 0.0031308F ? light * 12.92F : 1.055F * std::pow(light, 1 / 2.4F) - 0.055F);
}

LightTable::LightTable() {
  for (std::size_t number = 0; number < light_.size(); ++number) {
    light_[number] = static_cast<float>(linear_light(static_cast<std::uint8_t>(number)));
  }
  for (std::size_t step = 0; step < value_.size(); ++step) {
    value_[step] = value_of_light(static_cast<float>(step) / steps);
    byte_[step] = static_cast<unsigned char>(std::clamp(value_[step] + 0.5F, 0.0F, 255.0F));
  }
}

} // namespace punchwright::editor
