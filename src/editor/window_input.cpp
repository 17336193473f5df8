// What the system sends: into the queue, and from there, a portion a frame, to ImGui.
#include "editor/key_names.hpp"
#include "editor/window.hpp"

#include <GLFW/glfw3.h>
#include <cfloat>
#include <imgui.h>

namespace punchwright::editor {

namespace {

Modifiers modifiers_of(int bits) {
  return Modifiers{(bits & GLFW_MOD_CONTROL) != 0, (bits & GLFW_MOD_SHIFT) != 0, (bits & GLFW_MOD_ALT) != 0};
}

} // namespace

// GLFW's callbacks are plain functions; the window's own pointer leads them back here.
void Window::listen() {
  glfwSetWindowUserPointer(window_, this);
  glfwSetKeyCallback(window_, [](GLFWwindow* window, int key, int scancode, int action, int bits) {
    auto& self = *static_cast<Window*>(glfwGetWindowUserPointer(window));
    const char* const printed = glfwGetKeyName(key, scancode);
    std::string name = key_name(key, printed, (bits & GLFW_MOD_SHIFT) != 0);
    if (!name.empty()) {
      self.queue_.push(KeyEvent{std::move(name), action != GLFW_RELEASE, action == GLFW_REPEAT, modifiers_of(bits)});
    }
  });
  glfwSetCharCallback(window_, [](GLFWwindow* window, unsigned code) {
    static_cast<Window*>(glfwGetWindowUserPointer(window))->queue_.push(CharacterEvent{code});
  });
  glfwSetMouseButtonCallback(window_, [](GLFWwindow* window, int number, int action, int) {
    if (number < 3) {
      static_cast<Window*>(glfwGetWindowUserPointer(window))->queue_.push(ButtonEvent{number, action == GLFW_PRESS});
    }
  });
  glfwSetCursorPosCallback(window_, [](GLFWwindow* window, double x, double y) {
    static_cast<Window*>(glfwGetWindowUserPointer(window))
        ->queue_.push(PointerEvent{{static_cast<float>(x), static_cast<float>(y)}});
  });
  glfwSetCursorEnterCallback(window_, [](GLFWwindow* window, int entered) {
    bool held = false;
    for (int number = 0; number < 3; ++number) {
      held = held || glfwGetMouseButton(window, number) == GLFW_PRESS;
    }
    if (entered == GLFW_FALSE && !held) {
      static_cast<Window*>(glfwGetWindowUserPointer(window))->queue_.push(PointerEvent{{-FLT_MAX, -FLT_MAX}});
    }
  });
  glfwSetScrollCallback(window_, [](GLFWwindow* window, double x, double y) {
    static_cast<Window*>(glfwGetWindowUserPointer(window))
        ->queue_.push(WheelEvent{{static_cast<float>(x), static_cast<float>(y)}});
  });
  glfwSetDropCallback(window_, [](GLFWwindow* window, int count, const char** paths) {
    for (int path = 0; path < count; ++path) {
      static_cast<Window*>(glfwGetWindowUserPointer(window))->dropped_.emplace_back(paths[path]);
    }
  });
  glfwSetWindowCloseCallback(window_, [](GLFWwindow* window) {
    static_cast<Window*>(glfwGetWindowUserPointer(window))->close_requested_ = true;
    glfwSetWindowShouldClose(window, GLFW_FALSE);
  });
  const auto redraw = [](GLFWwindow* window) {
    static_cast<Window*>(glfwGetWindowUserPointer(window))->redraw_requested_ = true;
  };
  glfwSetWindowRefreshCallback(window_, redraw);
  glfwSetFramebufferSizeCallback(window_, [](GLFWwindow* window, int, int) {
    static_cast<Window*>(glfwGetWindowUserPointer(window))->redraw_requested_ = true;
  });
  glfwSetWindowFocusCallback(window_, [](GLFWwindow* window, int focused) {
    auto& self = *static_cast<Window*>(glfwGetWindowUserPointer(window));
    self.redraw_requested_ = true;
    self.returned_ = self.returned_ || focused == GLFW_TRUE;
  });
  glfwSetWindowContentScaleCallback(window_, [](GLFWwindow* window, float, float) {
    static_cast<Window*>(glfwGetWindowUserPointer(window))->redraw_requested_ = true;
  });
}

void Window::wait() {
  glfwWaitEvents();
}

void Window::wait(std::chrono::milliseconds longest) {
  glfwWaitEventsTimeout(std::max(0.001, std::chrono::duration<double>(longest).count()));
}

void Window::look() {
  glfwPollEvents();
}

std::vector<std::filesystem::path> Window::take_dropped() {
  return std::exchange(dropped_, {});
}

bool Window::take_close_request() {
  return std::exchange(close_requested_, false);
}

bool Window::take_redraw_request() {
  return std::exchange(redraw_requested_, false);
}

bool Window::take_return() {
  return std::exchange(returned_, false);
}

void feed(const InputEvent& event) {
  ImGuiIO& io = ImGui::GetIO();
  switch (event.kind) {
  case InputEvent::Kind::key: {
    const KeyEvent& key = event.key;
    io.KeyCtrl = key.name == "control" ? key.down : key.with.control;
    io.KeyShift = key.name == "shift" ? key.down : key.with.shift;
    io.KeyAlt = key.name == "alt" ? key.down : key.with.alt;
    if (const auto known = imgui_key(key.name)) {
      io.KeysDown[*known] = key.down;
      if (key.repeat) {
        io.KeysDownDuration[*known] = -1; // counts as pressed anew
      }
    }
    return;
  }
  case InputEvent::Kind::button: io.MouseDown[event.button.button] = event.button.down; return;
  case InputEvent::Kind::pointer: io.MousePos = ImVec2(event.pointer.at.x, event.pointer.at.y); return;
  case InputEvent::Kind::wheel:
    io.MouseWheel += event.wheel.by.y;
    io.MouseWheelH += event.wheel.by.x;
    return;
  case InputEvent::Kind::character: io.AddInputCharacter(event.character.code); return;
  }
}

void Window::set_cursor() {
  int wished = 0;
  switch (ImGui::GetMouseCursor()) {
  case ImGuiMouseCursor_TextInput: wished = 1; break;
  case ImGuiMouseCursor_Hand: wished = 2; break;
  case ImGuiMouseCursor_ResizeAll: wished = 3; break; // the drawing asks for cross hairs by this name
  default: break;
  }
  if (wished != cursor_shown_) {
    cursor_shown_ = wished;
    glfwSetCursor(window_, cursors_[static_cast<std::size_t>(wished)]);
  }
}

} // namespace punchwright::editor
