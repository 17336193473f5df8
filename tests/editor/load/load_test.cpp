// A large design under a hand that edits for a long time: nothing is lost on the way, and no memory is kept. How long
// the frames took is printed, never asserted: another machine takes another time.
#include "design/repeat_file.hpp"
#include "editor/memory_in_use.hpp"
#include "load/hand.hpp"

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <malloc.h>
#include <map>

using namespace punchwright;
using namespace punchwright::editor;
using namespace punchwright::test;

namespace {

constexpr int gestures_a_round = 150;
constexpr std::size_t rounds_to_warm_up = 3; // whatever is kept for later has been made then
// MiB. What is kept for as large a picture, window's text or clipboard as there was until then; and what the allocator
// can't give back since something lies above it.
constexpr double kept_that_may_differ = 4;
constexpr double resident_that_may_differ = 8;

long number_from(const char* variable, long otherwise) {
  const char* const text = std::getenv(variable);
  return text != nullptr ? std::strtol(text, nullptr, 10) : otherwise;
}

// 200 stitches by 2,000 rows of runs up to four, in bands of 20 rows.
Document large_design() {
  Document design = blank_document(200, 2000);
  design.yarns = five_yarns();
  Dice dice(7);
  for (int row = 0; row < 2000; ++row) {
    bool contrast = false;
    for (int column = 0; column < 200;) {
      for (int run = 1 + dice.throw_one(4); run > 0 && column < 200; --run) {
        design.grid.set(column++, row, contrast);
      }
      contrast = !contrast;
    }
  }
  design.bands.clear();
  for (int band = 0; band < 100; ++band) {
    design.bands.push_back({20, 'A', "BCDE" [band % 4], {}});
  }
  design.piece.stitches = 100;
  return design;
}

// The longest frames, by what was done in them.
struct Longest {
  std::map<std::string, FrameTime> by_gesture;
  std::uint64_t gestures = 0;

  void add(const std::string& what, const FrameTime& time) {
    ++gestures;
    FrameTime& kept = by_gesture[what];
    kept.wall = std::max(kept.wall, time.wall);
    kept.processor = std::max(kept.processor, time.processor);
  }

  void print() const {
    std::vector<std::pair<double, std::string>> sorted;
    for (const auto& [what, time] : by_gesture) {
      sorted.emplace_back(time.processor, fmt::format("{}: {:.1f} ms of processor, {:.1f} on the wall", what,
                                                      time.processor, time.wall));
    }
    std::ranges::sort(sorted, std::greater<>());
    for (std::size_t place = 0; place < std::min<std::size_t>(sorted.size(), 12); ++place) {
      fmt::print("  {}\n", sorted[place].second);
    }
  }
};

// What malloc has given out, MiB.
double kept_megabytes() {
  const struct mallinfo2 info = ::mallinfo2();
  return static_cast<double>(info.uordblks + info.hblkhd) / (1 << 20);
}

// The most of each half of what was measured behind the rounds, without those to warm up.
struct Halves {
  double first = 0;
  double second = 0;
};

Halves halves_of(const std::vector<double>& measured) {
  const auto warm = measured.begin() + rounds_to_warm_up;
  const auto middle = warm + (measured.end() - warm) / 2;
  return {*std::max_element(warm, middle), *std::max_element(middle, measured.end())};
}

bool saved_and_read_is_the_same(const Document& design) {
  const auto read = read_repeat(write_repeat(design), "load.repeat");
  return read && read->document == design;
}

} // namespace

TEST_CASE("a large design under a random hand: undone, it is the same to the byte, and memory stays flat") {
  const long seconds = number_from("PUNCHWRIGHT_SECONDS", 20);
  const auto seed = static_cast<std::uint64_t>(number_from("PUNCHWRIGHT_SEED", 5));
  give_large_blocks_back(); // as the editor does
  App app = make_app();
  app.work.design = large_design();
  app.work.history.mark_saved();
  const std::string before = write_repeat(app.work.design);
  Frames frames(app);
  Hand hand(app, frames, seed);
  Longest longest;
  std::vector<double> kept;
  std::vector<double> resident;
  std::uint64_t steps = 0;
  const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(seconds);
  while (std::chrono::steady_clock::now() < end || kept.size() < 2 * rounds_to_warm_up + 2) {
    CAPTURE(kept.size());
    for (int gesture = 0; gesture < gestures_a_round; ++gesture) {
      const std::string what = hand.do_something();
      longest.add(what, frames.build_all());
      if (is_open(app.session.dialog)) {
        longest.add("leaving " + what, hand.let_go());
      }
    }
    longest.add("leaving", hand.let_go());
    REQUIRE(saved_and_read_is_the_same(app.work.design));
    steps += app.work.history.done();
    while (app.work.history.can_undo()) {
      const std::size_t done = app.work.history.done();
      hand.press("Ctrl+Z");
      longest.add("undo", frames.build_all());
      REQUIRE(app.work.history.done() < done);
    }
    REQUIRE(app.work.history.saved());
    REQUIRE(write_repeat(app.work.design) == before);
    // What was undone is kept to be done again, until something else is done.
    frames.more.emplace_back(EditDesign{Invert{Area{Cell{0, 0}, 1, 1}}});
    frames.build_all();
    hand.press("Ctrl+Z");
    frames.build_all();
    app.view = View{}; // how large the pictures are depends on it
    app.session.clipboard.clear();
    frames.build_all();
    give_free_memory_back(); // as the editor does where nothing happens for two seconds
    kept.push_back(kept_megabytes());
    resident.push_back(anonymous_megabytes().value_or(0));
  }
  CHECK(steps > 10 * kept.size()); // else little would have been done
  const Halves halves = halves_of(kept);
  const Halves resident_halves = halves_of(resident);
  fmt::print(
      "{} rounds, {} gestures, {} steps\nmemory after a round, the most of each half: {:.1f} and {:.1f} MiB given "
      "out, {:.1f} and {:.1f} resident\nframes, by the processor's time to build them:\n{}the longest by what was "
      "done:\n",
      kept.size(), longest.gestures, steps, halves.first, halves.second, resident_halves.first, resident_halves.second,
      frames.counts.words());
  longest.print();
  CHECK(halves.second < halves.first + kept_that_may_differ);
  CHECK(resident_halves.second < resident_halves.first + resident_that_may_differ);
}
