// The .machine file form: a user's own machine as TOML text, read and written.
#pragma once

#include "machine/profile.hpp"

#include <string>
#include <string_view>

namespace punchwright {

// `file_name` is used in errors, and its stem is the profile's name where the file gives none.
[[nodiscard]] Result<Profile> read_machine(std::string_view text, const std::string& file_name);
[[nodiscard]] std::string write_machine(const Profile& profile);

} // namespace punchwright
