// What the dialogs for pictures and layouts show, worked out before they are drawn. Pure functions.
#pragma once

#include "editor/dialogs.hpp"

namespace punchwright::editor {

// The picture as a drawing of stitches in that gauge.
[[nodiscard]] PictureDialog picture_dialog(const std::filesystem::path& path, std::shared_ptr<const Picture> picture,
                                           ContrastIs contrast, const Gauge& gauge);

// The design in that layout, as it repeats, or why it can't be; where only the card is too narrow for it, both.
[[nodiscard]] LayoutDialog layout_dialog(const Document& design, const Profile& profile, Layout layout);

// The stitches that the machine's card repeats over; none where it reads no card.
[[nodiscard]] std::optional<int> card_width_of(const Profile& profile);

} // namespace punchwright::editor
