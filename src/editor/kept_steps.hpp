// The steps of a saved design or yoke, kept in the user's state folder, so that they can still be undone when it is
// opened again. They count only while the file is, to the byte, the one that was saved with them.
#pragma once

#include "editor/kept_sides.hpp"

#include <cstdint>
#include <filesystem>
#include <future>
#include <optional>

namespace punchwright::editor {

class StepKeeper {
public:
  static constexpr std::size_t most_files = 100; // the one that was not saved for longest goes

  // An empty folder: nothing is kept.
  explicit StepKeeper(std::filesystem::path folder, KeptSide side = KeptSide::design)
      : folder_(std::move(folder)), side_(side) {}
  ~StepKeeper() { wait(); }
  StepKeeper(const StepKeeper&) = delete;
  StepKeeper& operator=(const StepKeeper&) = delete;

  // After a saving: begins to write them, in another thread. After an opening: takes what was kept. What can't be
  // written or read is as good as none.
  void follow(App& app);
  void wait();

private:
  void keep(const App& app);
  void take_kept(App& app) const;
  [[nodiscard]] std::filesystem::path file_for(const std::filesystem::path& work) const;

  std::filesystem::path folder_;
  KeptSide side_;
  std::future<void> writing_;
  std::optional<std::uint64_t> opening_;
  std::filesystem::path path_; // both as they were when this looked last
  std::uint64_t digest_ = 0;
};

} // namespace punchwright::editor
