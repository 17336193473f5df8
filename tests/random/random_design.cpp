// Each part by dice of its own kind, always within what docs/file-forms.md allows.
#include "random/random_design.hpp"

#include "machine/placement.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <vector>

namespace punchwright::test {
namespace {

template <class Value, std::size_t count> const Value& one_of(Dice& dice, const std::array<Value, count>& values) {
  return values[static_cast<std::size_t>(dice.throw_one(count))];
}

// Any text, with all that a file form has to quote.
std::string any_text(Dice& dice, int most) {
  static const std::array<std::string, 20> pieces{
      "Buoy", "ä",   "\"", "\\",   "\n",   "\t", "'",  "\"\"\"",         "#",
      " ",    "]",   "\r", "\x7f", "\x01", "€",  "🧶", "row 1 = \"..\"", "\\u0041",
      "\n\n", "\\\n"};
  std::string text;
  for (int count = dice.throw_one(most + 1); count > 0; --count) {
    text += one_of(dice, pieces);
  }
  return text;
}

double between(Dice& dice, double low, double high) {
  constexpr int steps = 1'000'000'007;
  const double value = low + (high - low) * dice.throw_one(steps) / (steps - 1);
  return dice.heads() ? value : std::clamp(static_cast<double>(static_cast<int>(value * 2)) / 2, low, high);
}

Profile any_profile(Dice& dice) {
  const auto& built_in = built_in_profiles();
  const int choice = dice.throw_one(static_cast<int>(built_in.size()) + 3);
  if (choice < static_cast<int>(built_in.size())) {
    return built_in[static_cast<std::size_t>(choice)];
  }
  Profile own = *built_in_profile(choice % 3 == 0 ? "plastic-by-hand" : "standard-card-24");
  own.name = "harbour.machine";
  own.feeders = 1;
  own.end_needles = dice.heads();
  if (own.card) {
    own.selects = dice.heads() ? Selects::same_pass : Selects::next_pass;
    own.card->hole = dice.heads() ? HoleMeans::main : HoleMeans::contrast;
    own.card->face = dice.heads() ? CardFace::as_knit_side : CardFace::as_knitter_sees;
    own.card->turned = dice.heads();
  }
  return own;
}

void draw_row(Dice& dice, Grid& grid, int row) {
  const int kind = dice.throw_one(8);
  if (kind == 0) {
    return;
  }
  for (int column = 0; column < grid.width();) {
    const int run = kind < 4 ? 1 + dice.throw_one(9) : 1;
    const bool contrast = kind == 1 || dice.heads();
    for (int end = std::min(grid.width(), column + run); column < end; ++column) {
      grid.set(column, row, contrast);
    }
  }
}

void draw_bands(Dice& dice, Document& document) {
  constexpr std::array rows_of_bands{1, 1, 1, 2, 2, 3, 5};
  const auto any_key = [&] {
    return document.yarns[static_cast<std::size_t>(dice.throw_one(static_cast<int>(document.yarns.size())))].key;
  };
  document.bands.clear();
  for (int row = 0; row < document.grid.height();) {
    Band band{
        std::min(document.grid.height() - row, one_of(dice, rows_of_bands)), dice.heads() ? 'A' : any_key(), {}, {}};
    if (const char contrast = any_key(); contrast != band.main && dice.throw_one(5) > 0) {
      band.contrast = contrast;
    }
    if (dice.throw_one(7) == 0) {
      band.plain_below = dice.throw_one(4);
    }
    for (const int end = row + band.rows; row < end; ++row) {
      if (band.contrast) {
        draw_row(dice, document.grid, row);
      }
    }
    document.bands.push_back(band);
  }
}

void choose_piece(Dice& dice, Document& document, const Profile& profile) {
  constexpr std::array times{1, 1, 1, 2, 3, 4, 7, 12};
  Piece& piece = document.piece;
  if (dice.heads()) {
    piece.stitches = 1 + dice.throw_one(dice.heads() ? 12 : profile.needles);
  }
  if (dice.heads()) {
    piece.first_needle = Needle{dice.throw_one(profile.needles) - profile.needles / 2};
  }
  if (!profile.card && dice.heads()) {
    piece.first_column = 1 + dice.throw_one(document.grid.width());
  }
  piece.times = one_of(dice, times);
  piece.carriage = dice.heads() ? Side::left : Side::right;
  piece.end_needles = static_cast<EndNeedles>(dice.throw_one(3));
  piece.edge = dice.throw_one(51);
}

void choose_rules(Dice& dice, Document& document) {
  switch (dice.throw_one(3)) {
  case 0: document.rules.longest_float = 1 + dice.throw_one(200); break;
  case 1: document.rules.longest_float_mm = between(dice, 1, 1000); break;
  default: break;
  }
  document.rules.plain_rows = dice.heads() ? dice.throw_one(3) : dice.throw_one(10);
  document.rules.change_side = static_cast<ChangeSide>(dice.throw_one(3));
  document.card.paper = static_cast<Paper>(dice.throw_one(3));
  document.card.loop = dice.throw_one(3) == 0;
  document.card.scale_x = dice.heads() ? 1 : between(dice, 0.5, 2);
  document.card.scale_y = dice.heads() ? 1 : between(dice, 0.5, 2);
}

void mark_stitches(Dice& dice, Document& document) {
  for (Grid* layer : {&document.marks.caught, &document.marks.accepted, &document.marks.kept}) {
    for (int count = dice.heads() ? dice.throw_one(9) : 0; count > 0; --count) {
      set_mark(*layer, document.grid, dice.throw_one(document.grid.width()), dice.throw_one(document.grid.height()),
               true);
    }
  }
}

std::uint64_t number_from(const char* variable, std::uint64_t otherwise) {
  const char* text = std::getenv(variable);
  return text != nullptr ? std::strtoull(text, nullptr, 10) : otherwise;
}

} // namespace

RandomDesign random_design(std::uint64_t seed) {
  constexpr std::array divisors{1, 2, 3, 4, 6, 8, 12, 24, 24};
  constexpr std::array others{5, 7, 11, 25, 31, 48, 63, 64, 65, 128, 129, 200};
  constexpr std::array yarn_keys{'A', 'B', 'C', 'D', 'E', 'z', '0', '9'};
  Dice dice(seed);
  RandomDesign design;
  design.profile = any_profile(dice);
  const int width = dice.throw_one(4) > 0 ? one_of(dice, divisors) : one_of(dice, others);
  const int height = 1 + dice.throw_one(dice.throw_one(20) == 0 ? 60 : 10);
  Document& document = design.document;
  document = blank_document(width, height);
  document.title = any_text(dice, 6);
  document.notes = any_text(dice, 12);
  document.profile = design.profile.name;
  document.gauge = {between(dice, 1, 200), between(dice, 1, 200)};
  document.yarns.clear();
  for (int yarn = 0, count = 2 + dice.throw_one(7); yarn < count; ++yarn) {
    const auto part = [&] { return static_cast<std::uint8_t>(dice.throw_one(256)); };
    document.yarns.push_back({yarn_keys[static_cast<std::size_t>(yarn)], any_text(dice, 3), {part(), part(), part()}});
  }
  draw_bands(dice, document);
  choose_piece(dice, document, design.profile);
  choose_rules(dice, document);
  mark_stitches(dice, document);
  return design;
}

std::string sprinkled(const std::string& text, Dice& dice) {
  constexpr std::array own_lines{"# of the harbour room", "  # indented",  "",
                                 "\n# apart\n",           "later_key = 3", "x.y = [1, # one\n  2]"};
  constexpr std::array line_ends{" # beside it", "   # farther", "\t#", "  "};
  std::string result;
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    if (dice.throw_one(25) == 0) {
      result += one_of(dice, own_lines);
      result += '\n';
    }
    result += text.substr(begin, end - begin);
    if (dice.throw_one(25) == 0) {
      result += one_of(dice, line_ends);
    }
    result += '\n';
    begin = end + 1;
  }
  return result;
}

Seeds seeds() {
  const Seeds usual;
  return {number_from("PUNCHWRIGHT_FIRST_SEED", usual.first), number_from("PUNCHWRIGHT_DOCUMENTS", usual.count)};
}

} // namespace punchwright::test
