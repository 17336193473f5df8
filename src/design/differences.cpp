// Sentences for what differs: stitches are counted with their rows, the rest is named.
#include "design/differences.hpp"

#include "design/words.hpp"
#include "words/words.hpp"

#include <bit>
#include <cstddef>
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
  std::string rows;
  int more = 0;
  for (std::size_t place = 0; place < runs.size(); ++place) {
    const auto& [first, last] = runs[place];
    if (place >= most_runs) {
      more += last - first + 1;
      continue;
    }
    const std::string run = first == last ? std::to_string(first) : said("{} to {}", first, last);
    rows = place == 0 ? run : place + 1 == runs.size() ? said("{} and {}", rows, run) : rows + ", " + run;
  }
  if (more > 0) {
    rows = said("{} and {} more", rows, more);
  }
  const bool one = runs.size() == 1 && runs.front().first == runs.front().second;
  return one ? said("row {}", rows) : said("rows {}", rows);
}

} // namespace

std::vector<std::string> differences_in_words(const Document& here, const Document& there) {
  std::vector<std::string> sentences;
  if (here.grid.width() != there.grid.width() || here.grid.height() != there.grid.height()) {
    sentences.push_back(
        said("The drawing here is {} by {}, there {} by {}.", said_count(here.grid.width(), "{} stitch", "{} stitches"),
             said_count(here.grid.height(), "{} row", "{} rows"), there.grid.width(), there.grid.height()));
  } else if (const Differing found = differing_stitches(here.grid, there.grid); found.stitches > 0) {
    sentences.push_back(said_count(found.stitches, "{} stitch differs, in {}.", "{} stitches differ, in {}.",
                                   rows_in_words(found.runs)));
  }
  std::vector<std::string> names;
  const auto compare = [&names](const auto& one, const auto& other, const char* name) {
    if (!(one == other)) {
      names.emplace_back(tr(name));
    }
  };
  compare(here.marks, there.marks, noted("the marks of stitches"));
  compare(here.bands, there.bands, noted("the bands"));
  compare(here.yarns, there.yarns, noted("the yarns"));
  compare(here.title, there.title, noted("the title"));
  compare(here.notes, there.notes, noted("the notes"));
  compare(here.profile, there.profile, noted("the machine"));
  compare(here.gauge, there.gauge, noted("the gauge"));
  compare(here.piece, there.piece, noted("the piece"));
  compare(here.rules, there.rules, noted("the limits for floats and rows"));
  compare(here.card, there.card, noted("the wishes for the card"));
  compare(here.extras, there.extras, noted("comments in the file"));
  if (!names.empty()) {
    const auto count = static_cast<long>(names.size());
    const std::string all = listed(names);
    sentences.push_back(sentences.empty()
                            ? said_count(count, "Different is: {1}.", "Different are: {1}.", all)
                            : said_count(count, "Also different is: {1}.", "Also different are: {1}.", all));
  }
  return sentences;
}

} // namespace punchwright
