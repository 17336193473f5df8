// punchwright mend: a design in which no float is too long, with as few stitches changed as can be.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "cli/places.hpp"
#include "design/repeat_file.hpp"
#include "design/words.hpp"
#include "files/files.hpp"
#include "mending/mend.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace punchwright::cli {
namespace {

using Json = nlohmann::ordered_json;

std::string json_of(const Mended& mended, int limit) {
  Json answer;
  answer["format"] = 1;
  answer["limit"] = limit;
  answer["count"] = mended.changed.size();
  answer["neighbours"] = mended.pairs;
  answer["proved"] = mended.proved;
  answer["changed"] = Json::array();
  for (const Cell& cell : mended.changed) {
    answer["changed"].push_back({{"row", cell.row + 1},
                                 {"column", cell.column + 1},
                                 {"to", mended.drawing.at(cell.column, cell.row) ? "contrast" : "main"}});
  }
  answer["unmendable"] = Json::array();
  for (const Unmendable& left : mended.unmendable) {
    answer["unmendable"].push_back({{"row", left.row + 1}, {"columns", {left.first_column + 1, left.last_column + 1}}});
  }
  return answer.dump() + "\n";
}

std::string text_of(const Mended& mended, int limit) {
  std::string text;
  int told = -1;
  for (const Cell& cell : mended.changed) {
    if (cell.row != told) {
      told = cell.row;
      text += fmt::format("row {}: {}\n", told + 1, words_for_changes(mended, told));
    }
  }
  for (const Unmendable& left : mended.unmendable) {
    text += fmt::format("row {}: can't be mended; in columns {} to {} no stitch that may be changed breaks the float\n",
                        left.row + 1, left.first_column + 1, left.last_column + 1);
  }
  if (mended.changed.empty()) {
    return text + (mended.unmendable.empty() ? fmt::format("no float passes more than {}: nothing to mend\n",
                                                           counted(limit, "stitch", "stitches"))
                                             : "nothing was changed\n");
  }
  text += fmt::format("{} changed, the fewest that do; {} of them side by side in neighbouring rows\n",
                      counted(std::ssize(mended.changed), "stitch", "stitches"),
                      mended.pairs == 0 ? "no two" : counted(mended.pairs, "pair", "pairs"));
  return text + (mended.proved ? "proved: no other choice of as few stitches lies better\n"
                               : "not proved: another choice of as few stitches may lie better\n");
}

} // namespace

int mend_file(const MendingWishes& wishes) {
  if (!wishes.output.ends_with(".repeat")) {
    return refuse(Error{wishes.output, 0, 0, "a mended design is a .repeat file", "give it a name that ends so"});
  }
  const auto opened = open_file(wishes.file);
  if (!opened) {
    return refuse(opened.error());
  }
  Document design = opened->document;
  MendWishes how = mend_wishes(design, opened->profile);
  for (const std::string& place : wishes.protect) {
    const auto area = area_in(place, design.grid.width(), design.grid.height());
    if (!area) {
      return refuse(area.error());
    }
    protect(how, design.grid, *area);
  }
  const Mended mended = mend(design.grid, how);
  design.grid = mended.drawing;
  if (const Failure failure = write_file(wishes.output, write_repeat(design))) {
    return refuse(*failure);
  }
  if (!print(wishes.json ? json_of(mended, how.limit) : text_of(mended, how.limit) + wishes.output + "\n")) {
    return cannot;
  }
  return code_for_faults(check(design, opened->profile), wishes.output);
}

} // namespace punchwright::cli
