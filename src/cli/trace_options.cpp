// The options of 'trace': which part of the picture, and how light becomes stitches.
#include "cli/option_forms.hpp"

#include <algorithm>
#include <cmath>

namespace punchwright::cli {

void add_trace_options(CLI::App* sub, TraceCommandWishes& wishes) {
  sub->add_option("PICTURE", wishes.picture, tr("a PNG, JPEG, BMP, PBM, PGM, PPM or XBM file"))->required();
  add_output(sub, wishes.output, ".repeat");
  add_count(sub, "--width", tr("stitches of the repeat, 1 to 200; without it 24"), widest_repeat, wishes.width);
  add_count(sub, "--rows", tr("rows of the repeat, 1 to 2000; without it 60"), tallest_repeat, wishes.rows);
  sub->add_option("--machine", wishes.machine, tr("a built-in profile or a .machine file"))->type_name(tr("MACHINE"));
  add_value(sub, "--gauge", tr("STITCHES,ROWS"), tr("two numbers from 1 to 200, such as 16,20"),
            tr("over 10 cm; without it what is usual on the bed"), [&wishes](const std::string& word) {
              std::array<double, 2> numbers{};
              const bool good = read_numbers(word, numbers) && std::ranges::all_of(numbers, [](double number) {
                                  return number >= 1 && number <= 200;
                                });
              wishes.gauge = Gauge{numbers[0], numbers[1]};
              return good;
            });
  add_value(sub, "--float", tr("STITCHES"), said("{} to {}", 1, 200), tr("the longest float; without it the machine's"),
            [&wishes](const std::string& word) {
              return read_number(word, wishes.longest_float) && *wishes.longest_float >= 1 &&
                     *wishes.longest_float <= 200;
            });
  auto* const part = sub->add_option_function<std::string>(
                            "--part",
                            [&wishes](const std::string& word) {
                              std::array<double, 3> numbers{};
                              if (!read_numbers(word, numbers) || !(numbers[2] >= 1) || !std::isfinite(numbers[0]) ||
                                  !std::isfinite(numbers[1]) || !std::isfinite(numbers[2])) {
                                throw CLI::ValidationError(not_allowed(word, "--part", tr("pixels such as 20,0,640")));
                              }
                              wishes.part = numbers;
                            },
                            tr("the part of the picture, in pixels; without it as much as there is room for"))
                         ->type_name(tr("LEFT,TOP,WIDTH"));
  sub->add_flag("--best-place", wishes.best_place, tr("look for the part that tiles best"))
      ->disable_flag_override()
      ->excludes(part);
  add_value(sub, "--split", tr("PERCENT"), said("{} to {}", 1, 99),
            tr("darkness where contrast begins; without it by Otsu's method"),
            [&wishes](const std::string& word) { return read_percent(word, 1, 99, wishes.how.split); });
  add_value(sub, "--emphasis", tr("PERCENT"), tr("-100 (areas) to 100 (edges)"), tr("of edges, or of areas below 0"),
            [&wishes](const std::string& word) { return read_percent(word, -100, 100, wishes.how.emphasis); });
  add_choice<Shading>(sub, "--shading", tr("how shades become stitches"), wishes.how.shading,
                      {{"split", Shading::split}, {"diffusion", Shading::diffusion}, {"dither", Shading::dither}});
  add_value(sub, "--ignore", tr("COLOUR"), tr("a colour such as #ffffff, or #ffffff,40 with how near to it (0 to 441)"),
            tr("pixels near that colour become main"), [&wishes](const std::string& word) {
              const auto colour = colour_from_hex(word.substr(0, 7));
              std::optional<int> within = IgnoredColour{}.within;
              const bool good = colour && (word.size() == 7 || (word[7] == ',' && read_number(word.substr(8), within) &&
                                                                *within >= 0 && *within <= 441));
              if (good) {
                wishes.ignored = IgnoredColour{*colour, *within};
              }
              return good;
            });
  sub->add_flag("--light-is-contrast", wishes.how.light_is_contrast, tr("light becomes contrast, dark main"))
      ->disable_flag_override();
  sub->add_flag("--mirror", wishes.how.mirrored, tr("left and right exchanged"))->disable_flag_override();
  add_protect(sub, wishes.protect);
  sub->add_flag("--json", wishes.json, tr("what was made as JSON"))->disable_flag_override();
}

} // namespace punchwright::cli
