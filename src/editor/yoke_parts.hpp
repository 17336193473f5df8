// The parts of the yoke's page, and what they share.
#pragma once

#include "editor/panels.hpp"
#include "editor/widgets.hpp"
#include "editor/yoke_cache.hpp"
#include "editor/yoke_labels.hpp"
#include "editor/yoke_no_fit.hpp"

#include <optional>
#include <string>

namespace punchwright::editor {

// px: the bar above, in one line, or in more where the window is tall enough for them.
float yoke_bar_height(const App& app, float width);
void yoke_bar(const App& app, Actions& actions, const ScreenBox& box);
// Size and, on the bed, piece.
void yoke_choices(const App& app, Actions& actions);
// In place of the drawing and all that belongs to it.
void yoke_page(const App& app, Actions& actions);

void yoke_fields(const App& app, Actions& actions);
void yoke_side(const App& app, Actions& actions);

// The views, each in the room that is left for it.
struct SchematicWords;
void draw_schematic(const App& app, Actions& actions, const ScreenBox& room, const SchematicWords& words);
void draw_flat(const App& app, Actions& actions, const ScreenBox& room);
void draw_worn(const App& app, Actions& actions, const ScreenBox& room);
// Which tiers the rings are, and the plain rows between them, upwards: from the outside inwards, where the yoke
// narrows.
[[nodiscard]] std::string words_of_rings(const App& app, const SizePlan& plan);
void draw_on_bed(const App& app, Actions& actions, const ScreenBox& room);

// A centimetre field; true where it changed.
bool cloth_field(const Field& field, const char* words, double& cm, double low, double high);

// One machine for all tiers, or none; true where it changed. Its entries are remembered as the field's name and theirs.
bool yoke_machine_field(const Field& field, std::optional<std::string>& profile);

// Sends the changed yoke under that name, unless the typing is being taken back.
void send(const App& app, Actions& actions, Yoke yoke, std::string field);

// Bounds of the form.
constexpr double narrowest_cm = narrowest_yoke_piece_cm;
constexpr double widest_cm = widest_yoke_piece_cm;
constexpr double shallowest_cm = 1;
constexpr double deepest_cm = 200;

} // namespace punchwright::editor
