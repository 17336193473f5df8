// A yoke's sizes as JSON; the form stands in docs/json-forms.md and docs/yoke.schema.json.
// Numbers that are measured are rounded to what can be told of them.
#include "cli/yoke_answer.hpp"

#include <cmath>
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

// `hung_on`: the work is hung on again above it.
Json json_of(const TierOfPiece& tier, int number, bool hung_on) {
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
  entry["clear_of_seam_by"] =
      tier.shaping.before == tier.shaping.after ? Json(nullptr) : Json(tier.shaping.clear_of_seam);
  entry["clear_of_seam_wished"] = tier.shaping.wished.clear_of_seam;
  entry["clear_of_edge"] = tier.shaping.kept_off_edge;
  entry["clear_of_centre"] = tier.shaping.kept_off_centre;
  entry["astray"] = tier.shaping.astray;
  entry["needles_after"] = hung_on ? Json::array({name_of(tier.first_after), name_of(tier.last_after)}) : Json(nullptr);
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

Json json_of(const OpenedYoke& opened, const SizePlan& size) {
  Json entry;
  entry["size"] = size.size;
  entry["pieces"] = Json::array();
  for (const PieceOfSize& piece : size.pieces) {
    Json tiers = Json::array();
    for (const TierOfPiece& tier : piece.tiers) {
      const std::size_t number = tiers.size();
      tiers.push_back(json_of(tier, static_cast<int>(number) + 1, is_hung_on_again(opened, tier, number)));
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
    entry["yarn"].push_back({{"yarn", std::string(1, yarn.yarn.key)},
                             {"name", yarn.yarn.name},
                             {"colour", hex_of(yarn.yarn.colour)},
                             {"grams", json_or_null(yarn.grams)},
                             {"metres", json_or_null(yarn.metres)},
                             {"from", word_for(yarn.from)}});
  }
  entry["squares"] = rounded(size.proof.squares, 1e6);
  entry["bound"] = rounded(size.proof.bound, 1e6);
  return entry;
}

Json json_of(const std::string& size, const Error& fault) {
  Json entry;
  entry["size"] = size;
  entry["file"] = fault.file;
  entry["line"] = fault.line;
  entry["column"] = fault.column;
  entry["message"] = fault.message;
  entry["remedy"] = fault.remedy;
  return entry;
}

} // namespace

std::string json_of(const OpenedYoke& opened, const SizesPlanned& planned) {
  Json answer;
  answer["format"] = 1;
  answer["sizes"] = Json::array();
  answer["faults"] = Json::array();
  for (std::size_t size = 0; size < planned.plan.sizes.size(); ++size) {
    if (planned.fits(size)) {
      answer["sizes"].push_back(json_of(opened, planned.plan.sizes[size]));
    }
    for (const Error& fault : planned.faults[size]) {
      answer["faults"].push_back(json_of(planned.plan.sizes[size].size, fault));
    }
  }
  answer["loops"] = Json::array();
  for (const LoopCheck& check : planned.plan.loops) {
    answer["loops"].push_back({{"yarn", std::string(1, check.key)},
                               {"loop_mm", check.loop_mm},
                               {"constant", rounded(check.constant, 10)},
                               {"plausible", check.plausible}});
  }
  return answer.dump() + "\n";
}

} // namespace punchwright::cli
