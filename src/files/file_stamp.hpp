// Which file lies at a path, by what one stat tells: whether it may have changed since it was last looked at.
// The same stamp means the same bytes; another one may mean the same bytes too, which only reading them tells.
#pragma once

#include <cstdint>
#include <filesystem>

namespace punchwright {

struct FileStamp {
  bool there = false; // nothing else is told where it isn't
  std::uint64_t device = 0;
  std::uint64_t number = 0; // the inode: a file that was replaced has another
  std::int64_t size = 0;    // bytes
  // When content or standing changed last: nobody can set it back, as the time of the content can be.
  std::int64_t changed = 0; // ns

  bool operator==(const FileStamp&) const = default;
};

// Follows symbolic links.
[[nodiscard]] FileStamp stamp_of(const std::filesystem::path& path);

} // namespace punchwright
