// The leaflet's needle lists: rows of a table that are never split, one table for both kinds of machine where it does.
#include "plan/step_words.hpp"
#include "sheets/chart_rows.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/shapes.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {

using namespace leaflet;

namespace {

std::string keys_of(const Pass& pass) {
  std::string keys;
  for (const char key : {pass.main, pass.contrast}) {
    keys += key != 0 ? (keys.empty() ? "" : " + ") + std::string(1, key) : "";
  }
  return keys;
}

class NeedleList {
public:
  // `by_card`, where the list holds for such a machine too.
  NeedleList(const LeafletMachine& machine, const LeafletMachine* by_card, const OneList& difference, double width)
      : machine_(machine), chart_(machine.document, machine.profile, {}), difference_(difference), width_(width) {
    if (by_card != nullptr) {
      other_.emplace(by_card->document, by_card->profile, ChartWishes{});
    }
    listed_ = static_cast<int>(
        period_of(chart_.rows().size(), [&](std::size_t row, std::size_t before) { return same(row, before); }));
    place_columns();
  }

  [[nodiscard]] std::string intro() const {
    const Document& document = machine_.document;
    std::string yarns;
    for (const Yarn& yarn : document.yarns) {
      const auto knits = [&](const RowToKnit& row) { return row.main == yarn.key || row.contrast == yarn.key; };
      if (std::ranges::any_of(chart_.rows(), knits)) {
        yarns += fmt::format("{}{} {}", yarns.empty() ? "" : ", ", yarn.key, name_of_yarn(document, yarn.key));
      }
    }
    std::string text = fmt::format("{} {}", mirror_words(), selection_words(machine_.profile));
    if (other_) {
      text += fmt::format(" {}", tr("By card, compare them with those that the card brings forward."));
      const auto& ends = difference_.end_needles;
      if (!ends.empty()) {
        text += ' ' + said_count(std::ssize(ends),
                                 "There the end needle, {1}, comes forward in every row with contrast too.",
                                 "There the end needles, {1}, come forward in every row with contrast too.",
                                 needles_words(ends));
      }
    }
    return text + ' ' + said("Yarns: {}.", yarns);
  }

  [[nodiscard]] FlowBlock head() const {
    FlowBlock head;
    FlowLine line;
    line.height = 1.5 * line_step;
    const auto add = [&](double x, const char* words, Anchor anchor) {
      line.shapes.emplace_back(text_shape({x, base_line}, words, small_type, anchor, true));
    };
    add(row_end_, tr("row"), Anchor::end);
    if (chart_end_ > 0) {
      add(chart_end_, tr("chart"), Anchor::end);
    }
    if (second_travel_ > 0) {
      add(travel_, tr("hand"), Anchor::middle);
      add(second_travel_, tr("card"), Anchor::middle);
    }
    add(yarns_, tr("yarns"), Anchor::start);
    add(count_end_, tr("count"), Anchor::end);
    add(needles_, tr("needles that come forward"), Anchor::start);
    line.shapes.emplace_back(line_shape({0, line_step - 0.2}, {width_, line_step - 0.2}, line_paint(ink::black, 0.3)));
    head.lines.push_back(std::move(line));
    return head;
  }

  [[nodiscard]] std::vector<FlowBlock> blocks() const {
    std::vector<FlowBlock> blocks;
    const int rows = static_cast<int>(chart_.rows().size());
    for (int row = 1; row <= listed_; ++row) {
      if (const std::string done = done_before(row); !done.empty()) {
        blocks.push_back(done_block(said("before row {}: {}", row, done)));
      }
      blocks.push_back(row_block(row));
    }
    const auto close_with = [&](const std::string& words) { // stands with the last row, not alone on a page
      if (!blocks.empty()) {
        blocks.back().with_next = true;
      }
      blocks.push_back(done_block(words));
      blocks.back().with_next = false;
    };
    if (listed_ < rows) {
      int passes = 0;
      for (int row = 0; row < listed_; ++row) {
        passes += chart_.rows()[static_cast<std::size_t>(row)].passes;
      }
      const bool arrows_turn = passes % 2 != 0;
      const std::string again = again_words(listed_, rows);
      close_with(arrows_turn ? said("{}, each time with the arrows the other way round", again) : again);
    }
    if (const std::string done = told(chart_.done_at_end(), other_ ? other_->done_at_end() : ""); !done.empty()) {
      close_with(said("at the end: {}", done));
    }
    return blocks;
  }

private:
  void place_columns() {
    const auto in_chart = [&](std::size_t row) { return chart_.rows()[row].drawn == static_cast<int>(row); };
    bool as_drawn = true;
    for (std::size_t row = 0; row < chart_.rows().size(); ++row) {
      as_drawn = as_drawn && in_chart(row);
    }
    row_end_ = std::max({7.0, width_of(tr("row"), small_type, true),
                         width_of(std::to_string(chart_.rows().size()), body_type, true) + 1.0});
    double x = row_end_;
    if (!as_drawn) {
      chart_end_ = x += 13.0;
    }
    travel_ = x += 6.5;
    if (difference_.travels_differ) {
      second_travel_ = x += 10.0;
    }
    yarns_ = x + 7.0;
    count_end_ = yarns_ + 21.0;
    needles_ = count_end_ + 5.0;
  }

  // By the needles and what is done before; the travel turns with every row. What is in the feeders at the beginning
  // needn't be put in again.
  [[nodiscard]] bool same(std::size_t row, std::size_t before) const {
    const RowToKnit& one = chart_.rows()[row];
    const RowToKnit& other = chart_.rows()[before];
    const auto number = static_cast<int>(row + 1);
    const std::string done = done_before(number);
    return one.drawn == other.drawn && one.why == other.why && one.main == other.main &&
           one.contrast == other.contrast && one.passes == other.passes && one.contrast_first == other.contrast_first &&
           one.travel != previous_travel(row) &&
           (done == done_before(static_cast<int>(before + 1)) || (before == 0 && done.empty()));
  }
  [[nodiscard]] Travel previous_travel(std::size_t row) const {
    return passes_of(chart_.rows()[row - 1]).back().travel;
  }

  [[nodiscard]] std::string done_before(int row) const {
    return told(chart_.done_before(row), other_ ? other_->done_before(row) : "");
  }

  // What is done, and what by card.
  [[nodiscard]] std::string told(const std::string& done, const std::string& done_by_card) const {
    const std::string words = one_line(done);
    const std::string by_card = other_ ? one_line(done_by_card) : words;
    if (by_card == words) {
      return words;
    }
    return by_card.starts_with(words + ", ") ? said("{}; by card also {}", words, by_card.substr(words.size() + 2))
           : words.empty()                   ? said("by card {}", by_card)
                                             : said("{}; by card {}", words, by_card);
  }

  // On a band as wide as the list.
  [[nodiscard]] FlowBlock done_block(const std::string& words) const {
    const double left = row_end_ + 4.0;
    FlowBlock block = paragraph(words, width_ - 1.0, {body_type, true, left});
    block.with_next = true;
    RectangleShape band;
    band.corner = {0, base_line - 4.1};
    band.width = width_;
    band.height = 1.2 + line_step * static_cast<double>(block.lines.size());
    band.paint = fill_paint(ink::wash);
    block.lines.front().shapes.insert(block.lines.front().shapes.begin(), band);
    block.lines.back().height += half_line;
    return block;
  }

  // Runs, two spaces apart, in lines.
  [[nodiscard]] std::vector<std::string> needle_lines(const RowToKnit& row) const {
    const ChartNeedles& needles = chart_.needles_of(row);
    const std::string remark = remark_of(row, chart_);
    if (needles.runs.empty() || needles.count == std::ssize(needles.forward)) {
      const std::string which = needles.runs.empty() ? tr("none") : tr("all");
      return lines_of(remark.empty() ? which : fmt::format("{}: {}", which, remark), body_type, false,
                      width_ - needles_);
    }
    std::vector<std::string> lines;
    for (const NeedleRun& run : needles.runs) {
      const std::string name = text_of(std::vector<NeedleRun>{run});
      const std::string longer = lines.empty() ? name : lines.back() + "  " + name;
      if (!lines.empty() && width_of(longer, body_type, false) <= width_ - needles_) {
        lines.back() = longer;
      } else {
        lines.push_back(name);
      }
    }
    return lines;
  }

  [[nodiscard]] FlowBlock row_block(int number) const {
    const auto index = static_cast<std::size_t>(number - 1);
    const RowToKnit& row = chart_.rows()[index];
    const auto passes = passes_of(row);
    const auto lines = needle_lines(row);
    FlowBlock block;
    block.whole = true;
    block.lines.resize(std::max(lines.size(), passes.size()));
    for (FlowLine& line : block.lines) {
      line.height = line_step;
    }
    const auto add = [&](std::size_t line, double x, const std::string& words, Anchor anchor, bool bold = false) {
      block.lines[line].shapes.emplace_back(text_shape({x, base_line}, words, body_type, anchor, bold));
    };
    add(0, row_end_, std::to_string(number), Anchor::end, true);
    if (chart_end_ > 0) {
      add(0, chart_end_, row.drawn >= 0 ? std::to_string(row.drawn + 1) : "–", Anchor::end);
    }
    if (second_travel_ > 0) {
      add(0, second_travel_, std::string(arrow_of(other_->rows()[index].travel)), Anchor::middle);
    }
    add(0, count_end_, std::to_string(chart_.needles_of(row).count), Anchor::end);
    for (std::size_t pass = 0; pass < passes.size(); ++pass) {
      add(pass, travel_, std::string(arrow_of(passes[pass].travel)), Anchor::middle);
      add(pass, yarns_, keys_of(passes[pass]), Anchor::start);
    }
    for (std::size_t line = 0; line < lines.size(); ++line) {
      add(line, needles_, lines[line], Anchor::start);
    }
    FlowLine& last = block.lines.back();
    last.shapes.emplace_back(line_shape({0, line_step + 0.7}, {width_, line_step + 0.7}, line_paint(ink::faint, 0.2)));
    last.height += half_line;
    return block;
  }

  const LeafletMachine& machine_;
  ChartRows chart_;
  std::optional<ChartRows> other_;
  OneList difference_;
  double width_;
  int listed_ = 0; // rows; after them they come again
  // Places of the columns, from the list's left edge; 0: there is no such column.
  double row_end_ = 0;
  double chart_end_ = 0; // the drawn row
  double travel_ = 0;    // middle of the arrow
  double second_travel_ = 0;
  double yarns_ = 0;
  double count_end_ = 0;
  double needles_ = 0;
};

void set_list(LeafletPages& pages, const NeedleList& list) {
  pages.set({leaflet_text(list.intro(), pages.width())}, 1);
  pages.gap(line_step);
  pages.set(list.blocks(), 1, list.head());
}

void add_list(LeafletPages& pages, const std::string& name, const LeafletMachine& machine,
              const LeafletMachine* by_card = nullptr, const OneList& difference = {}) {
  const NeedleList list(machine, by_card, difference, pages.width());
  pages.begin_part_below(name, 90.0);
  set_list(pages, list);
}

} // namespace

void add_needle_list(LeafletPages& pages, const LeafletMachine& machine) {
  set_list(pages, NeedleList(machine, nullptr, {}, pages.width()));
}

std::optional<OneList> one_list_for(const LeafletMachine& by_card, const LeafletMachine& by_hand) {
  if (by_card.rows.rows.size() != by_hand.rows.rows.size()) {
    return std::nullopt;
  }
  const Needle ends[] = {first_needle_of(by_hand.document), last_needle_of(by_hand.document)};
  OneList difference;
  for (std::size_t index = 0; index < by_hand.rows.rows.size(); ++index) {
    const RowToKnit& card_row = by_card.rows.rows[index];
    const RowToKnit& hand_row = by_hand.rows.rows[index];
    if (card_row.passes != 1 || hand_row.passes != 1 || card_row.drawn != hand_row.drawn ||
        card_row.main != hand_row.main || card_row.contrast != hand_row.contrast) {
      return std::nullopt;
    }
    difference.travels_differ = difference.travels_differ || card_row.travel != hand_row.travel;
    const auto at_card = needles_in_row(by_card.document, by_card.profile, card_row);
    const auto at_hand = needles_in_row(by_hand.document, by_hand.profile, hand_row);
    std::vector<Needle> only_one;
    std::ranges::set_symmetric_difference(at_card, at_hand, std::back_inserter(only_one));
    for (const Needle needle : only_one) {
      if (!std::ranges::binary_search(at_card, needle) || std::ranges::find(ends, needle) == std::end(ends)) {
        return std::nullopt;
      }
      if (std::ranges::find(difference.end_needles, needle) == difference.end_needles.end()) {
        difference.end_needles.push_back(needle);
      }
    }
  }
  std::ranges::sort(difference.end_needles);
  return difference;
}

void add_needles(LeafletPages& pages, const LeafletMachine& by_card, const LeafletMachine& by_hand) {
  const bool both = by_card.misfits.empty() && by_hand.misfits.empty();
  if (const auto difference = both ? one_list_for(by_card, by_hand) : std::nullopt) {
    add_list(pages, tr("Needles"), by_hand, &by_card, *difference);
    return;
  }
  for (const LeafletMachine* machine : {&by_card, &by_hand}) {
    if (machine->misfits.empty()) {
      add_list(pages, reads_card(machine->profile) ? tr("Needles by card") : tr("Needles by hand"), *machine);
    }
  }
}

} // namespace punchwright
