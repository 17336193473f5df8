// Above the yoke: what is wanted most often, and which view, size and piece are shown.
// With large text in a small window these would leave no room for the picture: then the views are a list that drops
// down, as are sizes and pieces, and what else finds no room in the line gives way to a button for all commands.
#include "editor/choice_field.hpp"
#include "editor/closed_list.hpp"
#include "editor/top_bar.hpp"
#include "editor/yoke_parts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <optional>
#include <vector>

namespace punchwright::editor {

namespace {

// Of the window's height the bar takes no more than this unless it is a single line; of the view's the choices.
constexpr float most_of_window = 0.125F;
constexpr float most_of_view = 1.0F / 6;

struct BarThing {
  std::optional<Command> command; // none: the list of views
  const char* label = "";
  float gap = 4; // before it, units of layout
  int rank = 0;  // 0: never left out; the larger, the sooner
};

const char* label_of(YokeShows shows) {
  return tr(yoke_views[static_cast<std::size_t>(shows)].name);
}

Command command_of(YokeShows shows) {
  switch (shows) {
  case YokeShows::schematic: return Command::yoke_schematic;
  case YokeShows::flat: return Command::yoke_flat;
  case YokeShows::worn: return Command::yoke_worn;
  case YokeShows::bed: break;
  }
  return Command::yoke_bed;
}

std::vector<BarThing> bar_things(bool views_folded) {
  std::vector<BarThing> things = {{Command::open, tr("Open"), 0, 5},
                                  {Command::save, tr("Save"), 4, 2},
                                  {Command::undo, tr("↶ Undo"), 16, 3},
                                  {Command::redo, tr("↷ Redo"), 4, 4}};
  if (views_folded) {
    things.push_back({std::nullopt, "", 16, 0});
  } else {
    for (const YokeShowsInfo& view : yoke_views) {
      things.push_back({command_of(view.shows), tr(view.name), view.shows == YokeShows::schematic ? 16.0F : 4.0F, 0});
    }
  }
  things.push_back({Command::export_yoke, tr("Sheets"), 16, 1});
  things.push_back({Command::show_yoke, tr("Back to the drawing"), 16, 1});
  return things;
}

float around_words() {
  return 2 * ImGui::GetStyle().FramePadding.x;
}

float width_of_button(const char* label) {
  return ImGui::CalcTextSize(label).x + around_words();
}

// With its arrow.
float width_of_list(float widest_words) {
  return widest_words + around_words() + ImGui::GetFrameHeight();
}

float width_of(const BarThing& thing) {
  if (thing.command) {
    return width_of_button(thing.label);
  }
  float widest = 0;
  for (const YokeShowsInfo& view : yoke_views) {
    widest = std::max(widest, ImGui::CalcTextSize(label_of(view.shows)).x);
  }
  return width_of_list(widest);
}

// Where a thing stands: its line, and px from the left.
struct Standing {
  BarThing thing;
  int line = 0;
  float left = 0;
};

std::vector<Standing> in_lines_of(const std::vector<BarThing>& things, float unit, float width) {
  std::vector<Standing> standing;
  float left = bar_margin * unit;
  int line = 0;
  for (const BarThing& thing : things) {
    left += standing.empty() ? 0 : thing.gap * unit;
    if (left + width_of(thing) > width - bar_margin * unit + 0.5F && !standing.empty()) {
      ++line;
      left = bar_margin * unit;
    }
    standing.push_back({thing, line, left});
    left += width_of(thing);
  }
  return standing;
}

float height_of(const std::vector<Standing>& standing, float unit) {
  return height_of_bar(standing.back().line + 1, unit);
}

// The most important of them, in their order, that one line takes together with the button for all commands.
std::vector<BarThing> that_find_room(const std::vector<BarThing>& things, float unit, float width) {
  const BarThing more{Command::all_commands, tr("More…"), 16, 0};
  std::vector<BarThing> taken;
  for (int rank = 0; rank <= 5; ++rank) {
    for (const BarThing& candidate : things) {
      const bool undo = std::ranges::find(taken, std::optional(Command::undo), &BarThing::command) != taken.end();
      if (candidate.rank != rank || (candidate.command == Command::redo && !undo)) {
        continue;
      }
      std::vector<BarThing> next;
      std::ranges::copy_if(things, std::back_inserter(next), [&](const BarThing& thing) {
        const auto same = [&thing](const BarThing& other) { return other.command == thing.command; };
        return thing.command == candidate.command || std::ranges::any_of(taken, same);
      });
      next.push_back(more);
      if (rank == 0 || in_lines_of(next, unit, width).back().line == 0) {
        next.pop_back();
        taken = std::move(next);
      }
    }
  }
  taken.push_back(more);
  return taken;
}

std::vector<Standing> standings(const App& app, float width) {
  const float unit = app.theme.scale;
  std::vector<Standing> all = in_lines_of(bar_things(false), unit, width);
  if (all.back().line == 0 || height_of(all, unit) <= most_of_window * ImGui::GetIO().DisplaySize.y) {
    return all;
  }
  const std::vector<BarThing> folded = bar_things(true);
  std::vector<Standing> one_line = in_lines_of(folded, unit, width);
  return one_line.back().line == 0 ? one_line : in_lines_of(that_find_room(folded, unit, width), unit, width);
}

void views_list(const App& app, Actions& actions, float room) {
  const YokeShows shows = app.view.yoke.shows;
  const float wide = std::min(width_of({}), room);
  ImGui::SetNextItemWidth(wide);
  const std::string shown = shortened(label_of(shows), room_in_closed_list(wide));
  if (ImGui::BeginCombo("##views", shown.c_str(), ImGuiComboFlags_HeightLargest)) {
    for (const YokeShowsInfo& view : yoke_views) {
      if (list_entry(label_of(view.shows), view.shows == shows)) {
        actions.run(command_of(view.shows));
      }
      remember_place(actions, fmt::format("yoke views {}", view.id));
      tip(app.theme, fmt::format("{}  ({})", tr(view.tip), shown_keys(info_of(command_of(view.shows)).keys)));
    }
    ImGui::EndCombo();
  }
  remember_place(actions, "yoke views");
  tip(app.theme, tr("How the yoke is looked at (Ctrl+1 to Ctrl+4)"));
}

} // namespace

float yoke_bar_height(const App& app, float width) {
  return height_of(standings(app, width), app.theme.scale);
}

void yoke_bar(const App& app, Actions& actions, const ScreenBox& box) {
  const float unit = app.theme.scale;
  begin_bar(app, "yoke bar", box);
  const float top = ImGui::GetCursorPosY();
  for (const Standing& there : standings(app, box.width())) {
    const auto line = static_cast<float>(there.line);
    ImGui::SetCursorPos({there.left, top + line * (ImGui::GetFrameHeight() + bar_between_lines * unit)});
    if (!there.thing.command) {
      views_list(app, actions, box.width() - there.left - bar_margin * unit);
      continue;
    }
    const Command command = *there.thing.command;
    command_button(app, actions, command, there.thing.label,
                   command == command_of(app.view.yoke.shows) ? Look::chosen
                   : command == Command::export_yoke          ? Look::main
                                                              : Look::plain);
  }
  end_bar(app, box);
}

namespace {

// One of several, by its place.
struct Choices {
  const char* words; // what they are
  const char* name;
  std::vector<std::string> each;
  std::size_t YokeView::*chosen;
};

// Lines that the buttons take side by side.
int lines_of(const Choices& choices, float room) {
  const float gap = ImGui::GetStyle().ItemSpacing.x;
  float at = ImGui::CalcTextSize(choices.words).x;
  int lines = 1;
  for (const std::string& words : choices.each) {
    const float wide = width_of_button(words.c_str());
    if (at + gap + wide > room) {
      ++lines;
      at = wide;
    } else {
      at += gap + wide;
    }
  }
  return lines;
}

void as_buttons(const App& app, Actions& actions, const Choices& choices) {
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(choices.words);
  for (std::size_t place = 0; place < choices.each.size(); ++place) {
    YokeView next = app.view.yoke;
    next.*choices.chosen = place;
    const char* const words = choices.each[place].c_str();
    flow(width_of_button(words));
    const std::string name = fmt::format("{} {}", choices.name, place + 1);
    if (button(app.theme, actions, name.c_str(), words,
               place == app.view.yoke.*choices.chosen ? Look::chosen : Look::quiet)) {
      actions.push(SetYokeView{next});
    }
  }
}

void as_list(const App& app, Actions& actions, const Choices& choices, float room) {
  const std::size_t chosen = std::min(app.view.yoke.*choices.chosen, choices.each.size() - 1);
  float widest = 0;
  for (const std::string& words : choices.each) {
    widest = std::max(widest, ImGui::CalcTextSize(words.c_str()).x);
  }
  const float wide = std::min(width_of_list(widest), room);
  ImGui::SetNextItemWidth(wide);
  ImGui::PushID(choices.name);
  const std::string shown = shortened_in_middle(choices.each[chosen], room_in_closed_list(wide));
  if (ImGui::BeginCombo("##choices", shown.c_str(), ImGuiComboFlags_HeightLarge)) {
    for (std::size_t place = 0; place < choices.each.size(); ++place) {
      YokeView next = app.view.yoke;
      next.*choices.chosen = place;
      if (list_entry(choices.each[place].c_str(), place == chosen)) {
        actions.push(SetYokeView{next});
      }
      remember_place(actions, fmt::format("{} {}", choices.name, place + 1));
    }
    ImGui::EndCombo();
  }
  ImGui::PopID();
  remember_place(actions, choices.name);
  tip(app.theme, fmt::format("{}: {}", choices.words, choices.each[chosen]));
}

} // namespace

void yoke_choices(const App& app, Actions& actions) {
  const Yoke& yoke = app.yoke.opened->yoke;
  std::vector<Choices> all = {{tr("Size"), "yoke size", yoke.sizes, &YokeView::size}};
  if (app.view.yoke.shows == YokeShows::bed) {
    std::vector<std::string> pieces;
    for (const YokePiece& piece : yoke.pieces) {
      pieces.push_back(piece.name);
    }
    all.push_back({tr("Piece"), "yoke piece", std::move(pieces), &YokeView::piece});
  }
  const ImVec2 there = ImGui::GetContentRegionAvail();
  int lines = 0;
  for (const Choices& choices : all) {
    lines += lines_of(choices, there.x);
  }
  if (lines == 1 || static_cast<float>(lines) * ImGui::GetFrameHeightWithSpacing() <= most_of_view * there.y) {
    std::ranges::for_each(all, [&](const Choices& choices) { as_buttons(app, actions, choices); });
    return;
  }
  // In one line; the sizes, whose names are short, get no more than half of it.
  for (const Choices& choices : all) {
    if (&choices != &all.front()) {
      ImGui::SameLine();
    }
    const float rest = ImGui::GetContentRegionAvail().x;
    as_list(app, actions, choices, all.size() > 1 && &choices == &all.front() ? rest / 2 : rest);
  }
}

} // namespace punchwright::editor
