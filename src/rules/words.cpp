// Findings in plain words: what is wrong, and what can be done about it.
#include "design/words.hpp"

#include "machine/placement.hpp"
#include "rows/cards.hpp"
#include "rules/findings.hpp"
#include "rules/whole_repeats.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

std::string listed(const std::vector<int>& numbers) {
  std::string text;
  for (std::size_t index = 0; index < numbers.size(); ++index) {
    const std::string number = std::to_string(numbers[index]);
    text = index == 0 ? number : index + 1 == numbers.size() ? said("{} or {}", text, number) : text + ", " + number;
  }
  return text;
}

std::string stitches_text(int count) {
  return said_count(count, "{} stitch", "{} stitches");
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
    return {finding_.text, tr("nothing is lost; correct it if it is a typing mistake")};
  }

private:
  // The yarn's name on one line, or its key where it has none.
  std::string name(char key) const {
    if (key == 0) {
      return tr("the contrast");
    }
    std::string text = yarn_of(document_, key).name;
    std::ranges::replace_if(
        text, [](unsigned char letter) { return letter < ' ' || letter == 127; }, ' ');
    return text.empty() ? std::string(1, key) : text;
  }
  int row() const { return finding_.row + 1; }
  // "row 7 is …", "rows 7 and 8 are …", "rows 7 to 9 are …".
  std::string rows_are_of_one_yarn() const {
    const int last = row() + rows_ - 1;
    switch (rows_) {
    case 1: return said("row {} is knitted in {} alone", row(), name(finding_.yarn));
    case 2: return said("rows {} and {} are knitted in {} alone", row(), last, name(finding_.yarn));
    default: return said("rows {} to {} are knitted in {} alone", row(), last, name(finding_.yarn));
    }
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
    return {said("the repeat is {} wide, which does not divide the card's {}: a card holds {}",
                 stitches_text(finding_.stitches), finding_.limit, listed(widths)),
            said("make it {} stitches wide, or choose a bed whose needles are selected by hand, which has no such "
                 "limit",
                 listed(nearest))};
  }

  // "column 5", "columns 22 to 3 round the edge of the repeat".
  std::string columns() const {
    const int first = finding_.first_column + 1;
    const int last = finding_.last_column + 1;
    if (first == last) {
      return said("column {}", first);
    }
    return first > last ? said("columns {} to {} round the edge of the repeat", first, last)
                        : said("columns {} to {}", first, last);
  }

  std::string float_limit() const {
    if (document_.rules.longest_float_mm && !document_.rules.longest_float) {
      const double longest = *document_.rules.longest_float_mm;
      const std::string length =
          lengths_ == LengthUnit::inches ? small_length_text(longest, lengths_) : said("{} mm", plain_number(longest));
      return said("{}, {}, at most are allowed", length, stitches_text(finding_.limit));
    }
    return said("{} at most are allowed", finding_.limit);
  }

  // "7 stitches of Ink (43.8 mm)".
  std::string passed_stitches() const {
    return said_count(finding_.stitches, "{} stitch of {} ({})", "{} stitches of {} ({})", name(finding_.other),
                      small_length_text(finding_.stitches * document_.gauge.stitch_mm(), lengths_));
  }

  Words float_too_long() const {
    const std::string passed = passed_stitches();
    if (finding_.on_piece) {
      return float_on_piece(passed);
    }
    // Each stitch parts the float in two: n of them leave n + 1 parts, none longer than the limit.
    const int needed = finding_.stitches / (finding_.limit + 1);
    return {said("row {}: {} floats behind {}, {}; {}", row(), name(finding_.yarn), passed, columns(), float_limit()),
            said_count(needed, "knit {} stitch of {} in the middle of it, or catch the float by hand",
                       "knit {} stitches of {} in it, evenly spread, or catch the float by hand", name(finding_.yarn))};
  }

  // The repeat's own finding stands before it: what this one adds is where on the bed, and how often.
  Words float_on_piece(const std::string& passed) const {
    const bool one_needle = finding_.first_needle == finding_.last_needle;
    const std::string needles =
        one_needle ? said("needle {}", name_of(*finding_.first_needle))
                   : said("needles {} to {}", name_of(*finding_.first_needle), name_of(*finding_.last_needle));
    if (finding_.times == 1) {
      return {said("row {} on the piece: {} floats behind {} once: at {}, which knit {}; {}", row(),
                   name(finding_.yarn), passed, needles, columns(), float_limit()),
              said("mended in the drawing it is mended here; or catch it by hand at {}", needles)};
    }
    return {
        said("row {} on the piece: {} floats behind {} in {} places, first at {}, which knit {}; {}", row(),
             name(finding_.yarn), passed, finding_.times, needles, columns(), float_limit()),
        said("mended once in the drawing it is mended in all {} places; or catch it by hand in each", finding_.times)};
  }

  Words float_accepted() const {
    return {finding_.on_piece ? said("row {} on the piece: {} floats behind {}, {}; {}, and this one is accepted",
                                     row(), name(finding_.yarn), passed_stitches(), columns(), float_limit())
                              : said("row {}: {} floats behind {}, {}; {}, and this one is accepted", row(),
                                     name(finding_.yarn), passed_stitches(), columns(), float_limit()),
            tr("nothing is to be done; mend it or catch it by hand if it should pull or snag")};
  }

  Words catch_not_needed() const {
    const int first = finding_.first_column + 1;
    const int last = finding_.last_column + 1;
    const std::string where = first == last ? said("column {}", first) : said("columns {} and {}", first, last);
    const std::string catches = said_count(finding_.stitches, "{} catch", "{} catches");
    return {finding_.stitches > 2
                ? said("row {}: {} by hand, the outermost in {}, where no float that is too long passes", row(),
                       catches, where)
                : said("row {}: {} by hand, in {}, where no float that is too long passes", row(), catches, where),
            document_.grid.mixed(finding_.row)
                ? tr("take the catch away to spare the work; left there it does no harm")
                : tr("the row is of one colour and nothing is lifted: take the catch away")};
  }

  Words row_all_main() const {
    const std::string take_out = rows_ == 1
                                     ? said("before it, take {} out of the feeder if it is in", name(finding_.other))
                                     : said("before them, take {} out of the feeder if it is in", name(finding_.other));
    return {rows_are_of_one_yarn(), needles_of_main_row(take_out)};
  }

  // What else is to be done before a row of main alone, behind `take_out`.
  std::string needles_of_main_row(const std::string& take_out) const {
    switch (profile_.selects) {
    case Selects::next_pass:
      return end_needles_knit_contrast(document_, profile_)
                 ? said("{} and push the selected end needles back: a selected needle whose feeder is empty drops its "
                        "stitch",
                        take_out)
                 : said("{}; no needle stands selected for a row of main alone", take_out);
    case Selects::same_pass: return said("{}; no needle stands selected between passes, so nothing can drop", take_out);
    case Selects::by_hand: break;
    }
    return said("{} and bring no needle forward", take_out);
  }

  Words row_all_contrast() const {
    return {said("{}: every needle is selected, and {} would lie loose across the whole piece", rows_are_of_one_yarn(),
                 name(finding_.other)),
            rows_ == 1
                ? said("take {0} out of the feeder before it and put it back after it; after an odd number of such "
                       "rows {0} hangs at the other edge: cut it and rejoin it",
                       name(finding_.other))
                : said("take {0} out of the feeder before them and put it back after them; after an odd number of such "
                       "rows {0} hangs at the other edge: cut it and rejoin it",
                       name(finding_.other))};
  }

  Words yarn_on_other_side() const {
    const bool by_passes = profile_.feeders == 1; // a two-colour row takes two
    const std::string once =
        by_passes
            ? said_count(finding_.gap,
                         "{1} is wanted again in row {2} after {0} pass without it, and hangs at the other edge then",
                         "{1} is wanted again in row {2} after {0} passes without it, and hangs at the other edge then",
                         name(finding_.yarn), row())
            : said_count(finding_.gap,
                         "{1} is wanted again in row {2} after {0} row without it, and hangs at the other edge then",
                         "{1} is wanted again in row {2} after {0} rows without it, and hangs at the other edge then",
                         name(finding_.yarn), row());
    return {finding_.times > 1 ? said("{} ({} times)", once, finding_.times) : once,
            by_passes
                ? tr("cut it and rejoin it at the side of the carriage, or make the passes between even in number")
                : tr("cut it and rejoin it at the side of the carriage, or make the rows between even in number")};
  }

  Words yarn_loose_on_piece() const {
    const std::string where = finding_.first_needle == finding_.last_needle
                                  ? name_of(*finding_.first_needle)
                                  : said("{} to {}", name_of(*finding_.first_needle), name_of(*finding_.last_needle));
    return {said("row {} is drawn in two colours, but on the piece, {}, it is {} alone: {} would lie loose across the "
                 "whole piece",
                 row(), where, name(finding_.other), name(finding_.yarn)),
            said("take {} out of the feeder before that row and put it back after it, or move the piece along the bed "
                 "until the row shows both",
                 name(finding_.yarn))};
  }

  Words card_too_short() const {
    return {said_count(finding_.stitches, "one circuit is {} row, and a joined loop needs {}",
                       "one circuit is {} rows, and a joined loop needs {}", finding_.limit),
            said("the card repeats it {} times: {} rows", finding_.times, finding_.times * finding_.stitches)};
  }

  Words card_too_long() const {
    return {said("the card has {} rows, a blank has {}", finding_.stitches, finding_.limit),
            finding_.times == 2
                ? said("punch {} cards and join them after row {}", finding_.times, finding_.limit)
                : said("punch {} cards and join them after every {} rows", finding_.times, finding_.limit)};
  }

  Words piece_wider_than_bed() const {
    return {said("the piece has {} stitches, the bed {} needles", finding_.stitches, finding_.limit),
            said("knit it in {} pieces, or choose a bed with more needles",
                 (finding_.stitches + finding_.limit - 1) / finding_.limit)};
  }

  Words piece_off_bed() const {
    return {said("the piece would stand on {} to {}, the bed ends at {} and {}", name_of(*finding_.first_needle),
                 name_of(*finding_.last_needle), name_of(profile_.leftmost()), name_of(profile_.rightmost())),
            tr("move its first needle, or leave first_needle out to centre it")};
  }

  Words repeat_on_needles() const {
    const std::string where =
        said("{}, on {} to {}: as the knitter sees it, from drawn column {} on the left to {} on the right",
             stitches_text(finding_.stitches), name_of(*finding_.first_needle), name_of(*finding_.last_needle),
             finding_.first_column + 1, finding_.last_column + 1);
    if (profile_.card) {
      return {where, said("a card's column can't be moved along the bed: column 1 is {}; move the work instead",
                          name_of(profile_.card->first_needle))};
    }
    return {where,
            tr("needles selected by hand may begin anywhere: first_column puts another column on the first needle")};
  }

  Words repeat_cut_at_edges() const {
    const int width = document_.grid.width();
    if (finding_.first_column - finding_.last_column + 1 == finding_.stitches) { // a part of one repeat
      return {
          document_.piece.edge > 0
              ? said("the piece shows {} of the repeat's {} stitches between its selvedges", finding_.stitches, width)
              : said("the piece shows {} of the repeat's {} stitches", finding_.stitches, width),
          whole_repeats()};
    }
    const int left = finding_.first_column + 1;     // stitches of a repeat on the left, if it is cut
    const int right = width - finding_.last_column; // and on the right
    const bool selvedge = document_.piece.edge > 0;
    if (left != width && right != width) {
      const char* const both = selvedge ? tr("the repeat is cut at both edges of the piece, beside the selvedge")
                                        : tr("the repeat is cut at both edges of the piece");
      return {said_count(left, "{1}: of its {2} stitches there is {0} on the left and {3} on the right",
                         "{1}: of its {2} stitches there are {0} on the left and {3} on the right", both, width, right),
              whole_repeats()};
    }
    const char* const on_the_left = selvedge
                                        ? tr("the repeat is cut at the left edge of the piece, beside the selvedge")
                                        : tr("the repeat is cut at the left edge of the piece");
    const char* const on_the_right = selvedge
                                         ? tr("the repeat is cut at the right edge of the piece, beside the selvedge")
                                         : tr("the repeat is cut at the right edge of the piece");
    return {said_count(left != width ? left : right, "{1}: of its {2} stitches there is {0}",
                       "{1}: of its {2} stitches there are {0}", left != width ? on_the_left : on_the_right, width),
            whole_repeats()};
  }

  // What to set, so that nothing is cut.
  std::string whole_repeats() const {
    std::string remedy;
    std::optional<int> column;
    for (const WholeRepeats& piece : nearest_whole_repeats(document_, profile_)) {
      const std::string first = name_of(piece.first_needle);
      if (!remedy.empty()) {
        remedy = said("{}, or {} from {} ({})", remedy, piece.stitches, first, piece.repeats);
      } else {
        const std::string repeats = said_count(piece.repeats, "{} whole repeat", "{} whole repeats");
        remedy = document_.piece.edge > 0
                     ? said("take {} stitches in work from first needle {} ({} between the edges)", piece.stitches,
                            first, repeats)
                     : said("take {} stitches in work from first needle {} ({})", piece.stitches, first, repeats);
      }
      column = piece.first_column;
    }
    if (remedy.empty()) {
      return tr("the bed has no room for a whole repeat between the edges: it is cut in any case");
    }
    return column ? said("{}, with first_column = {}", remedy, *column) : remedy;
  }

  Words yarns_too_alike() const {
    std::string rows;
    for (const RowRange& range : rows_of_pair(document_, finding_.other, finding_.yarn)) {
      rows += rows.empty() ? "" : ", ";
      rows += rows_from_to(range.first + 1, range.last + 1);
    }
    return {said("{} on {} ({}): contrast ratio {} to 1, the pattern will hardly show", name(finding_.yarn),
                 name(finding_.other), rows, decimal(finding_.number, 2)),
            tr("choose a lighter or a darker yarn: 2 to 1 at least")};
  }

  Words too_many_rows() const {
    return {said("the design comes to more than {} million rows to knit; only the first are worked out",
                 finding_.limit / 1'000'000),
            tr("lower times in [piece], or plain_below in the bands")};
  }

  Words loop_change_undone() const {
    return {document_.rules.change_side == ChangeSide::left
                ? said_count(finding_.times,
                             "every circuit of the loop begins on the same side, so {1} is threaded on the right for "
                             "row {2}, not on the left: {0} plain row at its end changes nothing",
                             "every circuit of the loop begins on the same side, so {1} is threaded on the right for "
                             "row {2}, not on the left: {0} plain rows at its end change nothing",
                             name(finding_.yarn), row())
                : said_count(finding_.times,
                             "every circuit of the loop begins on the same side, so {1} is threaded on the left for "
                             "row {2}, not on the right: {0} plain row at its end changes nothing",
                             "every circuit of the loop begins on the same side, so {1} is threaded on the left for "
                             "row {2}, not on the right: {0} plain rows at its end change nothing",
                             name(finding_.yarn), row()),
            document_.piece.carriage == Side::left // so the other one
                ? tr("begin with the carriage on the right (carriage = \"right\"), or set change_side = \"any\"")
                : tr("begin with the carriage on the left (carriage = \"left\"), or set change_side = \"any\"")};
  }

  Words card_held() const {
    return {said_count(finding_.stitches,
                       "the carriage has one feeder: {} row to knit takes two passes each, over the same card row",
                       "the carriage has one feeder: {} rows to knit take two passes each, over the same card row"),
            tr("hold the card on its row for the second pass, and let it go on with the next row; the rows to knit "
               "name the yarn of each pass")};
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
