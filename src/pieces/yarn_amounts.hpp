// How much of each yarn a size takes: from weighed swatches, from the length of a loop, or, where neither is known,
// from the gauge.
#pragma once

#include "pieces/open_yoke.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright {

// What of a yarn is knitted. One yarn has one key, one name and one colour: tiers that call a key by other names or
// colours are knitted in other yarns.
struct YarnUse {
  Yarn yarn;
  double plain_loops = 0;    // in rows of one colour
  double plain_cm2 = 0;      // area of those rows
  double loops = 0;          // in two-colour rows
  double floats_mm = 0;      // what its floats span behind the other yarn
  double two_colour_cm2 = 0; // area of the two-colour rows in which it is, all of their width
};

// One piece in one tier, as it lies on the bed: all pattern rows, the plain rows above, and the rows set up for the
// next tier (in its main, with the stitches after the decreases). `uses` gains what it takes.
struct TierKnitted {
  const Document* document = nullptr; // of the piece: document_of_piece()
  const RowsToKnit* rows = nullptr;
  int after = 0;      // stitches after the decreases
  int plain_rows = 0; // above, of which
  PlainRows needed;   // these are what the procedure needs; more are knitted before the decreases
  Yarn next_main;     // of the next tier's first band
  YokeGauge plain_gauge;
};
void add_uses(std::vector<YarnUse>& uses, const TierKnitted& tier, const Profile& profile);

enum class AmountFrom { swatch, loop, gauge, several };
// "swatch", "loop", "gauge", "several": stable, for scripts.
[[nodiscard]] std::string_view word_for(AmountFrom from);

struct YarnAmount {
  Yarn yarn;
  std::optional<double> grams; // nothing without a weight or metres_per_100g
  std::optional<double> metres;
  AmountFrom from = AmountFrom::gauge;
};
// Of every yarn that is used, in the tiers' order. What the yoke says of a key holds for all yarns that have it.
[[nodiscard]] std::vector<YarnAmount> amounts_of(const OpenedYoke& opened, const std::vector<YarnUse>& uses);
// What tells it from others with its key: its name, or else its colour; empty: no other has it.
[[nodiscard]] std::string told_apart(const Yarn& yarn, const std::vector<YarnAmount>& among);

// Munden's relation: stitches per square centimetre times the square of the loop in cm is a constant of plain knitting,
// whatever yarn and tension: 19.0 dry relaxed (from memory) to 23.1, the product of the published 5.5 and 4.2, fully
// relaxed (GATE examination, Textile Engineering and Fibre Science, 2015, question 54; D. L. Munden, Journal of the
// Textile Institute 50 (1959) T448). Outside of it by more than 15 % a loop or a gauge is measured wrong.
struct LoopCheck {
  char key = 'A';
  double loop_mm = 0;
  double constant = 0;
  bool plausible = true;
  double shortest_mm = 0; // the loops that would be plausible with the gauge
  double longest_mm = 0;
};
constexpr double munden_dry_relaxed = 19.0;
constexpr double munden_fully_relaxed = 5.5 * 4.2;
constexpr double munden_margin = 0.15;

// Loop in mm with that constant; stitches and rows over 10 cm.
[[nodiscard]] double loop_of(double constant, const Gauge& gauge);
[[nodiscard]] std::vector<LoopCheck> check_loops(const OpenedYoke& opened);
[[nodiscard]] std::string text_of(const LoopCheck& check);

} // namespace punchwright
