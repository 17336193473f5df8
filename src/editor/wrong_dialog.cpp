// The fabric to be marked, and beside it what may have been done and the way back.
#include "editor/dialog_parts.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::editor {
namespace {

struct ChangeButton {
  SeenChange change;
  const char* name; // for tests
  const char* words;
  char letter; // the key; 0: none
  const char* tip;
};

constexpr std::array of_stitch = {ChangeButton{SeenChange::other_yarn, "mark yarn", noted("Other yarn"), 'y',
                                               noted("Space does it too, and a click")},
                                  ChangeButton{SeenChange::dropped, "mark dropped", noted("Dropped"), 'd',
                                               noted("The stitch hangs loose or has run")},
                                  ChangeButton{SeenChange::not_looked_at, "mark unseen", noted("Not seen"), 'u',
                                               noted("What stands there doesn't count")}};
constexpr std::array of_row = {
    ChangeButton{SeenChange::row_main, "mark main", noted("All main"), 'm', noted("The cursor's row")},
    ChangeButton{SeenChange::row_contrast, "mark contrast", noted("All contrast"), 'c', noted("The cursor's row")},
    ChangeButton{SeenChange::row_missing, "mark missing", noted("Missing"), 'x',
                 noted("What lies above it sits a row lower")},
    ChangeButton{SeenChange::row_twice, "mark twice", noted("Twice"), 't', noted("It stands there twice")},
    ChangeButton{SeenChange::shift_left, "mark left", noted("← Shifted"), '<',
                 noted("The row and all above it, by a stitch")},
    ChangeButton{SeenChange::shift_right, "mark right", noted("Shifted →"), '>',
                 noted("The row and all above it, by a stitch")},
    ChangeButton{SeenChange::as_planned, "mark planned", noted("As planned"), 'p', noted("The cursor's row")},
    ChangeButton{SeenChange::all_as_planned, "mark none", noted("All as planned"), 0, noted("Takes all marks away")}};

bool letter_typed(char letter) {
  const auto& typed = ImGui::GetIO().InputQueueCharacters;
  return letter != 0 && std::ranges::any_of(typed, [letter](ImWchar code) {
           return code == static_cast<ImWchar>(letter) || code == static_cast<ImWchar>(letter - 32);
         });
}

// Goes on in this line where there is room, else in the next.
void flow(const char* next) {
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  const float wide = ImGui::CalcTextSize(next).x + 2 * ImGui::GetStyle().FramePadding.x;
  if (ImGui::GetItemRectMax().x + ImGui::GetStyle().ItemSpacing.x + wide <= right) {
    ImGui::SameLine();
  }
}

template <std::size_t count>
void change_buttons(const App& app, Actions& actions, SeenForm& form, const char* words,
                    const std::array<ChangeButton, count>& buttons) {
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(words);
  for (const ChangeButton& one : buttons) {
    flow(tr(one.words));
    const bool pressed = button(app.theme, actions, one.name, tr(one.words));
    tip(app.theme, one.letter != 0 ? fmt::format("{}  ({:c})", tr(one.tip), std::toupper(one.letter)) : tr(one.tip));
    if (pressed || (letter_typed(one.letter) && !ImGui::GetIO().WantTextInput)) {
      form = with_change(std::move(form), one.change);
    }
  }
}

bool move_by_keys(SeenForm& form) {
  const std::array steps = {std::tuple{ImGuiKey_LeftArrow, -1, 0}, std::tuple{ImGuiKey_RightArrow, 1, 0},
                            std::tuple{ImGuiKey_UpArrow, 0, 1},    std::tuple{ImGuiKey_DownArrow, 0, -1},
                            std::tuple{ImGuiKey_PageUp, 0, 10},    std::tuple{ImGuiKey_PageDown, 0, -10}};
  bool moved = false;
  for (const auto& [key, columns, rows] : steps) {
    if (ImGui::IsKeyPressed(key)) {
      form = with_cursor(std::move(form), columns, rows);
      moved = true;
    }
  }
  return moved;
}

struct Lattice { // px
  float left = 0;
  float low = 0;
  float wide = 1;
  float tall = 1;
  bool mirrored = false; // the knit side
  int columns = 1;
  [[nodiscard]] float x_of(int column) const {
    return std::round(left + wide * static_cast<float>(mirrored ? columns - 1 - column : column));
  }
  [[nodiscard]] float y_of(int row) const { return std::round(low - tall * static_cast<float>(row + 1)); }
};

// A dropped stitch is a ring on bare ground, one that wasn't looked at a question; what differs from the plan has a
// frame, and its row a mark at the side.
void stitch(const App& app, ImDrawList& list, const SeenForm& form, const Lattice& lattice, int column, int row) {
  const Theme& theme = app.theme;
  const SeenRow& here = form.rows[static_cast<std::size_t>(row)];
  const char mark = here.marks[static_cast<std::size_t>(column)];
  const auto& knitted = app.caches.rows.rows[static_cast<std::size_t>(here.planned)];
  const float x = lattice.x_of(column);
  const float y = lattice.y_of(row);
  const float right = x + std::max(1.0F, std::floor(lattice.wide) - (lattice.wide > 5 ? 1.0F : 0.0F));
  const float bottom = y + std::max(1.0F, std::floor(lattice.tall) - (lattice.tall > 5 ? 1.0F : 0.0F));
  const ImVec2 middle((x + right) / 2, (y + bottom) / 2);
  const float radius = std::min(right - x, bottom - y) / 2;
  if (mark == '.' || mark == '#') {
    // A row without contrast has none of its own: that of the band below or above would be a guess.
    const char key = mark == '#' && knitted.contrast != 0 ? knitted.contrast : knitted.main;
    Colour colour = seen_yarn(app, key);
    if (mark == '#' && knitted.contrast == 0) {
      colour = theme.text;
    }
    list.AddRectFilled({x, y}, {right, bottom}, ink(colour));
  } else if (mark == 'o') {
    list.AddRectFilled({x, y}, {right, bottom}, ink(theme.field));
    list.AddCircle(middle, radius * 0.7F, ink(theme.fault), 12, std::max(1.0F, radius * 0.3F));
  } else {
    list.AddRectFilled({x, y}, {right, bottom}, ink(theme.canvas));
    list.AddCircleFilled(middle, std::max(1.0F, radius * 0.25F), ink(theme.quiet_text), 8);
  }
}

// Over its neighbours, so that none covers a part of it.
void frame(const Theme& theme, ImDrawList& list, const Lattice& lattice, int column, int row) {
  const float x = lattice.x_of(column);
  const float y = lattice.y_of(row);
  list.AddRect({x - 1, y - 1}, {x + std::floor(lattice.wide), y + std::floor(lattice.tall)}, ink(theme.fault), 0, 0,
               std::max(1.0F, theme.scale));
}

// True where it was clicked into, and the cursor put there.
bool fabric(const App& app, Actions& actions, SeenForm& form, bool scroll, float wide, float high) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  ImGui::BeginChild("fabric", ImVec2(wide, high), true, ImGuiWindowFlags_NoNav | ImGuiWindowFlags_HorizontalScrollbar);
  const float label = ImGui::CalcTextSize("0000 ").x;
  const float room = ImGui::GetContentRegionAvail().x - label - ImGui::GetStyle().ScrollbarSize;
  Lattice lattice;
  lattice.columns = form.width();
  lattice.mirrored = form.face == Face::knit;
  const auto shape = static_cast<float>(app.work.design.gauge.row_mm() / app.work.design.gauge.stitch_mm());
  lattice.wide = std::clamp(room / static_cast<float>(form.width()), 5 * unit, 22 * unit);
  lattice.tall = std::max(4 * unit, lattice.wide * shape);
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const ImVec2 whole(label + lattice.wide * static_cast<float>(form.width()),
                     lattice.tall * static_cast<float>(form.height()));
  lattice.left = corner.x + label;
  lattice.low = corner.y + whole.y;
  ImGui::InvisibleButton("stitches", whole);
  remember_place(actions, "seen fabric");
  const bool clicked = ImGui::IsItemClicked(ImGuiMouseButton_Left);
  if (clicked) {
    const ImVec2 pointer = ImGui::GetIO().MousePos;
    const int across = static_cast<int>(std::floor((pointer.x - lattice.left) / lattice.wide));
    form.cursor = {std::clamp(lattice.mirrored ? form.width() - 1 - across : across, 0, form.width() - 1),
                   std::clamp(static_cast<int>((lattice.low - pointer.y) / lattice.tall), 0, form.height() - 1)};
  }
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float top = ImGui::GetWindowPos().y;
  for (int row = 0; row < form.height(); ++row) {
    const float y = lattice.y_of(row);
    if (y > top + high || y + lattice.tall < top) {
      continue;
    }
    for (int column = 0; column < form.width(); ++column) {
      stitch(app, list, form, lattice, column, row);
    }
    for (int column = 0; column < form.width(); ++column) {
      if (is_marked(form, column, row)) {
        frame(theme, list, lattice, column, row);
      }
    }
    if ((row + 1) % 5 == 0 || row == form.cursor.row || row == 0) {
      list.AddText(theme.small, theme.small->FontSize, {corner.x, y + (lattice.tall - theme.small->FontSize) / 2},
                   ink(row == form.cursor.row ? theme.accent : theme.quiet_text), std::to_string(row + 1).c_str());
    }
  }
  const float x = lattice.x_of(form.cursor.column);
  const float y = lattice.y_of(form.cursor.row);
  list.AddRect({x - 2, y - 2}, {x + lattice.wide + 1, y + lattice.tall + 1}, ink(theme.text), 0, 0, 2 * unit);
  list.AddRect({x - 3, y - 3}, {x + lattice.wide + 2, y + lattice.tall + 2}, ink(theme.field));
  if (scroll) {
    ImGui::SetScrollFromPosY(y + lattice.tall / 2 - top, 0.5F);
    ImGui::SetScrollFromPosX(x + lattice.wide / 2 - ImGui::GetWindowPos().x, 0.5F);
  }
  ImGui::EndChild();
  return clicked;
}

void lines(const std::string& words) {
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(words.c_str());
  ImGui::PopTextWrapPos();
}

void answer_lines(const App& app, Actions& actions, const WrongAnswer& answer) {
  if (!answer.trouble.empty()) {
    lines(answer.trouble);
    if (actions.publish_places) {
      actions.places.push_back({"trouble: " + answer.trouble, {}});
    }
    if (answer.tried == 0) {
      return;
    }
  }
  if (answer.as_planned) {
    return lines(tr("What you see is the fabric as planned, as far as it is marked."));
  }
  if (answer.explanations.empty()) {
    return lines(said("No slip in the steps explains what you see; {} were tried. Mark as not seen what you are not "
                      "sure of, and look again at the rows around the lowest fault.",
                      answer.tried));
  }
  lines(answer.explanations.size() == 1 ? tr("This explains what you see:")
                                        : tr("These explain what you see, the likeliest first:"));
  int number = 0;
  for (const Explained& told : answer.explanations) {
    ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
    ImGui::PushFont(app.theme.bold);
    for (const std::string& cause : told.causes) {
      lines(&cause == &told.causes.front() ? fmt::format("{}. {}", ++number, cause) : said("And: {}", cause));
    }
    ImGui::PopFont();
    lines(told.remedy);
    if (actions.publish_places) {
      actions.places.push_back({"explained: " + told.causes.front(), {}});
    }
  }
}

void answer_or_hint(const App& app, Actions& actions, const WrongDialog& dialog) {
  if (dialog.answer != nullptr) {
    if (actions.publish_places) {
      actions.places.push_back({"asked", {}});
    }
    return answer_lines(app, actions, *dialog.answer);
  }
  if (dialog.search != nullptr) {
    if (actions.publish_places) {
      actions.places.push_back({"searching", {}});
    }
    hint(app.theme, tr("Looking for the slips that give such a fabric. Where no single one does, pairs of them are "
                       "tried: about a second."));
    return hint(app.theme, tr("Another mark, or Stop searching, ends it."));
  }
  const int marked = marked_stitches(dialog.form);
  hint(app.theme, marked == 0
                      ? std::string(tr("The picture shows the fabric as it should be. Mark what you see otherwise: go "
                                       "to a stitch or a row, and choose below."))
                      : said_count(marked, "{} stitch marked. Then ask.", "{} stitches marked. Then ask."));
  hint(app.theme, tr("Red frames are what differs from the plan. A ring is a dropped stitch."));
}

// The answer, and below it what can be marked. With Ctrl the keys that move the cursor move it.
void side(const App& app, Actions& actions, const WrongDialog& dialog, SeenForm& form, float high) {
  ImGui::BeginChild("side", ImVec2(0, high), true);
  if (ImGui::GetIO().KeyCtrl) {
    scroll_by_keys();
  }
  answer_or_hint(app, actions, dialog);
  heading(app.theme, tr("What you see"));
  change_buttons(app, actions, form, tr("Stitch"), of_stitch);
  change_buttons(app, actions, form, tr("Row"), of_row);
  bool knit_side = form.face == Face::knit;
  if (check_box(actions, "seen knit side", tr("Seen from the knit side"), knit_side)) {
    form.face = knit_side ? Face::knit : Face::purl;
  }
  tip(app.theme, tr("Else from the purl side, as it hangs on the machine"));
  check_box(actions, "rest unseen", tr("Only what is marked was looked at"), form.rest_unseen);
  tip(app.theme, tr("Else all the rest is as planned"));
  int rows = form.height();
  const int most = std::max(rows, static_cast<int>(form.planned.size())); // one may stand there twice
  if (count_field({app, actions, "seen rows"}, tr("Rows knitted"), rows, 1, most)) {
    form = with_height(std::move(form), rows);
  }
  ImGui::EndChild();
}

} // namespace

void wrong_dialog(const App& app, Actions& actions, const WrongDialog& dialog) {
  if (dialog.form.rows.empty() || dialog.form.planned.size() > app.caches.rows.rows.size()) {
    hint(app.theme, tr("There is nothing to knit."));
    return close_button(app, actions);
  }
  WrongDialog next = dialog;
  SeenForm& form = next.form;
  const Theme& theme = app.theme;
  const ScreenPoint room = room_for_dialog(app);
  const bool typing = ImGui::GetIO().WantTextInput;
  const bool moved = !typing && !ImGui::GetIO().KeyCtrl && move_by_keys(form);
  if (!typing && ImGui::IsKeyPressed(ImGuiKey_Space)) {
    form = with_change(std::move(form), SeenChange::other_yarn);
  }
  const float below = 2 * ImGui::GetFrameHeightWithSpacing() + ImGui::GetStyle().ItemSpacing.y; // title and buttons
  const float high = std::max(4 * ImGui::GetTextLineHeight(), room.y - below);
  const float wide = std::floor(room.x * 0.56F);
  if (fabric(app, actions, form, moved || actions.dialog_appears, wide, high)) {
    const bool there = form.cursor == dialog.form.cursor; // a second click on the same stitch
    form = there ? with_change(std::move(form), SeenChange::other_yarn) : std::move(form);
  }
  ImGui::SameLine();
  side(app, actions, dialog, form, high);
  if (form.rows != dialog.form.rows || form.rest_unseen != dialog.form.rest_unseen) {
    next.answer = nullptr;
    next.search = nullptr;
  }

  if (form != dialog.form) {
    actions.push(SetDialog{next});
  }
  if (button(theme, actions, "ask", tr("What went wrong?"), Look::main)) {
    actions.push(AskWhatWentWrong{});
  }
  make_default(actions);
  make_first_stop(actions);
  ImGui::SameLine();
  if (dialog.search != nullptr) {
    if (button(theme, actions, "stop search", tr("Stop searching"))) {
      next.search = nullptr;
      actions.push(SetDialog{next});
    }
    ImGui::SameLine();
  }
  cancel_button(app, actions, tr("Close"));
}

} // namespace punchwright::editor
