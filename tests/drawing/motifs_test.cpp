// The motif collection: large enough, no two alike under shift, mirror or inversion, knittable, found by words.
#include "drawing/marked_area.hpp"
#include "drawing/motif_words.hpp"
#include "drawing/motifs.hpp"
#include "drawing/turns.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>
#include <set>

using namespace punchwright;

namespace {

// The same text for drawings that are shifts (round their edges), mirror images (both ways, so half turns too) or
// inversions of one another.
std::string look_of(const Grid& drawing) {
  std::string least;
  for (const Grid& yarns : {drawing, inverted(drawing)}) {
    for (const Grid& mirrored : {yarns, mirrored_left_right(yarns)}) {
      for (const Grid& turned_over : {mirrored, mirrored_upside_down(mirrored)}) {
        for (int up = 0; up < drawing.height(); ++up) {
          for (int right = 0; right < drawing.width(); ++right) {
            const std::string text = text_of(shifted(turned_over, right, up));
            least = least.empty() ? text : std::min(least, text);
          }
        }
      }
    }
  }
  return least;
}

// Without the rows and columns at the edges that are all of one yarn, so that a margin makes no new motif.
Grid without_margin(const Grid& drawing) {
  Grid rest = drawing;
  for (int side = 0; side < 4; ++side) {
    while (rest.height() > 1 && (rest.all_main(0) || rest.all_contrast(0))) {
      rest = lifted(rest, {{0, 1}, rest.width(), rest.height() - 1});
    }
    rest = turned(rest, 1);
  }
  return rest;
}

bool tiles(MotifGroup group) {
  return group == MotifGroup::waves || group == MotifGroup::borders || group == MotifGroup::fillers;
}

// The longest run of stitches of one yarn between two of the other; round the edge where the motif tiles.
int longest_gap(const std::string& row, char yarn, bool round_the_edge) {
  const char other = yarn == '#' ? '.' : '#';
  if (row.find(other) == std::string::npos) {
    return 0;
  }
  const std::string stitches = round_the_edge ? row + row : row;
  const auto first = stitches.find(other);
  int longest = 0;
  int run = 0;
  for (auto place = first; place < stitches.size(); ++place) {
    run = stitches[place] == yarn ? run + 1 : 0;
    if (run > longest && stitches.find(other, place) != std::string::npos) {
      longest = run;
    }
  }
  return longest;
}

std::vector<std::string> ids(const std::vector<const Motif*>& found) {
  std::vector<std::string> names;
  for (const Motif* motif : found) {
    names.push_back(motif->id);
  }
  return names;
}

} // namespace

TEST_SUITE("motifs") {
  TEST_CASE("forty and more, in six groups, each 7 by 7 at least and no wider than a card's 24") {
    const auto motifs = motif_collection();
    CHECK(motifs.size() >= 40);
    std::map<MotifGroup, int> in_group;
    std::set<std::string> names;
    for (const Motif& motif : motifs) {
      CAPTURE(motif.id);
      ++in_group[motif.group];
      CHECK(names.insert(motif.id).second);
      CHECK(names.insert(motif.name).second);
      CHECK(motif.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string::npos);
      CHECK_FALSE(motif.words.empty());
      CHECK(motif.drawing.width() >= 7);
      CHECK(motif.drawing.height() >= 7);
      CHECK(motif.drawing.width() <= 24);
      if (tiles(motif.group)) {
        CHECK(24 % motif.drawing.width() == 0);
      }
    }
    CHECK(in_group.size() == motif_groups().size());
  }

  TEST_CASE("none equal to another under shift, mirror or inversion, margins left out or not") {
    const auto motifs = motif_collection();
    std::map<std::string, std::string> looks;
    std::map<std::string, std::string> looks_without_margin;
    for (const Motif& motif : motifs) {
      const std::string look = look_of(motif.drawing);
      CHECK_MESSAGE(looks.emplace(look, motif.id).second, motif.id, " and ", looks[look]);
      const std::string bare = look_of(without_margin(motif.drawing));
      CHECK_MESSAGE(looks_without_margin.emplace(bare, motif.id).second, motif.id, " and ", looks_without_margin[bare]);
    }
  }

  TEST_CASE("what counts as equal") {
    const Grid drawing = motif_collection().front().drawing;
    for (const Grid& same : {shifted(drawing, 3, -2), mirrored_left_right(drawing), mirrored_upside_down(drawing),
                             turned(drawing, 2), inverted(shifted(drawing, 1, 0))}) {
      CHECK(look_of(same) == look_of(drawing));
    }
    Grid other = drawing;
    other.flip(0, 0);
    CHECK(look_of(other) != look_of(drawing));
  }

  // 5 stitches, the limit that a new design starts with: both yarns, within the motif; the knot's open loops need 7.
  TEST_CASE("no float within a motif is longer than 5") {
    for (const Motif& motif : motif_collection()) {
      int longest = 0;
      for (int row = 0; row < motif.drawing.height(); ++row) {
        // A motif that doesn't tile is set down on main, so that a contrast run at its edge ends there.
        const std::string stitches =
            tiles(motif.group) ? motif.drawing.row_text(row) : '.' + motif.drawing.row_text(row) + '.';
        longest = std::max(
            {longest, longest_gap(stitches, '.', tiles(motif.group)), longest_gap(stitches, '#', tiles(motif.group))});
      }
      CAPTURE(motif.id);
      CHECK(longest <= (motif.id == "knot" ? 7 : 5));
    }
  }

  TEST_CASE("found by the beginnings of words, small or large letters") {
    const auto motifs = motif_collection();
    CHECK(motifs_found(motifs, "").size() == motifs.size());
    CHECK(ids(motifs_found(motifs, "PUFF")) == std::vector<std::string>{"puffin"});
    CHECK(ids(motifs_found(motifs, "buoy")) == std::vector<std::string>{"buoy", "bell-buoy"});
    CHECK(ids(motifs_found(motifs, "  buoy  sound ")) == std::vector<std::string>{"bell-buoy"});
    CHECK(motifs_found(motifs, "birds").size() == 6);
    CHECK(motifs_found(motifs, "uffin").empty());
    CHECK(motifs_found(motifs, "puffin anchor").empty());
  }
}

TEST_CASE("every motif's name and search words are noted for translation, and nothing else") {
  const auto motifs = motif_collection();
  const auto noted_ones = noted_motifs();
  REQUIRE(noted_ones.size() == motifs.size());
  for (const Motif& motif : motifs) {
    CAPTURE(motif.name);
    CHECK(std::ranges::any_of(
        noted_ones, [&](const NotedMotif& one) { return motif.name == one.name && motif.words == one.words; }));
  }
}

TEST_CASE("a motif of one's own is found by small and large letters, those with accents too") {
  const std::vector<Motif> own = {Motif{"moewe", "Möwe über Land", MotifGroup::own, "Élan", Grid(7, 7)}};
  for (const char* const wanted : {"möwe", "MÖWE", "ÜBER", "élan", "land"}) {
    CAPTURE(wanted);
    CHECK(motifs_found(own, wanted).size() == 1);
  }
  CHECK(motifs_found(own, "möve").empty());
}
