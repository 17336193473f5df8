// punchwright trace: the knittable repeat that is nearest to a picture.
#include "cli/commands.hpp"
#include "cli/made_design.hpp"
#include "cli/output.hpp"
#include "cli/places.hpp"
#include "design/repeat_file.hpp"
#include "design/words.hpp"
#include "files/files.hpp"
#include "machine/placement.hpp"
#include "tracing/best_place.hpp"

#include <cmath>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace punchwright::cli {
namespace {

double tenths(double value) {
  return std::round(value * 10) / 10;
}

std::string json_of(const Traced& traced, const Lattice& lattice, int limit) {
  nlohmann::ordered_json answer;
  answer["format"] = 1;
  answer["limit"] = limit;
  answer["part"] = {{"left", tenths(lattice.left)},
                    {"top", tenths(lattice.top)},
                    {"width", tenths(lattice.stitch_width * lattice.columns)},
                    {"height", tenths(lattice.row_height * lattice.rows)}};
  answer["split"] = std::round(traced.split * 1000) / 10;
  answer["error"] = std::round(traced.error * 1e6) / 1e6;
  answer["moved"] = traced.moved;
  answer["unmendable"] = nlohmann::ordered_json::array();
  for (const Unmendable& left : traced.unmendable) {
    answer["unmendable"].push_back(left.row + 1);
  }
  return answer.dump() + "\n";
}

std::string text_of(const Traced& traced, const Lattice& lattice, int limit) {
  std::string text =
      fmt::format("part of the picture: {:.1f} × {:.1f} pixels from {:.1f}, {:.1f}\n",
                  lattice.stitch_width * lattice.columns, lattice.row_height * lattice.rows, lattice.left, lattice.top);
  text += fmt::format("contrast where it is darker than {:.1f} %\n", traced.split * 100);
  text += fmt::format("{} otherwise than in the picture, so that no float passes more than {}\n",
                      counted(traced.moved, "stitch", "stitches"), counted(limit, "stitch", "stitches"));
  for (const Unmendable& left : traced.unmendable) {
    text += fmt::format("row {}: what is protected leaves a float too long\n", left.row + 1);
  }
  return text;
}

} // namespace

int trace_picture(const TraceCommandWishes& wishes) {
  if (!wishes.output.ends_with(".repeat")) {
    return refuse(Error{wishes.output, 0, 0, "a traced design is a .repeat file", "give it a name that ends so"});
  }
  const auto bytes = read_file(wishes.picture, largest_photo_file);
  if (!bytes) {
    return refuse(bytes.error());
  }
  const auto photo = read_photo(*bytes, name_for_people(wishes.picture));
  if (!photo) {
    return refuse(photo.error());
  }
  Document design = blank_document(wishes.width, wishes.rows);
  design.title = title_from(wishes.picture);
  design.rules.longest_float = wishes.longest_float;
  const auto profile = use_machine(design, wishes.machine, wishes.output, wishes.gauge);
  if (!profile) {
    return refuse(profile.error());
  }
  TraceWishes how = wishes.how;
  how.limit = longest_float_of(design, *profile);
  for (const std::string& place : wishes.protect) {
    const auto area = area_in(place, wishes.width, wishes.rows);
    if (!area) {
      return refuse(area.error());
    }
    how.kept.push_back(*area);
  }
  Lattice lattice = largest_lattice(photo->width, photo->height, wishes.width, wishes.rows, design.gauge);
  if (wishes.part) {
    const auto& [left, top, width] = *wishes.part;
    lattice = lattice_at(left, top, width, wishes.width, wishes.rows, design.gauge);
  } else if (wishes.best_place) {
    const auto places = best_places(*photo, lattice, design.gauge, wishes.ignored, how, 1);
    lattice = places.empty() ? lattice : places.front().lattice;
  }
  const Traced traced = trace(light_in(*photo, lattice, wishes.ignored), wishes.width, how);
  design.grid = traced.drawing;
  if (const Failure failure = write_file(wishes.output, write_repeat(design))) {
    return refuse(*failure);
  }
  if (!print(wishes.json ? json_of(traced, lattice, how.limit)
                         : text_of(traced, lattice, how.limit) + wishes.output + "\n")) {
    return cannot;
  }
  return code_for_faults(check(design, *profile), wishes.output);
}

} // namespace punchwright::cli
