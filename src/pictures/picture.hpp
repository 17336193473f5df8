// Two-colour pictures as drawings, one pixel a stitch: PNG, PBM and XBM, told by their content.
// Bytes in, stitches out; what is no such picture is refused with what helps.
#pragma once

#include "design/document.hpp"
#include "design/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

// As it looks on the knit side: the picture's top line is the drawing's highest row.
struct Picture {
  Grid darker; // contrast where the picture has its darker colour
  Colour dark;
  Colour light;
};

// ".png", ".pbm", ".xbm": the names that such files have.
[[nodiscard]] std::vector<std::string> picture_extensions();
// Whether the file's name ends in one of them, in small letters or large ones.
[[nodiscard]] bool has_picture_name(std::string_view name);
[[nodiscard]] bool has_extension_of(std::string_view name, const std::vector<std::string>& extensions);

// No larger file is one of a drawing; whoever reads files stops there.
constexpr std::size_t largest_picture_file = std::size_t{16} * 1024 * 1024; // bytes

// `name` is the file's, for errors. Refused: no such picture, a broken one, more than 200 × 2000 pixels, other than two
// colours. What is transparent counts as lying on white.
[[nodiscard]] Result<Picture> read_picture(std::string_view bytes, const std::string& name);

enum class ContrastIs { darker, lighter };

[[nodiscard]] Grid drawing_of(const Picture& picture, ContrastIs contrast);

// A design of that drawing. Its yarns have the picture's colours; where these are black and white, which is how a
// picture without colours is kept, the usual ones of a new design.
[[nodiscard]] Document design_of(const Picture& picture, ContrastIs contrast, const std::string& title);

} // namespace punchwright
