// The guide as blocks to be shown: headings, paragraphs, lists, tables. Only the forms that the guide uses are known.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace punchwright::editor {

struct HelpRun {
  enum class Style { plain, strong, soft, code };
  std::string text;
  Style style = Style::plain;
  bool operator==(const HelpRun&) const = default;
};

struct HelpBlock {
  enum class Kind { heading, paragraph, item, code, table_head, table_row };
  Kind kind = Kind::paragraph;
  int level = 1;                           // of a heading, 1 to 3
  std::string mark;                        // before an item: "•", "1."
  std::vector<std::vector<HelpRun>> cells; // of a table's row; one for the others
  std::string plain;                       // all its words, for the search
};

// From Markdown. Pictures and the list of contents are left out: the window has its own.
[[nodiscard]] std::vector<HelpBlock> help_blocks(std::string_view markdown);

// The next block behind `from` that has all the words, round the end; -1: none has. `by` is 1 or -1.
[[nodiscard]] int next_block_with(const std::vector<HelpBlock>& blocks, std::string_view words, int from, int by);
[[nodiscard]] int count_blocks_with(const std::vector<HelpBlock>& blocks, std::string_view words, int up_to);

// docs/guide.md in the reader's language, carried in the program.
[[nodiscard]] std::string guide_text();

} // namespace punchwright::editor
