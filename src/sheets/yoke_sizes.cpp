// The table of sizes: measures, stitches of every piece and tier, rows and yarn, some sizes side by side.
#include "design/lengths.hpp"
#include "design/words.hpp"
#include "pieces/schematic.hpp"
#include "pieces/shaping_kinds.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"
#include "sheets/yoke_parts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright {

using namespace leaflet;

namespace {

constexpr std::size_t most_size_columns = 4;
constexpr double name_share = 0.34;

// Long names go on over lines of their own: cut, two of them could read alike.
FlowBlock sizes_row(const std::vector<std::string>& cells, double width, bool head, bool heading = false) {
  FlowBlock block;
  block.whole = true;
  block.with_next = head || heading;
  block.lines.resize(1);
  const double column = width * (1 - name_share) / static_cast<double>(std::max<std::size_t>(cells.size() - 1, 3));
  for (std::size_t index = 0; index < cells.size(); ++index) {
    const double x = index == 0 ? 0.0 : width * name_share + column * static_cast<double>(index);
    const double room = index == 0 ? (heading ? width : width * name_share - 2) : column - 1.5;
    const std::vector<std::string> lines = lines_of(cells[index], body_type, head || heading, room);
    block.lines.resize(std::max(block.lines.size(), lines.size()));
    for (std::size_t line = 0; line < lines.size(); ++line) {
      block.lines[line].shapes.emplace_back(text_shape({x, base_line}, lines[line], body_type,
                                                       index == 0 ? Anchor::start : Anchor::end, head || heading));
    }
  }
  for (FlowLine& line : block.lines) {
    line.height = line_step;
  }
  block.lines.back().height = 1.25 * line_step;
  block.lines.back().shapes.emplace_back(line_shape({0, line_step - 0.2}, {width, line_step - 0.2},
                                                    line_paint(head ? ink::black : ink::faint, head ? 0.3 : 0.2)));
  if (heading) {
    block.before = half_line;
  }
  return block;
}

// The rows of the table for some of the sizes.
class SizesTable {
public:
  SizesTable(const YokeJob& job, std::vector<std::size_t> sizes, double width)
      : job_(job), sizes_(std::move(sizes)), width_(width) {
    for (const std::size_t size : sizes_) {
      schematics_.push_back(schematic_of(job.opened, job.plan.sizes[size], size));
    }
  }

  // On top of every page: without it, columns that go over a page would be of nobody knows which size.
  [[nodiscard]] FlowBlock head() const {
    std::vector<std::string> names{tr("size")};
    for (const std::size_t size : sizes_) {
      names.push_back(one_line(job_.plan.sizes[size].size));
    }
    return sizes_row(names, width_, true);
  }

  std::vector<FlowBlock> all() {
    heading(tr("Round, and high"));
    lengths(tr("lower edge"), [](const Schematic& schematic) { return schematic.around_bottom; });
    lengths(tr("neck"), [](const Schematic& schematic) { return schematic.around_top; });
    lengths(tr("height"), [](const Schematic& schematic) { return schematic.height; });
    row(tr("rows, pattern + plain"), [&](std::size_t size) {
      const RowsOfYoke& rows = job_.plan.sizes[size].rows;
      return fmt::format("{} + {}", rows.pattern_rows, rows.plain_rows);
    });
    for (const std::size_t piece : first_of_alike()) {
      of_piece(piece);
    }
    heading(tr("Yarn"));
    yarns();
    return std::move(blocks_);
  }

private:
  template <class Cell> void row(const std::string& name, Cell&& cell) {
    std::vector<std::string> cells{name};
    for (const std::size_t size : sizes_) {
      cells.push_back(cell(size));
    }
    blocks_.push_back(sizes_row(cells, width_, false));
  }
  void heading(const std::string& words) { blocks_.push_back(sizes_row({words}, width_, false, true)); }
  // In centimetres, and below in inches.
  template <class Length> void lengths(const std::string& name, Length&& mm) {
    const auto place = [&](std::size_t size) {
      return static_cast<std::size_t>(std::ranges::find(sizes_, size) - sizes_.begin());
    };
    row(said("{}, cm", name), [&](std::size_t size) { return decimal(mm(schematics_[place(size)]) / 10, 1); });
    row(said("{}, inches", name),
        [&](std::size_t size) { return decimal(mm(schematics_[place(size)]) / mm_per_inch, 1); });
  }

  // Pieces whose counts are the same in all sizes here stand together.
  [[nodiscard]] bool alike(std::size_t one, std::size_t other) const {
    return std::ranges::all_of(sizes_, [&](std::size_t size) {
      const auto& pieces = job_.plan.sizes[size].pieces;
      return std::ranges::equal(pieces[one].tiers, pieces[other].tiers, [](const auto& left, const auto& right) {
        return left.stitches == right.stitches && left.shaping.after == right.shaping.after;
      });
    });
  }
  [[nodiscard]] std::vector<std::size_t> alike_with(std::size_t piece) const {
    std::vector<std::size_t> pieces;
    for (const std::size_t other : job_.pieces) {
      if (alike(piece, other)) {
        pieces.push_back(other);
      }
    }
    return pieces;
  }
  [[nodiscard]] std::vector<std::size_t> first_of_alike() const {
    std::vector<std::size_t> first;
    for (const std::size_t piece : job_.pieces) {
      if (alike_with(piece).front() == piece) {
        first.push_back(piece);
      }
    }
    return first;
  }

  void of_piece(std::size_t piece) {
    heading(said("Stitches: {}", names_of(job_, alike_with(piece))));
    const std::size_t tiers = job_.opened.tiers.size();
    for (std::size_t tier = 0; tier < tiers; ++tier) {
      row(name_of_tier(job_, tier),
          [&](std::size_t size) { return std::to_string(job_.at(size, piece, tier).stitches); });
    }
    ShapingKinds kinds;
    for (const std::size_t size : sizes_) {
      std::ranges::for_each(job_.plan.sizes[size].pieces[piece].tiers,
                            [&](const TierOfPiece& tier) { kinds.add(tier.shaping); });
    }
    row(kinds.of(tr("after the last decreases"), tr("after the last increases"),
                 tr("after the last decreases or increases")),
        [&](std::size_t size) { return std::to_string(job_.at(size, piece, tiers - 1).shaping.after); });
    const auto outline = [piece](const Schematic& schematic) { return schematic.pieces[outline_of(schematic, piece)]; };
    lengths(tr("width at the lower edge"), [&](const Schematic& schematic) { return outline(schematic).bottom; });
    lengths(tr("width at the neck"), [&](const Schematic& schematic) { return outline(schematic).top; });
  }

  void yarns() {
    std::vector<YarnAmount> used;
    for (const std::size_t size : sizes_) {
      for (const YarnAmount& amount : job_.plan.sizes[size].yarns) {
        if (std::ranges::find(used, amount.yarn, &YarnAmount::yarn) == used.end()) {
          used.push_back(amount);
        }
      }
    }
    for (const YarnAmount& amount : used) {
      const Yarn& yarn = amount.yarn;
      std::string name = yarn.name.empty() ? said("yarn {}", yarn.key) : one_line(yarn.name);
      if (const std::string apart = told_apart(yarn, used); !apart.empty() && apart != yarn.name) {
        name += ", " + apart;
      }
      row(fmt::format("{} {}", yarn.key, name), [&](std::size_t size) { return amount_in(size, yarn); });
    }
  }
  [[nodiscard]] std::string amount_in(std::size_t size, const Yarn& wanted) const {
    for (const YarnAmount& yarn : job_.plan.sizes[size].yarns) {
      if (yarn.yarn == wanted) {
        std::string text = yarn.grams ? fmt::format("{:.0f} g", std::ceil(*yarn.grams)) : "";
        return yarn.metres    ? text + fmt::format("{}{:.0f} m", text.empty() ? "" : ", ", std::ceil(*yarn.metres))
               : text.empty() ? tr("not known")
                              : text;
      }
    }
    return "–";
  }

  const YokeJob& job_;
  std::vector<std::size_t> sizes_;
  double width_;
  std::vector<Schematic> schematics_;
  std::vector<FlowBlock> blocks_;
};

} // namespace

void add_sizes(LeafletPages& pages, const YokeJob& job) {
  pages.begin_part(tr("Table of sizes"));
  for (std::size_t first = 0; first < job.sizes.size(); first += most_size_columns) {
    const std::size_t end = std::min(first + most_size_columns, job.sizes.size());
    const std::vector<std::size_t> sizes(job.sizes.begin() + static_cast<std::ptrdiff_t>(first),
                                         job.sizes.begin() + static_cast<std::ptrdiff_t>(end));
    pages.set_together([&](LeafletPages& on) {
      SizesTable table(job, sizes, on.width());
      on.set(table.all(), 1, table.head());
      on.gap(line_step);
    });
  }
  std::vector<FlowBlock> loops;
  for (const LoopCheck& check : job.plan.loops) {
    loops.push_back(paragraph(with_capital(text_of(check)) + ".", pages.width(), {small_type}));
  }
  pages.set(loops, 1);
}

} // namespace punchwright
