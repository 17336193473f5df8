// The names that files are first offered: after the document's own file, else the demo that it began as, else its
// title.
#include "editor/exporting.hpp"

#include <cctype>
#include <string_view>

namespace punchwright::editor {

namespace {

// "Tide crabs" as "tide-crabs"; letters beyond ASCII stay as they are.
std::string name_from_title(std::string_view title) {
  std::string name;
  for (const char sign : title) {
    const auto byte = static_cast<unsigned char>(sign);
    if (byte >= 0x80 || std::isalnum(byte) != 0) {
      name += static_cast<char>(byte >= 0x80 ? byte : std::tolower(byte));
    } else if (!name.empty() && name.back() != '-') {
      name += '-';
    }
  }
  if (!name.empty() && name.back() == '-') {
    name.pop_back();
  }
  return name;
}

std::string yoke_stem(const App& app) {
  return !app.yoke.path.empty()             ? app.yoke.path.stem().string()
         : !app.yoke.suggested_name.empty() ? app.yoke.suggested_name
                                            : std::string("untitled");
}

} // namespace

std::string name_without_kind(const App& app) {
  if (!app.session.path.empty()) {
    return app.session.path.stem().string();
  }
  if (!app.session.suggested_name.empty()) {
    return app.session.suggested_name;
  }
  const std::string name = name_from_title(app.work.design.title);
  return name.empty() ? std::string("untitled") : name;
}

std::string usual_name(const App& app, Purpose purpose) {
  const std::string name = name_without_kind(app);
  switch (purpose) {
  case Purpose::save: return name + ".repeat";
  case Purpose::card: return name + "-card.pdf";
  case Purpose::chart: return name + "-needles.pdf";
  case Purpose::steps: return name + "-steps.pdf";
  case Purpose::everything: return name;
  case Purpose::leaflet: return name + "-leaflet.pdf";
  case Purpose::fabric: return name + "-piece.png";
  case Purpose::pattern: return name + "-pattern-chart.png";
  case Purpose::measure_page: return "measure-your-blank.pdf";
  case Purpose::swatch: return "orientation-swatch.pdf";
  case Purpose::keep_machine: return "my-machine.machine";
  case Purpose::save_yoke: return yoke_stem(app) + ".yoke";
  case Purpose::yoke_sheets: return yoke_stem(app) + ".pdf";
  case Purpose::yoke_tier:
  case Purpose::open:
  case Purpose::picture:
  case Purpose::choose_machine: break;
  }
  return {};
}

} // namespace punchwright::editor
