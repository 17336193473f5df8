// Which of equally good mends keeps the symmetry of the drawing best: the last criterion, where it is asked for.
#pragma once

#include "design/grid.hpp"
#include "drawing/frieze.hpp"
#include "mending/look.hpp"

#include <span>

namespace punchwright {

// The rows of a drawing which are mended, ascending, in forms that look best as far as is known (`look_proved`: no
// others of the same price have fewer pairs, nor as many and smaller squares). They are changed to forms of the same
// price that look no worse and leave fewer unlike pairs. True where no other choice comes before this one.
[[nodiscard]] bool improve_symmetry(std::span<MendedRow> rows, const Grid& drawing, bool stacked, const Frieze& frieze,
                                    RowForms& forms, bool look_proved);

} // namespace punchwright
