// punchwright export: every sheet of a design into one folder, together or not at all.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "sheets/everything.hpp"
#include "words/words.hpp"

#include <cstdio>
#include <filesystem>

namespace punchwright::cli {
namespace {

namespace fs = std::filesystem;

// The folder, made where it isn't there; what was made is taken away again unless it was of use.
class Folder {
public:
  explicit Folder(fs::path path) : path_(std::move(path)) {}
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code ignored;
    if (made_) {
      fs::remove(path_, ignored);
    }
  }

  [[nodiscard]] Failure open() {
    std::error_code trouble;
    if (fs::is_directory(path_, trouble)) {
      return std::nullopt;
    }
    if (fs::exists(path_, trouble)) {
      return Error{path_.string(), 0, 0, tr("this is no folder"), tr("name a folder, or one that can be made")};
    }
    made_ = fs::create_directory(path_, trouble);
    return made_ ? Failure{}
                 : Failure(Error{path_.string(), 0, 0, said("the folder can't be made: {}", trouble.message()),
                                 tr("name a folder inside one that is there")});
  }
  void keep() { made_ = false; }

private:
  fs::path path_;
  bool made_ = false;
};

Failure already_there(const std::vector<OutputFile>& files, const fs::path& folder) {
  const std::vector<std::string> present = present_among(files);
  if (present.empty()) {
    return std::nullopt;
  }
  std::string names;
  for (const std::string& name : present) {
    names += (names.empty() ? "" : ", ") + name;
  }
  return Error{folder.string(), 0, 0, said("there already: {}", names), tr("add --replace to replace them")};
}

} // namespace

int export_everything(const EverythingWishes& wishes) {
  const auto opened = open_file(wishes.where.file);
  if (!opened) {
    return refuse(opened.error());
  }
  const fs::path folder(wishes.where.output);
  const std::string stem = wishes.where.file == "-" ? "design" : fs::path(wishes.where.file).stem().string();
  const auto findings = with_notes(check(opened->document, opened->profile), opened->notes);
  const Everything all =
      everything_of(opened->document, opened->profile, findings, (folder / stem).string(), wishes.chart);
  if (!wishes.replace) {
    if (const Failure failure = already_there(all.files, folder)) {
      return refuse(*failure);
    }
  }
  Folder place(folder);
  if (const Failure failure = place.open()) {
    return refuse(*failure);
  }
  const int written = write_all(all.files);
  if (written != done) {
    return written;
  }
  place.keep();
  for (const Error& error : all.left_out) {
    const std::string text = "punchwright: " + said("left out: {}", error.text()) + '\n';
    std::fwrite(text.data(), 1, text.size(), stderr);
  }
  return code_for_faults(findings, wishes.where.file);
}

} // namespace punchwright::cli
