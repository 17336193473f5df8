// The .yoke file form: TOML 1.0 text to a yoke and back, nothing lost, every error with its place.
// Written in a fixed order, so that files can be compared line by line.
#pragma once

#include "design/repeat_file.hpp"
#include "pieces/yoke.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

struct ReadYoke {
  Yoke yoke;
  std::vector<ReadingNote> notes;
  // Where values stand: "machine.profile", "tier.2.repeat", "piece.1.bottom_cm"; tiers and pieces from 1.
  std::map<std::string, Spot> places;
};

// `file_name` is only used in errors. Text of more than 8 MiB is refused.
[[nodiscard]] Result<ReadYoke> read_yoke(std::string_view text, const std::string& file_name);

// The text of a .yoke file. read_yoke(write_yoke(y)) gives y; write_yoke(read_yoke(t)) gives t for every t that this
// function wrote.
[[nodiscard]] std::string write_yoke(const Yoke& yoke);

} // namespace punchwright
