// Writes a TOML file line by line in the order of the calls, with the comments and unknown keys that were kept.
// Comments whose place is gone are written at the end of their table: nothing is lost.
#pragma once

#include "design/extras.hpp"

#include <set>
#include <string>
#include <string_view>

namespace punchwright {

class TomlWriter {
public:
  explicit TomlWriter(const Extras& extras) : extras_(extras) {}

  // "[gauge]" with the place "gauge". `apart`: a blank line before it, also where no comment asks for one.
  void table(std::string_view name, const std::string& place, bool apart);
  // "rows = 20.0" in the table last begun.
  void key(std::string_view name, std::string_view value);
  // Any line with its comments, each comment line with its indent.
  void line(const std::string& place, std::string_view text, std::string_view comment_indent = "");
  // What else stands in the table; and comments of places that begin with `lost` and were not written.
  void end_table(const std::string& lost = "");
  // Comments left over of places that begin with `lost`, each line indented.
  void lost_comments(const std::string& lost, std::string_view indent);
  // Unknown tables, and the comments at the file's end.
  std::string finish();

private:
  void comments(const std::string& place, std::string_view indent, bool blanks);
  void lines(const std::string& place);

  const Extras& extras_;
  std::string out_;
  std::string place_; // of the table last begun
  bool needs_blank_ = false;
  std::set<std::string> written_; // places, where there are comments at all
};

} // namespace punchwright
