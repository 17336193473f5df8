// The needle chart as comma-separated values (RFC 4180): one record a row to knit, for spreadsheets and scripts.
// Yarns by key and by name; lines end in CR LF, fields with commas, quotes or breaks stand in quotes. Only what is said
// to people, before and after a row, is in their language: the rest is the same for every reader.
#include "plan/reasons.hpp"
#include "sheets/chart_forms.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/reports.hpp"
#include "words/words.hpp"

#include <fmt/format.h>
#include <iterator>
#include <map>

namespace punchwright {

namespace {

std::string field(std::string_view text) {
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
    return std::string(text);
  }
  std::string out = "\"";
  for (const char letter : text) {
    out += letter;
    if (letter == '"') {
      out += '"';
    }
  }
  return out + '"';
}

// "L36 L28 L27".
std::string every_needle(const ChartRows& chart, const ChartNeedles& needles) {
  const int first = first_needle_of(chart.document()).position;
  std::string names;
  for (std::size_t stitch = 0; stitch < needles.forward.size(); ++stitch) {
    if (needles.forward[stitch]) {
      names += names.empty() ? "" : " ";
      names += name_of(Needle{first + static_cast<int>(stitch)});
    }
  }
  return names;
}

// "L36–L28 L3", "all but L27".
std::string listed_needles(const ChartNeedles& needles) {
  if (!needles.lists_those_that_stay) {
    return text_of(needles.listed);
  }
  return needles.listed.empty() ? "all" : "all but " + text_of(needles.listed);
}

// "A leftwards; B rightwards".
std::string passes_words(const RowToKnit& row) {
  std::string words;
  for (const Pass& pass : passes_of(row)) {
    words += words.empty() ? "" : "; ";
    for (const char key : {pass.main, pass.contrast}) {
      if (key != 0) {
        words += key;
      }
    }
    words += ' ';
    words += word_for(pass.travel);
  }
  return words;
}

std::string setting_up(const ChartRows& chart) {
  std::string words;
  for (const SetupRow& row : chart.setup()) {
    words += words.empty() ? "" : "; ";
    words += row.main ? said("{} {} in {}", travel_words(row.travel), setup_words(row), chart.yarn_name(*row.main))
                      : fmt::format("{} {}", travel_words(row.travel), setup_words(row));
  }
  return words.empty() ? words : said("setting up: {}", words);
}

std::string before_words(const ChartRows& chart, int number) {
  const std::string done = chart.done_before(number);
  std::string words = number == 1 ? setting_up(chart) : "";
  words += words.empty() || done.empty() ? "" : "; ";
  return words + done;
}

} // namespace

std::string chart_csv(const ChartRows& chart) {
  // The needles of a drawn row are the same each time it is knitted.
  std::map<const ChartNeedles*, std::string> needle_fields;
  std::string out = "row,drawn,why,travel,main,contrast,count,needles,all_needles,before,after,card_row,passes,"
                    "main_name,contrast_name\r\n";
  const auto last = static_cast<int>(chart.rows().size());
  for (int number = 1; number <= last; ++number) {
    const RowToKnit& row = chart.rows()[static_cast<std::size_t>(number - 1)];
    const ChartNeedles& needles = chart.needles_of(row);
    std::string& fields = needle_fields[&needles];
    if (fields.empty()) {
      fields = field(needles.count == 0 ? "" : listed_needles(needles)) + ',' + field(every_needle(chart, needles));
    }
    fmt::format_to(std::back_inserter(out), "{},{},{},{},{},{},{},{},{},{},{},{},{},{}\r\n", number,
                   row.drawn < 0 ? "" : std::to_string(row.drawn + 1), word_for(row.why), word_for(row.travel),
                   row.main, row.contrast == 0 ? "" : std::string(1, row.contrast), needles.count, fields,
                   field(before_words(chart, number)), number == last ? field(chart.done_at_end()) : "",
                   row.card_row > 0 ? std::to_string(row.card_row) : "", field(passes_words(row)),
                   field(chart.yarn_name(row.main)), row.contrast == 0 ? "" : field(chart.yarn_name(row.contrast)));
  }
  return out;
}

} // namespace punchwright
