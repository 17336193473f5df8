// The schematic's words, broken into lines.
#include "editor/yoke_schematic_words.hpp"

#include "design/words.hpp"
#include "editor/yoke_cache.hpp"
#include "editor/yoke_findings.hpp"
#include "editor/yoke_labels.hpp"
#include "editor/yoke_no_fit.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <imgui.h>

namespace punchwright::editor {

namespace {

constexpr float least_lines_of_pieces = 6;
constexpr float least_letters_of_piece = 5.25F; // across: "17.3 cm" stands in a line, and handles are apart
constexpr float beside_scale = 36;              // units of layout: from the words beside it to the pieces
constexpr std::size_t most_lines = 3;

std::string width_words(const App& app, const SchematicWords::Piece& piece, bool top) {
  const LengthUnit unit = app.settings.lengths;
  std::string words = cloth_length((top ? piece.top_mm : piece.bottom_mm) / 10, unit);
  if (const SizePlan* const plan = shown_plan(app)) {
    const KnittedWidth width = knitted_width(*app.yoke.opened, *plan, app.view.yoke.size, piece.number, top);
    // Where the wished width isn't what those stitches are, both are said.
    words += width.departs() ? said(" · {} st = {}", width.stitches, cloth_length(width.knitted_mm / 10, unit))
                             : said(" · {} st", width.stitches);
  }
  return words;
}

void measure_pieces(const App& app, SchematicWords& all) {
  const Yoke& yoke = app.yoke.opened->yoke;
  const std::size_t size = app.view.yoke.size;
  for (std::size_t number = 0; number < yoke.pieces.size(); ++number) {
    const YokePiece& piece = yoke.pieces[number];
    if (piece.like.empty()) {
      all.pieces.push_back({number, piece.bottom_cm.at(size) * 10, piece.top_cm.at(size) * 10, {}, {}, {}, 0});
    }
  }
  const std::vector<double>& knitted = app.caches.yoke.row_mm;
  all.depth_mm = yoke.depth_cm.at(size) * 10;
  all.tall_mm = std::max(all.depth_mm, knitted.empty() ? 0 : knitted.back());
}

// In as many lines as the pieces' room asks for.
void break_words(const App& app, SchematicWords& all) {
  const Theme& theme = app.theme;
  const float room =
      (all.right - all.left) / static_cast<float>(all.pieces.size()) - between_schematic_pieces * theme.scale;
  for (SchematicWords::Piece& piece : all.pieces) {
    piece.bottom = label_lines(theme, width_words(app, piece, false), room, most_lines);
    piece.names = label_lines(theme, names_with_widths_of(app.yoke.opened->yoke, piece.number), room, most_lines, true);
    piece.top = label_lines(theme, width_words(app, piece, true), room, most_lines);
    piece.words_wide = std::max({width_of_label(theme, piece.bottom), width_of_label(theme, piece.names, true),
                                 width_of_label(theme, piece.top)});
    all.bottom_lines = std::max(all.bottom_lines, piece.bottom.size());
    all.name_lines = std::max(all.name_lines, piece.names.size());
    all.top_lines = std::max(all.top_lines, piece.top.size());
  }
  const SizePlan* const plan = shown_plan(app);
  const std::string rows = plan == nullptr ? std::string(tr("No stitch counts fit: the lines show what is asked for."))
                                           : with_capital(text_of(plan->rows, app.settings.lengths)) + ".";
  all.rows = label_lines(theme, rows, all.seen, most_lines);
}

} // namespace

double SchematicWords::all_wide_mm() const {
  double wide = 0;
  for (const Piece& piece : pieces) {
    wide += std::max(piece.bottom_mm, piece.top_mm);
  }
  return wide;
}

float SchematicWords::above() const {
  return (1.9F + static_cast<float>(top_lines)) * ImGui::GetTextLineHeightWithSpacing();
}

float SchematicWords::below() const {
  return (1.4F + static_cast<float>(bottom_lines + name_lines)) * ImGui::GetTextLineHeightWithSpacing() +
         static_cast<float>(rows.size() - 1) * ImGui::GetTextLineHeight();
}

float SchematicWords::least_height() const {
  const auto tall = static_cast<float>((right - left) / all_wide_mm() * tall_mm);
  return above() + below() + std::min(tall, least_lines_of_pieces * ImGui::GetTextLineHeightWithSpacing());
}

SchematicWords schematic_words(const App& app, float seen) {
  const float unit = app.theme.scale;
  SchematicWords all;
  all.seen = seen;
  measure_pieces(app, all);
  const float words = ImGui::CalcTextSize(said_count(12, "{} plain row", "{} plain rows").c_str()).x;
  all.beside = words < 0.25F * seen;
  all.left = (all.beside ? words : ImGui::CalcTextSize("+12").x) + beside_scale * unit;
  const float all_pieces = static_cast<float>(all.pieces.size()) * least_letters_of_piece * ImGui::GetFontSize();
  all.right = std::max(seen - 30 * unit, all.pieces.size() > 1 ? all.left + all_pieces : 0);
  all.width = all.right + 30 * unit;
  break_words(app, all);
  return all;
}

} // namespace punchwright::editor
