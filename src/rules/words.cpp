// Findings in plain words: what is wrong, and what can be done about it.
#include "design/words.hpp"

#include "machine/placement.hpp"
#include "rows/cards.hpp"
#include "rules/findings.hpp"
#include "rules/whole_repeats.hpp"

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

class Speaker {
public:
  // `rows` of one colour that lie on one another are spoken of together, the first of them by its finding.
  Speaker(const Finding& finding, const Document& document, const Profile& profile, LengthUnit lengths, int rows = 1)
      : finding_(finding), document_(document), profile_(profile), lengths_(lengths), rows_(rows) {}

  Words words() const {
    switch (finding_.id) {
    case FindingId::repeat_width: return repeat_width();
    case FindingId::float_too_long: return float_too_long();
    case FindingId::float_accepted: return float_accepted();
    case FindingId::catch_not_needed: return catch_not_needed();
    case FindingId::row_all_main: return row_all_main();
    case FindingId::row_all_contrast: return row_all_contrast();
    case FindingId::yarn_on_other_side: return yarn_on_other_side();
    case FindingId::yarn_loose_on_piece: return yarn_loose_on_piece();
    case FindingId::card_too_short_for_loop: return card_too_short();
    case FindingId::card_longer_than_blank: return card_too_long();
    case FindingId::piece_wider_than_bed: return piece_wider_than_bed();
    case FindingId::piece_off_bed: return piece_off_bed();
    case FindingId::repeat_on_needles: return repeat_on_needles();
    case FindingId::repeat_cut_at_edges: return repeat_cut_at_edges();
    case FindingId::yarns_too_alike: return yarns_too_alike();
    case FindingId::too_many_rows: return too_many_rows();
    case FindingId::loop_change_undone: return loop_change_undone();
    case FindingId::card_held: return card_held();
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
  // "row 7 is", "rows 7 and 8 are", "rows 7 to 9 are".
  std::string rows_are() const {
    return rows_ == 1 ? fmt::format("row {} is", row())
                      : fmt::format("rows {} {} {} are", row(), rows_ == 2 ? "and" : "to", row() + rows_ - 1);
  }

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

  // "column 5", "columns 22 to 3 round the edge of the repeat".
  std::string columns() const {
    const int first = finding_.first_column + 1;
    const int last = finding_.last_column + 1;
    if (first == last) {
      return fmt::format("column {}", first);
    }
    return fmt::format("columns {} to {}{}", first, last, first > last ? " round the edge of the repeat" : "");
  }

  std::string float_limit() const {
    if (document_.rules.longest_float_mm && !document_.rules.longest_float) {
      const double longest = *document_.rules.longest_float_mm;
      const std::string length =
          lengths_ == LengthUnit::inches ? small_length_text(longest, lengths_) : fmt::format("{:g} mm", longest);
      return fmt::format("{}, {}, at most are allowed", length, counted(finding_.limit, "stitch", "stitches"));
    }
    return fmt::format("{} at most are allowed", finding_.limit);
  }

  // "7 stitches of Ink (43.8 mm)".
  std::string passed_stitches() const {
    return fmt::format("{} of {} ({})", counted(finding_.stitches, "stitch", "stitches"), name(finding_.other),
                       small_length_text(finding_.stitches * document_.gauge.stitch_mm(), lengths_));
  }

  Words float_too_long() const {
    const std::string passed = passed_stitches();
    if (finding_.on_piece) {
      return float_on_piece(passed);
    }
    // Each stitch parts the float in two: n of them leave n + 1 parts, none longer than the limit.
    const int needed = finding_.stitches / (finding_.limit + 1);
    return {fmt::format("row {}: {} floats behind {}, {}; {}", row(), name(finding_.yarn), passed, columns(),
                        float_limit()),
            fmt::format("knit {} of {} {}, or catch the float by hand", counted(needed, "stitch", "stitches"),
                        name(finding_.yarn), needed == 1 ? "in the middle of it" : "in it, evenly spread")};
  }

  // The repeat's own finding stands before it: what this one adds is where on the bed, and how often.
  Words float_on_piece(const std::string& passed) const {
    const bool one_needle = finding_.first_needle == finding_.last_needle;
    const std::string needles =
        one_needle ? fmt::format("needle {}", name_of(*finding_.first_needle))
                   : fmt::format("needles {} to {}", name_of(*finding_.first_needle), name_of(*finding_.last_needle));
    const std::string often = finding_.times == 1 ? "once: at" : fmt::format("in {} places, first at", finding_.times);
    return {fmt::format("row {} on the piece: {} floats behind {} {} {}, which knit {}; {}", row(), name(finding_.yarn),
                        passed, often, needles, columns(), float_limit()),
            finding_.times == 1
                ? fmt::format("mended in the drawing it is mended here; or catch it by hand at {}", needles)
                : fmt::format("mended once in the drawing it is mended in all {} places; or catch it by "
                              "hand in each",
                              finding_.times)};
  }

  Words float_accepted() const {
    return {fmt::format("row {}{}: {} floats behind {}, {}; {}, and this one is accepted", row(),
                        finding_.on_piece ? " on the piece" : "", name(finding_.yarn), passed_stitches(), columns(),
                        float_limit()),
            "nothing is to be done; mend it or catch it by hand if it should pull or snag"};
  }

  Words catch_not_needed() const {
    const std::string where =
        finding_.first_column == finding_.last_column
            ? fmt::format("column {}", finding_.first_column + 1)
            : fmt::format("columns {} and {}", finding_.first_column + 1, finding_.last_column + 1);
    return {fmt::format("row {}: {} by hand, {}{}, where no float that is too long passes", row(),
                        counted(finding_.stitches, "catch", "catches"),
                        finding_.stitches > 2 ? "the outermost in " : "in ", where),
            document_.grid.mixed(finding_.row) ? "take the catch away to spare the work; left there it does no harm"
                                               : "the row is of one colour and nothing is lifted: take the catch away"};
  }

  Words row_all_main() const {
    std::string remedy = fmt::format("before {}, take {} out of the feeder if it is in", rows_ == 1 ? "it" : "them",
                                     name(finding_.other));
    switch (profile_.selects) {
    case Selects::next_pass:
      remedy +=
          end_needles_knit_contrast(document_, profile_)
              ? " and push the selected end needles back: a selected needle whose feeder is empty drops its stitch"
              : "; no needle stands selected for a row of main alone";
      break;
    case Selects::same_pass: remedy += "; no needle stands selected between passes, so nothing can drop"; break;
    case Selects::by_hand: remedy += " and bring no needle forward"; break;
    }
    return {fmt::format("{} knitted in {} alone", rows_are(), name(finding_.yarn)), remedy};
  }

  Words row_all_contrast() const {
    return {
        fmt::format("{} knitted in {} alone: every needle is selected, and {} would lie loose across the whole piece",
                    rows_are(), name(finding_.yarn), name(finding_.other)),
        fmt::format("take {0} out of the feeder before {1} and put it back after {1}; after an odd number of such rows "
                    "{0} hangs at the other edge: cut it and rejoin it",
                    name(finding_.other), rows_ == 1 ? "it" : "them")};
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

  Words yarn_loose_on_piece() const {
    const std::string where =
        finding_.first_needle == finding_.last_needle
            ? name_of(*finding_.first_needle)
            : fmt::format("{} to {}", name_of(*finding_.first_needle), name_of(*finding_.last_needle));
    return {
        fmt::format("row {} is drawn in two colours, but on the piece, {}, it is {} alone: {} would lie loose across "
                    "the whole piece",
                    row(), where, name(finding_.other), name(finding_.yarn)),
        fmt::format("take {} out of the feeder before that row and put it back after it, or move the piece along "
                    "the bed until the row shows both",
                    name(finding_.yarn))};
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
    if (finding_.first_column - finding_.last_column + 1 == finding_.stitches) { // a part of one repeat
      return {fmt::format("the piece shows {} of the repeat's {} stitches{}", finding_.stitches, width,
                          document_.piece.edge > 0 ? " between its selvedges" : ""),
              whole_repeats()};
    }
    const std::string_view before_count = document_.piece.edge > 0 ? ", beside the selvedge:" : ":";
    std::string text = "the repeat is cut at ";
    if (left != width && right != width) {
      text += fmt::format("both edges of the piece{} of its {} stitches there {} {} on the left and {} on the right",
                          before_count, width, left == 1 ? "is" : "are", left, right);
    } else {
      const int there = left != width ? left : right;
      text += fmt::format("the {} edge of the piece{} of its {} stitches there {} {}", left != width ? "left" : "right",
                          before_count, width, there == 1 ? "is" : "are", there);
    }
    return {text, whole_repeats()};
  }

  // What to set, so that nothing is cut.
  std::string whole_repeats() const {
    std::string remedy;
    std::optional<int> column;
    for (const WholeRepeats& piece : nearest_whole_repeats(document_, profile_)) {
      const std::string first = name_of(piece.first_needle);
      remedy += remedy.empty() ? fmt::format("take {} stitches in work from first needle {} ({}{})", piece.stitches,
                                             first, counted(piece.repeats, "whole repeat", "whole repeats"),
                                             document_.piece.edge > 0 ? " between the edges" : "")
                               : fmt::format(", or {} from {} ({})", piece.stitches, first, piece.repeats);
      column = piece.first_column;
    }
    if (remedy.empty()) {
      return "the bed has no room for a whole repeat between the edges: it is cut in any case";
    }
    return column ? remedy + fmt::format(", with first_column = {}", *column) : remedy;
  }

  Words yarns_too_alike() const {
    std::string rows;
    for (const RowRange& range : rows_of_pair(document_, finding_.other, finding_.yarn)) {
      rows += rows.empty() ? "" : ", ";
      rows += first_to_last(range.first + 1, range.last + 1, "row", "rows");
    }
    return {fmt::format("{} on {} ({}): contrast ratio {:.2f} to 1, the pattern will hardly show", name(finding_.yarn),
                        name(finding_.other), rows, finding_.number),
            "choose a lighter or a darker yarn: 2 to 1 at least"};
  }

  Words too_many_rows() const {
    return {fmt::format("the design comes to more than {} million rows to knit; only the first are worked out",
                        finding_.limit / 1'000'000),
            "lower times in [piece], or plain_below in the bands"};
  }

  Words loop_change_undone() const {
    const bool wished_left = document_.rules.change_side == ChangeSide::left;
    const std::string_view wished = wished_left ? "left" : "right";
    const std::string_view threaded = wished_left ? "right" : "left";
    const std::string_view start = document_.piece.carriage == Side::left ? "right" : "left"; // the other one
    return {
        fmt::format("every circuit of the loop begins on the same side, so {} is threaded on the {} for row {}, not "
                    "on the {}: {} at its end {} nothing",
                    name(finding_.yarn), threaded, row(), wished, counted(finding_.times, "plain row", "plain rows"),
                    finding_.times == 1 ? "changes" : "change"),
        fmt::format("begin with the carriage on the {0} (carriage = \"{0}\"), or set change_side = \"any\"", start)};
  }

  Words card_held() const {
    return {fmt::format("the carriage has one feeder: {} to knit {} two passes each, over the same card row",
                        counted(finding_.stitches, "row", "rows"), finding_.stitches == 1 ? "takes" : "take"),
            "hold the card on its row for the second pass, and let it go on with the next row; the rows to knit name "
            "the yarn of each pass"};
  }

  const Finding& finding_;
  const Document& document_;
  const Profile& profile_;
  LengthUnit lengths_;
  int rows_;
};

} // namespace

Words words_of(const Finding& finding, const Document& document, const Profile& profile, LengthUnit lengths) {
  return Speaker(finding, document, profile, lengths).words();
}

Words words_of(const FindingGroup& group, std::span<const Finding> findings, const Document& document,
               const Profile& profile, LengthUnit lengths) {
  return Speaker(findings[group.first], document, profile, lengths, static_cast<int>(group.count)).words();
}

} // namespace punchwright
