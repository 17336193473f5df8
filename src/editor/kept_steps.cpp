// Writing the steps after a saving, and taking them after an opening; the form is the journal's.
#include "editor/kept_steps.hpp"

#include "editor/app.hpp"
#include "editor/user_settings.hpp"
#include "files/files.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <vector>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view steps_kind = ".steps";

// Leaves the files that were written last.
void clear_oldest(const fs::path& folder, std::size_t most) {
  std::vector<std::pair<fs::file_time_type, fs::path>> files;
  std::error_code trouble;
  for (fs::directory_iterator entry(folder, trouble), end; !trouble && entry != end; entry.increment(trouble)) {
    std::error_code gone;
    const fs::file_time_type time = entry->last_write_time(gone);
    if (!gone && entry->path().extension() == steps_kind) {
      files.emplace_back(time, entry->path());
    }
  }
  std::ranges::sort(files, std::greater<>());
  for (std::size_t place = most; place < files.size(); ++place) {
    fs::remove(files[place].second, trouble);
  }
}

} // namespace

fs::path StepKeeper::file_for(const fs::path& work) const {
  return folder_ / fmt::format("{:016x}{}", digest_of(work.string()), steps_kind);
}

void StepKeeper::wait() {
  if (writing_.valid()) {
    writing_.wait();
  }
}

void StepKeeper::keep(const App& app) {
  wait(); // for the saving before
  Journal journal = journal_of(app, side_);
  writing_ =
      std::async(std::launch::async, [folder = folder_, file = file_for(journal.file), kept = std::move(journal)] {
        if (!make_kept_folder(folder) && !write_file(file, write_journal(kept))) {
          clear_oldest(folder, most_files);
        }
      });
}

void StepKeeper::take_kept(App& app) const {
  const fs::path file = file_for(path_of(app, side_));
  std::error_code ignored;
  if (!fs::is_regular_file(file, ignored)) {
    return;
  }
  const auto text = read_file(file, largest_journal);
  auto journal = text ? read_journal(*text, file.string()) : Result<Journal>(text.error());
  if (journal && journal->file == path_of(app, side_) && journal->file_digest == digest_of_file(app, side_)) {
    take_steps(app, side_, std::move(journal).value());
  }
}

void StepKeeper::follow(App& app) {
  if (folder_.empty()) {
    return;
  }
  const bool opened = opening_ != opening_of(app, side_);
  const fs::path& path = path_of(app, side_);
  const std::uint64_t digest = digest_of_file(app, side_);
  const bool saved_here = !opened && (digest != digest_ || path != path_);
  if (!opened && !saved_here) {
    return; // as in nearly every frame
  }
  opening_ = opening_of(app, side_);
  path_ = path;
  digest_ = digest;
  if (saved_here && has_steps(app, side_)) {
    keep(app);
  } else if (opened && digest != 0 && is_saved(app, side_) && !has_steps(app, side_)) {
    take_kept(app);
  }
}

} // namespace punchwright::editor
