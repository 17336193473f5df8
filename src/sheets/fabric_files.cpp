// The picture of the cloth as a file: PNG, true to size at the gauge.
#include "sheets/exports.hpp"
#include "sheets/fabric_picture.hpp"
#include "sheets/knitted_picture.hpp"
#include "sheets/output_names.hpp"
#include "sheets/writers.hpp"
#include "words/words.hpp"

#include <functional>

namespace punchwright {

namespace {

Result<std::vector<OutputFile>> picture_files(const std::string& path,
                                              const std::function<Result<FabricPicture>()>& draw) {
  if (const std::string extension = extension_in(path); extension != ".png") {
    return Error{path, 0, 0, said("'{}' is no form of the fabric picture", extension), tr("allowed: .png")};
  }
  const auto failed = [&](Error error) {
    error.file = path;
    return error;
  };
  const Result<FabricPicture> picture = draw();
  if (!picture) {
    return failed(picture.error());
  }
  Result<std::string> png = png_of_pixels(picture->width, picture->height, picture->rgb, picture->pixels_per_metre_x,
                                          picture->pixels_per_metre_y);
  if (!png) {
    return failed(png.error());
  }
  std::vector<OutputFile> files;
  files.push_back(OutputFile{path, std::move(png).value()});
  return files;
}

} // namespace

Result<std::vector<OutputFile>> fabric_files(const Document& document, const Profile& profile, const std::string& path,
                                             Face side) {
  return picture_files(path, [&] { return fabric_picture(document, profile, side); });
}

Result<std::vector<OutputFile>> knitted_files(const Fabric& fabric, const Document& document, const std::string& path,
                                              Face side) {
  return picture_files(path, [&] { return knitted_picture(fabric, document, side); });
}

} // namespace punchwright
