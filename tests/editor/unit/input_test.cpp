// The queue between the window system and a frame, and what keys mean.
#include "editor/bench.hpp"
#include "editor/commands.hpp"
#include "editor/input_queue.hpp"
#include "editor/key_names.hpp"

#include <GLFW/glfw3.h>
#include <cctype>
#include <doctest/doctest.h>
#include <optional>
#include <set>
#include <string>
#include <string_view>

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
  CHECK_FALSE(command("z").has_value());
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

namespace {

// The press that "Ctrl+Shift+S" beside a name asks for.
KeyEvent press_of(std::string keys) {
  KeyEvent press;
  const auto taken = [&keys](std::string_view modifier) {
    const bool there = keys.starts_with(modifier);
    keys.erase(0, there ? modifier.size() : 0);
    return there;
  };
  press.with.control = taken("Ctrl+");
  press.with.shift = taken("Shift+");
  for (char& letter : keys) {
    letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  }
  press.name = keys;
  return press;
}

bool is_for_bench_only(Command command) {
  return command == Command::bench_forward || command == Command::bench_back || command == Command::say_step;
}

} // namespace

TEST_CASE("every command has a key, and that key leads to it and to no other") {
  std::set<std::string> keys;
  std::set<std::string> ids;
  for (const CommandInfo& info : all_commands()) {
    CAPTURE(info.name);
    CHECK(ids.insert(info.id).second);
    REQUIRE_FALSE(std::string(info.keys).empty());
    CHECK(keys.insert(info.keys).second);
    CHECK(command_for(press_of(info.keys)) == info.command);
    CHECK(info_of(info.command).id == info.id);
  }
}

TEST_CASE("no command's key is one that the drawing keeps for its cursor, or Tab and Return for walking about") {
  for (const CommandInfo& info : all_commands()) {
    CAPTURE(info.name);
    const KeyEvent press = press_of(info.keys);
    CHECK((is_for_bench_only(info.command) || !moves_cursor(press)));
    CHECK(press.name != "tab");
    CHECK_FALSE(press.with.alt); // the window manager's
  }
  CHECK(moves_cursor(press_of("Shift+Left")));
  CHECK_FALSE(moves_cursor(press_of("Ctrl+Left"))); // shifts the drawing
}

TEST_CASE("at the bench a command's key isn't a foot pedal's, but for the two that say what the pedal does") {
  for (const CommandInfo& info : all_commands()) {
    if (works_at_bench(info.command)) {
      CAPTURE(info.name);
      const std::optional<int> step = bench_step_for(press_of(info.keys));
      CHECK(step == (info.command == Command::bench_forward ? std::optional(1)
                     : info.command == Command::bench_back  ? std::optional(-1)
                                                            : std::nullopt));
    }
  }
}

TEST_CASE("a field that is typed in has all keys that write a sign or change its text, whatever command has them") {
  for (const CommandInfo& info : all_commands()) {
    CAPTURE(info.name);
    const KeyEvent press = press_of(info.keys);
    if (!press.with.control && (press.name.size() == 1 || press.name == "space" || press.name == "delete")) {
      CHECK(belongs_to_text(press));
    }
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
  for (const char* const view : {"1", "2", "3", "4", "5", "0", "l", "k", "h", "+", "-"}) {
    CAPTURE(view);
    CHECK_FALSE(belongs(view, true)); // views and lists change nothing that is typed or drawn
    CHECK(belongs(view, false));
  }
  for (const char* const own : {"a", "c", "x", "y", "left", "right", "up", "down", "delete"}) {
    CAPTURE(own);
    CHECK(belongs(own, true));
  }
  CHECK_FALSE(belongs("f1", false));
}

TEST_CASE("a key is called by what it prints in the user's layout, else by its own name") {
  CHECK(key_name(GLFW_KEY_Y, "z", false) == "z"); // a German keyboard
  CHECK(key_name(GLFW_KEY_A, "A", false) == "a");
  CHECK(key_name(GLFW_KEY_LEFT, nullptr, false) == "left");
  CHECK(key_name(GLFW_KEY_F12, nullptr, false) == "f12");
  CHECK(key_name(GLFW_KEY_UNKNOWN, nullptr, false).empty());
}

TEST_CASE("where digits are typed with shift, or letters aren't Latin, the keys of commands are there all the same") {
  CHECK(key_name(GLFW_KEY_6, "-", false) == "-"); // a French keyboard
  CHECK(key_name(GLFW_KEY_6, "-", true) == "6");
  CHECK(key_name(GLFW_KEY_2, "é", true) == "2");
  CHECK(key_name(GLFW_KEY_6, "6", true) == "6");
  CHECK(key_name(GLFW_KEY_S, "ы", false) == "s"); // a Russian one
  CHECK(key_name(GLFW_KEY_C, "ψ", false) == "c"); // a Greek one
  CHECK(key_name(GLFW_KEY_SEMICOLON, "ö", false) == "ö");
  CHECK(command_for(KeyEvent{key_name(GLFW_KEY_3, "\"", true), true, false, Modifiers{false, true, false}}) ==
        Command::pen_main);
}
