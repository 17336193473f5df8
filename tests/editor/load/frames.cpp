// As src/editor/window.cpp does it, without the window.
#include "load/frames.hpp"

#include "editor/long_work.hpp"
#include "editor/memory_in_use.hpp"
#include "editor/panels.hpp"
#include "editor/style.hpp"
#include "editor/window.hpp"

#include <algorithm>
#include <chrono>
#include <ctime>
#include <fmt/format.h>
#include <imgui.h>
#include <thread>

namespace punchwright::test {

using namespace punchwright::editor;

namespace {

double processor_ms() {
  timespec time{};
  ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6;
}

double wall_ms() {
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

} // namespace

void FrameCounts::add(double ms) {
  const auto place = std::ranges::find_if(below, [ms](int limit) { return ms < limit; }) - below.begin();
  ++counts[static_cast<std::size_t>(place)];
  longest = std::max(longest, ms);
}

std::string FrameCounts::words() const {
  std::string words;
  for (std::size_t place = 0; place < below.size(); ++place) {
    words += fmt::format("  {:8} below {} ms\n", counts[place], below[place]);
  }
  return words + fmt::format("  {:8} longer; the longest {:.1f} ms\n", counts.back(), longest);
}

Frames::Frames(App& app) : app_(app) {
  ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
  io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
  io.BackendFlags |= ImGuiBackendFlags_HasMouseCursors | ImGuiBackendFlags_RendererHasVtxOffset;
  io.KeyRepeatDelay = 1.0e9F;
  for (int key = 0; key < ImGuiKey_COUNT; ++key) {
    io.KeyMap[key] = key;
  }
  io.DisplaySize = ImVec2(1440, 900);
  io.DeltaTime = 1.0F / 60;
  load_type_faces(app.theme, 1);
  io.Fonts->Build();
  io.Fonts->SetTexID(&io); // any but none
  dress(app.theme);
  app.caches.stitch.own = 1; // as if OpenGL had them, so that large cells are drawn as stitches
  app.caches.stitch.foot = 1;
  for (int frame = 0; frame < 4; ++frame) {
    build();
  }
}

Frames::~Frames() {
  ImGui::DestroyContext();
}

FrameTime Frames::build() {
  const double wall = wall_ms();
  const double processor = processor_ms();
  awaits_work_ = follow_long_work(app_).look_again.has_value();
  refresh(app_);
  ImGuiIO& io = ImGui::GetIO();
  io.MouseWheel = 0;
  io.MouseWheelH = 0;
  const Portion portion = queue.take_portion();
  for (const InputEvent& event : portion) {
    feed(event);
  }
  ImGui::NewFrame();
  Actions actions;
  draw_frame(app_, portion, actions);
  ImGui::Render();
  give_drawing_room_back();
  app_.session.now += 1.0 / 60;
  for (Action& action : more) {
    actions.push(std::move(action));
  }
  more.clear();
  for (const Action& action : actions.list) {
    apply(app_, action);
  }
  if (app_.session.copied) {
    app_.session.clipboard = *app_.session.copied;
    app_.session.copied.reset();
  }
  const FrameTime time{wall_ms() - wall, processor_ms() - processor};
  counts.add(time.processor);
  return time;
}

FrameTime Frames::build_all() {
  FrameTime longest;
  for (bool last = false; !last;) {
    const bool nothing_to_do = queue.empty() && more.empty();
    const FrameTime time = build();
    last = nothing_to_do && !awaits_work_;
    if (awaits_work_) {
      std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    longest.wall = std::max(longest.wall, time.wall);
    longest.processor = std::max(longest.processor, time.processor);
  }
  return longest;
}

} // namespace punchwright::test
