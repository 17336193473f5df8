// The queue between the window system and a frame, and what keys mean.
#include "editor/commands.hpp"
#include "editor/input_queue.hpp"
#include "editor/key_names.hpp"

#include <GLFW/glfw3.h>
#include <doctest/doctest.h>
#include <set>

using namespace punchwright::editor;

TEST_CASE("a frame sees one change at most, so that no short tap is lost") {
  InputQueue queue;
  for (int tap = 0; tap < 20; ++tap) {
    queue.push(KeyEvent{"right", true, false, {}});
    queue.push(KeyEvent{"right", false, false, {}});
  }
  int frames = 0;
  int presses = 0;
  while (!queue.empty()) {
    const auto portion = queue.take_portion();
    REQUIRE(portion.size() == 1);
    presses += portion[0].key.down ? 1 : 0;
    ++frames;
  }
  CHECK(frames == 40);
  CHECK(presses == 20);
}

TEST_CASE("a button goes down where the pointer was, not where it has gone since") {
  InputQueue queue;
  queue.push(PointerEvent{{1, 1}});
  queue.push(PointerEvent{{2, 2}});
  queue.push(ButtonEvent{0, true});
  queue.push(PointerEvent{{50, 50}});
  queue.push(ButtonEvent{0, false});
  const auto press = queue.take_portion();
  REQUIRE(press.size() == 3);
  CHECK(press[1].pointer.at == ScreenPoint{2, 2});
  CHECK(press[2].kind == InputEvent::Kind::button);
  const auto release = queue.take_portion();
  REQUIRE(release.size() == 2);
  CHECK(release[0].pointer.at == ScreenPoint{50, 50});
  CHECK_FALSE(release[1].button.down);
  CHECK(queue.take_portion().empty());
}

TEST_CASE("keys find their commands by what they say, with the modifiers that the menus show") {
  const auto command = [](const char* name, bool control = false, bool shift = false) {
    return command_for(KeyEvent{name, true, false, Modifiers{control, shift, false}});
  };
  CHECK(command("z", true) == Command::undo);
  CHECK(command("y", true) == Command::redo);
  CHECK(command("z", true, true) == Command::redo);
  CHECK(command("s", true) == Command::save);
  CHECK(command("s", true, true) == Command::save_as);
  CHECK_FALSE(command("s").has_value());
  CHECK(command("x") == Command::toggle_stitch);
  CHECK(command("space") == Command::toggle_stitch);
  CHECK(command("n") == Command::next_finding);
  CHECK(command("n", false, true) == Command::previous_finding);
  CHECK(command("=", false, true) == Command::zoom_in); // where + is shift and =
  CHECK(command("+") == Command::zoom_in);
  CHECK(command("keypad +") == Command::zoom_in);
  CHECK(command("+", true) == Command::larger_text);
  CHECK(command("f1") == Command::help);
  CHECK_FALSE(command_for(KeyEvent{"z", false, false, Modifiers{true, false, false}}).has_value());
}

TEST_CASE("no two commands have the same key or the same name for scripts") {
  std::set<std::string> keys;
  std::set<std::string> ids;
  for (const CommandInfo& info : all_commands()) {
    CAPTURE(info.name);
    CHECK(ids.insert(info.id).second);
    CHECK((std::string(info.keys).empty() || keys.insert(info.keys).second));
    CHECK(info_of(info.command).id == info.id);
  }
}

TEST_CASE("a field that is typed in keeps letters and its own keys, and gives away the program's") {
  const auto belongs = [](const char* name, bool control) {
    return belongs_to_text(KeyEvent{name, true, false, Modifiers{control, false, false}});
  };
  CHECK(belongs("x", false));
  CHECK(belongs("left", false));
  CHECK(belongs("z", true));
  CHECK(belongs("v", true));
  CHECK(belongs("d", true)); // duplicates a row: not while one types
  CHECK(belongs("r", true));
  CHECK(belongs_to_text(KeyEvent{"d", true, false, Modifiers{true, true, false}}));
  CHECK_FALSE(belongs("s", true));
  CHECK_FALSE(belongs("f1", false));
}

TEST_CASE("a key is called by what it prints in the user's layout, else by its own name") {
  CHECK(key_name(GLFW_KEY_Y, "z") == "z"); // a German keyboard
  CHECK(key_name(GLFW_KEY_A, "A") == "a");
  CHECK(key_name(GLFW_KEY_LEFT, nullptr) == "left");
  CHECK(key_name(GLFW_KEY_F12, nullptr) == "f12");
  CHECK(key_name(GLFW_KEY_UNKNOWN, nullptr).empty());
}
