// The list of keys, and the eight pictures of the orientation swatch.
#include "editor/dialog_parts.hpp"

#include "editor/widgets.hpp"
#include "sheets/swatch_answers.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <imgui_internal.h>

namespace punchwright::editor {

ScreenPoint room_for_dialog(const App& app) {
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  const float unit = app.theme.scale;
  return {size.x - 20 - 40 * unit, size.y - 20 - 32 * unit};
}

bool escape_pressed() {
  if (!ImGui::IsKeyPressed(ImGuiKey_Escape)) {
    return false;
  }
  // ImGui has closed the drop-down by now; that it was drawn in the last frame tells.
  constexpr ImGuiWindowFlags kinds = ImGuiWindowFlags_Popup | ImGuiWindowFlags_Modal | ImGuiWindowFlags_Tooltip;
  return std::ranges::none_of(ImGui::GetCurrentContext()->Windows, [](const ImGuiWindow* window) {
    return window->WasActive && (window->Flags & kinds) == ImGuiWindowFlags_Popup;
  });
}

void cancel_button(const App& app, Actions& actions, const char* words) {
  if (button(app.theme, actions, "cancel", words) || escape_pressed()) {
    actions.push(SetDialog{NoDialog{}});
  }
}

void close_button(const App& app, Actions& actions) {
  const bool pressed = button(app.theme, actions, "close", tr("Close"), Look::main);
  make_default(actions);
  make_first_stop(actions);
  if (pressed || escape_pressed()) {
    actions.push(SetDialog{NoDialog{}});
  }
}

void text_lines(const std::string& text) {
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(in_lines(text, ImGui::GetContentRegionAvail().x).c_str());
  ImGui::PopTextWrapPos();
}

void warning_lines(const Theme& theme, const std::string& text) {
  if (!text.empty()) {
    ImGui::PushStyleColor(ImGuiCol_Text, tint(theme.warning));
    text_lines(text);
    ImGui::PopStyleColor();
  }
}

void remarks_above_buttons(const std::function<void()>& draw) {
  float& kept = *ImGui::GetStateStorage()->GetFloatRef(ImGui::GetID("remarks"), -1);
  const ImVec2 start = ImGui::GetCursorScreenPos();
  constexpr auto left = ImGuiMouseButton_Left; // it presses what it is let go on: that frame is still of the press
  if (kept < 0 || (!ImGui::IsMouseDown(left) && !ImGui::IsMouseReleased(left))) {
    draw();
    kept = ImGui::GetCursorScreenPos().y - start.y;
    return;
  }
  ImGui::PushClipRect(start, {start.x + ImGui::GetContentRegionAvail().x, start.y + kept}, true);
  draw();
  ImGui::PopClipRect();
  ImGui::SetCursorScreenPos({start.x, start.y + kept});
}

float room_of_remarks() {
  return std::max(0.0F, ImGui::GetStateStorage()->GetFloat(ImGui::GetID("remarks"), -1));
}

float room_below_here() {
  return std::floor(ImGui::GetIO().DisplaySize.y - 20 - ImGui::GetStyle().WindowPadding.y - ImGui::GetCursorPosY());
}

void scrolling(Actions& actions, float room, const std::function<void()>& draw) {
  // What the last frame has found. ImGui doesn't show the first one.
  float& tall = *ImGui::GetStateStorage()->GetFloatRef(ImGui::GetID("tall"), room);
  ImGui::BeginChild("below title", ImVec2(0, std::min(tall, room)), false, ImGuiWindowFlags_NavFlattened);
  draw();
  const float found = ImGui::GetCursorPosY() - ImGui::GetStyle().ItemSpacing.y;
  ImGui::EndChild();
  actions.unsettled = actions.unsettled || tall != std::max(1.0F, found);
  tall = std::max(1.0F, found);
}

void width_words(const App& app, const Profile* profile, int width) {
  if (profile == nullptr || !profile->card) {
    hint(app.theme, tr("Selected by hand, a repeat may have any width."));
    return;
  }
  const int columns = profile->card->repeat;
  const std::string words = said("Widths that fit this machine's card: {}.", fitting_widths(columns));
  if (width < 1 || columns % width != 0) {
    warning_lines(app.theme, said("{} stitches can't be punched. {}", width, words));
  } else {
    hint(app.theme, words);
  }
}

void scroll_by_keys() {
  const float line = ImGui::GetTextLineHeightWithSpacing();
  const std::array steps = {std::pair{ImGuiKey_DownArrow, line}, std::pair{ImGuiKey_UpArrow, -line},
                            std::pair{ImGuiKey_PageDown, ImGui::GetWindowHeight() - line},
                            std::pair{ImGuiKey_PageUp, line - ImGui::GetWindowHeight()}};
  for (const auto& [key, by] : steps) {
    if (ImGui::IsKeyPressed(key)) {
      ImGui::SetScrollY(std::clamp(ImGui::GetScrollY() + by, 0.0F, ImGui::GetScrollMaxY()));
    }
  }
}

float height_beside_lines(const App& app, float lines) {
  return std::max(4 * ImGui::GetTextLineHeight(),
                  room_for_dialog(app).y - (lines + 1) * ImGui::GetFrameHeightWithSpacing());
}

namespace {

using KeyLines = std::vector<std::pair<std::string, std::string>>;

KeyLines key_lines() {
  KeyLines lines = {
      {tr("Draw; drag for a line"), tr("Left button")},
      {tr("Erase to main"), tr("Right button")},
      {tr("Move the drawing"), tr("Middle button")},
      {tr("Move rows, columns"), tr("Drag their numbers")},
      {tr("Other yarns for a row"), tr("Click on its yarns")},
      {tr("Larger and smaller"), tr("Wheel")},
      {tr("Move sideways, up and down"), tr("Shift, Ctrl + wheel")},
      {tr("Move the cursor"), tr("Arrows")},
      {tr("Draw with the cursor"), tr("Shift+Arrows")},
      {tr("Move the large piece"), tr("Arrows")},
      {tr("Turn the stitch at the cursor"), tr("Space, X")},
      {tr("Ten rows up or down"), tr("Page Up, Page Down")},
      {tr("First and last column"), tr("Home, End")},
      {tr("From field to field"), tr("Tab, Shift+Tab")},
      {tr("Press a button, open a list"), tr("Return, Space")},
      {tr("A field as it was before"), tr("Escape")},
      {tr("At the bench: done, and back"), tr("Page Down, Page Up")},
  };
  const auto told_above = [](Command command) {
    return command == Command::toggle_stitch || command == Command::bench_forward || command == Command::bench_back;
  };
  for (const CommandInfo& info : all_commands()) {
    if (info.command == Command::redo) {
      lines.emplace_back(tr(info.name), shown_keys(info.keys) + ", " + shown_keys("Ctrl+Shift+Z"));
    } else if (!told_above(info.command)) {
      lines.emplace_back(tr(info.name), shown_keys(info.keys));
    }
  }
  return lines;
}

struct KeyWidths {
  float keys = 0; // px
  float words = 0;
  float gap = 0;
  [[nodiscard]] float pair() const { return keys + words + 2 * gap; }
};

KeyWidths widths_of(const Theme& theme, const KeyLines& lines) {
  KeyWidths widths; // of what isn't wrapped
  widths.gap = 18 * theme.scale;
  for (const auto& [words, key] : lines) {
    widths.words = std::max(widths.words, ImGui::CalcTextSize(words.c_str()).x);
    widths.keys = std::max(widths.keys, ImGui::CalcTextSize(key.c_str()).x);
  }
  return widths;
}

// Keys and what they do, in a table of two pairs of columns, or of one where there is no room for two. Where large text
// leaves too little for one, both its columns wrap between words.
void key_table(const Theme& theme, Actions& actions, const KeyLines& lines, const KeyWidths& widths,
               std::size_t pairs) {
  const std::size_t rows = (lines.size() + pairs - 1) / pairs;
  if (!ImGui::BeginTable("keys", static_cast<int>(2 * pairs), ImGuiTableFlags_SizingFixedFit)) {
    return;
  }
  for (std::size_t column = 0; column < 2 * pairs; ++column) {
    ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed,
                            (column % 2 == 0 ? widths.keys : widths.words) + widths.gap / 2);
  }
  ImGui::PushTextWrapPos(0);
  for (std::size_t row = 0; row < rows; ++row) {
    ImGui::TableNextRow();
    for (std::size_t line = row; line < lines.size(); line += rows) {
      ImGui::TableNextColumn();
      ImGui::TextColored(tint(theme.accent), "%s", lines[line].second.c_str());
      remember_place(actions, fmt::format("keys {} key", line));
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(lines[line].first.c_str());
      remember_place(actions, fmt::format("keys {} words", line));
    }
  }
  ImGui::PopTextWrapPos();
  ImGui::EndTable();
}

float with_scrollbar(float width, const Theme& theme) {
  return width + ImGui::GetStyle().ScrollbarSize + 8 * theme.scale;
}

} // namespace

namespace {

// Of one pair in so much room: the keys have half of it at most, what they do the rest.
KeyWidths wrapped_into(KeyWidths widths, float room) {
  room -= 2 * widths.gap;
  widths.keys = std::min(widths.keys, room / 2);
  widths.words = std::min(widths.words, room - widths.keys);
  return widths;
}

} // namespace

float width_of_keys_dialog(const App& app) {
  const KeyWidths widths = widths_of(app.theme, key_lines());
  const float room = room_for_dialog(app).x;
  const float two = with_scrollbar(2 * widths.pair(), app.theme);
  return two <= room ? two : std::min(room, with_scrollbar(widths.pair(), app.theme));
}

void keys_dialog(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const KeyLines lines = key_lines();
  const KeyWidths whole_widths = widths_of(theme, lines);
  const std::size_t pairs = with_scrollbar(2 * whole_widths.pair(), theme) <= room_for_dialog(app).x ? 2 : 1;
  const float wide = ImGui::GetContentRegionAvail().x - with_scrollbar(0, theme);
  const KeyWidths widths = pairs == 2 ? whole_widths : wrapped_into(whole_widths, wide);
  const float line = ImGui::GetTextLineHeight() + 2 * ImGui::GetStyle().CellPadding.y;
  const std::size_t high = (lines.size() + pairs - 1) / pairs;
  const float whole = line * static_cast<float>(high) + 4 * theme.scale;
  const bool wraps = widths.pair() < whole_widths.pair();
  const float room = std::max(3 * line, room_below_here() - ImGui::GetFrameHeightWithSpacing()); // above the button
  ImGui::BeginChild("list", ImVec2(0, wraps ? room : std::min(whole, room)), false, ImGuiWindowFlags_NoNav);
  key_table(theme, actions, lines, widths, pairs);
  scroll_by_keys();
  ImGui::EndChild();
  close_button(app, actions);
}

namespace {

constexpr float row_to_stitch = 0.8F; // the usual proportion of a row's height to a stitch's width

struct PictureSize {
  float cell = 0; // px: the room across for a picture and its words
  float side = 0; // px: the width of the picture
  float height = 0;
  float caption = 0; // px: height of the words
  int across = 4;
};

constexpr float beside_number = 20; // units from a cell's left edge to its words

float room_for_caption(float cell, float unit) {
  return cell + 6 * unit - beside_number * unit;
}

float widest_word_of_captions() {
  float widest = 0;
  for (int number = 1; number <= swatch_answers; ++number) {
    const std::string words = in_lines(words_of(swatch_answer(number)), 1); // each word in a line
    widest = std::max(widest, ImGui::CalcTextSize(words.c_str()).x);
  }
  return widest;
}

// Four pictures side by side; fewer where their words are too wide for that.
PictureSize picture_size(const App& app, const Grid& motif) {
  const float unit = app.theme.scale;
  const ScreenPoint room = room_for_dialog(app);
  const float word = widest_word_of_captions();
  PictureSize size;
  for (const int across : {4, 2, 1}) {
    size.across = across;
    const float by_width = (room.x - 24 * unit) / static_cast<float>(across) - 20 * unit;
    size.cell = std::clamp(by_width, 48 * unit, 150 * unit);
    if (word <= room_for_caption(size.cell, unit)) {
      break;
    }
  }
  float tallest = 0;
  for (int number = 1; number <= swatch_answers; ++number) {
    const std::string words = in_lines(words_of(swatch_answer(number)), room_for_caption(size.cell, unit));
    tallest = std::max(tallest, ImGui::CalcTextSize(words.c_str()).y);
  }
  size.caption = std::max(tallest, 3 * ImGui::GetTextLineHeight()) + 6 * unit;
  const float shape = row_to_stitch * static_cast<float>(motif.height()) / static_cast<float>(motif.width());
  const float lines_of_text = 5 * ImGui::GetFrameHeightWithSpacing();
  const float by_height = ((room.y - lines_of_text) / 2 - size.caption - 20 * unit) / shape;
  size.side = std::clamp(by_height, std::min(96 * unit, size.cell), size.cell); // else they scroll
  size.height = size.side * shape;
  return size;
}

void swatch_picture(ImDrawList& list, ScreenPoint corner, float side, const Grid& seen, const Document& motif) {
  const auto wide = static_cast<float>(seen.width());
  const auto tall = static_cast<float>(seen.height()) * row_to_stitch;
  const float cell = side / wide;
  const float left = corner.x;
  const float top = corner.y;
  list.AddRectFilled({left, top}, {left + cell * wide, top + cell * tall}, ink(motif.yarns[0].colour));
  for (int row = 0; row < seen.height(); ++row) {
    for (int column = 0; column < seen.width(); ++column) {
      if (seen.at(column, row)) {
        const float x = left + static_cast<float>(column) * cell;
        const float y = top + static_cast<float>(seen.height() - 1 - row) * cell * row_to_stitch;
        list.AddRectFilled({x, y}, {x + cell, y + cell * row_to_stitch}, ink(motif.yarns[1].colour));
      }
    }
  }
}

// One of the digits 1 to 8 that was typed in this frame; 0: none.
int digit_typed() {
  for (const ImWchar letter : ImGui::GetIO().InputQueueCharacters) {
    if (letter >= '1' && letter <= '0' + swatch_answers) {
      return letter - '0';
    }
  }
  return 0;
}

} // namespace

float width_of_swatch_dialog(const App& app) {
  const PictureSize size = picture_size(app, swatch_document(app.work.profile).grid);
  return static_cast<float>(size.across) * (size.cell + 20 * app.theme.scale) + 16 * app.theme.scale;
}

void swatch_dialog(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  hint(theme,
       tr("Lay the knitted swatch before you, knit side up, cast-on edge towards you. Which picture does it look "
          "like? Choose it, or press its number."));
  const Document motif = swatch_document(app.work.profile);
  const PictureSize size = picture_size(app, motif.grid);
  const ImVec2 whole(size.cell + 12 * unit, size.height + size.caption + 12 * unit);
  const int typed = digit_typed();
  for (int number = 1; number <= swatch_answers; ++number) {
    const SwatchAnswer answer = swatch_answer(number);
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::PushID(number);
    const bool chosen = ImGui::Selectable("##picture", false, ImGuiSelectableFlags_DontClosePopups, whole);
    ImGui::PopID();
    remember_place(actions, fmt::format("swatch {}", number), Stop::Kind::button);
    if (chosen || typed == number) {
      actions.push(UseSwatch{answer});
    }
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const std::string digit = std::to_string(number);
    list.AddText(theme.bold, ImGui::GetFontSize(), {corner.x + 6 * unit, corner.y + 3 * unit}, ink(theme.text),
                 digit.c_str());
    const std::string words = in_lines(words_of(answer), room_for_caption(size.cell, unit));
    const ScreenPoint beside{corner.x + beside_number * unit, corner.y + 3 * unit};
    list.AddText(to_imgui(beside), ink(theme.text), words.c_str());
    if (actions.publish_places) {
      const ImVec2 taken = ImGui::CalcTextSize(words.c_str());
      actions.places.push_back(
          {fmt::format("swatch {} words", number), {beside.x, beside.y, beside.x + taken.x, beside.y + taken.y}});
      const float top = corner.y + size.caption + 4 * unit;
      actions.places.push_back({fmt::format("swatch {} picture", number),
                                {corner.x + 6 * unit, top, corner.x + 6 * unit + size.side, top + size.height}});
    }
    swatch_picture(list, {corner.x + 6 * unit, corner.y + size.caption + 4 * unit}, size.side,
                   swatch_seen(motif.grid, answer), motif);
    if (number % size.across != 0) {
      ImGui::SameLine(0, 8 * unit);
    }
  }
  cancel_button(app, actions, tr("Not now"));
}

} // namespace punchwright::editor
