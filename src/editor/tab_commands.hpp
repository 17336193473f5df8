// What commands ask of what is chosen and typed: pen and tool, the symmetry, the lettering.
// Panels, menus and apply() look it up here, so that a button and its key can't disagree.
#pragma once

#include "drawing/alphabet.hpp"
#include "drawing/frieze.hpp"
#include "drawing/widening.hpp"
#include "editor/commands.hpp"

#include <optional>
#include <string>

namespace punchwright::editor {

struct App;

[[nodiscard]] Command command_for(FriezeGroup group);
[[nodiscard]] std::optional<FriezeGroup> group_of(Command command); // none: it chooses no symmetry

// Whether it moves an axis of the symmetry, and why it can't now (empty: it can).
[[nodiscard]] bool moves_axis(Command command);
[[nodiscard]] std::string why_no_axis(const App& app, Command command);

// Whether what the command chooses, or turns on and off, is so now: menus tick it, and the toolbar shows it pressed.
[[nodiscard]] bool is_chosen(const App& app, Command command);

// The group whose symmetry is drawn under; p1 where none is.
[[nodiscard]] FriezeGroup chosen_group(const App& app);

// The typed words, to be read on the side of the cloth that the piece shows. Refused: a sign that the alphabet lacks.
[[nodiscard]] Result<Lettering> typed_lettering(const App& app);

// The repeat in which letters that are drawn have room; none where they have it already.
[[nodiscard]] std::optional<Widening> widening_for(const App& app, const Lettering& drawn);
// The same for the typed words, which are drawn anew for it.
[[nodiscard]] std::optional<Widening> widening_for_lettering(const App& app);

} // namespace punchwright::editor
