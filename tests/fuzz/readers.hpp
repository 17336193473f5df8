// Every reader of bytes that come from outside, each with what must hold whatever they are: it ends, it refuses in
// words, and what it takes is written as a text that is read as the same again.
#pragma once

#include <string_view>
#include <vector>

namespace punchwright::fuzz {

struct Reader {
  std::string_view name;                // of its folder in tests/fuzz/corpus
  bool (*read)(std::string_view bytes); // whether they were taken
};

[[nodiscard]] const std::vector<Reader>& readers();

} // namespace punchwright::fuzz
