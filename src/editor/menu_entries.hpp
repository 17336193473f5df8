// The entries of menus and of the list of commands: words at the left, the key at the right. ImGui's own cut the key
// where large text in a narrow window leaves no room for both; here it stands below the words then.
#pragma once

#include "editor/actions.hpp"

#include <algorithm>
#include <string>

namespace punchwright::editor {

// px: how the entries of one menu stand in all of its width.
struct MenuLayout {
  float wide = 0;
  float tick = 0; // of that at the right end, for what is ticked
  float gap = 0;  // between words, key and tick
  float keys = 0; // the column of keys; 0: no room for one, and each key ends at the right
  // It opened where the pointer rests, as one within another does where the window has no room beside it: a click was
  // meant for what lay below, and chooses nothing until the pointer has moved.
  bool waits = false;
};

// For the widest words and the widest key.
[[nodiscard]] inline MenuLayout menu_layout(float words, float keys, float room, float gap, float tick) {
  const float wished = words + (keys > 0 ? gap + keys : 0) + gap + tick;
  return wished <= room ? MenuLayout{wished, tick, gap, keys, false} : MenuLayout{room, tick, gap, 0, false};
}

// px from the entry's left.
struct EntryPlaces {
  float words_room = 0; // they go on in further lines where they are wider
  float key_left = 0;
  bool key_below = false; // in a line of its own
};

[[nodiscard]] inline EntryPlaces entry_places(const MenuLayout& menu, float words, float key) {
  const float right = menu.wide - menu.gap - menu.tick;
  const float key_left = right - std::max(menu.keys, key);
  const bool below = key > 0 && words > key_left - menu.gap;
  return {below || key == 0 ? right : key_left - menu.gap, key_left, below};
}

struct MenuEntry {
  std::string place; // its name, for tests
  std::string words;
  std::string key;
  bool ticked = false;
  bool usable = true; // else in quiet text
};

// Of the menu that is being drawn, with as much room as the window has.
[[nodiscard]] MenuLayout menu_layout_here(float words, float keys);
// px: that of a menu within a menu, as wide as the words of an entry.
[[nodiscard]] float width_of_menu_title(const char* words);
// The words in lines, and the key, from that corner on.
void write_entry(const Theme& theme, Actions& actions, const MenuLayout& layout, const MenuEntry& entry,
                 ScreenPoint corner);
[[nodiscard]] float height_of_entry(const MenuLayout& layout, const MenuEntry& entry);
// True where it is chosen.
[[nodiscard]] bool menu_entry(const Theme& theme, Actions& actions, const MenuLayout& layout, const MenuEntry& entry);

} // namespace punchwright::editor
