// The form's own sample file, and small changes to it, for the tests of reading and writing.
#pragma once

#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

namespace punchwright::test {

inline std::string sample_text() {
  std::ifstream file(PUNCHWRIGHT_SOURCE_DIR "/tests/data/sample.repeat", std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// `text` with its only or first `from` replaced; empty where there is none, so that a test notices.
inline std::string with(std::string text, std::string_view from, std::string_view to) {
  const auto at = text.find(from);
  return at == std::string::npos ? std::string() : text.replace(at, from.size(), to);
}

// The least that a file must say: two yarns, a drawing of 4 by 2, one band.
constexpr std::string_view least_text = "format = 1\n"
                                        "[[yarn]]\n"
                                        "key = \"A\"\n"
                                        "[[yarn]]\n"
                                        "key = \"B\"\n"
                                        "[repeat]\n"
                                        "width = 4\n"
                                        "rows = [\n"
                                        "  \".##.\",\n"
                                        "  \"#..#\",\n"
                                        "]\n"
                                        "[[band]]\n"
                                        "rows = 2\n"
                                        "main = \"A\"\n"
                                        "contrast = \"B\"\n";

} // namespace punchwright::test
