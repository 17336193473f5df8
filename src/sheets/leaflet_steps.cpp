// The leaflet's steps, by card with what is punched, and by hand.
#include "design/words.hpp"
#include "plan/step_words.hpp"
#include "sheets/card_pages.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/punch_list.hpp"
#include "sheets/shapes.hpp"
#include "sheets/step_forms.hpp"
#include "sheets/text_metrics.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {

using namespace leaflet;

namespace {

constexpr double room_for_steps = 100.0; // mm: with less, the other way of knitting has a page of its own
constexpr double room_for_card = 60.0;

void add_misfits(LeafletPages& pages, const LeafletMachine& machine) {
  std::vector<FlowBlock> blocks{leaflet_text("The drawing can't be knitted on this machine as it is:", pages.width())};
  for (const Finding& finding : machine.misfits) {
    const Words words = words_of(finding, machine.document, machine.profile);
    blocks.push_back(leaflet_item(with_capital(fmt::format("{}; {}.", words.text, words.remedy)), pages.width()));
  }
  blocks.push_back(leaflet_text(
      machine.own ? "Once that is mended, the leaflet made anew has the steps here."
      : reads_card(machine.profile)
          ? "Bring the needles forward by hand instead, as the other part says; many card machines allow it."
          : "Knit it by card instead, as the other part says.",
      pages.width()));
  pages.set(blocks, 1);
}

// "1-3, 7" as it is set in print: "1–3, 7".
std::string with_dashes(const std::string& runs) {
  std::string text;
  for (const char letter : runs) {
    letter == '-' ? text += "–" : text += letter;
  }
  return text;
}

// How many rows, on how many blanks, and which way round.
std::string card_text(const CardJob& job, const CardReader& reader) {
  const bool column_1_left = (reader.face == CardFace::as_knitter_sees) != reader.turned;
  std::string text = fmt::format("{} {} of {} columns, with two overlap rows of all holes at each end. ",
                                 job.plan.rows_in_all, job.plan.rows_in_all == 1 ? "row" : "rows", reader.repeat);
  if (job.plan.circuits > 1) {
    text += fmt::format("These are the {} rows listed, {} times over, since a shorter loop can't run round. ",
                        job.plan.circuit, job.plan.circuits);
  }
  if (job.plan.cards.size() > 1) {
    text += fmt::format("They take {} blanks, joined in order: ", job.plan.cards.size());
    for (const Card& card : job.plan.cards) {
      text += fmt::format("{}{} on card {}", card.number == 1 ? "" : ", ",
                          first_to_last(card.first_row, card.first_row + card.rows - 1, "row", "rows"), card.number);
    }
    text += ". ";
  }
  if (job.plan.loop) {
    text += "The ends are joined into a loop. ";
  }
  return text + fmt::format("The face towards you, the end that goes in first {}: column 1 is the {} one, row 1 the "
                            "{}. A hole is a {} stitch. Here stand the columns with a hole, for each row.",
                            reader.turned ? "up" : "down", column_1_left ? "leftmost" : "rightmost",
                            reader.turned ? "uppermost" : "lowest",
                            reader.hole == HoleMeans::contrast ? "contrast" : "main");
}

void add_card(LeafletPages& pages, const LeafletMachine& machine) {
  const CardJob job = card_job(machine.document, machine.profile, machine.rows);
  pages.gap(line_step);
  if (pages.room() < room_for_card) {
    pages.new_page();
  }
  pages.set({leaflet_subheading("The card", pages.width()),
             leaflet_text(card_text(job, *machine.profile.card), pages.width())},
            1);
  pages.gap(half_line);
  const double width = pages.column_width(2);
  std::vector<std::vector<int>> punched;
  for (int row = 1; row <= job.plan.circuit; ++row) {
    punched.push_back(punched_columns(machine.document, machine.profile, machine.rows, row));
  }
  const int listed = static_cast<int>(
      period_of(punched.size(), [&](std::size_t one, std::size_t other) { return punched[one] == punched[other]; }));
  const double indent = width_of(std::to_string(listed), small_type, true) + 2.4;
  std::vector<FlowBlock> rows;
  for (int row = 1; row <= listed; ++row) {
    const auto& columns = punched[static_cast<std::size_t>(row - 1)];
    const std::string text = columns.empty() ? "no hole" : with_dashes(runs_text(columns));
    rows.push_back(
        paragraph(text, width, {small_type, false, indent},
                  {text_shape({indent - 1.6, base_line}, std::to_string(row), small_type, Anchor::end, true)}));
    rows.back().whole = true;
  }
  pages.set(rows, 2);
  if (listed < job.plan.circuit) {
    pages.gap(half_line);
    pages.set({leaflet_text(again_words(listed, job.plan.circuit) + ".", pages.width())}, 1);
  }
}

} // namespace

FlowBlock leaflet_step(int number, const std::string& text, double width, double indent) {
  FlowBlock block =
      paragraph(text, width, {body_type, false, indent, half_line},
                {text_shape({indent - 1.6, base_line}, fmt::format("{}.", number), body_type, Anchor::end, true)});
  block.whole = true;
  return block;
}

std::string name_of_kind(const Profile& profile) {
  return reads_card(profile) ? "By card" : "By hand";
}

std::string name_of_machine(const Profile& profile) {
  return one_line(profile.title.empty() ? profile.name : profile.title);
}

std::string again_words(int period, int rows) {
  const int first = period + 1;
  const std::string which = period == 1 ? "row 1" : fmt::format("rows 1 to {}", period);
  return first == rows        ? fmt::format("Row {} is as row 1", rows)
         : rows <= 2 * period ? fmt::format("Rows {} to {} are as {}", first, rows, which)
                              : fmt::format("Rows {} to {} are as {}, again and again", first, rows, which);
}

std::vector<Step> leaflet_steps(const StepList& list, const Profile& profile) {
  if (reads_card(profile) || profile.feeders == 1) {
    return list.steps; // by hand with one feeder, the carriage is set anew for every pass
  }
  std::vector<Step> steps;
  for (const Step& step : list.steps) {
    if (step.kind != StepKind::knit_by_hand) {
      steps.push_back(step);
      continue;
    }
    const bool goes_on = !steps.empty() && steps.back().kind == StepKind::knit_by_hand;
    Step gathered = step;
    gathered.first_row = goes_on ? steps.back().first_row : step.first_row;
    gathered.text = fmt::format("{} Bring the needles of the list forward before {}. The counter shows {}.",
                                knit_words(gathered.first_row, gathered.last_row, gathered.carriage),
                                gathered.first_row == gathered.last_row ? "it" : "each row", gathered.counter);
    if (goes_on) {
      steps.back() = gathered;
    } else {
      steps.push_back(gathered);
    }
  }
  return steps;
}

void add_steps(LeafletPages& pages, const LeafletMachine& machine) {
  pages.begin_part_below(name_of_kind(machine.profile),
                         reads_card(machine.profile) ? pages.page_room() : room_for_steps);
  pages.set({leaflet_text(fmt::format("{}: {}.",
                                      machine.own ? "The machine that the design was made for"
                                                  : "A machine of the other kind, as an example",
                                      name_of_machine(machine.profile)),
                          pages.width())},
            1);
  if (!machine.misfits.empty()) {
    add_misfits(pages, machine);
    return;
  }
  const StepList list = steps_of(machine.document, machine.profile, machine.rows);
  pages.set({leaflet_text(step_head_words(list, machine.document) + ".", pages.width())}, 1);
  pages.gap(line_step);
  const double width = pages.column_width(2);
  const std::vector<Step> steps = leaflet_steps(list, machine.profile);
  const double indent = width_of(fmt::format("{}.", steps.size()), body_type, true) + 2.2;
  std::vector<FlowBlock> blocks;
  std::optional<StepPart> part;
  int number = 0;
  for (const Step& step : steps) {
    if (part != step.part) {
      part = step.part;
      blocks.push_back(leaflet_subheading(std::string(heading_of(step.part)), width));
    }
    blocks.push_back(leaflet_step(++number, one_line(step.text), width, indent));
  }
  pages.set(blocks, 2);
  if (reads_card(machine.profile)) {
    add_card(pages, machine);
  }
}

} // namespace punchwright
