// Where in the line of actions each of these slips stands, and what is done there instead.
#include "diagnosis/marked_slips.hpp"

#include <algorithm>
#include <cstdlib>

namespace punchwright {
namespace {

// Like those of departures.cpp: from memory, only their order matters.
constexpr double weight_needle_wrong = 9;    // by hand
constexpr double weight_selection_wrong = 3; // by a card; a wrong hole is likelier
constexpr double weight_carriage_plain = 3;
constexpr double weight_card_skipped = 2;
constexpr double weight_yarns_exchanged = 3;
constexpr double weight_work_off = 5;
constexpr double weight_counted_off = 5;

const Step& step_of(const Setting& setting, const ActionLine& line, std::size_t at) {
  return setting.steps.steps[static_cast<std::size_t>(line.steps[at])];
}

bool knits(const MachineAction& action) {
  const auto* pass = std::get_if<KnitPass>(&action);
  return pass != nullptr && !pass->free;
}

Variation variation_at(const ActionLine& line, DepartureKind kind, std::size_t from, std::size_t to, int row) {
  Variation variation;
  variation.departure.kind = kind;
  variation.departure.step = line.steps[from];
  variation.departure.row = row + 1;
  variation.from = from;
  variation.to = to;
  return variation;
}

NeedleSpan moved(NeedleSpan span, int by) {
  span.first.position += by;
  span.last.position += by;
  return span;
}

// What lies within the piece.
std::vector<NeedleSpan> within(const std::vector<NeedleSpan>& spans, Needle first, Needle last) {
  std::vector<NeedleSpan> inner;
  for (const NeedleSpan& span : spans) {
    const NeedleSpan cut{std::max(span.first, first), std::min(span.last, last)};
    if (cut.first <= cut.last) {
      inner.push_back(cut);
    }
  }
  return inner;
}

} // namespace

std::optional<std::size_t> pass_of(const Setting& setting, const ActionLine& line, int row) {
  for (std::size_t from = 0; from < line.actions.size();) {
    const Step& step = step_of(setting, line, from);
    std::vector<std::size_t> passes;
    std::size_t to = from;
    for (; to < line.actions.size() && line.steps[to] == line.steps[from]; ++to) {
      if (knits(line.actions[to])) {
        passes.push_back(to);
      }
    }
    if (!passes.empty() && step.first_row <= row + 1 && row + 1 <= step.last_row) {
      const auto rows = static_cast<std::size_t>(step.last_row - step.first_row + 1); // all with as many passes
      return passes[static_cast<std::size_t>(row + 1 - step.first_row) * (passes.size() / rows)];
    }
    from = to;
  }
  return std::nullopt;
}

std::optional<Variation> needles_wrong(const Setting& setting, const ActionLine& line, int row,
                                       std::vector<Needle> needles) {
  const auto at = pass_of(setting, line, row);
  if (!at || setting.profile.selects == Selects::same_pass) {
    return std::nullopt;
  }
  Variation variation = variation_at(line, DepartureKind::needle_wrong, *at, *at, row);
  const auto planned =
      needles_in_row(setting.document, setting.profile, setting.rows.rows[static_cast<std::size_t>(row)]);
  std::size_t forgotten = 0;
  for (const Needle needle : needles) {
    const bool forward = std::ranges::binary_search(planned, needle);
    forgotten += forward ? 1 : 0;
    variation.instead.emplace_back(
        MoveNeedles{{{needle, needle}}, forward ? NeedlePosition::working : NeedlePosition::upper});
  }
  Departure& departure = variation.departure;
  const bool none = forgotten == needles.size() && forgotten == planned.size();
  const bool all =
      forgotten == 0 && needles.size() + planned.size() == static_cast<std::size_t>(stitches_of(setting.document));
  departure.stood = none ? Stood::none_forward : all ? Stood::all_forward : Stood::some_wrong;
  const bool by_hand = setting.profile.selects == Selects::by_hand;
  departure.weight = (by_hand ? weight_needle_wrong : weight_selection_wrong) /
                     (none || all ? 6 : static_cast<double>(needles.size()));
  departure.needles = std::move(needles);
  return variation;
}

std::optional<Variation> carriage_plain(const Setting& setting, const ActionLine& line, int row) {
  const auto at = pass_of(setting, line, row);
  if (!at || setting.profile.feeders < 2) {
    return std::nullopt;
  }
  Variation variation = variation_at(line, DepartureKind::carriage_plain, *at, *at + 1, row);
  variation.instead = {SetKnitting{KnitSetting::plain}, line.actions[*at], SetKnitting{KnitSetting::two_colour}};
  variation.departure.weight = weight_carriage_plain;
  return variation;
}

std::optional<Variation> card_skipped(const Setting& setting, const ActionLine& line, int row) {
  if (row == 0 || setting.profile.selects == Selects::by_hand) {
    return std::nullopt;
  }
  const auto before = pass_of(setting, line, row - 1); // which reads the row
  if (!before) {
    return std::nullopt;
  }
  Variation variation = variation_at(line, DepartureKind::card_skipped, *before, *before, row);
  const int card_row = setting.rows.rows[static_cast<std::size_t>(row)].card_row;
  variation.instead = {TurnCard{card_row}};
  variation.departure.weight = weight_card_skipped;
  return variation;
}

std::optional<Variation> yarns_exchanged(const Setting& setting, const ActionLine& line, int row) {
  const auto pass = pass_of(setting, line, row);
  for (std::size_t at = pass.value_or(0); at > 0; --at) {
    const std::size_t here = at - 1;
    const auto* thread = std::get_if<ThreadYarn>(&line.actions[here]);
    if (thread == nullptr || thread->feeder != 2) {
      continue;
    }
    Variation variation = variation_at(line, DepartureKind::yarns_exchanged, here, here + 1, row);
    variation.instead = {TakeOut{1}, ThreadYarn{1, thread->yarn},
                         ThreadYarn{2, setting.rows.rows[static_cast<std::size_t>(row)].main}};
    variation.departure.weight = weight_yarns_exchanged;
    return variation;
  }
  return std::nullopt;
}

OtherLine work_off(const Setting& setting, const ActionLine& line, int by) {
  OtherLine other;
  other.departure.kind = DepartureKind::work_off;
  other.departure.amount = by;
  other.departure.weight = weight_work_off / std::abs(by);
  other.along = by;
  other.actions = line.actions;
  const Needle first{first_needle_of(setting.document).position + by};
  const Needle last{last_needle_of(setting.document).position + by};
  for (std::size_t at = 0; at < other.actions.size(); ++at) {
    if (auto* hung = std::get_if<HangOn>(&other.actions[at])) {
      other.departure.step = line.steps[at];
      hung->needles = moved(hung->needles, by);
    } else if (auto* move = std::get_if<MoveNeedles>(&other.actions[at])) {
      // The end needles are those of the work wherever it hangs; any others are counted on the bed.
      if (step_of(setting, line, at).kind == StepKind::needles_back) {
        std::ranges::transform(move->needles, move->needles.begin(),
                               [by](const NeedleSpan& span) { return moved(span, by); });
      }
      move->needles = within(move->needles, first, last);
    }
  }
  return other;
}

OtherLine counted_off(const Setting& setting, const ActionLine& line, int row, int by) {
  OtherLine other;
  other.departure.kind = DepartureKind::counted_off;
  other.departure.row = row + 1;
  other.departure.amount = by;
  other.departure.weight = weight_counted_off / std::abs(by);
  other.actions = line.actions;
  for (std::size_t at = 0; at < other.actions.size(); ++at) {
    const Step& step = step_of(setting, line, at);
    auto* move = std::get_if<MoveNeedles>(&other.actions[at]);
    if (move == nullptr || step.kind != StepKind::knit_by_hand || step.first_row < row + 1) {
      continue;
    }
    if (step.first_row == row + 1) {
      other.departure.step = line.steps[at];
    }
    std::vector<NeedleSpan> spans;
    std::ranges::transform(move->needles, std::back_inserter(spans),
                           [by](const NeedleSpan& span) { return moved(span, by); });
    move->needles = within(spans, first_needle_of(setting.document), last_needle_of(setting.document));
  }
  return other;
}

} // namespace punchwright
