// The options of 'yoke': to work one out, to print its sheets, to split it, or to begin one from body measurements.
#include "cli/option_forms.hpp"

#include <algorithm>

namespace punchwright::cli {
namespace {

// Numbers or names with commas between them.
template <class Item>
void add_list(CLI::App* sub, const std::string& option, const std::string& type, const std::string& allowed,
              const std::string& what, std::vector<Item>& items,
              std::function<std::optional<Item>(const std::string&)> read, std::size_t most = most_yoke_sizes) {
  add_value(sub, option, type, allowed, what, [&items, most, read = std::move(read)](const std::string& word) {
    items.clear();
    for (std::size_t from = 0; from <= word.size();) {
      const std::size_t comma = std::min(word.find(',', from), word.size());
      const std::optional<Item> item = read(word.substr(from, comma - from));
      if (!item) {
        return false;
      }
      items.push_back(*item);
      from = comma + 1;
    }
    return items.size() <= most;
  });
}

std::optional<std::string> name_in_list(const std::string& word) {
  return word.empty() ? std::nullopt : std::optional(word);
}

std::optional<double> body_measure(const std::string& word) {
  std::optional<double> number;
  const bool good = read_number(word, number) && *number >= 10 && *number <= 300;
  return good ? number : std::nullopt;
}

} // namespace

void add_yoke_options(CLI::App* sub, YokeWishes& wishes) {
  sub->add_option("FILE", wishes.file, tr("a .yoke file, or - for standard input"));
  sub->add_flag("--json", wishes.json, tr("the pieces as JSON"))->disable_flag_override();
  sub->add_flag("--split", wishes.split, tr("write the yoke with pieces that are wider than the bed split"))
      ->disable_flag_override();
  sub->add_option("-o,--output", wishes.output, tr("the sheets to write, .pdf; with --split and --new: the .yoke file"))
      ->type_name(tr("OUT"));
  add_list<YokeSheet>(
      sub, "--sheets", tr("WORDS"), tr("schematic, sizes, steps, strips or cards, with commas between them"),
      tr("only these sheets: schematic,sizes,steps,strips,cards"), wishes.sheets, [](const std::string& word) {
        const auto found = std::ranges::find(yoke_sheet_words, word, [](const auto& pair) { return pair.first; });
        return found == yoke_sheet_words.end() ? std::nullopt : std::optional(found->second);
      });
  add_list<std::string>(sub, "--pieces", tr("NAMES"), tr("names with commas between them, such as front,back"),
                        tr("only these pieces on the sheets"), wishes.pieces, name_in_list, most_yoke_pieces);
  add_value(sub, "--paper", "a4|letter", said("{} or {}", "a4", "letter"),
            tr("the paper to print on; none: that of the first tier's file"), [&wishes](const std::string& word) {
              wishes.paper = word == "letter" ? Paper::letter : Paper::a4;
              return word == "letter" || word == "a4";
            });
  add_value(sub, "--new", "pullover|poncho", said("{} or {}", "pullover", "poncho"),
            tr("begin a yoke: front, back and two sleeves, or quarters"), [&wishes](const std::string& word) {
              wishes.fresh = word == "poncho" ? YokeKind::poncho : YokeKind::pullover;
              return word == "poncho" || word == "pullover";
            });
  sub->add_option("--tier", wishes.tiers,
                  tr("for --new: a tier's .repeat file; again for each, from the bottom upwards"))
      ->type_name(tr("FILE"))
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  add_list<std::string>(sub, "--sizes", tr("NAMES"), tr("names with commas between them, such as S,M,L"),
                        tr("only these sizes on the sheets; for --new: XS to 5X of the table, or any with --chest "
                           "(2 years, 4 years to 16 years have arms in a table); without it S,M,L"),
                        wishes.sizes, name_in_list);
  add_list<double>(sub, "--chest", "CM", tr("a number from 10 to 300 for each size, such as 86,96.5"),
                   tr("for --new: measures round the chest"), wishes.chest_cm, body_measure);
  add_list<double>(sub, "--upper-arm", "CM", tr("a number from 10 to 300 for each size, such as 30,32.5"),
                   tr("for --new: measures round the upper arm; without it sleeves are a share of the body"),
                   wishes.upper_arm_cm, body_measure);
  add_value(sub, "--ease", "CM", said("a number from {} to {}", -20, 100),
            tr("for --new: added to the chest; without it 7.5"), [&wishes](const std::string& word) {
              return read_number(word, wishes.ease_cm) && *wishes.ease_cm >= -20 && *wishes.ease_cm <= 100;
            });
  sub->add_option("--machine", wishes.machine,
                  tr("for --new: the machine, built in, or a .machine file; without it the tiers' own"))
      ->type_name(tr("MACHINE"));
}

} // namespace punchwright::cli
