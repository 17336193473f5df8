// Words and key of a menu's entry never meet and never leave it, however little room the window has.
#include "editor/menu_entries.hpp"
#include "support/builders.hpp"

#include <doctest/doctest.h>

using namespace punchwright;
using namespace punchwright::editor;

TEST_CASE("with room enough the keys stand in a column behind the widest words, and the menu is no wider than that") {
  const MenuLayout menu = menu_layout(300, 90, 1000, 8, 16);
  CHECK(menu.wide == 300 + 8 + 90 + 8 + 16);
  const EntryPlaces widest = entry_places(menu, 300, 90);
  CHECK_FALSE(widest.key_below);
  CHECK(widest.key_left == 308);
  CHECK(entry_places(menu, 40, 20).key_left == 308);
}

TEST_CASE("without that room a key ends at the right of its words, or stands below them where both don't fit") {
  const MenuLayout menu = menu_layout(300, 90, 350, 8, 16);
  CHECK(menu.wide == 350);
  CHECK(entry_places(menu, 300, 90).key_below);
  CHECK_FALSE(entry_places(menu, 200, 90).key_below);
  CHECK(entry_places(menu, 200, 90).key_left == 350 - 16 - 8 - 90);
  CHECK_FALSE(entry_places(menu, 300, 18).key_below);
}

TEST_CASE("in any room words and key keep apart, and out of the tick's place") {
  test::Dice dice(9);
  for (int time = 0; time < 5000; ++time) {
    CAPTURE(time);
    const auto words = static_cast<float>(20 + dice.throw_one(800));
    const auto keys = static_cast<float>(dice.throw_one(300));
    const auto room = static_cast<float>(340 + dice.throw_one(900));
    const MenuLayout menu = menu_layout(words, keys, room, 8, 16);
    CHECK(menu.wide <= room);
    const auto own = static_cast<float>(20 + dice.throw_one(static_cast<int>(words) - 19));
    const float key = keys > 0 ? static_cast<float>(1 + dice.throw_one(static_cast<int>(keys))) : 0;
    const EntryPlaces entry = entry_places(menu, own, key);
    CHECK(entry.words_room <= menu.wide - 8 - 16);
    CHECK(entry.key_left >= 0);
    CHECK(entry.key_left + key <= menu.wide - 8 - 16);
    if (key > 0 && !entry.key_below) {
      CHECK(own <= entry.words_room);
      CHECK(entry.words_room + 8 <= entry.key_left);
    }
  }
}
