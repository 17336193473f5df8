// The journal's form: a line with the checksum, lines with names, the design as its file would be, and the steps around
// it, each as the few bytes in which the design beyond it differs.
#include "journal/journal.hpp"

#include "design/repeat_file.hpp"
#include "design/step_words.hpp"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>
#include <iterator>
#include <optional>
#include <utility>
#include <vector>

namespace punchwright {
namespace {

constexpr std::string_view first_words = "punchwright-journal 1 ";
constexpr std::size_t digits_of_digest = 16;
constexpr std::size_t room_for_steps = std::size_t{4} * 1024 * 1024; // bytes, on either side

// File names and the names of steps may hold any byte; here they stand on one line.
std::string on_one_line(std::string_view text) {
  std::string line;
  for (const char letter : text) {
    const auto byte = static_cast<unsigned char>(letter);
    if (byte < 0x20 || byte == 0x7f || letter == '%') {
      fmt::format_to(std::back_inserter(line), "%{:02x}", byte);
    } else {
      line += letter;
    }
  }
  return line;
}

template <class Number> std::optional<Number> number_in(std::string_view text, int base = 10) {
  Number number{};
  const auto [stop, trouble] = std::from_chars(text.data(), text.data() + text.size(), number, base);
  return trouble == std::errc{} && stop == text.data() + text.size() ? std::optional(number) : std::nullopt;
}

std::optional<std::string> from_one_line(std::string_view line) {
  std::string text;
  for (std::size_t place = 0; place < line.size(); ++place) {
    if (line[place] != '%') {
      text += line[place];
      continue;
    }
    const auto byte = line.size() - place > 2 ? number_in<unsigned>(line.substr(place + 1, 2), 16) : std::nullopt;
    if (!byte) {
      return std::nullopt;
    }
    text += static_cast<char>(*byte);
    place += 2;
  }
  return text;
}

// A text that differs from another one in its middle only.
struct Difference {
  std::size_t before = 0; // bytes at the beginning that both have
  std::size_t after = 0;  // and at the end
  std::string_view middle;
};

Difference difference(std::string_view from, std::string_view to) {
  const std::size_t most = std::min(from.size(), to.size());
  Difference found;
  while (found.before < most && from[found.before] == to[found.before]) {
    ++found.before;
  }
  while (found.after < most - found.before && from[from.size() - 1 - found.after] == to[to.size() - 1 - found.after]) {
    ++found.after;
  }
  found.middle = to.substr(found.before, to.size() - found.before - found.after);
  return found;
}

// The steps on one side of the design's state, the nearest first; `go` undoes or redoes one and tells its name.
template <class Go> std::string steps_text(std::string here, Document design, const Go& go) {
  std::string steps;
  std::size_t count = 0;
  while (count < most_kept_steps && steps.size() < room_for_steps) {
    const std::optional<std::string> name = go(design);
    if (!name) {
      break;
    }
    std::string there = write_repeat(design);
    const Difference found = difference(here, there);
    fmt::format_to(std::back_inserter(steps), "step {}\nbytes {} {} {}\n{}\n", on_one_line(*name), found.before,
                   found.middle.size(), found.after, found.middle);
    here = std::move(there);
    ++count;
  }
  return fmt::format("steps {}\n{}", count, steps);
}

// Takes a text apart; every question that it can't answer leaves `good` false for ever.
class Taker {
public:
  explicit Taker(std::string_view text) : rest_(text) {}

  // The rest of a line that begins with the word and a blank.
  std::string_view line(std::string_view word) {
    const std::size_t end = rest_.find('\n');
    if (!good_ || end == std::string_view::npos || !rest_.starts_with(word) || end < word.size() + 1 ||
        rest_[word.size()] != ' ') {
      good_ = false;
      return {};
    }
    const std::string_view value = rest_.substr(word.size() + 1, end - word.size() - 1);
    rest_.remove_prefix(end + 1);
    return value;
  }
  std::string text(std::string_view word) { return take(from_one_line(line(word))); }
  template <class Number> Number number(std::string_view word, int base = 10) {
    return take(number_in<Number>(line(word), base));
  }
  // So many bytes, and the end of a line.
  std::string_view bytes(std::size_t count) {
    if (!good_ || count >= rest_.size() || rest_[count] != '\n') {
      good_ = false;
      return {};
    }
    const std::string_view taken = rest_.substr(0, count);
    rest_.remove_prefix(count + 1);
    return taken;
  }
  template <class Value> Value take(std::optional<Value> value) {
    good_ = good_ && value.has_value();
    return std::move(value).value_or(Value{});
  }
  void refuse() { good_ = false; }

  [[nodiscard]] bool good() const { return good_; }
  [[nodiscard]] bool at_end() const { return rest_.empty(); }

private:
  std::string_view rest_;
  bool good_ = true;
};

std::string state_beyond(Taker& taker, const std::string& here) {
  std::string_view sizes = taker.line("bytes");
  std::size_t numbers[3] = {};
  for (std::size_t& number : numbers) {
    const std::size_t blank = std::min(sizes.find(' '), sizes.size());
    number = taker.take(number_in<std::size_t>(sizes.substr(0, blank)));
    sizes.remove_prefix(std::min(blank + 1, sizes.size()));
  }
  const auto [before, middle, after] = numbers;
  if (!taker.good() || before > here.size() || after > here.size() - before) {
    taker.refuse();
    return {};
  }
  std::string there = here.substr(0, before);
  there += taker.bytes(middle);
  return there += here.substr(here.size() - after);
}

std::vector<History::KeptStep> read_steps(Taker& taker, std::string here) {
  std::vector<History::KeptStep> steps;
  const auto count = std::min(taker.number<std::size_t>("steps"), most_kept_steps);
  while (taker.good() && steps.size() < count) {
    std::string name = taker.text("step");
    here = state_beyond(taker, here);
    auto read = read_repeat(here, "");
    if (!read) {
      taker.refuse();
      break;
    }
    steps.push_back({std::move(name), std::move(read).value().document});
  }
  return steps;
}

Error refusal(const std::string& file_name, std::string_view why) {
  return Error{file_name, 0, 0, std::string(why), "it can't be used any more"};
}

} // namespace

std::uint64_t digest_of(std::string_view bytes) {
  std::uint64_t digest = 0xcbf29ce484222325U;
  for (const char byte : bytes) {
    digest = (digest ^ static_cast<unsigned char>(byte)) * 0x100000001b3U;
  }
  return digest;
}

std::string write_journal(const Journal& journal) {
  const std::string design = write_repeat(journal.design);
  std::string text =
      fmt::format("file {}\nname {}\ndigest {:016x}\nkept {}\ndesign {}\n{}\n", on_one_line(journal.file.string()),
                  on_one_line(journal.suggested_name), journal.file_digest, journal.kept, design.size(), design);
  History history = journal.history;
  text += steps_text(design, journal.design, [&](Document& state) {
    return history.undo(state) ? std::optional(words_of(history.steps()[history.done()])) : std::nullopt;
  });
  history = journal.history;
  text += steps_text(design, journal.design, [&](Document& state) {
    return history.redo(state) ? std::optional(words_of(history.steps()[history.done() - 1])) : std::nullopt;
  });
  return fmt::format("{}{:016x}\n{}", first_words, digest_of(text), text);
}

Result<Journal> read_journal(std::string_view text, const std::string& file_name) {
  if (text.size() > largest_journal) {
    return refusal(file_name, "is larger than any journal of Punchwright");
  }
  const std::size_t beginning = first_words.size() + digits_of_digest + 1;
  if (!text.starts_with(first_words)) {
    return refusal(file_name, "is no journal of this Punchwright");
  }
  if (text.size() < beginning ||
      text.substr(0, beginning) != fmt::format("{}{:016x}\n", first_words, digest_of(text.substr(beginning)))) {
    return refusal(file_name, "is damaged");
  }
  Taker taker(text.substr(beginning));
  Journal journal;
  journal.file = taker.text("file");
  journal.suggested_name = taker.text("name");
  journal.file_digest = taker.number<std::uint64_t>("digest", 16);
  journal.kept = taker.number<std::int64_t>("kept");
  const std::string design(taker.bytes(taker.number<std::size_t>("design")));
  if (!taker.good()) {
    return refusal(file_name, "has another form than a journal of this Punchwright");
  }
  auto read = read_repeat(design, file_name);
  if (!read) {
    return read.error();
  }
  journal.design = std::move(read).value().document;
  const auto done = read_steps(taker, design);
  const auto undone = read_steps(taker, design);
  if (!taker.good() || !taker.at_end()) {
    return refusal(file_name, "has another form than a journal of this Punchwright");
  }
  journal.history = History::restored(journal.design, done, undone);
  return journal;
}

} // namespace punchwright
