// The pairs of stitches as needles and transfers, with the clearances that find room; and the words.
#include "pieces/shaping.hpp"

#include "pieces/even_pairs.hpp"
#include "words/words.hpp"

#include <array>
#include <cstdlib>

namespace punchwright {
namespace {

Needle needle_of(const ShapingWishes& wishes, int stitch) {
  return Needle{wishes.first.position + stitch - 1};
}

// Clearances that leave no room go one after the other, the centre line first.
std::vector<StitchPair> placed(const ShapingWishes& wishes, Shaping& shaping) {
  const std::array tries = {std::pair(wishes.how.clear_of_seam, wishes.how.clear_of_centre),
                            std::pair(wishes.how.clear_of_seam, false), std::pair(0, false)};
  for (const auto& [clear, off_centre] : tries) {
    std::vector<StitchPair> pairs =
        even_pairs({wishes.before, std::abs(wishes.before - wishes.after), wishes.after > wishes.before, wishes.how.way,
                    wishes.how.towards, wishes.edge + clear, off_centre ? wishes.centre : std::vector<bool>{}});
    if (!pairs.empty()) {
      shaping.kept_off_seams = clear == wishes.how.clear_of_seam;
      shaping.kept_off_centre = off_centre == wishes.how.clear_of_centre;
      return pairs;
    }
  }
  return {};
}

std::string ordinal(int number) {
  const int tens = number % 100;
  const bool teens = tens >= 11 && tens <= 13;
  switch (teens ? 0 : number % 10) {
  case 1: return said("{}st", number);
  case 2: return said("{}nd", number);
  case 3: return said("{}rd", number);
  default: return said("{}th", number);
  }
}

std::string first_words(int step, int times) {
  const std::string which = ordinal(step);
  return times == 1   ? said("every {} needle once", which)
         : times == 2 ? said("every {} needle twice", which)
                      : said("every {} needle {} times", which, times);
}

// Behind others, where "needle" is understood.
std::string next_words(int step, int times) {
  const std::string which = ordinal(step);
  return times == 1   ? said("every {} once", which)
         : times == 2 ? said("every {} twice", which)
                      : said("every {} {} times", which, times);
}

} // namespace

Shaping shaping_between(const ShapingWishes& wishes) {
  Shaping shaping;
  shaping.before = wishes.before;
  shaping.after = wishes.after;
  shaping.wished = wishes.how;
  if (wishes.after == wishes.before) {
    return shaping;
  }
  std::vector<int> places;
  for (const StitchPair& pair : placed(wishes, shaping)) {
    places.push_back(pair.from());
    shaping.forward.push_back(needle_of(wishes, pair.from()));
    if (wishes.after < wishes.before) {
      shaping.astray += goes_as_wished(wishes.before, wishes.how.towards, pair) ? 0 : 1;
      shaping.transfers.push_back({needle_of(wishes, pair.from()), needle_of(wishes, pair.to())});
    }
  }
  shaping.every = steps_between(places);
  return shaping;
}

std::string words_of(const Steps& every) {
  std::string words;
  for (const auto& [step, times] : every) {
    words += words.empty() ? first_words(step, times) : ", " + next_words(step, times);
  }
  return words.empty() ? tr("none") : words;
}

std::string clearance_words(const Shaping& shaping) {
  std::string clear;
  std::string no_room;
  const auto add = [](std::string& words, const std::string& more) {
    words = words.empty() ? more : said("{} and {}", words, more);
  };
  if (shaping.wished.clear_of_seam > 0) {
    add(shaping.kept_off_seams ? clear : no_room,
        said_count(shaping.wished.clear_of_seam, "{} stitch clear of the seams", "{} stitches clear of the seams"));
  }
  if (shaping.wished.clear_of_centre) {
    add(shaping.kept_off_centre ? clear : no_room, tr("off the motif's centre line"));
  }
  std::string words = clear;
  const auto append = [&words](const std::string& more) { words += (words.empty() ? "" : "; ") + more; };
  if (!no_room.empty()) {
    append(said("no room to stay {}", no_room));
  }
  if (shaping.astray > 0) { // towards the centre is never without room
    append(said_count(shaping.astray, "no room for {} decrease to go towards the edges",
                      "no room for {} decreases to go towards the edges"));
  }
  return words;
}

std::vector<Needle> needles_to_fill(const Shaping& shaping, Needle first) {
  std::vector<Needle> needles;
  int place = 0;
  for (const auto& [step, times] : shaping.every) {
    for (int time = 0; time < times && shaping.increases() > 0; ++time) {
      place += step;
      needles.push_back(Needle{first.position + place + static_cast<int>(needles.size())});
    }
  }
  return needles;
}

} // namespace punchwright
