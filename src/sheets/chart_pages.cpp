// The needle chart's pages: what goes on which page, with an action never parted from the row that it comes before.
// Two turns, since every head says how many pages there are.
#include "sheets/chart_pages.hpp"

#include "sheets/chart_forms.hpp"
#include "sheets/chart_words.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {

namespace {

struct Block {
  enum class Kind { setup, row, end };
  Kind kind = Kind::row;
  int number = 1;
  double height = 0; // with the line of actions before it
};

// "before row 12: Ink out, Moss in"; empty where nothing is done.
std::string action_line(const ChartRows& chart, const Block& block) {
  std::string done = block.kind == Block::Kind::setup ? ""
                     : block.kind == Block::Kind::end ? chart.done_at_end()
                                                      : chart.done_before(block.number);
  if (done.empty()) {
    return done;
  }
  return block.kind == Block::Kind::end ? said("At the end: {}", done) : said("Before row {}: {}", block.number, done);
}

std::vector<Block> blocks_of(const ChartRows& chart, ChartPainter& painter) {
  std::vector<Block> blocks;
  for (int number = 1; number <= static_cast<int>(chart.setup().size()); ++number) {
    blocks.push_back(Block{Block::Kind::setup, number, painter.setup_height()});
  }
  const int last = static_cast<int>(chart.rows().size());
  for (int number = 1; number <= last + 1; ++number) {
    Block block{number > last ? Block::Kind::end : Block::Kind::row, number, 0};
    block.height = painter.done_height(action_line(chart, block));
    if (block.kind == Block::Kind::row) {
      block.height += painter.row_height(chart.rows()[static_cast<std::size_t>(number - 1)]);
    }
    blocks.push_back(block);
  }
  return blocks;
}

// Index of the first block of each page.
std::vector<std::size_t> page_starts(const std::vector<Block>& blocks, double room) {
  std::vector<std::size_t> starts{0};
  double used = 0;
  for (std::size_t index = 0; index < blocks.size(); ++index) {
    if (used > 0 && used + blocks[index].height > room) {
      starts.push_back(index);
      used = 0;
    }
    used += blocks[index].height;
  }
  return starts;
}

void paint(const ChartRows& chart, ChartPainter& painter, const Block& block, double y, std::vector<Shape>& shapes) {
  if (const std::string words = action_line(chart, block); !words.empty()) {
    painter.done(shapes, y, words);
    y += painter.done_height(words);
  }
  if (block.kind == Block::Kind::setup) {
    painter.setup(shapes, y, block.number);
  } else if (block.kind == Block::Kind::row) {
    painter.row(shapes, y, block.number);
  }
}

} // namespace

ChartPage::ChartPage(const ChartRows& chart) {
  if (chart.document().card.paper == Paper::letter) {
    width = 215.9; // ANSI Y14.1, Letter
    height = 279.4;
  }
  right = width - left;
  bottom = height - 20.0; // two lines of care words below, and 10 mm free
  // "card 1234" in names_type, or the row's number, whichever is wider.
  const double number_column =
      std::max(width_of(std::to_string(chart.rows().size()), number_type, true),
               chart.profile().card ? width_of(said("card {}", chart.rows().size()), names_type, false)
                                    : width_of(tr("row"), names_type, false));
  row_end = left + 9.0 + number_column;
  yarns = row_end + 3.0;
  double names = width_of(tr("carriage, yarns"), head_type, true) - 9.0; // the heads mustn't touch
  for (const Yarn& yarn : chart.document().yarns) {
    names = std::max(names, width_of(chart.yarn_name(yarn.key), names_type, false));
  }
  names_end = yarns + 12.0 + std::min(names, 30.0);
  count_end = names_end + 3.0 + std::max(width_of(tr("count"), head_type, true), width_of("1000", needles_type, true));
  needles = count_end + 3.0;
  // A small piece needn't fill the page: cells of more than 4 mm are no easier to read.
  needle_width = std::min(4.0, (right - needles) / chart.stitches());
}

std::vector<Sheet> chart_sheets(const ChartRows& chart) {
  const ChartPage page(chart);
  ChartPainter painter(chart, page);
  const std::vector<Block> blocks = blocks_of(chart, painter);
  const double first_y = page.top + painter.head_height();
  std::vector<std::size_t> starts = page_starts(blocks, page.bottom - first_y);
  const std::size_t pages = starts.size();
  starts.push_back(blocks.size());
  std::vector<Sheet> sheets;
  for (std::size_t index = 0; index < pages; ++index) {
    Sheet sheet{said("{}: needle chart", title_of(chart)), page.width, page.height, {}};
    Group group;
    group.id = "chart";
    painter.head(group.shapes, static_cast<int>(index) + 1, static_cast<int>(pages));
    double y = first_y;
    for (std::size_t block = starts[index]; block < starts[index + 1]; ++block) {
      paint(chart, painter, blocks[block], y, group.shapes);
      y += blocks[block].height;
    }
    sheet.groups.push_back(std::move(group));
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

} // namespace punchwright
