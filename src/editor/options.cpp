// The editor's own command line.
#include "editor/options.hpp"

#include "words/words.hpp"

#include <CLI/CLI.hpp>
#include <cstdio>
#include <fmt/format.h>
#include <map>
#include <string>
#include <vector>

namespace punchwright::editor {

namespace {

// CLI11's own words.
void speak_of_itself(CLI::App& line) {
  line.set_help_flag("-h,--help", tr("Print this help message and exit"));
  line.set_version_flag("--version", "punchwright-editor " PUNCHWRIGHT_VERSION,
                        tr("Display program version information and exit"));
  line.get_help_ptr()->group(tr("Options"));
  line.get_version_ptr()->group(tr("Options"));
  line.option_defaults()->group(tr("Options"));
  line.failure_message([](const CLI::App*, const CLI::Error& trouble) {
    return said("{}\nRun with --help for more information.\n", trouble.what());
  });
  const auto formatter = line.get_formatter();
  formatter->label("Usage", tr("Usage"));
  formatter->label("Positionals", tr("Positionals"));
  formatter->label("OPTIONS", tr("OPTIONS"));
}

} // namespace

std::variant<Options, int> read_options(int count, char** arguments) {
  CLI::App line{tr("Punchwright's editor: draws two-colour bands for hand-operated knitting machines."),
                "punchwright-editor"};
  speak_of_itself(line);
  Options options;
  std::string size;
  std::string settings; // read already
  const std::vector<std::string> codes = codes_of_languages();
  line.add_option("FILE", options.file, tr("A .repeat or .yoke file; without one, a blank design"))->option_text(" ");
  line.add_option("--state-to", options.state_to,
                  tr("Write one line of state a frame (JSON), for scripts that drive the window"));
  line.add_option("--picture", options.picture, tr("Write a picture of the window (PNG) and end"));
  line.add_option("--settings", settings,
                  tr("Settings to read and keep, instead of $XDG_CONFIG_HOME/punchwright/settings"));
  line.add_option("--motifs", options.motifs,
                  tr("The folder of motifs of one's own, instead of $XDG_DATA_HOME/punchwright/motifs"));
  line.add_option("--language", options.language,
                  said("Of the words: {}; without it that of the settings, or of the system", fmt::join(codes, ", ")))
      ->check(CLI::IsMember(codes))
      ->option_text("CODE");
  line.add_option("--size", size, tr("Of the window, in pixels: 1440x900"))->check([](const std::string& text) {
    int width = 0;
    int height = 0;
    const bool good = std::sscanf(text.c_str(), "%dx%d", &width, &height) == 2 && width >= 320 && height >= 240 &&
                      width <= 8192 && height <= 8192;
    return good ? std::string() : said("'{}' is no size; write 1440x900 (320x240 to 8192x8192)", text);
  });
  line.add_option("--scale", options.scale, tr("Size of text and parts, 0.5 to 4; without it what the display says"))
      ->check(CLI::Range(0.5, 4.0))
      ->option_text("NUMBER");
  line.add_option("--show", options.face, tr("Side of the piece: knit or purl"))
      ->transform(CLI::CheckedTransformer(std::map<std::string, Face>{{"knit", Face::knit}, {"purl", Face::purl}}))
      ->option_text("SIDE");
  const std::map<std::string, Tab> tabs = {{"design", Tab::design},   {"tools", Tab::tools}, {"yarns", Tab::yarns},
                                           {"machine", Tab::machine}, {"piece", Tab::piece}, {"card", Tab::card}};
  line.add_option_function<Tab>(
          "--tab", [&options](const Tab& tab) { options.tab = tab; },
          tr("Settings to show: design, tools, yarns, machine, piece, card"))
      ->transform(CLI::CheckedTransformer(tabs))
      ->option_text("TAB");
  line.add_flag("--large-piece", options.large_piece, tr("Show the piece in place of the drawing"));
  line.add_flag("--finding", options.choose_finding, tr("Choose the first finding"));
  const std::vector<std::string> dialogs = {
      "new",         "new-yoke",     "open",           "keys",          "card",           "chart",       "size",
      "swatch",      "commands",     "steps",          "settings",      "start",          "help",        "preview",
      "everything",  "pairs",        "palette",        "import",        "layout",         "yarns-here",  "keep-motif",
      "bench",       "step-list",    "play",           "wrong",         "recovery",       "changed",     "noticed",
      "guard",       "dropped",      "bench-changed",  "mend",          "lettering",      "afar",        "menu",
      "not-saved",   "export-steps", "export-leaflet", "export-fabric", "export-pattern", "export-yoke", "measure-page",
      "swatch-page", "machine-file", "keep-machine",   "save-yoke",     "yoke-tier",      "new-folder",  "replace"};
  line.add_option("--dialog", options.dialog, said("Open a dialog: {}", fmt::format("{}", fmt::join(dialogs, ", "))))
      ->check(CLI::IsMember(dialogs))
      ->option_text("NAME");
  std::map<std::string, ColourSight> sights;
  for (const SightInfo& info : colour_sights) {
    sights[info.id] = info.sight;
  }
  line.add_option("--done", options.done, tr("Things done at the bench, passes played, or rows seen"))
      ->check(CLI::Range(0, 1000000))
      ->option_text("COUNT");
  line.add_option("--sight", options.sight, tr("How colours are seen: as-is, lightness, protan, deutan, tritan"))
      ->transform(CLI::CheckedTransformer(sights))
      ->option_text("NAME");
  std::map<std::string, YokeShows> views;
  for (const YokeShowsInfo& info : yoke_views) {
    views[info.id] = info.shows;
  }
  line.add_option_function<YokeShows>(
          "--yoke", [&options](const YokeShows& shows) { options.yoke = shows; },
          tr("View of a yoke: schematic, flat, worn, bed"))
      ->transform(CLI::CheckedTransformer(views))
      ->option_text("VIEW");
  line.add_option("--zoom", options.zoom, tr("Of the drawing, px a mm"))
      ->check(CLI::Range(0.1, 40.0))
      ->option_text("NUMBER");
  line.add_option("--sheet", options.sheet, tr("In the preview: card, chart, steps, leaflet, pattern, swatch, measure"))
      ->check(CLI::IsMember({"card", "chart", "steps", "leaflet", "pattern", "swatch", "measure"}))
      ->option_text("NAME");
  line.add_option("--frames-benchmark", options.frames_benchmark, tr("Time that many frames, print the times and end"))
      ->check(CLI::Range(1, 100000))
      ->option_text("COUNT");
  try {
    line.parse(count, arguments);
  } catch (const CLI::ParseError& trouble) {
    return line.exit(trouble) == 0 ? 0 : 2;
  }
  if (!size.empty()) {
    std::sscanf(size.c_str(), "%dx%d", &options.width, &options.height);
  }
  return options;
}

} // namespace punchwright::editor
