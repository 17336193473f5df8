// Keys, buttons and the pointer in the order in which they happened, handed out a portion a frame.
// A window that only looks at the state of keys loses short taps; a queue loses none, whatever a frame takes.
#pragma once

#include "editor/canvas_layout.hpp"

#include <deque>
#include <string>
#include <vector>

namespace punchwright::editor {

struct Modifiers {
  bool control = false;
  bool shift = false;
  bool alt = false;
  bool operator==(const Modifiers&) const = default;
};

struct KeyEvent {
  std::string name; // what the key says in the user's layout, small letters ("z"), or "left", "f1", "return" …
  bool down = true;
  bool repeat = false;
  Modifiers with;
};
struct ButtonEvent {
  int button = 0; // 0 left, 1 right, 2 middle
  bool down = true;
};
struct PointerEvent {
  ScreenPoint at;
};
struct WheelEvent {
  ScreenPoint by; // notches
};
struct CharacterEvent {
  unsigned code = 0; // Unicode
};

struct InputEvent {
  enum class Kind { key, button, pointer, wheel, character };
  Kind kind = Kind::pointer;
  KeyEvent key;
  ButtonEvent button;
  PointerEvent pointer;
  WheelEvent wheel;
  CharacterEvent character;
};

class InputQueue {
public:
  void push(KeyEvent event);
  void push(ButtonEvent event);
  void push(PointerEvent event);
  void push(WheelEvent event);
  void push(CharacterEvent event);
  [[nodiscard]] bool empty() const { return events_.empty(); }

  // What the next frame sees: everything up to and including the first change of a key, a button or the wheel. So a
  // button goes down exactly where the pointer was, and every tap of a key is seen.
  [[nodiscard]] std::vector<InputEvent> take_portion();

private:
  std::deque<InputEvent> events_;
};

} // namespace punchwright::editor
