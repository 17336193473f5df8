// The needle chart as plain text: columns of fixed width, a strip of '.' and '#', the ruler above it every ten rows.
// For a screen beside the machine, a text printer, or other programs.
#include "sheets/chart_forms.hpp"
#include "sheets/chart_words.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

namespace punchwright {

namespace {

constexpr std::size_t rows_between_rulers = 10;

//     [ ]   1     1  ← Oat + Ink      4  ..##|##..  L2–R2
//     tick row  card  carriage    count  strip      needles
struct Columns {
  std::size_t row = 0;
  std::size_t card = 0; // 0: no such column
  std::size_t carriage = 0;
  std::size_t count = 0;
};

std::string carriage_words(const std::vector<Pass>& passes, const ChartRows& chart) {
  std::string words;
  for (const Pass& pass : passes) {
    words += fmt::format("{}{} {}", words.empty() ? "" : ", ", arrow_of(pass.travel), yarn_names(pass, chart));
  }
  return words;
}

std::string padded(std::string_view text, std::size_t width) {
  const std::size_t characters = characters_in(text);
  return std::string(text) + std::string(characters < width ? width - characters : 0, ' ');
}

Columns columns_of(const ChartRows& chart) {
  Columns columns;
  columns.row = std::max(characters_in(tr("row")), std::to_string(chart.rows().size()).size());
  columns.carriage = characters_in(tr("carriage"));
  columns.count = characters_in(tr("count"));
  int last_card_row = 0;
  const RowToKnit* before = nullptr;
  for (const RowToKnit& row : chart.rows()) {
    last_card_row = std::max(last_card_row, row.card_row);
    if (before == nullptr || before->main != row.main || before->contrast != row.contrast ||
        before->all_contrast != row.all_contrast) {
      columns.carriage = std::max(columns.carriage, characters_in(carriage_words(passes_of(row), chart)));
    }
    before = &row;
  }
  if (chart.profile().card) {
    columns.card = std::max(characters_in(tr("card")), std::to_string(last_card_row).size());
  }
  return columns;
}

// The columns left of the strip.
std::string left_part(std::string_view tick, std::string_view row, std::string_view card, std::string_view carriage,
                      std::string_view count, const Columns& columns) {
  std::string line = fmt::format("{:3} {:>{}}  ", tick, row, columns.row);
  if (columns.card > 0) {
    line += fmt::format("{:>{}}  ", card, columns.card);
  }
  return line + padded(carriage, columns.carriage) + fmt::format("  {:>{}}  ", count, columns.count);
}

// One character a needle; '|' stands between L1 and R1 where both are in the piece.
template <class CharacterAt> std::string strip_of(const ChartRows& chart, CharacterAt character_at) {
  const int first = first_needle_of(chart.document()).position;
  std::string strip;
  for (int stitch = 0; stitch < chart.stitches(); ++stitch) {
    if (stitch > 0 && first + stitch == 0) {
      strip += '|';
    }
    strip += character_at(Needle{first + stitch}, static_cast<std::size_t>(stitch));
  }
  return strip;
}

//                           L10                 R10
//     row  carriage  count  +    '    |    '    +    needles
// A name ends on its needle: '+' marks every tenth, ''' every fifth.
std::string ruler_of(const ChartRows& chart, const Columns& columns) {
  const std::string heads = left_part("", tr("row"), tr("card"), tr("carriage"), tr("count"), columns);
  std::string names(heads.size(), ' ');
  const std::string ticks = strip_of(chart, [&](Needle needle, std::size_t stitch) {
    const int number = needle_number(needle);
    if (number % 10 == 0) {
      const bool past_middle = needle.position > 0 && static_cast<int>(stitch) > needle.position;
      const std::size_t end = heads.size() + stitch + (past_middle ? 2U : 1U);
      const std::string name = name_of(needle);
      names.resize(std::max(names.size(), end), ' ');
      names.replace(end - name.size(), name.size(), name);
    }
    return number % 10 == 0 ? '+' : number % 5 == 0 ? '\'' : ' ';
  });
  const std::size_t last = names.find_last_not_of(' ');
  names.resize(last == std::string::npos ? 0 : last + 1);
  return names + (names.empty() ? "" : "\n") + heads + ticks + "  " + tr("needles to bring forward") + "\n";
}

void append_head(std::string& out, const ChartRows& chart) {
  fmt::format_to(std::back_inserter(out), "{}\n{}\n{}\n", title_of(chart), machine_of(chart), piece_words(chart));
  fmt::format_to(std::back_inserter(out), "\n{}\n{}\n", mirror_words(), selection_words(chart.profile()));
  fmt::format_to(std::back_inserter(out), "{}\n{}\n\n",
                 tr("'#' comes forward and knits contrast, '.' stays back, '|' is the middle of the bed"),
                 care_words());
}

void append_setup(std::string& out, const ChartRows& chart, const Columns& columns) {
  int number = 0;
  for (const SetupRow& row : chart.setup()) {
    const std::string yarn = row.main ? " " + chart.yarn_name(*row.main) : "";
    out += left_part("[ ]", said("S{}", ++number), "", std::string(arrow_of(row.travel)) + yarn, "", columns);
    out += said("setting up: {}", setup_words(row)) + '\n';
  }
}

void append_row(std::string& out, const ChartRows& chart, std::size_t index, const Columns& columns) {
  const RowToKnit& row = chart.rows()[index];
  const ChartNeedles& needles = chart.needles_of(row);
  out += left_part("[ ]", std::to_string(index + 1), row.card_row > 0 ? std::to_string(row.card_row) : "",
                   carriage_words(passes_of(row), chart), std::to_string(needles.count), columns);
  out += strip_of(chart, [&](Needle, std::size_t stitch) { return needles.forward[stitch] ? '#' : '.'; });
  out += "  " + chart.list_of(row);
  if (const std::string remark = remark_of(row, chart); !remark.empty()) {
    out += "; " + remark;
  }
  out += '\n';
}

void append_done(std::string& out, std::string_view when, const std::string& done) {
  if (!done.empty()) {
    fmt::format_to(std::back_inserter(out), "    -- {}: {}\n", when, one_line(done));
  }
}

} // namespace

std::string chart_text(const ChartRows& chart) {
  const Columns columns = columns_of(chart);
  const std::string ruler = ruler_of(chart, columns);
  std::string out;
  append_head(out, chart);
  append_setup(out, chart, columns);
  for (std::size_t index = 0; index < chart.rows().size(); ++index) {
    const int number = static_cast<int>(index) + 1;
    if (index % rows_between_rulers == 0) {
      out += ruler;
    }
    append_done(out, said("before row {}", number), chart.done_before(number));
    append_row(out, chart, index, columns);
  }
  append_done(out, tr("at the end"), chart.done_at_end());
  return out;
}

} // namespace punchwright
