// The window: GLFW, OpenGL and ImGui held together. Everything that the system sends goes into one queue first, and
// ImGui is fed from that queue, a portion a frame, so that no short key press is lost.
#pragma once

#include "design/result.hpp"
#include "editor/app.hpp"
#include "editor/input_queue.hpp"

#include <chrono>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

struct GLFWwindow;
struct GLFWcursor;

namespace punchwright::editor {

struct WindowWishes {
  int width = 0; // px; 0: as much as the layout is made for, at the display's scale
  int height = 0;
  bool visible = true;
  bool maximized = false;
  float scale = 0;      // px per unit of layout; 0: what the display says
  float text_scale = 1; // the user's wish for text, so that its type faces are ready at once
};

// Tells ImGui what the system sent.
void feed(const InputEvent& event);

class Window {
public:
  // An error where there is no display, or no OpenGL 3.2 on it.
  [[nodiscard]] static Result<std::unique_ptr<Window>> open(const WindowWishes& wishes);
  ~Window();
  Window(const Window&) = delete;
  Window& operator=(const Window&) = delete;

  // Waits until the system sends something, or only looks whether it has.
  void wait();
  void wait(std::chrono::milliseconds longest);
  void look();

  // What the system sent besides input, since the last call.
  [[nodiscard]] std::vector<std::filesystem::path> take_dropped();
  [[nodiscard]] bool take_close_request();
  [[nodiscard]] bool take_redraw_request();
  [[nodiscard]] bool take_return(); // the window has the keys again

  [[nodiscard]] bool input_waiting() const { return !queue_.empty(); }

  // Feeds ImGui with the next portion and begins a frame; gives the portion. Loads type faces where the text's size
  // changed.
  [[nodiscard]] std::vector<InputEvent> begin_frame(App& app);
  // Ends the frame; drawn on the screen only if wished.
  void end_frame(const App& app, bool draw);
  // The frame's picture as RGB, drawn off the screen.
  [[nodiscard]] std::vector<unsigned char> draw_to_pixels(const App& app);

  // px
  [[nodiscard]] int width() const;
  [[nodiscard]] int height() const;
  [[nodiscard]] bool button_held() const;
  void tell_size(Settings& settings) const;
  void set_title(const std::string& title);
  void upload(PiecePicture& piece);
  void upload(PreviewCache& page);
  void upload(YokePicture& picture);
  void make(StitchTextures& textures); // once
  // What programs share as text; empty where there is none.
  [[nodiscard]] std::string clipboard_text();
  void set_clipboard_text(const std::string& text);

private:
  Window() = default;
  void prepare_imgui();
  [[nodiscard]] float content_scale() const;
  void load_type_faces_at(Theme& theme, float scale, float large);
  [[nodiscard]] double pixel_width(const Settings& settings) const;
  [[nodiscard]] float large_size(App& app) const;
  void listen();
  void set_cursor();
  void render(int width, int height, Colour ground);

  GLFWwindow* window_ = nullptr;
  InputQueue queue_;
  std::vector<std::filesystem::path> dropped_;
  bool close_requested_ = false;
  bool redraw_requested_ = true;
  bool returned_ = false;
  float wished_scale_ = 0;
  float loaded_scale_ = 0;
  float loaded_large_ = 0; // px of the face for the bench; 0: none
  Palette dressed_;        // the colours that ImGui has now
  Theme prepared_;         // type faces made ready while the window was being opened
  double last_time_ = 0;
  std::string title_;
  std::vector<GLFWcursor*> cursors_;
  int cursor_shown_ = -1;
  bool imgui_ready_ = false;
  bool opengl_ready_ = false;
};

} // namespace punchwright::editor
