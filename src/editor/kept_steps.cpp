// Writing the steps after a saving, and taking them after an opening; the form is the journal's.
#include "editor/kept_steps.hpp"

#include "editor/app.hpp"
#include "editor/user_settings.hpp"
#include "files/files.hpp"
#include "journal/journal.hpp"

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

fs::path StepKeeper::file_for(const fs::path& design) const {
  return folder_ / fmt::format("{:016x}{}", digest_of(design.string()), steps_kind);
}

void StepKeeper::wait() {
  if (writing_.valid()) {
    writing_.wait();
  }
}

void StepKeeper::keep(const App& app) {
  wait(); // for the saving before
  Journal journal;
  journal.file = app.session.path;
  journal.file_digest = app.session.file_digest;
  journal.design = app.work.design;
  journal.history = app.work.history.latest(most_kept_steps);
  writing_ =
      std::async(std::launch::async, [folder = folder_, file = file_for(journal.file), kept = std::move(journal)] {
        std::error_code trouble;
        fs::create_directories(folder, trouble);
        if (!write_file(file, write_journal(kept))) {
          clear_oldest(folder, most_files);
        }
      });
}

void StepKeeper::take_kept(App& app) const {
  const fs::path file = file_for(app.session.path);
  std::error_code ignored;
  if (!fs::is_regular_file(file, ignored)) {
    return;
  }
  const auto text = read_file(file, largest_journal);
  auto journal = text ? read_journal(*text, file.string()) : Result<Journal>(text.error());
  if (journal && journal->file == app.session.path && journal->file_digest == app.session.file_digest &&
      journal->design == app.work.design) {
    app.work.history = std::move(journal->history);
    app.work.history.mark_saved();
  }
}

void StepKeeper::follow(App& app) {
  if (folder_.empty()) {
    return;
  }
  const bool saved_here = app.session.saves != saves_ && opening_ == app.work.opening;
  const bool opened = opening_ != app.work.opening;
  saves_ = app.session.saves;
  opening_ = app.work.opening;
  if (saved_here && !app.work.history.steps().empty()) {
    keep(app);
  } else if (opened && app.session.file_digest != 0 && app.work.history.saved() && app.work.history.steps().empty()) {
    take_kept(app);
  }
}

} // namespace punchwright::editor
