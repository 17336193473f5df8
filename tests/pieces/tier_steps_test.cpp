// The machine's steps of a yoke's tiers: nothing is told twice, and the tension is that at which rows were measured.
#include "pieces/tier_steps.hpp"
#include "pieces/yokes.hpp"

#include <algorithm>

using namespace punchwright;
using namespace punchwright::test;

namespace {

long count_of(const StepList& list, StepKind kind) {
  return std::ranges::count(list.steps, kind, &Step::kind);
}

std::vector<StepList> steps_of_tiers(const OpenedYoke& yoke) {
  const SizePlan size = planned(yoke).sizes.front();
  std::vector<StepList> lists;
  for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
    lists.push_back(steps_of_tier(yoke, size, 0, tier));
  }
  return lists;
}

// Indices of the steps that say so.
std::vector<std::size_t> tensions(const StepList& list, std::string_view words) {
  std::vector<std::size_t> found;
  for (std::size_t step = 0; step < list.steps.size(); ++step) {
    if (list.steps[step].kind == StepKind::tension && list.steps[step].text.find(words) != std::string::npos) {
      found.push_back(step);
    }
  }
  return found;
}

} // namespace

TEST_CASE("what is so already is not done again above the first tier") {
  const Files files = pullover_files();
  for (const char* profile : {"bulky-card-24", "plastic-by-hand"}) {
    for (const int plain : {4, 5}) {
      CAPTURE(profile);
      CAPTURE(plain);
      Yoke yoke = pullover();
      yoke.profile = profile;
      yoke.tiers[0].plain_above = {{plain}};
      const OpenedYoke of_machine = opened(yoke, files);
      const std::vector<StepList> lists = steps_of_tiers(of_machine);
      const SizePlan size = planned(of_machine).sizes.front();
      CHECK(count_of(lists[0], StepKind::weights) == 1);
      CHECK(count_of(lists[0], StepKind::main_in) >= 1);
      CHECK_FALSE(is_remark(lists[0].steps[0], 0));
      for (std::size_t tier = 1; tier < lists.size(); ++tier) {
        CHECK(count_of(lists[tier], StepKind::weights) == 0); // hung on with the work
        const auto threads = std::ranges::count_if(lists[tier].steps, [](const Step& step) {
          return step.part == StepPart::setting_up && step.kind == StepKind::main_in;
        });
        CHECK(threads == (between_tiers(of_machine, size, 0, tier - 1).yarn_out ? 1 : 0));
        CHECK(is_remark(lists[tier].steps[0], tier)); // where the work hangs and the carriage stands
      }
    }
  }
}

TEST_CASE("plain rows with a gauge of their own are knitted at the tension of plain knitting, all of them") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.gauge.plain_rows = 20.0;
  const std::vector<StepList> lists = steps_of_tiers(opened(yoke, files));
  for (std::size_t tier = 0; tier < lists.size(); ++tier) {
    CAPTURE(tier);
    const std::vector<Step>& steps = lists[tier].steps;
    const auto looser = tensions(lists[tier], "at least one whole number looser");
    const auto plain = tensions(lists[tier], "as for plain knitting in this yarn");
    REQUIRE(looser.size() == 1);
    REQUIRE(plain.size() == 1);
    CHECK(steps[plain[0] + 1].kind == StepKind::end_row); // the first of the rows above the tier
    if (tier > 0) { // behind the rows that set up, before the first one of the pattern
      CHECK(steps[looser[0]].part == StepPart::setting_up);
      CHECK(steps[looser[0] + 1].part == StepPart::knitting);
    }
  }
}

TEST_CASE("without a gauge of their own plain rows keep the tension, and the steps say so once") {
  const Files files = pullover_files();
  const std::vector<StepList> lists = steps_of_tiers(opened(pullover(), files));
  CHECK(tensions(lists[0], "It stays so for the plain rows between the tiers.").size() == 1);
  for (std::size_t tier = 1; tier < lists.size(); ++tier) {
    CHECK(tensions(lists[tier], "").empty());
  }
}

TEST_CASE("main that goes on in the next tier comes out for waste yarn alone, and goes in again") {
  const Files files = pullover_files();
  Yoke yoke = pullover();
  yoke.tiers[0].plain_above = {{5}};
  const OpenedYoke even = opened(yoke, files);
  const SizePlan size = planned(even).sizes[0];
  REQUIRE_FALSE(between_tiers(even, size, 0, 0).yarn_out);
  std::string words;
  for (const MovingStep& step : moving_words(even, size, 0, 0)) {
    words += step.words + "\n";
  }
  CHECK(words.find("either on waste yarn: take A out of its feeder and cut it, thread waste yarn into that feeder, "
                   "and knit an even number of rows with it, about 8, to end on the right, where the next tier begins. "
                   "Take the waste yarn out and cut it. Weights off, or the work falls; then push the loops off their "
                   "needles, without the carriage. Thread A into the feeder again.\n") != std::string::npos);
  CHECK(words.find("then take the loops onto it.\n") != std::string::npos);
}
