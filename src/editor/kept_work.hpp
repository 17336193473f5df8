// Work between two savings, kept in the user's state folder: written there while it is done, found again after a crash.
// A window holds a lock beside its journal, so that no other window takes the journal for one that was left behind.
#pragma once

#include "editor/kept_sides.hpp"
#include "files/held_file.hpp"

#include <chrono>
#include <filesystem>
#include <future>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::editor {

struct App;

// What a window left behind that did not close as it should; held, so that one window at a time offers it.
struct FoundWork {
  std::filesystem::path path;
  std::optional<HeldFile> held; // nothing: it is only shown, and lies nowhere
  Journal journal;

  // When it was kept, by the clock on the wall: "2026-11-26 at 14:03".
  [[nodiscard]] std::string when() const;
  // Its file, or what it would have been called.
  [[nodiscard]] std::string name() const;
  // It is of no use any more: removes the journal and its lock.
  void remove();
};

struct FoundWorks {
  std::vector<std::shared_ptr<FoundWork>> works; // the latest first
  std::vector<std::string> remarks;              // about what could not be read, in sentences
};

// Removes what it was recovered from, where it was.
void forget_recovered(App& app, KeptSide side);

// What lies in the folder and belongs to no window. What is damaged or foreign is renamed, out of the way.
[[nodiscard]] FoundWorks find_works(const std::filesystem::path& folder);

// Asks about the first of them, before the start page.
void offer_recovery(App& app, std::vector<std::shared_ptr<FoundWork>> works);

// Keeps one side of this window's work, from its first change until it is saved or given up.
class WorkKeeper {
public:
  using Clock = std::chrono::steady_clock;
  // After the first change that is not kept yet, the journal is begun to be written after that time, or after so many
  // changes; the disk has two more seconds until the four that are promised.
  static constexpr std::chrono::milliseconds longest_wait{2000};
  static constexpr std::uint64_t most_changes = 100;

  // An empty folder: nothing is kept.
  explicit WorkKeeper(std::filesystem::path folder, KeptSide side = KeptSide::design);
  ~WorkKeeper();
  WorkKeeper(const WorkKeeper&) = delete;
  WorkKeeper& operator=(const WorkKeeper&) = delete;

  // Looks whether something is to be kept or removed, and begins it, in another thread. Says once where it can't be.
  // The time until it should be called again; nothing: only when something happens.
  std::optional<std::chrono::milliseconds> follow(App& app, Clock::time_point now);

  // The window closes, and what is not saved was given up: nothing is left of it.
  void close(App& app);

private:
  struct Outcome {
    Failure failure;
    std::uint64_t opening = 0;
    std::uint64_t revision = 0;
  };

  void begin(const App& app);
  void take_outcome(App& app, Clock::time_point now);
  void remove_journal(App& app);
  [[nodiscard]] Failure make_place();

  std::filesystem::path folder_;
  KeptSide side_;
  std::filesystem::path file_; // empty: none yet
  std::optional<HeldFile> held_;
  std::future<Outcome> writing_;
  std::uint64_t kept_opening_ = 0;
  std::uint64_t kept_revision_ = 0;
  bool kept_ = false; // a journal lies there
  std::optional<Clock::time_point> waiting_since_;
  bool trouble_said_ = false;
};

} // namespace punchwright::editor
