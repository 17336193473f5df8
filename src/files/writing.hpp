// The steps by which a file gets new content: staged, so that nothing can hinder it any more, then put in its place,
// then settled. What isn't settled is taken back when it goes, so that several files change together or not at all.
#pragma once

#include "files/descriptor.hpp"

#include <memory>
#include <optional>
#include <string>
#include <sys/stat.h>

namespace punchwright {

class Writing {
public:
  Writing() = default;
  Writing(const Writing&) = delete;
  Writing& operator=(const Writing&) = delete;
  Writing(Writing&&) = delete;
  Writing& operator=(Writing&&) = delete;
  virtual ~Writing() = default;

  // Everything that can be done without touching the file: space taken, rights looked at.
  [[nodiscard]] virtual Failure stage(std::string_view bytes) = 0;
  // The file has its new content; `with_others`: it may have to be taken back, since another file's step can fail.
  [[nodiscard]] virtual Failure put(bool with_others) = 0;
  // From here on it stays. An error: it was written, but the disk did not confirm it.
  [[nodiscard]] virtual Failure settle() = 0;
};

// By a temporary file that takes the file's place. `named` is the name for messages, `target` the file itself; `old` is
// its state, or nothing where there is none: then the file is made with `fresh`, less what the user takes off by
// default.
[[nodiscard]] std::unique_ptr<Writing> replacement(std::filesystem::path named, std::filesystem::path target,
                                                   std::optional<struct stat> old, mode_t fresh = 0666);

// Keeps the file and its other names (hard links). The new content is first put on the disk beside it, whole, in the
// file of whole_name(): a kill leaves the old content, or a damaged file with the new content beside it.
[[nodiscard]] std::unique_ptr<Writing> writing_through(std::filesystem::path named, std::filesystem::path target,
                                                       const struct stat& old);

// "puffins.repeat.punchwright-whole", in the same folder; shortened where a file system would refuse it.
[[nodiscard]] std::filesystem::path whole_name(const std::filesystem::path& target);

} // namespace punchwright
