// Random designs for tests that must hold for every document: small, by seed, and rich in awkward cases.
// Awkward: repeats of one stitch and of 200, bands of one yarn, odd texts, comments, pieces beside the bed's middle.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"
#include "support/builders.hpp"

#include <cstdint>
#include <string>

namespace punchwright::test {

struct RandomDesign {
  Document document; // as a file may hold it
  Profile profile;
};

[[nodiscard]] RandomDesign random_design(std::uint64_t seed);

// The text with comments and unknown keys between its lines, as people and later versions write them. Some land inside
// a text or a list, so that not every one is read.
[[nodiscard]] std::string sprinkled(const std::string& text, Dice& dice);

// How many designs each test takes: 10,000, or as many as PUNCHWRIGHT_DOCUMENTS says, with seeds from
// PUNCHWRIGHT_FIRST_SEED (1) on.
struct Seeds {
  std::uint64_t first = 1;
  std::uint64_t count = 10'000;
  [[nodiscard]] std::uint64_t end() const { return first + count; }
};
[[nodiscard]] Seeds seeds();

} // namespace punchwright::test
