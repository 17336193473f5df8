// Writing the journal beside the work, and finding those that were left behind.
#include "editor/kept_work.hpp"

#include "editor/applying.hpp"
#include "editor/user_settings.hpp"
#include "files/files.hpp"
#include "files/leftovers.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <ctime>
#include <fmt/format.h>
#include <unistd.h>
#include <utility>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view journal_kind = ".journal";
constexpr std::string_view lock_kind = ".lock";

fs::path lock_of(fs::path journal) {
  return journal.replace_extension(lock_kind);
}

std::vector<fs::path> files_of_kind(const fs::path& folder, std::string_view kind) {
  std::vector<fs::path> files;
  std::error_code trouble;
  for (fs::directory_iterator entry(folder, trouble), end; !trouble && entry != end; entry.increment(trouble)) {
    const fs::path name = entry->path().filename();
    if (name.extension() == kind && !name.string().starts_with('.')) {
      files.push_back(entry->path());
    }
  }
  return files;
}

// Of windows that were closed in the middle of making or removing their journal.
void clear_locks(const fs::path& folder) {
  for (const fs::path& lock : files_of_kind(folder, lock_kind)) {
    fs::path journal = lock;
    journal.replace_extension(journal_kind);
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(journal, ignored))) {
      continue;
    }
    if (auto held = HeldFile::take(lock)) {
      clear_leftovers(journal);
      held->remove();
    }
  }
}

} // namespace

std::string FoundWork::when() const {
  const std::time_t time = journal.kept;
  std::tm parts{};
  if (localtime_r(&time, &parts) == nullptr) {
    return tr("an unknown time");
  }
  return said("{:04}-{:02}-{:02} at {:02}:{:02}", parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday, parts.tm_hour,
              parts.tm_min);
}

std::string FoundWork::name() const {
  return !journal.file.empty()             ? journal.file.filename().string()
         : !journal.suggested_name.empty() ? journal.suggested_name
                                           : std::string(tr("Untitled"));
}

void FoundWork::remove() {
  std::error_code ignored;
  fs::remove(path, ignored);
  clear_leftovers(path);
  if (held) {
    held->remove();
  }
}

void forget_recovered(App& app, KeptSide side) {
  std::shared_ptr<FoundWork>& recovered = recovered_of(app, side);
  if (recovered) {
    recovered->remove();
    recovered.reset();
  }
}

FoundWorks find_works(const fs::path& folder) {
  FoundWorks found;
  if (folder.empty()) {
    return found;
  }
  clear_locks(folder);
  for (const fs::path& path : files_of_kind(folder, journal_kind)) {
    auto held = HeldFile::take(lock_of(path));
    if (!held) {
      continue; // another window is at work on it, or offers it
    }
    clear_leftovers(path);
    const auto text = read_file(path, largest_journal);
    auto journal = text ? read_journal(*text, path.filename().string()) : Result<Journal>(text.error());
    if (journal) {
      found.works.push_back(std::make_shared<FoundWork>(FoundWork{path, std::move(*held), std::move(journal).value()}));
      continue;
    }
    held->remove();
    const fs::path aside = text ? set_aside(path) : fs::path(); // what can't be opened may be whole
    const std::string name = path.filename().string();
    const std::string& why = journal.error().message;
    found.remarks.push_back(
        aside.empty() ? said("Kept work could not be read ({} {}); it stays as it is", name, why)
                      : said("Kept work could not be read ({} {}); it lies in {} now", name, why, aside.string()));
  }
  std::ranges::sort(found.works,
                    [](const auto& one, const auto& other) { return one->journal.kept > other->journal.kept; });
  return found;
}

WorkKeeper::WorkKeeper(fs::path folder, KeptSide side) : folder_(std::move(folder)), side_(side) {}

WorkKeeper::~WorkKeeper() {
  if (writing_.valid()) {
    writing_.wait();
  }
}

Failure WorkKeeper::make_place() {
  if (Failure failure = make_kept_folder(folder_)) {
    return failure;
  }
  const auto time = std::chrono::system_clock::now().time_since_epoch();
  const fs::path file =
      folder_ / fmt::format("{}-{}{}", ::getpid(), std::chrono::nanoseconds(time).count(), journal_kind);
  auto held = HeldFile::take(lock_of(file));
  if (!held) {
    return Error{folder_.string(), 0, 0, tr("nothing can be written there"), {}};
  }
  held_.emplace(std::move(*held));
  file_ = file;
  return std::nullopt;
}

void WorkKeeper::begin(const App& app) {
  const Failure failure = held_ ? Failure() : make_place();
  const std::uint64_t opening = opening_of(app, side_);
  const std::uint64_t revision = revision_of(app, side_);
  if (failure) {
    std::promise<Outcome> known;
    known.set_value({failure, opening, revision});
    writing_ = known.get_future();
    return;
  }
  Journal journal = journal_of(app, side_);
  journal.kept = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  writing_ = std::async(std::launch::async, [file = file_, kept = std::move(journal), opening, revision] {
    return Outcome{write_file(file, write_journal(kept)), opening, revision};
  });
}

void WorkKeeper::take_outcome(App& app, Clock::time_point now) {
  Outcome outcome = writing_.get();
  if (outcome.failure) {
    waiting_since_ = now; // tried again after a while
    if (!std::exchange(trouble_said_, true)) {
      say(app, said("What you draw can't be kept against a power cut ({}); save often", outcome.failure->message),
          Tone::trouble);
    }
    return;
  }
  trouble_said_ = false;
  kept_ = true;
  kept_opening_ = outcome.opening;
  kept_revision_ = outcome.revision;
  if (opening_of(app, side_) == kept_opening_) {
    forget_recovered(app, side_); // ours holds it now
  }
}

void WorkKeeper::remove_journal(App& app) {
  forget_recovered(app, side_);
  if (kept_) {
    std::error_code ignored;
    fs::remove(file_, ignored);
    kept_ = false;
  }
  waiting_since_.reset();
}

std::optional<std::chrono::milliseconds> WorkKeeper::follow(App& app, Clock::time_point now) {
  using namespace std::chrono_literals;
  if (folder_.empty()) {
    return std::nullopt;
  }
  if (writing_.valid()) {
    if (writing_.wait_for(0s) != std::future_status::ready) {
      return 50ms;
    }
    take_outcome(app, now);
  }
  if (is_saved(app, side_)) {
    remove_journal(app);
    return std::nullopt;
  }
  const std::uint64_t revision = revision_of(app, side_);
  const bool same = kept_ && kept_opening_ == opening_of(app, side_);
  if (same && kept_revision_ == revision) {
    waiting_since_.reset();
    return std::nullopt;
  }
  if (!waiting_since_) {
    waiting_since_ = now;
  }
  const bool many = revision - (same ? kept_revision_ : 0) >= most_changes && !trouble_said_;
  const auto waited = std::chrono::duration_cast<std::chrono::milliseconds>(now - *waiting_since_);
  if (!many && waited < longest_wait && !(recovered_of(app, side_) && !same && !trouble_said_)) {
    return longest_wait - waited;
  }
  waiting_since_ = now; // of what is done while it is written
  begin(app);
  return 50ms;
}

void WorkKeeper::close(App& app) {
  if (writing_.valid()) {
    kept_ = !writing_.get().failure || kept_;
  }
  remove_journal(app);
  if (held_) {
    held_->remove();
  }
}

} // namespace punchwright::editor
