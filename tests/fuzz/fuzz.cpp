// For libFuzzer: one program for each reader, chosen when it is compiled.
#include "fuzz/readers.hpp"

#include <cstddef>
#include <cstdint>

// The name that libFuzzer calls.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);  // NOLINT
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) { // NOLINT
  static const punchwright::fuzz::Reader reader = [] {
    for (const auto& one : punchwright::fuzz::readers()) {
      if (one.name == PUNCHWRIGHT_READER) {
        return one;
      }
    }
    __builtin_trap();
  }();
  reader.read({reinterpret_cast<const char*>(data), size}); // NOLINT: bytes as text
  return 0;
}
