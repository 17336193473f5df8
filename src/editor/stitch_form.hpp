// How light each place of a stitch is, seen from either side: tables, worked out once, since a picture asks for them
// hundreds of thousands of times. And the way between a colour's numbers and its light.
#pragma once

#include "design/units.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace punchwright::editor {

// Places run from 0 to 1 across the stitch and from 0 to 1 upwards.
//
//     knit side            purl side
//      \    /               .--.     the loop's head lies across as an arc
//       \  /               (    )
//        \/      <- the next row's foot comes out here, over this row's legs
class StitchForm {
public:
  StitchForm();

  struct Place {
    float own = 1;   // how light the stitch's own yarn is there
    float next = 1;  // and the yarn of the stitch above, whose foot
    float share = 0; // covers so much of the place
  };
  [[nodiscard]] const Place& knit(float across, float upwards) const { return knit_[place(across, upwards)]; }
  [[nodiscard]] float purl(float across, float upwards) const { return purl_[place(across, upwards)]; }

  // Places across and upwards in the tables.
  static constexpr int size = 64;

  // A float across the stitch on the purl side: a strand this far up, so thick, in parts of a row.
  static constexpr float strand_height = 0.28F;
  static constexpr float strand_half = 0.09F;

private:
  [[nodiscard]] static std::size_t place(float across, float upwards) {
    return static_cast<std::size_t>(static_cast<int>(upwards * size) * size + static_cast<int>(across * size));
  }
  std::array<Place, static_cast<std::size_t>(size) * size> knit_{};
  std::array<float, static_cast<std::size_t>(size) * size> purl_{};
};

// The form as it is seen where a stitch is only so many pixels wide and high: each place is the mean of a pixel around
// it. Looked at place by place instead, a small stitch would be a matter of luck, and light yarn be speckled.
class StitchInPixels {
public:
  StitchInPixels() = default;
  StitchInPixels(const StitchForm& form, double stitch_px, double row_px);

  struct Place {
    float own = 1;   // light of the stitch's own yarn in that pixel
    float above = 0; // and of the yarn of the stitch above
  };
  [[nodiscard]] const Place& knit(float across, float upwards) const { return knit_[place(across, upwards)]; }
  [[nodiscard]] float purl(float across, float upwards) const { return purl_[place(across, upwards)]; }

  // Of the pixel whose middle is so far up in the row, the share that a float covers whose strand lies `sag` lower than
  // it begins, and how light it is there.
  struct Strand {
    float share = 0;
    float light = 1;
  };
  [[nodiscard]] Strand strand(float upwards, float sag) const;

private:
  [[nodiscard]] static std::size_t place(float across, float upwards) {
    constexpr int size = StitchForm::size;
    return static_cast<std::size_t>(static_cast<int>(upwards * size) * size + static_cast<int>(across * size));
  }
  std::vector<Place> knit_;
  std::vector<float> purl_;
  float half_pixel_ = 0; // in parts of a row
};

// The knit side's stitch as RGBA pixels, the lowest row first: its own yarn, and the foot of the stitch above, which is
// see-through elsewhere. White where the yarn is as light as its colour.
[[nodiscard]] std::array<std::vector<unsigned char>, 2> stitch_pixels(const StitchForm& form);

// 0 to 255, of light from 0 to 1 (sRGB, IEC 61966-2-1).
[[nodiscard]] float value_of_light(float light);

// Light adds up linearly; the numbers of a colour don't (sRGB, IEC 61966-2-1).
class LightTable {
public:
  LightTable();
  [[nodiscard]] float light(std::uint8_t value) const { return light_[value]; }
  // 0 to 255; `light` from 0 to 1.
  [[nodiscard]] float value(float light) const { return value_[step_of(light)]; }
  // The same, rounded.
  [[nodiscard]] unsigned char byte(float light) const { return byte_[step_of(light)]; }

private:
  static constexpr int steps = 4096;
  [[nodiscard]] static std::size_t step_of(float light) { return static_cast<std::size_t>(light * steps + 0.5F); }
  std::array<float, 256> light_{};
  std::array<float, steps + 1> value_{};
  std::array<unsigned char, steps + 1> byte_{};
};

} // namespace punchwright::editor
