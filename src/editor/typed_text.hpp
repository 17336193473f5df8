// Text in fields and on panels: numbers typed with a point or a comma, text that wraps at spaces.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace punchwright::editor {

// "22.5" and "22,5"; nothing where it is no number.
[[nodiscard]] std::optional<double> number_typed(std::string_view text);
// A whole number; one that is too long to be held counts as the largest.
[[nodiscard]] std::optional<int> count_typed(std::string_view text);
// With at least that many decimals, and with more where the number has them; with the language's decimal sign.
[[nodiscard]] std::string number_shown(double number, int decimals);

// Spaces become line breaks where a line would be wider than the room, byte for byte at the same place, so that an
// edit of the wrapped text is the same edit of the text.
using WidthOf = std::function<float(std::string_view)>;
[[nodiscard]] std::string wrapped_at(std::string_view text, float room, const WidthOf& width);

// `text` after the edit that made `wrapped_after` of `wrapped_before`, which is `text` wrapped.
[[nodiscard]] std::string unwrapped_edit(std::string_view text, std::string_view wrapped_before,
                                         std::string_view wrapped_after);

} // namespace punchwright::editor
