// The dark colours, and which text stands on what.
#include "editor/theme.hpp"

namespace punchwright::editor {

Palette dark_palette() {
  Palette dark;
  dark.ground = {0x1b, 0x1f, 0x23};
  dark.panel = {0x23, 0x28, 0x2d};
  dark.field = {0x17, 0x1a, 0x1e};
  dark.line = {0x42, 0x4a, 0x52};
  dark.text = {0xe9, 0xe6, 0xdf};
  dark.quiet_text = {0xb2, 0xb4, 0xb2};
  dark.accent = {0x72, 0xcd, 0xd1};
  dark.accent_soft = {0x1d, 0x43, 0x48};
  dark.accent_hover = {0x21, 0x4b, 0x51};
  dark.button = {0x33, 0x3a, 0x41};
  dark.button_hover = {0x3e, 0x46, 0x4e};
  dark.on_accent = {0x10, 0x18, 0x1c};
  dark.fault = {0xff, 0x9a, 0x8c};
  dark.warning = {0xf0, 0xb9, 0x57};
  dark.note = {0x9c, 0xc2, 0xf2};
  dark.good = {0x86, 0xd3, 0x9b};
  dark.canvas = {0x2d, 0x32, 0x37};
  dark.shade = {0x00, 0x00, 0x00};
  dark.strip = {0x4d, 0x42, 0x1e};
  return dark;
}

std::vector<TextPair> text_pairs(const Palette& of) {
  const Colour main_hover = mixed(of.accent, of.text, 0.25F);
  return {{"text on ground", of.text, of.ground},
          {"text on panel", of.text, of.panel},
          {"text in a field", of.text, of.field},
          {"text in a field under the pointer", of.text, mixed(of.field, of.accent_soft, 0.5F)},
          {"selected text in a field", of.text, mixed(of.field, of.accent, 0.28F)},
          {"text on a button", of.text, of.button},
          {"text on a button under the pointer", of.text, of.button_hover},
          {"text on a pressed button", of.text, mixed(of.button_hover, of.text, 0.12F)},
          {"text of a chosen entry", of.text, of.accent_soft},
          {"text of a pressed entry", of.text, of.accent_hover},
          {"text on the canvas", of.text, of.canvas},
          {"text on an inserted row", of.text, of.strip},
          {"quiet text on ground", of.quiet_text, of.ground},
          {"quiet text on panel", of.quiet_text, of.panel},
          {"quiet text in a field", of.quiet_text, of.field},
          {"quiet text on the canvas", of.quiet_text, of.canvas},
          {"quiet text of a chosen entry", of.quiet_text, of.accent_soft},
          {"quiet text of a pressed entry", of.quiet_text, of.accent_hover},
          {"fault in a chosen entry", of.fault, of.accent_soft},
          {"fault in a pressed entry", of.fault, of.accent_hover},
          {"warning in a chosen entry", of.warning, of.accent_soft},
          {"warning in a pressed entry", of.warning, of.accent_hover},
          {"note in a chosen entry", of.note, of.accent_soft},
          {"note in a pressed entry", of.note, of.accent_hover},
          {"chosen button", of.accent, of.accent_soft},
          {"chosen button under the pointer", of.accent, of.accent_hover},
          {"key or number on panel", of.accent, of.panel},
          {"key or number on ground", of.accent, of.ground},
          {"number on the canvas", of.accent, of.canvas},
          {"main button", of.on_accent, of.accent},
          {"main button under the pointer", of.on_accent, main_hover},
          {"pressed main button", of.on_accent, mixed(main_hover, of.text, 0.12F)},
          {"needle on a fault", of.on_accent, of.fault},
          {"needle on a warning", of.on_accent, of.warning},
          {"needle on a note", of.on_accent, of.note},
          {"fault on panel", of.fault, of.panel},
          {"fault on ground", of.fault, of.ground},
          {"warning on panel", of.warning, of.panel},
          {"note on panel", of.note, of.panel},
          {"good on panel", of.good, of.panel},
          {"good on ground", of.good, of.ground}};
}

std::vector<TextPair> sign_pairs(const Palette& of) {
  return {{"sign of a fault", of.fault, of.panel},
          {"sign of a warning", of.warning, of.panel},
          {"sign of a note", of.note, of.panel},
          {"where the keys are", of.accent, of.panel},
          {"where the keys are, on ground", of.accent, of.ground},
          {"the repeat's edge", of.accent, of.canvas},
          {"lines that are asked for, over the piece", of.accent, of.field},
          {"line beside the chosen", of.accent, of.accent_soft}};
}

} // namespace punchwright::editor
