// The leaflet's parts, each onto the pages that come.
#pragma once

#include "plan/other_machine.hpp"
#include "plan/steps.hpp"
#include "rules/findings.hpp"
#include "sheets/leaflet_page.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright {

// The design on a machine, with what is worked out once.
struct LeafletMachine {
  const Document& document;
  const Profile& profile;
  RowsToKnit rows;
  std::vector<Finding> misfits{}; // what keeps the drawing from being knitted there as it is
  bool own = true;                // the design's own machine
};

// Title, cloth, yarns, sizes, machines, and where the parts begin.
void add_cover(LeafletPages& pages, const LeafletMachine& own, const LeafletMachine& other,
               const std::vector<LeafletPart>& parts);
void add_chart(LeafletPages& pages, const Document& document);
// The steps on that machine, or why it can't be knitted there; for a card machine what is punched.
void add_steps(LeafletPages& pages, const LeafletMachine& machine);
// One list for both, where their needles differ by the end needles at most.
void add_needles(LeafletPages& pages, const LeafletMachine& by_card, const LeafletMachine& by_hand);
// One machine's list, without a heading.
void add_needle_list(LeafletPages& pages, const LeafletMachine& machine);
// Floats caught by hand, where there are any: how, and after which rows onto which needles.
void add_catches(LeafletPages& pages, const LeafletMachine& by_card, const LeafletMachine& by_hand);
void add_cautions(LeafletPages& pages, const LeafletMachine& own, const LeafletMachine& by_card);

// The steps as the leaflet has them: by hand, rows between which nothing but needles is brought forward are gathered,
// since the needle list names these.
[[nodiscard]] std::vector<Step> leaflet_steps(const StepList& list, const Profile& profile);

// What one needle list for both kinds of machine must say: it lists the needles by hand; by card the end needles come
// forward as well.
struct OneList {
  std::vector<Needle> end_needles; // none: no difference
  bool travels_differ = false;
};
// None: the lists differ otherwise.
[[nodiscard]] std::optional<OneList> one_list_for(const LeafletMachine& by_card, const LeafletMachine& by_hand);

// The smallest number of rows after which all rows come again, once at least, from the first one on; all of them where
// they don't.
template <class Same> std::size_t period_of(std::size_t rows, Same&& same) {
  for (std::size_t period = 1; 2 * period <= rows; ++period) {
    bool again = true;
    for (std::size_t row = period; again && row < rows; ++row) {
      again = same(row, row - period);
    }
    if (again) {
      return period;
    }
  }
  return rows;
}
// "Rows 31 to 180 are as rows 1 to 30, again and again".
[[nodiscard]] std::string again_words(int period, int rows);

// "By card", "By hand".
[[nodiscard]] std::string name_of_kind(const Profile& profile);
[[nodiscard]] std::string name_of_machine(const Profile& profile);
[[nodiscard]] FlowBlock leaflet_subheading(const std::string& text, double width);
[[nodiscard]] FlowBlock leaflet_text(const std::string& text, double width);
[[nodiscard]] FlowBlock leaflet_item(const std::string& text, double width);
// A part's name and its page.
[[nodiscard]] FlowBlock leaflet_contents(const LeafletPart& part, double width);
// "12." before the sentence, its figures below each other.
[[nodiscard]] FlowBlock leaflet_step(int number, const std::string& text, double width, double indent);

} // namespace punchwright
