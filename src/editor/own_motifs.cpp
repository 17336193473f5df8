// Reading and writing the user's folder of motifs.
#include "editor/own_motifs.hpp"

#include "design/repeat_file.hpp"
#include "editor/user_settings.hpp"
#include "files/files.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t largest_motif_file = std::size_t{1} * 1024 * 1024; // bytes
constexpr std::size_t most_files = 500;

std::vector<fs::path> motif_files_in(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code trouble;
  for (fs::directory_iterator entry(folder, trouble), end; !trouble && entry != end; entry.increment(trouble)) {
    const std::string kind = entry->path().extension().string();
    std::error_code ignored;
    if ((kind == ".repeat" || kind == ".motif") && entry->is_regular_file(ignored)) { // reading a pipe would wait
      files.push_back(entry->path());
    }
  }
  std::ranges::sort(files);
  files.resize(std::min(files.size(), most_files));
  return files;
}

Result<std::vector<Motif>> motifs_in_file(const fs::path& path) {
  const auto text = read_file(path, largest_motif_file);
  if (!text) {
    return text.error();
  }
  const std::string id = path.stem().string();
  if (path.extension() == ".motif") {
    return motifs_in_text(*text, id);
  }
  auto read = read_repeat(*text, {});
  if (!read) {
    return read.error();
  }
  Document& design = read->document;
  return std::vector<Motif>{
      Motif{id, design.title.empty() ? id : design.title, MotifGroup::own, {}, std::move(design.grid)}};
}

} // namespace

fs::path usual_motif_folder() {
  const fs::path data = folder_for_user("XDG_DATA_HOME", fs::path(".local") / "share");
  return data.empty() ? data : data / "punchwright" / "motifs";
}

OwnMotifs own_motifs_in(const fs::path& folder) {
  OwnMotifs own;
  if (folder.empty()) {
    return own;
  }
  for (const fs::path& path : motif_files_in(folder)) {
    auto motifs = motifs_in_file(path);
    if (motifs) {
      std::ranges::move(*motifs, std::back_inserter(own.motifs));
      continue;
    }
    Error error = motifs.error();
    error.file = path.filename().string();
    own.trouble += (own.trouble.empty() ? "" : "\n") + error.text();
  }
  return own;
}

Result<fs::path> keep_motif_in(const fs::path& folder, const Motif& motif) {
  if (folder.empty()) {
    return Error{{}, 0, 0, tr("no folder for motifs is known"), tr("set HOME or XDG_DATA_HOME")};
  }
  if (const Failure failure = make_kept_folder(folder)) {
    return Error{folder.string(), 0, 0, said("the folder can't be made ({})", failure->message), {}};
  }
  std::error_code trouble;
  Motif kept = motif;
  for (int number = 2; fs::exists(fs::symlink_status(folder / (kept.id + ".motif"), trouble)); ++number) {
    kept.id = fmt::format("{}-{}", motif.id, number);
  }
  fs::path path = folder / (kept.id + ".motif");
  if (const Failure failure = write_file(path, text_of_motif(kept))) {
    return *failure;
  }
  return path;
}

} // namespace punchwright::editor
