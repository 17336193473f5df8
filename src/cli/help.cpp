// Usage lines and help from what the commands declare, so that no option can be forgotten.
#include "cli/help.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <string_view>
#include <vector>

namespace punchwright::cli {
namespace {

constexpr std::size_t line_width = 79; // columns of a terminal, one left free

constexpr auto exit_codes = "Exit codes: 0 done and no fault, 1 done and faults found, 2 cannot be done.\n";

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
  return option.check_lname("help") || option.check_lname("version") || is_about_talk(option);
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
    return option.get_name(true) + (takes_several(option) ? " ..." : "");
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
    if (column + word.size() > line_width && column > indent) {
      lines.back() = '\n'; // in place of the blank
      lines += std::string(indent, ' ');
      column = indent;
    }
    lines += word;
    lines += ' ';
    column += word.size() + 1;
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
  return fmt::format("  {:<{}}  ", name, widest) + wrapped(words, indent, indent);
}

std::string entries(const std::vector<std::pair<std::string, std::string>>& all) {
  std::size_t widest = 0;
  for (const auto& [name, words] : all) {
    widest = std::max(widest, name.size());
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
      return shown(*option) + " is missing";
    }
  }
  return "something is missing";
}

std::string too_much(const CLI::App& command) {
  const CLI::App* const whole = command.get_parent() == nullptr ? &command : command.get_parent();
  const std::vector<std::string> left = whole->remaining(true);
  const auto option = std::ranges::find_if(left, [](const std::string& word) { return word.starts_with('-'); });
  if (option != left.end()) {
    return fmt::format("'{}' is no option of {}", *option, full_name(command));
  }
  if (command.get_parent() == nullptr && !left.empty()) {
    // The first word was taken for a file to open; with another behind it, it was to be a command.
    for (const CLI::Option* argument : options_in_order(command)) {
      if (argument->get_positional() && argument->count() > 0) {
        return fmt::format("'{}' is no command", argument->results().front());
      }
    }
  }
  return left.empty() ? "there is an argument too many" : fmt::format("'{}' is an argument too many", left.front());
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
    return "see " + more;
  }
  const auto commands = listed_commands(command);
  if (commands.empty()) {
    return fmt::format("usage: {}; see {}", usage_of(command), more);
  }
  return fmt::format("usage: {}, or a command: {}; see {}", usage_of(command), names_of(commands), more);
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
  return app.get_description() + "\n\n" + entries(all) +
         "\n'punchwright COMMAND --help' tells more of each; --version gives the version.\n" + exit_codes;
}

} // namespace

std::string help_of(const CLI::App& command) {
  if (const auto commands = listed_commands(command); !commands.empty()) {
    return help_of_all(command, commands);
  }
  std::string text = "Usage: " + wrapped(usage_of(command), 7, 11);
  text += '\n' + as_sentence(command.get_description()) + "\n\n";
  std::vector<std::pair<std::string, std::string>> all;
  for (const CLI::Option* option : options_in_order(command)) {
    all.emplace_back(shown(*option), option->get_description());
  }
  return text + entries(all) + '\n' + exit_codes;
}

Error complaint(const CLI::ParseError& error, const CLI::App& command) {
  std::string message;
  const std::string_view said = error.what();
  if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) {
    message = missing(command);
  } else if (dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr) {
    message = too_much(command);
  } else if (dynamic_cast<const CLI::ValidationError*>(&error) != nullptr) {
    message = said; // our own words already
  } else if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr && said.ends_with("missing")) {
    message = option_in(said, command) + " needs a value";
  } else if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr && said.find("received") != said.npos) {
    message = option_in(said, command) + " is given more than once";
  } else if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr) {
    message = option_in(said, command) + " takes no value";
  } else {
    message = "this call can't be understood";
  }
  return Error{{}, 0, 0, std::move(message), where_to_look(error, command)};
}

} // namespace punchwright::cli
