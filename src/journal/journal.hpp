// What is kept of a design or a yoke between two savings, as text and value: all of it, where its file lies, and the
// steps that can be undone. A checksum covers every byte, so that what is torn or damaged is never taken for somebody's
// work.
#pragma once

#include "design/document.hpp"
#include "design/history.hpp"
#include "design/result.hpp"
#include "pieces/yoke.hpp"

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace punchwright {

struct KeptDesign {
  Document design;
  History history; // the latest steps that fit, with those that were undone
};

// The paths that the yoke names are whole ones, so that it can be opened from anywhere.
struct KeptYoke {
  struct Step {
    std::string name;
    Yoke other; // as it was on the step's other side
    bool operator==(const Step&) const = default;
  };
  Yoke yoke;
  std::vector<Step> done;   // the newest first, each with the yoke before it
  std::vector<Step> undone; // the next to redo first, each with the yoke after it
};

struct Journal {
  std::filesystem::path file;    // empty: it was never saved
  std::string suggested_name;    // for one that was never saved
  std::uint64_t file_digest = 0; // of the file's bytes, as they were last read or written; 0: no file
  std::int64_t kept = 0;         // seconds since 1970-01-01, UTC
  std::variant<KeptDesign, KeptYoke> work;
};

inline constexpr std::size_t largest_journal = std::size_t{32} * 1024 * 1024; // bytes
inline constexpr std::size_t most_kept_steps = 200;                           // before and after the state that is kept

[[nodiscard]] std::string write_journal(const Journal& journal);

// Refused: other text, text cut short, any byte that is not as it was written. `file_name` is only used in errors.
[[nodiscard]] Result<Journal> read_journal(std::string_view text, const std::string& file_name);

// FNV-1a, 64 bits (the constants are the authors': Fowler, Noll, Vo; draft-eastlake-fnv, section 5). Two texts that
// differ in one byte never have the same one.
[[nodiscard]] std::uint64_t digest_of(std::string_view bytes);

} // namespace punchwright
