// Beside the yoke: what is found, with what would mend it, and the shown size in numbers.
#include "design/words.hpp"
#include "editor/yoke_findings.hpp"
#include "editor/yoke_parts.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// The rows that the plan proposes for that size.
Yoke with_proposed_rows(const App& app, std::size_t size) {
  Yoke yoke = app.yoke.opened->yoke;
  const auto& proposal = app.caches.yoke.sizes[size]->rows.proposal;
  for (std::size_t tier = 0; tier < yoke.tiers.size(); ++tier) {
    set_for_size(yoke.tiers[tier].plain_above, yoke.sizes.size(), size, proposal[tier]);
  }
  return yoke;
}

// In as many lines as large text needs.
std::string in_button(const char* words) {
  return in_lines(words, ImGui::GetContentRegionAvail().x - 2 * ImGui::GetStyle().FramePadding.x);
}

void remedies(const App& app, Actions& actions, const YokeFinding& finding, int index) {
  if (!finding.remedy.empty()) {
    hint(app.theme, finding.remedy.ends_with("…") ? finding.remedy : finding.remedy + ".");
  }
  const auto offered = [&](const char* name, const char* words, Yoke yoke, const char* step) {
    if (button(app.theme, actions, fmt::format("{} {}", name, index + 1).c_str(), in_button(words).c_str())) {
      actions.push(ChangeYoke{std::move(yoke), step});
      actions.push(CloseField{});
    }
  };
  if (finding.tolerance > 0) {
    offered("yoke take tolerance", tr("Take this tolerance"), with_offered_tolerance(app.yoke.opened->yoke, finding),
            noted("tolerance"));
  }
  if (!finding.widths.empty()) {
    offered("yoke take widths", tr("Take these widths"), with_offered_widths(app.yoke.opened->yoke, finding),
            noted("widths that fit"));
  }
  if (finding.can_split && button(app.theme, actions, "yoke split", in_button(tr("Split the pieces")).c_str())) {
    actions.push(SplitYoke{});
  }
  if (finding.severity == Severity::fault && finding.tier >= 0) { // of a tier, only its drawing can have faults
    const std::string name = fmt::format("yoke open drawing {}", finding.tier + 1);
    if (button(app.theme, actions, name.c_str(), in_button(tr("Open the drawing")).c_str())) {
      actions.push(OpenTier{static_cast<std::size_t>(finding.tier)});
    }
  }
  if (finding.rows && finding.size) {
    const std::string name = fmt::format("yoke take rows {}", index + 1);
    if (button(app.theme, actions, name.c_str(), in_button(tr("Take these plain rows")).c_str())) {
      actions.push(ChangeYoke{with_proposed_rows(app, *finding.size), noted("plain rows to the depth")});
      actions.push(CloseField{});
    }
  }
}

std::string sizes_of(const Yoke& yoke, const YokeFinding& finding) {
  if (!finding.size || yoke.sizes.size() == 1 || finding.sizes.size() == yoke.sizes.size()) {
    return "";
  }
  if (finding.sizes.size() < 2) {
    return said("Size {}: ", yoke.sizes[*finding.size]);
  }
  std::vector<std::string> names;
  for (const std::size_t size : finding.sizes) {
    names.push_back(yoke.sizes[size]);
  }
  return said("Sizes {}: ", listed(names));
}

void entry(const App& app, Actions& actions, int index) {
  const Theme& theme = app.theme;
  const YokeFinding& finding = app.caches.yoke.findings[static_cast<std::size_t>(index)];
  const Yoke& yoke = app.yoke.opened->yoke;
  const std::string words = sizes_of(yoke, finding) + finding.words;
  const float side = 24 * theme.scale;
  const float wide = ImGui::GetContentRegionAvail().x - side;
  const ImVec2 text = ImGui::CalcTextSize(words.c_str(), nullptr, false, wide);
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  ImGui::PushID(index);
  if (ImGui::Selectable("##finding", app.view.yoke.finding == index, 0, {0, text.y + 4 * theme.scale})) {
    actions.push(SetYokeView{view_at_finding(app, index)});
  }
  remember_place(actions, fmt::format("yoke finding {}", index + 1), Stop::Kind::button);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  severity_sign(list, theme, {corner.x + side / 2, corner.y + ImGui::GetTextLineHeight() / 2 + 2 * theme.scale},
                7 * theme.scale, finding.severity);
  list.AddText(nullptr, 0, {corner.x + side, corner.y + 2 * theme.scale}, ink(theme.text), words.c_str(), nullptr,
               wide);
  ImGui::Indent(side);
  remedies(app, actions, finding, index);
  ImGui::Unindent(side);
  ImGui::PopID();
}

std::string amount_words(const YarnAmount& yarn, LengthUnit unit) {
  std::string words;
  if (yarn.grams) {
    words += fmt::format("{:.0f} g", std::ceil(*yarn.grams));
  }
  if (yarn.metres) {
    words += (words.empty() ? "" : ", ") + yarn_length_text(*yarn.metres, unit);
  }
  return words.empty() ? std::string(tr("not known")) : words;
}

void yarn_lines(const App& app, const SizePlan& plan) {
  heading(app.theme, tr("Yarn"));
  for (const YarnAmount& amount : plan.yarns) {
    const Yarn& yarn = amount.yarn;
    const float square = ImGui::GetTextLineHeight();
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    swatch(*ImGui::GetWindowDrawList(), app.theme, {corner.x, corner.y, corner.x + square, corner.y + square},
           seen_as(yarn.colour, app.view.sight));
    ImGui::Dummy({square, square});
    ImGui::SameLine();
    ImGui::PushTextWrapPos(0);
    const std::string name = yarn.name.empty() ? std::string(1, yarn.key) : yarn.name;
    ImGui::TextUnformatted(fmt::format("{}: {}", name, amount_words(amount, app.settings.lengths)).c_str());
    ImGui::PopTextWrapPos();
  }
}

// Pieces and tiers of the shown size, one below the other: a table would need more room than large text leaves.
void numbers(const App& app, const SizePlan& plan) {
  for (const PieceOfSize& piece : plan.pieces) {
    heading(app.theme, piece.name.c_str());
    for (std::size_t tier = 0; tier < piece.tiers.size(); ++tier) {
      const TierOfPiece& there = piece.tiers[tier];
      const Shaping& shaping = there.shaping;
      const std::string then = shaping.increases() > 0   ? fmt::format("+{}", shaping.increases())
                               : shaping.decreases() > 0 ? fmt::format("−{}", shaping.decreases())
                                                         : std::string(tr("none"));
      ImGui::PushTextWrapPos(0);
      ImGui::TextUnformatted(said("{}.  {} st, {}–{}, {}", tier + 1, there.stitches, name_of(there.bed.first),
                                  name_of(there.bed.last), then)
                                 .c_str());
      ImGui::PopTextWrapPos();
      if (shaping.decreases() + shaping.increases() > 0) {
        const std::string clear = clearance_words(shaping);
        tip(app.theme, punchwright::words_of(shaping.every) + (clear.empty() ? "" : "; " + clear));
      }
    }
  }
}

} // namespace

void yoke_side(const App& app, Actions& actions) {
  const Theme& theme = app.theme;
  const YokeCache& cache = app.caches.yoke;
  heading(theme, tr("Findings"));
  for (int index = 0; index < static_cast<int>(cache.findings.size()); ++index) {
    entry(app, actions, index);
  }
  const bool continuous = app.yoke.opened->yoke.fit.seams != YokeSeams::centred;
  if (cache.findings.empty()) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextColored(tint(theme.good), "%s",
                       continuous ? tr("Every piece fits the bed, and all seams meet in every size.")
                                  : tr("Every piece fits the bed, with the motif in its middle."));
    ImGui::PopTextWrapPos();
  }
  if (const SizePlan* const plan = shown_plan(app)) {
    yarn_lines(app, *plan);
    numbers(app, *plan);
  }
}

} // namespace punchwright::editor
