// Findings in plain words: what is wrong, and what can be done about it.
#include "machine/placement.hpp"
#include "rows/cards.hpp"
#include "rules/findings.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {
namespace {

std::string listed(const std::vector<int>& numbers) {
  std::string text;
  for (std::size_t index = 0; index < numbers.size(); ++index) {
    if (index > 0) {
      text += index + 1 == numbers.size() ? " or " : ", ";
    }
    text += std::to_string(numbers[index]);
  }
  return text;
}

std::string counted(int number, const char* one, const char* many) {
  return fmt::format("{} {}", number, number == 1 ? one : many);
}

class Speaker {
public:
  Speaker(const Finding& finding, const Document& document, const Profile& profile)
      : finding_(finding), document_(document), profile_(profile) {}

  Words words() const {
    switch (finding_.id) {
    case FindingId::repeat_width: return repeat_width();
    case FindingId::float_too_long: return float_too_long();
    case FindingId::row_all_main: return row_all_main();
    case FindingId::row_all_contrast: return row_all_contrast();
    case FindingId::yarn_on_other_side: return yarn_on_other_side();
    case FindingId::card_too_short_for_loop: return card_too_short();
    case FindingId::card_longer_than_blank: return card_too_long();
    case FindingId::piece_wider_than_bed: return piece_wider_than_bed();
    case FindingId::piece_off_bed: return piece_off_bed();
    case FindingId::repeat_on_needles: return repeat_on_needles();
    case FindingId::repeat_cut_at_edges: return repeat_cut_at_edges();
    case FindingId::yarns_too_alike: return yarns_too_alike();
    case FindingId::unknown_key: break;
    }
    return {finding_.text, "nothing is lost; correct it if it is a typing mistake"};
  }

private:
  // The yarn's name on one line, or its key where it has none.
  std::string name(char key) const {
    if (key == 0) {
      return "the contrast";
    }
    std::string text = yarn_of(document_, key).name;
    std::ranges::replace_if(
        text, [](unsigned char letter) { return letter < ' ' || letter == 127; }, ' ');
    return text.empty() ? std::string(1, key) : text;
  }
  int row() const { return finding_.row + 1; }

  Words repeat_width() const {
    const auto widths = widths_for_card(finding_.limit);
    const auto above = std::ranges::upper_bound(widths, finding_.stitches);
    std::vector<int> nearest;
    if (above != widths.begin()) {
      nearest.push_back(*(above - 1));
    }
    if (above != widths.end()) {
      nearest.push_back(*above);
    }
    return {fmt::format("the repeat is {} wide, which does not divide the card's {}: a card holds {}",
                        counted(finding_.stitches, "stitch", "stitches"), finding_.limit, listed(widths)),
            fmt::format(
                "make it {} stitches wide, or choose a bed whose needles are selected by hand, which has no such limit",
                listed(nearest))};
  }

  Words float_too_long() const {
    const std::string columns =
        finding_.first_column > finding_.last_column
            ? fmt::format("columns {} to {} round the edge of the repeat", finding_.first_column + 1,
                          finding_.last_column + 1)
            : fmt::format("columns {} to {}", finding_.first_column + 1, finding_.last_column + 1);
    std::string place = columns;
    // Each stitch parts the float in two: n of them leave n + 1 parts, none longer than the limit.
    const int needed = finding_.stitches / (finding_.limit + 1);
    if (finding_.on_piece) {
      place = fmt::format("needles {} to {}", name_of(*finding_.first_needle), name_of(*finding_.last_needle));
      if (finding_.times > 1) {
        place += fmt::format(" and {} more on the piece", counted(finding_.times - 1, "place", "places"));
      } else {
        place += " of the piece";
      }
    }
    return {fmt::format("row {}: {} floats behind {} of {} ({:.1f} mm), {}; {} at most are allowed", row(),
                        name(finding_.yarn), counted(finding_.stitches, "stitch", "stitches"), name(finding_.other),
                        finding_.stitches * document_.gauge.stitch_mm(), place, finding_.limit),
            fmt::format("knit {} of {} {}, or catch the float by hand and raise the limit",
                        counted(needed, "stitch", "stitches"), name(finding_.yarn),
                        needed == 1 ? "in the middle of it" : "in it, evenly spread")};
  }

  Words row_all_main() const {
    std::string remedy = fmt::format("before it, take {} out of the feeder if it is in", name(finding_.other));
    switch (profile_.selects) {
    case Selects::next_pass:
      remedy +=
          end_needles_knit_contrast(document_, profile_)
              ? " and push the selected end needles back: a selected needle whose feeder is empty drops its stitch"
              : "; no needle stands selected for it";
      break;
    case Selects::same_pass: remedy += "; no needle stands selected between passes, so nothing can drop"; break;
    case Selects::by_hand: remedy += " and bring no needle forward"; break;
    }
    return {fmt::format("row {} is knitted in {} alone", row(), name(finding_.yarn)), remedy};
  }

  Words row_all_contrast() const {
    return {
        fmt::format("row {} is knitted in {} alone: every needle is selected, and {} would lie loose across the whole "
                    "piece",
                    row(), name(finding_.yarn), name(finding_.other)),
        fmt::format("take {0} out of the feeder before it and put it back after it; after an odd number of such rows "
                    "{0} hangs at the other edge: cut it and rejoin it",
                    name(finding_.other))};
  }

  Words yarn_on_other_side() const {
    const bool by_passes = profile_.feeders == 1; // a two-colour row takes two
    return {fmt::format("{} is wanted again in row {} after {} without it{}, and hangs at the other edge then",
                        name(finding_.yarn), row(),
                        by_passes ? counted(finding_.gap, "pass", "passes") : counted(finding_.gap, "row", "rows"),
                        finding_.times > 1 ? fmt::format(" ({} times)", finding_.times) : ""),
            fmt::format("cut it and rejoin it at the side of the carriage, or make the {} between even in number",
                        by_passes ? "passes" : "rows")};
  }

  Words card_too_short() const {
    return {fmt::format("one circuit is {}, and a joined loop needs {}", counted(finding_.stitches, "row", "rows"),
                        finding_.limit),
            fmt::format("the card repeats it {} times: {} rows", finding_.times, finding_.times * finding_.stitches)};
  }

  Words card_too_long() const {
    return {
        fmt::format("the card has {} rows, a blank has {}", finding_.stitches, finding_.limit),
        fmt::format("punch {} cards and join them after {} {}", finding_.times, finding_.times == 2 ? "row" : "every",
                    finding_.times == 2 ? fmt::format("{}", finding_.limit) : fmt::format("{} rows", finding_.limit))};
  }

  Words piece_wider_than_bed() const {
    return {fmt::format("the piece has {} stitches, the bed {} needles", finding_.stitches, finding_.limit),
            fmt::format("knit it in {} pieces, or choose a bed with more needles",
                        (finding_.stitches + finding_.limit - 1) / finding_.limit)};
  }

  Words piece_off_bed() const {
    return {fmt::format("the piece would stand on {} to {}, the bed ends at {} and {}", name_of(*finding_.first_needle),
                        name_of(*finding_.last_needle), name_of(profile_.leftmost()), name_of(profile_.rightmost())),
            "move its first needle, or leave first_needle out to centre it"};
  }

  Words repeat_on_needles() const {
    const std::string where =
        fmt::format("{}, on {} to {}: as the knitter sees it, from drawn column {} on the left to {} on the right",
                    counted(finding_.stitches, "stitch", "stitches"), name_of(*finding_.first_needle),
                    name_of(*finding_.last_needle), finding_.first_column + 1, finding_.last_column + 1);
    if (profile_.card) {
      return {where, fmt::format("a card's column can't be moved along the bed: column 1 is {}; move the work instead",
                                 name_of(profile_.card->first_needle))};
    }
    return {where, "needles selected by hand may begin anywhere: first_column puts another column on the first needle"};
  }

  Words repeat_cut_at_edges() const {
    const int width = document_.grid.width();
    const int left = finding_.first_column + 1;     // stitches of a repeat on the left, if it is cut
    const int right = width - finding_.last_column; // and on the right
    std::string text = "the repeat is cut at ";
    if (left != width && right != width) {
      text += fmt::format("both edges of the piece: of its {} stitches there {} {} on the left and {} on the right",
                          width, left == 1 ? "is" : "are", left, right);
    } else {
      const int there = left != width ? left : right;
      text += fmt::format("the {} edge of the piece: of its {} stitches there {} {}", left != width ? "left" : "right",
                          width, there == 1 ? "is" : "are", there);
    }
    return {text, "as many stitches as whole repeats, from where a repeat begins, would show it whole"};
  }

  Words yarns_too_alike() const {
    return {fmt::format("{} on {}: contrast ratio {:.2f} to 1, the pattern will hardly show", name(finding_.yarn),
                        name(finding_.other), finding_.number),
            "choose a lighter or a darker yarn: 2 to 1 at least"};
  }

  const Finding& finding_;
  const Document& document_;
  const Profile& profile_;
};

} // namespace

std::string_view stable_id(FindingId id) {
  switch (id) {
  case FindingId::repeat_width: return "repeat-width";
  case FindingId::float_too_long: return "float-too-long";
  case FindingId::row_all_main: return "row-all-main";
  case FindingId::row_all_contrast: return "row-all-contrast";
  case FindingId::yarn_on_other_side: return "yarn-on-other-side";
  case FindingId::card_too_short_for_loop: return "card-too-short-for-loop";
  case FindingId::card_longer_than_blank: return "card-longer-than-blank";
  case FindingId::piece_wider_than_bed: return "piece-wider-than-bed";
  case FindingId::piece_off_bed: return "piece-off-bed";
  case FindingId::repeat_on_needles: return "repeat-on-needles";
  case FindingId::repeat_cut_at_edges: return "repeat-cut-at-edges";
  case FindingId::yarns_too_alike: return "yarns-too-alike";
  case FindingId::unknown_key: break;
  }
  return "unknown-key";
}

std::string_view name_of(Severity severity) {
  switch (severity) {
  case Severity::fault: return "fault";
  case Severity::warning: return "warning";
  case Severity::note: break;
  }
  return "note";
}

Words words_of(const Finding& finding, const Document& document, const Profile& profile) {
  return Speaker(finding, document, profile).words();
}

} // namespace punchwright
