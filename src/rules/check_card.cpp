// The card: how long it is, whether its loop brings the carriage to the yarn, and how it goes with one feeder.
// What is wrong here shows only at the machine, with the card already punched.
#include "rows/cards.hpp"
#include "rules/checks.hpp"

#include <algorithm>
#include <utility>

namespace punchwright {
namespace {

int rows_in_vain(const RowsToKnit& rows) {
  int count = 0;
  while (count < rows.circuit) {
    const Why why = rows.rows[static_cast<std::size_t>(rows.circuit - 1 - count)].why;
    if (why != Why::change_side && why != Why::even_circuit) {
      break;
    }
    ++count;
  }
  return count;
}

// Every circuit begins where the first one did, since circuits are made even. Where the first contrast of a circuit is
// threaded on the wrong side from there, no rows at the circuit's end can mend it: they bring the carriage over and
// back.
void check_loop_change(const Document& document, const RowsToKnit& rows, std::vector<Finding>& findings) {
  const ChangeSide wished = document.rules.change_side;
  if (!document.card.loop || wished == ChangeSide::any) {
    return;
  }
  const auto begin = rows.rows.begin();
  const auto end = begin + rows.circuit;
  const auto has_contrast = [](const RowToKnit& row) { return row.contrast != 0; };
  const auto first = std::find_if(begin, end, has_contrast);
  if (first == end) {
    return;
  }
  const auto last = std::find_if(std::make_reverse_iterator(end), std::make_reverse_iterator(begin), has_contrast);
  const Side threaded = other(end_of(first->travel));
  const int in_vain = rows_in_vain(rows);
  if (first->contrast == last->contrast || in_vain == 0 ||
      threaded == (wished == ChangeSide::left ? Side::left : Side::right)) {
    return;
  }
  Finding finding;
  finding.id = FindingId::loop_change_undone;
  finding.severity = Severity::warning;
  finding.row = first->drawn;
  finding.yarn = first->contrast;
  finding.times = in_vain;
  findings.push_back(std::move(finding));
}

// With one feeder a two-colour row takes two passes over one card row; a card that moves on with every pass would give
// the second yarn the needles of the next row.
void check_second_passes(const RowsToKnit& rows, std::vector<Finding>& findings) {
  const auto twice = std::ranges::count(rows.rows, 2, &RowToKnit::passes);
  if (twice == 0) {
    return;
  }
  Finding finding;
  finding.id = FindingId::card_held;
  finding.severity = Severity::note;
  finding.stitches = static_cast<int>(twice);
  findings.push_back(std::move(finding));
}

} // namespace

void check_card(const Document& document, const Profile& profile, const RowsToKnit& rows,
                std::vector<Finding>& findings) {
  if (!profile.card) {
    return;
  }
  check_loop_change(document, rows, findings);
  check_second_passes(rows, findings);
  const CardPlan plan = card_plan(document, *profile.card, rows);
  if (plan.loop && plan.circuit < profile.card->loop_rows) {
    Finding finding;
    finding.id = FindingId::card_too_short_for_loop;
    finding.severity = Severity::note;
    finding.stitches = plan.circuit;
    finding.limit = profile.card->loop_rows;
    finding.times = plan.circuits;
    findings.push_back(std::move(finding));
  }
  if (plan.rows_in_all > profile.card->blank_rows) {
    Finding finding;
    finding.id = FindingId::card_longer_than_blank;
    finding.severity = Severity::note;
    finding.stitches = plan.rows_in_all;
    finding.limit = profile.card->blank_rows;
    finding.times = static_cast<int>(plan.cards.size());
    findings.push_back(std::move(finding));
  }
}

} // namespace punchwright
