// The words of the .yoke form, in one place for its reader and its writer.
// They are what people and other programs type, so they never change.
#pragma once

#include "design/toml_extras.hpp"
#include "pieces/yoke.hpp"

#include <array>
#include <string_view>
#include <utility>

namespace punchwright {

constexpr std::array<std::pair<std::string_view, YokeSeams>, 3> seam_words{
    {{"continuous", YokeSeams::continuous}, {"centred", YokeSeams::centred}, {"free", YokeSeams::free}}};

constexpr std::array<std::pair<std::string_view, DecreaseWay>, 3> decrease_way_words{
    {{"gathered", DecreaseWay::gathered}, {"spread", DecreaseWay::spread}, {"half-steps", DecreaseWay::half_steps}}};

constexpr std::array<std::pair<std::string_view, DecreaseTowards>, 2> towards_words{
    {{"centre", DecreaseTowards::centre}, {"edges", DecreaseTowards::edges}}};

// The tables and keys of the form; yarns, pieces and tiers are told apart by their numbers.
[[nodiscard]] TomlForm yoke_form();

} // namespace punchwright
