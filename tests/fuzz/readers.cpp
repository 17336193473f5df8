// The readers, and what is asked of each. A broken promise ends the program, as a fault of memory would.
#include "fuzz/readers.hpp"

#include "design/repeat_file.hpp"
#include "diagnosis/diagnosis.hpp"
#include "drawing/marked_area.hpp"
#include "drawing/motifs.hpp"
#include "journal/journal.hpp"
#include "knitting/card_reading.hpp"
#include "machine/open_document.hpp"
#include "machine/profile_file.hpp"
#include "pictures/picture.hpp"
#include "pieces/yoke_file.hpp"
#include "rules/findings.hpp"
#include "settings/bench_place.hpp"
#include "settings/settings.hpp"
#include "tracing/photo.hpp"

#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>
#include <string>

namespace punchwright::fuzz {
namespace {

void promise(bool kept, const char* what) {
  if (!kept) {
    std::fputs(what, stderr);
    std::abort();
  }
}

// Whether it was taken; a refusal has words.
template <class Value> bool taken(const Result<Value>& read) {
  promise(read.ok() || !read.error().message.empty(), "a refusal without words\n");
  return read.ok();
}

// The text that is written of what was read is read again, and written as the same.
template <class Read, class Write> bool read_and_write(std::string_view bytes, Read read, Write write) {
  const auto first = read(bytes);
  if (!taken(first)) {
    return false;
  }
  const std::string text = write(*first);
  const auto second = read(std::string_view(text));
  promise(second.ok(), "what was written is refused\n");
  promise(write(*second) == text, "what was written is read as something else\n");
  return true;
}

bool read_a_repeat(std::string_view bytes) {
  return read_and_write(
      bytes, [](std::string_view text) { return read_repeat(text, "fuzz.repeat"); },
      [](const ReadDocument& read) { return write_repeat(read.document); });
}

// Beyond its text: the whole way to the findings, as when a file is opened.
bool open_a_repeat(std::string_view bytes) {
  const auto no_machine = [](const std::filesystem::path& path) {
    return Result<std::string>(Error{path.string(), 0, 0, "no files here", "use a built-in machine"});
  };
  const auto opened = open_document(bytes, "fuzz.repeat", no_machine);
  if (taken(opened) && !too_many_rows(opened->document, opened->profile)) {
    for (const Finding& finding : check(opened->document, opened->profile)) {
      promise(!words_of(finding, opened->document, opened->profile).text.empty(), "a finding without words\n");
    }
  }
  return opened.ok();
}

bool read_a_machine(std::string_view bytes) {
  return read_and_write(
      bytes, [](std::string_view text) { return read_machine(text, "fuzz.machine"); },
      [](const Profile& profile) { return write_machine(profile); });
}

bool read_a_yoke(std::string_view bytes) {
  return read_and_write(
      bytes, [](std::string_view text) { return read_yoke(text, "fuzz.yoke"); },
      [](const ReadYoke& read) { return write_yoke(read.yoke); });
}

bool read_the_settings(std::string_view bytes) {
  return read_and_write(
      bytes, [](std::string_view text) { return read_settings(text, "settings"); },
      [](const Settings& settings) { return write_settings(settings); });
}

bool read_a_place(std::string_view bytes) {
  return read_and_write(
      bytes, [](std::string_view text) { return read_bench_place(text, "place"); },
      [](const BenchPlace& place) { return write_bench_place(place); });
}

// Without a digest that fits, all else would be refused at the first line: the bytes are those after it.
bool read_a_journal(std::string_view bytes) {
  static_cast<void>(taken(read_journal(bytes, "fuzz.journal")));
  const std::string text = fmt::format("punchwright-journal 1 {:016x}\n{}", digest_of(bytes), bytes);
  return read_and_write(
      text, [](std::string_view whole) { return read_journal(whole, "fuzz.journal"); },
      [](const Journal& journal) { return write_journal(journal); });
}

bool read_two_colours(std::string_view bytes) {
  const auto picture = read_picture(bytes, "fuzz");
  if (taken(picture)) {
    promise(drawing_of(*picture, ContrastIs::darker).width() <= 200, "a picture wider than drawings are\n");
  }
  return picture.ok();
}

bool read_a_photo(std::string_view bytes) {
  const auto photo = read_photo(bytes, "fuzz");
  if (taken(photo)) {
    const auto pixels = static_cast<std::size_t>(photo->width) * static_cast<std::size_t>(photo->height);
    promise(photo->light.size() == pixels && photo->colours.size() == pixels * 3, "pixels are missing\n");
  }
  return photo.ok();
}

bool read_pasted_text(std::string_view bytes) {
  return taken(drawing_from_text(bytes));
}

bool read_motifs(std::string_view bytes) {
  const auto motifs = motifs_in_text(bytes, "fuzz");
  if (taken(motifs)) {
    for (const Motif& motif : *motifs) {
      const std::string text = text_of_motif(motif);
      const auto again = motifs_in_text(text, "fuzz");
      promise(again.ok() && again->size() == 1, "a motif that was written is refused\n");
      promise(text_of_motif(again->front()) == text, "a motif that was written is read as something else\n");
    }
  }
  return motifs.ok();
}

bool read_what_is_seen(std::string_view bytes) {
  return taken(read_seen(bytes, "seen.txt", 24, Face::purl));
}

bool read_punches(std::string_view bytes) {
  return taken(read_punch_list(bytes, "card.txt", 24));
}

} // namespace

const std::vector<Reader>& readers() {
  static const std::vector<Reader> all{
      {"repeat", read_a_repeat},    {"open", open_a_repeat},         {"machine", read_a_machine},
      {"yoke", read_a_yoke},        {"settings", read_the_settings}, {"place", read_a_place},
      {"journal", read_a_journal},  {"picture", read_two_colours},   {"photo", read_a_photo},
      {"pasted", read_pasted_text}, {"motif", read_motifs},          {"seen", read_what_is_seen},
      {"punches", read_punches},
  };
  return all;
}

} // namespace punchwright::fuzz
