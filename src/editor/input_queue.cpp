// The queue between the window system and a frame.
#include "editor/input_queue.hpp"

#include <utility>

namespace punchwright::editor {

void InputQueue::push(KeyEvent event) {
  InputEvent entry;
  entry.kind = InputEvent::Kind::key;
  entry.key = std::move(event);
  events_.push_back(std::move(entry));
}

void InputQueue::push(ButtonEvent event) {
  InputEvent entry;
  entry.kind = InputEvent::Kind::button;
  entry.button = event;
  events_.push_back(std::move(entry));
}

void InputQueue::push(PointerEvent event) {
  InputEvent entry;
  entry.kind = InputEvent::Kind::pointer;
  entry.pointer = event;
  events_.push_back(std::move(entry));
}

void InputQueue::push(WheelEvent event) {
  InputEvent entry;
  entry.kind = InputEvent::Kind::wheel;
  entry.wheel = event;
  events_.push_back(std::move(entry));
}

void InputQueue::push(CharacterEvent event) {
  InputEvent entry;
  entry.kind = InputEvent::Kind::character;
  entry.character = event;
  events_.push_back(std::move(entry));
}

std::vector<InputEvent> InputQueue::take_portion() {
  std::vector<InputEvent> portion;
  while (!events_.empty()) {
    portion.push_back(std::move(events_.front()));
    events_.pop_front();
    const InputEvent::Kind kind = portion.back().kind;
    if (kind == InputEvent::Kind::key || kind == InputEvent::Kind::button || kind == InputEvent::Kind::wheel) {
      break;
    }
  }
  return portion;
}

} // namespace punchwright::editor
