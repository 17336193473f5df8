// How the keys get from one thing to the next: Tab, Return, and from part to part of the window.
// ImGui's own Tab only knows text fields; here it goes to everything that can be used, in the order of drawing.
#include "editor/panels.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <imgui.h>
#include <imgui_internal.h>

namespace punchwright::editor {

namespace {

ImGuiWindow* window_of(const Stop& stop) {
  return static_cast<ImGuiWindow*>(stop.window);
}

void go_to(const Stop& stop) {
  ImGuiContext& context = *ImGui::GetCurrentContext();
  ImGuiWindow* const window = window_of(stop);
  const ImRect box(stop.box.left, stop.box.top, stop.box.right, stop.box.bottom);
  ImGui::ClearActiveID();
  ImGui::FocusWindow(window);
  ImGui::SetNavID(stop.id, ImGuiNavLayer_Main, 0, ImGui::WindowRectAbsToRel(window, box));
  context.NavInitRequest = false; // ImGui would go to the window's first thing
  context.NavInitResultId = 0;
  context.NavDisableHighlight = false;
  context.NavDisableMouseHover = true;
  ImGui::ScrollToBringRectIntoView(window, box);
  if (stop.kind == Stop::Kind::field) {
    ImGui::ActivateItem(stop.id); // typed in at once
    context.NavNextActivateFlags = ImGuiActivateFlags_PreferInput;
  }
}

// The stops of the part that has the keys.
std::vector<Stop> stops_in(const Actions& actions, const ImGuiWindow* root) {
  std::vector<Stop> found;
  std::ranges::copy_if(actions.stops, std::back_inserter(found),
                       [root](const Stop& stop) { return window_of(stop)->RootWindow == root; });
  return found;
}

void walk(const std::vector<Stop>& stops, int by) {
  const ImGuiContext& context = *ImGui::GetCurrentContext();
  if (stops.empty()) {
    return;
  }
  const ImGuiID present = context.ActiveId != 0 ? context.ActiveId : context.NavId;
  const auto found = std::ranges::find(stops, present, &Stop::id);
  const auto count = static_cast<int>(stops.size());
  const int from = found == stops.end() ? (by > 0 ? -1 : 0) : static_cast<int>(found - stops.begin());
  go_to(stops[static_cast<std::size_t>((from + by + count) % count)]);
}

constexpr std::array parts = {drawing_part, "settings", "yoke", piece_part, "findings"};

ImGuiWindow* root_with_keys() {
  ImGuiWindow* const window = ImGui::GetCurrentContext()->NavWindow;
  return window == nullptr ? nullptr : window->RootWindow;
}

void step_to_part(const App& app, Actions& actions, int by) {
  const ImGuiWindow* const root = root_with_keys();
  constexpr int count = static_cast<int>(parts.size());
  int present = 0;
  for (int part = 0; part < count; ++part) {
    if (root != nullptr && root == ImGui::FindWindowByName(parts[static_cast<std::size_t>(part)])) {
      present = part;
    }
  }
  for (int step = 1; step <= count; ++step) {
    const int next = (present + by * step + count * count) % count;
    if (next == 0 && app.yoke.shown) {
      continue; // it has no drawing
    }
    if (next == 0) {
      actions.push(CloseField{});
      ImGui::ClearActiveID();
      return actions.push(GoToDrawing{});
    }
    ImGuiWindow* const window = ImGui::FindWindowByName(parts[static_cast<std::size_t>(next)]);
    const std::vector<Stop> stops = stops_in(actions, window);
    if (window != nullptr && !stops.empty()) {
      actions.push(CloseField{});
      return go_to(stops.front());
    }
  }
}

// Return presses the button that has the keys, else the dialog's own, else it opens what has the keys.
void press_return(const Actions& actions) {
  const ImGuiContext& context = *ImGui::GetCurrentContext();
  const bool typing = context.IO.WantTextInput; // before this frame: the field has let go of the keys by now
  const bool shown = !context.NavDisableHighlight && context.NavId != 0;
  const auto stop = std::ranges::find(actions.stops, context.NavId, &Stop::id);
  const bool known = stop != actions.stops.end();
  const bool in_popup = context.OpenPopupStack.Size > (actions.default_button != 0 ? 1 : 0);
  if (context.ActiveId != 0) {
    return;
  }
  const bool has_default = actions.default_button != 0 && !in_popup;
  const bool on_button = in_popup || (known && stop->kind == Stop::Kind::button);
  if (!typing && shown && (on_button || (known && !has_default))) {
    ImGui::ActivateItem(context.NavId);
  } else if (has_default) {
    ImGui::ActivateItem(actions.default_button);
  }
}

} // namespace

bool drawing_has_keys() {
  const ImGuiWindow* const window = ImGui::GetCurrentContext()->NavWindow;
  return window == nullptr || window == ImGui::FindWindowByName(drawing_part);
}

bool piece_has_keys(const App& app) {
  return app.view.piece_large && (drawing_has_keys() || root_with_keys() == ImGui::FindWindowByName(piece_part));
}

bool typing_undoes(const KeyEvent& key) {
  ImGuiContext& context = *ImGui::GetCurrentContext();
  const ImGuiInputTextState* const field = ImGui::GetInputTextState(context.ActiveId);
  if (field == nullptr || !key.with.control || (key.name != "z" && key.name != "y")) {
    return true;
  }
  return field->GetUndoAvailCount() > 0 || field->GetRedoAvailCount() > 0;
}

namespace {

// What is as tall as what it holds learns that from the frame before.
bool takes_another_size(const ImGuiWindow& window) {
  if ((window.Flags & ImGuiWindowFlags_AlwaysAutoResize) == 0 || window.SkipItems) {
    return false;
  }
  const ImGuiWindowTempData& drawn = window.DC;
  const float tall = std::floor(std::max(drawn.CursorMaxPos.y, drawn.IdealMaxPos.y) - drawn.CursorStartPos.y);
  return tall != window.ContentSizeIdeal.y;
}

} // namespace

bool something_opens() {
  const ImGuiContext& context = *ImGui::GetCurrentContext();
  const bool moves = context.NavMoveForwardToNextFrame || context.NavMoveSubmitted;
  return moves || std::ranges::any_of(context.Windows, [](const ImGuiWindow* window) {
           return window->Active && (window->HiddenFramesCanSkipItems > 0 || window->HiddenFramesCannotSkipItems > 0 ||
                                     takes_another_size(*window));
         });
}

namespace {

// For tests: which thing has the keys, and what is typed in it.
void tell_where_keys_are(Actions& actions) {
  const ImGuiContext& context = *ImGui::GetCurrentContext();
  const ImGuiID present = context.ActiveId != 0 ? context.ActiveId : context.NavDisableHighlight ? 0 : context.NavId;
  const auto stop = std::ranges::find(actions.stops, present, &Stop::id);
  actions.keys_at = stop != actions.stops.end() ? stop->name : drawing_has_keys() ? "drawing" : "";
  if (const ImGuiInputTextState* const field = ImGui::GetInputTextState(context.ActiveId)) {
    for (int place = 0; place < field->CurLenW; ++place) {
      const auto letter = static_cast<unsigned>(field->TextW[place]);
      actions.typed += letter < 0x80 ? static_cast<char>(letter) : '?';
    }
  }
}

} // namespace

void walk_with_keys(const App& app, const Portion& input, Actions& actions) {
  if (actions.publish_places) {
    tell_where_keys_are(actions);
  }
  if (actions.dialog_appears) {
    const auto& popups = ImGui::GetCurrentContext()->OpenPopupStack;
    const std::vector<Stop> stops = stops_in(actions, popups.empty() ? root_with_keys() : popups.front().Window);
    const auto wished = std::ranges::find(stops, actions.first_stop, &Stop::id);
    if (!stops.empty()) {
      go_to(wished != stops.end() ? *wished : stops.front());
    }
    return;
  }
  if (actions.wanted_stop != 0) {
    const auto wanted = std::ranges::find(actions.stops, actions.wanted_stop, &Stop::id);
    if (wanted != actions.stops.end()) {
      actions.push(CloseField{});
      return go_to(*wanted);
    }
  }
  if (app.view.part_step != 0) {
    return step_to_part(app, actions, app.view.part_step);
  }
  for (const InputEvent& event : input) {
    if (event.kind != InputEvent::Kind::key || !event.key.down || event.key.with.control || event.key.with.alt) {
      continue;
    }
    if (event.key.name == "tab") {
      const int by = event.key.with.shift ? -1 : 1;
      if (app.bench.open && !is_open(app.session.dialog)) {
        walk(stops_in(actions, ImGui::FindWindowByName(bench_part)), by);
      } else if (drawing_has_keys()) {
        step_to_part(app, actions, by);
      } else {
        actions.push(CloseField{});
        walk(stops_in(actions, root_with_keys()), by);
      }
    } else if ((event.key.name == "return" || event.key.name == "keypad return") && !drawing_has_keys()) {
      press_return(actions);
    }
  }
}

} // namespace punchwright::editor
