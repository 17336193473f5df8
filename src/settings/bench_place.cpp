// The place's file: TOML, read with the checks that every file of ours goes through.
#include "settings/bench_place.hpp"

#include "design/toml_statements.hpp"
#include "design/toml_strings.hpp"
#include "design/toml_values.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstdint>
#include <fmt/format.h>

namespace punchwright {
namespace {

constexpr int most = 1'000'000'000;

bool is_date(std::string_view text) {
  constexpr std::string_view form = "0000-00-00";
  return text.size() == form.size() && std::ranges::equal(text, form, [](char letter, char wanted) {
           return wanted == '-' ? letter == '-' : letter >= '0' && letter <= '9';
         });
}

void read_days(const TomlTable& root, TomlErrors& errors, BenchPlace& place) {
  if (!root.has("day")) {
    return;
  }
  const toml::array* const list = root.node("day")->as_array();
  if (list == nullptr) {
    return root.refuse("day", tr("[[day]], once for each day"));
  }
  for (const toml::node& node : *list) {
    const toml::table* const table = node.as_table();
    if (table == nullptr) {
      return root.refuse("day", tr("[[day]], once for each day"));
    }
    const TomlTable day(*table, "day.", "", errors);
    const std::string date = day.text("date").value_or("");
    if (!is_date(date)) {
      return day.refuse("date", tr("a date in quotation marks: \"2026-11-26\""));
    }
    place.days.push_back({date, day.whole("rows", 0, most).value_or(0)});
  }
  std::ranges::stable_sort(place.days, {}, &BenchDay::date);
}

} // namespace

Result<BenchPlace> read_bench_place(std::string_view text, const std::string& file_name) {
  const Result<TomlRead> toml = read_toml(text, file_name);
  if (!toml) {
    return toml.error();
  }
  TomlErrors errors(file_name);
  const TomlTable root(toml->table, "", "", errors);
  BenchPlace place;
  place.design = root.text("design").value_or("");
  place.digest = root.text("steps").value_or("");
  place.done = root.whole("done", 0, most).value_or(0);
  place.rows = root.whole("rows", 0, most).value_or(0);
  read_days(root, errors, place);
  if (errors.first()) {
    return *errors.first();
  }
  return place;
}

std::string write_bench_place(const BenchPlace& place) {
  std::string out = "# Where the knitting stands: written by Punchwright at every step, and read when it starts.\n";
  const std::string design = place.design.string();
  if (is_utf8(design)) { // another name has no place in TOML; the file's own name knows it
    out += fmt::format("design = {}\n", toml_quoted(design));
  }
  out += fmt::format("steps = {} # other steps have another digest\ndone = {} # of the steps, one by one\n"
                     "rows = {} # of the piece, complete\n",
                     toml_quoted(place.digest), place.done, place.rows);
  for (const BenchDay& day : place.days) {
    out += fmt::format("\n[[day]]\ndate = {}\nrows = {}\n", toml_quoted(day.date), day.rows);
  }
  return out;
}

std::string bench_file_name(const std::filesystem::path& design, std::string_view digest) {
  if (design.empty()) {
    return fmt::format("unsaved-{}.place", digest);
  }
  std::uint64_t hash = 0xcbf29ce484222325U; // FNV-1a, 64 bits
  for (const char byte : design.string()) {
    hash = (hash ^ static_cast<unsigned char>(byte)) * 0x100000001b3U;
  }
  return fmt::format("{:016x}.place", hash);
}

void count_rows_on(BenchPlace& place, const std::string& date, int by) {
  auto day = std::ranges::find(place.days, date, &BenchDay::date);
  if (day == place.days.end()) {
    if (by <= 0) {
      return;
    }
    place.days.push_back({date, 0});
    std::ranges::stable_sort(place.days, {}, &BenchDay::date);
    if (place.days.size() > most_bench_days) {
      place.days.erase(place.days.begin());
    }
    day = std::ranges::find(place.days, date, &BenchDay::date);
    if (day == place.days.end()) {
      return; // a clock that stands years behind
    }
  }
  day->rows = std::max(0, day->rows + by);
}

int rows_on(const BenchPlace& place, std::string_view date) {
  const auto day = std::ranges::find(place.days, date, &BenchDay::date);
  return day == place.days.end() ? 0 : day->rows;
}

} // namespace punchwright
