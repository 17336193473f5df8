// Reading numbers as people type them, and wrapping.
#include "editor/typed_text.hpp"

#include "words/words.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace punchwright::editor {

namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') {
    text.remove_prefix(1);
  }
  while (!text.empty() && text.back() == ' ') {
    text.remove_suffix(1);
  }
  return text.starts_with('+') ? text.substr(1) : text;
}

} // namespace

std::optional<double> number_typed(std::string_view text) {
  std::string plain(trimmed(text));
  std::ranges::replace(plain, ',', '.');
  double number = 0;
  const char* const end = plain.data() + plain.size();
  const auto [stop, trouble] = std::from_chars(plain.data(), end, number);
  if (trouble != std::errc() || stop != end || !std::isfinite(number)) {
    return std::nullopt;
  }
  return number;
}

std::optional<int> count_typed(std::string_view text) {
  const std::string_view plain = trimmed(text);
  int number = 0;
  const char* const end = plain.data() + plain.size();
  const auto [stop, trouble] = std::from_chars(plain.data(), end, number);
  if (stop != end || plain.empty() || trouble == std::errc::invalid_argument) {
    return std::nullopt;
  }
  if (trouble == std::errc::result_out_of_range) {
    return plain.front() == '-' ? std::numeric_limits<int>::min() : std::numeric_limits<int>::max();
  }
  return number;
}

std::string number_shown(double number, int decimals) {
  const std::string rounded = decimal(number, decimals);
  const auto kept = number_typed(rounded);
  if (kept && std::abs(*kept - number) < 1.0e-9) {
    return rounded;
  }
  std::string exact = fmt::format("{:.7g}", number);
  std::ranges::replace(exact, '.', chosen_language().decimal_sign);
  return exact;
}

std::string wrapped_at(std::string_view text, float room, const WidthOf& width) {
  std::string wrapped(text);
  std::size_t line = 0;                       // where it begins
  std::size_t space = std::string_view::npos; // the last one in the line
  for (std::size_t place = 0; place <= text.size(); ++place) {
    const bool end = place == text.size() || text[place] == '\n';
    if (!end && text[place] != ' ') {
      continue;
    }
    if (space != std::string_view::npos && width(text.substr(line, place - line)) > room) {
      wrapped[space] = '\n';
      line = space + 1;
    }
    space = end ? std::string_view::npos : place;
    if (end) {
      line = place + 1;
    }
  }
  return wrapped;
}

std::string unwrapped_edit(std::string_view text, std::string_view wrapped_before, std::string_view wrapped_after) {
  std::size_t front = 0;
  const std::size_t shorter = std::min(wrapped_before.size(), wrapped_after.size());
  while (front < shorter && wrapped_before[front] == wrapped_after[front]) {
    ++front;
  }
  std::size_t back = 0;
  while (back < shorter - front &&
         wrapped_before[wrapped_before.size() - 1 - back] == wrapped_after[wrapped_after.size() - 1 - back]) {
    ++back;
  }
  std::string after(text.substr(0, front));
  after += wrapped_after.substr(front, wrapped_after.size() - back - front);
  after += text.substr(text.size() - back);
  return after;
}

} // namespace punchwright::editor
