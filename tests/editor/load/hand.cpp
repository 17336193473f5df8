// Each gesture is what a person does at once: a whole stroke, a key pressed and let go.
#include "load/hand.hpp"

#include "editor/commands.hpp"
#include "editor/tab_commands.hpp"
#include "support/any_edit.hpp"

#include <algorithm>
#include <cctype>

namespace punchwright::test {

using namespace punchwright::editor;

namespace {

// What ends the work, asks for a place in the file system, or loads type faces, which is the window's.
bool is_left_out(Command command) {
  switch (command) {
  case Command::larger_text:
  case Command::smaller_text:
  case Command::open_menus:
  case Command::at_the_bench:
  case Command::bench_forward:
  case Command::bench_back:
  case Command::say_step:
  case Command::show_yoke: return true;
  default: return info_of(command).menu == Menu::file;
  }
}

} // namespace

void Hand::press(const std::string& keys) {
  KeyEvent key;
  std::size_t begin = 0;
  for (std::size_t plus = keys.find('+', 1); plus != std::string::npos && plus + 1 < keys.size();
       plus = keys.find('+', begin + 1)) {
    const std::string modifier = keys.substr(begin, plus - begin);
    key.with.control = key.with.control || modifier == "Ctrl";
    key.with.shift = key.with.shift || modifier == "Shift";
    begin = plus + 1;
  }
  key.name = keys.substr(begin);
  std::ranges::transform(key.name, key.name.begin(),
                         [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
  frames_.queue.push(key);
  key.down = false;
  frames_.queue.push(key);
}

ScreenPoint Hand::somewhere() {
  const ScreenBox& box = app_.view.canvas;
  const auto part = [&](float low, float high) {
    return low + (high - low) * static_cast<float>(dice_.throw_one(1000)) / 1000;
  };
  return {part(box.left, box.right), part(box.top, box.bottom)};
}

std::string Hand::stroke() {
  frames_.queue.push(PointerEvent{somewhere()});
  frames_.queue.push(ButtonEvent{0, true});
  for (int count = dice_.throw_one(8); count >= 0; --count) {
    frames_.queue.push(PointerEvent{somewhere()});
    if (dice_.heads()) {
      frames_.queue.push(WheelEvent{{0, 0}}); // a frame of its own
    }
  }
  frames_.queue.push(ButtonEvent{0, false});
  return "a stroke";
}

std::string Hand::command() {
  const auto commands = all_commands();
  const CommandInfo& info = commands[static_cast<std::size_t>(dice_.throw_one(static_cast<int>(commands.size())))];
  if (is_left_out(info.command)) {
    return stroke();
  }
  const std::string keys = info.keys;
  if (keys.empty()) {
    frames_.more.emplace_back(Run{info.command});
  } else {
    press(keys);
  }
  return info.id;
}

std::string Hand::turn_wheel() {
  frames_.queue.push(PointerEvent{somewhere()});
  for (int notches = 1 + dice_.throw_one(6); notches > 0; --notches) {
    frames_.queue.push(WheelEvent{{0, dice_.heads() ? 1.0F : -1.0F}});
  }
  return "the wheel";
}

std::string Hand::type_in_field() {
  frames_.more.emplace_back(ChooseTab{static_cast<Tab>(dice_.throw_one(6))});
  press("F6");
  for (int count = dice_.throw_one(12); count > 0; --count) {
    press("Tab");
  }
  press("Ctrl+A");
  for (int count = 1 + dice_.throw_one(3); count > 0; --count) {
    frames_.queue.push(CharacterEvent{static_cast<unsigned>('0' + dice_.throw_one(10))});
  }
  press("Tab");
  return "a field";
}

std::string Hand::edit() {
  Edit edit = any_edit(dice_, app_.work.design);
  while (std::holds_alternative<Resize>(edit)) { // the drawing stays large
    edit = any_edit(dice_, app_.work.design);
  }
  frames_.more.emplace_back(EditDesign{std::move(edit)});
  return "an edit";
}

// Strokes are completed under it from now on; now and then the drawing is made so.
std::string Hand::symmetry() {
  const auto group = static_cast<FriezeGroup>(dice_.throw_one(7));
  if (dice_.throw_one(8) == 0) {
    frames_.more.emplace_back(Run{command_for(group)});
    frames_.more.emplace_back(Run{Command::make_symmetric});
    return "made symmetric";
  }
  const Grid& grid = app_.work.design.grid;
  const Frieze frieze = centred_frieze(group, grid.width(), grid.height());
  const bool usable = dice_.heads() && !unusable_frieze(frieze, grid.width(), grid.height());
  frames_.more.emplace_back(ChooseSymmetry{usable ? std::optional(frieze) : std::nullopt});
  return "a symmetry";
}

std::string Hand::do_something() {
  switch (dice_.throw_one(13)) {
  case 0:
  case 1:
  case 2:
  case 3: return stroke();
  case 4:
  case 5:
  case 6:
  case 7: return command();
  case 8: return turn_wheel();
  case 9: return type_in_field();
  case 10: press(dice_.throw_one(3) > 0 ? "Ctrl+Z" : "Ctrl+Y"); return "undo or redo";
  case 11: return symmetry();
  default: return edit();
  }
}

FrameTime Hand::let_go() {
  FrameTime longest;
  for (int count = 0; count < 6; ++count) {
    press("Escape");
    const FrameTime time = frames_.build_all();
    longest.wall = std::max(longest.wall, time.wall);
    longest.processor = std::max(longest.processor, time.processor);
  }
  frames_.more.emplace_back(SetDialog{});
  frames_.more.emplace_back(CloseField{});
  frames_.build_all();
  return longest;
}

} // namespace punchwright::test
