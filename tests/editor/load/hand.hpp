// A hand that edits by dice: strokes, keys, the wheel, fields that are typed in, edits as menus and dialogs give them.
#pragma once

#include "load/frames.hpp"
#include "support/builders.hpp"

#include <string>
#include <vector>

namespace punchwright::test {

class Hand {
public:
  Hand(editor::App& app, Frames& frames, std::uint64_t seed) : app_(app), frames_(frames), dice_(seed) {}

  // Puts something to do into the queue; says what.
  std::string do_something();
  // Escape, until no question, no field and nothing that hangs over the drawing is left.
  FrameTime let_go();
  void press(const std::string& keys); // "Ctrl+Shift+S", as the menus write it

private:
  std::string stroke();
  std::string command();
  std::string turn_wheel();
  std::string type_in_field();
  std::string edit();
  std::string symmetry();
  editor::ScreenPoint somewhere();

  editor::App& app_;
  Frames& frames_;
  Dice dice_;
};

} // namespace punchwright::test
