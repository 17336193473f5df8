// The percentage method in centimetres, written down as a yoke with its sources as comments. Names and comments are in
// the reader's language, numbers as the file has them.
#include "pieces/starter.hpp"

#include "design/lengths.hpp"
#include "pieces/size_counts.hpp"
#include "pieces/yoke_rows.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <iterator>

namespace punchwright {
namespace {

// As the reader has it.
constexpr double shallowest_yoke_cm = 1;
constexpr double deepest_yoke_cm = 200;

double to_millimetre(double cm) {
  return std::round(cm * 10) / 10;
}

std::string number_of(double number) {
  return fmt::format("{:g}", number);
}

std::string comment(const std::string& words) {
  return "# " + words;
}

std::string list_of(const std::vector<double>& numbers) {
  std::string text;
  for (const double number : numbers) {
    text += fmt::format("{}{:g}", text.empty() ? "" : ", ", to_millimetre(number));
  }
  return text;
}

// What of the measures is the table's of children, as a comment; nothing where none is.
std::string words_of_childrens(const BodyMeasures& body) {
  std::string names;
  bool arms = !body.upper_arm_cm.empty();
  for (std::size_t size = 0; size < body.armhole_cm.size(); ++size) {
    const auto found = std::ranges::find(child_sizes(), body.sizes[size], &ChildSize::name);
    if (found != child_sizes().end()) {
      names += (names.empty() ? "" : ", ") + size_in_words(body.sizes[size]);
      arms = arms && std::fabs(body.upper_arm_cm[size] - found->upper_arm_cm) < 0.005;
    }
  }
  return names.empty() ? names
                       : comment(arms ? said("{}: upper arms and armholes by age: crochetkitten.com, which has no "
                                             "chests: measure them",
                                             names)
                                      : said("{}: armholes by age: crochetkitten.com, which has no chests: measure "
                                             "them",
                                             names));
}

// Which chests are those of the table of busts, as a comment; nothing where none is.
std::string words_of_busts(const BodyMeasures& body) {
  std::string names;
  for (std::size_t size = 0; size < body.sizes.size(); ++size) {
    const auto found = std::ranges::find(bust_sizes(), body.sizes[size], &BustSize::name);
    if (found != bust_sizes().end() && std::fabs(body.chest_cm[size] - found->chest_cm) < 0.005) {
      names += (names.empty() ? "" : ", ") + body.sizes[size];
    }
  }
  return names.empty() ? names : comment(said("{}: busts by size: yayforyarn.com", names));
}

// Fills pieces and depth, and says where each number comes from.
class Starter {
public:
  explicit Starter(const YokeStart& start) : start_(start) {
    for (std::size_t size = 0; size < start.body.sizes.size(); ++size) {
      const auto known = [size](const std::vector<double>& measures) {
        return measures.empty() || measures[size] <= 0 ? std::nullopt : std::optional(measures[size]);
      };
      measures_.push_back(yoke_measures(start.body.chest_cm[size], start.body.ease_cm, known(start.body.upper_arm_cm),
                                        start.rules, known(start.body.armhole_cm)));
    }
  }

  Yoke run() {
    yoke_.title = start_.title;
    std::ranges::transform(start_.body.sizes, std::back_inserter(yoke_.sizes), size_in_words);
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

  [[nodiscard]] const std::vector<YokeMeasures>& measures() const { return measures_; }

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
  // The names are hers who begins it, in her language: from then on the file keeps them.
  void add_pullover() {
    yoke_.pieces = {
        {tr("front"), values([](const YokeMeasures& size) { return size.front; }),
         values([](const YokeMeasures& size) { return top_of(size, size.front); }), ""},
        {tr("left sleeve"), values([](const YokeMeasures& size) { return size.sleeve; }),
         values([](const YokeMeasures& size) { return top_of(size, size.sleeve); }), ""},
        {tr("back"), {}, {}, tr("front")},
        {tr("right sleeve"), {}, {}, tr("left sleeve")},
    };
  }

  void add_poncho() {
    yoke_.pieces = {{tr("front right"), values([](const YokeMeasures& size) { return size.ring() / 4; }),
                     values([](const YokeMeasures& size) { return size.neck / 4; }), ""},
                    {tr("front left"), {}, {}, tr("front right")},
                    {tr("back left"), {}, {}, tr("front right")},
                    {tr("back right"), {}, {}, tr("front right")}};
  }

  void explain() {
    const YokeRules& rules = start_.rules;
    std::vector<double> bodies;
    bool capped = false;
    std::vector<double> raised;
    for (const YokeMeasures& size : measures_) {
      bodies.push_back(size.body);
      capped = capped || size.depth_capped;
      if (size.depth_raised) {
        raised.push_back(size.depth);
      }
    }
    auto& lines = yoke_.extras.comments_before["piece.1"];
    lines = {comment(said("chest {} cm with {} cm of ease: body {} cm", list_of(start_.body.chest_cm),
                          number_of(start_.body.ease_cm), list_of(bodies)))};
    if (start_.body.ease_cm == BodyMeasures{}.ease_cm) {
      lines.push_back(
          comment(tr("ease: standard is 2 to 4 inches, 5 to 10 cm (gratefullyinhisgrace.blogspot.com, 2011)")));
    }
    if (const std::string busts = words_of_busts(start_.body); !busts.empty()) {
      lines.push_back(busts);
    }
    if (start_.body.upper_arm_cm.empty()) {
      lines.push_back(
          comment(said("sleeves {} % of the body, {} % left at each underarm, neck {} %", number_of(rules.sleeve * 100),
                       number_of(rules.underarm * 100), number_of(rules.neck * 100))));
    } else {
      lines.push_back(comment(
          said("sleeves: upper arm {} cm with as much ease; {} % of the body left at each underarm, "
               "neck {} %",
               list_of(start_.body.upper_arm_cm), number_of(rules.underarm * 100), number_of(rules.neck * 100))));
    }
    if (const std::string childrens = words_of_childrens(start_.body); !childrens.empty()) {
      lines.push_back(childrens);
    }
    lines.push_back(
        comment(tr("(handmadestitchbystitch.wordpress.com, summary of Knitting Without Tears and Knitting Around)")));
    auto& depth = yoke_.extras.comments_before["depth"];
    depth = {comment(said("{} % of the body (jenjoycedesign.com, 2012-08-16)", number_of(rules.depth * 100)))};
    if (capped) {
      depth.push_back(
          comment(said("but no deeper than {} cm at a chest of {} cm to {} cm at {} cm", number_of(rules.shallow_cm),
                       number_of(rules.shallow_chest_cm), number_of(rules.deep_cm), number_of(rules.deep_chest_cm))));
      depth.push_back(comment(tr("(morrisandsons.com.au, a size table): a quarter is too much for large sizes")));
    }
    if (!raised.empty()) {
      depth.push_back(comment(said("and no less deep than the armhole: {} cm (common practice)", list_of(raised))));
    }
  }

  const YokeStart& start_;
  std::vector<YokeMeasures> measures_;
  Yoke yoke_;
};

// What no file may hold, measure by measure: told in the words of the body, since there is no file yet.
class StartCheck {
public:
  StartCheck(const YokeStart& start, const Yoke& yoke, const std::vector<YokeMeasures>& measures)
      : start_(start), yoke_(yoke), measures_(measures) {}

  [[nodiscard]] Failure run() const {
    for (std::size_t size = 0; size < measures_.size(); ++size) {
      if (!(measures_[size].body > 0)) {
        return Error{
            {},
            0,
            0,
            said("size '{}': the chest with its ease would be {} cm", yoke_.sizes[size], cm(measures_[size].body)),
            tr("allowed: more than 0 cm: give more ease, or a larger chest")};
      }
      Failure failure = of_sleeves(size);
      for (std::size_t piece = 0; piece < yoke_.pieces.size() && !failure; ++piece) {
        failure = yoke_.pieces[piece].like.empty() ? of_piece(size, piece) : std::nullopt;
      }
      if (failure = failure ? failure : of_depth(size); failure) {
        return failure;
      }
    }
    return std::nullopt;
  }

private:
  static std::string cm(double measure) { return short_decimal(measure, 1); }

  [[nodiscard]] Failure refused(std::string message, double least, double most, bool by_arm) const {
    const std::string from = short_decimal(least, 1);
    const std::string to = short_decimal(most, 1);
    return Error{{},
                 0,
                 0,
                 std::move(message),
                 by_arm ? said("allowed: {} to {} cm: give another upper arm, or another ease", from, to)
                 : start_.rules == YokeRules{}
                     ? said("allowed: {} to {} cm: give another chest, or another ease", from, to)
                     : said("allowed: {} to {} cm: give another chest, another ease, or other shares", from, to)};
  }

  // A poncho has no sleeves, but room for the arms: as little as none.
  [[nodiscard]] Failure of_sleeves(std::size_t size) const {
    const double width = to_millimetre(measures_[size].sleeve);
    const double least = start_.kind == YokeKind::pullover ? narrowest_yoke_piece_cm : 0;
    if (width >= least && width <= widest_yoke_piece_cm) {
      return std::nullopt;
    }
    return refused(said("size '{}': each sleeve would be {} cm wide at the bottom", yoke_.sizes[size], cm(width)),
                   least, widest_yoke_piece_cm, !start_.body.upper_arm_cm.empty());
  }

  [[nodiscard]] Failure of_piece(std::size_t size, std::size_t number) const {
    const YokePiece& piece = yoke_.pieces[number];
    const auto allowed = [](double width) { return width >= narrowest_yoke_piece_cm && width <= widest_yoke_piece_cm; };
    const double bottom = piece.bottom_cm.at(size);
    const double top = piece.top_cm.at(size);
    if (!allowed(bottom)) {
      return refused(
          said("size '{}': piece '{}' would be {} cm wide at the bottom", yoke_.sizes[size], piece.name, cm(bottom)),
          narrowest_yoke_piece_cm, widest_yoke_piece_cm, false);
    }
    if (!allowed(top)) {
      return refused(
          said("size '{}': piece '{}' would be {} cm wide at the top", yoke_.sizes[size], piece.name, cm(top)),
          narrowest_yoke_piece_cm, widest_yoke_piece_cm, false);
    }
    return std::nullopt;
  }

  [[nodiscard]] Failure of_depth(std::size_t size) const {
    const double depth = yoke_.depth_cm.at(size);
    if (depth >= shallowest_yoke_cm && depth <= deepest_yoke_cm) {
      return std::nullopt;
    }
    return refused(said("size '{}': the yoke would be {} cm deep", yoke_.sizes[size], cm(depth)), shallowest_yoke_cm,
                   deepest_yoke_cm, false);
  }

  const YokeStart& start_;
  const Yoke& yoke_;
  const std::vector<YokeMeasures>& measures_;
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

// The tables are published in inches; this is the only place that knows.
std::vector<BustSize> in_centimetres(std::vector<BustSize> sizes) {
  for (BustSize& size : sizes) {
    size.chest_cm *= mm_per_inch / 10;
  }
  return sizes;
}

std::vector<ChildSize> in_centimetres(std::vector<ChildSize> sizes) {
  for (ChildSize& size : sizes) {
    size.upper_arm_cm *= mm_per_inch / 10;
    size.armhole_cm *= mm_per_inch / 10;
  }
  return sizes;
}

} // namespace

const std::vector<BustSize>& bust_sizes() {
  static const std::vector<BustSize> sizes = in_centimetres(std::vector<BustSize>{
      {"XS", 30}, {"S", 34}, {"M", 38}, {"L", 42}, {"XL", 46}, {"2X", 50}, {"3X", 54}, {"4X", 58}, {"5X", 62}});
  return sizes;
}

const std::vector<ChildSize>& child_sizes() {
  static const std::vector<ChildSize> sizes = in_centimetres(std::vector<ChildSize>{{noted("2 years"), 7, 4.25},
                                                                                    {noted("4 years"), 7.5, 4.75},
                                                                                    {noted("6 years"), 8, 5},
                                                                                    {noted("8 years"), 8.5, 5.5},
                                                                                    {noted("10 years"), 8.75, 6},
                                                                                    {noted("12 years"), 9, 6.5},
                                                                                    {noted("14 years"), 9.25, 7},
                                                                                    {noted("16 years"), 9.5, 7.5}});
  return sizes;
}

std::string size_in_words(std::string_view name) {
  const auto found = std::ranges::find(child_sizes(), name, &ChildSize::name);
  return found != child_sizes().end() ? tr(found->name.data()) : std::string(name);
}

YokeMeasures yoke_measures(double chest_cm, double ease_cm, std::optional<double> upper_arm_cm, const YokeRules& rules,
                           std::optional<double> armhole_cm) {
  YokeMeasures size;
  size.body = chest_cm + ease_cm;
  const double underarm = rules.underarm * size.body;
  size.front = size.body / 2 - underarm;
  size.sleeve = (upper_arm_cm ? *upper_arm_cm + ease_cm : rules.sleeve * size.body) - underarm;
  size.neck = rules.neck * size.body;
  const double span = rules.deep_chest_cm - rules.shallow_chest_cm;
  // Where the two chests are one, that chest itself has the second depth.
  const double along = span > 0 ? std::clamp((chest_cm - rules.shallow_chest_cm) / span, 0.0, 1.0)
                                : (chest_cm < rules.deep_chest_cm ? 0.0 : 1.0);
  const double deepest = rules.shallow_cm + along * (rules.deep_cm - rules.shallow_cm);
  size.depth_capped = rules.depth * size.body > deepest;
  size.depth = size.depth_capped ? deepest : rules.depth * size.body;
  size.depth_raised = armhole_cm && *armhole_cm > size.depth;
  size.depth = size.depth_raised ? *armhole_cm : size.depth;
  return size;
}

Result<Yoke> started_yoke(const YokeStart& start, const std::string& path, const FileReader& read) {
  Starter starter(start);
  Yoke yoke = starter.run();
  if (Failure failure = StartCheck(start, yoke, starter.measures()).run()) {
    return *std::move(failure);
  }
  auto opened = open_yoke(yoke, path, read);
  if (!opened) {
    return opened.error();
  }
  fill_depth(*opened, yoke);
  opened->yoke = std::move(yoke);
  auto split = split_to_fit(*opened);
  if (!split) {
    return split.error();
  }
  // Whatever else a file may not hold, such as a size's name twice: what can't be read is not written.
  if (auto again = read_yoke(write_yoke(*split), path); !again) {
    return Error{{}, 0, 0, again.error().message, again.error().remedy};
  }
  return split;
}

} // namespace punchwright
