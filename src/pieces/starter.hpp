// A first .yoke from body measurements: a pullover in front, back and two sleeves, or a poncho in quarters.
// Every number has its source beside it, stands in the file as a plain measure, and can be changed there.
#pragma once

#include "pieces/open_yoke.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

enum class YokeKind { pullover, poncho };

// Bust measures by size: yayforyarn.com (inches 30 to 62, XS to 5X).
struct BustSize {
  std::string_view name;
  double chest_cm = 0;
};
[[nodiscard]] const std::vector<BustSize>& bust_sizes();

// Children's measures by age: crochetkitten.com. It has no chests: those are the user's.
struct ChildSize {
  std::string_view name; // "4 years"
  double upper_arm_cm = 0;
  double armhole_cm = 0; // its depth
};
[[nodiscard]] const std::vector<ChildSize>& child_sizes();
// What a size is called on sheets and in a new file: an age in the reader's language, anything else as it is.
[[nodiscard]] std::string size_in_words(std::string_view name);

// Shares of the body's circumference, chest and ease together.
struct YokeRules {
  // Sleeve, underarm and neck of the percentage method (handmadestitchbystitch.wordpress.com, summary of *Knitting
  // Without Tears* and *Knitting Around*: 200 stitches of body, sleeves 66, underarms 16, joined 268, neck 80).
  double sleeve = 0.33;
  double underarm = 0.08;
  double neck = 0.40;
  // jenjoycedesign.com, 2012-08-16, percentage systems: a quarter of the body's circumference.
  double depth = 0.25;
  // That is too much for large sizes: morrisandsons.com.au, a size table, has depths of 19 to 25 cm for busts of 83 to
  // 151 cm. Deeper than the straight line between them no yoke is made.
  double shallow_cm = 19;
  double shallow_chest_cm = 83;
  double deep_cm = 25;
  double deep_chest_cm = 151;
  bool operator==(const YokeRules&) const = default;
};

struct BodyMeasures {
  std::vector<std::string> sizes;
  std::vector<double> chest_cm;     // one for each size, 20 to 300
  double ease_cm = 7.5;             // standard, 2 to 4 inches: gratefullyinhisgrace.blogspot.com, 2011
  std::vector<double> upper_arm_cm; // one for each size, or none: then sleeves are a share of the body
  std::vector<double> armhole_cm;   // one for each size, 0: not known; or none. The depth is no less than it
};

// One size by the rules, cm.
struct YokeMeasures {
  double body = 0;  // circumference
  double front = 0; // visible width at the yoke's lower edge; the back is like it
  double sleeve = 0;
  double neck = 0; // circumference
  double depth = 0;
  bool depth_capped = false;
  bool depth_raised = false; // to the armhole's
  [[nodiscard]] double ring() const { return 2 * front + 2 * sleeve; }
};
// A yoke reaches from the neck to the underarm: where the armhole's depth is known, it is no less deep (common
// practice).
[[nodiscard]] YokeMeasures yoke_measures(double chest_cm, double ease_cm, std::optional<double> upper_arm_cm,
                                         const YokeRules& rules = {}, std::optional<double> armhole_cm = {});

struct YokeStart {
  YokeKind kind = YokeKind::pullover;
  BodyMeasures body;
  YokeRules rules;
  std::string title;
  std::optional<std::string> profile; // none: the tiers' own
  std::vector<std::string> tiers;     // .repeat files, from the bottom upwards, relative to the .yoke's folder
};

// Plain rows between the tiers are such that the depth comes out as near as it can. `path` is where the file will be.
// Refused as opening it would be; pieces that are wider than the bed are split.
[[nodiscard]] Result<Yoke> started_yoke(const YokeStart& start, const std::string& path, const FileReader& read);

} // namespace punchwright
