// The .repeat file form: TOML 1.0 text to a document and back, nothing lost, every error with its place.
// Reading goes through toml++; writing is our own, in a fixed order, so that files can be compared line by line.
#pragma once

#include "design/document.hpp"
#include "design/result.hpp"
#include "design/toml_text.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright {

// Something the reader noticed that is no error: an unknown key, kept.
struct ReadingNote {
  int line = 0;
  std::string text; // "unknown key 'card.colour' is kept as it is"

  bool operator==(const ReadingNote&) const = default;
};

// Where a key and its value stand in the file that was read.
struct KeyPlace {
  Spot key;
  Spot value;

  bool operator==(const KeyPlace&) const = default;
};

struct ReadDocument {
  Document document;
  std::vector<ReadingNote> notes;
  std::map<std::string, KeyPlace>
      places; // of the keys in single tables, by name: "machine.profile"; absent keys have none
};

// `file_name` is only used in errors. Text of more than 8 MiB is refused.
[[nodiscard]] Result<ReadDocument> read_repeat(std::string_view text, const std::string& file_name);

// The text of a .repeat file. read_repeat(write_repeat(d)) gives d; write_repeat(read_repeat(t)) gives t for every t
// that this function wrote.
[[nodiscard]] std::string write_repeat(const Document& document);

} // namespace punchwright
