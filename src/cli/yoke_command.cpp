// punchwright yoke: a yoke in pieces that fit the bed and meet at the seams, for all sizes at once; or a new one from
// body measurements; its sheets.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "cli/yoke_new.hpp"
#include "design/words.hpp"
#include "files/files.hpp"
#include "pieces/yoke_plan.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace punchwright::cli {
namespace {

using Json = nlohmann::ordered_json;

double rounded(double value, double step = 1000) {
  return std::round(value * step) / step;
}

Json json_or_null(const std::optional<double>& amount) {
  return amount ? Json(static_cast<long long>(std::ceil(*amount))) : Json(nullptr);
}

Json json_of(const TierOfPiece& tier, int number) {
  Json entry;
  entry["tier"] = number;
  entry["stitches"] = tier.stitches;
  entry["ideal"] = rounded(tier.ideal);
  entry["first_needle"] = name_of(tier.bed.first);
  entry["last_needle"] = name_of(tier.bed.last);
  entry["left_column"] = tier.bed.left_column + 1;
  entry["right_column"] = tier.bed.right_column + 1;
  entry["first_column"] = tier.bed.first_column ? Json(*tier.bed.first_column) : Json(nullptr);
  entry["decreases"] = tier.shaping.decreases();
  entry["increases"] = tier.shaping.increases();
  entry["every"] = Json::array();
  for (const auto& [step, times] : tier.shaping.every) {
    entry["every"].push_back({step, times});
  }
  entry["transfers"] = Json::array();
  for (const Transfer& transfer : tier.shaping.transfers) {
    entry["transfers"].push_back({name_of(transfer.from), name_of(transfer.to)});
  }
  entry["after"] = tier.shaping.after;
  entry["clear_of_seam"] = tier.shaping.kept_off_seams;
  entry["clear_of_centre"] = tier.shaping.kept_off_centre;
  entry["needles_after"] = {name_of(tier.first_after), name_of(tier.last_after)};
  return entry;
}

Json json_of(const RowsOfYoke& rows) {
  Json entry;
  entry["pattern"] = rows.pattern_rows;
  entry["plain"] = rows.plain_rows;
  entry["mm"] = rounded(rows.mm, 10);
  entry["depth_mm"] = rounded(rows.depth_mm, 10);
  entry["missing_rows"] = rows.missing_rows;
  entry["missing_mm"] = rounded(rows.missing_mm, 10);
  entry["plain_above"] = rows.proposal;
  return entry;
}

Json json_of(const SizePlan& size) {
  Json entry;
  entry["size"] = size.size;
  entry["pieces"] = Json::array();
  for (const PieceOfSize& piece : size.pieces) {
    Json tiers = Json::array();
    for (const TierOfPiece& tier : piece.tiers) {
      tiers.push_back(json_of(tier, static_cast<int>(tiers.size()) + 1));
    }
    entry["pieces"].push_back({{"piece", piece.name}, {"tiers", tiers}, {"ideal_after", rounded(piece.ideal_after)}});
  }
  entry["seams"] = Json::array();
  for (std::size_t tier = 0; tier < size.seams.size(); ++tier) {
    for (const SeamMeeting& seam : size.seams[tier].seams) {
      entry["seams"].push_back({{"tier", tier + 1},
                                {"between", {size.pieces[seam.left].name, size.pieces[seam.right].name}},
                                {"meets", seam.meets},
                                {"alike", seam.alike},
                                {"mismatch", seam.mismatch}});
    }
  }
  entry["rows"] = json_of(size.rows);
  entry["yarn"] = Json::array();
  for (const YarnAmount& yarn : size.yarns) {
    entry["yarn"].push_back({{"yarn", std::string(1, yarn.key)},
                             {"grams", json_or_null(yarn.grams)},
                             {"metres", json_or_null(yarn.metres)},
                             {"from", word_for(yarn.from)}});
  }
  entry["squares"] = rounded(size.proof.squares, 1e6);
  entry["bound"] = rounded(size.proof.bound, 1e6);
  return entry;
}

std::string json_of(const YokePlan& plan) {
  Json answer;
  answer["format"] = 1;
  answer["sizes"] = Json::array();
  for (const SizePlan& size : plan.sizes) {
    answer["sizes"].push_back(json_of(size));
  }
  answer["loops"] = Json::array();
  for (const LoopCheck& check : plan.loops) {
    answer["loops"].push_back({{"yarn", std::string(1, check.key)},
                               {"loop_mm", check.loop_mm},
                               {"constant", rounded(check.constant, 10)},
                               {"plausible", check.plausible}});
  }
  return answer.dump() + "\n";
}

// The last column of a table is as long as it likes.
std::string decreases_words(const Shaping& shaping) {
  if (shaping.every.empty()) {
    return "none";
  }
  const std::string count =
      shaping.increases() > 0 ? fmt::format("{} more", shaping.increases()) : std::to_string(shaping.decreases());
  const bool kept = shaping.kept_off_seams && shaping.kept_off_centre;
  return fmt::format("{}: {}{}", count, words_of(shaping.every), kept ? "" : "; " + clearance_words(shaping));
}

// Signs, not bytes: names of pieces may be in any language.
std::string padded(const std::string& text, std::size_t width) {
  const auto signs = static_cast<std::size_t>(
      std::ranges::count_if(text, [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }));
  return text + std::string(width > signs ? width - signs : 0, ' ');
}

std::string table_of(const SizePlan& size) {
  std::size_t widest = 5;
  for (const PieceOfSize& piece : size.pieces) {
    widest = std::max(widest, piece.name.size());
  }
  std::string text =
      fmt::format("{}  tier  stitches  needles      columns   after  decreases\n", padded("piece", widest));
  for (const PieceOfSize& piece : size.pieces) {
    for (std::size_t tier = 0; tier < piece.tiers.size(); ++tier) {
      const TierOfPiece& there = piece.tiers[tier];
      text += fmt::format("{}  {:>4}  {:>8}  {}  {}  {:>5}  {}\n", padded(piece.name, widest), tier + 1, there.stitches,
                          padded(name_of(there.bed.first) + "–" + name_of(there.bed.last), 11),
                          padded(fmt::format("{}–{}", there.bed.left_column + 1, there.bed.right_column + 1), 8),
                          there.shaping.after, decreases_words(there.shaping));
    }
  }
  return text;
}

// Centred pieces are not meant to meet; what is told of them is where a middle is missed.
std::string seams_text(const SizePlan& size, YokeSeams wished) {
  const bool centred = wished == YokeSeams::centred;
  std::string text;
  for (std::size_t tier = 0; tier < size.seams.size(); ++tier) {
    for (const SeamMeeting& seam : size.seams[tier].seams) {
      if (!seam.meets && !centred) {
        text += fmt::format("seam of tier {} between {} and {}: {} {}\n", tier + 1, size.pieces[seam.left].name,
                            size.pieces[seam.right].name, counted(std::abs(seam.mismatch), "column is", "columns are"),
                            seam.mismatch > 0 ? "left out" : "there twice");
      }
    }
    if (!size.seams[tier].mend.empty()) {
      text += fmt::format("tier {}: {}\n", tier + 1, size.seams[tier].mend);
    }
  }
  if (text.empty()) {
    text = centred ? "the middle of the repeat lies at the middle of every piece, and seams are alike\n"
                   : "all seams meet\n";
  }
  return text;
}

std::string amount_text(const YarnAmount& yarn) {
  std::string text = fmt::format("yarn {}:", yarn.key);
  if (yarn.grams) {
    text += fmt::format(" {:.0f} g", std::ceil(*yarn.grams));
  }
  if (yarn.metres) {
    text += fmt::format("{} {:.0f} m", yarn.grams ? "," : "", std::ceil(*yarn.metres));
  }
  if (!yarn.grams && !yarn.metres) {
    text += " not known; metres_per_100g would tell";
  }
  return text + fmt::format(" (by {})\n", yarn.from == AmountFrom::several ? "swatch and loop"
                                          : yarn.from == AmountFrom::gauge ? "the loop that the gauge suggests"
                                                                           : word_for(yarn.from));
}

std::string text_of(const YokePlan& plan, YokeSeams wished) {
  std::string text;
  for (const SizePlan& size : plan.sizes) {
    text += fmt::format("{}size {}\n{}", text.empty() ? "" : "\n", size.size, table_of(size));
    text += seams_text(size, wished) + with_capital(text_of(size.rows)) + "\n";
    for (const YarnAmount& yarn : size.yarns) {
      text += amount_text(yarn);
    }
    text += fmt::format("squared differences from the straight line {:.3f}; proved: no counts that keep the rules have "
                        "less than {:.3f}\n",
                        size.proof.squares, size.proof.bound);
  }
  for (const LoopCheck& check : plan.loops) {
    text += text_of(check) + "\n";
  }
  return text;
}

int seams_unmet(const YokePlan& plan, YokeSeams wished) {
  int unmet = 0;
  for (const SizePlan& size : plan.sizes) {
    for (const TierSeams& tier : size.seams) {
      unmet += wished != YokeSeams::free && !tier.mend.empty() ? 1 : 0;
    }
  }
  return unmet;
}

// What is no error, such as a key that nobody knows: on standard error, since standard output is the answer.
void tell_notes(const OpenedYoke& opened) {
  for (const ReadingNote& note : opened.notes) {
    if (talk() != Talk::quiet) {
      const std::string line = note.line > 0 ? fmt::format(":{}", note.line) : std::string();
      fmt::print(stderr, "note: {}{}: {}\n", opened.file, line, note.text);
    }
  }
}

Failure must_be_yoke(const std::string& output) {
  if (output.ends_with(".yoke")) {
    return std::nullopt;
  }
  return Error{output, 0, 0, output.empty() ? "-o OUT is missing" : "a yoke is a .yoke file",
               "name the file to write with -o, ending in .yoke"};
}

int write_yoke_file(const Yoke& yoke, const std::string& output) {
  if (const Failure failure = write_file(output, write_yoke(yoke))) {
    return refuse(*failure);
  }
  return print(output + "\n") ? done : cannot;
}

// The places of these names among those of the file.
Result<std::vector<std::size_t>> places_of(const std::vector<std::string>& wished,
                                           const std::vector<std::string>& names, const std::string& what) {
  std::vector<std::size_t> places;
  for (const std::string& name : wished) {
    const auto found = std::ranges::find(names, name);
    if (found == names.end()) {
      return Error{{}, 0, 0, fmt::format("there is no {} '{}'", what, name), "allowed: " + listed(names)};
    }
    places.push_back(static_cast<std::size_t>(found - names.begin()));
  }
  return places;
}

bool wants_sheets(const YokeWishes& wishes) {
  return !wishes.sizes.empty() || !wishes.pieces.empty() || !wishes.sheets.empty() || wishes.paper;
}

int write_sheets(const OpenedYoke& opened, const YokePlan& plan, const YokeWishes& wishes) {
  const auto sizes = places_of(wishes.sizes, opened.yoke.sizes, "size");
  if (!sizes) {
    return refuse(sizes.error());
  }
  std::vector<std::string> names;
  for (const YokePiece& piece : opened.yoke.pieces) {
    names.push_back(piece.name);
  }
  const auto pieces = places_of(wishes.pieces, names, "piece");
  if (!pieces) {
    return refuse(pieces.error());
  }
  const int written =
      write_all(yoke_files(opened, plan, wishes.output, {wishes.paper, *sizes, *pieces, wishes.sheets}));
  return written == done && seams_unmet(plan, opened.yoke.fit.seams) > 0 ? faults_found : written;
}

} // namespace

int plan_yoke_file(const YokeWishes& wishes) {
  if (wishes.fresh) {
    if (const Failure failure = must_be_yoke(wishes.output)) {
      return refuse(*failure);
    }
    const auto yoke = new_yoke(wishes);
    return yoke ? write_yoke_file(*yoke, wishes.output) : refuse(yoke.error());
  }
  if (wishes.file.empty()) {
    return refuse(Error{{}, 0, 0, "FILE is missing", "name a .yoke file, or make a new one with --new"});
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
    if (const Failure failure = must_be_yoke(wishes.output)) {
      return refuse(*failure);
    }
    const auto split = split_to_fit(*opened);
    return split ? write_yoke_file(*split, wishes.output) : refuse(split.error());
  }
  if (wishes.output.empty() && wants_sheets(wishes)) {
    return refuse(Error{{},
                        0,
                        0,
                        "--sizes, --pieces, --sheets and --paper choose what is printed",
                        "name the file for the sheets with -o, ending in .pdf"});
  }
  if (wishes.output.ends_with(".yoke")) {
    return refuse(Error{wishes.output, 0, 0, "a .yoke file is written with --split and --new",
                        "add one of them, or let the name of the sheets end in .pdf"});
  }
  if (wishes.json && !wishes.output.empty()) {
    return refuse(Error{wishes.output, 0, 0, "--json goes to standard output", "leave out -o, or --json"});
  }
  const auto plan = plan_yoke(*opened);
  if (!plan) {
    return refuse(plan.error());
  }
  if (!wishes.output.empty()) {
    return write_sheets(*opened, *plan, wishes);
  }
  if (!print(wishes.json ? json_of(*plan) : text_of(*plan, opened->yoke.fit.seams))) {
    return cannot;
  }
  return seams_unmet(*plan, opened->yoke.fit.seams) == 0 ? done : faults_found;
}

} // namespace punchwright::cli
