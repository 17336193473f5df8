// The bench on the screen: row and side, one step in type that is read from across the room, the needles of the row,
// and the next step small below.
#include "editor/bench_type.hpp"
#include "editor/needle_strip.hpp"
#include "editor/panels.hpp"
#include "editor/style.hpp"
#include "editor/widgets.hpp"
#include "machine/placement.hpp"
#include "plan/bench_moves.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::editor {
namespace {

struct Face { // of the bench's type
  ImFont* font = nullptr;
  BenchType sizes; // px
  float capital = 0.63F;
};

struct BenchAt { // what the parts need
  const App& app;
  const BenchMoves& moves;
  int move = 0;
  Face face;
  ImDrawList& list;

  [[nodiscard]] bool over() const { return move >= moves.count(); }
  [[nodiscard]] const BenchMove& here() const { return moves.moves[static_cast<std::size_t>(move)]; }
  [[nodiscard]] Side side() const { return over() ? moves.moves.back().after : here().before; }
  [[nodiscard]] float unit() const { return app.theme.scale; }
  [[nodiscard]] float regular() const { return app.theme.regular->FontSize; }
};

ImVec2 measured(const Face& face, float size, float wrap, const std::string& words) {
  return face.font->CalcTextSizeA(size, 1e6F, wrap, words.c_str());
}

// px: the largest size between the two at which the words fit; below the smaller one, so small that they do.
float fitting_size(const Face& face, const std::string& words, float wide, float tall, float least, float most) {
  const auto fits = [&](float size) {
    const ImVec2 needs = measured(face, size, wide, words);
    return needs.y <= tall && needs.x <= wide;
  };
  float size = std::max(least, most);
  while (size > 8 && !fits(size)) {
    size -= std::max(1.0F, size * 0.03F);
  }
  return size;
}

float line_of(const BenchAt& at, ScreenPoint corner, float wide, float tall, const std::string& words, Colour colour,
              bool right) {
  const float size = fitting_size(at.face, words, wide, tall, at.face.sizes.least, at.face.sizes.good);
  const ImVec2 needs = measured(at.face, size, 0, words);
  at.list.AddText(at.face.font, size, {right ? corner.x + wide - needs.x : corner.x, corner.y + (tall - needs.y) / 2},
                  ink(colour), words.c_str());
  return size;
}

// The carriage at its side of the bed, with an arrow where it goes.
void carriage(const BenchAt& at, const ScreenBox& box) {
  const Theme& theme = at.app.theme;
  const float middle = box.middle().y;
  const float high = box.height();
  const float wide = 2.2F * high;
  const bool left = at.side() == Side::left;
  at.list.AddRectFilled({box.left, middle - high * 0.06F}, {box.right, middle + high * 0.06F}, ink(theme.quiet_text));
  const float from = left ? box.left : box.right - wide;
  at.list.AddRectFilled({from, box.top}, {from + wide, box.bottom}, ink(theme.accent), high * 0.2F);
  if (at.over() || !at.here().knits) {
    return;
  }
  const float forward = left ? 1.0F : -1.0F;
  const float tip = (left ? from + wide : from) + forward * 2.6F * high;
  const float tail = (left ? from + wide : from) + forward * 0.4F * high;
  const float neck = tip - forward * high;
  at.list.AddRectFilled({std::min(tail, neck), middle - high * 0.17F}, {std::max(tail, neck), middle + high * 0.17F},
                        ink(theme.accent));
  at.list.AddTriangleFilled({tip, middle}, {neck, middle - high * 0.5F}, {neck, middle + high * 0.5F},
                            ink(theme.accent));
}

struct StripRoom {
  NeedleStrip strip;
  NeedlesToSee seen;
  float caption = 0; // px: type above the lines
  float small = 0;   // px: type of names and counts
  float needle = 0;  // px: height of a needle
  [[nodiscard]] float line() const { return 2 * small + 1.9F * needle; }
  [[nodiscard]] float height() const { return caption * 1.25F + line() * static_cast<float>(strip.lines.size()); }
};

StripRoom strip_room(const BenchAt& at, float wide, float most_high) {
  StripRoom room;
  const Document& design = at.app.work.design;
  room.seen = needles_to_see(at.moves, at.move, design, at.app.work.profile, at.app.caches.rows);
  if (room.seen.are == NeedlesToSee::Are::none) {
    return room;
  }
  StripWishes wishes;
  wishes.first = first_needle_of(design);
  wishes.needles = stitches_of(design);
  wishes.width = wide;
  const BenchType& type = at.face.sizes;
  wishes.least_pitch = type.least * at.face.capital * 6 / static_cast<float>(least_arc_minutes); // 6 minutes of arc
  wishes.most_pitch = type.good * 0.55F;
  room.caption = std::max(at.regular(), type.good * 0.5F);
  for (wishes.most_lines = 4; wishes.most_lines >= 1; --wishes.most_lines) {
    room.strip = needle_strip(wishes);
    room.needle = std::clamp(room.strip.pitch * 1.6F, 8 * at.unit(), type.good * 0.8F);
    room.small = std::clamp(room.strip.pitch * 2.2F, 0.8F * at.regular(), std::max(at.regular(), type.good * 0.5F));
    if (room.height() <= most_high) {
      return room;
    }
  }
  const float shrink = std::max(0.3F, most_high / room.height()); // no room for what is wished
  room.caption *= shrink;
  room.small *= shrink;
  room.needle *= shrink;
  return room;
}

std::string strip_words(const BenchAt& at, const NeedlesToSee& seen) {
  const int all = stitches_of(at.app.work.design);
  const auto count = static_cast<int>(seen.needles.size());
  const bool selects_ahead = at.app.work.profile.selects != Selects::same_pass;
  switch (seen.are) {
  case NeedlesToSee::Are::hung_on: return said("{} needles in work", all);
  case NeedlesToSee::Are::lifted_onto: return said_count(count, "onto {} needle", "onto {} needles");
  case NeedlesToSee::Are::pushed_back: return said("{} needles to push back", count);
  case NeedlesToSee::Are::forward:
    if (count == 0) {
      return selects_ahead ? said("Row {}: no needle forward", at.here().row)
                           : said("Row {}: no needle knits contrast", at.here().row);
    }
    return selects_ahead ? said("Row {}: {} of {} needles forward", at.here().row, count, all)
                         : said("Row {}: {} of {} needles knit contrast", at.here().row, count, all);
  case NeedlesToSee::Are::none: break;
  }
  return {};
}

// One line of the bed: names of the outer needles above, needles, and below how many of each ten stand forward.
void strip_line(const BenchAt& at, const StripRoom& room, const StripLine& line, float left, float top) {
  const Theme& theme = at.app.theme;
  const auto is_forward = [&](Needle needle) { return std::ranges::binary_search(room.seen.needles, needle); };
  const float base = top + room.small * 1.1F;
  const float half = std::max(1.0F, std::floor(room.strip.pitch * 0.36F));
  for (const StripGroup& group : line.groups) {
    const bool outer_left = group.first.position < 0;
    const std::string name = name_of(outer_left ? group.first : group.last);
    const ImVec2 needs = measured(at.face, room.small, 0, name);
    if (needs.x <= group.right - group.left + room.strip.pitch) {
      at.list.AddText(at.face.font, room.small,
                      {left + (outer_left ? group.left : std::max(group.left, group.right - needs.x)), top},
                      ink(theme.quiet_text), name.c_str());
    }
    int forward = 0;
    for (Needle needle = group.first; needle <= group.last; ++needle.position) {
      const float x = std::round(left + room.strip.x_of(group, needle));
      if (is_forward(needle)) { // towards her, as on the bed
        ++forward;
        at.list.AddRectFilled({x - half, base + room.needle * 0.45F}, {x + half, base + room.needle * 1.45F},
                              ink(theme.text));
      } else {
        at.list.AddRect({x - half, base}, {x + half, base + room.needle * 0.8F}, ink(theme.quiet_text));
      }
    }
    if (!room.seen.needles.empty()) {
      const std::string count = std::to_string(forward);
      const ImVec2 wide = measured(at.face, room.small, 0, count);
      at.list.AddText(at.face.font, room.small,
                      {left + (group.left + group.right - wide.x) / 2, base + room.needle * 1.5F}, ink(theme.text),
                      count.c_str());
    }
    if (group.first == right_needle(1) && &group != &line.groups.front()) { // the middle of the bed
      const float middle = left + group.left - 0.65F * room.strip.pitch;
      at.list.AddLine({middle, top}, {middle, base + room.needle * 1.45F}, ink(theme.accent),
                      std::max(1.0F, 2 * at.unit()));
    }
  }
}

void strip(const BenchAt& at, const StripRoom& room, float left, float top) {
  const std::string words = strip_words(at, room.seen);
  at.list.AddText(at.face.font, room.caption, {left, top}, ink(at.app.theme.text), words.c_str());
  top += room.caption * 1.25F;
  for (const StripLine& line : room.strip.lines) {
    strip_line(at, room, line, left, top);
    top += room.line();
  }
}

// "Knit 9 rows (rows 3 to 11), ending on the left." for what comes after.
std::string next_words(const BenchAt& at) {
  const int next = at.move + 1;
  if (at.over()) {
    return {};
  }
  return next >= at.moves.count() ? tr("Next: done")
                                  : said("Next: {}", words_of(at.moves, next, at.app.work.design, at.app.caches.rows));
}

std::string facts(const BenchAt& at, float size_of_words) {
  std::string text;
  const auto add = [&text](const std::string& words) { text += (text.empty() ? "" : "   ·   ") + words; };
  if (!at.over()) {
    add(said("Step {} of {}", at.here().step + 1, at.moves.list.steps.size()));
    if (const std::string pass = pass_words(at.moves, at.move); !pass.empty()) {
      add(pass);
    }
    add(said("row counter {}", at.here().counter));
  }
  add(said_count(rows_today(at.app), "today {} row", "today {} rows"));
  if (at.face.font == at.app.theme.large) {
    const double capital = static_cast<double>(size_of_words * at.face.capital) * at.app.bench.px_mm;
    const double from = std::floor(distance_seen_m(capital, least_arc_minutes) * 10 + 0.05) / 10;
    add(said("legible to {}", distance_text(from, at.app.settings.lengths)));
  }
  return text;
}

void buttons(const App& app, Actions& actions) {
  command_button(app, actions, Command::bench_back, tr("← Back"));
  ImGui::SameLine();
  command_button(app, actions, Command::bench_forward, tr("Done, next →"), Look::main);
  ImGui::SameLine();
  command_button(app, actions, Command::step_list, tr("All steps"));
  if (app.bench.speaks) {
    ImGui::SameLine();
    command_button(app, actions, Command::say_step, tr("Say it"));
  }
  ImGui::SameLine();
  command_button(app, actions, Command::at_the_bench, tr("Leave##bench")); // told from a mend's in other languages
}

// How the room below the carriage is shared out.
struct Shares {
  StripRoom needles;
  float strip = 0;     // px of height, with the gap above; 0: no needles are shown
  float next = 0;      // likewise
  float next_size = 0; // px: type
  float words = 0;     // px of height
  float size = 0;      // px: type of the words
};

Shares shared_out(const BenchAt& at, const ScreenBox& box, const std::string& words, const std::string& next,
                  bool sparing) {
  const float gap = 8 * at.unit();
  Shares shares;
  if (!at.over()) {
    shares.needles = strip_room(at, box.width(), box.height() * (sparing ? 0.3F : 0.44F));
  }
  const NeedlesToSee::Are are = shares.needles.seen.are;
  const bool shown = are != NeedlesToSee::Are::none && (!sparing || are != NeedlesToSee::Are::hung_on);
  shares.strip = shown ? shares.needles.height() + gap : 0;
  shares.next_size = std::max(at.regular(), std::min(at.face.sizes.good * 0.5F, box.height() * 0.06F));
  const float lines = sparing ? 1.0F : 2.0F;
  shares.next =
      next.empty() ? 0
                   : gap + std::min(measured(at.face, shares.next_size, box.width(), next).y, lines * shares.next_size);
  shares.words = box.height() - shares.strip - shares.next;
  shares.size = fitting_size(at.face, words, box.width(), shares.words, at.face.sizes.least, at.face.sizes.most);
  return shares;
}

// What is done now, its needles, and what comes next; gives the size of type of the first.
float instructions(const BenchAt& at, Actions& actions, const ScreenBox& box) {
  const Theme& theme = at.app.theme;
  const float gap = 8 * at.unit();
  const std::string words = at.over() ? tr("Every step is done. Weights off first, then the work.")
                                      : words_of(at.moves, at.move, at.app.work.design, at.app.caches.rows);
  const std::string next = next_words(at);
  Shares shares = shared_out(at, box, words, next, false);
  if (shares.size < at.face.sizes.least) {
    shares = shared_out(at, box, words, next, true);
  }
  const float taken = measured(at.face, shares.size, box.width(), words).y;
  at.list.AddText(at.face.font, shares.size, {box.left, box.top + std::max(0.0F, (shares.words - taken) / 2)},
                  ink(theme.text), words.c_str(), nullptr, box.width());
  if (actions.publish_places) {
    actions.places.push_back({"bench words", {box.left, box.top, box.right, box.top + shares.words}});
  }
  if (shares.strip > 0) {
    strip(at, shares.needles, box.left, box.top + shares.words + gap);
  }
  if (!next.empty()) {
    const float size = fitting_size(at.face, next, box.width(), shares.next - gap, 0, shares.next_size);
    at.list.AddText(at.face.font, size, {box.left, box.bottom - shares.next + gap}, ink(theme.quiet_text), next.c_str(),
                    nullptr, box.width());
  }
  return shares.size;
}

// Everything above the buttons.
void sheet(const BenchAt& at, Actions& actions, const ScreenBox& box, const ScreenBox& foot) {
  const Theme& theme = at.app.theme;
  const float head = std::min(at.face.sizes.good * 1.25F, box.height() * 0.14F);
  const float rail = std::min(at.face.sizes.good * 0.45F, head * 0.5F);
  line_of(at, {box.left, box.top}, box.width() * 0.56F, head, row_words(at.moves, at.move), theme.text, false);
  line_of(at, {box.left + box.width() * 0.58F, box.top}, box.width() * 0.42F, head,
          at.side() == Side::left ? tr("Carriage left") : tr("Carriage right"), theme.accent, true);
  carriage(at, {box.left, box.top + head, box.right, box.top + head + rail});
  const float top = box.top + head + rail + 8 * at.unit();
  const float size = instructions(at, actions, {box.left, top, box.right, box.bottom});
  const std::string line = facts(at, size);
  if (actions.publish_places) {
    actions.places.push_back({"bench facts: " + line, {foot.left, foot.top, foot.right, foot.bottom}});
  }
  at.list.AddText(theme.regular, at.regular(), {foot.left, foot.top}, ink(theme.text), line.c_str(), nullptr,
                  foot.width());
}

} // namespace

void bench_panel(const App& app, Actions& actions, const ScreenBox& box) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  begin_part(app, bench_part, box, ImGuiWindowFlags_NoScrollbar);
  if (app.bench.moves != nullptr && app.bench.moves->count() > 0) {
    const float margin = 20 * unit;
    Face face;
    face.font = theme.large != nullptr ? theme.large : theme.bold;
    face.capital = capital_height(*face.font);
    face.sizes = bench_type(app.settings.bench_distance_m, app.bench.px_mm > 0 ? app.bench.px_mm : 0.265,
                            static_cast<double>(face.capital));
    const BenchAt at{app, *app.bench.moves, app.bench.place.done, face, *ImGui::GetWindowDrawList()};
    const float wide = box.width() - 2 * margin;
    const float low = ImGui::GetFrameHeight() + 12 * unit;
    const float high = ImGui::CalcTextSize(facts(at, 10).c_str(), nullptr, false, wide).y; // as long with any distance
    const ScreenBox foot{box.left + margin, box.bottom - low - high - 6 * unit, box.right - margin, box.bottom - low};
    sheet(at, actions, {box.left + margin, box.top + 8 * unit, box.right - margin, foot.top - 6 * unit}, foot);
    at.list.AddLine({box.left, foot.top - 3 * unit}, {box.right, foot.top - 3 * unit}, ink(theme.line));
    ImGui::SetCursorScreenPos({foot.left, foot.bottom});
    buttons(app, actions);
    const std::string& message = app.session.message;
    if (!message.empty()) {
      ImGui::SameLine();
      const float room = box.right - margin - ImGui::GetCursorScreenPos().x;
      ImGui::TextColored(tint(app.session.tone == Tone::trouble ? theme.fault : theme.text), "%s",
                         shortened(message, room).c_str());
    }
  }
  ImGui::End();
}

} // namespace punchwright::editor
