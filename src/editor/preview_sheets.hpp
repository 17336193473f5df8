// Which sheets there are for a machine: without a card reader there is no card to print, and nothing to measure or try.
// Apart from the preview's state, which all of the editor includes.
#pragma once

#include "machine/profile.hpp"
#include "sheets/pages.hpp"

namespace punchwright::editor {

[[nodiscard]] inline bool has_sheet(const Profile& profile, SheetKind kind) {
  return profile.card || (kind != SheetKind::card && kind != SheetKind::swatch && kind != SheetKind::measure);
}

} // namespace punchwright::editor
