// punchwright yoke: a yoke in pieces that fit the bed and meet at the seams, for all sizes at once; or a new one from
// body measurements; its sheets.
#include "cli/columns.hpp"
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "cli/yoke_new.hpp"
#include "design/words.hpp"
#include "files/files.hpp"
#include "pieces/shaping_kinds.hpp"
#include "pieces/yoke_plan.hpp"
#include "words/words.hpp"

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
  entry["astray"] = tier.shaping.astray;
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
    return tr("none");
  }
  const std::string count =
      shaping.increases() > 0 ? said("{} more", shaping.increases()) : std::to_string(shaping.decreases());
  return fmt::format("{}: {}{}", count, words_of(shaping.every),
                     shaping.as_wished() ? "" : "; " + clearance_words(shaping));
}

// A column of the table is as wide as what stands in it, and as its heading.
struct Heading {
  Heading(const char* words, std::size_t least) : text(words), width(std::max(least, width_of(words))) {}
  std::string text;
  std::size_t width;
};

std::string table_of(const SizePlan& size) {
  Heading piece_column(tr("piece"), 0);
  for (const PieceOfSize& piece : size.pieces) {
    piece_column.width = std::max(piece_column.width, width_of(piece.name));
  }
  const Heading tiers(tr("tier"), 4);
  const Heading stitches(tr("stitches"), 8);
  const Heading needles(tr("needles"), 11);
  const Heading columns(tr("columns"), 8);
  const Heading after(tr("after"), 5);
  ShapingKinds kinds;
  for (const PieceOfSize& piece : size.pieces) {
    std::ranges::for_each(piece.tiers, [&](const TierOfPiece& tier) { kinds.add(tier.shaping); });
  }
  std::string text = fmt::format("{}  {}  {}  {}  {}  {}  {}\n", padded(piece_column.text, piece_column.width),
                                 padded_before(tiers.text, tiers.width), padded_before(stitches.text, stitches.width),
                                 padded(needles.text, needles.width), padded(columns.text, columns.width),
                                 padded_before(after.text, after.width),
                                 kinds.of(tr("decreases"), tr("increases"), tr("decreases, increases")));
  for (const PieceOfSize& piece : size.pieces) {
    for (std::size_t tier = 0; tier < piece.tiers.size(); ++tier) {
      const TierOfPiece& there = piece.tiers[tier];
      const std::string shown = fmt::format("{}–{}", there.bed.left_column + 1, there.bed.right_column + 1);
      text +=
          fmt::format("{}  {:>{}}  {:>{}}  {}  {}  {:>{}}  {}\n", padded(piece.name, piece_column.width), tier + 1,
                      tiers.width, there.stitches, stitches.width,
                      padded(name_of(there.bed.first) + "–" + name_of(there.bed.last), needles.width),
                      padded(shown, columns.width), there.shaping.after, after.width, decreases_words(there.shaping));
    }
  }
  return text;
}

std::string seam_text(int tier, const std::string& left, const std::string& right, int mismatch) {
  return mismatch > 0
             ? said_count(mismatch, "seam of tier {1} between {2} and {3}: {0} column is left out",
                          "seam of tier {1} between {2} and {3}: {0} columns are left out", tier, left, right)
             : said_count(-mismatch, "seam of tier {1} between {2} and {3}: {0} column is there twice",
                          "seam of tier {1} between {2} and {3}: {0} columns are there twice", tier, left, right);
}

// Centred pieces are not meant to meet; what is told of them is where a middle is missed.
std::string seams_text(const SizePlan& size, YokeSeams wished) {
  const bool centred = wished == YokeSeams::centred;
  std::string text;
  for (std::size_t tier = 0; tier < size.seams.size(); ++tier) {
    for (const SeamMeeting& seam : size.seams[tier].seams) {
      if (!seam.meets && !centred) {
        text += seam_text(static_cast<int>(tier) + 1, size.pieces[seam.left].name, size.pieces[seam.right].name,
                          seam.mismatch) +
                '\n';
      }
    }
    if (!size.seams[tier].mend.empty()) {
      text += said("tier {}: {}", tier + 1, size.seams[tier].mend) + '\n';
    }
  }
  if (text.empty()) {
    text = centred ? tr("the middle of the repeat lies at the middle of every piece, and seams are alike")
                   : tr("all seams meet");
    text += '\n';
  }
  return text;
}

std::string amount_text(const YarnAmount& yarn) {
  std::string amount;
  if (yarn.grams) {
    amount = said("{} g", decimal(std::ceil(*yarn.grams), 0));
  }
  if (yarn.metres) {
    amount += (amount.empty() ? "" : ", ") + said("{} m", decimal(std::ceil(*yarn.metres), 0));
  }
  if (amount.empty()) {
    amount = tr("not known; metres_per_100g would tell");
  }
  switch (yarn.from) {
  case AmountFrom::swatch: return said("yarn {}: {} (by swatch)", yarn.key, amount);
  case AmountFrom::loop: return said("yarn {}: {} (by loop)", yarn.key, amount);
  case AmountFrom::gauge: return said("yarn {}: {} (by the loop that the gauge suggests)", yarn.key, amount);
  case AmountFrom::several: break;
  }
  return said("yarn {}: {} (by swatch and loop)", yarn.key, amount);
}

std::string text_of(const YokePlan& plan, YokeSeams wished) {
  std::string text;
  for (const SizePlan& size : plan.sizes) {
    text += fmt::format("{}{}\n{}", text.empty() ? "" : "\n", said("size {}", size.size), table_of(size));
    text += seams_text(size, wished) + with_capital(text_of(size.rows)) + "\n";
    for (const YarnAmount& yarn : size.yarns) {
      text += amount_text(yarn) + '\n';
    }
    text += said("squared differences from the straight line {}; proved: no counts that keep the rules have less than "
                 "{}",
                 decimal(size.proof.squares, 3), decimal(size.proof.bound, 3)) +
            '\n';
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
      fmt::print(stderr, "{}\n", said("note: {}{}: {}", opened.file, line, note.text));
    }
  }
}

Failure must_be_yoke(const std::string& output) {
  if (output.ends_with(".yoke")) {
    return std::nullopt;
  }
  return Error{output, 0, 0, output.empty() ? tr("-o OUT is missing") : tr("a yoke is a .yoke file"),
               tr("name the file to write with -o, ending in .yoke")};
}

int write_yoke_file(const Yoke& yoke, const std::string& output) {
  if (const Failure failure = write_file(output, write_yoke(yoke))) {
    return refuse(*failure);
  }
  return print(output + "\n") ? done : cannot;
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

int write_sheets(const OpenedYoke& opened, const YokePlan& plan, const YokeWishes& wishes) {
  const auto sizes = places_of(wishes.sizes, opened.yoke.sizes,
                               [](const std::string& name) { return said("there is no size '{}'", name); });
  if (!sizes) {
    return refuse(sizes.error());
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
                        tr("--sizes, --pieces, --sheets and --paper choose what is printed"),
                        tr("name the file for the sheets with -o, ending in .pdf")});
  }
  if (wishes.output.ends_with(".yoke")) {
    return refuse(Error{wishes.output, 0, 0, tr("a .yoke file is written with --split and --new"),
                        tr("add one of them, or let the name of the sheets end in .pdf")});
  }
  if (wishes.json && !wishes.output.empty()) {
    return refuse(Error{wishes.output, 0, 0, tr("--json goes to standard output"), tr("leave out -o, or --json")});
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
