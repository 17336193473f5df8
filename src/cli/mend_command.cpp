// punchwright mend: a design in which no float is too long, with as few stitches changed as can be.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "cli/places.hpp"
#include "design/repeat_file.hpp"
#include "files/files.hpp"
#include "mending/catches.hpp"
#include "mending/mend.hpp"
#include "mending/symmetric_mend.hpp"
#include "words/words.hpp"

#include <nlohmann/json.hpp>
#include <optional>

namespace punchwright::cli {
namespace {

using Json = nlohmann::ordered_json;

// What was done besides changing stitches.
struct ByHand {
  std::optional<Caught> caught;
  std::vector<DrawnFloat> floats; // that are caught
  std::vector<DrawnFloat> accepted;
};

// The symmetry that the mend was asked to keep: p1 with the whole repeat where the drawing has none.
struct KeptSymmetry {
  bool asked = false;
  bool there = false;
  FriezeGroup group = FriezeGroup::p1;
  bool whole = false;        // asked to be
  std::ptrdiff_t fewest = 0; // stitches that would do without it
  bool more_changes = false; // were needed, and made
};

// First and last.
Json columns_of(const DrawnFloat& one, const Document& design) {
  return {one.first + 1, (one.first + one.stitches - 1) % design.grid.width() + 1};
}

Json json_of(const Caught& caught, const std::vector<DrawnFloat>& floats, const Document& design) {
  Json answer;
  answer["count"] = caught.catches;
  answer["neighbours"] = caught.pairs;
  answer["proved"] = caught.proved;
  answer["floats"] = Json::array();
  for (const DrawnFloat& one : floats) {
    Json columns = Json::array();
    for (int place = 0; place < one.stitches; ++place) {
      const int column = (one.first + place) % design.grid.width();
      if (is_marked(caught.marks.caught, column, one.row)) {
        columns.push_back(column + 1);
      }
    }
    answer["floats"].push_back({{"row", one.row + 1}, {"onto", std::move(columns)}});
  }
  return answer;
}

std::string json_of(const Mended& mended, int limit, const KeptSymmetry& kept, const ByHand& by_hand,
                    const Document& design) {
  Json answer;
  answer["format"] = 1;
  answer["limit"] = limit;
  answer["count"] = mended.changed.size();
  answer["neighbours"] = mended.pairs;
  answer["proved"] = mended.proved;
  if (kept.asked) {
    answer["symmetry"] = {{"group", notation_of(kept.group)}, {"unlike", mended.unlike}};
    if (kept.whole) {
      answer["symmetry"]["fewest"] = kept.fewest;
    }
  }
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
  if (by_hand.caught) {
    answer["caught"] = json_of(*by_hand.caught, by_hand.floats, design);
  }
  if (!by_hand.accepted.empty()) {
    answer["accepted"] = Json::array();
    for (const DrawnFloat& one : by_hand.accepted) {
      answer["accepted"].push_back({{"row", one.row + 1}, {"columns", columns_of(one, design)}});
    }
  }
  return answer.dump() + "\n";
}

std::string line(const std::string& words) {
  return words + '\n';
}

std::string text_of(const KeptSymmetry& kept, const Mended& mended) {
  if (!kept.asked) {
    return {};
  }
  if (!kept.there) {
    return line(tr("the drawing has no symmetry to keep"));
  }
  if (mended.unlike == 0) {
    const std::string words = line(said("the symmetry of the drawing ({}) is kept", notation_of(kept.group)));
    return kept.more_changes ? words + line(said_count(kept.fewest, "{} changed stitch would do, but breaks it",
                                                       "{} changed stitches would do, but break it"))
                             : words;
  }
  const std::string words = line(said_count(
      mended.unlike, "{} pair of stitches that the symmetry of the drawing ({}) makes alike differ now",
      "{} pairs of stitches that the symmetry of the drawing ({}) makes alike differ now", notation_of(kept.group)));
  return kept.whole ? words + line(tr("no mend keeps the symmetry whole")) : words;
}

std::string text_of(const Mended& mended, int limit, const KeptSymmetry& kept) {
  std::string text;
  int told = -1;
  for (const Cell& cell : mended.changed) {
    if (cell.row != told) {
      told = cell.row;
      text += line(said("row {}: {}", told + 1, words_for_changes(mended, told)));
    }
  }
  for (const Unmendable& left : mended.unmendable) {
    text += line(said("row {}: can't be mended; in columns {} to {} no stitch that may be changed breaks the float",
                      left.row + 1, left.first_column + 1, left.last_column + 1));
  }
  if (mended.changed.empty()) {
    return text + line(mended.unmendable.empty()
                           ? said_count(limit, "no float passes more than {} stitch: nothing to mend",
                                        "no float passes more than {} stitches: nothing to mend")
                           : tr("nothing was changed"));
  }
  const auto count = std::ssize(mended.changed);
  text += (kept.more_changes ? said_count(count, "{} stitch changed, the fewest that keep the symmetry",
                                          "{} stitches changed, the fewest that keep the symmetry")
                             : said_count(count, "{} stitch changed, the fewest that do",
                                          "{} stitches changed, the fewest that do")) +
          "; " +
          line(mended.pairs == 0 ? tr("no two of them side by side in neighbouring rows")
                                 : said_count(mended.pairs, "{} pair of them side by side in neighbouring rows",
                                              "{} pairs of them side by side in neighbouring rows"));
  return text + text_of(kept, mended) +
         line(mended.proved ? tr("proved: no other choice of as few stitches lies better")
                            : tr("not proved: another choice of as few stitches may lie better"));
}

std::string text_of(const ByHand& by_hand) {
  std::string text;
  int told = -1;
  for (const DrawnFloat& one : by_hand.floats) {
    if (one.row != told) {
      told = one.row;
      text +=
          line(said("row {}: caught by hand in {}", told + 1, words_for_catches(by_hand.caught->marks.caught, told)));
    }
  }
  for (const DrawnFloat& one : by_hand.accepted) {
    text += line(said_count(one.stitches, "row {1}: the float of {0} stitch from column {2} on is accepted",
                            "row {1}: the float of {0} stitches from column {2} on is accepted", one.row + 1,
                            one.first + 1));
  }
  if (by_hand.caught) {
    const Caught& caught = *by_hand.caught;
    text +=
        said_count(caught.catches, "{} catch, the fewest that do", "{} catches, the fewest that do") + "; " +
        line(caught.pairs == 0 ? tr("no two of all catches side by side in neighbouring rows")
                               : said_count(caught.pairs, "{} pair of all catches side by side in neighbouring rows",
                                            "{} pairs of all catches side by side in neighbouring rows"));
    text += line(caught.proved ? tr("proved: no other choice of as few catches lies better")
                               : tr("not proved: another choice of as few catches may lie better"));
  }
  return text;
}

// The floats that pass a stitch of one of the places.
Result<std::vector<DrawnFloat>> floats_at(const std::vector<std::string>& places, const Document& design,
                                          const Profile& profile) {
  const int width = design.grid.width();
  const std::vector<DrawnFloat> floats = floats_too_long(design, profile);
  std::vector<char> named(floats.size(), 0);
  for (const std::string& place : places) {
    const auto area = place == "all" ? Result(Area{{0, 0}, width, design.grid.height()})
                                     : area_in(place, width, design.grid.height());
    if (!area) {
      return area.error();
    }
    for (std::size_t index = 0; index < floats.size(); ++index) {
      const DrawnFloat& one = floats[index];
      for (int column = 0; column < area->columns; ++column) {
        const bool in_rows = one.row >= area->corner.row && one.row < area->corner.row + area->rows;
        if (in_rows && one.passes(area->corner.column + column, width)) {
          named[index] = 1;
        }
      }
    }
  }
  std::vector<DrawnFloat> found;
  for (std::size_t index = 0; index < floats.size(); ++index) {
    if (named[index] != 0) {
      found.push_back(floats[index]);
    }
  }
  return found;
}

// Accepts and catches what is asked for; an error where a place is none.
Result<ByHand> do_by_hand(const MendingWishes& wishes, Document& design, const Profile& profile) {
  ByHand by_hand;
  auto accepted = floats_at(wishes.accepted, design, profile);
  if (!accepted) {
    return accepted.error();
  }
  by_hand.accepted = std::move(accepted).value();
  design.marks = accept_floats(design, by_hand.accepted);
  auto caught = floats_at(wishes.caught, design, profile);
  if (!caught) {
    return caught.error();
  }
  by_hand.floats = std::move(caught).value();
  if (!wishes.caught.empty()) {
    by_hand.caught = catch_floats(design, profile, by_hand.floats);
    design.marks = by_hand.caught->marks;
  }
  return by_hand;
}

Mended mend_so(const Grid& drawing, const MendWishes& how, KeptSymmetry& kept) {
  if (!kept.whole) {
    return mend(drawing, how);
  }
  const MendOffer offer = offer_mend(drawing, how);
  kept.fewest = std::ssize(offer.fewest.changed);
  kept.more_changes = offer.symmetric.has_value();
  return offer.first();
}

} // namespace

int mend_file(const MendingWishes& wishes) {
  if (!wishes.output.ends_with(".repeat")) {
    return refuse(
        Error{wishes.output, 0, 0, tr("a mended design is a .repeat file"), tr("give it a name that ends so")});
  }
  const auto opened = open_file(wishes.file);
  if (!opened) {
    return refuse(opened.error());
  }
  Document design = opened->document;
  for (const std::string& place : wishes.protect) {
    const auto area = area_in(place, design.grid.width(), design.grid.height());
    if (!area) {
      return refuse(area.error());
    }
    for (int row = 0; row < area->rows; ++row) {
      for (int column = 0; column < area->columns; ++column) {
        set_mark(design.marks.kept, design.grid, area->corner.column + column, area->corner.row + row, true);
      }
    }
  }
  const auto by_hand = do_by_hand(wishes, design, opened->profile);
  if (!by_hand) {
    return refuse(by_hand.error());
  }
  MendWishes how = mend_wishes(design, opened->profile);
  KeptSymmetry kept;
  if (wishes.symmetry || wishes.whole_symmetry) {
    how.symmetry = symmetry_to_keep(design.grid);
    kept = {true, how.symmetry.has_value(), how.symmetry ? how.symmetry->group : FriezeGroup::p1,
            wishes.whole_symmetry};
  }
  Mended mended;
  mended.drawing = design.grid;
  if (!wishes.no_changes) {
    mended = mend_so(design.grid, how, kept);
    design.grid = mended.drawing;
  }
  if (const Failure failure = write_file(wishes.output, write_repeat(design))) {
    return refuse(*failure);
  }
  const bool changes_asked = wishes.caught.empty() && wishes.accepted.empty() && !wishes.no_changes;
  const bool tell_changes = changes_asked || !mended.changed.empty() || !mended.unmendable.empty();
  const std::string text =
      text_of(*by_hand) + (tell_changes ? text_of(mended, how.limit, kept) : std::string()) + wishes.output + "\n";
  if (!print(wishes.json ? json_of(mended, how.limit, kept, *by_hand, design) : text)) {
    return cannot;
  }
  return code_for_faults(check(design, opened->profile), wishes.output);
}

} // namespace punchwright::cli
