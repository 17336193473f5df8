// The steps of a piece, tier by tier: the needles in a table, the machine's steps, and how the work is moved.
#include "design/words.hpp"
#include "pieces/shaping_kinds.hpp"
#include "pieces/tier_steps.hpp"
#include "plan/step_words.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/step_forms.hpp"
#include "sheets/yoke_parts.hpp"
#include "words/words.hpp"

#include <fmt/format.h>
#include <iterator>

namespace punchwright {

using namespace leaflet;

namespace {

std::string span(Needle first, Needle last) {
  return fmt::format("{}–{}", name_of(first), name_of(last));
}

// The columns of the needle table, as shares of the width.
struct TableColumn {
  const char* head;
  double at;
  Anchor anchor = Anchor::start;
};
constexpr TableColumn range_columns[] = {
    {noted("tier"), 0.0},           {noted("stitches"), 0.40, Anchor::end}, {noted("needles"), 0.43},
    {noted("columns"), 0.56},       {noted("less"), 0.69, Anchor::end},     {noted("after"), 0.76, Anchor::end},
    {noted("hung on again"), 0.79}, {noted("strip"), 1.0, Anchor::end}};
constexpr std::size_t shaped_column = 4;

FlowBlock table_row(const std::vector<std::string>& cells, double width, bool head) {
  FlowBlock block;
  block.whole = true;
  block.with_next = head;
  FlowLine line;
  line.height = 1.25 * line_step;
  for (std::size_t column = 0; column < cells.size(); ++column) {
    const TableColumn& place = range_columns[column];
    const double type = head ? small_type : body_type;
    const std::string words = column == 0 ? fitting_text(cells[0], type, head, 0.31 * width) : cells[column];
    line.shapes.emplace_back(text_shape({place.at * width, base_line}, words, type, place.anchor, head));
  }
  line.shapes.emplace_back(line_shape({0, line_step - 0.2}, {width, line_step - 0.2},
                                      line_paint(head ? ink::black : ink::faint, head ? 0.3 : 0.2)));
  block.lines.push_back(std::move(line));
  return block;
}

// Under "less" or "more" the number alone; where a piece does both, with its sign.
std::string shaped_words(const Shaping& shaping, const ShapingKinds& kinds) {
  const char* const sign = !(kinds.decreases && kinds.increases) ? ""
                           : shaping.increases() > 0             ? "+"
                           : shaping.decreases() > 0             ? "−"
                                                                 : "";
  return fmt::format("{}{}", sign, shaping.decreases() + shaping.increases());
}

std::vector<FlowBlock> range_table(const YokeJob& job, const YokeGroup& group, double width) {
  const std::size_t tiers = job.opened.tiers.size();
  ShapingKinds kinds;
  for (std::size_t tier = 0; tier < tiers; ++tier) {
    kinds.add(job.at(group.size, group.pieces.front(), tier).shaping);
  }
  std::vector<std::string> heads;
  for (const TableColumn& column : range_columns) {
    heads.emplace_back(&column == &range_columns[shaped_column] ? kinds.of(tr(column.head), tr("more"), tr("change"))
                                                                : tr(column.head));
  }
  std::vector<FlowBlock> blocks{table_row(heads, width, true)};
  for (std::size_t tier = 0; tier < tiers; ++tier) {
    const TierOfPiece& there = job.at(group.size, group.pieces.front(), tier);
    const bool again = is_hung_on_again(job.opened, there, tier);
    const std::size_t strip = strip_of(job, group.size, group.pieces.front(), tier);
    blocks.push_back(table_row({with_capital(name_of_tier(job, tier)), std::to_string(there.stitches),
                                span(there.bed.first, there.bed.last),
                                fmt::format("{}–{}", there.bed.left_column + 1, there.bed.right_column + 1),
                                shaped_words(there.shaping, kinds), std::to_string(there.shaping.after),
                                again ? span(there.first_after, there.last_after) : "–",
                                strip < job.strips.size() ? std::to_string(strip + 1) : "–"},
                               width, false));
  }
  return blocks;
}

// Where the other sheets of this tier are.
std::string references(const YokeJob& job, const YokeGroup& group, std::size_t tier, const YokePlaces& places) {
  std::string text;
  const std::size_t piece = group.pieces.front();
  const std::size_t list = list_of(job, group.size, piece, tier);
  const auto place = [](const std::vector<int>& pages, std::size_t index) {
    return index < pages.size() && pages[index] > 0 ? pages[index] : 0;
  };
  if (const int page = place(places.cards, tier)) {
    text += said("The card: from page {} on.", page) + ' ';
  }
  if (const int page = place(places.lists, list); page > 0 && list < job.lists.size()) {
    text += said("The needles: list {}, page {}.", list + 1, page) + ' ';
  }
  return text;
}

std::string strip_reference(const YokeJob& job, const YokeGroup& group, std::size_t tier, const YokePlaces& places) {
  const std::size_t strip = strip_of(job, group.size, group.pieces.front(), tier);
  return strip < places.strips.size() && places.strips[strip] > 0
             ? said("Strip {} on page {} shows these needles at the bed's pitch.", strip + 1, places.strips[strip])
             : std::string();
}

class StepSetter {
public:
  StepSetter(const YokeJob& job, const YokeGroup& group, const YokePlaces& places, double width)
      : job_(job), group_(group), places_(places), width_(width) {}

  std::vector<FlowBlock> tier(std::size_t tier) {
    const std::size_t piece = group_.pieces.front();
    const SizePlan& size = job_.plan.sizes[group_.size];
    const TierOfPiece& there = size.pieces[piece].tiers[tier];
    std::vector<FlowBlock> blocks{leaflet_subheading(with_capital(name_of_tier(job_, tier)), width_)};
    blocks.push_back(leaflet_text(fmt::format("{} {}", about(there), references(job_, group_, tier, places_)), width_));
    blocks.back().with_next = true;
    const StepList list = steps_of_tier(job_.opened, size, piece, tier);
    std::optional<StepPart> part;
    for (const Step& step : leaflet_steps(list, job_.opened.profile)) {
      if (part != step.part) {
        part = step.part;
        heading(blocks, std::string(heading_of(step.part)));
      }
      is_remark(step, tier) ? remark(blocks, step.text) : add(blocks, step.text);
    }
    heading(blocks, tier + 1 < job_.opened.tiers.size() ? tr("To the next tier") : tr("To the neck"));
    if (const std::string words = strip_reference(job_, group_, tier, places_); !words.empty()) {
      blocks.push_back(leaflet_text(words, width_));
      blocks.back().with_next = true;
    }
    for (const MovingStep& step : moving_words(job_.opened, size, piece, tier)) {
      step.is_remark ? remark(blocks, step.words) : add(blocks, step.words);
    }
    return blocks;
  }

private:
  // Its stitches, needles and columns.
  [[nodiscard]] std::string about(const TierOfPiece& there) const {
    const std::string stitches = stitches_counted(there.stitches);
    const std::string first = name_of(there.bed.first);
    const std::string last = name_of(there.bed.last);
    const int edge = job_.opened.yoke.edge;
    return edge > 0 ? said("{}, {} to {}; the knit side shows columns {} to {} between {} at each side.", stitches,
                           first, last, there.bed.left_column + 1, there.bed.right_column + 1,
                           said_count(edge, "{} seam stitch", "{} seam stitches"))
                    : said("{}, {} to {}; the knit side shows columns {} to {}.", stitches, first, last,
                           there.bed.left_column + 1, there.bed.right_column + 1);
  }
  void heading(std::vector<FlowBlock>& blocks, const std::string& text) const {
    blocks.push_back(paragraph(text, width_, {body_type, true, 0, line_step}));
    blocks.back().with_next = true;
  }
  void remark(std::vector<FlowBlock>& blocks, const std::string& text) const {
    blocks.push_back(leaflet_text(one_line(text), width_));
  }
  void add(std::vector<FlowBlock>& blocks, const std::string& text) {
    blocks.push_back(leaflet_step(++number_, one_line(text), width_, indent_));
  }

  const YokeJob& job_;
  const YokeGroup& group_;
  const YokePlaces& places_;
  double width_;
  double indent_ = 9.0; // three figures and a point
  int number_ = 0;
};

} // namespace

void add_yoke_steps(LeafletPages& pages, const YokeJob& job, const YokeGroup& group, const YokePlaces& places) {
  const std::string size = said("Size {}", one_line(job.plan.sizes[group.size].size));
  const std::string names = names_of(job, group.pieces);
  std::string heading = size + ": " + names;
  const bool all_named = width_of(heading, heading_type, true) <= pages.width();
  if (!all_named) {
    heading = fitting_text(
        fmt::format("{}: {}", size, group.pieces.size() > 1 ? pieces_counted(std::ssize(group.pieces)) : names),
        heading_type, true, pages.width());
  }
  pages.begin_part(heading);
  std::vector<FlowBlock> about;
  if (!all_named) {
    about.push_back(leaflet_text(with_capital(size) + ": " + names + ".", pages.width()));
  }
  if (group.pieces.size() > 1) {
    about.push_back(leaflet_text(tr("These pieces are knitted alike, on the same needles."), pages.width()));
  }
  if (!about.empty()) {
    pages.set(about, 1);
    pages.gap(half_line);
  }
  pages.set(range_table(job, group, pages.width()), 1);
  pages.gap(half_line);
  pages.set({leaflet_text(std::string(care_words()), pages.width())}, 1);
  pages.gap(line_step);
  StepSetter setter(job, group, places, pages.column_width(2));
  for (std::size_t tier = 0; tier < job.opened.tiers.size(); ++tier) {
    pages.set(setter.tier(tier), 2);
    pages.gap(line_step);
  }
}

void add_yoke_needles(LeafletPages& pages, const YokeJob& job, YokePlaces& places) {
  pages.begin_part(tr("Needles"));
  for (std::size_t index = 0; index < job.lists.size(); ++index) {
    const YokeNeedleList& list = job.lists[index];
    const SizePlan& size = job.plan.sizes[list.size];
    const Document document = document_of(job.opened, size, list.piece, list.tier);
    int page = 0; // tried first, and then set
    pages.set_together([&](LeafletPages& on) {
      page = on.pages();
      on.set({leaflet_subheading(said("List {}: {}", index + 1, name_of_tier(job, list.tier)), on.width()),
              leaflet_text(list.users + ".", on.width())},
             1);
      add_needle_list(on, {document, job.opened.profile, job.opened.tiers[list.tier].rows, {}, true});
    });
    places.lists.push_back(page);
    pages.gap(2 * line_step);
  }
}

} // namespace punchwright
