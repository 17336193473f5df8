// The orientation swatch: a motif without any symmetry, and what its knitted picture says about the card.
//
//     #####  .  .  .        mirrored, upside down or with its colours changed, the letter F with its bar can't be
//     ##   .   .   .        taken for itself
//     #### | .  .  .
//     ##   |  .   .
#include "sheets/exports.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace punchwright {
namespace {

constexpr int border_rows = 3; // plain, above and below the motif
constexpr int motif_rows = 14;
constexpr int narrowest_with_bar = 12;
constexpr int narrowest_letter = 8; // columns; a narrower repeat shows a bend instead

// The letter's lines from the top; two stitches thick so that it is seen at once.
constexpr std::array<std::string_view, motif_rows> letter = {
    "##...", "#####", "#####", "##...", "##...", "####.", "####.",
    "##...", "##...", "##...", "##...", "##...", "##...", "##...",
};

// Single contrast stitches behind the letter, so that no yarn passes more than five stitches.
void set_catches(Grid& grid, int row) {
  const int width = grid.width();
  int column = std::min(row % 2 == 0 ? 7 : 8, width - 1);
  grid.set(column, row, true);
  while (column < width - 5) {
    column += 5;
    grid.set(column, row, true);
  }
}

// Wide enough for the letter.
void draw_letter(Grid& grid) {
  for (int line = 0; line < motif_rows; ++line) {
    const int row = border_rows + motif_rows - 1 - line;
    const std::string_view stitches = letter[static_cast<std::size_t>(line)];
    for (std::size_t column = 0; column < stitches.size(); ++column) {
      if (stitches[column] == '#') {
        grid.set(1 + static_cast<int>(column), row, true);
      }
    }
    set_catches(grid, row);
  }
  // The extra mark: a short bar low at the right of the letter, clear of the single stitches.
  for (int row = border_rows; grid.width() >= narrowest_with_bar && row < border_rows + 5; ++row) {
    grid.set(10, row, true);
  }
}

// In a narrow repeat: a column that goes straight up and then slants to the right. Which way it slants tells left from
// right, where it is straight tells top from bottom; that it is one or two stitches wide tells the colours.
void draw_bend(Grid& grid) {
  const int thick = grid.width() >= 6 ? 2 : 1;
  for (int line = 0; line < motif_rows; ++line) {
    const int slant = std::max(0, line - motif_rows / 2);
    for (int stitch = 0; stitch < thick; ++stitch) {
      grid.set((slant + stitch) % grid.width(), border_rows + line, true);
    }
  }
}

} // namespace

Document swatch_document(const Profile& profile) {
  const int width = profile.card ? profile.card->repeat : 24;
  Document document = blank_document(width, motif_rows + 2 * border_rows);
  document.title = tr("Orientation swatch");
  document.profile = profile.name;
  document.yarns = {{'A', tr("light"), {236, 226, 204}}, {'B', tr("dark"), {36, 54, 84}}};
  document.bands = {
      {border_rows, 'A', std::nullopt, {}}, {motif_rows, 'A', 'B', {}}, {border_rows, 'A', std::nullopt, {}}};
  width >= narrowest_letter ? draw_letter(document.grid) : draw_bend(document.grid);
  return document;
}

// Half a turn exchanges left and right together with the ends, so what is upside down without being mirrored needs both
// the turn and the other face.
Profile profile_after_swatch(const Profile& profile, const SwatchAnswer& answer) {
  Profile after = profile;
  if (!after.card) {
    return after;
  }
  CardReader& card = *after.card;
  if (answer.upside_down) {
    card.turned = !card.turned;
  }
  if (answer.mirrored != answer.upside_down) {
    card.face = card.face == CardFace::as_knitter_sees ? CardFace::as_knit_side : CardFace::as_knitter_sees;
  }
  if (answer.inverted) {
    card.hole = card.hole == HoleMeans::contrast ? HoleMeans::main : HoleMeans::contrast;
  }
  for (const char* key : {"card.face", "card.turned", "card.hole"}) {
    after.sources[key] = "from the orientation swatch";
  }
  return after;
}

} // namespace punchwright
