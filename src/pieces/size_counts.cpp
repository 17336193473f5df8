// From widths in centimetres to whole stitches; the measures are whole numbers (cone.hpp), and stay so.
#include "pieces/size_counts.hpp"

#include "pieces/cone.hpp"
#include "pieces/no_fit.hpp"
#include "pieces/ring_places.hpp"

#include <algorithm>
#include <numeric>

namespace punchwright {
namespace {

// Numerators of the ideals, [piece][tier], in lowest terms together.
struct Lines {
  std::vector<std::vector<std::int64_t>> counts;
  std::int64_t denominator = 1;
};

Lines lines_of(const OpenedYoke& opened, std::size_t size) {
  const Cone cone = cone_of(opened, size);
  Lines lines;
  std::int64_t divisor = cone.denominator;
  for (std::size_t piece = 0; piece < opened.yoke.pieces.size(); ++piece) {
    const YokePiece& widths = opened.yoke.pieces[widths_of(opened.yoke, piece)];
    const std::int64_t bottom = in_thousandths(widths.bottom_cm.at(size));
    const std::int64_t top = in_thousandths(widths.top_cm.at(size));
    std::vector<std::int64_t> line;
    for (std::size_t tier = 0; tier < cone.of_top.size(); ++tier) {
      line.push_back(cone.at(tier, bottom, top));
      divisor = std::gcd(divisor, line.back());
    }
    lines.counts.push_back(std::move(line));
  }
  lines.denominator = cone.denominator / divisor;
  for (auto& line : lines.counts) {
    for (std::int64_t& count : line) {
      count /= divisor;
    }
  }
  return lines;
}

SeamRule seam_rule(const OpenedYoke& opened, std::size_t tier) {
  const Document& document = opened.tiers[tier].document;
  const int width = document.grid.width();
  SeamRule rule;
  if (opened.yoke.fit.seams == YokeSeams::continuous) {
    rule.multiple = width;
  } else if (opened.yoke.fit.seams == YokeSeams::centred) {
    rule.barred = counts_not_centred(document, opened.profile, opened.yoke.edge);
    rule.alike = 2 * width;
  }
  return rule;
}

// With the middle of the repeat at each piece's own, a piece has (width - visible) / 2 columns before its first one: so
// seams are alike, every other one mirrored, where pieces that are next but one to each other differ by an even number
// of repeats.
std::vector<std::size_t> seam_classes(const std::vector<std::size_t>& group_of_piece, std::size_t groups) {
  std::vector<std::size_t> classes(groups);
  std::iota(classes.begin(), classes.end(), std::size_t{0});
  const std::size_t pieces = group_of_piece.size();
  for (std::size_t piece = 0; piece < pieces; ++piece) {
    const std::size_t one = classes[group_of_piece[piece]];
    const std::size_t other = classes[group_of_piece[(piece + 2) % pieces]];
    std::ranges::replace(classes, std::max(one, other), std::min(one, other));
  }
  return classes;
}

} // namespace

PieceGroups groups_of(const Yoke& yoke) {
  PieceGroups groups;
  for (std::size_t piece = 0; piece < yoke.pieces.size(); ++piece) {
    const std::size_t source = widths_of(yoke, piece);
    const auto found = std::ranges::find(groups.first, source);
    groups.of_piece.push_back(static_cast<std::size_t>(found - groups.first.begin()));
    if (found == groups.first.end()) {
      groups.first.push_back(source);
    }
  }
  return groups;
}

std::vector<double> ideal_counts(const OpenedYoke& opened, std::size_t size, std::size_t piece) {
  const Lines lines = lines_of(opened, size);
  std::vector<double> ideals;
  for (const std::int64_t count : lines.counts[piece]) {
    ideals.push_back(static_cast<double>(count) / static_cast<double>(lines.denominator));
  }
  return ideals;
}

CountsProblem counts_problem(const OpenedYoke& opened, std::size_t size, const LeftOut& left_out) {
  const Lines lines = lines_of(opened, size);
  const PieceGroups groups = groups_of(opened.yoke);
  CountsProblem problem;
  problem.edge = opened.yoke.edge;
  problem.halves = !left_out.halves;
  problem.doubles = !left_out.doubles;
  problem.denominator = lines.denominator;
  std::vector<std::size_t> sources = groups.first;
  std::vector<std::size_t> group_of_piece = groups.of_piece;
  problem.pieces.assign(groups.first.size(), 0);
  for (const std::size_t group : groups.of_piece) {
    ++problem.pieces[group];
  }
  if (left_out.alike) {
    sources.resize(opened.yoke.pieces.size());
    std::iota(sources.begin(), sources.end(), std::size_t{0});
    problem.pieces.assign(sources.size(), 1);
    group_of_piece = sources;
  }
  problem.classes = seam_classes(group_of_piece, sources.size());
  for (std::size_t tier = 0; tier <= opened.tiers.size(); ++tier) {
    if (tier < opened.tiers.size()) {
      problem.seams.push_back(static_cast<int>(tier) == left_out.seams ? SeamRule{} : seam_rule(opened, tier));
    }
    std::vector<CountChoice> choices;
    for (const std::size_t piece : sources) {
      choices.push_back(counts_around(opened, lines.counts[piece][tier], lines.denominator, !left_out.tolerance));
      if (left_out.bed) { // far enough that nothing nearer to the ideal is left out
        choices.back().most = static_cast<int>(choices.back().ideal.whole) + opened.profile.needles;
      }
    }
    problem.choices.push_back(std::move(choices));
  }
  return problem;
}

CountsTried try_counts(const OpenedYoke& opened, std::size_t size, int most_parts, const std::stop_token& stop) {
  auto found = nearest_counts(counts_problem(opened, size), most_parts, stop);
  if (!found.counts) {
    return {std::nullopt, found.gave_up};
  }
  Counts& proof = *found.counts;
  CountsOfSize counts;
  const PieceGroups groups = groups_of(opened.yoke);
  for (const std::size_t group : groups.of_piece) {
    std::vector<int> stitches;
    for (const auto& tier : proof.stitches) {
      stitches.push_back(tier[group]);
    }
    counts.stitches.push_back(std::move(stitches));
  }
  counts.proof = std::move(proof);
  return {std::move(counts), false};
}

Result<CountsOfSize> counts_of_size(const OpenedYoke& opened, std::size_t size) {
  auto tried = try_counts(opened, size);
  if (!tried.counts) {
    return tried.gave_up ? gave_up(opened, size) : no_fit(opened, size);
  }
  return std::move(*tried.counts);
}

} // namespace punchwright
