// Opens the tiers of a yoke, and checks what only all of the files together can tell.
#include "pieces/open_yoke.hpp"

#include "machine/placement.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace punchwright {
namespace {

Error at(const OpenedYoke& opened, const std::string& place, std::string message, std::string remedy) {
  const auto found = opened.places.find(place);
  const Spot spot = found == opened.places.end() ? Spot{} : found->second;
  return {opened.file, spot.line, spot.column, std::move(message), std::move(remedy)};
}

std::string tier_place(std::size_t tier, std::string_view key) {
  return fmt::format("tier.{}.{}", tier + 1, key);
}

// Faults of a tier's or a machine's own file: the key that names it, and then their place in it.
Error placed(const OpenedYoke& opened, const std::string& place, Error error) {
  const std::string remedy = std::exchange(error.remedy, "");
  return at(opened, place, error.text(), remedy);
}

// A tier's file may be read twice; it is told once.
void add_note(OpenedYoke& opened, const std::string& text) {
  if (std::ranges::find(opened.notes, text, &ReadingNote::text) == opened.notes.end()) {
    opened.notes.push_back({0, text});
  }
}

Failure read_tier(OpenedYoke& opened, std::size_t index, const FileReader& read, std::vector<Profile>& machines) {
  const std::filesystem::path beside(opened.file);
  const std::filesystem::path given(opened.yoke.tiers[index].repeat);
  const std::filesystem::path path = given.is_absolute() ? given : beside.parent_path() / given;
  const auto text = read(path);
  if (!text) {
    return placed(opened, tier_place(index, "repeat"), text.error());
  }
  auto found = read_repeat(*text, path.string());
  if (!found) {
    return placed(opened, tier_place(index, "repeat"), found.error());
  }
  if (!opened.yoke.profile) {
    auto machine = find_profile(found->document.profile, path, read);
    if (!machine) {
      return placed(opened, tier_place(index, "repeat"), machine.error());
    }
    machines.push_back(std::move(machine).value());
  }
  for (const ReadingNote& note : found->notes) {
    add_note(opened, fmt::format("{}:{}: {}", path.string(), note.line, note.text));
  }
  const Gauge gauge = found->document.gauge;
  opened.tiers.push_back({std::move(found.value().document), {}, gauge});
  return std::nullopt;
}

// The first tier that is for another machine than the first one.
Failure machines_differ(const OpenedYoke& opened, const std::vector<Profile>& machines) {
  for (std::size_t tier = 1; tier < machines.size(); ++tier) {
    if (machines[tier] != machines.front()) {
      return at(opened, tier_place(tier, "repeat"),
                said("tier {} is for another machine than tier 1: {} and {}", tier + 1, machines[tier].name,
                     machines.front().name),
                tr("name one machine for all: [machine] in the file, Machine in the editor"));
    }
  }
  return std::nullopt;
}

void use_yoke(const OpenedYoke& opened, OpenedTier& tier) {
  const Yoke& yoke = opened.yoke;
  Document& document = tier.document;
  document.profile = yoke.profile.value_or(document.profile);
  document.gauge.stitches = yoke.gauge.stitches.value_or(tier.own_gauge.stitches);
  document.gauge.rows = yoke.gauge.rows.value_or(tier.own_gauge.rows);
  document.piece.edge = yoke.edge;
  document.piece.stitches.reset();
  document.piece.first_needle.reset();
  document.piece.first_column.reset();
}

Failure check_widths(const OpenedYoke& opened) {
  for (std::size_t tier = 0; opened.profile.card && tier < opened.tiers.size(); ++tier) {
    const int width = opened.tiers[tier].document.grid.width();
    const int repeat = opened.profile.card->repeat;
    if (repeat % width != 0) {
      std::string widths;
      for (const int allowed : widths_for_card(repeat)) {
        widths += (widths.empty() ? "" : ", ") + std::to_string(allowed);
      }
      return at(opened, tier_place(tier, "repeat"),
                said_count(width, "tier {1} is {0} stitch wide, which a card of {2} can't hold",
                           "tier {1} is {0} stitches wide, which a card of {2} can't hold", tier + 1, repeat),
                said("allowed: a repeat of {} stitches", widths));
    }
  }
  return std::nullopt;
}

Failure check_rows(const OpenedYoke& opened) {
  int most = 0;
  for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
    const auto& plain = opened.yoke.tiers[tier].plain_above.values;
    const PlainRows needed = plain_rows_needed(opened, tier);
    if (const int fewest = *std::ranges::min_element(plain); fewest < needed.needed()) {
      const std::string what =
          needed.setting_up == 0
              ? std::string(tr("the last plain row and the row after the decreases"))
              : said_count(needed.setting_up, "the last plain row, the row after the decreases and {} row to set up",
                           "the last plain row, the row after the decreases and {} rows to set up");
      return at(opened, tier_place(tier, "plain_above"),
                said_count(fewest, "{} row plain above tier {}, and the procedure needs {}: {}",
                           "{} rows plain above tier {}, and the procedure needs {}: {}", tier + 1, needed.needed(),
                           what),
                said("allowed: {} and more", needed.needed()));
    }
    const auto rows = static_cast<std::ptrdiff_t>(opened.tiers[tier].rows.rows.size());
    most += static_cast<int>(std::min<std::ptrdiff_t>(rows, most_yoke_rows)) + *std::ranges::max_element(plain);
    if (most > most_yoke_rows) {
      return at(opened, tier_place(tier, "repeat"),
                said("the tiers up to {} come to more than {} rows", tier + 1, most_yoke_rows),
                tr("allowed: fewer tiers, or fewer repetitions in their files"));
    }
  }
  return std::nullopt;
}

std::string name_with_colour(const Yarn& yarn) {
  return yarn.name.empty() ? hex_of(yarn.colour) : fmt::format("{} {}", yarn.name, hex_of(yarn.colour));
}

// Keys without a yarn are faults; yarns that share a key are told.
Failure check_yarns(OpenedYoke& opened) {
  for (std::size_t index = 0; index < opened.yoke.yarns.size(); ++index) {
    const char key = opened.yoke.yarns[index].key;
    const bool known = std::ranges::any_of(opened.tiers, [key](const OpenedTier& tier) {
      return std::ranges::find(tier.document.yarns, key, &Yarn::key) != tier.document.yarns.end();
    });
    if (!known) {
      return at(opened, fmt::format("yarn.{}.key", index + 1), said("no tier has a yarn '{}'", key),
                tr("allowed: a key of the tiers' yarns"));
    }
  }
  std::map<char, Yarn> firsts;
  for (const OpenedTier& tier : opened.tiers) {
    for (const Yarn& yarn : tier.document.yarns) {
      const Yarn& first = firsts.emplace(yarn.key, yarn).first->second;
      if (first != yarn) {
        add_note(opened, said("the tiers call two yarns {}, {} and {}: each has an amount of its own", yarn.key,
                              name_with_colour(first), name_with_colour(yarn)));
      }
    }
  }
  return std::nullopt;
}

Failure check_all(OpenedYoke& opened) {
  if (auto failure = check_widths(opened)) {
    return failure;
  }
  for (OpenedTier& tier : opened.tiers) {
    use_yoke(opened, tier);
    if (const Failure failure = too_many_rows(tier.document, opened.profile)) {
      return placed(opened, tier_place(static_cast<std::size_t>(&tier - opened.tiers.data()), "repeat"), *failure);
    }
    tier.rows = rows_to_knit(tier.document, opened.profile);
  }
  if (auto failure = check_rows(opened)) {
    return failure;
  }
  return check_yarns(opened);
}

Result<OpenedYoke> checked(OpenedYoke opened, Profile machine) {
  opened.profile = std::move(machine);
  if (Failure failure = check_all(opened)) {
    return *std::move(failure);
  }
  return opened;
}

// With the first of their machines with which nothing is refused.
Result<OpenedYoke> with_one_of(OpenedYoke opened, const std::vector<Profile>& machines) {
  auto first = checked(opened, machines.front());
  for (std::size_t tier = 1; !first && tier < machines.size(); ++tier) {
    if (auto other = checked(opened, machines[tier])) {
      return other;
    }
  }
  return first;
}

Result<OpenedYoke> with_tiers(OpenedYoke opened, const FileReader& read, Machines machines) {
  std::vector<Profile> of_tiers;
  for (std::size_t tier = 0; tier < opened.yoke.tiers.size(); ++tier) {
    if (const Failure failure = read_tier(opened, tier, read, of_tiers)) {
      return *failure;
    }
  }
  if (opened.yoke.profile) {
    auto machine = find_profile(*opened.yoke.profile, opened.file, read);
    if (!machine) {
      return placed(opened, "machine.profile", machine.error());
    }
    return checked(std::move(opened), std::move(machine).value());
  }
  opened.machine_wanted = machines_differ(opened, of_tiers);
  if (opened.machine_wanted && machines == Machines::must_agree) {
    return *opened.machine_wanted;
  }
  return with_one_of(std::move(opened), of_tiers);
}

} // namespace

PlainRows plain_rows_needed(const OpenedYoke& opened, std::size_t tier) {
  PlainRows needed;
  if (tier + 1 < opened.tiers.size()) {
    const auto setup = setup_rows(opened.tiers[tier + 1].document, opened.profile);
    needed.setting_up =
        static_cast<int>(std::ranges::count_if(setup, [](const SetupRow& row) { return row.main.has_value(); }));
  }
  return needed;
}

Result<OpenedYoke> open_yoke(std::string_view text, const std::string& path, const FileReader& read,
                             Machines machines) {
  auto found = read_yoke(text, path);
  if (!found) {
    return found.error();
  }
  ReadYoke& read_in = found.value();
  return with_tiers({std::move(read_in.yoke), {}, {}, {}, std::move(read_in.notes), std::move(read_in.places), path},
                    read, machines);
}

Result<OpenedYoke> open_yoke(Yoke yoke, const std::string& path, const FileReader& read, Machines machines) {
  return with_tiers({std::move(yoke), {}, {}, {}, {}, {}, path}, read, machines);
}

Result<OpenedYoke> with_changed_measures(OpenedYoke opened, Yoke yoke) {
  opened.yoke = std::move(yoke);
  opened.places.clear();
  if (const Failure failure = check_all(opened)) {
    return *failure;
  }
  return opened;
}

} // namespace punchwright
