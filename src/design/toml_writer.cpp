// The lines of a TOML file.
#include "design/toml_writer.hpp"

#include <vector>

namespace punchwright {

void TomlWriter::comments(const std::string& place, std::string_view indent, bool blanks) {
  const auto found = extras_.comments_before.find(place);
  if (found == extras_.comments_before.end()) {
    return;
  }
  for (const std::string& line : found->second) {
    if (!line.empty()) {
      out_ += indent;
      out_ += line;
      out_ += '\n';
    } else if (blanks) {
      out_ += '\n';
    }
  }
}

void TomlWriter::lines(const std::string& place) {
  if (const auto found = extras_.unknown.find(place); found != extras_.unknown.end()) {
    for (const std::string& line : found->second) {
      out_ += line;
      out_ += '\n';
    }
    needs_blank_ = true;
  }
}

void TomlWriter::line(const std::string& place, std::string_view text, std::string_view comment_indent) {
  if (!extras_.empty()) {
    comments(place, comment_indent, comment_indent.empty());
    written_.insert(place);
  }
  out_ += text;
  if (const auto comment = extras_.comments_after.find(place); comment != extras_.comments_after.end()) {
    out_ += comment->second;
  }
  out_ += '\n';
}

void TomlWriter::table(std::string_view name, const std::string& place, bool apart) {
  // Without the blank line a comment before this table would be read as the end of the one above.
  if (!out_.empty() && (apart || needs_blank_ || extras_.comments_before.contains(place))) {
    out_ += '\n';
  }
  needs_blank_ = false;
  place_ = place;
  line(place, name);
}

void TomlWriter::key(std::string_view name, std::string_view value) {
  const std::string place = place_.empty() ? std::string(name) : place_ + '.' + std::string(name);
  std::string text(name);
  text += " = ";
  text += value;
  line(place, text);
}

void TomlWriter::lost_comments(const std::string& lost, std::string_view indent) {
  std::vector<std::string_view> found;
  const auto gather = [&](const std::string& place, const std::string& comment) {
    const auto first = comment.find('#');
    if (!written_.contains(place) && place != lost + '$' && first != std::string::npos) {
      found.push_back(std::string_view(comment).substr(first));
    }
  };
  auto before = extras_.comments_before.lower_bound(lost);
  for (; before != extras_.comments_before.end() && before->first.starts_with(lost); ++before) {
    for (const std::string& comment : before->second) {
      gather(before->first, comment);
    }
  }
  auto after = extras_.comments_after.lower_bound(lost);
  for (; after != extras_.comments_after.end() && after->first.starts_with(lost); ++after) {
    gather(after->first, after->second);
  }
  for (const std::string_view comment : found) {
    out_ += indent;
    out_ += comment;
    out_ += '\n';
    needs_blank_ = true;
  }
}

void TomlWriter::end_table(const std::string& lost) {
  const std::string table = place_;
  lines(table);
  needs_blank_ = false;
  if (!extras_.empty()) {
    const std::string end = table.empty() ? "$" : table + ".$";
    if (extras_.comments_before.contains(end)) {
      comments(end, "", false);
      needs_blank_ = true;
    }
    written_.insert(end);
    if (!lost.empty()) {
      lost_comments(lost, "");
    }
  }
  if (!table.empty()) {
    lines(table + ".$tables");
  }
}

std::string TomlWriter::finish() {
  lines("$tables");
  if (extras_.comments_before.contains("$file")) {
    out_ += out_.empty() ? "" : "\n";
    comments("$file", "", true);
  }
  return std::move(out_);
}

} // namespace punchwright
