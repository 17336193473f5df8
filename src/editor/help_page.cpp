// The guide in the window: contents, text with its headings and lists, a search by typing; keys scroll.
#include "editor/applying.hpp"
#include "editor/closed_list.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <imgui_internal.h>
#include <imgui_stdlib.h>

namespace punchwright::editor {

namespace {

using Kind = HelpBlock::Kind;
using Style = HelpRun::Style;

// Words of several styles, wrapped into a width; draws from `corner`, or only measures. Gives the height, px.
class Flow {
public:
  Flow(const Theme& theme, ImVec2 corner, float width, bool draws)
      : theme_(theme), corner_(corner), width_(std::max(width, 20 * theme.scale)), draws_(draws) {}

  float run(const std::vector<HelpRun>& runs, bool heading) {
    for (const HelpRun& run : runs) {
      std::string_view text = run.text;
      while (!text.empty()) { // word by word, each with the blank behind it
        std::size_t end = text.find(' ');
        end = end == std::string_view::npos ? text.size() : end + 1;
        word(text.substr(0, end), heading ? Style::strong : run.style);
        text.remove_prefix(end);
      }
    }
    return y_ + line();
  }

private:
  [[nodiscard]] float line() const { return theme_.regular->FontSize * 1.25F; }

  void word(std::string_view text, Style style) {
    const ImFont& font = style == Style::strong ? *theme_.bold : *theme_.regular;
    const std::string_view seen = text.ends_with(' ') ? text.substr(0, text.size() - 1) : text;
    const float wide = font.CalcTextSizeA(font.FontSize, 1.0e9F, 0, seen.data(), seen.data() + seen.size()).x;
    if (x_ > 0 && x_ + wide > width_) {
      x_ = 0;
      y_ += line();
    }
    if (draws_) {
      const Colour colour = style == Style::code ? theme_.accent : theme_.text;
      const ImVec2 at{std::round(corner_.x + x_), std::round(corner_.y + y_)};
      ImGui::GetWindowDrawList()->AddText(&font, font.FontSize, at, ink(colour), seen.data(),
                                          seen.data() + seen.size());
      if (style == Style::soft) { // there is no slanted face: a line below tells it
        ImGui::GetWindowDrawList()->AddLine({at.x, at.y + font.FontSize + 1}, {at.x + wide, at.y + font.FontSize + 1},
                                            ink(theme_.quiet_text));
      }
    }
    const float blank = seen.size() == text.size() ? 0 : font.CalcTextSizeA(font.FontSize, 1.0e9F, 0, " ").x;
    x_ += wide + blank;
  }

  const Theme& theme_;
  ImVec2 corner_;
  float width_;
  bool draws_;
  float x_ = 0;
  float y_ = 0;
};

// Where a block's cells stand, px from the left: tables give the first column a third, or what three need.
struct Cells {
  std::vector<float> left;
  std::vector<float> width;
};

Cells cells_of(const Theme& theme, const HelpBlock& block, float width) {
  const float unit = theme.scale;
  if (block.cells.size() < 2) {
    const float indent = block.kind == Kind::item ? 22 * unit : block.kind == Kind::code ? 14 * unit : 0;
    return {{indent}, {width - indent}};
  }
  Cells cells;
  const float gap = 12 * unit;
  const auto count = static_cast<float>(block.cells.size());
  const float first = block.cells.size() == 2 ? 0.28F : 0.30F;
  float left = 0;
  for (std::size_t cell = 0; cell < block.cells.size(); ++cell) {
    const float share = cell == 0 ? first : (1 - first) / (count - 1);
    cells.left.push_back(left);
    cells.width.push_back(width * share - gap);
    left += width * share;
  }
  return cells;
}

float draw_cells(const Theme& theme, const HelpBlock& block, const Cells& cells, ImVec2 corner, bool draws) {
  float tall = 0;
  const bool strong = block.kind == Kind::heading || block.kind == Kind::table_head;
  for (std::size_t cell = 0; cell < block.cells.size(); ++cell) {
    Flow flow(theme, {corner.x + cells.left[cell], corner.y}, cells.width[cell], draws);
    tall = std::max(tall, flow.run(block.cells[cell], strong));
  }
  return tall;
}

// One block of the text; the found one has a ground and a bar.
void draw_block(const App& app, const HelpBlock& block, bool found, bool scroll_here) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  if (block.kind == Kind::heading) {
    ImGui::Dummy(ImVec2(0, (block.level < 3 ? 12 : 4) * unit));
  }
  const float width = ImGui::GetContentRegionAvail().x - 10 * unit;
  ImVec2 corner = ImGui::GetCursorScreenPos();
  corner.x += 8 * unit;
  const Cells cells = cells_of(theme, block, width);
  const float tall = draw_cells(theme, block, cells, corner, false);
  if (scroll_here) {
    ImGui::SetScrollFromPosY(corner.y - ImGui::GetWindowPos().y, 0.08F);
  }
  if (ImGui::IsRectVisible({corner.x, corner.y}, {corner.x + width, corner.y + tall})) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (found) {
      list.AddRectFilled({corner.x - 6 * unit, corner.y - 2 * unit}, {corner.x + width, corner.y + tall},
                         ink(theme.accent_soft), 3 * unit);
      list.AddRectFilled({corner.x - 8 * unit, corner.y - 2 * unit}, {corner.x - 5 * unit, corner.y + tall},
                         ink(theme.accent));
    }
    draw_cells(theme, block, cells, corner, true);
    if (!block.mark.empty()) {
      list.AddText({corner.x, corner.y}, ink(theme.quiet_text), block.mark.c_str());
    }
    if (block.kind == Kind::table_head || block.kind == Kind::table_row) {
      list.AddLine({corner.x, corner.y + tall}, {corner.x + width, corner.y + tall}, ink(theme.line));
    }
  }
  ImGui::Dummy(ImVec2(width, tall));
}

std::string words_of(const HelpBlock& block) {
  std::string words = block.plain;
  while (words.ends_with(' ')) {
    words.pop_back();
  }
  return words;
}

void contents(const App& app, Actions& actions, HelpDialog& next, bool& changed, bool as_list) {
  const std::vector<HelpBlock>& blocks = *next.text;
  int number = 0;
  for (std::size_t place = 0; place < blocks.size(); ++place) {
    if (blocks[place].kind != Kind::heading || blocks[place].level != 2) {
      continue;
    }
    ++number;
    const std::string words = words_of(blocks[place]);
    ImGui::PushID(static_cast<int>(place));
    const std::string shown = as_list ? shortened(words, ImGui::GetContentRegionAvail().x) : words;
    if (ImGui::Selectable(shown.c_str(), false, as_list ? ImGuiSelectableFlags_DontClosePopups : 0)) {
      next.go_to = static_cast<int>(place);
      changed = true;
    }
    ImGui::PopID();
    remember_place(actions, fmt::format("help {}", number), Stop::Kind::button);
    if (shown != words) {
      tip(app.theme, words);
    }
  }
}

const char* hint_for_search(float room) {
  const char* const whole = tr("Search: type a word; Return goes to the next place");
  return ImGui::CalcTextSize(whole).x <= room ? whole : tr("Search");
}

// In `room` px, with how many places were found behind it.
void search_line(const App& app, Actions& actions, HelpDialog& next, bool& changed, float room) {
  const std::vector<HelpBlock>& blocks = *next.text;
  const std::string count = next.search.empty() ? ""
                            : next.found < 0
                                ? tr("not found")
                                : said("{} of {}", count_blocks_with(blocks, next.search, next.found + 1),
                                       count_blocks_with(blocks, next.search, static_cast<int>(blocks.size())));
  const std::string widest = said("{} of {}", 999, 999);
  const float field = room - ImGui::CalcTextSize(widest.c_str()).x - 2 * ImGui::GetStyle().ItemSpacing.x;
  ImGui::SetNextItemWidth(field);
  const bool entered = ImGui::IsKeyPressed(ImGuiKey_Enter) || ImGui::IsKeyPressed(ImGuiKey_KeyPadEnter);
  const bool typing = ImGui::GetIO().WantTextInput;
  if (ImGui::IsWindowAppearing() || (entered && typing)) {
    ImGui::SetKeyboardFocusHere();
  }
  const bool typed = ImGui::InputTextWithHint("##search", hint_for_search(field - 2 * ImGui::GetStyle().FramePadding.x),
                                              &next.search) &&
                     !ImGui::IsKeyPressed(ImGuiKey_Escape);
  remember_place(actions, "help search", Stop::Kind::field);
  if (ImGui::IsItemActive()) { // the arrows and page keys scroll, and don't take the typing elsewhere
    ImGuiContext& context = *ImGui::GetCurrentContext();
    context.ActiveIdUsingNavDirMask |= 1U << ImGuiDir_Up | 1U << ImGuiDir_Down;
    for (const int key : {ImGuiKey_PageUp, ImGuiKey_PageDown}) {
      context.ActiveIdUsingKeyInputMask |= ImU64{1} << static_cast<unsigned>(key);
    }
  }
  make_first_stop(actions);
  const bool step = entered && typing && !actions.dialog_appears && !next.search.empty();
  if (typed || step) {
    const int by = step && ImGui::GetIO().KeyShift ? -1 : 1;
    const int from = typed ? -1 : next.found;
    next.found = next.search.empty() ? -1 : next_block_with(blocks, next.search, from, by);
    next.go_to = next.found;
    changed = true;
  }
  ImGui::SameLine();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(count.c_str());
  tip(app.theme, tr("Return: the next place; Shift+Return: the one before"));
}

// The contents as a list to open, where large text leaves no room for them beside the text.
void contents_to_open(const App& app, Actions& actions, HelpDialog& next, bool& changed) {
  ImGui::SetNextItemWidth(-1);
  if (ImGui::BeginCombo("##contents", tr("Contents"))) {
    contents(app, actions, next, changed, false);
    ImGui::EndCombo();
  }
  remember_place(actions, "help contents", Stop::Kind::button);
}

} // namespace

void help_page(const App& app, Actions& actions, const HelpDialog& dialog) {
  HelpDialog next = dialog;
  bool changed = false;
  const float start = ImGui::GetCursorPosX();
  const float wide = ImGui::GetContentRegionAvail().x;
  const bool beside = wide > 40 * ImGui::GetFontSize();
  const float list = beside ? 0 : ImGui::CalcTextSize(tr("Contents")).x - room_in_closed_list(0);
  search_line(app, actions, next, changed, wide - list);
  if (!beside) {
    ImGui::SameLine(start + wide - list);
    contents_to_open(app, actions, next, changed);
  }
  // All that the window has, above the button.
  const float tall = std::max(4 * ImGui::GetTextLineHeight(), room_below_here() - ImGui::GetFrameHeightWithSpacing());
  if (beside) {
    ImGui::BeginChild("contents", ImVec2(15 * ImGui::GetFontSize(), tall), false, ImGuiWindowFlags_NavFlattened);
    contents(app, actions, next, changed, true);
    ImGui::EndChild();
    ImGui::SameLine();
  }
  ImGui::BeginChild("text", ImVec2(0, tall), true, ImGuiWindowFlags_NoNav);
  scroll_by_keys();
  for (std::size_t place = 0; place < next.text->size(); ++place) {
    const auto number = static_cast<int>(place);
    draw_block(app, (*next.text)[place], number == dialog.found, number == dialog.go_to);
  }
  if (actions.publish_places) {
    actions.places.push_back({fmt::format("help lines {:.0f}", tall / ImGui::GetTextLineHeight()), {}});
    actions.places.push_back({fmt::format("help scrolled {:.0f}", ImGui::GetScrollY()), {}});
  }
  ImGui::EndChild();
  if (dialog.go_to >= 0 && next.go_to == dialog.go_to) {
    next.go_to = -1;
    changed = true;
  }
  if (changed) {
    actions.push(SetDialog{next});
  }
  cancel_button(app, actions, tr("Close"));
}

Dialog help_dialog() {
  HelpDialog dialog;
  dialog.text = std::make_shared<const std::vector<HelpBlock>>(help_blocks(guide_text()));
  return dialog;
}

} // namespace punchwright::editor
