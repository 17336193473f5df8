// Other words that people type for a command in the list of commands; they are looked through and never shown.
#include "editor/commands.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>

namespace punchwright::editor {

namespace {

struct OtherWords {
  Command command;
  const char* words;
};

// Several ways to say it, each in the translation's own words.
constexpr std::array other_words = {
    OtherWords{Command::new_design, noted("create, blank, empty file")},
    OtherWords{Command::open, noted("load, file, browse")},
    OtherWords{Command::save_as, noted("copy, duplicate, rename, elsewhere")},
    OtherWords{Command::import_picture, noted("image, photo, scan, trace")},
    OtherWords{Command::export_card, noted("punchcard, template, print")},
    OtherWords{Command::export_chart, noted("print, list of needles")},
    OtherWords{Command::export_steps, noted("instructions, print")},
    OtherWords{Command::export_leaflet, noted("instructions, share, print")},
    OtherWords{Command::export_fabric, noted("image, photo, share")},
    OtherWords{Command::export_pattern, noted("image, picture, share, print")},
    OtherWords{Command::export_everything, noted("files, share, all sheets")},
    OtherWords{Command::preview, noted("paper, printer, pages")},
    OtherWords{Command::start_page, noted("welcome, examples, begin")},
    OtherWords{Command::settings, noted("preferences, options, language, dark mode, units")},
    OtherWords{Command::quit, noted("exit, close, leave, end")},
    OtherWords{Command::undo, noted("revert, back, take back")},
    OtherWords{Command::redo, noted("repeat, again")},
    OtherWords{Command::steps_done, noted("history, undo list")},
    OtherWords{Command::cut, noted("remove, delete, erase")},
    OtherWords{Command::mark_all, noted("select all, selection")},
    OtherWords{Command::toggle_stitch, noted("flip, swap colour, draw by keys")},
    OtherWords{Command::invert, noted("swap, negative, reverse colours")},
    OtherWords{Command::clear, noted("erase, delete, wipe, empty")},
    OtherWords{Command::tool_pen, noted("pencil, brush, paint")},
    OtherWords{Command::tool_rectangle, noted("square, box")},
    OtherWords{Command::tool_ellipse, noted("circle, oval, round")},
    OtherWords{Command::tool_flood, noted("paint bucket, flood, colour in, pour")},
    OtherWords{Command::tool_mark, noted("select, selection, frame, lasso")},
    OtherWords{Command::filled, noted("solid, outline")},
    OtherWords{Command::pen_main, noted("eraser, rubber, delete, remove")},
    OtherWords{Command::symmetry_upright, noted("reflect, flip")},
    OtherWords{Command::symmetry_level, noted("reflect, flip")},
    OtherWords{Command::symmetry_half_turns, noted("rotate, rotation")},
    OtherWords{Command::symmetry_both, noted("reflect, flip, kaleidoscope")},
    OtherWords{Command::make_symmetric, noted("symmetrical, mirror, tidy")},
    OtherWords{Command::type_lettering, noted("text, words, letters, alphabet, write, name, initials")},
    OtherWords{Command::find_motif, noted("stamp, symbol, picture, library, search")},
    OtherWords{Command::shift_left, noted("move, offset, scroll")},
    OtherWords{Command::shift_right, noted("move, offset, scroll")},
    OtherWords{Command::shift_up, noted("move, offset, scroll")},
    OtherWords{Command::shift_down, noted("move, offset, scroll")},
    OtherWords{Command::mirror_sideways, noted("flip, reflect, horizontal")},
    OtherWords{Command::mirror_upwards, noted("flip, reflect, upside down, vertical")},
    OtherWords{Command::turn, noted("rotate, rotation")},
    OtherWords{Command::fill_marked, noted("tile, paste many times")},
    OtherWords{Command::keep_motif, noted("save, stamp, library")},
    OtherWords{Command::lay_out, noted("tile, offset, repeat, turned")},
    OtherWords{Command::mend, noted("fix, repair, correct, long floats")},
    OtherWords{Command::no_marks, noted("remove, delete, undo catches")},
    OtherWords{Command::protect_marked, noted("lock, keep")},
    OtherWords{Command::set_down, noted("place, apply, accept, drop")},
    OtherWords{Command::insert_row, noted("add, new row")},
    OtherWords{Command::duplicate_row, noted("copy, double")},
    OtherWords{Command::delete_row, noted("remove, erase")},
    OtherWords{Command::insert_column, noted("add, new column, wider")},
    OtherWords{Command::duplicate_column, noted("copy, double")},
    OtherWords{Command::delete_column, noted("remove, erase, narrower")},
    OtherWords{Command::resize, noted("width, height, stitches, wider, taller, crop")},
    OtherWords{Command::split_band, noted("stripe, change of colour")},
    OtherWords{Command::join_band, noted("merge, stripe")},
    OtherWords{Command::yarns_here, noted("colour, color, stripe")},
    OtherWords{Command::swap_yarns, noted("swap, colours, reverse")},
    OtherWords{Command::try_pairs, noted("colours, colors, contrast")},
    OtherWords{Command::add_yarn, noted("colour, color, new")},
    OtherWords{Command::zoom_in, noted("magnify, enlarge, nearer")},
    OtherWords{Command::zoom_out, noted("shrink, reduce, further")},
    OtherWords{Command::zoom_fit, noted("zoom, whole drawing, all of it")},
    OtherWords{Command::next_finding, noted("error, warning, problem, fault")},
    OtherWords{Command::previous_finding, noted("error, warning, problem, fault")},
    OtherWords{Command::float_marks, noted("hide warnings, show")},
    OtherWords{Command::other_face, noted("back, reverse, wrong side, flip")},
    OtherWords{Command::from_afar, noted("distance, far away, small")},
    OtherWords{Command::piece_large, noted("fabric, cloth, knitted, full size")},
    OtherWords{Command::piece_fit, noted("zoom, fit, whole")},
    OtherWords{Command::sight_lightness, noted("greyscale, grayscale, black and white, value, contrast")},
    OtherWords{Command::sight_protan, noted("colour blind, color blind, colour-blindness, red green")},
    OtherWords{Command::sight_deutan, noted("colour blind, color blind, colour-blindness, red green")},
    OtherWords{Command::sight_tritan, noted("colour blind, color blind, colour-blindness, yellow")},
    OtherWords{Command::sight_as_is, noted("colour blind, color blind, normal")},
    OtherWords{Command::at_the_bench, noted("knit along, row counter, large type")},
    OtherWords{Command::say_step, noted("read aloud, speak, voice")},
    OtherWords{Command::step_list, noted("instructions, rows to knit")},
    OtherWords{Command::play, noted("animation, film, simulate")},
    OtherWords{Command::what_went_wrong, noted("mistake, error, unravel, help")},
    OtherWords{Command::show_settings, noted("side bar, hide, left")},
    OtherWords{Command::show_findings, noted("errors, warnings, problems, hide, right")},
    OtherWords{Command::larger_text, noted("text size, font size, zoom, bigger letters")},
    OtherWords{Command::smaller_text, noted("text size, font size, zoom, smaller letters")},
    OtherWords{Command::next_part, noted("focus, panel, switch")},
    OtherWords{Command::all_commands, noted("search, find, palette")},
    OtherWords{Command::help, noted("manual, how to, instructions")},
    OtherWords{Command::keys, noted("shortcuts, keyboard, hotkeys")},
};

} // namespace

const char* other_words_for(Command command) {
  const auto* const found = std::ranges::find(other_words, command, &OtherWords::command);
  return found == other_words.end() ? "" : tr(found->words);
}

} // namespace punchwright::editor
