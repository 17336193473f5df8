// The picture of the cloth as a file: PNG, true to size at the gauge.
#include "sheets/exports.hpp"
#include "sheets/fabric_picture.hpp"
#include "sheets/output_names.hpp"
#include "sheets/writers.hpp"

#include <fmt/format.h>

namespace punchwright {

Result<std::vector<OutputFile>> fabric_files(const Document& document, const Profile& profile, const std::string& path,
                                             Face side) {
  if (const std::string extension = extension_in(path); extension != ".png") {
    return Error{path, 0, 0, fmt::format("'{}' is no form of the fabric picture", extension), "allowed: .png"};
  }
  Result<FabricPicture> picture = fabric_picture(document, profile, side);
  if (!picture) {
    Error error = picture.error();
    error.file = path;
    return error;
  }
  Result<std::string> png = png_of_pixels(picture->width, picture->height, picture->rgb, picture->pixels_per_metre_x,
                                          picture->pixels_per_metre_y);
  if (!png) {
    Error error = png.error();
    error.file = path;
    return error;
  }
  std::vector<OutputFile> files;
  files.push_back(OutputFile{path, std::move(png).value()});
  return files;
}

} // namespace punchwright
