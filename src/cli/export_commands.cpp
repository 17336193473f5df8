// The commands that write files: card, needles, fabric, and the sheets about the machine itself.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "files/files.hpp"
#include "machine/profile_file.hpp"
#include "words/words.hpp"

#include <fmt/format.h>

namespace punchwright::cli {
namespace {

template <class Export> int export_file(const ExportWishes& wishes, Export&& files_for) {
  const auto opened = open_file(wishes.file);
  if (!opened) {
    return refuse(opened.error());
  }
  const int written = write_all(files_for(*opened));
  return written == done ? code_for_faults(check(opened->document, opened->profile), wishes.file) : written;
}

// A profile on the command line: built in, or a .machine file's path from here.
Result<Profile> profile_for(const std::string& name) {
  return find_profile(name, tr("command line"), read_for_machine);
}

template <class Export> int export_for_machine(const SheetWishes& wishes, Export&& files_for) {
  const auto profile = profile_for(wishes.profile);
  return profile ? write_all(files_for(*profile)) : refuse(profile.error());
}

int list_machines() {
  std::string text;
  for (const Profile& profile : built_in_profiles()) {
    text += fmt::format("{:<18}  {}\n", profile.name, tr(profile.title.c_str()));
  }
  return print(text) ? done : cannot;
}

bool wants_measures(const MachineWishes& wishes) {
  return wishes.over_23_holes || wishes.over_50_rows || wishes.edge_to_first_hole || wishes.sheet_width ||
         wishes.hole_diameter;
}

Failure measure(Profile& profile, const MachineWishes& wishes) {
  if (!profile.card) {
    return Error{wishes.profile, 0, 0, tr("this machine reads no card"), tr("there is no blank to measure")};
  }
  const CardGeometry& before = profile.card->geometry;
  const BlankReadings present = readings_of(before, profile.card->repeat);
  const BlankReadings readings{
      wishes.over_23_holes.value_or(present.over_23_holes), wishes.over_50_rows.value_or(present.over_50_rows),
      wishes.edge_to_first_hole.value_or(present.edge_to_first_hole), wishes.sheet_width.value_or(present.sheet_width),
      wishes.hole_diameter.value_or(present.hole_diameter)};
  auto geometry = geometry_from_readings(readings, profile.card->repeat, before);
  if (!geometry) {
    return geometry.error();
  }
  profile.card->geometry = std::move(geometry).value();
  const auto measured = [&](bool given, const char* key) {
    if (given) {
      profile.sources[std::string("card.geometry.") + key] = "measured";
    }
  };
  measured(wishes.over_23_holes.has_value(), "stitch_pitch_mm");
  measured(wishes.over_50_rows.has_value(), "row_pitch_mm");
  measured(wishes.edge_to_first_hole.has_value(), "column_1_mm");
  measured(wishes.sheet_width.has_value(), "sheet_width_mm");
  measured(wishes.hole_diameter.has_value(), "hole_diameter_mm");
  return std::nullopt;
}

} // namespace

int export_card(const CardExportWishes& wishes) {
  return export_file(wishes.where, [&](const OpenedDocument& opened) {
    return card_files(opened.document, opened.profile, wishes.where.output, wishes.only_card);
  });
}

int export_needles(const NeedlesWishes& wishes) {
  return export_file(wishes.where, [&](const OpenedDocument& opened) {
    return needle_files(opened.document, opened.profile, wishes.where.output, wishes.chart);
  });
}

int export_leaflet(const LeafletWishes& wishes) {
  return export_file(wishes.where, [&](const OpenedDocument& opened) {
    return leaflet_files(opened.document, opened.profile, wishes.where.output,
                         wishes.paper.value_or(opened.document.card.paper));
  });
}

int export_pattern(const ExportWishes& wishes) {
  return export_file(wishes,
                     [&](const OpenedDocument& opened) { return pattern_files(opened.document, wishes.output); });
}

int export_fabric(const FabricWishes& wishes) {
  return export_file(wishes.where, [&](const OpenedDocument& opened) {
    return fabric_files(opened.document, opened.profile, wishes.where.output, wishes.side);
  });
}

int measuring_sheet(const SheetWishes& wishes) {
  return export_for_machine(
      wishes, [&](const Profile& profile) { return measure_files(profile, wishes.paper, wishes.output); });
}

int orientation_swatch(const SheetWishes& wishes) {
  return export_for_machine(wishes,
                            [&](const Profile& profile) { return swatch_files(profile, wishes.paper, wishes.output); });
}

int machine(const MachineWishes& wishes) {
  if (wishes.profile.empty()) {
    if (wants_measures(wishes) || wishes.swatch_looks_like || !wishes.output.empty()) {
      return refuse(
          Error{{}, 0, 0, tr("which machine?"), tr("name a built-in machine or a .machine file: punchwright machine")});
    }
    return list_machines();
  }
  if (!wishes.output.empty() && !wishes.output.ends_with(".machine")) {
    return refuse(
        Error{wishes.output, 0, 0, tr("a machine is written as a .machine file"), tr("let the name end in .machine")});
  }
  auto found = profile_for(wishes.profile);
  if (!found) {
    return refuse(found.error());
  }
  Profile profile = std::move(found).value();
  if (wants_measures(wishes)) {
    if (const auto failure = measure(profile, wishes)) {
      return refuse(*failure);
    }
  }
  if (wishes.swatch_looks_like) {
    profile = profile_after_swatch(profile, swatch_answer(*wishes.swatch_looks_like));
  }
  if (wishes.output.empty()) {
    return print(write_machine(profile)) ? done : cannot;
  }
  return write_all(std::vector<OutputFile>{OutputFile{wishes.output, write_machine(profile)}});
}

} // namespace punchwright::cli
