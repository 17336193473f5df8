// Sentences for what differs: stitches are counted with their rows, the rest is named.
#include "design/differences.hpp"

#include "design/words.hpp"

#include <bit>
#include <cstddef>
#include <fmt/format.h>
#include <utility>

namespace punchwright {
namespace {

constexpr std::size_t most_runs = 5; // of rows, before the rest is only counted

struct Differing {
  int stitches = 0;
  std::vector<std::pair<int, int>> runs; // of rows, from 1, first and last
};

Differing differing_stitches(const Grid& one, const Grid& other) {
  Differing found;
  for (int row = 0; row < one.height(); ++row) {
    const auto words = one.row(row);
    const auto others = other.row(row);
    int stitches = 0;
    for (std::size_t word = 0; word < words.size(); ++word) {
      stitches += std::popcount(words[word] ^ others[word]);
    }
    found.stitches += stitches;
    if (stitches == 0) {
      continue;
    }
    if (!found.runs.empty() && found.runs.back().second == row) {
      ++found.runs.back().second;
    } else {
      found.runs.emplace_back(row + 1, row + 1);
    }
  }
  return found;
}

// "row 3", "rows 3 to 7 and 12", "rows 1, 3, 5, 7, 9 and 12 more".
std::string rows_in_words(const std::vector<std::pair<int, int>>& runs) {
  std::string words = runs.size() == 1 && runs.front().first == runs.front().second ? "row " : "rows ";
  int more = 0;
  for (std::size_t place = 0; place < runs.size(); ++place) {
    const auto& [first, last] = runs[place];
    if (place >= most_runs) {
      more += last - first + 1;
      continue;
    }
    if (place > 0) {
      words += place + 1 == runs.size() ? " and " : ", ";
    }
    words += first == last ? fmt::format("{}", first) : fmt::format("{} to {}", first, last);
  }
  return more == 0 ? words : words + fmt::format(" and {} more", more);
}

} // namespace

std::vector<std::string> differences_in_words(const Document& here, const Document& there) {
  std::vector<std::string> sentences;
  if (here.grid.width() != there.grid.width() || here.grid.height() != there.grid.height()) {
    sentences.push_back(
        fmt::format("The drawing here is {} by {}, there {} by {}.", counted(here.grid.width(), "stitch", "stitches"),
                    counted(here.grid.height(), "row", "rows"), there.grid.width(), there.grid.height()));
  } else if (const Differing found = differing_stitches(here.grid, there.grid); found.stitches > 0) {
    sentences.push_back(
        with_capital(fmt::format("{} {}, in {}.", counted(found.stitches, "stitch", "stitches"),
                                 found.stitches == 1 ? "differs" : "differ", rows_in_words(found.runs))));
  }
  std::vector<std::string> names;
  const auto compare = [&names](const auto& one, const auto& other, const char* name) {
    if (!(one == other)) {
      names.emplace_back(name);
    }
  };
  compare(here.marks, there.marks, "the marks of stitches");
  compare(here.bands, there.bands, "the bands");
  compare(here.yarns, there.yarns, "the yarns");
  compare(here.title, there.title, "the title");
  compare(here.notes, there.notes, "the notes");
  compare(here.profile, there.profile, "the machine");
  compare(here.gauge, there.gauge, "the gauge");
  compare(here.piece, there.piece, "the piece");
  compare(here.rules, there.rules, "the limits for floats and rows");
  compare(here.card, there.card, "the wishes for the card");
  compare(here.extras, there.extras, "comments in the file");
  if (!names.empty()) {
    sentences.push_back(fmt::format("{} {}: {}.", sentences.empty() ? "Different" : "Also different",
                                    names.size() == 1 ? "is" : "are", listed(names)));
  }
  return sentences;
}

} // namespace punchwright
