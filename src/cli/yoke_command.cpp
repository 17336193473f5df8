// punchwright yoke: a yoke in pieces that fit the bed and meet at the seams, for all sizes at once; or a new one from
// body measurements; its sheets.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "cli/yoke_answer.hpp"
#include "cli/yoke_new.hpp"
#include "design/words.hpp"
#include "files/files.hpp"
#include "pieces/tier_faults.hpp"
#include "pieces/yoke_paths.hpp"
#include "pieces/yoke_plan.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <numeric>

namespace punchwright::cli {
namespace {

// In those sizes.
bool seams_unmet(const YokePlan& plan, const std::vector<std::size_t>& sizes, YokeSeams wished) {
  return wished != YokeSeams::free && std::ranges::any_of(sizes, [&](std::size_t size) {
           return std::ranges::any_of(plan.sizes[size].seams, [](const TierSeams& tier) { return !tier.mend.empty(); });
         });
}

// The tiers whose drawings have faults, on standard error. Returns whether there are any.
bool tell_tiers(const OpenedYoke& opened) {
  const std::vector<TierFaults> tiers = tiers_with_faults(opened);
  for (const TierFaults& tier : tiers) {
    fmt::print(stderr, "{}\n", said("fault: {}: {}; {}", opened.file, words_of(tier), remedy_of(opened, tier)));
  }
  return !tiers.empty();
}

Failure must_be_yoke(const std::string& output) {
  if (output.ends_with(".yoke")) {
    return std::nullopt;
  }
  return Error{output, 0, 0, output.empty() ? tr("-o OUT is missing") : tr("a yoke is a .yoke file"),
               tr("name the file to write with -o, ending in .yoke")};
}

// It is written in any case: a person goes on from there, by the faults that are told of it.
int write_yoke_file(const Yoke& yoke, const std::string& output) {
  const std::string text = write_yoke(yoke);
  if (const Failure failure = write_file(output, text)) {
    return refuse(*failure);
  }
  if (!print(output + "\n")) {
    return cannot;
  }
  const auto opened = open_yoke(text, output, read_for_machine);
  if (!opened) {
    return refuse(opened.error());
  }
  const std::vector<std::size_t> sizes = all_sizes(*opened);
  return tell_faults(plan_sizes(*opened), sizes).size() == sizes.size() ? done : faults_found;
}

// The places of these names among those of the file; `none` says that there is none of that name.
Result<std::vector<std::size_t>> places_of(const std::vector<std::string>& wished,
                                           const std::vector<std::string>& names,
                                           std::string (*none)(const std::string& name)) {
  std::vector<std::size_t> places;
  for (const std::string& name : wished) {
    const auto found = std::ranges::find(names, name);
    if (found == names.end()) {
      return Error{{}, 0, 0, none(name), said("allowed: {}", listed(names))};
    }
    places.push_back(static_cast<std::size_t>(found - names.begin()));
  }
  return places;
}

bool wants_sheets(const YokeWishes& wishes) {
  return !wishes.sizes.empty() || !wishes.pieces.empty() || !wishes.sheets.empty() || wishes.paper;
}

int write_sheets(const OpenedYoke& opened, const SizesPlanned& planned, const YokeWishes& wishes) {
  const auto named = places_of(wishes.sizes, opened.yoke.sizes,
                               [](const std::string& name) { return said("there is no size '{}'", name); });
  if (!named) {
    return refuse(named.error());
  }
  std::vector<std::string> names;
  for (const YokePiece& piece : opened.yoke.pieces) {
    names.push_back(piece.name);
  }
  const auto pieces =
      places_of(wishes.pieces, names, [](const std::string& name) { return said("there is no piece '{}'", name); });
  if (!pieces) {
    return refuse(pieces.error());
  }
  const std::vector<std::size_t> sizes = named->empty() ? all_sizes(opened) : *named;
  const std::vector<std::size_t> fit = tell_faults(planned, sizes);
  if (fit.empty()) {
    return cannot;
  }
  auto files = yoke_files(opened, planned.plan, wishes.output, {wishes.paper, fit, *pieces, wishes.sheets});
  int written = wishes.json ? write_quietly(std::move(files)) : write_all(files);
  if (wishes.json && written == done && !print(json_of(opened, planned))) {
    written = cannot;
  }
  const bool faulty = tell_tiers(opened) || seams_unmet(planned.plan, fit, opened.yoke.fit.seams);
  return written != done || fit.size() < sizes.size() ? cannot : faulty ? faults_found : done;
}

int print_sizes(const OpenedYoke& opened, const SizesPlanned& planned, bool json) {
  const std::vector<std::size_t> sizes = all_sizes(opened);
  const std::vector<std::size_t> fit = tell_faults(planned, sizes);
  if (fit.empty()) {
    return cannot;
  }
  if (!print(json ? json_of(opened, planned) : text_of(planned, opened.yoke.fit.seams)) || fit.size() < sizes.size()) {
    return cannot;
  }
  return tell_tiers(opened) || seams_unmet(planned.plan, fit, opened.yoke.fit.seams) ? faults_found : done;
}

Failure do_not_go_together(const YokeWishes& wishes) {
  if (wishes.output.empty() && wants_sheets(wishes)) {
    return Error{{},
                 0,
                 0,
                 tr("--sizes, --pieces, --sheets and --paper choose what is printed"),
                 tr("name the file for the sheets with -o, ending in .pdf")};
  }
  if (wishes.output.ends_with(".yoke")) {
    return Error{wishes.output, 0, 0, tr("a .yoke file is written with --split and --new"),
                 tr("add one of them, or let the name of the sheets end in .pdf")};
  }
  if (wishes.json && wishes.output == "-") {
    return Error{wishes.output, 0, 0, tr("--json and the sheets can't both go to standard output"),
                 tr("name a file for the sheets with -o, or leave out --json")};
  }
  return std::nullopt;
}

int write_new(const YokeWishes& wishes) {
  if (const Failure failure = must_be_yoke(wishes.output)) {
    return refuse(*failure);
  }
  const auto yoke = new_yoke(wishes);
  return yoke ? write_yoke_file(*yoke, wishes.output) : refuse(yoke.error());
}

int write_split(const OpenedYoke& opened, const YokeWishes& wishes) {
  namespace fs = std::filesystem;
  if (const Failure failure = must_be_yoke(wishes.output)) {
    return refuse(*failure);
  }
  const auto split = split_to_fit(opened);
  if (!split) {
    return refuse(split.error());
  }
  const Yoke whole = with_whole_paths(*split, fs::absolute(wishes.file)); // of standard input: from here
  const fs::path folder = fs::absolute(wishes.output).lexically_normal().parent_path();
  return write_yoke_file(as_written_in(whole, folder), wishes.output);
}

} // namespace

void tell_notes(const OpenedYoke& opened) {
  for (const ReadingNote& note : opened.notes) {
    if (talk() != Talk::quiet) {
      const std::string line = note.line > 0 ? fmt::format(":{}", note.line) : std::string();
      fmt::print(stderr, "{}\n", said("note: {}{}: {}", opened.file, line, note.text));
    }
  }
}

std::vector<std::size_t> tell_faults(const SizesPlanned& planned, const std::vector<std::size_t>& sizes) {
  std::vector<std::size_t> fit;
  for (const std::size_t size : sizes) {
    for (const Error& fault : planned.faults[size]) {
      (void)refuse(fault);
    }
    if (planned.fits(size)) {
      fit.push_back(size);
    }
  }
  return fit;
}

std::vector<std::size_t> all_sizes(const OpenedYoke& opened) {
  std::vector<std::size_t> sizes(opened.yoke.sizes.size());
  std::iota(sizes.begin(), sizes.end(), std::size_t{0});
  return sizes;
}

int plan_yoke_file(const YokeWishes& wishes) {
  if (wishes.fresh) {
    return write_new(wishes);
  }
  if (wishes.file.empty()) {
    return refuse(Error{{}, 0, 0, tr("FILE is missing"), tr("name a .yoke file, or make a new one with --new")});
  }
  const auto text = read_for_machine(wishes.file);
  if (!text) {
    return refuse(text.error());
  }
  const auto opened = open_yoke(*text, name_for_people(wishes.file), read_for_machine);
  if (!opened) {
    return refuse(opened.error());
  }
  tell_notes(*opened);
  if (wishes.split) {
    return write_split(*opened, wishes);
  }
  if (const Failure failure = do_not_go_together(wishes)) {
    return refuse(*failure);
  }
  const SizesPlanned planned = plan_sizes(*opened);
  return wishes.output.empty() ? print_sizes(*opened, planned, wishes.json) : write_sheets(*opened, planned, wishes);
}

} // namespace punchwright::cli
