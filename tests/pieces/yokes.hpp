// Yokes for the tests: tiers' files that are held in memory, and a yoke opened over them.
#pragma once

#include "pieces/yoke_plan.hpp"

#include <doctest/doctest.h>
#include <map>
#include <string>

namespace punchwright::test {

// A .repeat file of that width: row r has contrast where (column * 5 + r * 3) % 7 < 3, which has no smaller period.
inline std::string tier_text(int width, int rows, const std::string& profile = "bulky-card-24") {
  std::string text = "format = 1\ntitle = \"tier\"\n[machine]\nprofile = \"" + profile +
                     "\"\n[gauge]\nstitches = 14.0\nrows = 18.0\n[[yarn]]\nkey = \"A\"\n[[yarn]]\nkey = \"B\"\n"
                     "[repeat]\nwidth = " +
                     std::to_string(width) + "\nrows = [\n";
  for (int row = rows - 1; row >= 0; --row) {
    text += "\"";
    for (int column = 0; column < width; ++column) {
      text += (column * 5 + row * 3) % 7 < 3 ? '#' : '.';
    }
    text += "\",\n";
  }
  return text + "]\n[[band]]\nrows = " + std::to_string(rows) + "\nmain = \"A\"\ncontrast = \"B\"\n";
}

struct Files {
  std::map<std::string, std::string> texts;

  [[nodiscard]] FileReader reader() const {
    return [this](const std::filesystem::path& path) -> Result<std::string> {
      const auto found = texts.find(path.filename().string());
      return found != texts.end() ? Result<std::string>(found->second)
                                  : Result<std::string>(Error{path.string(), 0, 0, "there is no such file", "look"});
    };
  }
};

inline OpenedYoke opened(const Yoke& yoke, const Files& files) {
  auto found = open_yoke(yoke, "shore/harbour.yoke", files.reader());
  INFO((found ? std::string() : found.error().text()));
  REQUIRE(found);
  return std::move(found).value();
}

// Front, back, and two sleeves on a bulky bed; three sizes, tiers of 24, 12 and 8 stitches.
inline Yoke pullover() {
  Yoke yoke;
  yoke.title = "Pullover";
  yoke.sizes = {"small", "medium", "large"};
  yoke.profile = "bulky-card-24";
  yoke.gauge.stitches = 14.0;
  yoke.gauge.rows = 18.0;
  yoke.pieces = {{"front", {{48.0, 52.0, 56.0}}, {{22.0, 23.0, 24.0}}, ""},
                 {"left sleeve", {{30.0, 32.0, 34.0}}, {{13.0, 14.0, 15.0}}, ""},
                 {"back", {}, {}, "front"},
                 {"right sleeve", {}, {}, "left sleeve"}};
  yoke.depth_cm = {{22.0, 23.5, 25.0}};
  yoke.tiers = {{"wide.repeat", {{4}}}, {"middle.repeat", {{4}}}, {"narrow.repeat", {{2}}}};
  return yoke;
}

// Of all sizes, where each of them fits; else what keeps one of them from it.
inline Result<YokePlan> plan_yoke(const OpenedYoke& opened) {
  if (const Failure failure = bed_failure(opened)) {
    return *failure;
  }
  SizesPlanned planned = plan_sizes(opened);
  for (const std::vector<Error>& faults : planned.faults) {
    if (!faults.empty()) {
      return faults.front();
    }
  }
  return std::move(planned.plan);
}

inline YokePlan planned(const OpenedYoke& opened) {
  auto plan = plan_yoke(opened);
  INFO((plan ? std::string() : plan.error().text()));
  REQUIRE(plan);
  return std::move(plan).value();
}

// A yoke of one size on a bulky bed of 112 needles, with a front of that width.
inline Yoke of_one_width(double bottom, double top) {
  Yoke yoke = pullover();
  yoke.sizes = {"one"};
  yoke.pieces = {{"front", {{bottom}}, {{top}}, ""}};
  yoke.depth_cm = {{22.0}};
  return yoke;
}

// Whether the middle of the visible stitches is that of the repeat, as columns are counted one by one from the left.
inline bool shows_middle_at_its_own(int left_column, int visible, int width) {
  const int left_of_middle = (left_column + (visible - 1) / 2) % width; // or right in it
  return visible % 2 == width % 2 && left_of_middle == (width - 1) / 2;
}

inline Files pullover_files() {
  return {
      {{"wide.repeat", tier_text(24, 11)}, {"middle.repeat", tier_text(12, 9)}, {"narrow.repeat", tier_text(8, 7)}}};
}

} // namespace punchwright::test
