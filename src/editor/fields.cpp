// Fields of settings: text, numbers and boxes to tick. What is typed is taken over at once where it is allowed.
#include "editor/typed_text.hpp"
#include "editor/widgets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <imgui_internal.h>
#include <imgui_stdlib.h>
#include <optional>
#include <utility>

namespace punchwright::editor {

void send(const Field& field, Document settings) {
  if (ImGui::IsKeyPressed(ImGuiKey_Escape)) {
    return; // the field has gone back to what it was, and DropField takes back what was sent
  }
  field.actions.push(ChangeField{std::move(settings), field.name, {}});
}

bool text_input(const Field& field, std::string& text, const char* when_empty, int flags) {
  ImGui::PushID(field.name);
  const bool changed = when_empty != nullptr ? ImGui::InputTextWithHint("##field", when_empty, &text, flags)
                                             : ImGui::InputText("##field", &text, flags);
  ImGui::PopID();
  remember_place(field.actions, field.name, Stop::Kind::field);
  // ImGui has put back what stood there; that is no change of its own.
  if (ImGui::IsItemDeactivated() && ImGui::IsKeyPressed(ImGuiKey_Escape)) {
    field.actions.push(DropField{});
  }
  return changed;
}

void text_field(const Field& field, const char* words, std::string Document::*member) {
  label(field.app.theme, words, 0.30F);
  std::string text = field.app.work.design.*member;
  if (text_input(field, text)) {
    Document settings = settings_of(field.app.work.design);
    settings.*member = text;
    send(field, std::move(settings));
  }
}

namespace {

// What stood in a field that the keys have left, once; nothing in others.
std::optional<std::string> text_left_behind() {
  ImGuiInputTextState& state = ImGui::GetCurrentContext()->InputTextState;
  if (state.ID != ImGui::GetItemID() || ImGui::GetActiveID() == state.ID || state.ID == 0) {
    return std::nullopt;
  }
  state.ID = 0; // told
  std::string text;
  for (int place = 0; place < state.CurLenW; ++place) {
    const auto letter = static_cast<unsigned>(state.TextW[place]);
    text += letter < 0x80 ? static_cast<char>(letter) : '?';
  }
  return text;
}

// In the hints and remarks of fields; measures in inches have three decimals.
std::string in_words(double number) {
  return short_decimal(number, 3);
}
std::string in_words(int number) {
  return std::to_string(number);
}

void remark(const Field& field, std::string words) {
  if (field.remark != nullptr) {
    *field.remark = std::move(words);
  } else {
    field.actions.push(Say{std::move(words), Tone::trouble});
  }
}

// A field for numbers of either kind: what was typed is taken over at once where it is allowed. Too much becomes the
// most; too little may be on its way ("1" to "16"), and is only spoken of when the field is left.
// Where it may be left empty, `when_empty` says what holds then.
template <class Number, class Read>
bool typed_optional(const Field& field, const char* words, std::optional<Number>& value, Number low, Number high,
                    std::string shown, const Read& read, const char* when_empty) {
  const bool escaped = ImGui::IsKeyPressed(ImGuiKey_Escape);
  const bool changed = text_input(field, shown, when_empty, ImGuiInputTextFlags_AutoSelectAll);
  const auto left_empty = [&](const std::string& text) { return when_empty != nullptr && text.empty(); };
  const std::optional<Number> typed = read(shown);
  if (const auto left = text_left_behind(); left && !escaped && !left_empty(*left)) {
    const std::optional<Number> last = read(*left);
    if (!last || *last < low) {
      remark(field, value ? said("{}: {} to {}; {} is kept", words, in_words(low), in_words(high), in_words(*value))
                          : said("{}: {} to {}, or nothing", words, in_words(low), in_words(high)));
    }
  }
  tip(field.app.theme, when_empty == nullptr ? said("{} to {}", in_words(low), in_words(high))
                                             : said("{} to {}, or nothing", in_words(low), in_words(high)));
  if (changed && left_empty(shown)) {
    return std::exchange(value, std::nullopt).has_value();
  }
  if (!changed || !typed || *typed < low || typed == value) {
    return false;
  }
  if (*typed > high) {
    remark(field, said("{}: at most {}", words, in_words(high)));
  } else if (field.remark != nullptr) {
    field.remark->clear();
  }
  const std::optional<Number> before = std::exchange(value, std::min(*typed, high));
  return value != before;
}

template <class Number, class Read>
bool typed_number(const Field& field, const char* words, Number& value, Number low, Number high, std::string shown,
                  const Read& read) {
  std::optional<Number> kept = value;
  const bool changed = typed_optional(field, words, kept, low, high, std::move(shown), read, nullptr);
  value = *kept;
  return changed;
}

} // namespace

bool number_field(const Field& field, const char* words, double& value, double low, double high, int decimals,
                  const char* unit) {
  label(field.app.theme, words);
  const float gap = ImGui::GetStyle().ItemInnerSpacing.x;
  if (unit != nullptr) {
    ImGui::SetNextItemWidth(-ImGui::CalcTextSize(unit).x - gap);
  }
  const bool changed =
      typed_number<double>(field, words, value, low, high, number_shown(value, decimals), number_typed);
  if (unit != nullptr) {
    ImGui::SameLine(0, gap);
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(unit);
  }
  return changed;
}

bool optional_field(const Field& field, const char* words, std::optional<double>& value, double low, double high,
                    int decimals, const std::string& when_empty) {
  label(field.app.theme, words);
  return typed_optional<double>(field, words, value, low, high, value ? number_shown(*value, decimals) : std::string(),
                                number_typed, when_empty.c_str());
}

bool length_field(const Field& field, const char* words, double& mm, double low, double high, int decimals) {
  const LengthUnit unit = field.app.settings.lengths;
  const int more = unit == LengthUnit::inches ? 1 : 0; // a tenth of an inch is coarser than a millimetre
  double shown = small_length(mm, unit);
  if (!number_field(field, words, shown, small_length(low, unit), small_length(high, unit), decimals + more)) {
    return false;
  }
  mm = std::clamp(mm_of(shown, unit), low, high);
  return true;
}

bool count_input(const Field& field, const char* words, int& value, int low, int high) {
  const float gap = 3 * field.app.theme.scale;
  const float square = ImGui::GetFrameHeight();
  ImGui::SetNextItemWidth(std::max(square, ImGui::GetContentRegionAvail().x - 2 * (square + gap)));
  bool changed = typed_number<int>(field, words, value, low, high, std::to_string(value), count_typed);
  const int step = ImGui::GetIO().KeyShift ? 5 : 1;
  int by = 0;
  if (ImGui::IsItemActive()) {
    by = ImGui::IsKeyPressed(ImGuiKey_UpArrow) ? step : ImGui::IsKeyPressed(ImGuiKey_DownArrow) ? -step : 0;
    if (by != 0) {
      ImGui::ClearActiveID(); // the number is shown anew, and typed in again
      ImGui::ActivateItem(ImGui::GetItemID());
    }
  }
  ImGui::PushID(field.name);
  ImGui::PushButtonRepeat(true);
  ImGui::PushAllowKeyboardFocus(false);
  for (const auto& [sign, direction] : {std::pair{"−", -1}, std::pair{"+", 1}}) {
    ImGui::SameLine(0, gap);
    if (ImGui::Button(sign, ImVec2(square, square))) {
      by = direction * step;
    }
    tip(field.app.theme, direction > 0 ? tr("One more; with Shift five") : tr("One less; with Shift five"));
  }
  ImGui::PopAllowKeyboardFocus();
  ImGui::PopButtonRepeat();
  ImGui::PopID();
  const int wished = std::clamp(value + by, low, high);
  changed = changed || wished != value;
  value = wished;
  return changed;
}

bool count_field(const Field& field, const char* words, int& value, int low, int high) {
  label(field.app.theme, words);
  return count_input(field, words, value, low, high);
}

bool check_box(Actions& actions, const char* name, const char* words, bool& value) {
  const float rest = ImGui::GetContentRegionAvail().x - ImGui::GetFrameHeight() - ImGui::GetStyle().ItemInnerSpacing.x;
  const bool fits = ImGui::CalcTextSize(words).x <= rest;
  ImGui::PushID(name);
  const bool changed = ImGui::Checkbox(fits ? words : "##box", &value);
  ImGui::PopID();
  remember_place(actions, name);
  if (!fits) {
    ImGui::SameLine(0, ImGui::GetStyle().ItemInnerSpacing.x);
    ImGui::PushTextWrapPos(0);
    ImGui::TextUnformatted(words);
    ImGui::PopTextWrapPos();
  }
  return changed;
}

} // namespace punchwright::editor
