// Titles and machines of new designs.
#include "cli/made_design.hpp"

#include "cli/output.hpp"
#include "machine/usual_gauge.hpp"
#include "words/words.hpp"

#include <filesystem>

namespace punchwright::cli {

namespace fs = std::filesystem;

std::string title_from(const std::string& picture) {
  return picture == "-" ? std::string() : fs::path(picture).stem().string();
}

Result<Profile> use_machine(Document& design, const std::string& machine, const std::string& output,
                            const std::optional<Gauge>& gauge) {
  auto profile = find_profile(machine, tr("command line"), read_for_machine);
  if (profile && built_in_profile(machine) == nullptr) {
    const fs::path folder = fs::absolute(output).lexically_normal().parent_path();
    design.profile = fs::absolute(machine).lexically_relative(folder).string();
  } else if (profile) {
    design.profile = machine;
  }
  if (profile) {
    design.gauge = gauge.value_or(usual_gauge(*profile));
  }
  return profile;
}

} // namespace punchwright::cli
