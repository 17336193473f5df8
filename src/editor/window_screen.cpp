// The screen that the window stands on, and how large type has to be on it for the bench.
#include "editor/bench_type.hpp"
#include "editor/window.hpp"

#include <GLFW/glfw3.h>
#include <algorithm>
#include <cmath>

namespace punchwright::editor {

namespace {

// The monitor that most of the window stands on.
GLFWmonitor* monitor_of(GLFWwindow* window) {
  int left = 0;
  int top = 0;
  int width = 0;
  int height = 0;
  glfwGetWindowPos(window, &left, &top);
  glfwGetWindowSize(window, &width, &height);
  int count = 0;
  GLFWmonitor** const monitors = glfwGetMonitors(&count);
  GLFWmonitor* best = glfwGetPrimaryMonitor();
  int most = 0;
  for (int place = 0; place < count; ++place) {
    const GLFWvidmode* const mode = glfwGetVideoMode(monitors[place]);
    int x = 0;
    int y = 0;
    glfwGetMonitorPos(monitors[place], &x, &y);
    const int across = mode == nullptr ? 0 : std::min(left + width, x + mode->width) - std::max(left, x);
    const int upwards = mode == nullptr ? 0 : std::min(top + height, y + mode->height) - std::max(top, y);
    if (across > 0 && upwards > 0 && across * upwards > most) {
      most = across * upwards;
      best = monitors[place];
    }
  }
  return best;
}

} // namespace

// mm
double Window::pixel_width(const Settings& settings) const {
  GLFWmonitor* const monitor = monitor_of(window_);
  const GLFWvidmode* const mode = monitor != nullptr ? glfwGetVideoMode(monitor) : nullptr;
  int wide_mm = 0;
  int tall_mm = 0;
  if (monitor != nullptr) {
    glfwGetMonitorPhysicalSize(monitor, &wide_mm, &tall_mm);
  }
  return pixel_mm(mode != nullptr ? mode->width : 0, wide_mm, settings.screen_width_mm, content_scale());
}

// px: the face that the bench needs, of which it draws smaller type too.
float Window::large_size(App& app) const {
  if (!app.bench.open) {
    return loaded_large_; // kept: it costs time to make
  }
  app.bench.px_mm = pixel_width(app.settings);
  constexpr double usual_capital = 0.626; // of DejaVu Sans, as FreeType measures a size (ascent and descent)
  const BenchType type = bench_type(app.settings.bench_distance_m, app.bench.px_mm, usual_capital);
  constexpr float largest = 150; // px: beyond that a letter's edges don't gain
  return std::clamp(std::round(type.good), 15 * loaded_scale_, largest);
}

} // namespace punchwright::editor
