// The commands of the tabs of tools and yarns: the symmetry, the lettering, the motifs, one more yarn.
#include "drawing/axes.hpp"
#include "editor/applying.hpp"
#include "editor/picture_views.hpp"
#include "editor/tab_commands.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace punchwright::editor {

namespace {

struct GroupCommand {
  FriezeGroup group;
  Command command;
};

constexpr std::array group_commands = {GroupCommand{FriezeGroup::p1, Command::symmetry_none},
                                       GroupCommand{FriezeGroup::p11g, Command::symmetry_glides},
                                       GroupCommand{FriezeGroup::p1m1, Command::symmetry_upright},
                                       GroupCommand{FriezeGroup::p11m, Command::symmetry_level},
                                       GroupCommand{FriezeGroup::p2, Command::symmetry_half_turns},
                                       GroupCommand{FriezeGroup::p2mg, Command::symmetry_by_turns},
                                       GroupCommand{FriezeGroup::p2mm, Command::symmetry_both}};

// The axes are those that the drawing has, else in the middle at first.
void choose_symmetry(App& app, FriezeGroup group) {
  const Grid& grid = app.work.design.grid;
  const Frieze frieze = frieze_for(grid, group);
  if (const Failure failure = unusable_frieze(frieze, grid.width(), grid.height())) {
    return say(app, failure->text(), Tone::trouble);
  }
  app.view.chosen_symmetry = group == FriezeGroup::p1 ? std::nullopt : std::optional(frieze);
  if (group == FriezeGroup::p1) {
    say(app, tr("Strokes stay as they are drawn"));
  } else if (frieze != centred_frieze(group, grid.width(), grid.height())) {
    say(app, said("Every stroke is completed about the axes that the drawing has: {}", description_of(group)));
  } else {
    say(app, said("Every stroke is completed: {}", description_of(group)));
  }
}

void place_lettering(App& app) {
  const auto drawn = typed_lettering(app);
  if (!drawn) {
    return say(app, drawn.error().text(), Tone::trouble);
  }
  hang_over(app, Floating{drawn->drawing, app.view.cursor, noted("lettering"), {}, true});
}

void widen_repeat(App& app) {
  if (const auto wider = widening_for_lettering(app)) {
    widen(app, *wider);
  }
}

void go_to_field(App& app, WantedField field) {
  app.view.settings_open = true;
  app.view.wanted_field = field;
  apply(app, ChooseTab{Tab::tools});
}

void add_yarn(App& app) {
  struct Offer {
    const char* name;
    Colour colour;
  };
  constexpr std::array offers = {Offer{"Rust", {0xa8, 0x3c, 0x32}},    Offer{"Kelp", {0x3f, 0x7a, 0x6b}},
                                 Offer{"Straw", {0xd9, 0xa4, 0x41}},   Offer{"Haze", {0x6c, 0x8f, 0xb0}},
                                 Offer{"Heather", {0x7a, 0x4e, 0x6d}}, Offer{"Moss", {0x55, 0x5b, 0x3c}}};
  const Document& design = app.work.design;
  const auto free = [&design](char key) {
    return std::ranges::find(design.yarns, key, &Yarn::key) == design.yarns.end();
  };
  char key = 'A';
  while (key <= 'Z' && !free(key)) {
    ++key;
  }
  if (key > 'Z') {
    return say(app, tr("All letters from A to Z name a yarn already"), Tone::trouble);
  }
  Document settings = settings_of(design);
  const Offer& next = offers[(design.yarns.size() + offers.size() - 2) % offers.size()];
  settings.yarns.push_back({key, next.name, next.colour});
  if (edit(app, ChangeSettings{std::move(settings)})) {
    app.view.tab = Tab::yarns;
  }
}

} // namespace

Command command_for(FriezeGroup group) {
  return std::ranges::find(group_commands, group, &GroupCommand::group)->command;
}

std::optional<FriezeGroup> group_of(Command command) {
  const auto* const found = std::ranges::find(group_commands, command, &GroupCommand::command);
  return found == group_commands.end() ? std::nullopt : std::optional(found->group);
}

FriezeGroup chosen_group(const App& app) {
  return app.view.symmetry ? app.view.symmetry->group : FriezeGroup::p1;
}

bool is_chosen(const App& app, Command command) {
  const View& view = app.view;
  switch (command) {
  case Command::pen_opposite: return view.pen == Pen::opposite;
  case Command::pen_contrast: return view.pen == Pen::contrast;
  case Command::pen_main: return view.pen == Pen::main;
  case Command::tool_pen: return view.tool == Tool::pen;
  case Command::tool_line: return view.tool == Tool::line;
  case Command::tool_rectangle: return view.tool == Tool::rectangle;
  case Command::tool_ellipse: return view.tool == Tool::ellipse;
  case Command::tool_flood: return view.tool == Tool::flood;
  case Command::tool_mark: return view.tool == Tool::mark;
  case Command::filled: return view.interior == Interior::filled;
  case Command::mend_symmetry: return view.mend_symmetry;
  case Command::move_with_yarns: return view.moved_yarns == MovedYarns::their_own;
  case Command::show_settings: return view.settings_open;
  case Command::show_findings: return view.findings_open;
  case Command::float_marks: return view.float_marks;
  case Command::from_afar: return view.afar;
  case Command::piece_large: return view.piece_large;
  case Command::sight_as_is: return view.sight == ColourSight::as_is;
  case Command::sight_lightness: return view.sight == ColourSight::lightness;
  case Command::sight_protan: return view.sight == ColourSight::protan;
  case Command::sight_deutan: return view.sight == ColourSight::deutan;
  case Command::sight_tritan: return view.sight == ColourSight::tritan;
  case Command::motifs_see_through: return app.settings.motifs_see_through;
  case Command::at_the_bench: return app.bench.open;
  default: return group_of(command) == chosen_group(app);
  }
}

Result<Lettering> typed_lettering(const App& app) {
  return letters(app.session.lettering, app.session.letter_height, app.view.face);
}

std::optional<Widening> widening_for(const App& app, const Lettering& drawn) {
  return punchwright::widening_for(app.work.design.grid.width(), drawn.drawing.width(),
                                   card_width_of(app.work.profile));
}

std::optional<Widening> widening_for_lettering(const App& app) {
  const auto drawn = typed_lettering(app);
  return drawn ? widening_for(app, *drawn) : std::nullopt;
}

void run_tab_command(App& app, Command command) {
  if (const auto group = group_of(command)) {
    return choose_symmetry(app, *group);
  }
  switch (command) {
  case Command::make_symmetric: return make_it_so(app, chosen_group(app));
  case Command::type_lettering: return go_to_field(app, WantedField::lettering);
  case Command::place_lettering: return place_lettering(app);
  case Command::widen_repeat: return widen_repeat(app);
  case Command::find_motif: return go_to_field(app, WantedField::motif_search);
  case Command::add_yarn: return add_yarn(app);
  default: return;
  }
}

} // namespace punchwright::editor
