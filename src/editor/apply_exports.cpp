// What is written for others: sheets, pictures, everything into a folder; of the yoke its sheets.
#include "editor/applying.hpp"
#include "editor/exporting.hpp"
#include "editor/preview_sheets.hpp"
#include "files/files.hpp"
#include "sheets/everything.hpp"
#include "sheets/pdf_date.hpp"
#include "sheets/yoke_sheets.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstdlib>
#include <iterator>
#include <utility>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

// Of the sizes that fit; why the others don't is told, or is the answer where none does.
Result<std::vector<OutputFile>> yoke_output(const App& app, const fs::path& path, std::vector<Error>& left_out) {
  const OpenedYoke& opened = *app.yoke.opened;
  const SizesPlanned planned = plan_sizes(opened);
  std::vector<std::size_t> fit;
  for (std::size_t size = 0; size < planned.faults.size(); ++size) {
    if (planned.fits(size)) {
      fit.push_back(size);
    } else {
      left_out.insert(left_out.end(), planned.faults[size].begin(), planned.faults[size].end());
    }
  }
  if (fit.empty()) {
    return left_out.front();
  }
  return yoke_files(opened, planned.plan, path.string(), {app.settings.paper, fit, {}, {}});
}

Result<std::vector<OutputFile>> output_of(const App& app, const PathDialog& dialog, const fs::path& path,
                                          std::vector<Error>& left_out) {
  const Document& design = app.work.design;
  const Profile& profile = app.work.profile;
  switch (dialog.purpose) {
  case Purpose::card: return card_files(design, profile, path.string(), dialog.only_card);
  case Purpose::steps: return step_files(design, profile, path.string());
  case Purpose::everything: {
    const auto findings = with_notes(check(design, profile), app.work.notes);
    Everything all = everything_of(design, profile, findings, path.string(), dialog.chart);
    left_out = std::move(all.left_out);
    return std::move(all.files);
  }
  case Purpose::chart: return needle_files(design, profile, path.string(), dialog.chart);
  case Purpose::leaflet: return leaflet_files(design, profile, path.string(), design.card.paper);
  case Purpose::fabric: return fabric_files(design, profile, path.string(), app.view.face);
  case Purpose::pattern: return pattern_files(design, path.string());
  case Purpose::measure_page: return measure_files(profile, design.card.paper, path.string());
  case Purpose::swatch: return swatch_files(profile, design.card.paper, path.string());
  case Purpose::yoke_sheets: return yoke_output(app, path, left_out);
  default: return Error{};
  }
}

} // namespace

void export_files(App& app, PathDialog dialog, const fs::path& path, bool replace) {
  std::vector<Error> left_out;
  auto files = output_of(app, dialog, path, left_out);
  if (const Failure failure = files ? date_pdfs(*files, std::getenv("SOURCE_DATE_EPOCH")) : std::nullopt) {
    files = *failure;
  }
  if (!files) {
    dialog.trouble = files.error().text();
    app.session.dialog = dialog;
    return;
  }
  if (const auto present = present_among(*files); !replace && !present.empty()) {
    dialog.ask_replace = true;
    dialog.replaced = static_cast<int>(present.size());
    app.session.dialog = dialog;
    return;
  }
  std::vector<NewContent> contents;
  std::ranges::transform(*files, std::back_inserter(contents), [](const OutputFile& file) {
    return NewContent{file.path, file.bytes};
  });
  if (const Failure failure = write_files(contents)) {
    dialog.trouble = failure->text();
    dialog.ask_replace = false;
    app.session.dialog = dialog;
    return;
  }
  app.session.dialog = dialog;
  close_dialog(app);
  app.session.folder = path.parent_path();
  const std::string& first = files->front().path;
  std::string words =
      files->size() > 1 ? said("Written: {} and {} more", first, files->size() - 1) : said("Written: {}", first);
  for (const Error& error : left_out) {
    words += said("; left out: {}", error.text());
  }
  say(app, std::move(words), left_out.empty() ? Tone::good : Tone::trouble);
}

void show_preview(App& app) {
  if (PreviewView& view = app.view.preview; !has_sheet(app.work.profile, view.kind)) {
    view.kind = SheetKind::chart; // what comes nearest to a card
    view.page = 0;
    view.corner = {};
  }
  app.session.dialog = PreviewDialog{};
}

void export_shown(App& app) {
  const PreviewView& view = app.view.preview;
  const auto purpose = [&] {
    switch (view.kind) {
    case SheetKind::card: return Purpose::card;
    case SheetKind::chart: return Purpose::chart;
    case SheetKind::steps: return Purpose::steps;
    case SheetKind::leaflet: return Purpose::leaflet;
    case SheetKind::pattern: return Purpose::pattern;
    case SheetKind::swatch: return Purpose::swatch;
    case SheetKind::measure: break;
    }
    return Purpose::measure_page;
  };
  close_step(app);
  open_path_dialog(app, purpose());
}

} // namespace punchwright::editor
