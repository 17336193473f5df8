// GLFW and OpenGL: opening, drawing, closing. What comes in is in window_input.cpp.
#define GL_GLEXT_PROTOTYPES
#define GLFW_INCLUDE_GLEXT
#include "editor/window.hpp"

#include "editor/stitch_form.hpp"
#include "editor/style.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <GLFW/glfw3.h>
#include <algorithm>
#include <array>
#include <backends/imgui_impl_opengl3.h>
#include <cmath>
#include <imgui.h>
#include <imgui_internal.h>
#include <thread>

namespace punchwright::editor {

namespace {

Error no_window(const std::string& message) {
  const char* detail = nullptr;
  glfwGetError(&detail);
  return Error{{}, 0, 0, message + (detail != nullptr ? std::string(" (") + detail + ")" : std::string()), {}};
}

const char* shared_text(void* window) {
  return glfwGetClipboardString(static_cast<GLFWwindow*>(window));
}

void share_text(void* window, const char* text) {
  glfwSetClipboardString(static_cast<GLFWwindow*>(window), text);
}

constexpr int usual_width = 1440; // units of layout
constexpr int usual_height = 900;

// What was kept may be larger than the display of today; what is drawn off the screen needs none.
std::pair<int, int> fitting_size(const WindowWishes& wishes, float display_scale) {
  int left = 0;
  int top = 0;
  int width = 0;
  int height = 0;
  GLFWmonitor* const monitor = glfwGetPrimaryMonitor();
  const bool on_display = monitor != nullptr && wishes.visible;
  const auto wished = [&](int size, int usual) {
    const float scaled = static_cast<float>(usual) * (on_display ? display_scale : 1);
    return size > 0 ? size : static_cast<int>(std::lround(scaled));
  };
  const int wished_width = wished(wishes.width, usual_width);
  const int wished_height = wished(wishes.height, usual_height);
  if (!on_display) {
    return {wished_width, wished_height};
  }
  glfwGetMonitorWorkarea(monitor, &left, &top, &width, &height);
  return {width > 0 ? std::min(wished_width, width) : wished_width,
          height > 0 ? std::min(wished_height, height) : wished_height};
}

} // namespace

Result<std::unique_ptr<Window>> Window::open(const WindowWishes& wishes) {
  if (glfwInit() != GLFW_TRUE) {
    return no_window(tr("there is no display to open a window on"));
  }
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 2);
  glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
  glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
  glfwWindowHint(GLFW_DEPTH_BITS, 0);
  glfwWindowHint(GLFW_STENCIL_BITS, 0);
  glfwWindowHint(GLFW_VISIBLE, wishes.visible ? GLFW_TRUE : GLFW_FALSE);
  glfwWindowHintString(GLFW_X11_CLASS_NAME, "punchwright");
  glfwWindowHintString(GLFW_X11_INSTANCE_NAME, "punchwright");
  std::unique_ptr<Window> window(new Window);
  window->wished_scale_ = wishes.scale;
  window->prepare_imgui();
  // Opening a window takes long enough to make the type faces ready meanwhile.
  const float display_scale = window->content_scale();
  const float scale = display_scale * wishes.text_scale;
  std::thread type_faces([&window, scale] {
    load_type_faces(window->prepared_, scale);
    ImGui::GetIO().Fonts->Build();
  });
  const auto [width, height] = fitting_size(wishes, display_scale);
  glfwWindowHint(GLFW_MAXIMIZED, wishes.maximized ? GLFW_TRUE : GLFW_FALSE);
  window->window_ = glfwCreateWindow(width, height, "Punchwright", nullptr, nullptr);
  type_faces.join();
  if (window->window_ == nullptr) {
    return no_window(tr("the display has no OpenGL 3.2"));
  }
  // Below this the lists at the sides have no room for an entry.
  glfwSetWindowSizeLimits(window->window_, static_cast<int>(std::min(720 * display_scale, 1024.0F)),
                          static_cast<int>(std::min(480 * display_scale, 640.0F)), GLFW_DONT_CARE, GLFW_DONT_CARE);
  glfwMakeContextCurrent(window->window_);
  glfwSwapInterval(1);
  window->listen();
  ImGuiIO& io = ImGui::GetIO();
  io.ClipboardUserData = window->window_;
  io.GetClipboardTextFn = shared_text;
  io.SetClipboardTextFn = share_text;
  ImGui_ImplOpenGL3_Init("#version 150");
  window->opengl_ready_ = true;
  for (const int shape : {GLFW_ARROW_CURSOR, GLFW_IBEAM_CURSOR, GLFW_HAND_CURSOR, GLFW_CROSSHAIR_CURSOR}) {
    window->cursors_.push_back(glfwCreateStandardCursor(shape));
  }
  return window;
}

void Window::prepare_imgui() {
  ImGui::CreateContext();
  imgui_ready_ = true;
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
  io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
  io.ConfigInputTextCursorBlink = false; // a blinking cursor would need frames
  io.BackendFlags |= ImGuiBackendFlags_HasMouseCursors;
  io.KeyRepeatDelay = 1.0e9F; // the system's own repeats come as presses
  for (int key = 0; key < ImGuiKey_COUNT; ++key) {
    io.KeyMap[key] = key;
  }
}

// px per unit of layout, as the display asks for, or as was wished.
float Window::content_scale() const {
  if (wished_scale_ > 0) {
    return wished_scale_;
  }
  float across = 1;
  float upwards = 1;
  if (window_ != nullptr) {
    glfwGetWindowContentScale(window_, &across, &upwards);
  } else if (GLFWmonitor* const monitor = glfwGetPrimaryMonitor()) {
    glfwGetMonitorContentScale(monitor, &across, &upwards);
  }
  return std::clamp(std::max(across, upwards), 0.75F, 4.0F);
}

void Window::load_type_faces_at(Theme& theme, float scale, float large) {
  const bool first = loaded_scale_ == 0; // the first texture is made together with everything else
  loaded_scale_ = scale;
  loaded_large_ = large;
  if (first && prepared_.scale == scale && large == 0) {
    theme.scale = scale;
    theme.regular = prepared_.regular;
    theme.bold = prepared_.bold;
    theme.small = prepared_.small;
  } else {
    load_type_faces(theme, scale, large);
  }
  dress(theme);
  if (!first) {
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
  }
}

Window::~Window() {
  if (opengl_ready_) {
    ImGui_ImplOpenGL3_Shutdown();
  }
  if (imgui_ready_) {
    ImGui::DestroyContext();
  }
  for (GLFWcursor* const cursor : cursors_) {
    if (cursor != nullptr) {
      glfwDestroyCursor(cursor);
    }
  }
  if (window_ != nullptr) {
    glfwDestroyWindow(window_);
  }
  glfwTerminate();
}

namespace {

constexpr int no_key = IM_ARRAYSIZE(ImGuiIO::KeysDown) - 1; // of ImGui's table: never down

// Where arrow keys and space do something of their own, whatever has the keys: there ImGui must not move about by them.
bool has_own_arrows(const App& app) {
  const Dialog& dialog = app.session.dialog;
  const bool bench = app.bench.open && !is_open(dialog) && ImGui::GetCurrentContext()->OpenPopupStack.empty();
  return bench || std::holds_alternative<StepListDialog>(dialog) || std::holds_alternative<PlayDialog>(dialog) ||
         std::holds_alternative<WrongDialog>(dialog);
}

} // namespace

std::vector<InputEvent> Window::begin_frame(App& app) {
  const float scale = content_scale() * static_cast<float>(app.settings.text_percent) / 100;
  const float large = large_size(app);
  if (scale != loaded_scale_ || large != loaded_large_) {
    load_type_faces_at(app.theme, scale, large);
  } else if (app.theme != dressed_) {
    dress(app.theme);
  }
  dressed_ = app.theme;
  ImGuiIO& io = ImGui::GetIO();
  int width = 0;
  int height = 0;
  int pixels_across = 0;
  int pixels_upwards = 0;
  glfwGetWindowSize(window_, &width, &height);
  glfwGetFramebufferSize(window_, &pixels_across, &pixels_upwards);
  io.DisplaySize = ImVec2(static_cast<float>(width), static_cast<float>(height));
  if (width > 0 && height > 0) {
    io.DisplayFramebufferScale = ImVec2(static_cast<float>(pixels_across) / static_cast<float>(width),
                                        static_cast<float>(pixels_upwards) / static_cast<float>(height));
  }
  const double now = glfwGetTime();
  io.DeltaTime = last_time_ > 0 ? std::max(1.0e-4F, static_cast<float>(now - last_time_)) : 1.0F / 60.0F;
  last_time_ = now;

  const bool own_arrows = has_own_arrows(app) && !io.WantTextInput;
  for (const int key : {ImGuiKey_LeftArrow, ImGuiKey_RightArrow, ImGuiKey_UpArrow, ImGuiKey_DownArrow, ImGuiKey_Space,
                        ImGuiKey_PageUp, ImGuiKey_PageDown, ImGuiKey_Home, ImGuiKey_End}) {
    io.KeyMap[key] = own_arrows ? no_key : key;
  }
  io.MouseWheel = 0;
  io.MouseWheelH = 0;
  std::vector<InputEvent> portion = queue_.take_portion();
  for (const InputEvent& event : portion) {
    feed(event);
  }
  ImGui_ImplOpenGL3_NewFrame();
  ImGui::NewFrame();
  return portion;
}

void Window::render(int width, int height, Colour ground) {
  glViewport(0, 0, width, height);
  const ImVec4 colour = tint(ground);
  glClearColor(colour.x, colour.y, colour.z, 1);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}

void Window::end_frame(const App& app, bool draw) {
  ImGui::Render();
  set_cursor();
  if (!draw) {
    return;
  }
  int width = 0;
  int height = 0;
  glfwGetFramebufferSize(window_, &width, &height);
  render(width, height, app.theme.ground);
  glfwSwapBuffers(window_);
}

std::vector<unsigned char> Window::draw_to_pixels(const App& app) {
  ImGui::Render();
  int width = 0;
  int height = 0;
  glfwGetFramebufferSize(window_, &width, &height);
  GLuint frame = 0;
  GLuint picture = 0;
  glGenFramebuffers(1, &frame);
  glBindFramebuffer(GL_FRAMEBUFFER, frame);
  glGenRenderbuffers(1, &picture);
  glBindRenderbuffer(GL_RENDERBUFFER, picture);
  glRenderbufferStorage(GL_RENDERBUFFER, GL_RGBA8, width, height);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, picture);
  render(width, height, app.theme.ground);
  const auto across = static_cast<std::size_t>(width) * 3;
  std::vector<unsigned char> pixels(across * static_cast<std::size_t>(height));
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, width, height, GL_RGB, GL_UNSIGNED_BYTE, pixels.data());
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
  glDeleteRenderbuffers(1, &picture);
  glDeleteFramebuffers(1, &frame);
  // OpenGL's first line is the lowest.
  for (std::size_t low = 0, high = static_cast<std::size_t>(height) - 1; low < high; ++low, --high) {
    std::swap_ranges(pixels.begin() + static_cast<std::ptrdiff_t>(low * across),
                     pixels.begin() + static_cast<std::ptrdiff_t>((low + 1) * across),
                     pixels.begin() + static_cast<std::ptrdiff_t>(high * across));
  }
  return pixels;
}

int Window::width() const {
  int width = 0;
  glfwGetFramebufferSize(window_, &width, nullptr);
  return width;
}

int Window::height() const {
  int height = 0;
  glfwGetFramebufferSize(window_, nullptr, &height);
  return height;
}

bool Window::button_held() const {
  return glfwGetMouseButton(window_, GLFW_MOUSE_BUTTON_LEFT) == GLFW_PRESS;
}

// A maximized window keeps the size that it had before.
void Window::tell_size(Settings& settings) const {
  settings.maximized = glfwGetWindowAttrib(window_, GLFW_MAXIMIZED) == GLFW_TRUE;
  if (!settings.maximized) {
    glfwGetWindowSize(window_, &settings.window_width, &settings.window_height);
  }
}

void Window::set_title(const std::string& title) {
  if (title != title_) {
    title_ = title;
    glfwSetWindowTitle(window_, title.c_str());
  }
}

namespace {

void fill_texture(unsigned& texture, int width, int height, const std::vector<unsigned char>& rgb,
                  int when_larger = GL_LINEAR) {
  if (texture == 0) {
    glGenTextures(1, &texture);
  }
  glBindTexture(GL_TEXTURE_2D, texture);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, when_larger);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RGB8, width, height, 0, GL_RGB, GL_UNSIGNED_BYTE, rgb.data());
}

} // namespace

void Window::upload(PiecePicture& piece) {
  const PiecePixels& pixels = piece.painter.pixels();
  if (piece.serial != piece.uploaded && !pixels.rgb.empty()) {
    fill_texture(piece.texture, pixels.width, pixels.height, pixels.rgb);
    piece.uploaded = piece.serial;
  }
}

void Window::upload(YokePicture& picture) {
  if (picture.serial != picture.uploaded && !picture.rgb.empty()) {
    fill_texture(picture.texture, picture.width, picture.height, picture.rgb, GL_NEAREST); // stitches keep their edges
    picture.uploaded = picture.serial;
  }
}

// Without pages the texture goes too: a preview that isn't open costs nothing.
void Window::upload(PreviewCache& page) {
  if (page.pixels.rgb.empty()) {
    if (page.texture != 0) {
      glDeleteTextures(1, &page.texture);
      page.texture = 0;
    }
  } else if (page.serial != page.uploaded || page.texture == 0) {
    fill_texture(page.texture, page.pixels.width, page.pixels.height, page.pixels.rgb);
    page.uploaded = page.serial;
  }
}

// Repeated across a run of stitches, and smoothed where they are smaller than the tables.
void Window::make(StitchTextures& textures) {
  if (textures.own != 0) {
    return;
  }
  const StitchForm form;
  const std::array pixels = stitch_pixels(form);
  for (unsigned* const name : {&textures.own, &textures.foot}) {
    glGenTextures(1, name);
    glBindTexture(GL_TEXTURE_2D, *name);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_REPEAT);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 4);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, StitchForm::size, StitchForm::size, 0, GL_RGBA, GL_UNSIGNED_BYTE,
                 pixels[name == &textures.own ? 0 : 1].data());
    glGenerateMipmap(GL_TEXTURE_2D);
  }
}

std::string Window::clipboard_text() {
  const char* const text = ImGui::GetClipboardText();
  return text != nullptr ? text : "";
}

void Window::set_clipboard_text(const std::string& text) {
  ImGui::SetClipboardText(text.c_str());
}

} // namespace punchwright::editor
