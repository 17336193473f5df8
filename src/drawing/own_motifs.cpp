// A user's motifs as text, in the form of the collection's own sheets: files that a person can write by hand.
#include "design/words.hpp"
#include "drawing/marked_area.hpp"
#include "drawing/motifs.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

std::vector<std::string_view> lines_of_text(std::string_view text) {
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

// "bell-buoy: Bell buoy; sound mark", and what may be missing of it.
void name_motif(Motif& motif, std::string_view line, const std::string& id) {
  const std::size_t colon = line.find(": ");
  const std::string_view behind = colon == std::string_view::npos ? line : line.substr(colon + 2);
  const std::size_t semicolon = std::min(behind.find(';'), behind.size());
  motif.id = colon == std::string_view::npos ? id : std::string(trimmed(line.substr(0, colon)));
  motif.name = trimmed(behind.substr(0, semicolon));
  motif.words = trimmed(behind.substr(std::min(semicolon + 1, behind.size())));
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
