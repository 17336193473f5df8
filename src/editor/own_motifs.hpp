// The user's own motifs: a folder under XDG's data folder, of .repeat files and of text files in the collection's form.
// What can't be read there is noted, and the rest is shown.
#pragma once

#include "design/result.hpp"
#include "drawing/motifs.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace punchwright::editor {

// $XDG_DATA_HOME/punchwright/motifs, else in ~/.local/share; empty where neither names an absolute path.
[[nodiscard]] std::filesystem::path usual_motif_folder();

struct OwnMotifs {
  std::vector<Motif> motifs; // by file name
  std::string trouble;       // a line for each file that can't be read
};
// Of the .repeat and .motif files there, 500 at most. A folder that isn't there has none.
[[nodiscard]] OwnMotifs own_motifs_in(const std::filesystem::path& folder);

// Writes it as a file of its own, under a name that no other file there has, and makes the folder where it is missing.
// Gives the file's path.
[[nodiscard]] Result<std::filesystem::path> keep_motif_in(const std::filesystem::path& folder, const Motif& motif);

} // namespace punchwright::editor
