// The commands without arguments.
#include "design/step_words.hpp"
#include "editor/applying.hpp"
#include "editor/exporting.hpp"
#include "editor/picture_views.hpp"
#include "editor/tab_commands.hpp"
#include "editor/yarn_pairs.hpp"
#include "editor/yoke_findings.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright::editor {

namespace {

void invert(App& app) {
  const Document& design = app.work.design;
  app.work.history.begin_drag(noted("exchange main and contrast"));
  int row = 0;
  bool skipped = false;
  const std::vector<Band> bands = design.bands;
  for (const Band& band : bands) {
    if (band.contrast) {
      edit(app, Invert{Area{Cell{0, row}, design.grid.width(), band.rows}});
    } else {
      skipped = true;
    }
    row += band.rows;
  }
  app.work.history.end_drag();
  if (skipped) {
    say(app, tr("Bands of one yarn stay as they are"));
  }
}

void undo_or_redo(App& app, bool back) {
  const History& history = app.work.history;
  const bool possible = back ? history.can_undo() : history.can_redo();
  if (!possible) {
    say(app, back ? tr("Nothing to undo") : tr("Nothing to redo"));
    return;
  }
  const std::string name = words_of(history.steps()[back ? history.done() - 1 : history.done()]);
  back ? step_back(app) : step_on(app);
  say(app, back ? said("Undone: {}", name) : said("Done again: {}", name));
}

void split_band(App& app) {
  const Document& design = app.work.design;
  const int row = app.view.cursor.row;
  std::vector<Band> bands = design.bands;
  const std::size_t index = band_index_at(design, row);
  int first = 0;
  for (std::size_t below = 0; below < index; ++below) {
    first += bands[below].rows;
  }
  if (row == first) {
    say(app, said("A band begins at row {} already", row + 1), Tone::trouble);
    return;
  }
  Band upper = bands[index];
  upper.rows = bands[index].rows - (row - first);
  upper.plain_below.reset();
  bands[index].rows = row - first;
  bands.insert(bands.begin() + static_cast<std::ptrdiff_t>(index) + 1, upper);
  if (edit(app, ChangeBands{bands})) {
    app.view.tab = Tab::yarns;
  }
}

void join_band(App& app) {
  const Document& design = app.work.design;
  const std::size_t index = band_index_at(design, app.view.cursor.row);
  if (index == 0) {
    say(app, tr("The lowest band has none below it"), Tone::trouble);
    return;
  }
  std::vector<Band> bands = design.bands;
  bands[index - 1].rows += bands[index].rows;
  bands.erase(bands.begin() + static_cast<std::ptrdiff_t>(index));
  edit(app, ChangeBands{bands});
}

void step_yoke_finding(App& app, int by) {
  const int count = static_cast<int>(app.caches.yoke.findings.size());
  if (count == 0) {
    return say(app, tr("Nothing found: the yoke can be knitted as it is"), Tone::good);
  }
  const int present = app.view.yoke.finding;
  const int next = present < 0 ? (by > 0 ? 0 : count - 1) : (present + by + count) % count;
  app.view.yoke = view_at_finding(app, next);
  say(app, app.caches.yoke.findings[static_cast<std::size_t>(next)].words);
}

void step_finding(App& app, int by) {
  if (app.yoke.shown) {
    return step_yoke_finding(app, by);
  }
  const std::vector<Listed>& listed = app.caches.listed;
  const int count = static_cast<int>(listed.size());
  if (count == 0) {
    say(app, tr("Nothing found: the repeat can be knitted as it is"), Tone::good);
    return;
  }
  const auto present = std::ranges::find_if(listed, [&](const Listed& entry) { return entry.holds(app.view.finding); });
  const int place = static_cast<int>(present - listed.begin());
  const int next = present == listed.end() ? (by > 0 ? 0 : count - 1) : (place + by + count) % count;
  apply_view(app, ChooseFinding{listed[static_cast<std::size_t>(next)].finding()});
}

void change_to_needles(App& app) {
  const Listed* const listed = listed_for(app.caches, app.view.finding);
  if (listed == nullptr || listed->on_piece < 0) {
    say(app, tr("Choose a float that the piece shows as well (N)"), Tone::plain);
    return;
  }
  apply_view(app, ChooseFinding{app.view.finding == listed->on_piece ? listed->finding() : listed->on_piece});
}

void change_float_marks(App& app) {
  app.view.float_marks = !app.view.float_marks;
  say(app,
      app.view.float_marks
          ? tr("Floats that are too long are marked in the drawing")
          : tr("Floats that are too long aren't marked in the drawing; the findings go on counting them"),
      Tone::plain);
}

void swap_yarns(App& app) {
  const std::vector<Band> bands =
      with_yarns_swapped(app.work.design, band_index_at(app.work.design, app.view.cursor.row));
  if (bands.empty()) {
    return say(app, tr("This band has one yarn"), Tone::trouble);
  }
  edit(app, ChangeBands{bands});
}

void try_pairs(App& app) {
  const Document& design = app.work.design;
  const Band& band = design.bands[band_index_at(design, app.view.cursor.row)];
  if (!band.contrast) {
    return say(app, tr("This band has one yarn: give it a contrast first"), Tone::trouble);
  }
  PairsDialog dialog;
  dialog.main = band.main;
  dialog.contrast = *band.contrast;
  app.session.dialog = dialog;
}

// Commands that change the drawing and nothing else, as edits.
std::optional<Edit> edit_of(const App& app, Command command) {
  const Grid& grid = app.work.design.grid;
  const Cell cursor = app.view.cursor;
  switch (command) {
  case Command::clear: return Fill{Area{Cell{}, grid.width(), grid.height()}, false};
  case Command::shift_left: return Shift{-1, 0};
  case Command::shift_right: return Shift{1, 0};
  case Command::shift_up: return Shift{0, 1};
  case Command::shift_down: return Shift{0, -1};
  case Command::mirror_sideways: return MirrorLeftRight{};
  case Command::mirror_upwards: return MirrorUpsideDown{};
  case Command::insert_row: return InsertRows{cursor.row + 1, 1};
  case Command::insert_column: return InsertColumns{cursor.column + 1, 1};
  default: return std::nullopt;
  }
}

// Commands that work on the marked area or on what hangs over the drawing where there is one.
bool is_for_area(const App& app, Command command) {
  switch (command) {
  case Command::copy:
  case Command::cut:
  case Command::paste:
  case Command::mark_all:
  case Command::turn:
  case Command::fill_marked: return true;
  case Command::mirror_sideways:
  case Command::mirror_upwards:
  case Command::invert:
  case Command::clear:
  case Command::shift_left:
  case Command::shift_right:
  case Command::shift_up:
  case Command::shift_down: return app.view.marked || app.session.floating;
  default: return false;
  }
}

void run_file_command(App& app, Command command) {
  switch (command) {
  case Command::new_yoke: return request(app, Pending{Pending::What::new_yoke, {}, {}});
  case Command::export_yoke: return open_path_dialog(app, Purpose::yoke_sheets);
  case Command::new_design: return request(app, Pending{Pending::What::new_design, {}, {}});
  case Command::open: return request(app, Pending{Pending::What::choose_file, {}, {}});
  case Command::save: return app.yoke.shown ? save_yoke(app, {}) : save(app, {});
  case Command::save_as: return open_path_dialog(app, app.yoke.shown ? Purpose::save_yoke : Purpose::save);
  case Command::import_picture: return open_path_dialog(app, Purpose::picture);
  case Command::export_card: return open_path_dialog(app, Purpose::card);
  case Command::export_chart: return open_path_dialog(app, Purpose::chart);
  case Command::export_steps: return open_path_dialog(app, Purpose::steps);
  case Command::export_leaflet: return open_path_dialog(app, Purpose::leaflet);
  case Command::export_everything: return open_path_dialog(app, Purpose::everything);
  case Command::preview: return show_preview(app);
  case Command::export_pattern: return open_path_dialog(app, Purpose::pattern);
  case Command::export_fabric: return open_path_dialog(app, Purpose::fabric);
  case Command::export_measure_page: return open_path_dialog(app, Purpose::measure_page);
  case Command::export_swatch: return open_path_dialog(app, Purpose::swatch);
  case Command::start_page: app.session.dialog = start_dialog(app); return;
  case Command::settings: app.session.dialog = SettingsDialog{}; return;
  case Command::quit: return request(app, Pending{Pending::What::quit, {}, {}});
  default: return;
  }
}

void choose_tool(App& app, Tool tool) {
  app.session.stroke.reset();
  app.view.tool = tool;
}

void change_text(App& app, int percent) {
  app.settings.text_percent = text_percent_after(app.settings.text_percent, percent);
  say(app, said("Text at {} %", app.settings.text_percent));
}

void run_view_command(App& app, Command command) {
  View& view = app.view;
  // By keys the cursor is what one looks at: it stays where it is, and comes into sight where it was out of it.
  const auto zoom = [&](float factor) {
    if (view.piece_large) {
      return apply_view(app, ZoomPiece{factor, view.piece_box.middle()});
    }
    show(app, view.cursor);
    apply_view(app, ZoomAt{factor, box_of(layout_of(app, view.canvas), view.cursor).middle()});
    show(app, view.cursor);
  };
  switch (command) {
  case Command::show_yoke:
    app.yoke.shown = !app.yoke.shown && app.yoke.opened;
    view.focus_drawing = !app.yoke.shown;
    return;
  case Command::yoke_schematic: view.yoke.shows = YokeShows::schematic; return;
  case Command::yoke_flat: view.yoke.shows = YokeShows::flat; return;
  case Command::yoke_worn: view.yoke.shows = YokeShows::worn; return;
  case Command::yoke_bed: view.yoke.shows = YokeShows::bed; return;
  case Command::yoke_machine:
    view.settings_open = true;
    view.wanted_field = WantedField::yoke_machine;
    return;
  case Command::pen_opposite: view.pen = Pen::opposite; return;
  case Command::pen_contrast: view.pen = Pen::contrast; return;
  case Command::pen_main: view.pen = Pen::main; return;
  case Command::tool_pen: return choose_tool(app, Tool::pen);
  case Command::tool_line: return choose_tool(app, Tool::line);
  case Command::tool_rectangle: return choose_tool(app, Tool::rectangle);
  case Command::tool_ellipse: return choose_tool(app, Tool::ellipse);
  case Command::tool_flood: return choose_tool(app, Tool::flood);
  case Command::tool_mark: return choose_tool(app, Tool::mark);
  case Command::filled:
    view.interior = view.interior == Interior::filled ? Interior::outline : Interior::filled;
    return;
  case Command::zoom_in: return zoom(1.25F);
  case Command::zoom_out: return zoom(0.8F);
  case Command::zoom_fit:
    view.zoom.reset();
    view.pan = {};
    return;
  case Command::next_finding: return step_finding(app, 1);
  case Command::previous_finding: return step_finding(app, -1);
  case Command::finding_on_needles: return change_to_needles(app);
  case Command::float_marks: return change_float_marks(app);
  case Command::other_face:
    view.face = view.face == Face::knit || view.afar ? Face::purl : Face::knit; // from afar the knit side is seen
    view.afar = false;
    view.findings_in_front = false;
    return;
  case Command::from_afar:
    view.afar = !view.afar;
    view.findings_in_front = false;
    return;
  case Command::piece_large: return exchange_piece(app);
  case Command::sight_as_is: return see_as(app, ColourSight::as_is);
  case Command::sight_lightness: return see_as(app, ColourSight::lightness);
  case Command::sight_protan: return see_as(app, ColourSight::protan);
  case Command::sight_deutan: return see_as(app, ColourSight::deutan);
  case Command::sight_tritan: return see_as(app, ColourSight::tritan);
  case Command::piece_fit:
    view.piece_zoom.reset();
    view.piece_middle = {};
    view.findings_in_front = false;
    return;
  case Command::show_settings: view.settings_open = !view.settings_open; return;
  case Command::show_findings: view.findings_open = !view.findings_open; return;
  case Command::larger_text: return change_text(app, 10);
  case Command::smaller_text: return change_text(app, -10);
  case Command::focus_drawing:
    give_up(app);
    view.focus_drawing = true;
    return;
  case Command::next_part: view.part_step = 1; return;
  case Command::previous_part: view.part_step = -1; return;
  case Command::open_menus: view.open_menus = true; return;
  case Command::keys: app.session.dialog = KeysDialog{}; return;
  case Command::help: app.session.dialog = help_dialog(); return;
  case Command::all_commands: app.session.dialog = CommandsDialog{}; return;
  default: return;
  }
}

} // namespace

void run_command(App& app, Command command) {
  if (app.yoke.shown && !works_with_yoke(command)) {
    return say(app, tr("Back to the drawing first (F11)"));
  }
  const Menu menu = info_of(command).menu;
  if (menu == Menu::view || menu == Menu::help || (command >= Command::tool_pen && command <= Command::pen_main)) {
    return run_view_command(app, command);
  }
  if (command == Command::toggle_stitch) {
    return apply_drawing(app, PressHere{}); // may end a shape that is being drawn
  }
  close_step(app);
  app.session.message.clear();
  if (menu == Menu::knitting) {
    return run_knitting_command(app, command);
  }
  if (menu == Menu::file) {
    return run_file_command(app, command);
  }
  if (menu == Menu::symmetry) {
    return moves_axis(command) ? run_tool_command(app, command) : run_tab_command(app, command);
  }
  if (is_for_area(app, command)) {
    return run_area_command(app, command);
  }
  if (const auto change = edit_of(app, command)) {
    if (edit(app, *change) && command == Command::insert_row) {
      ++app.view.cursor.row; // onto the new row, so that several are inserted one above the other
    }
    return;
  }
  switch (command) {
  case Command::undo: return app.yoke.shown ? undo_or_redo_yoke(app, true) : undo_or_redo(app, true);
  case Command::redo: return app.yoke.shown ? undo_or_redo_yoke(app, false) : undo_or_redo(app, false);
  case Command::steps_done: app.session.dialog = StepsDialog{}; return;
  case Command::mend: return show_mend(app);
  case Command::other_mend: return show_other_mend(app);
  case Command::mend_symmetry: return turn_mend_symmetry(app);
  case Command::catch_float: return catch_floats_by_hand(app, FloatsOf::chosen);
  case Command::catch_row: return catch_floats_by_hand(app, FloatsOf::row);
  case Command::catch_all: return catch_floats_by_hand(app, FloatsOf::drawing);
  case Command::accept_float: return accept_long_floats(app, FloatsOf::chosen);
  case Command::accept_row: return accept_long_floats(app, FloatsOf::row);
  case Command::accept_all: return accept_long_floats(app, FloatsOf::drawing);
  case Command::no_marks: return take_marks_away(app);
  case Command::protect_marked: return protect_marked_stitches(app);
  case Command::set_down: return app.session.mend ? take_mend(app) : set_down(app);
  case Command::invert: return invert(app);
  case Command::split_band: return split_band(app);
  case Command::join_band: return join_band(app);
  case Command::keep_motif: return ask_for_motif(app);
  case Command::lay_out: app.session.dialog = layout_dialog(app.work.design, app.work.profile, Layout::brick); return;
  case Command::duplicate_row:
  case Command::delete_row:
  case Command::duplicate_column:
  case Command::delete_column:
  case Command::move_row_up:
  case Command::move_row_down:
  case Command::move_column_left:
  case Command::move_column_right:
  case Command::move_with_yarns:
  case Command::yarns_here: return run_row_command(app, command);
  case Command::swap_yarns: return swap_yarns(app);
  case Command::letter_height:
  case Command::motifs_see_through: return run_tool_command(app, command);
  case Command::type_lettering:
  case Command::place_lettering:
  case Command::widen_repeat:
  case Command::find_motif:
  case Command::add_yarn: return run_tab_command(app, command);
  case Command::try_pairs: return try_pairs(app);
  case Command::resize:
    app.session.dialog = SizeDialog{
        app.work.design.grid.width(), app.work.design.grid.height(), AcrossAnchor::left, UpAnchor::bottom, {}};
    return;
  default: return;
  }
}

} // namespace punchwright::editor
