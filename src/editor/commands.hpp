// Everything that can be asked for without an argument: one list with name, key and tip, from which the menus, the
// toolbar, the keys and the page of keys are made, so that they can't disagree.
#pragma once

#include "editor/input_queue.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace punchwright::editor {

enum class Command {
  new_design,
  new_yoke,
  open,
  save,
  save_as,
  import_picture,
  export_card,
  export_chart,
  export_steps,
  export_leaflet,
  export_fabric,
  export_pattern,
  export_measure_page,
  export_swatch,
  export_everything,
  export_yoke,
  preview,
  start_page,
  settings,
  quit,
  undo,
  redo,
  steps_done,
  copy,
  cut,
  paste,
  mark_all,
  toggle_stitch,
  tool_pen,
  tool_line,
  tool_rectangle,
  tool_ellipse,
  tool_flood,
  tool_mark,
  filled,
  pen_opposite,
  pen_contrast,
  pen_main,
  symmetry_none,
  symmetry_glides,
  symmetry_upright,
  symmetry_level,
  symmetry_half_turns,
  symmetry_by_turns,
  symmetry_both,
  axis_left,
  axis_right,
  axis_up,
  axis_down,
  make_symmetric,
  type_lettering,
  place_lettering,
  letter_height,
  widen_repeat,
  find_motif,
  motifs_see_through,
  invert,
  clear,
  shift_left,
  shift_right,
  shift_up,
  shift_down,
  mirror_sideways,
  mirror_upwards,
  turn,
  fill_marked,
  keep_motif,
  lay_out,
  mend,
  other_mend,
  mend_symmetry,
  catch_float,
  catch_row,
  catch_all,
  accept_float,
  accept_row,
  accept_all,
  no_marks,
  protect_marked,
  set_down,
  insert_row,
  duplicate_row,
  delete_row,
  insert_column,
  duplicate_column,
  delete_column,
  move_row_up,
  move_row_down,
  move_column_left,
  move_column_right,
  move_with_yarns,
  resize,
  split_band,
  join_band,
  yarns_here,
  swap_yarns,
  try_pairs,
  add_yarn,
  zoom_in,
  zoom_out,
  zoom_fit,
  next_finding,
  previous_finding,
  finding_on_needles,
  float_marks,
  other_face,
  from_afar,
  piece_large,
  piece_fit,
  sight_as_is,
  sight_lightness,
  sight_protan,
  sight_deutan,
  sight_tritan,
  at_the_bench,
  bench_forward,
  bench_back,
  say_step,
  step_list,
  play,
  what_went_wrong,
  show_yoke,
  yoke_schematic,
  yoke_flat,
  yoke_worn,
  yoke_bed,
  yoke_machine,
  show_settings,
  show_findings,
  larger_text,
  smaller_text,
  focus_drawing,
  all_commands,
  next_part,
  previous_part,
  open_menus,
  help,
  keys
};

// `symmetry` opens from the menu of the drawing.
enum class Menu { file, edit, drawing, symmetry, rows, knitting, view, help };

struct CommandInfo {
  Command command = Command::undo;
  Menu menu = Menu::edit;
  const char* id = "";   // stable, for tests and settings
  const char* name = ""; // on the menu: tr(name)
  const char* keys = ""; // "Ctrl+Shift+S", shown by shown_keys(keys); every command has one
  const char* tip = "";  // where the pointer rests: tr(tip); empty: the name says it
};

[[nodiscard]] std::span<const CommandInfo> all_commands();
[[nodiscard]] const CommandInfo& info_of(Command command);
// In English, which names places; and in the reader's language.
[[nodiscard]] const char* name_of(Menu menu);
[[nodiscard]] const char* words_of(Menu menu);
// "Ctrl+Shift+S" as the reader's keyboard has it: "Strg+Umschalt+S".
[[nodiscard]] std::string shown_keys(std::string_view keys);

// What else a person may call it, in the reader's language: searched, never shown. Empty: the name and the tip say it.
[[nodiscard]] const char* other_words_for(Command command);

// Those in whose name, tip, menu or other words each word begins a word, small or large letters alike, in the reader's
// language or by the English name; those whose name has all of the words come first, then those whose tip has. All of
// them for no word.
[[nodiscard]] std::vector<const CommandInfo*> commands_found(std::string_view words);

// Whether it means something while a yoke is shown in place of the drawing.
[[nodiscard]] bool works_with_yoke(Command command);

// The command of that key press, if there is one. Shift only counts with letters, arrows and named keys: which signs
// need it differs between layouts.
[[nodiscard]] std::optional<Command> command_for(const KeyEvent& key);

// Arrows, Home, End and the page keys are the drawing's own: they move its cursor, or draw with shift.
[[nodiscard]] bool moves_cursor(const KeyEvent& key);

// True where a field that is being typed in keeps the key: all but the commands for files, the function keys and the
// size of text. So nothing reaches the drawing while one types.
[[nodiscard]] bool belongs_to_text(const KeyEvent& key);

} // namespace punchwright::editor
