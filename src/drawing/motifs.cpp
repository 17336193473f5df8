// The collection read from its drawn sheets, and found by words.
#include "drawing/motifs.hpp"

#include "drawing/marked_area.hpp"
#include "drawing/motif_data.hpp"
#include "drawing/word_search.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr std::array groups = {MotifGroup::birds, MotifGroup::sea,     MotifGroup::harbour,
                               MotifGroup::waves, MotifGroup::borders, MotifGroup::fillers};

std::string_view sheet_of(MotifGroup group) {
  switch (group) {
  case MotifGroup::birds: return bird_motifs();
  case MotifGroup::sea: return sea_motifs();
  case MotifGroup::harbour: return harbour_motifs();
  case MotifGroup::waves: return wave_motifs();
  case MotifGroup::borders: return border_motifs();
  case MotifGroup::fillers: return filler_motifs();
  case MotifGroup::own: break;
  }
  return {};
}

// Up to `mark`, which goes too.
std::string_view taken_up_to(std::string_view& text, std::string_view mark) {
  const auto end = std::min(text.find(mark), text.size());
  const auto part = text.substr(0, end);
  text.remove_prefix(std::min(end + mark.size(), text.size()));
  return part;
}

// "bell-buoy: Bell buoy; sound mark", a line end, the rows.
Motif read_motif(std::string_view text, MotifGroup group) {
  Motif motif;
  motif.group = group;
  motif.id = taken_up_to(text, ": ");
  motif.name = taken_up_to(text, "; ");
  motif.words = taken_up_to(text, "\n");
  const auto drawing = drawing_from_text(text);
  assert(drawing.ok());
  motif.drawing = *drawing;
  return motif;
}

} // namespace

std::span<const MotifGroup> motif_groups() {
  return groups;
}

std::string_view name_of(MotifGroup group) {
  switch (group) {
  case MotifGroup::birds: return noted("birds");
  case MotifGroup::sea: return noted("sea");
  case MotifGroup::harbour: return noted("harbour");
  case MotifGroup::waves: return noted("waves");
  case MotifGroup::borders: return noted("borders");
  case MotifGroup::fillers: return noted("fillers");
  case MotifGroup::own: return noted("own");
  }
  return "";
}

std::vector<Motif> motif_collection() {
  std::vector<Motif> motifs;
  for (const MotifGroup group : groups) {
    std::string_view sheet = sheet_of(group);
    sheet.remove_prefix(1); // the line end after the opening quote
    while (!sheet.empty()) {
      motifs.push_back(read_motif(taken_up_to(sheet, "\n\n"), group));
    }
  }
  return motifs;
}

std::vector<const Motif*> motifs_found(std::span<const Motif> motifs, std::string_view wanted) {
  std::vector<const Motif*> found;
  for (const Motif& motif : motifs) {
    const std::string_view group = name_of(motif.group);
    const std::string english = fmt::format("{} {} {}", motif.name, group, motif.words);
    const std::string translated =
        fmt::format("{} {} {}", tr(motif.name.c_str()), tr(group.data()), tr(motif.words.c_str()));
    if (has_words(english + ' ' + translated, wanted)) {
      found.push_back(&motif);
    }
  }
  return found;
}

} // namespace punchwright
