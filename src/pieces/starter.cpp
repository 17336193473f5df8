// The percentage method in centimetres, written down as a yoke with its sources as comments.
#include "pieces/starter.hpp"

#include "design/lengths.hpp"
#include "pieces/size_counts.hpp"
#include "pieces/yoke_rows.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright {
namespace {

double to_millimetre(double cm) {
  return std::round(cm * 10) / 10;
}

std::string list_of(const std::vector<double>& numbers) {
  std::string text;
  for (const double number : numbers) {
    text += fmt::format("{}{:g}", text.empty() ? "" : ", ", to_millimetre(number));
  }
  return text;
}

// Fills pieces and depth, and says where each number comes from.
class Starter {
public:
  explicit Starter(const YokeStart& start) : start_(start) {
    for (std::size_t size = 0; size < start.body.sizes.size(); ++size) {
      const auto& arms = start.body.upper_arm_cm;
      measures_.push_back(yoke_measures(start.body.chest_cm[size], start.body.ease_cm,
                                        arms.empty() ? std::nullopt : std::optional(arms[size]), start.rules));
    }
  }

  Yoke run() {
    yoke_.title = start_.title;
    yoke_.sizes = start_.body.sizes;
    yoke_.profile = start_.profile;
    if (start_.kind == YokeKind::pullover) {
      add_pullover();
    } else {
      add_poncho();
    }
    yoke_.depth_cm = values([](const YokeMeasures& size) { return size.depth; });
    explain();
    for (std::size_t tier = 0; tier < start_.tiers.size(); ++tier) {
      // The most that any machine needs; what the depth leaves comes later.
      yoke_.tiers.push_back({start_.tiers[tier], {{tier + 1 == start_.tiers.size() ? 2 : 4}}});
    }
    return std::move(yoke_);
  }

private:
  template <class Value> [[nodiscard]] PerSize<double> values(Value value) const {
    PerSize<double> found;
    for (const YokeMeasures& size : measures_) {
      found.values.push_back(to_millimetre(value(size)));
    }
    return found;
  }

  // The neck is shared as the ring is.
  static double top_of(const YokeMeasures& size, double bottom) { return size.neck * bottom / size.ring(); }

  // Left and right are the wearer's (common practice); seen from outside, her left lies to the right of the front.
  void add_pullover() {
    yoke_.pieces = {
        {"front", values([](const YokeMeasures& size) { return size.front; }),
         values([](const YokeMeasures& size) { return top_of(size, size.front); }), ""},
        {"left sleeve", values([](const YokeMeasures& size) { return size.sleeve; }),
         values([](const YokeMeasures& size) { return top_of(size, size.sleeve); }), ""},
        {"back", {}, {}, "front"},
        {"right sleeve", {}, {}, "left sleeve"},
    };
  }

  void add_poncho() {
    yoke_.pieces = {{"front right", values([](const YokeMeasures& size) { return size.ring() / 4; }),
                     values([](const YokeMeasures& size) { return size.neck / 4; }), ""},
                    {"front left", {}, {}, "front right"},
                    {"back left", {}, {}, "front right"},
                    {"back right", {}, {}, "front right"}};
  }

  void explain() {
    const YokeRules& rules = start_.rules;
    std::vector<double> bodies;
    bool capped = false;
    for (const YokeMeasures& size : measures_) {
      bodies.push_back(size.body);
      capped = capped || size.depth_capped;
    }
    auto& lines = yoke_.extras.comments_before["piece.1"];
    lines = {fmt::format("# chest {} cm with {:g} cm of ease: body {} cm", list_of(start_.body.chest_cm),
                         start_.body.ease_cm, list_of(bodies))};
    if (start_.body.upper_arm_cm.empty()) {
      lines.push_back(fmt::format("# sleeves {:g} % of the body, {:g} % left at each underarm, neck {:g} %",
                                  rules.sleeve * 100, rules.underarm * 100, rules.neck * 100));
    } else {
      lines.push_back(
          fmt::format("# sleeves: upper arm {} cm with as much ease; {:g} % of the body left at each underarm, "
                      "neck {:g} %",
                      list_of(start_.body.upper_arm_cm), rules.underarm * 100, rules.neck * 100));
    }
    lines.emplace_back(
        "# (handmadestitchbystitch.wordpress.com, summary of Knitting Without Tears and Knitting Around)");
    auto& depth = yoke_.extras.comments_before["depth"];
    depth = {fmt::format("# {:g} % of the body (jenjoycedesign.com, 2012-08-16)", rules.depth * 100)};
    if (capped) {
      depth.push_back(fmt::format("# but no deeper than {:g} cm at a chest of {:g} cm to {:g} cm at {:g} cm",
                                  rules.shallow_cm, rules.shallow_chest_cm, rules.deep_cm, rules.deep_chest_cm));
      depth.emplace_back("# (morrisandsons.com.au, a size table): a quarter is too much for large sizes");
    }
  }

  const YokeStart& start_;
  std::vector<YokeMeasures> measures_;
  Yoke yoke_;
};

// The rows above the tiers such that the depth of every size comes out as near as it can.
void fill_depth(const OpenedYoke& opened, Yoke& yoke) {
  for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
    std::vector<int>& plain = yoke.tiers[tier].plain_above.values;
    plain.clear();
    for (std::size_t size = 0; size < yoke.sizes.size(); ++size) {
      plain.push_back(rows_of_yoke(opened, size).proposal[tier]);
    }
    if (std::ranges::all_of(plain, [&](int rows) { return rows == plain.front(); })) {
      plain.resize(1);
    }
  }
}

} // namespace

const std::vector<BustSize>& bust_sizes() {
  static const std::vector<BustSize> sizes = {{"XS", 30}, {"S", 34},  {"M", 38},  {"L", 42}, {"XL", 46},
                                              {"2X", 50}, {"3X", 54}, {"4X", 58}, {"5X", 62}};
  return sizes;
}

YokeMeasures yoke_measures(double chest_cm, double ease_cm, std::optional<double> upper_arm_cm,
                           const YokeRules& rules) {
  YokeMeasures size;
  size.body = chest_cm + ease_cm;
  const double underarm = rules.underarm * size.body;
  size.front = size.body / 2 - underarm;
  size.sleeve = (upper_arm_cm ? *upper_arm_cm + ease_cm : rules.sleeve * size.body) - underarm;
  size.neck = rules.neck * size.body;
  const double along =
      std::clamp((chest_cm - rules.shallow_chest_cm) / (rules.deep_chest_cm - rules.shallow_chest_cm), 0.0, 1.0);
  const double deepest = rules.shallow_cm + along * (rules.deep_cm - rules.shallow_cm);
  size.depth_capped = rules.depth * size.body > deepest;
  size.depth = size.depth_capped ? deepest : rules.depth * size.body;
  return size;
}

Result<Yoke> started_yoke(const YokeStart& start, const std::string& path, const FileReader& read) {
  Yoke yoke = Starter(start).run();
  auto opened = open_yoke(yoke, path, read);
  if (!opened) {
    return opened.error();
  }
  fill_depth(*opened, yoke);
  opened->yoke = yoke;
  Extras extras = yoke.extras;
  yoke = split_to_fit(*opened);
  yoke.extras = std::move(extras);
  return yoke;
}

} // namespace punchwright
