// What the program gives back of its memory.
#include "editor/memory_in_use.hpp"

#include <cstddef>
#include <doctest/doctest.h>
#include <memory>
#include <utility>
#include <vector>

using namespace punchwright::editor;

TEST_CASE("what was freed below a block that is still in use goes back to the system when it is asked for") {
  constexpr std::size_t blocks = 200'000; // of 100 bytes: 20 MB at least
  std::vector<std::unique_ptr<std::vector<char>>> many;
  many.reserve(blocks);
  for (std::size_t block = 0; block < blocks; ++block) {
    many.push_back(std::make_unique<std::vector<char>>(100, 'x'));
  }
  const auto last = std::move(many.back());
  const auto full = anonymous_megabytes();
  REQUIRE(full);
  many.clear();
  give_free_memory_back();
  CHECK(anonymous_megabytes().value_or(*full) < *full - 15);
  CHECK(last->front() == 'x');
}
