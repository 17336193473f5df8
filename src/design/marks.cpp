// Marked stitches, set and written as text.
#include "design/marks.hpp"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>
#include <optional>

namespace punchwright {
namespace {

void skip_blanks(std::string_view& text) {
  while (!text.empty() && text.front() == ' ') {
    text.remove_prefix(1);
  }
}

// A whole number of at most three digits, taken from the front.
std::optional<int> take_number(std::string_view& text) {
  skip_blanks(text);
  int number = 0;
  const auto [stop, trouble] =
      std::from_chars(text.data(), text.data() + std::min<std::size_t>(text.size(), 3), number);
  if (trouble != std::errc{} || text.front() == '-') {
    return std::nullopt;
  }
  text.remove_prefix(static_cast<std::size_t>(stop - text.data()));
  skip_blanks(text);
  return number;
}

bool take_sign(std::string_view& text, char sign) {
  if (text.empty() || text.front() != sign) {
    return false;
  }
  text.remove_prefix(1);
  return true;
}

} // namespace

bool any_marked(const Grid& layer, int row) {
  return layer.width() != 0 && layer.has_contrast(row);
}

Grid without_blank(Grid layer) {
  for (int row = 0; row < layer.height(); ++row) {
    if (layer.has_contrast(row)) {
      return layer;
    }
  }
  return {};
}

void set_mark(Grid& layer, const Grid& drawing, int column, int row, bool marked) {
  if (layer.width() == 0) {
    if (!marked) {
      return;
    }
    layer = Grid(drawing.width(), drawing.height());
  }
  layer.set(column, row, marked);
  if (!marked) {
    layer = without_blank(std::move(layer));
  }
}

std::string columns_text(const Grid& layer, int row) {
  std::string text;
  for (int first = 0; first < layer.width(); ++first) {
    if (!layer.at(first, row)) {
      continue;
    }
    int last = first;
    while (last + 1 < layer.width() && layer.at(last + 1, row)) {
      ++last;
    }
    text += text.empty() ? "" : ", ";
    text += first == last ? std::to_string(first + 1) : fmt::format("{}-{}", first + 1, last + 1);
    first = last;
  }
  return text;
}

bool set_columns_text(Grid& layer, int row, std::string_view text) {
  int before = 0; // columns ascend
  do {
    const auto first = take_number(text);
    const auto last = first && take_sign(text, '-') ? take_number(text) : first;
    if (!first || !last || *first <= before || *last < *first || *last > layer.width()) {
      return false;
    }
    for (int column = *first; column <= *last; ++column) {
      layer.set(column - 1, row, true);
    }
    before = *last;
  } while (take_sign(text, ','));
  return text.empty();
}

} // namespace punchwright
