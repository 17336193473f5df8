// The leaflet's cautions, and what a check of the design says.
#include "design/words.hpp"
#include "sheets/leaflet_parts.hpp"
#include "words/words.hpp"

#include <fmt/format.h>

namespace punchwright {

namespace {

constexpr std::size_t most_told = 8;
constexpr double room_for_cautions = 60.0; // mm, of those that take more than a page

std::vector<FlowBlock> what_the_check_says(const LeafletMachine& own, double width) {
  std::vector<FlowBlock> found;
  std::size_t left_out = 0;
  for (const Finding& finding : check(own.document, own.profile, own.rows)) {
    if (finding.severity == Severity::note) {
      continue;
    }
    if (found.size() >= most_told) {
      ++left_out;
      continue;
    }
    const Words words = words_of(finding, own.document, own.profile);
    found.push_back(leaflet_item(with_capital(fmt::format("{}; {}.", words.text, words.remedy)), width));
  }
  if (left_out > 0) {
    found.push_back(leaflet_item(said("And {} more.", left_out), width));
  }
  if (!found.empty()) {
    found.insert(found.begin(), leaflet_subheading(tr("What a check of the design says"), width));
  }
  return found;
}

std::vector<FlowBlock> cautions(const LeafletMachine& own, const LeafletMachine& by_card, double width) {
  std::vector<FlowBlock> blocks;
  for (const char* const text : {tr("The maker's manual goes before this leaflet."),
                                 tr("Latch needles and transfer tools: mind eyes and fingers."),
                                 tr("Punches and knives: on a mat, away from the body."),
                                 tr("Weights come off before the work does, or it falls."),
                                 tr("Keep children and the moving carriage apart.")}) {
    blocks.push_back(leaflet_item(text, width));
  }
  if (reads_card(by_card.profile) && !unsure_values(by_card.profile).empty()) {
    blocks.push_back(
        leaflet_item(tr("Whether a card's face shows the purl or the knit side, and how far above the reader the "
                        "visible line lies, differs between machines: knit a small swatch with a lopsided "
                        "motif before you punch the whole card."),
                     width));
  }
  const auto found = what_the_check_says(own, width);
  blocks.insert(blocks.end(), found.begin(), found.end());
  return blocks;
}

} // namespace

void add_cautions(LeafletPages& pages, const LeafletMachine& own, const LeafletMachine& by_card) {
  const std::string name = tr("Cautions");
  const auto in_one = [&](LeafletPages& on) { on.set(cautions(own, by_card, on.width()), 1); };
  const auto close_in_two = [&](LeafletPages& on) {
    auto blocks = cautions(own, by_card, on.column_width(2));
    for (FlowBlock& block : blocks) {
      block.before = block.with_next ? block.before : 0;
    }
    on.set(blocks, 2);
  };
  // Rather closely set than alone on a page.
  if (!pages.has_room_below(name, in_one) && pages.has_room_below(name, close_in_two)) {
    pages.add_part(name, 0, close_in_two);
  } else {
    pages.add_part(name, room_for_cautions, in_one);
  }
}

} // namespace punchwright
