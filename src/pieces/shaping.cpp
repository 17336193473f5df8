// The pairs of stitches as needles and transfers, with the clearances that find room; and the words.
#include "pieces/shaping.hpp"

#include "pieces/even_pairs.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstdlib>

namespace punchwright {
namespace {

Needle needle_of(const ShapingWishes& wishes, int stitch) {
  return Needle{wishes.first.position + stitch - 1};
}

// Clearances that leave no room: the centre line goes first, then one stitch after the other beside the seams.
std::vector<StitchPair> placed(const ShapingWishes& wishes, Shaping& shaping) {
  const int most = std::max(0, wishes.before / 2 - wishes.edge); // beyond that no stitch is left
  const int wished = wishes.how.clear_of_seam;
  // Without seam stitches the outermost ones are the piece's edge: no decrease should have to do with them.
  const int of_edge = wishes.edge == 0 && wishes.after < wishes.before ? 1 : 0;
  for (int clear = std::min(std::max(wished, of_edge), most); clear >= 0; --clear) {
    for (const bool off_centre : {true, false}) {
      if (off_centre && !wishes.how.clear_of_centre) {
        continue;
      }
      std::vector<StitchPair> pairs = even_pairs(
          {wishes.before, std::abs(wishes.before - wishes.after), wishes.after > wishes.before, wishes.how.way,
           wishes.how.towards, wishes.edge + clear, off_centre ? wishes.centre : std::vector<bool>{}});
      if (!pairs.empty()) {
        shaping.clear_of_seam = std::min(clear, wished);
        shaping.kept_off_seams = clear >= wished;
        shaping.kept_off_edge = clear >= of_edge;
        shaping.kept_off_centre = off_centre == wishes.how.clear_of_centre;
        return pairs;
      }
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

// Needles beside each other: nobody says "every 1st".
std::string every_needle(int times) {
  return times == 1   ? tr("every needle once")
         : times == 2 ? tr("every needle twice")
                      : said("every needle {} times", times);
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
    words += words.empty() ? "" : ", ";
    words += step == 1 ? every_needle(times) : words.empty() ? first_words(step, times) : next_words(step, times);
  }
  return words.empty() ? tr("none") : words;
}

std::string clearance_words(const Shaping& shaping) {
  std::string clear;
  std::string no_room;
  const auto add = [](std::string& words, const std::string& more) {
    words = words.empty() ? more : said("{} and {}", words, more);
  };
  const auto of_seams = [](int stitches) {
    return said_count(stitches, "{} stitch clear of the seams", "{} stitches clear of the seams");
  };
  if (shaping.kept_off_seams && shaping.wished.clear_of_seam > 0) {
    add(clear, of_seams(shaping.wished.clear_of_seam));
  } else if (shaping.clear_of_seam > 0) {
    add(clear, said("{}, no room for {}", of_seams(shaping.clear_of_seam), shaping.wished.clear_of_seam));
  } else if (shaping.wished.clear_of_seam > 0) {
    add(no_room, of_seams(shaping.wished.clear_of_seam));
  }
  if (!shaping.kept_off_edge) {
    add(no_room, tr("off the outermost stitches"));
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
