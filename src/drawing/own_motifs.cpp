// A user's motifs as text, in the form of the collection's own sheets: files that a person can write by hand.
#include "design/toml_text.hpp"
#include "design/words.hpp"
#include "drawing/marked_area.hpp"
#include "drawing/motifs.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

// Without the mark that some programs put before a text in UTF-8.
std::vector<std::string_view> lines_of_text(std::string_view text) {
  constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
  text.remove_prefix(text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0);
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    lines.push_back(trimmed(text.substr(0, end)));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

bool is_row(std::string_view line) {
  return !line.empty() && line.find_first_not_of(".#") == std::string_view::npos;
}

bool can_be_shown(std::string_view line) {
  return is_utf8(line) &&
         std::ranges::none_of(line, [](unsigned char sign) { return (sign < ' ' && sign != '\t') || sign == 0x7f; });
}

// "bell-buoy: Bell buoy; sound mark", and what may be missing of it. A colon among the words is one of theirs.
void name_motif(Motif& motif, std::string_view line, const std::string& id) {
  const std::size_t semicolon = std::min(line.find(';'), line.size());
  const std::string_view head = line.substr(0, semicolon);
  const std::size_t colon = head.find(": ");
  const bool has_id = colon != std::string_view::npos && colon > 0;
  motif.id = has_id ? std::string(trimmed(head.substr(0, colon))) : id;
  motif.name = trimmed(colon == std::string_view::npos ? head : head.substr(colon + 2));
  motif.words = trimmed(line.substr(std::min(semicolon + 1, line.size())));
  if (motif.name.empty()) {
    motif.name = motif.id;
  }
}

} // namespace

Result<std::vector<Motif>> motifs_in_text(std::string_view text, const std::string& id) {
  const std::vector<std::string_view> lines = lines_of_text(text);
  std::vector<Motif> motifs;
  for (std::size_t place = 0; place < lines.size();) {
    if (lines[place].empty()) {
      ++place;
      continue;
    }
    Motif motif;
    motif.group = MotifGroup::own;
    const bool named = !is_row(lines[place]);
    if (!can_be_shown(lines[place])) {
      return Error{
          {}, static_cast<int>(place) + 1, 0, tr("this line is no text"), tr("allowed: a text file, saved as UTF-8")};
    }
    name_motif(motif, named ? lines[place] : std::string_view(), id);
    place += named ? 1 : 0;
    const std::size_t first = place;
    std::string rows;
    for (; place < lines.size() && !lines[place].empty(); ++place) {
      rows.append(lines[place]).append("\n");
    }
    auto drawing = drawing_from_text(rows);
    if (!drawing) {
      Error error = drawing.error();
      error.file.clear();
      error.line += static_cast<int>(first); // without a line of its own: that of the name
      return error;
    }
    motif.drawing = std::move(drawing).value();
    motifs.push_back(std::move(motif));
  }
  if (motifs.empty()) {
    return Error{{}, 0, 0, tr("there is no motif in it"), tr("a line with its name, then lines of '.' and '#'")};
  }
  return motifs;
}

std::string text_of_motif(const Motif& motif) {
  std::string text = motif.id + ": " + motif.name;
  if (!motif.words.empty()) {
    text += "; " + motif.words;
  }
  return text + "\n" + text_of(motif.drawing);
}

std::string motif_id(std::string_view name) {
  std::string id;
  for (const char sign : name) {
    const char small = sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign;
    if ((small >= 'a' && small <= 'z') || (small >= '0' && small <= '9')) {
      id += small;
    } else if (!id.empty() && id.back() != '-') {
      id += '-';
    }
  }
  while (!id.empty() && id.back() == '-') {
    id.pop_back();
  }
  return id.empty() ? "motif" : id;
}

} // namespace punchwright
