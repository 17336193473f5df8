// Which machine knits a yoke: that of its tiers' files, or one for all of them.
#include "editor/choice_field.hpp"
#include "editor/yoke_parts.hpp"
#include "machine/profile.hpp"
#include "words/words.hpp"

#include <filesystem>

namespace punchwright::editor {

bool yoke_machine_field(const Field& field, std::optional<std::string>& profile) {
  const char* const own = tr("as the tiers' files say");
  const Profile* const built_in = profile ? built_in_profile(*profile) : nullptr;
  const std::string title = !profile              ? std::string(own)
                            : built_in != nullptr ? std::string(tr(built_in->title.c_str()))
                                                  : std::filesystem::path(*profile).filename().string();
  label(field.app.theme, tr("Machine"), 0.30F);
  const float room = ImGui::CalcItemWidth() - ImGui::GetFrameHeight() - 2 * ImGui::GetStyle().FramePadding.x;
  const std::string shown = shortened(title, room);
  bool changed = false;
  const auto entry = [&](const char* words, const std::string& name, const std::optional<std::string>& value) {
    if (list_entry(words, value == profile)) {
      profile = value;
      changed = true;
    }
    remember_place(field.actions, fmt::format("{} {}", field.name, name));
  };
  if (ImGui::BeginCombo("##machine", shown.c_str())) {
    entry(own, "own", std::nullopt);
    for (const Profile& machine : built_in_profiles()) {
      entry(tr(machine.title.c_str()), machine.name, machine.name);
      tip(field.app.theme, machine.name);
    }
    if (profile && built_in == nullptr) {
      entry(title.c_str(), "file", profile);
      tip(field.app.theme, *profile);
    }
    ImGui::EndCombo();
  }
  remember_place(field.actions, field.name);
  tip(field.app.theme,
      tr("One machine for all tiers: needed where their files name different ones. Their drawings stay as "
         "they are; measure a swatch of this machine's gauge"));
  if (shown != title) {
    hint(field.app.theme, title);
  }
  return changed;
}

} // namespace punchwright::editor
