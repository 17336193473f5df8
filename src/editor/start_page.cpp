// The empty start: a new repeat for each kind of machine, the demos as pictures, what was open last, any other file.
#include "design/words.hpp"
#include "editor/applying.hpp"
#include "editor/demos.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr double card_shape = 1.7; // width by height of a demo's picture

void machines(const App& app, Actions& actions) {
  heading(app.theme, tr("Begin a repeat for"));
  bool first = true;
  for (const Profile& profile : built_in_profiles()) {
    const std::string title = with_capital(tr(profile.title.c_str()));
    if (!first) {
      flow(ImGui::CalcTextSize(title.c_str()).x + 2 * ImGui::GetStyle().FramePadding.x);
    }
    if (button(app.theme, actions, ("start " + profile.name).c_str(), title.c_str())) {
      actions.push(BeginOnMachine{profile.name});
    }
    if (first) {
      make_first_stop(actions);
    }
    first = false;
  }
}

// A picture with its title below; true when pressed.
bool demo(const App& app, Actions& actions, const DesignCard& card, ImVec2 size) {
  const Theme& theme = app.theme;
  const float margin = 5 * theme.scale;
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  ImGui::PushID(card.path.c_str());
  const bool pressed = ImGui::Selectable("##demo", false, ImGuiSelectableFlags_DontClosePopups, size);
  ImGui::PopID();
  remember_place(actions, "demo " + card.path.stem().string(), Stop::Kind::button);
  const std::string yarns = said_count(static_cast<long>(card.yarns.size()), "{} yarn", "{} yarns");
  tip(theme, card.trouble.empty() ? said("{}: {} × {}, {}\nOpens as a copy", card.title,
                                         said_count(card.stitches, "{} stitch", "{} stitches"),
                                         said_count(card.rows, "{} row", "{} rows"), yarns)
                                  : card.trouble);
  const float words = ImGui::GetTextLineHeight() + 2 * theme.scale;
  const ScreenBox box{corner.x + margin, corner.y + margin, corner.x + size.x - margin,
                      corner.y + size.y - words - margin};
  draw_small_picture(theme, card.picture, box);
  const std::string title = shortened(card.title, size.x - 2 * margin);
  ImGui::GetWindowDrawList()->AddText({corner.x + margin, corner.y + size.y - words}, ink(theme.text), title.c_str());
  return pressed;
}

void demos(const App& app, Actions& actions, const std::vector<DesignCard>& cards) {
  if (cards.empty()) {
    return;
  }
  heading(app.theme, tr("Demos, opened as a copy"));
  const float least = 150 * app.theme.scale;
  const float gap = ImGui::GetStyle().ItemSpacing.x;
  const float room = ImGui::GetContentRegionAvail().x;
  const float across = std::max(1.0F, std::floor((room + gap) / (least + gap)));
  const float wide = std::floor((room + gap) / across - gap);
  const float tall = wide / static_cast<float>(card_shape) + ImGui::GetTextLineHeight();
  for (std::size_t place = 0; place < cards.size(); ++place) {
    if (place % static_cast<std::size_t>(across) != 0) {
      ImGui::SameLine();
    }
    if (demo(app, actions, cards[place], {wide, tall})) {
      actions.push(OpenCopy{cards[place].path});
    }
  }
}

void recent(const App& app, Actions& actions, const std::vector<DesignCard>& cards) {
  if (cards.empty()) {
    return;
  }
  const Theme& theme = app.theme;
  heading(theme, tr("Opened before"));
  for (std::size_t place = 0; place < cards.size(); ++place) {
    const DesignCard& card = cards[place];
    const std::string name = card.path.filename().string();
    const std::string folder = card.path.parent_path().string();
    const float remove = ImGui::CalcTextSize(tr("Remove")).x + 2 * ImGui::GetStyle().FramePadding.x;
    const float room = ImGui::GetContentRegionAvail().x - remove - ImGui::GetStyle().ItemSpacing.x;
    ImGui::PushID(static_cast<int>(place));
    const std::string shown = shortened(fmt::format("{}{}   {}", name, card.missing ? tr("  (missing)") : "", folder),
                                        room - 18 * theme.scale);
    if (button(theme, actions, fmt::format("recent {}", place + 1).c_str(), shown.c_str(), Look::quiet, 0,
               !card.missing)) {
      actions.push(OpenDropped{card.path});
    }
    tip(theme, card.missing ? said("{} is no longer there", card.path.string()) : card.path.string());
    ImGui::SameLine(ImGui::GetWindowContentRegionMax().x - remove);
    if (button(theme, actions, fmt::format("forget {}", place + 1).c_str(), tr("Remove"), Look::quiet)) {
      actions.push(ForgetRecent{card.path});
    }
    tip(theme, tr("From this list only; the file stays"));
    ImGui::PopID();
  }
}

} // namespace

ScreenBox box_of_small_picture(const SmallPicture& picture, const ScreenBox& box) {
  const auto columns = static_cast<float>(picture.columns);
  const auto rows = static_cast<float>(picture.rows);
  const float wide = std::min(box.width() / columns, box.height() / rows / picture.shape); // px a cell
  const float width = wide * columns;
  const float height = wide * picture.shape * rows;
  const float left = std::round(box.middle().x - width / 2);
  const float low = std::round(box.middle().y + height / 2);
  return {left, low - height, left + width, low};
}

void draw_small_picture(const Theme& theme, const SmallPicture& picture, const ScreenBox& box) {
  if (picture.columns == 0) {
    return;
  }
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ScreenBox there = box_of_small_picture(picture, box);
  const float wide = there.width() / static_cast<float>(picture.columns); // px a cell
  const float tall = there.height() / static_cast<float>(picture.rows);
  const float left = there.left;
  const float low = there.bottom;
  for (int row = 0; row < picture.rows; ++row) {
    const float bottom = std::round(low - static_cast<float>(row) * tall);
    const float top = std::round(low - static_cast<float>(row + 1) * tall);
    for (int from = 0; from < picture.columns;) { // runs of one colour in one piece
      int to = from + 1;
      while (to < picture.columns && picture.at(to, row) == picture.at(from, row)) {
        ++to;
      }
      list.AddRectFilled({std::round(left + static_cast<float>(from) * wide), top},
                         {std::round(left + static_cast<float>(to) * wide), bottom}, ink(picture.at(from, row)));
      from = to;
    }
  }
  list.AddRect({left - 1, std::round(there.top) - 1}, {std::round(there.right) + 1, low + 1}, ink(theme.line));
}

void start_page(const App& app, Actions& actions, const StartDialog& dialog) {
  const Theme& theme = app.theme;
  if (app.session.tone == Tone::trouble && !app.session.message.empty()) { // what went wrong before the page was there
    warning_lines(theme, app.session.message);
    remember_place(actions, "trouble at the start");
  }
  machines(app, actions);
  demos(app, actions, dialog.demos);
  recent(app, actions, dialog.recent);
  ImGui::Dummy(ImVec2(0, 8 * theme.scale));
  if (button(theme, actions, "start open", tr("Open a file…"))) {
    actions.run(Command::open);
  }
  tip(theme, tr("Choose a .repeat or .yoke file (Ctrl+O)"));
  flow(ImGui::CalcTextSize(tr("New yoke…")).x + 20 * theme.scale);
  if (button(theme, actions, "start yoke", tr("New yoke…"))) {
    actions.run(Command::new_yoke);
  }
  tip(theme, tr("A round yoke in pieces, from body measurements"));
  flow(ImGui::CalcTextSize(tr("The guide")).x + 20 * theme.scale);
  if (button(theme, actions, "start help", tr("The guide"))) {
    actions.run(Command::help);
  }
  tip(theme, tr("Job by job, with a search (F1)"));
  const bool blank = app.session.path.empty() && app.work.history.done() == 0;
  const char* const words = blank ? tr("A blank drawing") : tr("Back to the drawing");
  flow(ImGui::CalcTextSize(words).x + 20 * theme.scale);
  cancel_button(app, actions, words);
  tip(theme, tr("Escape"));
}

Dialog start_dialog(const App& app) {
  StartDialog dialog;
  std::error_code ignored;
  const fs::path program = fs::read_symlink("/proc/self/exe", ignored);
  for (const fs::path& path : demos_in(demos_folder(program))) {
    dialog.demos.push_back(design_card(path, card_shape));
  }
  for (const fs::path& path : app.settings.recent) {
    DesignCard card;
    card.path = path;
    card.missing = !fs::exists(path, ignored);
    dialog.recent.push_back(std::move(card));
  }
  return dialog;
}

} // namespace punchwright::editor
