// Forms of options that several commands share: numbers, words, places, each refused with what is allowed.
// Numbers are read without regard to the language of the system.
#pragma once

#include "cli/commands.hpp"
#include "words/words.hpp"

#include <CLI/CLI.hpp>
#include <array>
#include <charconv>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::cli {

inline void add_input(CLI::App* sub, std::string& file) {
  sub->add_option("FILE", file, tr("a .repeat file, or - for standard input"))->required();
}
inline void add_output(CLI::App* sub, std::string& output, const std::string& kinds) {
  sub->add_option("-o,--output", output, said("the file to write; its extension chooses the form: {}", kinds))
      ->required()
      ->type_name(tr("OUT"));
}

inline std::string not_allowed(const std::string& word, const std::string& option, const std::string& allowed) {
  return said("'{}' is not allowed for {}; allowed: {}", word, option, allowed);
}

// An option whose value `read` understands, or not: then what it may be is said.
inline void add_value(CLI::App* sub, const std::string& option, const std::string& type, const std::string& allowed,
                      const std::string& what, std::function<bool(const std::string&)> read) {
  sub->add_option_function<std::string>(
         option,
         [option, allowed, read = std::move(read)](const std::string& word) {
           if (!read(word)) {
             throw CLI::ValidationError(not_allowed(word, option, allowed));
           }
         },
         what)
      ->type_name(type);
}

// An option that takes one of a few words, and says which.
template <class Value>
void add_choice(CLI::App* sub, const std::string& option, const std::string& what, Value& value,
                const std::map<std::string, Value>& words) {
  std::string type;
  std::string allowed;
  for (const auto& [word, meaning] : words) {
    type += (type.empty() ? "" : "|") + word;
    allowed = allowed.empty()                 ? word
              : word == words.rbegin()->first ? said("{} or {}", allowed, word)
                                              : allowed + ", " + word;
  }
  add_value(sub, option, type, allowed, what, [&value, words](const std::string& word) {
    const auto found = words.find(word);
    if (found != words.end()) {
      value = found->second;
    }
    return found != words.end();
  });
}

// Without regard to the language of the system: 104.9, never 104,9.
template <class Number> bool read_number(const std::string& word, std::optional<Number>& number) {
  Number value{};
  const char* const end = word.data() + word.size();
  const auto [stop, trouble] = std::from_chars(word.data(), end, value);
  if (trouble != std::errc{} || stop != end) {
    return false;
  }
  number = value;
  return true;
}

inline void add_millimetres(CLI::App* sub, const std::string& option, const std::string& what,
                            std::optional<double>& number) {
  add_value(sub, option, "MM", tr("a number of millimetres, such as 104.9"), what,
            [&number](const std::string& word) { return read_number(word, number); });
}

// Numbers with commas between them, as many as there is room for.
template <std::size_t count> bool read_numbers(const std::string& word, std::array<double, count>& numbers) {
  std::size_t from = 0;
  for (std::size_t place = 0; place < count; ++place) {
    const std::size_t comma = place + 1 < count ? word.find(',', from) : word.size();
    std::optional<double> number;
    if (comma == std::string::npos || !read_number(word.substr(from, comma - from), number)) {
      return false;
    }
    numbers[place] = *number;
    from = comma + 1;
  }
  return true;
}

template <class Share> bool read_percent(const std::string& word, double low, double high, Share& share) {
  std::optional<double> percent;
  const bool good = read_number(word, percent) && *percent >= low && *percent <= high;
  if (good) {
    share = *percent / 100;
  }
  return good;
}

inline void add_count(CLI::App* sub, const std::string& option, const std::string& what, int most, int& count) {
  add_value(sub, option, tr("COUNT"), said("{} to {}", 1, most), what, [&count, most](const std::string& word) {
    std::optional<int> number;
    const bool good = read_number(word, number) && *number >= 1 && *number <= most;
    count = good ? *number : count;
    return good;
  });
}

inline void add_places(CLI::App* sub, const std::string& option, const std::string& what,
                       std::vector<std::string>& places) {
  sub->add_option(option, places, what)
      ->type_name(tr("PLACE"))
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

inline void add_protect(CLI::App* sub, std::vector<std::string>& places) {
  add_places(sub, "--protect", tr("stitches that stay: ROWS or ROWS:COLUMNS, such as 7 or 5-8:3-9; may be given again"),
             places);
}

// The options of single commands that have many.
void add_trace_options(CLI::App* sub, TraceCommandWishes& wishes);
void add_yoke_options(CLI::App* sub, YokeWishes& wishes);

} // namespace punchwright::cli
