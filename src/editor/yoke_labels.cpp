// Breaks and draws the words on the yoke's pictures.
// Regular and bold words differ in width, so that each is measured in its own face.
#include "editor/yoke_labels.hpp"

#include "design/words.hpp"
#include "editor/widgets.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {

std::string names_with_widths_of(const Yoke& yoke, std::size_t piece) {
  std::vector<std::string> names{yoke.pieces[piece].name};
  for (std::size_t other = 0; other < yoke.pieces.size(); ++other) {
    if (other != piece && widths_of(yoke, other) == piece) {
      names.push_back(yoke.pieces[other].name);
    }
  }
  return listed(names);
}

std::vector<std::string> label_lines(const Theme& theme, const std::string& words, float room, std::size_t most,
                                     bool bold) {
  ImGui::PushFont(bold ? theme.bold : theme.regular);
  std::string left = in_lines(words, room);
  std::vector<std::string> lines;
  while (!left.empty() && lines.size() < most) {
    const std::size_t end = lines.size() + 1 == most ? left.size() : std::min(left.find('\n'), left.size());
    std::string line = left.substr(0, end);
    std::ranges::replace(line, '\n', ' '); // all that is left, in the last line
    lines.push_back(shortened(line, room));
    left.erase(0, std::min(end + 1, left.size()));
  }
  ImGui::PopFont();
  return lines;
}

std::vector<float> moved_apart(const std::vector<float>& wished, float apart, float least, float most) {
  // What would lie on one another becomes one group, whose middle stays where that of its members was wished.
  struct Group {
    float first = 0; // of its members, each then `apart` further
    float members = 0;
  };
  std::vector<Group> groups;
  for (const float place : wished) {
    groups.push_back({place, 1});
    while (groups.size() > 1) {
      Group& above = groups[groups.size() - 2];
      const Group& below = groups.back();
      if (above.first + above.members * apart <= below.first) {
        break;
      }
      const float moved = below.first - above.members * apart; // where the first would be, if it were one of these
      const float members = above.members + below.members;
      above = {(above.first * above.members + moved * below.members) / members, members};
      groups.pop_back();
    }
  }
  std::vector<float> places;
  for (const Group& group : groups) {
    for (float member = 0; member < group.members; ++member) {
      places.push_back(group.first + member * apart);
    }
  }
  // Within the room: from the lower end upwards, then, as that comes first, from the upper end down.
  float limit = most;
  for (std::size_t place = places.size(); place-- > 0; limit = places[place] - apart) {
    places[place] = std::min(places[place], limit);
  }
  limit = least;
  for (float& place : places) {
    place = std::max(place, limit);
    limit = place + apart;
  }
  return places;
}

float width_of_label(const Theme& theme, const std::vector<std::string>& lines, bool bold) {
  ImGui::PushFont(bold ? theme.bold : theme.regular);
  float widest = 0;
  for (const std::string& line : lines) {
    widest = std::max(widest, ImGui::CalcTextSize(line.c_str()).x);
  }
  ImGui::PopFont();
  return widest;
}

void label_on(ImDrawList& list, const Theme& theme, ImVec2 middle, const std::vector<std::string>& lines, bool bold) {
  for (const std::string& line : lines) {
    words_on(list, theme, middle, line, bold);
    middle.y += ImGui::GetTextLineHeightWithSpacing();
  }
}

void lines_at(ImDrawList& list, const Theme& theme, float x, float y, const std::vector<std::string>& lines,
              bool ending) {
  for (const std::string& line : lines) {
    const float left = ending ? x - ImGui::CalcTextSize(line.c_str()).x : x;
    list.AddText({left, y}, ink(theme.text), line.c_str());
    y += ImGui::GetTextLineHeight();
  }
}

void words_on(ImDrawList& list, const Theme& theme, ImVec2 middle, const std::string& words, bool bold) {
  ImGui::PushFont(bold ? theme.bold : theme.regular);
  const ImVec2 size = ImGui::CalcTextSize(words.c_str());
  const ImVec2 low{std::round(middle.x - size.x / 2), std::round(middle.y - size.y / 2)};
  const float aside = 4 * theme.scale;
  list.AddRectFilled({low.x - aside, low.y - aside / 4}, {low.x + size.x + aside, low.y + size.y + aside / 4},
                     ink(theme.panel), 3 * theme.scale);
  list.AddText(low, ink(theme.text), words.c_str());
  ImGui::PopFont();
}

} // namespace punchwright::editor
