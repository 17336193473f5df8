// Where the knitting of a design stands, as text and value: kept at every step, so that a closed window or a power cut
// loses no row. With it, how many rows were knitted on which day.
#pragma once

#include "design/result.hpp"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

struct BenchDay {
  std::string date; // "2026-11-26"
  int rows = 0;
  bool operator==(const BenchDay&) const = default;
};

struct BenchPlace {
  std::filesystem::path design; // empty: one that was never saved
  std::string digest;           // of the steps that `done` counts
  int done = 0;                 // things done, each with one key press
  int rows = 0;                 // rows of the piece that are complete
  std::vector<BenchDay> days;   // ascending

  bool operator==(const BenchPlace&) const = default;
};

inline constexpr std::size_t most_bench_days = 400;

[[nodiscard]] Result<BenchPlace> read_bench_place(std::string_view text, const std::string& file_name);
[[nodiscard]] std::string write_bench_place(const BenchPlace& place);

// The file's name: the same design has the same one. A design that was never saved is known by its steps alone.
[[nodiscard]] std::string bench_file_name(const std::filesystem::path& design, std::string_view digest);

// So many rows more (or fewer, when one goes back) on that day, which is today; a day never has fewer than none.
void count_rows_on(BenchPlace& place, const std::string& date, int by);
[[nodiscard]] int rows_on(const BenchPlace& place, std::string_view date);

} // namespace punchwright
