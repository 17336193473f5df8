// Everything that a .yoke file says: sizes, the pieces round the ring, the tiers from the bottom upwards.
// A plain value; the defaults here are the file form's own, where the file leaves a key out.
#pragma once

#include "design/document.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright {

constexpr std::size_t most_yoke_sizes = 20;
constexpr std::size_t most_yoke_pieces = 24;
constexpr std::size_t most_yoke_tiers = 24;
constexpr int most_plain_rows = 99; // above a tier
constexpr double narrowest_yoke_piece_cm = 0.5;
constexpr double widest_yoke_piece_cm = 500;

// A value that is the same for all sizes (one entry), or one for each size.
template <class Value> struct PerSize {
  std::vector<Value> values;

  [[nodiscard]] const Value& at(std::size_t size) const { return values[values.size() == 1 ? 0 : size]; }
  bool operator==(const PerSize&) const = default;
};

// In place of the tiers' own; a value that is absent is theirs.
struct YokeGauge {
  std::optional<double> stitches;       // over 10 cm, 1 to 200
  std::optional<double> rows;           // over 10 cm, 1 to 200
  std::optional<double> plain_stitches; // of the single-colour rows between tiers
  std::optional<double> plain_rows;

  bool operator==(const YokeGauge&) const = default;
};

// What is known of a yarn, to tell how much of it is needed. The key is that of the tiers' yarns.
struct YokeYarn {
  char key = 'A';
  std::optional<double> metres_per_100g;         // 1 to 10,000
  std::optional<double> loop_mm;                 // length of one loop, from a ravelled row; 1 to 200
  std::optional<double> plain_g_per_100cm2;      // 0.01 to 100: a weighed swatch of this yarn alone
  std::optional<double> two_colour_g_per_100cm2; // of this yarn in a two-colour swatch: its cone, before and after

  bool operator==(const YokeYarn&) const = default;
};

struct YokePiece {
  std::string name;
  // Width without the seam stitches, 0.5 to 500 cm; no values where `like` names another piece.
  PerSize<double> bottom_cm;
  PerSize<double> top_cm;
  std::string like; // same counts as that piece, which has widths of its own; empty: own widths

  bool operator==(const YokePiece&) const = default;
};

struct YokeTier {
  std::string repeat;       // the path of a .repeat file, from the folder of the .yoke file
  PerSize<int> plain_above; // single-colour rows to the next tier, 0 to most_plain_rows

  bool operator==(const YokeTier&) const = default;
};

enum class YokeSeams {
  continuous, // the motif goes on across every seam, all the way round
  centred,    // each piece has the middle of the repeat at its own middle, and the seams are alike
  free        // counts as near the line as they can be; what does not meet falls into one seam
};

struct YokeFit {
  double tolerance = 0.06; // how far counts may leave the ideal line, as a fraction of it; 0 to 0.5
  YokeSeams seams = YokeSeams::continuous;

  bool operator==(const YokeFit&) const = default;
};

enum class DecreaseWay {
  gathered,  // the long steps at both ends
  spread,    // long and short steps mixed as evenly as integers allow
  half_steps // as evenly, with half a step at both ends, so that the steps go on across the seams
};
enum class DecreaseTowards { centre, edges };

struct YokeDecreases {
  DecreaseWay way = DecreaseWay::gathered;
  DecreaseTowards towards = DecreaseTowards::centre;
  // Of increases too.
  int clear_of_seam = 1;        // visible stitches beside the seam stitches that are left alone, 0 to 50
  bool clear_of_centre = false; // off the motif's centre line

  bool operator==(const YokeDecreases&) const = default;
};

struct Yoke {
  std::string title;
  std::string notes;
  std::vector<std::string> sizes; // one or more
  int edge = 1;                   // seam stitches on each side of each piece, 0 to 50
  std::optional<std::string> profile;
  YokeGauge gauge;
  std::vector<YokeYarn> yarns;
  // As seen on the knit side, from left to right: to the right of the front comes the wearer's left.
  std::vector<YokePiece> pieces;
  PerSize<double> depth_cm;    // 1 to 200
  std::vector<YokeTier> tiers; // from the bottom upwards
  YokeFit fit;
  YokeDecreases decreases;
  Extras extras;

  bool operator==(const Yoke&) const = default;
};

// Index of the piece whose widths that piece has: its own, or that of the piece it is like.
[[nodiscard]] std::size_t widths_of(const Yoke& yoke, std::size_t piece);

} // namespace punchwright
