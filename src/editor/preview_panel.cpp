// The print preview: the writers' own pages, turned over with keys, and beside them what they depend on.
#include "editor/card_fields.hpp"
#include "editor/choice_field.hpp"
#include "editor/closed_list.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/preview.hpp"
#include "editor/preview_sheets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <imgui_internal.h>

namespace punchwright::editor {

namespace {

constexpr const char* page_part = "page";

struct PageAt { // what of the app the parts need
  const App& app;
  Actions& actions;
  const PreviewView& view;
  const PreviewCache& cache;

  [[nodiscard]] bool has_page() const { return view.page < cache.count(); }
  [[nodiscard]] const Sheet& sheet() const { return cache.pages[static_cast<std::size_t>(view.page)]; }
  [[nodiscard]] ScreenPoint room() const { return {app.view.preview_box.width(), app.view.preview_box.height()}; }
  void turn_to(int page) const {
    const PreviewView next = turned_to(view, page, cache.count());
    if (next.page != view.page) {
      actions.push(SetPreview{next});
    }
  }
  void scroll(ScreenPoint by) const {
    if (has_page()) {
      actions.push(SetPreview{scrolled(view, sheet().width, sheet().height, room(), by, cache.count())});
    }
  }
  void zoom(double factor, ScreenPoint about) const {
    if (has_page()) {
      actions.push(SetPreview{zoomed(view, sheet().width, sheet().height, room(), factor, about)});
    }
  }
  void zoom_to(PageZoom zoom) const {
    PreviewView next = view;
    next.zoom = zoom;
    next.corner = {};
    actions.push(SetPreview{next});
  }
};

void choose(const PageAt& at, SheetKind kind) {
  PreviewView next = at.view;
  next.kind = kind;
  next.page = 0;
  next.corner = {};
  at.actions.push(SetPreview{next});
}

const char* why_no_sheet(SheetKind kind) {
  return kind == SheetKind::card
             ? tr("This machine reads no card. The needle chart says which needles to bring forward in each row.")
             : tr("This machine reads no card: there is no blank to measure and no swatch to knit");
}

void choose_sheet(const PageAt& at) {
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  bool first = true;
  for (const SheetKindInfo& info : sheet_kinds) {
    const float wide = ImGui::CalcTextSize(tr(info.name)).x + 2 * ImGui::GetStyle().FramePadding.x;
    if (!first && ImGui::GetItemRectMax().x + wide + 4 * at.app.theme.scale <= right) {
      ImGui::SameLine(0, 4 * at.app.theme.scale);
    }
    first = false;
    const std::string name = std::string("sheet ") + info.id;
    const bool there = has_sheet(at.app.work.profile, info.kind);
    if (button(at.app.theme, at.actions, name.c_str(), tr(info.name),
               info.kind == at.view.kind ? Look::chosen : Look::plain, 0, there)) {
      choose(at, info.kind);
    }
    if (!there) {
      tip(at.app.theme, why_no_sheet(info.kind));
    }
  }
}

// The same in one line, where large text leaves little room beside the page.
void sheet_list(const PageAt& at, float wide) {
  const auto present = std::ranges::find(sheet_kinds, at.view.kind, &SheetKindInfo::kind);
  ImGui::SetNextItemWidth(wide);
  if (ImGui::BeginCombo("##sheets", shortened(tr(present->name), room_in_closed_list(wide)).c_str())) {
    for (const SheetKindInfo& info : sheet_kinds) {
      if (!has_sheet(at.app.work.profile, info.kind)) {
        ImGui::TextColored(tint(at.app.theme.quiet_text), "%s", tr(info.name));
        tip(at.app.theme, why_no_sheet(info.kind));
        continue;
      }
      if (list_entry(tr(info.name), info.kind == at.view.kind)) {
        choose(at, info.kind);
      }
      remember_place(at.actions, std::string("sheet ") + info.id);
    }
    ImGui::EndCombo();
  }
  remember_place(at.actions, "sheets");
}

bool typed(char letter) {
  for (const ImWchar given : ImGui::GetIO().InputQueueCharacters) {
    if (given == static_cast<ImWchar>(letter)) {
      return true;
    }
  }
  return false;
}

// Page keys turn pages from anywhere but a field; arrows, Home and End only where the page has the keys, since the
// things beside it are walked through with them.
void use_keys(const PageAt& at, bool page_has_keys) {
  if (ImGui::GetIO().WantTextInput || ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId) ||
      ImGui::GetCurrentContext()->OpenPopupStack.Size > 1) {
    return;
  }
  const float step = 60 * at.app.theme.scale;
  const ScreenPoint middle{at.room().x / 2, at.room().y / 2};
  const auto pressed = [](ImGuiKey key) { return ImGui::IsKeyPressed(key); };
  if (pressed(ImGuiKey_PageDown) || (page_has_keys && pressed(ImGuiKey_RightArrow))) {
    at.turn_to(at.view.page + 1);
  } else if (pressed(ImGuiKey_PageUp) || (page_has_keys && pressed(ImGuiKey_LeftArrow))) {
    at.turn_to(at.view.page - 1);
  } else if (page_has_keys && pressed(ImGuiKey_Home)) {
    at.turn_to(0);
  } else if (page_has_keys && pressed(ImGuiKey_End)) {
    at.turn_to(at.cache.count() - 1);
  } else if (page_has_keys && pressed(ImGuiKey_DownArrow)) {
    at.scroll({0, step});
  } else if (page_has_keys && pressed(ImGuiKey_UpArrow)) {
    at.scroll({0, -step});
  } else if (typed('+') || typed('=')) {
    at.zoom(1.25, middle);
  } else if (typed('-')) {
    at.zoom(0.8, middle);
  } else if (typed('0')) {
    at.zoom_to(PageZoom::whole);
  } else if (typed('w') || typed('W')) {
    at.zoom_to(PageZoom::width);
  }
}

// The wheel moves the page and turns it at its ends; with Ctrl it zooms.
void use_mouse(const PageAt& at, const ScreenBox& room) {
  const ImGuiIO& io = ImGui::GetIO();
  if (ImGui::IsItemHovered() && io.MouseWheel != 0) {
    if (io.KeyCtrl) {
      at.zoom(std::pow(1.18, io.MouseWheel), {io.MousePos.x - room.left, io.MousePos.y - room.top});
    } else {
      at.scroll({0, -io.MouseWheel * 80 * at.app.theme.scale});
    }
  } else if (const auto way = way_of_frame()) { // dragging moves, and never turns
    if (at.has_page()) {
      PreviewView next = at.view;
      const PageSight before = sight_of(at.sheet().width, at.sheet().height, at.room(), next);
      next.corner = {before.corner.x - way->x / before.px_per_mm, before.corner.y - way->y / before.px_per_mm};
      at.actions.push(SetPreview{next});
    }
  }
}

void show_page(const PageAt& at, const ScreenBox& room) {
  const Theme& theme = at.app.theme;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  list.AddRectFilled({room.left, room.top}, {room.right, room.bottom}, ink(theme.canvas));
  if (!at.has_page()) {
    ImGui::SetCursorScreenPos({room.left + 16 * theme.scale, room.top + 16 * theme.scale});
    ImGui::PushTextWrapPos(room.width() - 16 * theme.scale);
    ImGui::TextUnformatted(at.cache.trouble.c_str());
    ImGui::PopTextWrapPos();
    return;
  }
  if (at.cache.texture == 0 || !at.cache.seen) {
    return;
  }
  const PageSight& seen = *at.cache.seen;
  const ImVec2 low{room.left + static_cast<float>(seen.left), room.top + static_cast<float>(seen.top)};
  const ImVec2 high{low.x + static_cast<float>(seen.width), low.y + static_cast<float>(seen.height)};
  const float shade = 2 * theme.scale;
  list.AddRectFilled({low.x + shade, low.y + shade}, {high.x + shade, high.y + shade}, ink(theme.text, 0.25F));
  // Dear ImGui carries OpenGL's texture numbers as pointers.
  // NOLINTNEXTLINE(performance-no-int-to-ptr)
  list.AddImage(reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(at.cache.texture)), low, high);
  list.AddRect(low, high, ink(theme.quiet_text, 0.6F));
}

void page_area(const PageAt& at, Placed& placed, float wide, float tall) {
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
  ImGui::BeginChild(page_part, ImVec2(wide, tall), false,
                    ImGuiWindowFlags_NoNavInputs | ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoScrollbar);
  const ImVec2 corner = ImGui::GetWindowPos();
  const ScreenBox room{std::floor(corner.x), std::floor(corner.y), std::floor(corner.x + wide),
                       std::floor(corner.y + tall)};
  placed.preview = room;
  show_page(at, room);
  ImGui::SetCursorScreenPos({room.left, room.top});
  ImGui::InvisibleButton("sheet", {room.width(), room.height()});
  remember_place(at.actions, "page");
  make_first_stop(at.actions);
  use_mouse(at, room);
  const bool has_keys = ImGui::GetCurrentContext()->NavWindow == ImGui::GetCurrentWindow();
  if (has_keys && keys_show_their_place()) {
    ImGui::GetWindowDrawList()->AddRect({room.left + 1, room.top + 1}, {room.right - 1, room.bottom - 1},
                                        ink(at.app.theme.accent), 0, 0, 2 * at.app.theme.scale);
  }
  ImGui::EndChild();
  ImGui::PopStyleVar();
  use_keys(at, has_keys);
}

std::string number_of_page(const PageAt& at, bool in_full) {
  const int pages = at.cache.count();
  return pages == 0 ? tr("No page")
         : in_full  ? said("Page {} of {}", at.view.page + 1, pages)
                    : said("{} of {}", at.view.page + 1, pages);
}

// px: of the line below, with its short words.
float width_of_page_line(const PageAt& at) {
  const ImGuiStyle& style = ImGui::GetStyle();
  const float words = ImGui::CalcTextSize(number_of_page(at, false).c_str()).x + ImGui::CalcTextSize(tr("Whole")).x +
                      ImGui::CalcTextSize(tr("Width")).x;
  return words + 2 * ImGui::GetFrameHeight() + 4 * style.FramePadding.x + 2 * style.ItemSpacing.x +
         2 * 4 * at.app.theme.scale;
}

void page_line(const PageAt& at, bool in_full) {
  const Theme& theme = at.app.theme;
  const int pages = at.cache.count();
  if (button(theme, at.actions, "page before", "←", Look::plain, ImGui::GetFrameHeight(), at.view.page > 0)) {
    at.turn_to(at.view.page - 1);
  }
  tip(theme, tr("The page before (Page Up)"));
  ImGui::SameLine(0, 4 * theme.scale);
  if (button(theme, at.actions, "page after", "→", Look::plain, ImGui::GetFrameHeight(), at.view.page + 1 < pages)) {
    at.turn_to(at.view.page + 1);
  }
  tip(theme, tr("The next page (Page Down)"));
  ImGui::SameLine();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(number_of_page(at, in_full).c_str());
  remember_place(at.actions, fmt::format("page {} of {}", pages == 0 ? 0 : at.view.page + 1, pages));
  ImGui::SameLine();
  const auto zoom = [&](const char* name, const char* words, const char* about, PageZoom meant) {
    if (button(theme, at.actions, name, words, at.view.zoom == meant ? Look::chosen : Look::quiet)) {
      at.zoom_to(meant);
    }
    tip(theme, about);
  };
  const float gap = 4 * theme.scale;
  const float both = ImGui::CalcTextSize(tr("Whole page")).x + ImGui::CalcTextSize(tr("Page width")).x + gap +
                     4 * ImGui::GetStyle().FramePadding.x;
  const bool short_words = both > ImGui::GetContentRegionAvail().x; // large text
  zoom("page whole", short_words ? tr("Whole") : tr("Whole page"), tr("All of the page (0)"), PageZoom::whole);
  ImGui::SameLine(0, gap);
  zoom("page width", short_words ? tr("Width") : tr("Page width"), tr("As wide as there is room (W)"), PageZoom::width);
}

void which_cards(const PageAt& at) {
  if (at.cache.cards < 2) {
    return;
  }
  const Theme& theme = at.app.theme;
  label(theme, tr("Cards"));
  const std::string shown =
      at.view.only_card ? said("card {} alone", *at.view.only_card) : said("all {}", at.cache.cards);
  PreviewView next = at.view;
  if (ImGui::BeginCombo("##cards", shown.c_str())) {
    for (int card = 0; card <= at.cache.cards; ++card) {
      const std::string words = card == 0 ? said("all {}", at.cache.cards) : said("card {} alone", card);
      if (list_entry(words.c_str(), at.view.only_card.value_or(0) == card)) {
        next.only_card = card == 0 ? std::nullopt : std::optional<int>(card);
        next.page = 0;
        at.actions.push(SetPreview{next});
      }
      remember_place(at.actions, fmt::format("cards {}", card));
    }
    ImGui::EndCombo();
  }
  remember_place(at.actions, "cards");
}

void settings_beside(const PageAt& at) {
  const App& app = at.app;
  const bool of_card = at.view.kind == SheetKind::card;
  if (at.view.kind != SheetKind::pattern) { // a picture as large as it needs
    paper_field(app, at.actions);
  }
  if (at.has_page()) {
    hint(app.theme, app.settings.lengths == LengthUnit::inches
                        ? size_text(at.sheet().width, at.sheet().height, LengthUnit::inches)
                        : fmt::format("{:.0f} × {:.0f} mm", at.sheet().width, at.sheet().height));
  }
  if (of_card && app.work.profile.card) {
    loop_field(app, at.actions);
    which_cards(at);
  }
  if (at.view.kind == SheetKind::chart) {
    PreviewView next = at.view;
    if (check_box(at.actions, "stay back", tr("List the needles that stay\nback, where they are fewer"),
                  next.chart.stay_back_where_fewer)) {
      at.actions.push(SetPreview{next});
    }
  }
  ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
  if (button(app.theme, at.actions, "export shown", tr("Export this sheet…"), Look::main, 0, at.has_page())) {
    at.actions.push(ExportShown{});
  }
  tip(app.theme, tr("What is shown here, as a file"));
  command_button(app, at.actions, Command::export_everything, tr("Export everything…"));
  if (of_card && app.work.profile.card) {
    correction_fields(app, at.actions);
  }
  ImGui::Dummy(ImVec2(0, 4 * app.theme.scale));
  if (button(app.theme, at.actions, "close", tr("Close")) || escape_pressed()) {
    at.actions.push(SetDialog{NoDialog{}});
  }
  tip(app.theme, tr("Back to the drawing (Escape)"));
}

} // namespace

namespace {

// Large text in a small window: the page has all of the room below one line, and what else there is comes below it, by
// scrolling.
void page_alone(const PageAt& at, Placed& placed, float height) {
  const float beside = ImGui::GetContentRegionAvail().x - width_of_page_line(at) - ImGui::GetStyle().ItemSpacing.x;
  sheet_list(at, std::clamp(beside, 2 * ImGui::GetFrameHeight(), 150 * at.app.theme.scale));
  ImGui::SameLine();
  page_line(at, false);
  const float tall = std::floor(height - ImGui::GetFrameHeightWithSpacing());
  ImGui::BeginChild("below", ImVec2(0, tall), false, ImGuiWindowFlags_NavFlattened);
  page_area(at, placed, std::floor(ImGui::GetContentRegionAvail().x), tall);
  settings_beside(at);
  ImGui::EndChild();
}

} // namespace

void preview_dialog(const App& app, Actions& actions, Placed& placed) {
  const PageAt at{app, actions, app.view.preview, app.caches.preview};
  const float unit = app.theme.scale;
  const ScreenPoint all = room_for_dialog(app);
  const float wide = ImGui::GetContentRegionAvail().x;
  if (wide < 640 * unit || all.y < 320 * unit) {
    return page_alone(at, placed, all.y);
  }
  choose_sheet(at);
  const float used = ImGui::GetCursorPosY() - ImGui::GetStyle().WindowPadding.y;
  const float beside = std::min(300 * unit, wide * 0.45F);
  const float gap = 12 * unit;
  const float tall = std::max(60 * unit, std::floor(all.y - used - ImGui::GetFrameHeightWithSpacing()));
  const ImVec2 corner = ImGui::GetCursorPos();
  page_area(at, placed, std::floor(wide - beside - gap), tall);
  page_line(at, true);
  ImGui::SetCursorPos({corner.x + std::floor(wide - beside), corner.y});
  ImGui::BeginChild("beside", ImVec2(beside, tall + ImGui::GetFrameHeightWithSpacing()), false,
                    ImGuiWindowFlags_NavFlattened);
  settings_beside(at);
  ImGui::EndChild();
}

} // namespace punchwright::editor
