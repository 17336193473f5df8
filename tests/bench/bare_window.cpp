// A window with an OpenGL context that is cleared and shown, and nothing else: what the editor's memory is compared
// with.
#define GLFW_INCLUDE_NONE
#include "editor/memory_in_use.hpp"

#include <GL/gl.h>
#include <GLFW/glfw3.h>
#include <cstdio>

int main() {
  if (glfwInit() == GLFW_FALSE) {
    return 2;
  }
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
  glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
  GLFWwindow* const window = glfwCreateWindow(1440, 900, "empty", nullptr, nullptr);
  if (window == nullptr) {
    return 2;
  }
  glfwMakeContextCurrent(window);
  for (int frame = 0; frame < 60; ++frame) {
    glClear(GL_COLOR_BUFFER_BIT);
    glfwSwapBuffers(window);
    glfwPollEvents();
  }
  std::printf("anonymous_mb %.1f\n", punchwright::editor::anonymous_megabytes().value_or(0));
  glfwTerminate();
  return 0;
}
