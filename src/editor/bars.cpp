// Along the edges of the window: the menus and the status line.
#include "editor/closed_list.hpp"
#include "editor/menu_entries.hpp"
#include "editor/menu_titles.hpp"
#include "editor/panels.hpp"
#include "editor/status_words.hpp"
#include "editor/tab_commands.hpp"
#include "editor/widgets.hpp"
#include "machine/placement.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fmt/format.h>
#include <imgui_internal.h>
#include <span>
#include <string>
#include <vector>

namespace punchwright::editor {

namespace {

// Commands that begin a group of their own in a menu.
bool begins_group(Command command) {
  constexpr std::array firsts = {Command::show_yoke,      Command::export_yoke,     Command::save,
                                 Command::export_card,    Command::start_page,      Command::toggle_stitch,
                                 Command::type_lettering, Command::axis_left,       Command::make_symmetric,
                                 Command::shift_left,     Command::mirror_sideways, Command::insert_column,
                                 Command::move_row_up,    Command::resize,          Command::split_band,
                                 Command::lay_out,        Command::import_picture,  Command::next_finding,
                                 Command::other_face,     Command::show_settings,   Command::larger_text,
                                 Command::focus_drawing,  Command::step_list,       Command::what_went_wrong};
  return std::ranges::find(firsts, command) != firsts.end();
}

struct RecentFile {
  std::filesystem::path path;
  bool there = true;
  std::string words;
};

std::vector<RecentFile> recent_files(const App& app) {
  std::vector<RecentFile> files;
  for (const std::filesystem::path& path : app.settings.recent) {
    std::error_code ignored;
    const bool there = std::filesystem::exists(path, ignored);
    const std::string name = path.filename().string();
    files.push_back({path, there, there ? name : said("{}  (missing)", name)});
  }
  return files;
}

MenuLayout layout_of(const std::vector<RecentFile>& files) {
  float words = ImGui::CalcTextSize(tr("Take the missing ones off the list")).x;
  for (const RecentFile& file : files) {
    words = std::max(words, ImGui::CalcTextSize(file.words.c_str()).x);
  }
  return menu_layout_here(words, 0);
}

MenuLayout layout_of(Menu menu) {
  float words = menu == Menu::drawing ? width_of_menu_title(words_of(Menu::symmetry))
                : menu == Menu::file  ? width_of_menu_title(tr("Recent files"))
                                      : 0;
  float keys = 0;
  for (const CommandInfo& info : all_commands()) {
    if (info.menu == menu) {
      words = std::max(words, ImGui::CalcTextSize(tr(info.name)).x);
      keys = std::max(keys, ImGui::CalcTextSize(shown_keys(info.keys).c_str()).x);
    }
  }
  return menu_layout_here(words, keys);
}

// The files that were open last; those that are gone can't be chosen, but taken off the list.
void recent_menu(const App& app, Actions& actions) {
  const bool open = ImGui::BeginMenu(tr("Recent files"), !app.settings.recent.empty());
  remember_place(actions, "menu recent");
  if (!open) {
    return;
  }
  const std::vector<RecentFile> files = recent_files(app);
  const MenuLayout layout = layout_of(files);
  int number = 0;
  for (const RecentFile& file : files) {
    ImGui::PushID(number++);
    const std::string words = shortened_in_middle(file.words, layout.wide - layout.gap - layout.tick);
    if (menu_entry(app.theme, actions, layout, {fmt::format("menu recent {}", number), words, "", false, file.there})) {
      actions.push(OpenDropped{file.path});
    }
    ImGui::PopID();
    tip(app.theme, file.path.string());
  }
  ImGui::Separator();
  const bool gone = !std::ranges::all_of(files, &RecentFile::there);
  if (menu_entry(app.theme, actions, layout,
                 {"menu forget missing", tr("Take the missing ones off the list"), "", false, gone})) {
    actions.push(ForgetRecent{});
  }
  ImGui::EndMenu();
}

void menu_entries(const App& app, Actions& actions, Menu menu);

void menu_within(const App& app, Actions& actions, Menu menu) {
  const bool open = ImGui::BeginMenu(words_of(menu));
  remember_place(actions, fmt::format("menu {}", name_of(menu)));
  if (open) {
    menu_entries(app, actions, menu);
    ImGui::EndMenu();
  }
}

void menu_entries(const App& app, Actions& actions, Menu menu) {
  const MenuLayout layout = layout_of(menu);
  for (const CommandInfo& info : all_commands()) {
    if (info.menu != menu) {
      continue;
    }
    if (begins_group(info.command)) {
      ImGui::Separator();
    }
    if (info.command == Command::type_lettering) {
      menu_within(app, actions, Menu::symmetry);
    }
    const std::string reason = why_not(app, info.command);
    if (menu_entry(app.theme, actions, layout,
                   {fmt::format("menu {}", info.id), tr(info.name), shown_keys(info.keys), is_chosen(app, info.command),
                    reason.empty()})) {
      actions.run(info.command);
    }
    tip(app.theme, reason.empty() ? tr(info.tip) : reason);
    if (info.command == Command::open) {
      recent_menu(app, actions);
    }
  }
}

// The arrows go on from the menu that is open, and not from where they were in the bar the last time.
void arrows_begin_at(const char* title) {
  ImGuiWindow& bar = *ImGui::GetCurrentWindow();
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const ImRect box(corner, {corner.x + ImGui::CalcTextSize(title).x, corner.y + ImGui::GetFrameHeight()});
  bar.NavLastIds[ImGuiNavLayer_Menu] = bar.GetID(title);
  bar.NavRectRel[ImGuiNavLayer_Menu] = ImGui::WindowRectAbsToRel(&bar, box);
}

// Those whose titles have no room in the bar.
void more_menus(const App& app, Actions& actions, std::span<const Menu> menus, ImVec2 spacing) {
  if (menus.empty()) {
    return;
  }
  const char* const title = tr("More");
  if (ImGui::IsPopupOpen(title)) {
    arrows_begin_at(title);
  }
  ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, spacing);
  const bool open = ImGui::BeginMenu(title);
  ImGui::PopStyleVar();
  if (!open && ImGui::GetItemID() != 0 && ImGui::GetCurrentContext()->NavJustMovedToId == ImGui::GetItemID()) {
    ImGui::OpenPopup(title);
  }
  remember_place(actions, "menu more");
  if (!open) {
    return;
  }
  for (const Menu menu : menus) {
    menu_within(app, actions, menu);
  }
  ImGui::EndMenu();
}

} // namespace

void menu_bar(const App& app, Actions& actions) {
  if (!ImGui::BeginMainMenuBar()) {
    return;
  }
  constexpr std::array menus = {Menu::file,     Menu::edit, Menu::drawing, Menu::rows,
                                Menu::knitting, Menu::view, Menu::help};
  const ImVec2 usual = ImGui::GetStyle().ItemSpacing;
  std::array<float, menus.size()> widths{};
  std::ranges::transform(menus, widths.begin(), [](Menu menu) { return ImGui::CalcTextSize(words_of(menu)).x; });
  // Large text leaves less room between the titles, but never less than half a letter between two.
  const float letter = ImGui::CalcTextSize("n").x;
  const MenuTitles titles =
      titles_in_bar(widths, ImGui::CalcTextSize(tr("More")).x, ImGui::GetContentRegionAvail().x, letter / 4, usual.x);
  const ImVec2 spacing(titles.gap, usual.y);
  for (const Menu menu : std::span(menus).first(titles.in_bar)) {
    const char* const title = words_of(menu);
    if (app.view.open_menus && menu == Menu::file) {
      ImGui::OpenPopup(title);
    }
    if (ImGui::IsPopupOpen(title)) {
      arrows_begin_at(title);
    }
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, spacing);
    const bool open = ImGui::BeginMenu(title);
    ImGui::PopStyleVar();
    if (!open && ImGui::GetItemID() != 0 && ImGui::GetCurrentContext()->NavJustMovedToId == ImGui::GetItemID()) {
      ImGui::OpenPopup(title); // gone to by an arrow key: the next menu opens as the last one was
    }
    remember_place(actions, fmt::format("menu {}", name_of(menu)));
    if (!open) {
      continue;
    }
    menu_entries(app, actions, menu);
    ImGui::EndMenu();
  }
  more_menus(app, actions, std::span(menus).subspan(titles.in_bar), spacing);
  ImGui::EndMainMenuBar();
}

namespace {

std::string place_of_cursor(const App& app) {
  const Cell cursor = app.view.cursor;
  const Document& design = app.work.design;
  std::string yarn;
  const Band& band = design.bands[band_index_at(design, cursor.row)];
  const char key = design.grid.at(cursor.column, cursor.row) ? band.contrast.value_or(band.main) : band.main;
  const Yarn& knitted = yarn_of(design, key);
  yarn = knitted.name.empty() ? std::string(1, knitted.key) : knitted.name;
  return said("Row {}, column {}: {}", cursor.row + 1, cursor.column + 1, yarn);
}

std::string words_for_saving(bool has_file, bool saved) {
  return !has_file ? tr("not saved yet") : saved ? tr("saved") : tr("changes not saved");
}

// What the line says at its right end, from all of it to what is never left out: the drawing's symmetry, and that
// colours are seen otherwise than they were chosen.
std::array<std::string, 4> facts_of(const App& app) {
  if (app.yoke.shown) {
    const std::string saving = words_for_saving(!app.yoke.path.empty(), app.yoke.saved());
    const std::string name = yoke_name_of(app);
    return {fmt::format("{}      {}", name, saving), saving, saving, ""};
  }
  const Grid& grid = app.work.design.grid;
  const std::string place = place_of_cursor(app);
  const std::string saving = words_for_saving(!app.session.path.empty(), app.work.history.saved());
  const std::string_view symmetry = short_name_of(app.caches.frieze.group);
  const std::string sight = words_for_sight(app);
  if (!sight.empty()) {
    return {
        fmt::format("{}      {}      {} × {}, {}      {}", sight, place, grid.width(), grid.height(), symmetry, saving),
        fmt::format("{}      {}      {}      {}", sight, place, symmetry, saving),
        fmt::format("{}      {}      {}", sight, symmetry, saving), fmt::format("{}      {}", sight, symmetry)};
  }
  return {fmt::format("{}      {} × {}, {}      {}", place, grid.width(), grid.height(), symmetry, saving),
          fmt::format("{}      {}      {}", place, symmetry, saving), fmt::format("{}      {}", symmetry, saving),
          std::string(symmetry)};
}

// A message in as many lines as it needs, up to five or a third of the window; a tip has what is longer.
std::string message_in_lines(const std::string& message, float room) {
  std::string lines = in_lines(message, room);
  const int most = std::min(5, static_cast<int>(ImGui::GetIO().DisplaySize.y / 3 / ImGui::GetTextLineHeight()));
  std::size_t end = 0;
  for (int line = 0; line < most && end != std::string::npos; ++line) {
    end = lines.find('\n', end + (line > 0 ? 1 : 0));
  }
  return end == std::string::npos ? lines : lines.substr(0, end) + "…";
}

// Over the parts above it, and below whatever is open over them.
void lift_line() {
  const auto& popups = ImGui::GetCurrentContext()->OpenPopupStack;
  ImGuiWindow* const line = ImGui::GetCurrentWindow();
  if (popups.empty() || popups.front().Window == nullptr) {
    ImGui::BringWindowToDisplayFront(line);
  } else {
    ImGui::BringWindowToDisplayBehind(line, popups.front().Window);
  }
}

// Under the pointer: by a dialog or a menu, not by the parts that the line itself lies over.
bool covered_by_another() {
  const ImGuiWindow* const there = ImGui::GetCurrentContext()->HoveredWindow;
  return there != nullptr && (there->RootWindow->Flags & ImGuiWindowFlags_NoBringToFrontOnFocus) == 0;
}

} // namespace

void status_line(const App& app, Actions& actions, const ScreenBox& box) {
  const Theme& theme = app.theme;
  const float unit = theme.scale;
  const Colour colour = app.session.tone == Tone::trouble ? theme.fault
                        : app.session.tone == Tone::good  ? theme.good
                                                          : theme.text;
  const std::string message = app.session.message.empty() ? words_for_pointer(app) : app.session.message;
  const float needs = ImGui::CalcTextSize(message.c_str()).x;
  std::string right;
  for (const std::string& facts : facts_of(app)) { // as many facts as the message leaves room for
    right = facts;
    if (needs + ImGui::CalcTextSize(right.c_str()).x + 40 * unit <= box.width()) {
      break;
    }
  }
  const float wide = ImGui::CalcTextSize(right.c_str()).x;
  const float room = std::max(40 * unit, box.width() - wide - (right.empty() ? 24 : 40) * unit);
  // What changes under the pointer stays in one line, which would otherwise grow and shrink with every movement.
  const bool passing = app.session.message.empty();
  const std::string shown = passing ? shortened(message, room) : message_in_lines(message, room);
  const bool cut = shown.ends_with("…") && !message.ends_with("…");
  const auto more_lines = std::ranges::count(shown, '\n');
  const float top = box.top - static_cast<float>(more_lines) * ImGui::GetTextLineHeight();
  ImGui::PushStyleColor(ImGuiCol_WindowBg, tint(theme.ground));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(12 * unit, 6 * unit));
  begin_part(app, state_line_part, {box.left, top, box.right, box.bottom},
             ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoInputs);
  if (more_lines > 0) {
    lift_line();
  }
  ImGui::GetWindowDrawList()->AddLine({box.left, top + 0.5F}, {box.right, top + 0.5F}, ink(theme.line));
  ImGui::TextColored(tint(passing ? theme.quiet_text : colour), "%s", shown.c_str());
  if (actions.publish_places && !app.yoke.shown) { // "foot: no symmetry", with what of the message is read
    const std::string_view symmetry = short_name_of(app.caches.frieze.group);
    actions.places.push_back({right.find(symmetry) == std::string::npos ? "foot without symmetry" : "foot: symmetry",
                              {box.right - wide - 12 * unit, top, box.right, box.bottom}});
    actions.places.push_back({cut ? "foot cut" : "foot whole", {box.left, top, box.left + room, box.bottom}});
  }
  if (cut && !covered_by_another() && ImGui::IsMouseHoveringRect({box.left, top}, {box.left + room, box.bottom})) {
    tip_beside(theme, message, {});
  }
  ImGui::GetStateStorage()->SetFloat(ImGui::GetID(facts_begin),
                                     right.empty() ? box.right : box.right - wide - 26 * unit);
  if (!right.empty()) {
    ImGui::SetCursorScreenPos({box.right - wide - 12 * unit, box.top + 6 * unit});
    ImGui::TextUnformatted(right.c_str());
  }
  ImGui::End();
  ImGui::PopStyleVar();
  ImGui::PopStyleColor();
}

} // namespace punchwright::editor
