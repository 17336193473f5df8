// The command line: arguments to the commands' wishes, nothing more.
// It links no editor code, which proves on every build that the core needs no window.
#include "cli/commands.hpp"
#include "cli/help.hpp"
#include "cli/language.hpp"
#include "cli/option_forms.hpp"
#include "cli/output.hpp"
#include "words/words.hpp"

#include <CLI/CLI.hpp>
#include <exception>
#include <functional>

namespace punchwright::cli {
namespace {

class CommandLine {
public:
  CommandLine() {
    app_.description(tr("Usage: punchwright FILE (opens it in the editor), or punchwright COMMAND ..."));
    app_.add_option("FILE", file_, tr("a .repeat or .yoke file to open in the editor"));
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
    add_thumbnail();
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
    return chosen_ ? chosen_() : start_editor(file_, language_);
  }

private:
  static std::string version() { return "punchwright " PUNCHWRIGHT_VERSION; }

  void tell_of_itself(CLI::App& app) {
    const std::string codes = fmt::format("{}", fmt::join(codes_of_languages(), ", "));
    add_value(&app, "--language", tr("CODE"), codes,
              said("the language of all words: {}; without it the system's", codes), [this](const std::string& word) {
                language_ = word;
                return word == language_of(word).code;
              });
    app.set_help_flag("-h,--help", tr("this text"));
    app.set_version_flag("--version", version(), tr("the program's version"));
  }

  static void tell_more_or_less(CLI::App& command) {
    command.add_flag_callback(
        "-q,--quiet", [] { set_talk(Talk::quiet); }, tr("nothing but data and errors"));
    command.add_flag_callback(
        "-v,--verbose", [] { set_talk(Talk::wordy); }, tr("tell what is read and written, too"));
  }

  CLI::App* add_command(const std::string& name, const std::string& what, std::function<int()> command) {
    CLI::App* const sub = app_.add_subcommand(name, what);
    tell_of_itself(*sub);
    tell_more_or_less(*sub);
    sub->callback([this, command = std::move(command)] { chosen_ = command; });
    return sub;
  }

  void add_check() {
    auto* const sub = add_command("check", tr("say what is wrong with designs, and the remedy"),
                                  [this] { return check_files(check_); });
    sub->add_option("FILE", check_.files, tr("a .repeat file, or - for standard input; several are summed up"))
        ->required();
    sub->add_flag("--json", check_.json, tr("the findings as JSON"))->disable_flag_override();
  }

  void add_mend() {
    auto* const sub = add_command("mend", tr("change the fewest stitches so that no float is too long"),
                                  [this] { return mend_file(mend_); });
    add_input(sub, mend_.file);
    add_output(sub, mend_.output, ".repeat");
    add_protect(sub, mend_.protect);
    add_places(sub, "--catch", tr("floats to catch by hand instead: all, ROWS or ROWS:COLUMNS; may be given again"),
               mend_.caught);
    add_places(sub, "--accept", tr("floats to accept as they are, named in the same way; may be given again"),
               mend_.accepted);
    sub->add_flag("--no-changes", mend_.no_changes, tr("change no stitch: leave all other floats as they are"))
        ->disable_flag_override();
    sub->add_flag("--symmetry", mend_.symmetry,
                  tr("of equally good mends the one that keeps the drawing's symmetry best"))
        ->disable_flag_override();
    sub->add_flag("--whole-symmetry", mend_.whole_symmetry,
                  tr("keep the drawing's symmetry whole, by more stitches than the fewest where it must be"))
        ->disable_flag_override();
    sub->add_flag("--json", mend_.json, tr("what was changed as JSON"))->disable_flag_override();
  }

  void add_trace() {
    auto* const sub = add_command("trace", tr("make the knittable repeat that is nearest to a picture"),
                                  [this] { return trace_picture(trace_); });
    add_trace_options(sub, trace_);
  }

  void add_yoke() {
    auto* const sub = add_command("yoke", tr("work out a yoke in pieces and tiers, or begin one"),
                                  [this] { return plan_yoke_file(yoke_); });
    add_yoke_options(sub, yoke_);
  }

  void add_rows() {
    auto* const sub = add_command("rows", tr("list the rows to knit"), [this] { return list_rows(rows_); });
    add_input(sub, rows_.file);
    sub->add_flag("--json", rows_.json, tr("the rows as JSON"))->disable_flag_override();
  }

  void add_steps() {
    auto* const sub = add_command("steps", tr("list the steps at the machine"), [this] { return list_steps(steps_); });
    add_input(sub, steps_.file);
    sub->add_flag("--json", steps_.json, tr("the steps as JSON"))->disable_flag_override();
    sub->add_option("-o,--output", steps_.output,
                    tr("a file to write; its extension chooses the form: .pdf, .html, .txt"))
        ->type_name(tr("OUT"));
  }

  void add_prove() {
    auto* const sub = add_command("prove", tr("knit the card and the steps on a model of the machine, and compare"),
                                  [this] { return prove_file(prove_); });
    sub->add_option("FILE", prove_.file, tr("a .repeat or .yoke file, or - for standard input"))->required();
    sub->add_option("--card", prove_.card,
                    tr("a punch list of the card to knit from, in place of the one that is drawn"))
        ->type_name(tr("LIST"));
    sub->add_flag("--json", prove_.json, tr("what was compared as JSON"))->disable_flag_override();
    sub->add_option("--picture", prove_.picture, tr("a .png to draw the fabric to, with what went wrong as it looks"))
        ->type_name(tr("OUT"));
    add_choice(sub, "--side", tr("the side of the fabric that the picture shows"), prove_.side,
               {{"knit", Face::knit}, {"purl", Face::purl}});
  }

  void add_explain() {
    auto* const sub = add_command("explain", tr("say what went wrong, from what you see on the fabric"),
                                  [this] { return explain_fabric(explain_); });
    add_input(sub, explain_.file);
    sub->add_option("--seen", explain_.seen,
                    tr("a text picture of what you see: '.' main, '#' contrast, 'o' dropped, '?' not looked at"))
        ->type_name(tr("PICTURE"))
        ->required();
    add_choice(sub, "--side", tr("the side of the fabric that the picture shows"), explain_.side,
               {{"knit", Face::knit}, {"purl", Face::purl}});
    sub->add_option("--picture", explain_.picture,
                    tr("a .png to draw the likeliest explanation's fabric to, that side of it"))
        ->type_name(tr("OUT"));
    sub->add_flag("--json", explain_.json, tr("the explanations as JSON"))->disable_flag_override();
  }

  void add_card() {
    auto* const sub =
        add_command("card", tr("write the full-size card template"), [this] { return export_card(card_); });
    add_input(sub, card_.where.file);
    add_output(sub, card_.where.output, ".pdf, .svg, .png, .txt");
    add_value(sub, "--card", "N", tr("1 and up"), tr("only that card of several; a punch list has all of them"),
              [this](const std::string& word) { return read_number(word, card_.only_card) && *card_.only_card >= 1; });
  }

  void add_everything() {
    auto* const sub = add_command("export", tr("write every sheet of a design into a folder"),
                                  [this] { return export_everything(everything_); });
    add_input(sub, everything_.where.file);
    sub->add_option("-o,--output", everything_.where.output, tr("the folder; made where it is not there"))
        ->required()
        ->type_name(tr("FOLDER"));
    sub->add_flag("--stay-back", everything_.chart.stay_back_where_fewer,
                  tr("name the needles that stay back in rows where they are fewer"))
        ->disable_flag_override();
    sub->add_flag("--replace", everything_.replace, tr("replace files of the same names"))->disable_flag_override();
  }

  void add_needles() {
    auto* const sub = add_command("needles", tr("write the needle chart"), [this] { return export_needles(needles_); });
    add_input(sub, needles_.where.file);
    add_output(sub, needles_.where.output, ".pdf, .html, .csv, .txt");
    sub->add_flag("--stay-back", needles_.chart.stay_back_where_fewer,
                  tr("name the needles that stay back in rows where they are fewer"))
        ->disable_flag_override();
  }

  void add_fabric() {
    auto* const sub =
        add_command("fabric", tr("draw the cloth over the whole piece"), [this] { return export_fabric(fabric_); });
    add_input(sub, fabric_.where.file);
    add_output(sub, fabric_.where.output, ".png");
    add_choice(sub, "--side", tr("the side of the cloth to see"), fabric_.side,
               {{"knit", Face::knit}, {"purl", Face::purl}});
  }

  void add_leaflet() {
    auto* const sub = add_command("leaflet", tr("write a leaflet for somebody who owns another machine"),
                                  [this] { return export_leaflet(leaflet_); });
    add_input(sub, leaflet_.where.file);
    add_output(sub, leaflet_.where.output, ".pdf");
    add_value(sub, "--paper", "a4|letter", said("{} or {}", "a4", "letter"),
              tr("the paper to print on; none: the design's"), [this](const std::string& word) {
                leaflet_.paper = word == "letter" ? Paper::letter : Paper::a4;
                return word == "letter" || word == "a4";
              });
  }

  void add_pattern() {
    auto* const sub = add_command("chart", tr("draw the pattern chart: the drawing with grid, numbers and legend"),
                                  [this] { return export_pattern(pattern_); });
    add_input(sub, pattern_.file);
    add_output(sub, pattern_.output, ".png, .svg");
  }

  void add_thumbnail() {
    auto* const sub = add_command("thumbnail", tr("draw the picture that a file manager shows"),
                                  [this] { return draw_thumbnail(thumbnail_); });
    sub->group(""); // for programs; manuals and --help name it, the list of commands does not
    sub->add_option("FILE", thumbnail_.file, tr("a .repeat or .yoke file, or - for a .repeat on standard input"))
        ->required();
    sub->add_option("-o,--output", thumbnail_.output, tr("the file to write: a PNG, whatever its name"))
        ->required()
        ->type_name(tr("OUT"));
    add_count(sub, "--size", tr("pixels of the longer side; without it, 256"), 2048, thumbnail_.size);
  }

  void add_import() {
    auto* const sub = add_command("import", tr("make a design of a two-colour picture, a stitch for each pixel"),
                                  [this] { return import_picture(import_); });
    sub->add_option("PICTURE", import_.picture, tr("a PNG, PBM or XBM file, or - for standard input"))->required();
    add_output(sub, import_.output, ".repeat");
    add_choice(sub, "--contrast", tr("the colour that becomes contrast; without it, darker"), import_.contrast,
               {{"darker", ContrastIs::darker}, {"lighter", ContrastIs::lighter}});
    sub->add_option("--machine", import_.machine,
                    tr("the machine that it is for: built in, or a .machine file; without it, bulky-card-24"))
        ->type_name(tr("MACHINE"));
  }

  void add_machine() {
    auto* const sub = add_command("machine", tr("list the machines, or write one as a .machine file of your own"),
                                  [this] { return machine(machine_); });
    sub->add_option("MACHINE", machine_.profile, tr("a built-in machine, or a .machine file; none: all are listed"));
    sub->add_option("-o,--output", machine_.output, tr("the .machine file to write; none: standard output"))
        ->type_name(tr("OUT"));
    add_millimetres(sub, "--over-holes", tr("measured over 23 gaps between holes (11 on a 12-stitch card)"),
                    machine_.over_23_holes);
    add_millimetres(sub, "--over-rows", tr("measured over 50 rows"), machine_.over_50_rows);
    add_millimetres(sub, "--edge-to-hole", tr("measured from the side edge to the first hole's centre"),
                    machine_.edge_to_first_hole);
    add_millimetres(sub, "--sheet-width", tr("measured from edge to edge"), machine_.sheet_width);
    add_millimetres(sub, "--hole", tr("measured across a hole"), machine_.hole_diameter);
    add_value(sub, "--swatch", "1-8", said("{} to {}", 1, 8), tr("the picture that the knitted swatch looks like"),
              [this](const std::string& word) {
                return read_number(word, machine_.swatch_looks_like) && *machine_.swatch_looks_like >= 1 &&
                       *machine_.swatch_looks_like <= 8;
              });
  }

  void add_sheets() {
    auto* const measure =
        add_command("measure", tr("write the page 'measure your blank'"), [this] { return measuring_sheet(measure_); });
    add_sheet_options(measure, measure_, ".pdf, .svg, .png");
    auto* const swatch = add_command("swatch", tr("write the orientation swatch and its card"),
                                     [this] { return orientation_swatch(swatch_); });
    add_sheet_options(swatch, swatch_, ".pdf");
  }

  static void add_sheet_options(CLI::App* sub, SheetWishes& wishes, const std::string& kinds) {
    sub->add_option("MACHINE", wishes.profile, tr("a built-in machine, or a .machine file"))->required();
    add_output(sub, wishes.output, kinds);
    add_choice(sub, "--paper", tr("the paper to print on"), wishes.paper,
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
  std::string language_; // a code; empty: as the system has it
  CheckWishes check_;
  MendingWishes mend_;
  TraceCommandWishes trace_;
  RowsWishes rows_;
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
  ThumbnailWishes thumbnail_;
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
    const punchwright::Language* const asked = punchwright::cli::language_asked_for(count, arguments);
    punchwright::choose_language(asked != nullptr ? *asked : punchwright::language_of_environment(),
                                 punchwright::folder_of_translations());
    punchwright::cli::CommandLine line;
    return line.run(count, arguments);
  } catch (const std::exception& error) {
    return punchwright::cli::refuse(
        punchwright::Error{{}, 0, 0, error.what(), punchwright::tr("try a smaller design")});
  }
}
