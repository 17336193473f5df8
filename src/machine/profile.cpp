// Questions to a profile, and the geometry that ruler readings on a blank mean.
// What is doubtful is told as sentences, so that screen and sheets say it alike.
#include "machine/profile.hpp"

#include "design/lengths.hpp"
#include "machine/hole_conflicts.hpp"
#include "machine/profile_keys.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/core.h>

namespace punchwright {
namespace {

constexpr const char* the_hole = noted("the hole's diameter");
constexpr const char* the_edge = noted("the distance from the edge to the first hole");

Error impossible(std::string_view what, double reading, std::string remedy) {
  return Error{"", 0, 0, said("{} reads {} mm", what, typed_number(reading)), std::move(remedy)};
}

// Beside the number, since a reading that is off is mostly one of a wrong unit or a miscounted row.
std::optional<Error> out_of_range(std::string_view what, double reading, double least, double most) {
  if (reading >= least && reading <= most) { // so written, nan is out of range
    return std::nullopt;
  }
  return impossible(
      what, reading,
      said("possible are {} to {} mm; measure again, in millimetres", plain_number(least), plain_number(most)));
}

std::optional<Error> contradiction(const CardGeometry& geometry, const BlankReadings& readings, int repeat) {
  if (geometry.hole_diameter >= geometry.row_pitch || (repeat > 1 && geometry.hole_diameter >= geometry.stitch_pitch)) {
    return impossible(
        tr(the_hole), readings.hole_diameter,
        said("holes {} mm by {} mm apart would run into one another; measure the holes and the distances again",
             decimal(geometry.stitch_pitch, 2), decimal(geometry.row_pitch, 2)));
  }
  const double first = geometry.column_1 - geometry.hole_diameter / 2;
  const double last = geometry.column_1 + (repeat - 1) * geometry.stitch_pitch + geometry.hole_diameter / 2;
  if (first < 0 || last > geometry.sheet_width) {
    return impossible(
        tr(the_edge), readings.edge_to_first_hole,
        said("so {} columns would reach from {} to {} mm on a sheet {} mm wide; measure the sheet and that distance "
             "again",
             repeat, decimal(first, 1), decimal(last, 1), decimal(geometry.sheet_width, 1)));
  }
  // Feed and clip holes are not among the readings: they are as the profile says, mostly from memory.
  if (const auto conflict = hole_conflict(geometry, repeat)) {
    return impossible(tr(the_edge), readings.edge_to_first_hole,
                      said("so {}; measure that too, and write it as '{}' under [card.geometry] in a .machine file",
                           conflict->what, conflict->key));
  }
  return std::nullopt;
}

} // namespace

const Profile* built_in_profile(std::string_view name) {
  const auto& profiles = built_in_profiles();
  const auto found = std::ranges::find(profiles, name, &Profile::name);
  return found != profiles.end() ? &*found : nullptr;
}

bool is_unsure(std::string_view source) {
  return source.starts_with("from memory") || source.starts_with("unknown");
}

std::vector<std::string> unsure_values(const Profile& profile) {
  std::vector<std::string> sentences;
  for (const ProfileKey& key : profile_keys()) {
    const auto source = profile.sources.find(std::string(key.key));
    if (source != profile.sources.end() && is_unsure(source->second)) {
      if (const auto value = key.shown(profile)) {
        sentences.push_back(fmt::format("{} {}: {}", tr(key.words.data()), *value, tr(source->second.c_str())));
      }
    }
  }
  return sentences;
}

int gaps_measured(int repeat) {
  return std::min(repeat, 24) - 1;
}

BlankReadings readings_of(const CardGeometry& geometry, int repeat) {
  return {geometry.stitch_pitch * gaps_measured(repeat), geometry.row_pitch * 50, geometry.column_1,
          geometry.sheet_width, geometry.hole_diameter};
}

Result<CardGeometry> geometry_from_readings(const BlankReadings& readings, int repeat, const CardGeometry& before) {
  const int gaps = gaps_measured(repeat);
  const std::string over_holes = said("the distance over {} holes", gaps);
  const std::array<std::optional<Error>, 5> ranges = {
      gaps > 0 ? out_of_range(over_holes, readings.over_23_holes, gaps * 1.0, gaps * 20.0) : std::nullopt,
      out_of_range(tr("the distance over 50 rows"), readings.over_50_rows, 50, 1000),
      out_of_range(tr("the sheet's width"), readings.sheet_width, 20, 400),
      out_of_range(tr(the_edge), readings.edge_to_first_hole, 0.5, 200),
      out_of_range(tr(the_hole), readings.hole_diameter, 0.5, 15)};
  for (const auto& error : ranges) {
    if (error) {
      return *error;
    }
  }
  CardGeometry geometry = before;
  if (gaps > 0) {
    geometry.stitch_pitch = readings.over_23_holes / gaps;
  }
  geometry.row_pitch = readings.over_50_rows / 50;
  geometry.column_1 = readings.edge_to_first_hole;
  geometry.sheet_width = readings.sheet_width;
  geometry.hole_diameter = readings.hole_diameter;
  if (const auto error = contradiction(geometry, readings, repeat)) {
    return *error;
  }
  return geometry;
}

} // namespace punchwright
