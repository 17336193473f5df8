// What the edits share: refusals in the same words, and those edits that put rows and columns elsewhere.
// For edits*.cpp of this room only.
#pragma once

#include "design/edits.hpp"

namespace punchwright {

[[nodiscard]] Error refusal(std::string message, std::string remedy);

enum class Lines { rows, columns };
// Lines `first` to `first` + `count` - 1.
[[nodiscard]] Failure outside(const Grid& grid, int first, int count, Lines lines);

[[nodiscard]] Failure wrong_size(int width, int height);

[[nodiscard]] Result<Change::Drawing> rebuilt(const Document& document, const InsertRows& edit);
[[nodiscard]] Result<Change::Drawing> rebuilt(const Document& document, const DeleteRows& edit);
[[nodiscard]] Result<Change::Drawing> rebuilt(const Document& document, const DuplicateRows& edit);
[[nodiscard]] Result<Change::Drawing> rebuilt(const Document& document, const InsertColumns& edit);
[[nodiscard]] Result<Change::Drawing> rebuilt(const Document& document, const DeleteColumns& edit);
[[nodiscard]] Result<Change::Drawing> rebuilt(const Document& document, const DuplicateColumns& edit);
[[nodiscard]] Result<Change::Drawing> rebuilt(const Document& document, const MoveRows& edit);
[[nodiscard]] Result<Change::Drawing> rebuilt(const Document& document, const MoveColumns& edit);
[[nodiscard]] Result<Change::Drawing> rebuilt(const Document& document, const Resize& edit);

} // namespace punchwright
