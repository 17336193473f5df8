// How the open yoke is looked at: which view, size, piece and tier. Never part of what is saved.
#pragma once

#include "words/words.hpp"

#include <array>
#include <cstddef>

namespace punchwright::editor {

enum class YokeShows { schematic, flat, worn, bed };

struct YokeShowsInfo {
  YokeShows shows;
  const char* id;
  const char* name;
  const char* tip;
};
inline constexpr std::array yoke_views = {
    YokeShowsInfo{YokeShows::schematic, "schematic", noted("Schematic"),
                  noted("Pieces with their measures, which can be dragged")},
    YokeShowsInfo{YokeShows::flat, "flat", noted("Laid flat"),
                  noted("All pieces and tiers side by side, knit side up")},
    YokeShowsInfo{YokeShows::worn, "worn", noted("As worn"), noted("From above: the ring narrowing to the neck")},
    YokeShowsInfo{YokeShows::bed, "bed", noted("On the bed"),
                  noted("One piece on its needles, as the knitter sees it")}};

struct YokeView {
  YokeShows shows = YokeShows::schematic;
  std::size_t size = 0;
  std::size_t piece = 0;
  int finding = -1; // the chosen one, by its place in the list

  bool operator==(const YokeView&) const = default;
};

} // namespace punchwright::editor
