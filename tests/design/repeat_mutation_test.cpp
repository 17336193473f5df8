// Thousands of damaged .repeat files: each is read or refused with a place, and never anything worse.
// What is read survives saving: the same document, and the same bytes from then on.
#include "design/repeat_file.hpp"
#include "design/repeat_sample.hpp"

#include <doctest/doctest.h>
#include <random>
#include <vector>

using namespace punchwright;
using namespace punchwright::test;

namespace {

constexpr unsigned seed = 20260;
constexpr int mutations = 6000;

// Pieces that a careless hand or another program might put in.
const std::vector<std::string> pieces = {"#",
                                         "\"",
                                         "\"\"\"",
                                         "'",
                                         "'''",
                                         "[",
                                         "]",
                                         "[[",
                                         "]]",
                                         "{",
                                         "}",
                                         "=",
                                         ",",
                                         ".",
                                         "\n",
                                         "\\",
                                         "\n\n",
                                         "\r\n",
                                         "\t",
                                         "# note\n",
                                         "ä",
                                         "\xff",
                                         "\x01",
                                         "-",
                                         "+",
                                         "1e999",
                                         "nan",
                                         "inf",
                                         "0x",
                                         "1979-05-27",
                                         "07:32:00",
                                         "true",
                                         "[x]\n",
                                         "[.",
                                         "a.b",
                                         "x = 1\n",
                                         "[yarn.x]\n",
                                         "[[band]]\n",
                                         "rows = 1\n",
                                         "key = \"C\"\n",
                                         "[card.x]\n",
                                         "\\u0041",
                                         "main = \"A\"\n",
                                         " ",
                                         "\n# c\n\n",
                                         "\n\n# d\n",
                                         "x.y = [1, # one\n2]\n",
                                         "y = {a = 1}\n",
                                         "[[z]]\n",
                                         "\"\" = 0\n"};

std::string mutated(std::string text, std::mt19937& random) {
  const auto below = [&](std::size_t limit) {
    return std::uniform_int_distribution<std::size_t>(0, limit - 1)(random);
  };
  for (std::size_t times = 1 + below(3); times > 0; --times) {
    const std::size_t at = below(text.size());
    const std::size_t length = std::min(text.size() - at, 1 + below(12));
    switch (below(6)) {
    case 0: text.erase(at, length); break;
    case 1: text.insert(at, text.substr(below(text.size()), length)); break;
    case 2: text[at] = static_cast<char>(below(256)); break;
    case 3: text.insert(at, pieces[below(pieces.size())]); break;
    case 4: { // a whole line lost or put elsewhere
      const std::size_t begin = text.rfind('\n', at) + 1;
      const std::size_t end = std::min(text.find('\n', at), text.size() - 1) + 1;
      if (end <= begin) {
        break;
      }
      const std::string line = text.substr(begin, end - begin);
      text.erase(begin, end - begin);
      const std::size_t elsewhere = text.find('\n', text.empty() ? 0 : below(text.size()));
      text.insert(elsewhere == std::string::npos ? 0 : elsewhere + 1, below(2) == 0 ? line : "");
      break;
    }
    default: { // a piece on a line of its own
      const std::size_t newline = text.find('\n', at);
      text.insert(newline == std::string::npos ? 0 : newline + 1, pieces[below(pieces.size())]);
    }
    }
    if (text.empty()) {
      text = "\n";
    }
  }
  return text;
}

} // namespace

TEST_CASE("no damaged file does harm, and what can be read is saved whole") {
  std::mt19937 random(seed);
  int read = 0;
  for (int count = 0; count < mutations; ++count) {
    const std::string text = mutated(count % 2 == 0 ? sample_text() : std::string(least_text), random);
    const auto result = read_repeat(text, "f.repeat");
    CAPTURE(text);
    if (!result) {
      CHECK(result.error().line > 0);
      CHECK(result.error().column > 0);
      CHECK_FALSE(result.error().remedy.empty());
      continue;
    }
    ++read;
    const std::string saved = write_repeat(result->document);
    CAPTURE(saved);
    const auto again = read_repeat(saved, "f.repeat");
    INFO((again ? std::string() : again.error().text()));
    REQUIRE(again);
    REQUIRE(again->document.extras == result->document.extras);
    REQUIRE(again->document == result->document);
    REQUIRE(write_repeat(again->document) == saved);
  }
  // Were nearly all refused, saving would hardly have been tried.
  CHECK(read > mutations / 6);
}
