// Small pictures for dialogs.
#include "editor/picture_views.hpp"

#include "drawing/turns.hpp"

#include <algorithm>

namespace punchwright::editor {

namespace {

// So many times upwards, so that courses that lie otherwise than the first are seen to come back.
Document twice_upwards(Document design) {
  const int height = design.grid.height();
  const int times = std::min(2, tallest_repeat / height);
  const std::vector<Band> bands = design.bands;
  for (int time = 1; time < times; ++time) {
    design.bands.insert(design.bands.end(), bands.begin(), bands.end());
  }
  design.grid = repeated(design.grid, design.grid.width(), times * height);
  design.marks = {}; // of the size that it was
  return design;
}

Failure apply_all(Document& design, const std::vector<Edit>& edits) {
  for (const Edit& edit : edits) {
    if (const auto change = apply_edit(design, edit); !change) {
      return change.error();
    }
  }
  return std::nullopt;
}

std::string words_of(const Error& error) {
  return error.remedy.empty() ? error.message : error.message + "; " + error.remedy;
}

} // namespace

PictureDialog picture_dialog(const std::filesystem::path& path, std::shared_ptr<const Picture> picture,
                             ContrastIs contrast, const Gauge& gauge) {
  Document design = design_of(*picture, contrast, {});
  design.gauge = gauge;
  PictureDialog dialog{path, std::move(picture), contrast, {}};
  dialog.shown = small_picture(design, 1.6);
  return dialog;
}

std::optional<int> card_width_of(const Profile& profile) {
  return profile.card ? std::optional(profile.card->repeat) : std::nullopt;
}

LayoutDialog layout_dialog(const Document& design, const Profile& profile, Layout layout) {
  LayoutDialog dialog;
  dialog.layout = layout;
  const auto on_card = layout_edits(design, layout, card_width_of(profile));
  if (!on_card) {
    dialog.trouble = words_of(on_card.error());
  }
  const auto edits = on_card ? on_card : layout_edits(design, layout, std::nullopt);
  Document laid = design;
  if (!edits || apply_all(laid, *edits)) {
    return dialog;
  }
  dialog.width = laid.grid.width();
  dialog.rows = laid.grid.height();
  dialog.shown = small_picture(twice_upwards(std::move(laid)), 1.5, 160);
  return dialog;
}

} // namespace punchwright::editor
