// What can be said about dialogs without drawing them.
#include "editor/dialogs.hpp"

#include "words/words.hpp"

#include <algorithm>
#include <cstdlib>

namespace punchwright::editor {

namespace fs = std::filesystem;

std::string_view title_of(Purpose purpose) {
  switch (purpose) {
  case Purpose::open: return tr("Open a design");
  case Purpose::save: return tr("Save the design");
  case Purpose::card: return tr("Export the card");
  case Purpose::chart: return tr("Export the needle chart");
  case Purpose::steps: return tr("Export the steps");
  case Purpose::leaflet: return tr("Export the leaflet");
  case Purpose::fabric: return tr("Export a picture of the piece");
  case Purpose::pattern: return tr("Export the pattern chart");
  case Purpose::picture: return tr("Import a picture");
  case Purpose::measure_page: return tr("Export the page for measuring a blank");
  case Purpose::swatch: return tr("Export the orientation swatch");
  case Purpose::everything: return tr("Export everything into a folder");
  case Purpose::keep_machine: return tr("Keep the machine's file");
  case Purpose::save_yoke: return tr("Save the yoke");
  case Purpose::yoke_tier: return tr("Choose a repeat for a tier");
  case Purpose::yoke_sheets: return tr("Export the yoke's sheets");
  case Purpose::choose_machine: break;
  }
  return tr("Choose a machine file");
}

std::vector<std::string> extensions_for(Purpose purpose) {
  switch (purpose) {
  case Purpose::open: return {".repeat", ".yoke"};
  case Purpose::save:
  case Purpose::yoke_tier: return {".repeat"};
  case Purpose::save_yoke: return {".yoke"};
  case Purpose::yoke_sheets: return {".pdf"};
  case Purpose::card: return {".pdf", ".svg", ".png", ".txt"};
  case Purpose::chart: return {".pdf", ".html", ".csv", ".txt"};
  case Purpose::steps: return {".pdf", ".html", ".txt"};
  case Purpose::leaflet: return {".pdf"};
  case Purpose::fabric: return {".png"};
  case Purpose::pattern: return {".png", ".svg"};
  case Purpose::picture: return photo_extensions();
  case Purpose::measure_page: return {".pdf", ".svg", ".png"};
  case Purpose::swatch: return {".pdf", ".png"};
  case Purpose::everything: return {};
  case Purpose::keep_machine:
  case Purpose::choose_machine: break;
  }
  return {".machine"};
}

bool writes_file(Purpose purpose) {
  return purpose != Purpose::open && purpose != Purpose::choose_machine && purpose != Purpose::picture &&
         purpose != Purpose::yoke_tier;
}

bool shows_preview(Purpose purpose) {
  return purpose == Purpose::open || purpose == Purpose::picture || purpose == Purpose::yoke_tier;
}

namespace {

struct Namer {
  std::string operator()(const NoDialog&) const { return "none"; }
  std::string operator()(const PathDialog& dialog) const {
    switch (dialog.purpose) {
    case Purpose::open: return "open";
    case Purpose::save: return "save";
    case Purpose::card: return "card";
    case Purpose::chart: return "chart";
    case Purpose::steps: return "steps-sheet";
    case Purpose::leaflet: return "leaflet";
    case Purpose::fabric: return "fabric";
    case Purpose::pattern: return "pattern";
    case Purpose::picture: return "import";
    case Purpose::measure_page: return "measure-page";
    case Purpose::swatch: return "swatch-page";
    case Purpose::everything: return "everything";
    case Purpose::keep_machine: return "keep-machine";
    case Purpose::save_yoke: return "save-yoke";
    case Purpose::yoke_tier: return "yoke-tier";
    case Purpose::yoke_sheets: return "yoke-sheets";
    case Purpose::choose_machine: break;
    }
    return "machine";
  }
  std::string operator()(const GuardDialog&) const { return "guard"; }
  std::string operator()(const TroubleDialog&) const { return "trouble"; }
  std::string operator()(const NewDialog&) const { return "new"; }
  std::string operator()(const SizeDialog&) const { return "size"; }
  std::string operator()(const KeysDialog&) const { return "keys"; }
  std::string operator()(const SwatchDialog&) const { return "swatch"; }
  std::string operator()(const CommandsDialog&) const { return "commands"; }
  std::string operator()(const StepsDialog&) const { return "steps"; }
  std::string operator()(const DroppedDialog&) const { return "dropped"; }
  std::string operator()(const SettingsDialog&) const { return "settings"; }
  std::string operator()(const StartDialog&) const { return "start"; }
  std::string operator()(const HelpDialog&) const { return "help"; }
  std::string operator()(const PreviewDialog&) const { return "preview"; }
  std::string operator()(const PairsDialog&) const { return "pairs"; }
  std::string operator()(const PaletteDialog&) const { return "palette"; }
  std::string operator()(const PictureDialog&) const { return "picture"; }
  std::string operator()(const TraceDialog&) const { return "trace"; }
  std::string operator()(const LayoutDialog&) const { return "layout"; }
  std::string operator()(const YarnsHereDialog&) const { return "yarns-here"; }
  std::string operator()(const KeepMotifDialog&) const { return "keep-motif"; }
  std::string operator()(const BenchChangedDialog&) const { return "bench-changed"; }
  std::string operator()(const StepListDialog&) const { return "step-list"; }
  std::string operator()(const PlayDialog&) const { return "play"; }
  std::string operator()(const WrongDialog&) const { return "wrong"; }
  std::string operator()(const RecoveryDialog&) const { return "recovery"; }
  std::string operator()(const ChangedDialog&) const { return "changed"; }
  std::string operator()(const NewYokeDialog&) const { return "new-yoke"; }
};

} // namespace

std::string name_of(const Dialog& dialog) {
  return std::visit(Namer{}, dialog);
}

bool is_open(const Dialog& dialog) {
  return !std::holds_alternative<NoDialog>(dialog);
}

std::string fitting_widths(int card_columns) {
  std::string list;
  for (int width = 1; width <= card_columns; ++width) {
    if (card_columns % width == 0) {
      list += (list.empty() ? "" : ", ") + std::to_string(width);
    }
  }
  return list;
}

std::vector<FolderEntry> entries_of(const fs::path& folder, Purpose purpose) {
  const auto kinds = extensions_for(purpose);
  std::vector<FolderEntry> entries;
  std::error_code trouble;
  for (fs::directory_iterator entry(folder, trouble), end; !trouble && entry != end; entry.increment(trouble)) {
    const std::string name = entry->path().filename().string();
    std::error_code unreadable;
    const bool is_folder = entry->is_directory(unreadable);
    if (name.starts_with('.') ||
        (!is_folder && std::ranges::find(kinds, entry->path().extension().string()) == kinds.end())) {
      continue;
    }
    entries.push_back({name, is_folder});
  }
  std::ranges::sort(entries, [](const FolderEntry& one, const FolderEntry& another) {
    return one.folder != another.folder ? one.folder : one.name < another.name;
  });
  return entries;
}

fs::path with_home(const std::string& name) {
  const char* const home = std::getenv("HOME");
  const bool from_home = name == "~" || name.starts_with("~/");
  if (!from_home || home == nullptr || !fs::path(home).is_absolute()) {
    return name;
  }
  return name.size() > 2 ? fs::path(home) / name.substr(2) : fs::path(home);
}

fs::path path_of(const PathDialog& dialog) {
  fs::path path = dialog.folder / with_home(dialog.name); // an absolute name stands for itself
  const auto kinds = extensions_for(dialog.purpose);
  const std::string kind = path.extension().string();
  const bool kind_known = std::ranges::find(kinds, kind) != kinds.end();
  // A design may be called "band 2.5". The writers of sheets say themselves what they can't write.
  const bool own_form = dialog.purpose == Purpose::save || dialog.purpose == Purpose::save_yoke ||
                        dialog.purpose == Purpose::keep_machine;
  if (writes_file(dialog.purpose) && !dialog.name.empty() && !kinds.empty() && !kind_known &&
      (own_form || kind.empty())) {
    path += kinds.front();
  }
  std::error_code ignored;
  if (!writes_file(dialog.purpose) && !dialog.name.empty() && !fs::exists(path, ignored)) {
    for (const std::string& ending : kinds) { // that saving has put behind the name
      fs::path whole = path;
      if (whole += ending; fs::is_regular_file(whole, ignored)) {
        return whole.lexically_normal();
      }
    }
  }
  return path.lexically_normal();
}

} // namespace punchwright::editor
