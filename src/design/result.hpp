// A value or the reason why there is none, with the place and the remedy.
// Exceptions don't cross a room of this program: whatever can fail returns one of these.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <variant>

namespace punchwright {

// What is wrong, where, and what to do about it. `line` and `column` count from 1; 0: no such place.
// The analyzer loses sight of a value inside std::variant, and takes a copy of it for one of garbage.
struct Error { // NOLINT(clang-analyzer-core.uninitialized.Assign)
  std::string file;
  int line = 0;
  int column = 0;
  std::string message; // what was found
  std::string remedy;  // what is allowed, or what to do

  // "puffins.repeat:12:9: 'Z' is no yarn of this file; allowed: A, B"
  [[nodiscard]] std::string text() const {
    std::string out = file;
    if (line > 0) {
      out += ':' + std::to_string(line);
      if (column > 0) {
        out += ':' + std::to_string(column);
      }
    }
    if (!out.empty()) {
      out += ": ";
    }
    out += message;
    if (!remedy.empty()) {
      out += "; " + remedy;
    }
    return out;
  }

  bool operator==(const Error&) const = default;
};

template <class Value> class [[nodiscard]] Result {
public:
  Result(Value value) : content_(std::in_place_index<0>, std::move(value)) {}
  Result(Error error) : content_(std::in_place_index<1>, std::move(error)) {}

  [[nodiscard]] bool ok() const { return content_.index() == 0; }
  explicit operator bool() const { return ok(); }

  // Only when ok(); `value()` of an error throws std::bad_variant_access.
  [[nodiscard]] const Value& value() const& { return std::get<0>(content_); }
  [[nodiscard]] Value& value() & { return std::get<0>(content_); }
  [[nodiscard]] Value&& value() && { return std::get<0>(std::move(content_)); }
  const Value& operator*() const& { return value(); }
  Value& operator*() & { return value(); }
  const Value* operator->() const { return &value(); }
  Value* operator->() { return &value(); }

  // Only when not ok().
  [[nodiscard]] const Error& error() const { return std::get<1>(content_); }

private:
  std::variant<Value, Error> content_;
};

// For what either succeeds or fails and has nothing to give: nullopt is success.
using Failure = std::optional<Error>;

} // namespace punchwright
