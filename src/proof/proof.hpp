// The proof that a design knits as drawn: its card read back from the holes on the sheets, its steps carried out on the
// machine, and the fabric held against the drawing. The editor and the command line show the same report.
#pragma once

#include "design/result.hpp"
#include "knitting/comparison.hpp"
#include "plan/knit_steps.hpp"

#include <memory>
#include <string>

namespace punchwright {

struct Proof {
  Comparison comparison;
  StepList steps;
  int refused_step = -1; // index
  std::optional<Refusal> refusal;
  std::shared_ptr<const PunchedCard> card; // null: none
  int limit = 5;                           // stitches: the longest float that the checks know of
  Fabric fabric;                           // as knitted, the setting-up included

  [[nodiscard]] bool proved() const { return refused_step < 0 && comparison.differences.empty(); }
};

// The card as its reader would feel it, from the circles on the sheets that are printed and cut.
[[nodiscard]] Result<PunchedCard> card_on_sheets(const Document& document, const Profile& profile);

// With a card read elsewhere, or (null) the one on the sheets. `steps`: null for those of the plan.
[[nodiscard]] Result<Proof> prove(const Document& document, const Profile& profile,
                                  std::shared_ptr<const PunchedCard> card = nullptr, const StepList* steps = nullptr);

// What was compared with what, and every difference (the first twenty).
[[nodiscard]] std::string report(const Proof& proof, const Document& document, const Profile& profile);

} // namespace punchwright
