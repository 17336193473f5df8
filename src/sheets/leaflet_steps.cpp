// The leaflet's steps, by card with what is punched, and by hand.
#include "design/words.hpp"
#include "plan/step_words.hpp"
#include "sheets/card_pages.hpp"
#include "sheets/chart_words.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/punch_list.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/step_forms.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace punchwright {

using namespace leaflet;

namespace {

constexpr double room_for_steps = 100.0; // mm: with less, the other way of knitting has a page of its own

void add_misfits(LeafletPages& pages, const LeafletMachine& machine) {
  std::vector<FlowBlock> blocks{
      leaflet_text(tr("The drawing can't be knitted on this machine as it is:"), pages.width())};
  for (const Finding& finding : machine.misfits) {
    const Words words = words_of(finding, machine.document, machine.profile);
    blocks.push_back(leaflet_item(with_capital(fmt::format("{}; {}.", words.text, words.remedy)), pages.width()));
  }
  blocks.push_back(leaflet_text(
      machine.own ? tr("Once that is mended, the leaflet made anew has the steps here.")
      : reads_card(machine.profile)
          ? tr("Bring the needles forward by hand instead, as the other part says; many card machines allow it.")
          : tr("Knit it by card instead, as the other part says."),
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

std::string way_round_text(const CardReader& reader) {
  const bool column_1_left = (reader.face == CardFace::as_knitter_sees) != reader.turned;
  if (reader.turned) {
    return column_1_left
               ? tr("The face towards you, the end that goes in first up: column 1 is the leftmost one, row 1 "
                    "the uppermost.")
               : tr("The face towards you, the end that goes in first up: column 1 is the rightmost one, row "
                    "1 the uppermost.");
  }
  return column_1_left
             ? tr("The face towards you, the end that goes in first down: column 1 is the leftmost one, row 1 the "
                  "lowest.")
             : tr("The face towards you, the end that goes in first down: column 1 is the rightmost one, row 1 the "
                  "lowest.");
}

// How many rows, on how many blanks, and which way round.
std::string card_text(const CardJob& job, const CardReader& reader) {
  std::vector<std::string> sentences{
      said_count(job.plan.rows_in_all, "{} row of {} columns, with two overlap rows of all holes at each end.",
                 "{} rows of {} columns, with two overlap rows of all holes at each end.", reader.repeat)};
  if (job.plan.circuits > 1) {
    sentences.push_back(said("These are the {} rows listed, {} times over, since a shorter loop can't run round.",
                             job.plan.circuit, job.plan.circuits));
  }
  if (job.plan.cards.size() > 1) {
    std::string cards;
    for (const Card& card : job.plan.cards) {
      cards += cards.empty() ? "" : ", ";
      cards += said("{} on card {}", rows_from_to(card.first_row, card.first_row + card.rows - 1), card.number);
    }
    sentences.push_back(said("They take {} blanks, joined in order: {}.", job.plan.cards.size(), cards));
  }
  if (job.plan.loop) {
    sentences.emplace_back(tr("The ends are joined into a loop."));
  }
  sentences.push_back(way_round_text(reader));
  sentences.emplace_back(reader.hole == HoleMeans::contrast ? tr("A hole is a contrast stitch.")
                                                            : tr("A hole is a main stitch."));
  sentences.emplace_back(tr("Here stand the columns with a hole, for each row."));
  return fmt::format("{}", fmt::join(sentences, " "));
}

// The columns with a hole, a line for each row.
std::vector<FlowBlock> card_rows(const std::vector<std::vector<int>>& punched, int listed, double width) {
  const double indent = width_of(std::to_string(listed), small_type, true) + 2.4;
  std::vector<FlowBlock> rows;
  for (int row = 1; row <= listed; ++row) {
    const auto& columns = punched[static_cast<std::size_t>(row - 1)];
    const std::string text = columns.empty() ? tr("no hole") : with_dashes(runs_text(columns));
    rows.push_back(
        paragraph(text, width, {small_type, false, indent},
                  {text_shape({indent - 1.6, base_line}, std::to_string(row), small_type, Anchor::end, true)}));
    rows.back().whole = true;
    rows.back().again = leaflet_subheading(said("{}, continued", tr("The card")), width).lines;
  }
  return rows;
}

// In three columns where no row takes a second line in them, else in two.
void set_card_rows(LeafletPages& pages, const std::vector<std::vector<int>>& punched, int listed) {
  constexpr int most_columns = 3;
  const auto narrow = card_rows(punched, listed, pages.column_width(most_columns));
  if (std::ranges::all_of(narrow, [](const FlowBlock& row) { return row.lines.size() == 1; })) {
    pages.set(narrow, most_columns);
  } else {
    pages.set(card_rows(punched, listed, pages.column_width(2)), 2);
  }
}

void add_card(LeafletPages& pages, const LeafletMachine& machine) {
  const CardJob job = card_job(machine.document, machine.profile, machine.rows);
  std::vector<std::vector<int>> punched;
  for (int row = 1; row <= job.plan.circuit; ++row) {
    punched.push_back(punched_columns(machine.document, machine.profile, machine.rows, row));
  }
  const int listed = static_cast<int>(
      period_of(punched.size(), [&](std::size_t one, std::size_t other) { return punched[one] == punched[other]; }));
  pages.gap(line_step);
  pages.set_together([&](LeafletPages& on) {
    on.set({leaflet_subheading(tr("The card"), on.width()),
            leaflet_text(card_text(job, *machine.profile.card), on.width())},
           1);
    on.gap(half_line);
    set_card_rows(on, punched, listed);
    if (listed < job.plan.circuit) {
      on.gap(half_line);
      on.set({leaflet_text(again_words(listed, job.plan.circuit) + ".", on.width())}, 1);
    }
  });
}

// Under a heading for each part of the work.
std::vector<FlowBlock> step_blocks(const std::vector<Step>& steps, double width) {
  const double indent = width_of(fmt::format("{}.", steps.size()), body_type, true) + 2.2;
  std::vector<FlowBlock> blocks;
  std::optional<StepPart> part;
  int number = 0;
  for (const Step& step : steps) {
    const std::string heading(heading_of(step.part));
    const bool first = part != step.part;
    if (first) {
      part = step.part;
      blocks.push_back(leaflet_subheading(heading, width));
    }
    blocks.push_back(leaflet_step(++number, one_line(step.text), width, indent));
    if (!first) {
      blocks.back().again = leaflet_subheading(said("{}, continued", heading), width).lines;
    }
  }
  return blocks;
}

void set_steps(LeafletPages& pages, const LeafletMachine& machine) {
  const std::string name = name_of_machine(machine.profile);
  pages.set({leaflet_text(machine.own ? said("The machine that the design was made for: {}.", name)
                                      : said("A machine of the other kind, as an example: {}.", name),
                          pages.width())},
            1);
  if (!machine.misfits.empty()) {
    add_misfits(pages, machine);
    return;
  }
  const StepList list = steps_of(machine.document, machine.profile, machine.rows);
  pages.set({leaflet_text(step_head_words(list, machine.document) + ".", pages.width())}, 1);
  pages.gap(line_step);
  pages.set(step_blocks(leaflet_steps(list, machine.profile), pages.column_width(2)), 2);
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
  return reads_card(profile) ? tr("By card") : tr("By hand");
}

std::string name_of_machine(const Profile& profile) {
  return one_line(profile.title.empty() ? profile.name : title_of_machine(profile));
}

std::string again_words(int period, int rows) {
  const int first = period + 1;
  const std::string which = rows_from_to(1, period);
  return first == rows        ? said("Row {} is as row 1", rows)
         : rows <= 2 * period ? said("Rows {} to {} are as {}", first, rows, which)
                              : said("Rows {} to {} are as {}, again and again", first, rows, which);
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
    const std::string knit = knit_words(gathered.first_row, gathered.last_row, gathered.carriage);
    gathered.text =
        gathered.first_row == gathered.last_row
            ? said("{} Bring the needles of the list forward before it. The counter shows {}.", knit, gathered.counter)
            : said("{} Bring the needles of the list forward before each row. The counter shows {}.", knit,
                   gathered.counter);
    if (goes_on) {
      steps.back() = gathered;
    } else {
      steps.push_back(gathered);
    }
  }
  return steps;
}

void add_steps(LeafletPages& pages, const LeafletMachine& machine) {
  const bool card = reads_card(machine.profile) && machine.misfits.empty();
  const auto set_all = [&](LeafletPages& on) { set_steps(on, machine); };
  if (card) { // steps that are laid beside the machine: they begin at the head of a page
    pages.begin_part(name_of_kind(machine.profile));
    set_all(pages);
    add_card(pages, machine);
  } else {
    pages.add_part(name_of_kind(machine.profile), room_for_steps, set_all);
  }
}

} // namespace punchwright
