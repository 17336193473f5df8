// Markdown in the guide's own manner, read line by line.
#include "editor/help_text.hpp"

#include "design/words.hpp"
#include "design/wrap.hpp"
#include "drawing/word_search.hpp"

#include <algorithm>
#include <cctype>
#include <cstdint>

namespace punchwright::editor {

namespace {

using Kind = HelpBlock::Kind;
using Style = HelpRun::Style;

class RunReader {
public:
  explicit RunReader(std::string_view text) : text_(text) {}

  std::vector<HelpRun> run() {
    while (at_ < text_.size()) {
      if (!marked("**", Style::strong) && !marked("`", Style::code) && !marked("*", Style::soft) && !link()) {
        plain_ += text_[at_++];
      }
    }
    flush();
    return std::move(runs_);
  }

private:
  void flush() {
    if (!plain_.empty()) {
      runs_.push_back({plain_, Style::plain});
      plain_.clear();
    }
  }

  bool marked(std::string_view mark, Style style) {
    if (!text_.substr(at_).starts_with(mark)) {
      return false;
    }
    const std::size_t begin = at_ + mark.size();
    const std::size_t end = text_.find(mark, begin);
    if (end == std::string_view::npos || end == begin || text_[begin] == ' ') {
      return false;
    }
    flush();
    runs_.push_back({std::string(text_.substr(begin, end - begin)), style});
    at_ = end + mark.size();
    return true;
  }

  // [words](target): the words.
  bool link() {
    if (text_[at_] != '[') {
      return false;
    }
    const std::size_t middle = text_.find("](", at_);
    const std::size_t end = middle == std::string_view::npos ? middle : text_.find(')', middle);
    if (end == std::string_view::npos) {
      return false;
    }
    plain_ += text_.substr(at_ + 1, middle - at_ - 1);
    at_ = end + 1;
    return true;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::string plain_;
  std::vector<HelpRun> runs_;
};

// "- words" or "12. words": the mark and what is behind it.
bool is_item(std::string_view line, std::string& mark, std::string_view& rest) {
  if (line.starts_with("- ")) {
    mark = "•";
    rest = line.substr(2);
    return true;
  }
  std::size_t digits = 0;
  while (digits < line.size() && std::isdigit(static_cast<unsigned char>(line[digits])) != 0) {
    ++digits;
  }
  if (digits == 0 || digits > 2 || line.substr(digits, 2) != ". ") {
    return false;
  }
  mark = std::string(line.substr(0, digits + 1));
  rest = line.substr(digits + 2);
  return true;
}

class BlockReader {
public:
  std::vector<HelpBlock> run(std::string_view text) {
    while (!text.empty()) {
      const std::size_t end = text.find('\n');
      line(text.substr(0, end));
      text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    }
    finish();
    return std::move(blocks_);
  }

private:
  void line(std::string_view raw) {
    const std::string_view text = trimmed(raw);
    std::string mark;
    std::string_view rest;
    if (text.empty()) {
      finish();
    } else if (raw.starts_with("    ") && words_.empty()) {
      add({Kind::code, 1, {}, {{{std::string(raw.substr(4)), Style::code}}}, std::string(text)});
    } else if (text.starts_with('#')) {
      finish();
      const auto level = static_cast<int>(std::min(text.find_first_not_of('#'), text.size()));
      begin(Kind::heading, std::min(level, 3), {}, trimmed(text.substr(static_cast<std::size_t>(level))));
      finish();
    } else if (text.starts_with("![")) {
      finish();
    } else if (text.starts_with('|')) {
      finish();
      table_row(text);
      return;
    } else if (is_item(text, mark, rest)) {
      finish();
      begin(Kind::item, 1, mark, rest);
    } else if (words_.empty()) {
      begin(Kind::paragraph, 1, {}, text);
    } else {
      words_.append(" ").append(text);
    }
    in_table_ = false;
  }

  void begin(Kind kind, int level, std::string mark, std::string_view words) {
    block_ = HelpBlock{kind, level, std::move(mark), {}, {}};
    words_ = words;
  }

  void finish() {
    if (words_.empty()) {
      return;
    }
    // An entry of the list of contents is nothing but a link into the page.
    const bool contents = block_.kind == Kind::item && words_.starts_with('[') && words_.ends_with(')') &&
                          words_.find("](#") != std::string::npos;
    if (!contents) {
      block_.cells = {RunReader(words_).run()};
      add(std::move(block_));
    }
    words_.clear();
  }

  void table_row(std::string_view text) {
    if (text.find_first_not_of("|-: ") == std::string_view::npos) {
      return; // the line below the head
    }
    HelpBlock row{in_table_ ? Kind::table_row : Kind::table_head, 1, {}, {}, {}};
    in_table_ = true;
    text.remove_prefix(1);
    while (!text.empty()) {
      const std::size_t end = text.find('|');
      row.cells.push_back(RunReader(trimmed(text.substr(0, end))).run());
      text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    }
    add(std::move(row));
  }

  void add(HelpBlock block) {
    block.plain.clear();
    for (const auto& cell : block.cells) {
      for (const HelpRun& run : cell) {
        block.plain += run.text;
      }
      block.plain += ' ';
    }
    blocks_.push_back(std::move(block));
  }

  std::vector<HelpBlock> blocks_;
  HelpBlock block_;
  std::string words_;
  bool in_table_ = false;
};

} // namespace

std::vector<HelpBlock> help_blocks(std::string_view markdown) {
  return BlockReader().run(markdown);
}

int next_block_with(const std::vector<HelpBlock>& blocks, std::string_view words, int from, int by) {
  const auto count = static_cast<int>(blocks.size());
  for (int step = 1; step <= count; ++step) {
    const int place = round_edge(from + by * step, count);
    if (has_words(blocks[static_cast<std::size_t>(place)].plain, words)) {
      return place;
    }
  }
  return -1;
}

int count_blocks_with(const std::vector<HelpBlock>& blocks, std::string_view words, int up_to) {
  const auto end = blocks.begin() + std::clamp(up_to, 0, static_cast<int>(blocks.size()));
  return static_cast<int>(
      std::count_if(blocks.begin(), end, [&](const HelpBlock& block) { return has_words(block.plain, words); }));
}

} // namespace punchwright::editor
