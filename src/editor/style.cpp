// The theme in ImGui's terms.
#include "editor/style.hpp"

#include "editor/widgets.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <imgui.h>
#include <imgui_freetype.h>
#include <string>

namespace punchwright::editor {

namespace {

// Latin with its extensions, every sign of the alphabet for lettering (Welsh, ẞ, accents that follow their letter, €),
// dashes and quotes, the arrows and shapes that the editor's own words use. A small set, since every sign costs time
// before the first frame.
constexpr std::array letters = std::to_array<ImWchar>(
    {0x20,   0x17f,  0x300,  0x303,  0x308,  0x308,  0x30a,  0x30a,  0x30c,  0x30c,  0x327,  0x327,
     0x1e80, 0x1e85, 0x1e9e, 0x1e9e, 0x1ef2, 0x1ef3, 0x2009, 0x2026, 0x202f, 0x2033, 0x2039, 0x203a,
     0x20ac, 0x20ac, 0x2190, 0x2195, 0x21b6, 0x21b7, 0x21c4, 0x21c5, 0x2212, 0x2212, 0x25a0, 0x25a1,
     0x25b2, 0x25b2, 0x25b8, 0x25b8, 0x25c6, 0x25c6, 0x25cf, 0x25cf, 0x25d0, 0x25d1, 0});
constexpr std::array small_letters = std::to_array<ImWchar>(
    {0x20, 0x17f, 0x1e80, 0x1e85, 0x1e9e, 0x1e9e, 0x1ef2, 0x1ef3, 0x2010, 0x2026, 0x2039, 0x203a, 0x20ac, 0x20ac, 0});
constexpr std::array<ImWchar, 5> heading_letters = {0x20, 0xff, 0x2010, 0x2026, 0};

ImFont* load(const char* file, float size, const ImWchar* range) {
  const std::string path = std::string(PUNCHWRIGHT_FONTS) + "/" + file;
  std::error_code ignored;
  ImFontConfig settings;
  settings.SizePixels = size;
  settings.OversampleH = 1;
  settings.PixelSnapH = true;
  if (!std::filesystem::exists(path, ignored)) {
    return ImGui::GetIO().Fonts->AddFontDefault(&settings);
  }
  return ImGui::GetIO().Fonts->AddFontFromFileTTF(path.c_str(), size, &settings, range);
}

} // namespace

bool is_loaded(unsigned code) {
  for (std::size_t range = 0; letters[range] != 0; range += 2) {
    if (code >= letters[range] && code <= letters[range + 1]) {
      return true;
    }
  }
  return false;
}

void load_type_faces(Theme& theme, float scale) {
  load_type_faces(theme, scale, 0);
}

float capital_height(const ImFont& face) {
  const ImFontGlyph* const letter = face.FindGlyph('H');
  return (letter->Y1 - letter->Y0) / face.FontSize;
}

void load_type_faces(Theme& theme, float scale, float large) {
  ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
  atlas.Clear();
  atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
  atlas.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
  atlas.Flags |= ImFontAtlasFlags_NoMouseCursors;
  theme.scale = scale;
  theme.regular = load("DejaVuSansCondensed.ttf", std::round(15 * scale), letters.data());
  theme.bold = load("DejaVuSansCondensed-Bold.ttf", std::round(15 * scale), heading_letters.data());
  theme.small = load("DejaVuSansCondensed.ttf", std::round(12 * scale), small_letters.data());
  theme.large = large > 0 ? load("DejaVuSansCondensed-Bold.ttf", std::round(large), small_letters.data()) : nullptr;
  ImGui::GetIO().FontDefault = theme.regular;
}

void dress(const Theme& theme) {
  ImGuiStyle style; // from scratch, so that a second dressing does not scale twice
  const float unit = theme.scale;
  const auto units = [unit](float x, float y) { return ImVec2(std::round(x * unit), std::round(y * unit)); };
  style.WindowPadding = units(12, 10);
  style.FramePadding = units(9, 5);
  style.ItemSpacing = units(8, 7);
  style.ItemInnerSpacing = units(6, 5);
  style.CellPadding = units(5, 3);
  style.IndentSpacing = 16 * unit;
  style.ScrollbarSize = 12 * unit;
  style.GrabMinSize = 12 * unit;
  style.WindowRounding = 0;
  style.ChildRounding = 6 * unit;
  style.FrameRounding = 5 * unit;
  style.PopupRounding = 7 * unit;
  style.ScrollbarRounding = 6 * unit;
  style.GrabRounding = 5 * unit;
  style.WindowBorderSize = 0;
  style.ChildBorderSize = 1;
  style.PopupBorderSize = 1;
  style.FrameBorderSize = 1;
  style.DisabledAlpha =
      1.0F; // what can't be used now stands in quiet text, which is legible: widgets.cpp, menu_entries.cpp
  style.AntiAliasedLinesUseTex = false;

  const auto set = [&style](ImGuiCol part, Colour colour, float opacity = 1.0F) {
    style.Colors[part] = tint(colour, opacity);
  };
  std::ranges::fill(style.Colors, tint(theme.panel));
  set(ImGuiCol_Text, theme.text);
  set(ImGuiCol_TextDisabled, theme.quiet_text);
  set(ImGuiCol_WindowBg, theme.panel);
  set(ImGuiCol_ChildBg, theme.panel, 0);
  set(ImGuiCol_PopupBg, theme.panel);
  set(ImGuiCol_Border, theme.line);
  set(ImGuiCol_BorderShadow, theme.line, 0);
  set(ImGuiCol_FrameBg, theme.field);
  set(ImGuiCol_FrameBgHovered, mixed(theme.field, theme.accent_soft, 0.5F));
  set(ImGuiCol_FrameBgActive, theme.field);
  set(ImGuiCol_MenuBarBg, theme.ground);
  set(ImGuiCol_ScrollbarBg, theme.panel, 0);
  set(ImGuiCol_ScrollbarGrab, mixed(theme.line, theme.text, 0.15F));
  set(ImGuiCol_ScrollbarGrabHovered, mixed(theme.line, theme.text, 0.3F));
  set(ImGuiCol_ScrollbarGrabActive, mixed(theme.line, theme.text, 0.4F));
  set(ImGuiCol_CheckMark, theme.accent);
  set(ImGuiCol_SliderGrab, theme.accent);
  set(ImGuiCol_SliderGrabActive, theme.accent);
  set(ImGuiCol_Button, theme.button);
  set(ImGuiCol_ButtonHovered, theme.button_hover);
  set(ImGuiCol_ButtonActive, mixed(theme.button_hover, theme.text, 0.12F));
  set(ImGuiCol_Header, theme.accent_soft);
  set(ImGuiCol_HeaderHovered, theme.accent_soft);
  set(ImGuiCol_HeaderActive, theme.accent_hover);
  set(ImGuiCol_Separator, theme.line);
  set(ImGuiCol_TextSelectedBg, theme.accent, 0.28F);
  set(ImGuiCol_NavHighlight, theme.accent);
  set(ImGuiCol_NavWindowingHighlight, theme.accent);
  set(ImGuiCol_NavWindowingDimBg, theme.shade, 0.2F);
  set(ImGuiCol_ModalWindowDimBg, theme.shade, 0.45F);
  set(ImGuiCol_TableHeaderBg, theme.button);
  set(ImGuiCol_TableBorderStrong, theme.line);
  set(ImGuiCol_TableBorderLight, theme.line);
  set(ImGuiCol_TableRowBg, theme.panel, 0);
  set(ImGuiCol_TableRowBgAlt, theme.button, 0.5F);
  set(ImGuiCol_TitleBg, theme.panel);
  set(ImGuiCol_TitleBgActive, theme.panel);
  ImGui::GetStyle() = style;
}

} // namespace punchwright::editor
