// punchwright import: a two-colour picture as a design, a stitch for each pixel.
#include "cli/commands.hpp"
#include "cli/made_design.hpp"
#include "cli/output.hpp"
#include "design/repeat_file.hpp"
#include "design/words.hpp"
#include "files/files.hpp"
#include "pictures/picture.hpp"
#include "tracing/photo.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <functional>

namespace punchwright::cli {

namespace {

// What is a picture with something on it, though not one of two colours and a pixel a stitch, can be traced.
Error or_trace(Error error, std::string_view bytes, const ImportWishes& wishes) {
  const auto photo = read_photo(bytes, wishes.picture);
  if (wishes.picture != "-" && photo &&
      std::ranges::adjacent_find(photo->light, std::ranges::not_equal_to{}) != photo->light.end()) {
    error.remedy =
        said("{}; or make the repeat that is nearest to it: {}", error.remedy,
             fmt::format("punchwright trace {} -o {}", shell_word(wishes.picture), shell_word(wishes.output)));
  }
  return error;
}

} // namespace

int import_picture(const ImportWishes& wishes) {
  if (!wishes.output.ends_with(".repeat")) {
    return refuse(Error{wishes.output, 0, 0, tr("a design is a .repeat file"), tr("give it a name that ends so")});
  }
  const auto bytes = read_file(wishes.picture, largest_picture_file);
  if (!bytes) {
    return refuse(bytes.error());
  }
  const auto picture = read_picture(*bytes, name_for_people(wishes.picture));
  if (!picture) {
    return refuse(or_trace(picture.error(), *bytes, wishes));
  }
  const bool darker = wishes.contrast == ContrastIs::darker;
  Document design = design_of(*picture, wishes.contrast, title_from(wishes.picture));
  const auto profile = use_machine(design, wishes.machine, wishes.output);
  if (!profile) {
    return refuse(profile.error());
  }
  if (const Failure failure = write_file(wishes.output, write_repeat(design))) {
    return refuse(*failure);
  }
  const int width = design.grid.width();
  const int height = design.grid.height();
  const std::string text =
      darker ? said("{} × {} stitches; contrast is the darker colour, {}", width, height, hex_of(picture->dark))
             : said("{} × {} stitches; contrast is the lighter colour, {}", width, height, hex_of(picture->light));
  return print(text + '\n' + wishes.output + '\n') ? code_for_faults(check(design, *profile), wishes.output) : cannot;
}

} // namespace punchwright::cli
