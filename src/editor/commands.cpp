// The list of commands, and how keys find theirs.
#include "editor/commands.hpp"

#include "drawing/word_search.hpp"

#include <algorithm>
#include <array>

namespace punchwright::editor {

namespace {

constexpr std::array commands = {
    CommandInfo{Command::new_design, Menu::file, "new", "New design…", "Ctrl+N", "Begin a new repeat"},
    CommandInfo{Command::new_yoke, Menu::file, "new-yoke", "New yoke…", "Shift+F11",
                "A round yoke in pieces, from body measurements and the repeats of its tiers"},
    CommandInfo{Command::open, Menu::file, "open", "Open…", "Ctrl+O", "Open a .repeat or .yoke file"},
    CommandInfo{Command::save, Menu::file, "save", "Save", "Ctrl+S", ""},
    CommandInfo{Command::save_as, Menu::file, "save-as", "Save as…", "Ctrl+Shift+S", ""},
    CommandInfo{Command::import_picture, Menu::file, "import-picture", "Import a picture…", "Ctrl+Shift+O",
                "A PNG, PBM or XBM of two colours, a stitch for each pixel"},
    CommandInfo{Command::export_card, Menu::file, "export-card", "Export card…", "Ctrl+E",
                "The card template at full size: PDF, SVG, PNG, or a punch list"},
    CommandInfo{Command::export_chart, Menu::file, "export-chart", "Export needle chart…", "Ctrl+Shift+E",
                "The needles of every row: PDF, HTML, CSV or text"},
    CommandInfo{Command::export_steps, Menu::file, "export-steps", "Export steps…", "Shift+F7",
                "What to do at the machine, step by step: PDF, HTML or text"},
    CommandInfo{Command::export_leaflet, Menu::file, "export-leaflet", "Export leaflet…", "Ctrl+Shift+L",
                "To hand to somebody who owns another machine: the cloth, chart, steps by card and by hand"},
    CommandInfo{Command::export_fabric, Menu::file, "export-fabric", "Export picture of the piece…", "Shift+F4", ""},
    CommandInfo{Command::export_pattern, Menu::file, "export-pattern", "Export pattern chart…", "Ctrl+Shift+G",
                "The drawing with grid, numbers and legend, for a leaflet: PNG or SVG"},
    CommandInfo{Command::export_measure_page, Menu::file, "export-measure-page", "Export page for measuring a blank…",
                "Ctrl+Shift+B", ""},
    CommandInfo{Command::export_swatch, Menu::file, "export-swatch", "Export orientation swatch…", "Ctrl+Shift+W", ""},
    CommandInfo{Command::export_everything, Menu::file, "export-everything", "Export everything…", "Ctrl+Shift+P",
                "All sheets into one folder, with names that sort"},
    CommandInfo{Command::export_yoke, Menu::file, "export-yoke", "Export the yoke's sheets…", "Ctrl+Shift+Y",
                "Steps of every piece and tier, strips for the decreases, the schematic, the table of sizes"},
    CommandInfo{Command::preview, Menu::file, "preview", "Print preview…", "Ctrl+P",
                "The pages as they will print, with paper and correction beside them"},
    CommandInfo{Command::start_page, Menu::file, "start-page", "Start page…", "Ctrl+Shift+N",
                "Machines to begin for, the demos, recent files"},
    CommandInfo{Command::settings, Menu::file, "settings", "Settings…", "Ctrl+,",
                "Light or dark, size of text, centimetres or inches"},
    CommandInfo{Command::quit, Menu::file, "quit", "Quit", "Ctrl+Q", ""},
    CommandInfo{Command::undo, Menu::edit, "undo", "Undo", "Ctrl+Z", ""},
    CommandInfo{Command::redo, Menu::edit, "redo", "Redo", "Ctrl+Y", ""},
    CommandInfo{Command::steps_done, Menu::edit, "steps-done", "What was done…", "Ctrl+H",
                "All steps, to go back to any"},
    CommandInfo{Command::copy, Menu::edit, "copy", "Copy", "Ctrl+C",
                "The marked area, or all of the drawing, as lines of . and #"},
    CommandInfo{Command::cut, Menu::edit, "cut", "Cut", "Ctrl+X", "The marked area becomes main"},
    CommandInfo{Command::paste, Menu::edit, "paste", "Paste", "Ctrl+V", "Lines of . and #, to be placed and set down"},
    CommandInfo{Command::mark_all, Menu::edit, "mark-all", "Mark all", "Ctrl+A", ""},
    CommandInfo{Command::toggle_stitch, Menu::edit, "toggle-stitch", "Turn the stitch at the cursor", "Space",
                "Main becomes contrast, contrast becomes main"},
    CommandInfo{Command::invert, Menu::edit, "invert", "Exchange main and contrast", "Ctrl+I",
                "Every stitch in bands of two yarns"},
    CommandInfo{Command::clear, Menu::edit, "clear", "Clear the drawing", "Ctrl+Delete", "Every stitch becomes main"},
    CommandInfo{Command::tool_pen, Menu::drawing, "tool-pen", "Pen", "P", "Draws freehand"},
    CommandInfo{Command::tool_line, Menu::drawing, "tool-line", "Straight line", "L", ""},
    CommandInfo{Command::tool_rectangle, Menu::drawing, "tool-rectangle", "Rectangle", "R", ""},
    CommandInfo{Command::tool_ellipse, Menu::drawing, "tool-ellipse", "Ellipse", "E", ""},
    CommandInfo{Command::tool_flood, Menu::drawing, "tool-flood", "Fill", "F",
                "All stitches of one yarn that hang together, round the edges too"},
    CommandInfo{Command::tool_mark, Menu::drawing, "tool-mark", "Mark an area", "M",
                "Drag to mark, or shift and arrows; drag inside the marked area to move it"},
    CommandInfo{Command::filled, Menu::drawing, "filled", "Shapes filled", "Shift+F", "Rectangles and ellipses"},
    CommandInfo{Command::pen_opposite, Menu::drawing, "pen-opposite", "Pen: opposite of the first stitch", "1",
                "Draws the opposite of the stitch where the stroke begins"},
    CommandInfo{Command::pen_contrast, Menu::drawing, "pen-contrast", "Pen: contrast", "2", "Draws contrast"},
    CommandInfo{Command::pen_main, Menu::drawing, "pen-main", "Pen: main", "3", "Erases to main"},
    CommandInfo{Command::symmetry_none, Menu::symmetry, "symmetry-none", "Symmetry: none", "Shift+O",
                "Strokes stay as they are drawn"},
    CommandInfo{Command::symmetry_glides, Menu::symmetry, "symmetry-glides", "Symmetry: glides", "Shift+G",
                "Every stroke is mirrored top and bottom, and moved on by half the repeat"},
    CommandInfo{Command::symmetry_upright, Menu::symmetry, "symmetry-upright", "Symmetry: upright mirrors", "Shift+H",
                "Every stroke is mirrored left and right"},
    CommandInfo{Command::symmetry_level, Menu::symmetry, "symmetry-level", "Symmetry: level mirror", "Shift+V",
                "Every stroke is mirrored top and bottom"},
    CommandInfo{Command::symmetry_half_turns, Menu::symmetry, "symmetry-half-turns", "Symmetry: half turns", "Shift+T",
                "Every stroke is turned upside down"},
    CommandInfo{Command::symmetry_by_turns, Menu::symmetry, "symmetry-by-turns", "Symmetry: mirrors and half turns",
                "Shift+J", "Upright mirrors, glides and half turns by turns"},
    CommandInfo{Command::symmetry_both, Menu::symmetry, "symmetry-both", "Symmetry: upright and level mirrors",
                "Shift+K", "Every stroke is mirrored left and right, and top and bottom"},
    CommandInfo{
        Command::make_symmetric, Menu::symmetry, "make-symmetric", "Make the drawing so", "Shift+S",
        "The nearest drawing that has the chosen symmetry: fewest stitches changed, of the marked area or of all"},
    CommandInfo{Command::type_lettering, Menu::drawing, "type-lettering", "Lettering…", "I",
                "Words to knit, typed among the tools"},
    CommandInfo{Command::place_lettering, Menu::drawing, "place-lettering", "Put the lettering over the drawing",
                "Shift+I", "It hangs there until it is set down"},
    CommandInfo{Command::widen_repeat, Menu::drawing, "widen-repeat", "Make the repeat as wide as the lettering",
                "Shift+W", "The drawing several times side by side, or new stitches of main at its right; one step"},
    CommandInfo{Command::find_motif, Menu::drawing, "find-motif", "Find a motif…", "D",
                "In the collection and in your own folder, among the tools"},
    CommandInfo{Command::shift_left, Menu::drawing, "shift-left", "Shift left", "Ctrl+Left",
                "Stitches that leave at one edge come in at the other"},
    CommandInfo{Command::shift_right, Menu::drawing, "shift-right", "Shift right", "Ctrl+Right", ""},
    CommandInfo{Command::shift_up, Menu::drawing, "shift-up", "Shift up", "Ctrl+Up", ""},
    CommandInfo{Command::shift_down, Menu::drawing, "shift-down", "Shift down", "Ctrl+Down", ""},
    CommandInfo{Command::mirror_sideways, Menu::drawing, "mirror-sideways", "Mirror left and right", "H", ""},
    CommandInfo{Command::mirror_upwards, Menu::drawing, "mirror-upwards", "Mirror top and bottom", "V",
                "Bands are turned over with their rows"},
    CommandInfo{Command::turn, Menu::drawing, "turn", "Turn the marked area", "Q", "By a quarter, against the clock"},
    CommandInfo{Command::fill_marked, Menu::drawing, "fill-marked", "Repeat to fill the marked area", "Shift+Q",
                "With what was copied"},
    CommandInfo{Command::keep_motif, Menu::drawing, "keep-motif", "Keep as a motif…", "Ctrl+G",
                "The marked area, or all of the drawing, in your own folder of motifs"},
    CommandInfo{Command::lay_out, Menu::drawing, "lay-out", "Lay out: brick, half drop, mirrored…", "Ctrl+B",
                "Expands the drawing into the straight repeat that a card needs"},
    CommandInfo{Command::mend, Menu::drawing, "mend", "Mend the floats", "Ctrl+M",
                "Shows the fewest stitches to change so that no float is too long; what is marked stays"},
    CommandInfo{Command::other_mend, Menu::drawing, "other-mend", "Another mend of the cursor's row", "Ctrl+Shift+M",
                "Just as few stitches, at other places"},
    CommandInfo{Command::mend_symmetry, Menu::drawing, "mend-symmetry", "Mends keep the symmetry", "Shift+M",
                "Of equally good mends the one that keeps the drawing's mirrors, glides and turns best"},
    CommandInfo{Command::catch_float, Menu::drawing, "catch-float", "Catch the float by hand", "Ctrl+Shift+C",
                "Leaves the drawing: the float is lifted onto needles while it is knitted"},
    CommandInfo{Command::catch_row, Menu::drawing, "catch-row", "Catch the row's floats by hand", "C", ""},
    CommandInfo{Command::catch_all, Menu::drawing, "catch-all", "Catch all floats by hand", "Shift+C",
                "All that are too long, staggered from row to row"},
    CommandInfo{Command::accept_float, Menu::drawing, "accept-float", "Accept the float", "Ctrl+Shift+A",
                "Leaves it as long as it is; it stays in the findings as a note"},
    CommandInfo{Command::accept_row, Menu::drawing, "accept-row", "Accept the row's floats", "A", ""},
    CommandInfo{Command::accept_all, Menu::drawing, "accept-all", "Accept all floats", "Shift+A", ""},
    CommandInfo{Command::no_marks, Menu::drawing, "no-marks", "Take catches and acceptances away", "T",
                "Of the marked area, or of the cursor's row"},
    CommandInfo{Command::protect_marked, Menu::drawing, "protect-marked", "Protect the marked stitches", "Shift+P",
                "Mending never changes them; done once more it may again"},
    CommandInfo{Command::set_down, Menu::drawing, "set-down", "Set down", "Return",
                "What hangs over the drawing; takes the mend that is shown"},
    CommandInfo{Command::insert_row, Menu::rows, "insert-row", "Insert row above the cursor", "Insert",
                "The new row joins the band below it"},
    CommandInfo{Command::duplicate_row, Menu::rows, "duplicate-row", "Duplicate the cursor's row", "Ctrl+D", ""},
    CommandInfo{Command::delete_row, Menu::rows, "delete-row", "Delete the cursor's row", "Delete", ""},
    CommandInfo{Command::insert_column, Menu::rows, "insert-column", "Insert column right of the cursor",
                "Shift+Insert", ""},
    CommandInfo{Command::duplicate_column, Menu::rows, "duplicate-column", "Duplicate the cursor's column",
                "Ctrl+Shift+D", ""},
    CommandInfo{Command::delete_column, Menu::rows, "delete-column", "Delete the cursor's column", "Shift+Delete", ""},
    CommandInfo{Command::move_row_up, Menu::rows, "move-row-up", "Move the row up", "Ctrl+Shift+Up",
                "The cursor's row, or the marked rows; or drag them by their numbers"},
    CommandInfo{Command::move_row_down, Menu::rows, "move-row-down", "Move the row down", "Ctrl+Shift+Down", ""},
    CommandInfo{Command::move_column_left, Menu::rows, "move-column-left", "Move the column left", "Ctrl+Shift+Left",
                "The cursor's column, or the marked ones; or drag them by their numbers"},
    CommandInfo{Command::move_column_right, Menu::rows, "move-column-right", "Move the column right",
                "Ctrl+Shift+Right", ""},
    CommandInfo{Command::move_with_yarns, Menu::rows, "move-with-yarns", "Moved rows take their yarns along", "Shift+Y",
                "Otherwise they are knitted in the yarns of the band where they land"},
    CommandInfo{Command::resize, Menu::rows, "resize", "Change the size…", "Ctrl+R",
                "With a choice of where the drawing stays"},
    CommandInfo{Command::split_band, Menu::rows, "split-band", "Begin a new band at the cursor's row", "B",
                "The band is cut below the cursor's row"},
    CommandInfo{Command::join_band, Menu::rows, "join-band", "Join the band with the one below", "Shift+B",
                "The cursor's band takes the yarns of the one below it"},
    CommandInfo{Command::yarns_here, Menu::rows, "yarns-here", "Change the yarns here…", "U",
                "Of the cursor's band, or of its row alone; or click on the strip of yarns"},
    CommandInfo{Command::swap_yarns, Menu::rows, "swap-yarns", "Exchange the band's yarns", "W",
                "Main becomes contrast in the cursor's band, the stitches stay"},
    CommandInfo{Command::try_pairs, Menu::rows, "try-pairs", "Try other pairs of yarns…", "Y",
                "Small pictures of the cursor's band in other yarns"},
    CommandInfo{Command::add_yarn, Menu::rows, "add-yarn", "Add a yarn", "Shift+U",
                "One more for the bands to choose from"},
    CommandInfo{Command::zoom_in, Menu::view, "zoom-in", "Larger", "+", ""},
    CommandInfo{Command::zoom_out, Menu::view, "zoom-out", "Smaller", "-", ""},
    CommandInfo{Command::zoom_fit, Menu::view, "zoom-fit", "Fit the repeat", "0", ""},
    CommandInfo{Command::next_finding, Menu::view, "next-finding", "Next finding", "N", ""},
    CommandInfo{Command::previous_finding, Menu::view, "previous-finding", "Previous finding", "Shift+N", ""},
    CommandInfo{Command::finding_on_needles, Menu::view, "finding-on-needles", "The float on the needles, and back",
                "O", "Where a float of the repeat comes on the bed, by its needles"},
    CommandInfo{Command::float_marks, Menu::view, "float-marks", "Marks of long floats", "G",
                "Put them aside while you draft; the findings go on counting"},
    CommandInfo{Command::other_face, Menu::view, "other-face", "Other side of the cloth", "K",
                "Knit side or purl side of the piece"},
    CommandInfo{Command::from_afar, Menu::view, "from-afar", "The band from afar", "J",
                "Small and repeated, as seen across a room"},
    CommandInfo{Command::piece_large, Menu::view, "piece-large", "Piece in place of the drawing", "F4", ""},
    CommandInfo{Command::piece_fit, Menu::view, "piece-fit", "All of the piece", "Ctrl+0", ""},
    CommandInfo{Command::sight_lightness, Menu::view, "sight-lightness", "Lightness only", "Ctrl+L",
                "Do the yarns differ in lightness? Once more for the colours as they are"},
    CommandInfo{Command::sight_protan, Menu::view, "sight-protan", "Seen without the red receptor", "6",
                "Colours as they look with protanopia"},
    CommandInfo{Command::sight_deutan, Menu::view, "sight-deutan", "Seen without the green receptor", "7",
                "Colours as they look with deuteranopia"},
    CommandInfo{Command::sight_tritan, Menu::view, "sight-tritan", "Seen without the blue receptor", "8",
                "Colours as they look with tritanopia"},
    CommandInfo{Command::sight_as_is, Menu::view, "sight-as-is", "Colours as they are", "9", ""},
    CommandInfo{Command::at_the_bench, Menu::knitting, "at-the-bench", "At the bench", "F5",
                "One step at a time, in type for the room with the machine; once more to leave it"},
    CommandInfo{Command::bench_forward, Menu::knitting, "bench-forward", "Done: the next step", "Page Down",
                "At the bench: space, arrows, page keys, Return, or a foot pedal that sends one of them"},
    CommandInfo{Command::bench_back, Menu::knitting, "bench-back", "Back to the step before", "Page Up", ""},
    CommandInfo{Command::say_step, Menu::knitting, "say-step", "Say the step", "S", "Once more, aloud"},
    CommandInfo{Command::step_list, Menu::knitting, "step-list", "Steps at the machine…", "F7",
                "The whole list; where the knitting stands is marked"},
    CommandInfo{Command::play, Menu::knitting, "play", "Play the knitting…", "F8",
                "Pass by pass: needles, feeders, card and the growing fabric"},
    CommandInfo{Command::what_went_wrong, Menu::knitting, "what-went-wrong", "What went wrong?…", "F9",
                "Mark what you see on the fabric; what may have been done differently, and the way back"},
    CommandInfo{Command::show_yoke, Menu::view, "show-yoke", "The yoke, or back to the drawing", "F11",
                "The yoke that is open, in pieces and tiers; once more for the drawing"},
    CommandInfo{Command::yoke_schematic, Menu::view, "yoke-schematic", "Yoke: schematic", "Ctrl+1",
                "The pieces with their measures, which can be dragged"},
    CommandInfo{Command::yoke_flat, Menu::view, "yoke-flat", "Yoke: laid flat", "Ctrl+2",
                "All pieces and tiers side by side, in the yarns' colours"},
    CommandInfo{Command::yoke_worn, Menu::view, "yoke-worn", "Yoke: as worn", "Ctrl+3",
                "From above, the pattern narrowing to the neck"},
    CommandInfo{Command::yoke_bed, Menu::view, "yoke-bed", "Yoke: on the bed", "Ctrl+4",
                "One piece on its needles, with seams and decreases"},
    CommandInfo{Command::show_settings, Menu::view, "show-settings", "Settings panel", "F2", ""},
    CommandInfo{Command::show_findings, Menu::view, "show-findings", "Piece and findings", "F3", ""},
    CommandInfo{Command::larger_text, Menu::view, "larger-text", "Larger text", "Ctrl++", ""},
    CommandInfo{Command::smaller_text, Menu::view, "smaller-text", "Smaller text", "Ctrl+-", ""},
    CommandInfo{Command::focus_drawing, Menu::view, "focus-drawing", "Back to the drawing", "Escape", ""},
    CommandInfo{Command::next_part, Menu::view, "next-part", "Next part of the window", "F6",
                "The keys go to the settings, the findings, and back to the drawing"},
    CommandInfo{Command::previous_part, Menu::view, "previous-part", "Part of the window before", "Shift+F6", ""},
    CommandInfo{Command::open_menus, Menu::view, "open-menus", "Menus", "F10", ""},
    CommandInfo{Command::all_commands, Menu::help, "all-commands", "All commands…", "Ctrl+K", "Found by typing a word"},
    CommandInfo{Command::help, Menu::help, "help", "The guide", "F1", "Job by job, with a search"},
    CommandInfo{Command::keys, Menu::help, "keys", "Keys and mouse", "Shift+F1", ""},
};

bool ends_with_key(std::string_view keys, std::string_view key) {
  // The last part behind a '+'; the key may be '+' itself.
  const std::size_t plus = keys.size() < 2 ? std::string_view::npos : keys.rfind('+', keys.size() - 2);
  const std::string_view last = plus == std::string_view::npos ? keys : keys.substr(plus + 1);
  return std::ranges::equal(last, key, [](char one, char another) {
    const auto small = [](char letter) {
      return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter + 32) : letter;
    };
    return small(one) == small(another);
  });
}

bool is_sign(std::string_view key) {
  return key.size() == 1 && (key[0] < 'a' || key[0] > 'z');
}

} // namespace

std::span<const CommandInfo> all_commands() {
  return commands;
}

const CommandInfo& info_of(Command command) {
  return *std::ranges::find(commands, command, &CommandInfo::command);
}

std::string_view name_of(Menu menu) {
  switch (menu) {
  case Menu::file: return "File";
  case Menu::edit: return "Edit";
  case Menu::drawing: return "Drawing";
  case Menu::symmetry: return "Symmetry while drawing";
  case Menu::rows: return "Rows and columns";
  case Menu::knitting: return "Knitting";
  case Menu::view: return "View";
  case Menu::help: break;
  }
  return "Help";
}

std::vector<const CommandInfo*> commands_found(std::string_view words) {
  std::vector<const CommandInfo*> found;
  for (const CommandInfo& info : commands) {
    if (has_words(std::string(info.name).append(" ").append(info.tip).append(" ").append(name_of(info.menu)), words)) {
      found.push_back(&info);
    }
  }
  std::ranges::stable_partition(found, [words](const CommandInfo* info) { return has_words(info->name, words); });
  return found;
}

bool works_with_yoke(Command command) {
  switch (command) {
  case Command::new_design:
  case Command::new_yoke:
  case Command::open:
  case Command::save:
  case Command::save_as:
  case Command::export_yoke:
  case Command::start_page:
  case Command::settings:
  case Command::quit:
  case Command::undo:
  case Command::redo:
  case Command::steps_done:
  case Command::show_yoke:
  case Command::yoke_schematic:
  case Command::yoke_flat:
  case Command::yoke_worn:
  case Command::yoke_bed:
  case Command::next_finding:
  case Command::previous_finding:
  case Command::show_settings:
  case Command::show_findings:
  case Command::larger_text:
  case Command::smaller_text:
  case Command::focus_drawing:
  case Command::next_part:
  case Command::previous_part:
  case Command::open_menus: return true;
  default: return info_of(command).menu == Menu::help;
  }
}

std::optional<Command> command_for(const KeyEvent& key) {
  if (!key.down || key.with.alt) {
    return std::nullopt;
  }
  std::string name = key.name;
  if (name == "=" || name == "keypad +") {
    name = "+"; // the same key on many layouts, with shift
  } else if (name == "keypad -") {
    name = "-";
  } else if (name == "x" && !key.with.control) {
    name = "space"; // both turn the stitch
  }
  if (name == "z" && key.with.control && key.with.shift) {
    return Command::redo;
  }
  for (const CommandInfo& info : commands) {
    const std::string_view keys = info.keys;
    if (keys.empty() || !ends_with_key(keys, name)) {
      continue;
    }
    const bool control = keys.starts_with("Ctrl+");
    const bool shift = keys.find("Shift+") != std::string_view::npos;
    if (control == key.with.control && (is_sign(name) || shift == key.with.shift)) {
      return info.command;
    }
  }
  return std::nullopt;
}

bool moves_cursor(const KeyEvent& key) {
  constexpr std::array arrows = {"left", "right", "up", "down"};
  constexpr std::array jumps = {"home", "end", "page up", "page down"};
  const auto is = [&key](const char* name) { return key.name == name; };
  return std::ranges::any_of(jumps, is) || (std::ranges::any_of(arrows, is) && !key.with.control && !key.with.alt);
}

bool belongs_to_text(const KeyEvent& key) {
  const auto command = command_for(key);
  if (!command) {
    return true;
  }
  const Menu menu = info_of(*command).menu;
  const bool function_key = key.name.size() > 1 && key.name[0] == 'f';
  const bool size = *command == Command::larger_text || *command == Command::smaller_text;
  return menu != Menu::file && !function_key && !size;
}

} // namespace punchwright::editor
