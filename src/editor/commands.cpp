// Commands in words, and how keys and words find theirs.
#include "editor/commands.hpp"

#include "drawing/word_search.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace punchwright::editor {

namespace {

// Those that have a word of their own.
constexpr std::array key_words = {noted("Ctrl"),      noted("Shift"),  noted("Space"),  noted("Return"),
                                  noted("Delete"),    noted("Insert"), noted("Escape"), noted("Page Up"),
                                  noted("Page Down"), noted("Up"),     noted("Down"),   noted("Left"),
                                  noted("Right")};

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

const char* name_of(Menu menu) {
  switch (menu) {
  case Menu::file: return noted("File");
  case Menu::edit: return noted("Edit");
  case Menu::drawing: return noted("Drawing");
  case Menu::symmetry: return noted("Symmetry while drawing");
  case Menu::rows: return noted("Rows and columns");
  case Menu::knitting: return noted("Knitting");
  case Menu::view: return noted("View");
  case Menu::help: break;
  }
  return noted("Help");
}

const char* words_of(Menu menu) {
  return tr(name_of(menu));
}

std::string shown_keys(std::string_view keys) {
  std::string shown;
  while (!keys.empty()) {
    const std::size_t end = std::min(keys.find('+', 1), keys.size()); // the key itself may be '+'
    const std::string_view part = keys.substr(0, end);
    const auto* const found =
        std::ranges::find(key_words, part, [](const char* word) { return std::string_view(word); });
    shown += found == key_words.end() ? part : tr(*found);
    keys.remove_prefix(end);
    if (!keys.empty()) {
      shown += '+';
      keys.remove_prefix(1);
    }
  }
  return shown;
}

std::vector<const CommandInfo*> commands_found(std::string_view words) {
  std::vector<const CommandInfo*> found;
  for (const CommandInfo& info : all_commands()) {
    // By its English name, too, which manuals and other people's screens may show.
    if (has_words(fmt::format("{} {} {} {} {}", tr(info.name), tr(info.tip), words_of(info.menu), info.name,
                              other_words_for(info.command)),
                  words)) {
      found.push_back(&info);
    }
  }
  // Names that begin with what was typed, then names that have it, then tips, then menus and other words.
  std::ranges::stable_sort(found, {}, [words](const CommandInfo* info) {
    const std::string_view name = tr(info->name);
    return begins_with(name, words) ? 0 : has_words(name, words) ? 1 : has_words(tr(info->tip), words) ? 2 : 3;
  });
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
  case Command::yoke_machine:
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
  for (const CommandInfo& info : all_commands()) {
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
  // What only looks at things, or opens a list. What changes the drawing at its cursor does not while one types.
  const bool looks =
      menu == Menu::view || menu == Menu::knitting || menu == Menu::help || *command == Command::steps_done;
  return menu != Menu::file && !function_key && !(key.with.control && looks);
}

} // namespace punchwright::editor
