// The journal's form: a line with the checksum, lines with names, the work as its file would be, and the steps around
// it, each as the few bytes in which the work beyond it differs.
#include "journal/journal.hpp"

#include "design/repeat_file.hpp"
#include "design/step_words.hpp"
#include "pieces/yoke_file.hpp"
#include "words/words.hpp"

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
constexpr std::string_view design_word = "design";
constexpr std::string_view yoke_word = "yoke";
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

struct TextStep {
  std::string name;
  std::string other; // the work beyond it
};

// The steps on one side of the state that is kept, the nearest first, as `next` gives them.
template <class Next> std::string steps_text(std::string here, const Next& next) {
  std::string steps;
  std::size_t count = 0;
  while (count < most_kept_steps && steps.size() < room_for_steps) {
    std::optional<TextStep> step = next();
    if (!step) {
      break;
    }
    const Difference found = difference(here, step->other);
    fmt::format_to(std::back_inserter(steps), "step {}\nbytes {} {} {}\n{}\n", on_one_line(step->name), found.before,
                   found.middle.size(), found.after, found.middle);
    here = std::move(step->other);
    ++count;
  }
  return fmt::format("steps {}\n{}", count, steps);
}

std::string work_text(const KeptDesign& kept) {
  const std::string here = write_repeat(kept.design);
  Document state = kept.design;
  History history = kept.history;
  const auto before = [&] {
    return history.undo(state)
               ? std::optional(TextStep{kept_words_of(history.steps()[history.done()]), write_repeat(state)})
               : std::nullopt;
  };
  const auto after = [&] {
    return history.redo(state)
               ? std::optional(TextStep{kept_words_of(history.steps()[history.done() - 1]), write_repeat(state)})
               : std::nullopt;
  };
  std::string text = fmt::format("{} {}\n{}\n{}", design_word, here.size(), here, steps_text(here, before));
  state = kept.design;
  history = kept.history;
  return text += steps_text(here, after);
}

std::string work_text(const KeptYoke& kept) {
  const std::string here = write_yoke(kept.yoke);
  const auto steps = [&](const std::vector<KeptYoke::Step>& side) {
    auto step = side.begin();
    return steps_text(here, [&]() -> std::optional<TextStep> {
      if (step == side.end()) {
        return std::nullopt;
      }
      const KeptYoke::Step& taken = *step++;
      return TextStep{taken.name, write_yoke(taken.other)};
    });
  };
  return fmt::format("{} {}\n{}\n{}{}", yoke_word, here.size(), here, steps(kept.done), steps(kept.undone));
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
  [[nodiscard]] bool comes(std::string_view word) const { return rest_.starts_with(word); }
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

// Steps with the states beyond them; `read` makes a state of its text.
template <class Step, class Read> std::vector<Step> read_steps(Taker& taker, std::string here, const Read& read) {
  std::vector<Step> steps;
  const auto count = std::min(taker.number<std::size_t>("steps"), most_kept_steps);
  while (taker.good() && steps.size() < count) {
    std::string name = taker.text("step");
    here = state_beyond(taker, here);
    auto state = read(here);
    if (!state) {
      taker.refuse();
      break;
    }
    steps.push_back({std::move(name), std::move(state).value()});
  }
  return steps;
}

Result<Document> design_of(std::string_view text, const std::string& file_name) {
  auto read = read_repeat(text, file_name);
  return read ? Result<Document>(std::move(read).value().document) : Result<Document>(read.error());
}

Result<Yoke> yoke_of(std::string_view text, const std::string& file_name) {
  auto read = read_yoke(text, file_name);
  return read ? Result<Yoke>(std::move(read).value().yoke) : Result<Yoke>(read.error());
}

constexpr const char* other_form = noted("has another form than a journal of this Punchwright");

Error refusal(const std::string& file_name, std::string_view why) {
  return Error{file_name, 0, 0, std::string(why), tr("it can't be used any more")};
}

// Both: an error of the state itself; the steps around it leave the taker good or not.
Failure take_design(Taker& taker, const std::string& here, const std::string& file_name, Journal& journal) {
  auto design = design_of(here, file_name);
  if (!design) {
    return design.error();
  }
  const auto read = [](std::string_view text) { return design_of(text, ""); };
  const auto done = read_steps<History::KeptStep>(taker, here, read);
  const auto undone = read_steps<History::KeptStep>(taker, here, read);
  History history = taker.good() ? History::restored(*design, done, undone) : History();
  journal.work = KeptDesign{std::move(design).value(), std::move(history)};
  return std::nullopt;
}

Failure take_yoke(Taker& taker, const std::string& here, const std::string& file_name, Journal& journal) {
  auto yoke = yoke_of(here, file_name);
  if (!yoke) {
    return yoke.error();
  }
  const auto read = [](std::string_view text) { return yoke_of(text, ""); };
  KeptYoke kept{std::move(yoke).value(), {}, {}};
  kept.done = read_steps<KeptYoke::Step>(taker, here, read);
  kept.undone = read_steps<KeptYoke::Step>(taker, here, read);
  journal.work = std::move(kept);
  return std::nullopt;
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
  const std::string text =
      fmt::format("file {}\nname {}\ndigest {:016x}\nkept {}\n{}", on_one_line(journal.file.string()),
                  on_one_line(journal.suggested_name), journal.file_digest, journal.kept,
                  std::visit([](const auto& work) { return work_text(work); }, journal.work));
  return fmt::format("{}{:016x}\n{}", first_words, digest_of(text), text);
}

Result<Journal> read_journal(std::string_view text, const std::string& file_name) {
  if (text.size() > largest_journal) {
    return refusal(file_name, tr("is larger than any journal of Punchwright"));
  }
  const std::size_t beginning = first_words.size() + digits_of_digest + 1;
  if (!text.starts_with(first_words)) {
    return refusal(file_name, tr("is no journal of this Punchwright"));
  }
  if (text.size() < beginning ||
      text.substr(0, beginning) != fmt::format("{}{:016x}\n", first_words, digest_of(text.substr(beginning)))) {
    return refusal(file_name, tr("is damaged"));
  }
  Taker taker(text.substr(beginning));
  Journal journal;
  journal.file = taker.text("file");
  journal.suggested_name = taker.text("name");
  journal.file_digest = taker.number<std::uint64_t>("digest", 16);
  journal.kept = taker.number<std::int64_t>("kept");
  const bool is_yoke = taker.comes(yoke_word);
  const std::string here(taker.bytes(taker.number<std::size_t>(is_yoke ? yoke_word : design_word)));
  if (!taker.good()) {
    return refusal(file_name, tr(other_form));
  }
  const Failure failure =
      is_yoke ? take_yoke(taker, here, file_name, journal) : take_design(taker, here, file_name, journal);
  if (failure) {
    return *failure;
  }
  if (!taker.good() || !taker.at_end()) {
    return refusal(file_name, tr(other_form));
  }
  return journal;
}

} // namespace punchwright
