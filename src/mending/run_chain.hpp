// A row that is the same on both sides of its mirrors, or that recurs within the repeat: one part of it decides the
// rest, and is a chain of places to be coloured so that no run of the whole row is too long.
#pragma once

#include "mending/row_mender.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace punchwright {

// What it costs to have a place in main and in contrast, with all stitches that follow from it.
struct ChainPlace {
  static constexpr std::int64_t impossible = std::int64_t{1} << 40;
  std::array<std::int64_t, 2> price{}; // impossible: it can't be so
  std::array<std::int64_t, 2> pairs{};
};

// Where the row goes on beyond the end of a chain: as its mirror image, with the mirror between two stitches or through
// the last of the chain; or, for a ring, from the other end.
enum class ChainEnd { ring, mirror_between, mirror_through };

// Both ends are those of a ring, or both are mirrors.
struct Chain {
  std::vector<ChainPlace> places; // more than the limit and, in a ring, both colours
  ChainEnd begin = ChainEnd::ring;
  ChainEnd end = ChainEnd::ring;
  int limit = 1; // stitches of a run of the row
};

struct ColouredChain {
  RowCost cost; // squares: of the runs of the part once round, on both sides of its mirrors
  std::vector<char> contrast;
};

// The chain of least cost; without `look` of least price. Nothing where there is none.
[[nodiscard]] std::optional<ColouredChain> cheapest_chain(const Chain& chain, bool look);

// All of the least price, each once, in order; empty where there are more than `most`, or none.
[[nodiscard]] std::vector<std::vector<char>> all_cheapest_chains(const Chain& chain, std::size_t most);

} // namespace punchwright
