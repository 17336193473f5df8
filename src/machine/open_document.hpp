// A .repeat file together with the machine that it names: what every part of the program opens.
// Reading of the .machine file goes through the caller's function, so that this room does no input or output.
#pragma once

#include "design/repeat_file.hpp"
#include "machine/profile.hpp"

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

struct OpenedDocument {
  Document document;
  Profile profile;
  std::vector<ReadingNote> notes;
};

using FileReader = std::function<Result<std::string>(const std::filesystem::path&)>;

// The profile of that name: built in, or the path of a .machine file, relative to the folder of `beside` (a file's
// path).
[[nodiscard]] Result<Profile> find_profile(const std::string& name, const std::filesystem::path& beside,
                                           const FileReader& read);

// `path` is the .repeat file's, for errors and for finding a .machine file beside it.
[[nodiscard]] Result<OpenedDocument> open_document(std::string_view text, const std::string& path,
                                                   const FileReader& read);

} // namespace punchwright
