// Usage lines and help from what the commands declare, so that no option can be forgotten.
#include "cli/help.hpp"

#include "cli/columns.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <string_view>
#include <vector>

namespace punchwright::cli {
namespace {

constexpr std::size_t line_width = 79; // columns of a terminal, one left free

constexpr const char* exit_codes = noted("Exit codes: 0 done and no fault, 1 done and faults found, 2 cannot be done.");

// Arguments have these names, in which they are also declared.
[[maybe_unused]] constexpr std::array argument_names = {noted("FILE"), noted("PICTURE"), noted("MACHINE")};

using Commands = std::vector<const CLI::App*>;

// Without those that only programs call.
Commands listed_commands(const CLI::App& app) {
  return app.get_subcommands([](const CLI::App* command) { return !command->get_group().empty(); });
}

using Options = std::vector<const CLI::Option*>;

bool is_about_talk(const CLI::Option& option) {
  return option.check_lname("quiet") || option.check_lname("verbose");
}

// Every command has these; they stand in no usage line.
bool is_about_itself(const CLI::Option& option) {
  return option.check_lname("help") || option.check_lname("version") || option.check_lname("language") ||
         is_about_talk(option);
}

bool takes_value(const CLI::Option& option) {
  return !option.get_type_name().empty() && option.get_items_expected_max() > 0;
}

bool takes_several(const CLI::Option& option) {
  return option.get_positional() && option.get_items_expected_max() > 1;
}

// Positional arguments first, then options, help and version last.
Options options_in_order(const CLI::App& command) {
  Options options = command.get_options([](const CLI::Option*) { return true; });
  std::ranges::stable_sort(options, {}, [](const CLI::Option* option) {
    return is_about_talk(*option) ? 2 : is_about_itself(*option) ? 3 : option->get_positional() ? 0 : 1;
  });
  return options;
}

// "-o, --output OUT"; "FILE".
std::string shown(const CLI::Option& option) {
  if (option.get_positional()) {
    return tr(option.get_name(true).c_str()) + std::string(takes_several(option) ? " ..." : "");
  }
  std::string text;
  for (const std::string& name : option.get_snames()) {
    text += "-" + name + ", ";
  }
  text += "--" + option.get_lnames().front();
  return takes_value(option) ? text + ' ' + option.get_type_name() : text;
}

// As it stands in the usage line: "-o OUT", "[--json]", "FILE".
std::string shown_in_usage(const CLI::Option& option) {
  std::string text;
  if (option.get_positional()) {
    text = shown(option);
  } else {
    text = option.get_snames().empty() ? "--" + option.get_lnames().front() : "-" + option.get_snames().front();
    text += takes_value(option) ? ' ' + option.get_type_name() : "";
  }
  return option.get_required() ? text : '[' + text + ']';
}

std::string full_name(const CLI::App& command) {
  return command.get_parent() == nullptr ? "punchwright" : "punchwright " + command.get_name();
}

// The text in lines, the second and later ones `indent` columns in.
std::string wrapped(std::string_view text, std::size_t column, std::size_t indent) {
  std::string lines;
  while (!text.empty()) {
    const std::string_view word = text.substr(0, text.find(' '));
    text.remove_prefix(std::min(text.size(), word.size() + 1));
    const std::size_t width = width_of(word);
    if (column + width > line_width && column > indent) {
      lines.back() = '\n'; // in place of the blank
      lines += std::string(indent, ' ');
      column = indent;
    }
    lines += word;
    lines += ' ';
    column += width + 1;
  }
  lines.back() = '\n';
  return lines;
}

std::string as_sentence(std::string words) {
  if (words.front() >= 'a' && words.front() <= 'z') {
    words.front() = static_cast<char>(words.front() - 'a' + 'A');
  }
  return words.ends_with('.') ? words : words + '.';
}

// A name, and what it is for in the column beside it.
std::string entry(const std::string& name, const std::string& words, std::size_t widest) {
  const std::size_t indent = widest + 4;
  return "  " + padded(name, widest) + "  " + wrapped(words, indent, indent);
}

std::string entries(const std::vector<std::pair<std::string, std::string>>& all) {
  std::size_t widest = 0;
  for (const auto& [name, words] : all) {
    widest = std::max(widest, width_of(name));
  }
  std::string text;
  for (const auto& [name, words] : all) {
    text += entry(name, words, widest);
  }
  return text;
}

// "-o, --output" of the option that the parser's message begins with, which is all that it tells of it.
std::string option_in(std::string_view message, const CLI::App& command) {
  std::string name(message.substr(0, message.find_first_of(": ")));
  for (const CLI::Option* option : options_in_order(command)) {
    if (!option->get_positional() && option->check_name(name.starts_with('-') ? name : "--" + name)) {
      const std::string text = shown(*option);
      return takes_value(*option) ? text.substr(0, text.rfind(' ')) : text;
    }
  }
  return name;
}

std::string missing(const CLI::App& command) {
  for (const CLI::Option* option : options_in_order(command)) {
    if (option->get_required() && option->count() == 0) {
      return said("{} is missing", shown(*option));
    }
  }
  return tr("something is missing");
}

std::string too_much(const CLI::App& command) {
  const CLI::App* const whole = command.get_parent() == nullptr ? &command : command.get_parent();
  const std::vector<std::string> left = whole->remaining(true);
  const auto option = std::ranges::find_if(left, [](const std::string& word) { return word.starts_with('-'); });
  if (option != left.end()) {
    return said("'{}' is no option of {}", *option, full_name(command));
  }
  if (command.get_parent() == nullptr && !left.empty()) {
    // The first word was taken for a file to open; with another behind it, it was to be a command.
    for (const CLI::Option* argument : options_in_order(command)) {
      if (argument->get_positional() && argument->count() > 0) {
        return said("'{}' is no command", argument->results().front());
      }
    }
  }
  return left.empty() ? tr("there is an argument too many") : said("'{}' is an argument too many", left.front());
}

std::string names_of(const std::vector<const CLI::App*>& commands) {
  std::string names;
  for (const CLI::App* command : commands) {
    names += (names.empty() ? "" : ", ") + command->get_name();
  }
  return names;
}

// A wrong value is told with what is allowed; otherwise the whole call is looked at anew.
std::string where_to_look(const CLI::ParseError& error, const CLI::App& command) {
  const std::string more = full_name(command) + " --help";
  if (dynamic_cast<const CLI::ValidationError*>(&error) != nullptr) {
    return said("see {}", more);
  }
  const auto commands = listed_commands(command);
  if (commands.empty()) {
    return said("usage: {}; see {}", usage_of(command), more);
  }
  return said("usage: {}, or a command: {}; see {}", usage_of(command), names_of(commands), more);
}

} // namespace

std::string usage_of(const CLI::App& command) {
  std::string text = full_name(command);
  std::string arguments;
  for (const CLI::Option* option : options_in_order(command)) {
    if (!is_about_itself(*option)) {
      (option->get_positional() ? arguments : text) += ' ' + shown_in_usage(*option);
    }
  }
  return text + arguments;
}

namespace {

// One screen of 24 lines, the prompt below it.
std::string help_of_all(const CLI::App& app, const Commands& commands) {
  std::vector<std::pair<std::string, std::string>> all;
  all.reserve(commands.size());
  for (const CLI::App* sub : commands) {
    all.emplace_back(sub->get_name(), sub->get_description());
  }
  return fmt::format("{}\n\n{}\n{}\n{}\n", app.get_description(), entries(all),
                     tr("'punchwright COMMAND --help' tells more; also: --version, --language CODE."), tr(exit_codes));
}

} // namespace

std::string help_of(const CLI::App& command) {
  if (const auto commands = listed_commands(command); !commands.empty()) {
    return help_of_all(command, commands);
  }
  const std::string usage = tr("Usage:") + std::string(1, ' ');
  std::string text = usage + wrapped(usage_of(command), width_of(usage), width_of(usage) + 4);
  text += '\n' + as_sentence(command.get_description()) + "\n\n";
  std::vector<std::pair<std::string, std::string>> all;
  for (const CLI::Option* option : options_in_order(command)) {
    all.emplace_back(shown(*option), option->get_description());
  }
  return text + entries(all) + '\n' + tr(exit_codes) + '\n';
}

Error complaint(const CLI::ParseError& error, const CLI::App& command) {
  std::string message;
  const std::string_view parsers = error.what();
  if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) {
    message = missing(command);
  } else if (dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr) {
    message = too_much(command);
  } else if (dynamic_cast<const CLI::ValidationError*>(&error) != nullptr) {
    message = parsers; // our own words already
  } else if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr && parsers.ends_with("missing")) {
    message = said("{} needs a value", option_in(parsers, command));
  } else if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr &&
             parsers.find("received") != parsers.npos) {
    message = said("{} is given more than once", option_in(parsers, command));
  } else if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr) {
    message = said("{} takes no value", option_in(parsers, command));
  } else {
    message = tr("this call can't be understood");
  }
  return Error{{}, 0, 0, std::move(message), where_to_look(error, command)};
}

} // namespace punchwright::cli
