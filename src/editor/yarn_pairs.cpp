// Finding and taking pairs.
#include "editor/yarn_pairs.hpp"

#include "drawing/word_search.hpp"
#include "rules/findings.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <utility>

namespace punchwright::editor {

namespace {

bool of_pair(const Band& band, char main, char contrast) {
  return band.main == main && band.contrast == contrast;
}

char free_key(const std::vector<Yarn>& yarns) {
  constexpr std::string_view keys = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789";
  for (const char key : keys) {
    if (std::ranges::find(yarns, key, &Yarn::key) == yarns.end()) {
      return key;
    }
  }
  return 0;
}

// The key under which the colour is in the list from now on; `old` is the yarn whose place it takes.
char key_for(std::vector<Yarn>& yarns, char old, bool used_elsewhere, const YarnColour& wished) {
  const auto same = std::ranges::find_if(
      yarns, [&](const Yarn& yarn) { return yarn.colour == wished.colour && shown_name(yarn) == wished.name; });
  if (same != yarns.end()) {
    return same->key;
  }
  const auto place = std::ranges::find(yarns, old, &Yarn::key);
  const char key = used_elsewhere ? free_key(yarns) : old;
  if (key == 0 || place == yarns.end()) {
    return old; // the list is full
  }
  if (used_elsewhere) {
    yarns.push_back({key, wished.name, wished.colour});
  } else {
    place->name = wished.name;
    place->colour = wished.colour;
  }
  return key;
}

} // namespace

std::string shown_name(const Yarn& yarn) {
  return yarn.name.empty() ? said("Yarn {}", yarn.key) : yarn.name;
}

std::vector<YarnPair> pairs_to_try(const Document& design, char main, char contrast, PairChange change,
                                   std::string_view words) {
  const auto colour_of = [&](char key) {
    const Yarn& yarn = yarn_of(design, key);
    return YarnColour{shown_name(yarn), yarn.colour};
  };
  const YarnColour present_main = colour_of(main);
  const YarnColour present_contrast = colour_of(contrast);
  std::vector<YarnPair> pairs;
  const auto add = [&](const YarnColour& one, const YarnColour& other, bool present) {
    pairs.push_back({one, other, contrast_ratio(one.colour, other.colour), present});
  };
  add(present_main, present_contrast, true);
  std::vector<YarnColour> candidates;
  for (const Yarn& yarn : design.yarns) {
    if (has_words(yarn.name, words)) {
      candidates.push_back({shown_name(yarn), yarn.colour});
    }
  }
  for (const YarnColour& colour : yarn_colours_found(words)) {
    candidates.push_back(colour);
  }
  std::vector<YarnColour> seen = {present_main, present_contrast};
  for (const YarnColour& candidate : candidates) {
    if (std::ranges::find(seen, candidate) != seen.end()) {
      continue;
    }
    seen.push_back(candidate);
    change == PairChange::contrast ? add(present_main, candidate, false) : add(candidate, present_contrast, false);
  }
  return pairs;
}

YarnsAndBands with_pair(const Document& design, char main, char contrast, const YarnPair& pair) {
  YarnsAndBands result{design.yarns, design.bands};
  const auto used_elsewhere = [&](char key) {
    return std::ranges::any_of(design.bands, [&](const Band& band) {
      return !of_pair(band, main, contrast) && (band.main == key || band.contrast == key);
    });
  };
  const char new_main = key_for(result.yarns, main, used_elsewhere(main), pair.main);
  const char new_contrast = key_for(result.yarns, contrast, used_elsewhere(contrast), pair.contrast);
  for (Band& band : result.bands) {
    if (of_pair(band, main, contrast)) {
      band.main = new_main;
      band.contrast = new_contrast;
    }
  }
  return result;
}

std::vector<Band> with_yarns_swapped(const Document& design, std::size_t index) {
  std::vector<Band> bands = design.bands;
  Band& band = bands[index];
  if (!band.contrast) {
    return {};
  }
  std::swap(band.main, *band.contrast);
  return bands;
}

Document sample_of_pair(const Document& design, char main, char contrast, int rows) {
  int first = 0;
  for (const Band& band : design.bands) {
    if (of_pair(band, main, contrast)) {
      const int height = std::min(rows, band.rows);
      Document sample = blank_document(design.grid.width(), height);
      sample.gauge = design.gauge;
      for (int row = 0; row < height; ++row) {
        for (int column = 0; column < design.grid.width(); ++column) {
          sample.grid.set(column, row, design.grid.at(column, first + row));
        }
      }
      sample.yarns[0].colour = {0, 0, 0};
      sample.yarns[1].colour = {0xff, 0xff, 0xff};
      return sample;
    }
    first += band.rows;
  }
  return blank_document(1, 1);
}

} // namespace punchwright::editor
