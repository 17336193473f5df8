// Ranges of rows and columns.
#include "cli/places.hpp"

#include "words/words.hpp"

#include <charconv>
#include <optional>
#include <string_view>

namespace punchwright::cli {
namespace {

struct Range {
  int first = 1;
  int last = 1;
};

// "7" or "3-9", from 1 to `most`.
std::optional<Range> range_in(std::string_view text, int most) {
  const auto number_in = [&](std::string_view digits) -> std::optional<int> {
    int number = 0;
    const char* const end = digits.data() + digits.size();
    const auto [stop, trouble] = std::from_chars(digits.data(), end, number);
    return trouble == std::errc{} && stop == end && number >= 1 && number <= most ? std::optional(number)
                                                                                  : std::nullopt;
  };
  const std::size_t dash = text.find('-');
  const auto first = number_in(text.substr(0, dash));
  const auto last = dash == std::string_view::npos ? first : number_in(text.substr(dash + 1));
  return first && last && *first <= *last ? std::optional(Range{*first, *last}) : std::nullopt;
}

} // namespace

Result<Area> area_in(const std::string& place, int width, int height) {
  const std::size_t colon = place.find(':');
  const auto rows = range_in(std::string_view(place).substr(0, colon), height);
  const auto columns = colon == std::string::npos ? std::optional(Range{1, width})
                                                  : range_in(std::string_view(place).substr(colon + 1), width);
  if (!rows || !columns) {
    return Error{
        tr("command line"), 0, 0, said("'{}' is no place in the drawing", place),
        said("allowed: ROWS or ROWS:COLUMNS, such as 7 or 5-8:3-9, rows 1 to {}, columns 1 to {}", height, width)};
  }
  return Area{Cell{columns->first - 1, rows->first - 1}, columns->last - columns->first + 1,
              rows->last - rows->first + 1};
}

} // namespace punchwright::cli
