// Groups of needles and their places.
#include "editor/needle_strip.hpp"

#include <algorithm>

namespace punchwright::editor {
namespace {

constexpr float gap_of_five = 0.5F; // of the pitch
constexpr float gap_of_ten = 1.3F;

bool is_left(Needle needle) {
  return needle.position < 0;
}

std::vector<StripGroup> tens(Needle first, int needles) {
  std::vector<StripGroup> groups;
  const Needle last{first.position + needles - 1};
  for (Needle needle = first; needle <= last; ++needle.position) {
    const bool goes_on = !groups.empty() && is_left(groups.back().last) == is_left(needle) &&
                         tens_of(groups.back().last) == tens_of(needle);
    if (goes_on) {
      groups.back().last = needle;
    } else {
      groups.push_back({needle, needle, 0, 0});
    }
  }
  return groups;
}

// Whether a gap of five lies between the group's ends, on the side of `needle` that is nearer to the bed's left end.
bool has_five_before(const StripGroup& group, Needle needle) {
  const auto half = [](Needle one) { return place_in_ten(one) > 5; };
  return half(group.first) != half(needle);
}

// In pitches.
float width_of(const StripGroup& group) {
  return static_cast<float>(group.count()) + (has_five_before(group, group.last) ? gap_of_five : 0);
}

float width_of(const std::vector<StripGroup>& groups) {
  float width = 0;
  for (const StripGroup& group : groups) {
    width += width_of(group) + (&group == &groups.front() ? 0 : gap_of_ten);
  }
  return width;
}

// The groups shared out among so many lines, the widest of which is as narrow as may be.
std::vector<StripLine> shared_out(const std::vector<StripGroup>& groups, int lines) {
  const auto fits = [&](float limit) {
    std::vector<StripLine> out(1);
    for (const StripGroup& group : groups) {
      std::vector<StripGroup> longer = out.back().groups;
      longer.push_back(group);
      if (!out.back().groups.empty() && width_of(longer) > limit) {
        out.push_back({{group}});
      } else {
        out.back().groups = std::move(longer);
      }
    }
    return out;
  };
  float limit = width_of(groups) / static_cast<float>(lines);
  std::vector<StripLine> best = fits(limit);
  while (static_cast<int>(best.size()) > lines) {
    limit += 1;
    best = fits(limit);
  }
  return best;
}

} // namespace

int number_of(Needle needle) {
  return needle.position < 0 ? -needle.position : needle.position + 1;
}

int tens_of(Needle needle) {
  return (number_of(needle) - 1) / 10;
}

int place_in_ten(Needle needle) {
  return (number_of(needle) - 1) % 10 + 1;
}

float NeedleStrip::x_of(const StripGroup& group, Needle needle) const {
  const auto before = static_cast<float>(needle.position - group.first.position);
  return group.left + pitch * (before + 0.5F + (has_five_before(group, needle) ? gap_of_five : 0));
}

NeedleStrip needle_strip(const StripWishes& wishes) {
  const std::vector<StripGroup> groups = tens(wishes.first, std::max(1, wishes.needles));
  const int most = std::clamp(wishes.most_lines, 1, static_cast<int>(groups.size()));
  NeedleStrip strip;
  for (int lines = 1; lines <= most; ++lines) {
    strip.lines = shared_out(groups, lines);
    float widest = 0;
    for (const StripLine& line : strip.lines) {
      widest = std::max(widest, width_of(line.groups));
    }
    strip.pitch = std::min(wishes.width / widest, wishes.most_pitch);
    if (strip.pitch >= wishes.least_pitch) {
      break;
    }
  }
  for (StripLine& line : strip.lines) {
    float left = (wishes.width - width_of(line.groups) * strip.pitch) / 2;
    for (StripGroup& group : line.groups) {
      group.left = left;
      group.right = left + width_of(group) * strip.pitch;
      left = group.right + gap_of_ten * strip.pitch;
    }
  }
  return strip;
}

} // namespace punchwright::editor
