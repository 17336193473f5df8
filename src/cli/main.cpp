// The command line: arguments to the commands' wishes, nothing more.
// It links no editor code, which proves on every build that the core needs no window.
#include "cli/commands.hpp"
#include "cli/help.hpp"
#include "cli/output.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <exception>
#include <functional>
#include <map>
#include <optional>

namespace punchwright::cli {
namespace {

class CommandLine {
public:
  CommandLine() {
    app_.description("Punchwright: two-colour bands for knitting machines, from a drawn repeat to a\n"
                     "punched card. 'punchwright FILE' opens the editor.");
    app_.add_option("FILE", file_, "a .repeat file to open in the editor");
    app_.require_subcommand(0, 1);
    tell_of_itself(app_);
    add_check();
    add_card();
    add_needles();
    add_mend();
    add_trace();
    add_rows();
    add_steps();
    add_prove();
    add_explain();
    add_fabric();
    add_leaflet();
    add_pattern();
    add_yoke();
    add_everything();
    add_import();
    add_machine();
    add_sheets();
  }

  int run(int count, char** arguments) {
    try {
      app_.parse(count, arguments);
    } catch (const CLI::ParseError& error) {
      return explain(error);
    }
    return chosen_ ? chosen_() : start_editor(file_);
  }

private:
  static std::string version() { return "punchwright " PUNCHWRIGHT_VERSION; }

  static void tell_of_itself(CLI::App& app) {
    app.set_help_flag("-h,--help", "this text");
    app.set_version_flag("--version", version(), "the program's version");
  }

  CLI::App* add_command(const std::string& name, const std::string& what, std::function<int()> command) {
    CLI::App* const sub = app_.add_subcommand(name, what);
    tell_of_itself(*sub);
    sub->callback([this, command = std::move(command)] { chosen_ = command; });
    return sub;
  }

  static void add_input(CLI::App* sub, std::string& file) {
    sub->add_option("FILE", file, "a .repeat file, or - for standard input")->required();
  }
  static void add_output(CLI::App* sub, std::string& output, const std::string& kinds) {
    sub->add_option("-o,--output", output, "the file to write; its extension chooses the form: " + kinds)
        ->required()
        ->type_name("OUT");
  }

  // An option whose value `read` understands, or not: then what it may be is said.
  static void add_value(CLI::App* sub, const std::string& option, const std::string& type, const std::string& allowed,
                        const std::string& what, std::function<bool(const std::string&)> read) {
    sub->add_option_function<std::string>(
           option,
           [option, allowed, read = std::move(read)](const std::string& word) {
             if (!read(word)) {
               throw CLI::ValidationError("'" + word + "' is not allowed for " + option + "; allowed: " + allowed);
             }
           },
           what)
        ->type_name(type);
  }

  // An option that takes one of a few words, and says which.
  template <class Value>
  static void add_choice(CLI::App* sub, const std::string& option, const std::string& what, Value& value,
                         const std::map<std::string, Value>& words) {
    std::string type;
    std::string allowed;
    for (const auto& [word, meaning] : words) {
      type += (type.empty() ? "" : "|") + word;
      allowed += (allowed.empty() ? "" : word == words.rbegin()->first ? " or " : ", ") + word;
    }
    add_value(sub, option, type, allowed, what, [&value, words](const std::string& word) {
      const auto found = words.find(word);
      if (found != words.end()) {
        value = found->second;
      }
      return found != words.end();
    });
  }

  // Without regard to the language of the system: 104.9, never 104,9.
  template <class Number> static bool read_number(const std::string& word, std::optional<Number>& number) {
    Number value{};
    const char* const end = word.data() + word.size();
    const auto [stop, trouble] = std::from_chars(word.data(), end, value);
    if (trouble != std::errc{} || stop != end) {
      return false;
    }
    number = value;
    return true;
  }

  static void add_millimetres(CLI::App* sub, const std::string& option, const std::string& what,
                              std::optional<double>& number) {
    add_value(sub, option, "MM", "a number of millimetres, such as 104.9", what,
              [&number](const std::string& word) { return read_number(word, number); });
  }

  void add_check() {
    auto* const sub =
        add_command("check", "say what is wrong with a design, and the remedy", [this] { return check_file(check_); });
    add_input(sub, check_.file);
    sub->add_flag("--json", check_.json, "the findings as JSON")->disable_flag_override();
  }

  void add_mend() {
    auto* const sub = add_command("mend", "change the fewest stitches so that no float is too long",
                                  [this] { return mend_file(mend_); });
    add_input(sub, mend_.file);
    add_output(sub, mend_.output, ".repeat");
    add_protect(sub, mend_.protect);
    add_places(sub, "--catch", "floats to catch by hand instead: all, ROWS or ROWS:COLUMNS; may be given again",
               mend_.caught);
    add_places(sub, "--accept", "floats to accept as they are, named in the same way; may be given again",
               mend_.accepted);
    sub->add_flag("--no-changes", mend_.no_changes, "change no stitch: leave all other floats as they are")
        ->disable_flag_override();
    sub->add_flag("--json", mend_.json, "what was changed as JSON")->disable_flag_override();
  }

  // Numbers with commas between them, as many as there is room for.
  template <std::size_t count> static bool read_numbers(const std::string& word, std::array<double, count>& numbers) {
    std::size_t from = 0;
    for (std::size_t place = 0; place < count; ++place) {
      const std::size_t comma = place + 1 < count ? word.find(',', from) : word.size();
      std::optional<double> number;
      if (comma == std::string::npos || !read_number(word.substr(from, comma - from), number)) {
        return false;
      }
      numbers[place] = *number;
      from = comma + 1;
    }
    return true;
  }

  template <class Share> static bool read_percent(const std::string& word, double low, double high, Share& share) {
    std::optional<double> percent;
    const bool good = read_number(word, percent) && *percent >= low && *percent <= high;
    if (good) {
      share = *percent / 100;
    }
    return good;
  }

  void add_trace() {
    auto* const sub = add_command("trace", "make the knittable repeat that is nearest to a picture",
                                  [this] { return trace_picture(trace_); });
    sub->add_option("PICTURE", trace_.picture, "a PNG, JPEG, BMP, PBM, PGM, PPM or XBM file")->required();
    add_output(sub, trace_.output, ".repeat");
    add_count(sub, "--width", "stitches of the repeat, 1 to 200; without it 24", widest_repeat, trace_.width);
    add_count(sub, "--rows", "rows of the repeat, 1 to 2000; without it 60", tallest_repeat, trace_.rows);
    sub->add_option("--machine", trace_.machine, "a built-in profile or a .machine file")->type_name("MACHINE");
    add_value(sub, "--gauge", "STITCHES,ROWS", "two numbers from 1 to 200, such as 16,20",
              "over 10 cm; without it 16,20", [this](const std::string& word) {
                std::array<double, 2> numbers{};
                const bool good = read_numbers(word, numbers) && std::ranges::all_of(numbers, [](double number) {
                                    return number >= 1 && number <= 200;
                                  });
                trace_.gauge = Gauge{numbers[0], numbers[1]};
                return good;
              });
    add_value(sub, "--float", "STITCHES", "1 to 200", "the longest float; without it the machine's",
              [this](const std::string& word) {
                return read_number(word, trace_.longest_float) && *trace_.longest_float >= 1 &&
                       *trace_.longest_float <= 200;
              });
    auto* const part = sub->add_option_function<std::string>(
                              "--part",
                              [this](const std::string& word) {
                                std::array<double, 3> numbers{};
                                if (!read_numbers(word, numbers) || !(numbers[2] >= 1) || !std::isfinite(numbers[0]) ||
                                    !std::isfinite(numbers[1]) || !std::isfinite(numbers[2])) {
                                  throw CLI::ValidationError(
                                      "'" + word + "' is not allowed for --part; allowed: pixels such as 20,0,640");
                                }
                                trace_.part = numbers;
                              },
                              "the part of the picture, in pixels; without it as much as there is room for")
                           ->type_name("LEFT,TOP,WIDTH");
    sub->add_flag("--best-place", trace_.best_place, "look for the part that tiles best")
        ->disable_flag_override()
        ->excludes(part);
    add_value(sub, "--split", "PERCENT", "1 to 99", "darkness where contrast begins; without it by Otsu's method",
              [this](const std::string& word) { return read_percent(word, 1, 99, trace_.how.split); });
    add_value(sub, "--emphasis", "PERCENT", "-100 (areas) to 100 (edges)", "of edges, or of areas below 0",
              [this](const std::string& word) { return read_percent(word, -100, 100, trace_.how.emphasis); });
    add_choice<Shading>(sub, "--shading", "how shades become stitches", trace_.how.shading,
                        {{"split", Shading::split}, {"diffusion", Shading::diffusion}, {"dither", Shading::dither}});
    add_value(sub, "--ignore", "COLOUR", "a colour such as #ffffff, or #ffffff,40 with how near to it (0 to 441)",
              "pixels near that colour become main", [this](const std::string& word) {
                const auto colour = colour_from_hex(word.substr(0, 7));
                std::optional<int> within = IgnoredColour{}.within;
                const bool good =
                    colour && (word.size() == 7 || (word[7] == ',' && read_number(word.substr(8), within) &&
                                                    *within >= 0 && *within <= 441));
                if (good) {
                  trace_.ignored = IgnoredColour{*colour, *within};
                }
                return good;
              });
    sub->add_flag("--light-is-contrast", trace_.how.light_is_contrast, "light becomes contrast, dark main")
        ->disable_flag_override();
    sub->add_flag("--mirror", trace_.how.mirrored, "left and right exchanged")->disable_flag_override();
    add_protect(sub, trace_.protect);
    sub->add_flag("--json", trace_.json, "what was made as JSON")->disable_flag_override();
  }

  static void add_count(CLI::App* sub, const std::string& option, const std::string& what, int most, int& count) {
    add_value(sub, option, "COUNT", "1 to " + std::to_string(most), what, [&count, most](const std::string& word) {
      std::optional<int> number;
      const bool good = read_number(word, number) && *number >= 1 && *number <= most;
      count = good ? *number : count;
      return good;
    });
  }

  static void add_places(CLI::App* sub, const std::string& option, const std::string& what,
                         std::vector<std::string>& places) {
    sub->add_option(option, places, what)
        ->type_name("PLACE")
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  }

  static void add_protect(CLI::App* sub, std::vector<std::string>& places) {
    add_places(sub, "--protect", "stitches that stay: ROWS or ROWS:COLUMNS, such as 7 or 5-8:3-9; may be given again",
               places);
  }

  void add_rows() {
    auto* const sub = add_command("rows", "list the rows to knit", [this] { return list_rows(rows_); });
    add_input(sub, rows_.file);
    sub->add_flag("--json", rows_.json, "the rows as JSON")->disable_flag_override();
  }

  void add_steps() {
    auto* const sub = add_command("steps", "list the steps at the machine", [this] { return list_steps(steps_); });
    add_input(sub, steps_.file);
    sub->add_flag("--json", steps_.json, "the steps as JSON")->disable_flag_override();
    sub->add_option("-o,--output", steps_.output, "a file to write; its extension chooses the form: .pdf, .html, .txt")
        ->type_name("OUT");
  }

  void add_prove() {
    auto* const sub = add_command("prove", "knit the card and the steps on a model of the machine, and compare",
                                  [this] { return prove_file(prove_); });
    add_input(sub, prove_.file);
    sub->add_option("--card", prove_.card, "a punch list of the card to knit from, in place of the one that is drawn")
        ->type_name("LIST");
    sub->add_flag("--json", prove_.json, "what was compared as JSON")->disable_flag_override();
    sub->add_option("--picture", prove_.picture, "a .png to draw the fabric to, with what went wrong as it looks")
        ->type_name("OUT");
    add_choice(sub, "--side", "the side of the fabric that the picture shows", prove_.side,
               {{"knit", Face::knit}, {"purl", Face::purl}});
  }

  void add_explain() {
    auto* const sub = add_command("explain", "say what went wrong, from what you see on the fabric",
                                  [this] { return explain_fabric(explain_); });
    add_input(sub, explain_.file);
    sub->add_option("--seen", explain_.seen,
                    "a text picture of what you see: '.' main, '#' contrast, 'o' dropped, '?' not looked at")
        ->type_name("PICTURE")
        ->required();
    add_choice(sub, "--side", "the side of the fabric that the picture shows", explain_.side,
               {{"knit", Face::knit}, {"purl", Face::purl}});
    sub->add_option("--picture", explain_.picture,
                    "a .png to draw the likeliest explanation's fabric to, that side of it")
        ->type_name("OUT");
    sub->add_flag("--json", explain_.json, "the explanations as JSON")->disable_flag_override();
  }

  void add_card() {
    auto* const sub = add_command("card", "write the full-size card template", [this] { return export_card(card_); });
    add_input(sub, card_.where.file);
    add_output(sub, card_.where.output, ".pdf, .svg, .png, .txt");
    add_value(sub, "--card", "N", "1 and up", "only that card of several; a punch list has all of them",
              [this](const std::string& word) { return read_number(word, card_.only_card) && *card_.only_card >= 1; });
  }

  void add_everything() {
    auto* const sub = add_command("export", "write every sheet of a design into a folder",
                                  [this] { return export_everything(everything_); });
    add_input(sub, everything_.where.file);
    sub->add_option("-o,--output", everything_.where.output, "the folder; made where it is not there")
        ->required()
        ->type_name("FOLDER");
    sub->add_flag("--stay-back", everything_.chart.stay_back_where_fewer,
                  "name the needles that stay back in rows where they are fewer")
        ->disable_flag_override();
    sub->add_flag("--replace", everything_.replace, "replace files of the same names")->disable_flag_override();
  }

  void add_needles() {
    auto* const sub = add_command("needles", "write the needle chart", [this] { return export_needles(needles_); });
    add_input(sub, needles_.where.file);
    add_output(sub, needles_.where.output, ".pdf, .html, .csv, .txt");
    sub->add_flag("--stay-back", needles_.chart.stay_back_where_fewer,
                  "name the needles that stay back in rows where they are fewer")
        ->disable_flag_override();
  }

  void add_fabric() {
    auto* const sub =
        add_command("fabric", "draw the cloth over the whole piece", [this] { return export_fabric(fabric_); });
    add_input(sub, fabric_.where.file);
    add_output(sub, fabric_.where.output, ".png");
    add_choice(sub, "--side", "the side of the cloth to see", fabric_.side,
               {{"knit", Face::knit}, {"purl", Face::purl}});
  }

  void add_leaflet() {
    auto* const sub = add_command("leaflet", "write a leaflet for somebody who owns another machine",
                                  [this] { return export_leaflet(leaflet_); });
    add_input(sub, leaflet_.where.file);
    add_output(sub, leaflet_.where.output, ".pdf");
    add_value(sub, "--paper", "a4|letter", "a4 or letter", "the paper to print on; none: the design's",
              [this](const std::string& word) {
                leaflet_.paper = word == "letter" ? Paper::letter : Paper::a4;
                return word == "letter" || word == "a4";
              });
  }

  void add_pattern() {
    auto* const sub = add_command("chart", "draw the pattern chart: the drawing with grid, numbers and legend",
                                  [this] { return export_pattern(pattern_); });
    add_input(sub, pattern_.file);
    add_output(sub, pattern_.output, ".png, .svg");
  }

  void add_import() {
    auto* const sub = add_command("import", "make a design of a two-colour picture, a stitch for each pixel",
                                  [this] { return import_picture(import_); });
    sub->add_option("PICTURE", import_.picture, "a PNG, PBM or XBM file, or - for standard input")->required();
    add_output(sub, import_.output, ".repeat");
    add_choice(sub, "--contrast", "the colour that becomes contrast; without it, darker", import_.contrast,
               {{"darker", ContrastIs::darker}, {"lighter", ContrastIs::lighter}});
    sub->add_option("--machine", import_.machine,
                    "the machine that it is for: built in, or a .machine file; without it, bulky-card-24")
        ->type_name("MACHINE");
  }

  // Numbers or names with commas between them.
  template <class Item>
  static void add_list(CLI::App* sub, const std::string& option, const std::string& type, const std::string& allowed,
                       const std::string& what, std::vector<Item>& items,
                       std::function<std::optional<Item>(const std::string&)> read) {
    add_value(sub, option, type, allowed, what, [&items, read = std::move(read)](const std::string& word) {
      items.clear();
      for (std::size_t from = 0; from <= word.size();) {
        const std::size_t comma = std::min(word.find(',', from), word.size());
        const std::optional<Item> item = read(word.substr(from, comma - from));
        if (!item) {
          return false;
        }
        items.push_back(*item);
        from = comma + 1;
      }
      return items.size() <= most_yoke_sizes;
    });
  }

  static std::optional<double> body_measure(const std::string& word) {
    std::optional<double> number;
    const bool good = read_number(word, number) && *number >= 10 && *number <= 300;
    return good ? number : std::nullopt;
  }

  void add_yoke() {
    auto* const sub = add_command("yoke", "work out a yoke in pieces and tiers, or begin one from body measurements",
                                  [this] { return plan_yoke_file(yoke_); });
    sub->add_option("FILE", yoke_.file, "a .yoke file, or - for standard input");
    sub->add_flag("--json", yoke_.json, "the pieces as JSON")->disable_flag_override();
    sub->add_flag("--split", yoke_.split, "write the yoke with pieces that are wider than the bed split")
        ->disable_flag_override();
    sub->add_option("-o,--output", yoke_.output, "with --split and --new: the .yoke file to write")->type_name("OUT");
    add_value(sub, "--new", "pullover|poncho", "pullover or poncho",
              "begin a yoke: front, back and two sleeves, or quarters", [this](const std::string& word) {
                yoke_.fresh = word == "poncho" ? YokeKind::poncho : YokeKind::pullover;
                return word == "poncho" || word == "pullover";
              });
    sub->add_option("--tier", yoke_.tiers, "for --new: a tier's .repeat file; again for each, from the bottom upwards")
        ->type_name("FILE")
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    add_list<std::string>(sub, "--sizes", "NAMES", "names with commas between them, such as S,M,L",
                          "for --new: sizes XS to 5X of the table, or any with --chest; without it S,M,L", yoke_.sizes,
                          [](const std::string& word) { return word.empty() ? std::nullopt : std::optional(word); });
    add_list<double>(sub, "--chest", "CM", "a number from 10 to 300 for each size, such as 86,96.5",
                     "for --new: measures round the chest", yoke_.chest_cm, body_measure);
    add_list<double>(sub, "--upper-arm", "CM", "a number from 10 to 300 for each size, such as 30,32.5",
                     "for --new: measures round the upper arm; without it sleeves are a share of the body",
                     yoke_.upper_arm_cm, body_measure);
    add_value(sub, "--ease", "CM", "a number from -20 to 100", "for --new: added to the chest; without it 7.5",
              [this](const std::string& word) {
                return read_number(word, yoke_.ease_cm) && *yoke_.ease_cm >= -20 && *yoke_.ease_cm <= 100;
              });
    sub->add_option("--machine", yoke_.machine,
                    "for --new: the machine, built in, or a .machine file; without it the tiers' own")
        ->type_name("MACHINE");
  }

  void add_machine() {
    auto* const sub = add_command("machine", "list the machines, or write one as a .machine file of your own",
                                  [this] { return machine(machine_); });
    sub->add_option("MACHINE", machine_.profile, "a built-in machine, or a .machine file; none: all are listed");
    sub->add_option("-o,--output", machine_.output, "the .machine file to write; none: standard output")
        ->type_name("OUT");
    add_millimetres(sub, "--over-holes", "measured over 23 gaps between holes (11 on a 12-stitch card)",
                    machine_.over_23_holes);
    add_millimetres(sub, "--over-rows", "measured over 50 rows", machine_.over_50_rows);
    add_millimetres(sub, "--edge-to-hole", "measured from the side edge to the first hole's centre",
                    machine_.edge_to_first_hole);
    add_millimetres(sub, "--sheet-width", "measured from edge to edge", machine_.sheet_width);
    add_millimetres(sub, "--hole", "measured across a hole", machine_.hole_diameter);
    add_value(sub, "--swatch", "1-8", "1 to 8", "the picture that the knitted swatch looks like",
              [this](const std::string& word) {
                return read_number(word, machine_.swatch_looks_like) && *machine_.swatch_looks_like >= 1 &&
                       *machine_.swatch_looks_like <= 8;
              });
  }

  void add_sheets() {
    auto* const measure =
        add_command("measure", "write the page 'measure your blank'", [this] { return measuring_sheet(measure_); });
    add_sheet_options(measure, measure_, ".pdf, .svg, .png");
    auto* const swatch = add_command("swatch", "write the orientation swatch and its card",
                                     [this] { return orientation_swatch(swatch_); });
    add_sheet_options(swatch, swatch_, ".pdf");
  }

  static void add_sheet_options(CLI::App* sub, SheetWishes& wishes, const std::string& kinds) {
    sub->add_option("MACHINE", wishes.profile, "a built-in machine, or a .machine file")->required();
    add_output(sub, wishes.output, kinds);
    add_choice(sub, "--paper", "the paper to print on", wishes.paper,
               {{"a4", Paper::a4}, {"letter", Paper::letter}, {"roll", Paper::roll}});
  }

  // Help and version are what was asked for; all else is a wrong call.
  int explain(const CLI::ParseError& error) {
    const CLI::App* asked = &app_;
    for (const CLI::App* sub : app_.get_subcommands()) {
      asked = sub;
    }
    if (error.get_exit_code() == 0) {
      const bool wants_version = dynamic_cast<const CLI::CallForVersion*>(&error) != nullptr;
      return print(wants_version ? version() + "\n" : help_of(*asked)) ? done : cannot;
    }
    return refuse(complaint(error, *asked));
  }

  CLI::App app_;
  std::string file_;
  CheckWishes check_;
  MendingWishes mend_;
  TraceCommandWishes trace_;
  CheckWishes rows_;
  YokeWishes yoke_;
  StepsWishes steps_;
  ProveWishes prove_;
  ExplainWishes explain_;
  CardExportWishes card_;
  EverythingWishes everything_;
  ImportWishes import_;
  NeedlesWishes needles_;
  FabricWishes fabric_;
  LeafletWishes leaflet_;
  ExportWishes pattern_;
  MachineWishes machine_;
  SheetWishes measure_;
  SheetWishes swatch_;
  std::function<int()> chosen_;
};

} // namespace
} // namespace punchwright::cli

int main(int count, char** arguments) {
  // Only what cannot be foreseen comes here: no memory, or a defect of ours.
  try {
    punchwright::cli::CommandLine line;
    return line.run(count, arguments);
  } catch (const std::exception& error) {
    return punchwright::cli::refuse(punchwright::Error{{}, 0, 0, error.what(), "try a smaller design"});
  }
}
