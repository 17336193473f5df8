// punchwright trace: the knittable repeat that is nearest to a picture.
#include "cli/commands.hpp"
#include "cli/made_design.hpp"
#include "cli/output.hpp"
#include "cli/places.hpp"
#include "design/repeat_file.hpp"
#include "files/files.hpp"
#include "machine/placement.hpp"
#include "tracing/best_place.hpp"
#include "words/words.hpp"

#include <cmath>
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
      said("part of the picture: {} × {} pixels from {}, {}", decimal(lattice.stitch_width * lattice.columns, 1),
           decimal(lattice.row_height * lattice.rows, 1), decimal(lattice.left, 1), decimal(lattice.top, 1)) +
      '\n';
  text += said("contrast where it is darker than {} %", decimal(traced.split * 100, 1)) + '\n';
  text += said("{} otherwise than in the picture, so that no float passes more than {}",
               said_count(traced.moved, "{} stitch", "{} stitches"), said_count(limit, "{} stitch", "{} stitches")) +
          '\n';
  for (const Unmendable& left : traced.unmendable) {
    text += said("row {}: what is protected leaves a float too long", left.row + 1) + '\n';
  }
  return text;
}

} // namespace

int trace_picture(const TraceCommandWishes& wishes) {
  if (!wishes.output.ends_with(".repeat")) {
    return refuse(
        Error{wishes.output, 0, 0, tr("a traced design is a .repeat file"), tr("give it a name that ends so")});
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
