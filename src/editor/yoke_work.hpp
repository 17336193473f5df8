// The yoke that is open beside the repeat: what it says, what was done to it, and where its file lies.
// Paths of tiers and machine are whole ones here, so that a yoke can be saved elsewhere and undone afterwards.
#pragma once

#include "files/file_stamp.hpp"
#include "journal/journal.hpp"
#include "pieces/open_yoke.hpp"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::editor {

struct FoundWork;

struct YokeStep {
  std::string name;
  Yoke before;
  Yoke after;
};

struct YokeWork {
  std::optional<OpenedYoke> opened;   // none: no yoke is open; with Machines::may_differ
  bool shown = false;                 // its page stands in place of the drawing
  std::filesystem::path path;         // empty: never saved
  std::string suggested_name;         // for one that was never saved
  std::uint64_t file_digest = 0;      // of the bytes at `path` when they were last read or written; 0: none
  std::optional<FileStamp> file_seen; // of the file when it was last compared with that digest
  std::vector<YokeStep> steps;
  std::size_t done = 0;                    // that many of the steps are in the yoke
  std::optional<std::size_t> saved_at = 0; // absent: the saved state is no longer reachable
  std::string open_field;                  // whose changes are one step; empty: none
  std::uint64_t opening = 0;
  std::uint64_t revision = 0;           // grows with every change
  std::shared_ptr<FoundWork> recovered; // that the yoke was taken from, until it is kept anew

  [[nodiscard]] bool saved() const { return saved_at == done; }
};

// Records the change; what belongs to the field that is open goes on with its step.
void record_step(YokeWork& work, const Yoke& before, const std::string& field);

// What is kept of an open yoke, with that many steps on either side at most; and the steps of a kept yoke, in place of
// those that the same yoke has.
[[nodiscard]] KeptYoke kept_yoke(const YokeWork& work, std::size_t most_steps);
void put_steps(YokeWork& work, KeptYoke kept);

[[nodiscard]] bool has_yoke_name(const std::filesystem::path& path);

// The widths of a piece as they may be set for one size alone.
template <class Value> void set_for_size(PerSize<Value>& all, std::size_t sizes, std::size_t size, Value value) {
  if (all.values.size() == 1 && sizes > 1) {
    all.values.assign(sizes, all.values.front());
  }
  all.values[all.values.size() == 1 ? 0 : size] = value;
}

} // namespace punchwright::editor
