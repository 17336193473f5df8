// The corpus, replayed: every input that a fuzzer found worth keeping, through the reader that it was found with.
#include "fuzz/readers.hpp"

#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace fs = std::filesystem;

TEST_CASE("whatever the bytes, every reader ends, refuses in words, and reads again what it writes") {
  for (const auto& reader : punchwright::fuzz::readers()) {
    const fs::path folder = fs::path(PUNCHWRIGHT_SOURCE_DIR) / "tests/fuzz/corpus" / std::string(reader.name);
    int taken = 0;
    reader.read({}); // nothing at all
    for (const auto& entry : fs::directory_iterator(folder)) {
      CAPTURE(entry.path().string());
      std::ifstream file(entry.path(), std::ios::binary);
      const std::string bytes{std::istreambuf_iterator<char>(file), {}};
      taken += reader.read(bytes) ? 1 : 0;
      // Cut short and with a byte changed, as happens to files.
      reader.read(std::string_view(bytes).substr(0, bytes.size() / 2));
      std::string changed = bytes;
      if (!changed.empty()) {
        changed[changed.size() / 3] = static_cast<char>(changed[changed.size() / 3] ^ 0x20);
        reader.read(changed);
      }
    }
    INFO(std::string(reader.name));
    CHECK_MESSAGE(taken > 0, "no input of the corpus is one that the reader takes");
  }
}
