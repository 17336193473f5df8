// Fabric and drawing side by side.
#include "knitting/comparison.hpp"

#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

std::string needles_text(const Difference& difference) {
  return difference.first == difference.last ? name_of(difference.first)
                                             : name_of(difference.first) + "–" + name_of(difference.last);
}

class Comparing {
public:
  Comparing(const Fabric& fabric, const Document& document, const Profile& profile, const std::vector<WantedRow>& rows,
            const ComparisonWishes& wishes)
      : fabric_(fabric), document_(document), rows_(rows), wishes_(wishes),
        columns_(columns_on_the_bed(document, profile)), first_(first_needle_of(document)) {}

  Comparison all() {
    const int wanted = wishes_.rows_before + static_cast<int>(rows_.size());
    const char first_main = document_.bands.front().main;
    for (int row = 0; row < std::min(wanted, fabric_.rows()); ++row) {
      const int index = row - wishes_.rows_before;
      const WantedRow plain{-1, first_main, 0};
      compare_row(row, index < 0 ? plain : rows_[static_cast<std::size_t>(index)], index >= 0);
    }
    // What is knitted above the last row is the knitter's own, but it must hold.
    for (int row = wanted; row < fabric_.rows(); ++row) {
      compare_row(row, WantedRow{-1, rows_.empty() ? first_main : rows_.back().main, 0}, false);
    }
    if (fabric_.rows() < wanted) {
      add({DifferenceKind::missing_row, fabric_.rows() + 1, first_, first_, 0, 0, wanted - fabric_.rows()});
    }
    if (fabric_.rows() > wanted + 1) { // one plain row is knitted behind the last
      add({DifferenceKind::surplus_row, wanted + 2, first_, first_, 0, 0, fabric_.rows() - wanted - 1});
    }
    return std::move(result_);
  }

private:
  void compare_row(int row, const WantedRow& wanted, bool counts) {
    const int stitches = static_cast<int>(columns_.size());
    std::optional<Difference> open; // neighbouring stitches with the same fault are told as one
    for (int stitch = 0; stitch < stitches; ++stitch) {
      const Needle needle{first_.position + stitch};
      const Made& cell = fabric_.at(row, needle);
      const bool contrast = wanted.drawn >= 0 && wanted.contrast != 0 &&
                            document_.grid.at(columns_[static_cast<std::size_t>(stitch)], wanted.drawn);
      const bool selvedge = wishes_.end_needles && wanted.contrast != 0 && (stitch == 0 || stitch + 1 == stitches);
      const char yarn = contrast || selvedge ? wanted.contrast : wanted.main;
      (selvedge ? result_.selvedges : result_.stitches) += counts ? 1 : 0;
      const auto fault = fault_of(cell, yarn);
      if (open && fault && open->kind == *fault && open->wanted == yarn && open->found == cell.yarn) {
        open->last = needle;
        continue;
      }
      if (open) {
        add(*open);
        open.reset();
      }
      if (fault) {
        open = Difference{*fault, row + 1, needle, needle, yarn, cell.yarn, 0};
      }
    }
    if (open) {
      add(*open);
    }
    for (const char yarn : fabric_.loose(row)) {
      add({DifferenceKind::loose_yarn, row + 1, first_, Needle{first_.position + stitches - 1}, 0, yarn, 0});
    }
    for (const FabricFloat& one : fabric_.floats(row)) {
      ++result_.floats;
      const int longest = one.longest_stretch();
      result_.longest_float = std::max(result_.longest_float, longest);
      if (longest > wishes_.longest_float) {
        add({DifferenceKind::long_float, row + 1, one.first, one.last, 0, one.yarn, longest});
      }
      compare_catches(row, wanted, one);
    }
    result_.rows += counts ? 1 : 0;
  }

  void compare_catches(int row, const WantedRow& wanted, const FabricFloat& one) {
    if (wanted.drawn < 0 || !any_marked(document_.marks.caught, wanted.drawn)) {
      return;
    }
    for (Needle needle = one.first; needle <= one.last; ++needle.position) {
      const auto stitch = static_cast<std::size_t>(needle.position - first_.position);
      if (needle >= first_ && stitch < columns_.size() &&
          is_marked(document_.marks.caught, columns_[stitch], wanted.drawn) &&
          std::ranges::find(one.caught, needle) == one.caught.end()) {
        add({DifferenceKind::not_caught, row + 1, needle, needle, 0, one.yarn, 0});
      }
    }
  }

  static std::optional<DifferenceKind> fault_of(const Made& cell, char yarn) {
    if (cell.yarn == 0) {
      return DifferenceKind::missing_stitch;
    }
    if (cell.yarn != yarn) {
      return DifferenceKind::wrong_yarn;
    }
    if (cell.dropped) {
      return DifferenceKind::dropped;
    }
    return cell.cast_on ? std::optional(DifferenceKind::cast_on) : std::nullopt;
  }

  void add(const Difference& difference) { result_.differences.push_back(difference); }

  const Fabric& fabric_;
  const Document& document_;
  const std::vector<WantedRow>& rows_;
  const ComparisonWishes& wishes_;
  std::vector<int> columns_;
  Needle first_;
  Comparison result_;
};

} // namespace

// The knit side shows the bed mirrored: a step to the right along the bed is one to the left in the drawing.
//
//     bed       … L13 | L12  L11 …              drawing   1 2 3 … W | 1 2 …
//     column        1 |   W  W-1 …              with a card its first needle knits column W
std::vector<int> columns_on_the_bed(const Document& document, const Profile& profile) {
  const int width = document.grid.width();
  const Needle first = first_needle_of(document);
  Needle anchor{width == 1 ? 0 : -(width / 2)};
  int column = width - 1;
  if (profile.card) {
    anchor = profile.card->first_needle;
  } else if (document.piece.first_column) {
    anchor = first;
    column = *document.piece.first_column - 1;
  }
  while (anchor < first) {
    ++anchor.position;
    column = column == 0 ? width - 1 : column - 1;
  }
  while (anchor > first) {
    --anchor.position;
    column = column == width - 1 ? 0 : column + 1;
  }
  std::vector<int> columns;
  for (int stitch = 0; stitch < stitches_of(document); ++stitch) {
    columns.push_back(column);
    column = column == 0 ? width - 1 : column - 1;
  }
  return columns;
}

Comparison compare_with_drawing(const Fabric& fabric, const Document& document, const Profile& profile,
                                const std::vector<WantedRow>& rows, const ComparisonWishes& wishes) {
  return Comparing(fabric, document, profile, rows, wishes).all();
}

std::string_view word_for(DifferenceKind kind) {
  switch (kind) {
  case DifferenceKind::missing_row: return "missing-row";
  case DifferenceKind::surplus_row: return "surplus-row";
  case DifferenceKind::wrong_yarn: return "wrong-yarn";
  case DifferenceKind::missing_stitch: return "missing-stitch";
  case DifferenceKind::dropped: return "dropped";
  case DifferenceKind::cast_on: return "cast-on";
  case DifferenceKind::loose_yarn: return "loose-yarn";
  case DifferenceKind::long_float: return "long-float";
  case DifferenceKind::not_caught: return "not-caught";
  }
  return "";
}

std::string words_of(const Difference& difference, int rows_before) {
  const int row = difference.row - rows_before;
  const std::string where = row < 1 ? said("row {} of the setting-up", difference.row) : said("row {}", row);
  switch (difference.kind) {
  case DifferenceKind::missing_row:
    return said_count(difference.stitches, "{} row is missing, from {} on", "{} rows are missing, from {} on", where);
  case DifferenceKind::surplus_row:
    return said_count(difference.stitches, "{} more row than drawn", "{} more rows than drawn");
  case DifferenceKind::wrong_yarn:
    return said("{}, {}: knitted in {}, should be {}", where, needles_text(difference), difference.found,
                difference.wanted);
  case DifferenceKind::missing_stitch: return said("{}, {}: no stitch", where, needles_text(difference));
  case DifferenceKind::dropped: return said("{}, {}: dropped later", where, needles_text(difference));
  case DifferenceKind::cast_on: return said("{}, {}: a new loop on an empty needle", where, needles_text(difference));
  case DifferenceKind::loose_yarn: return said("{}: {} lies loose across the whole piece", where, difference.found);
  case DifferenceKind::long_float:
    return said("{}, {}: {} floats behind {} stitches", where, needles_text(difference), difference.found,
                difference.stitches);
  case DifferenceKind::not_caught:
    return said("{}, {}: the float of {} is not lifted onto the needle", where, needles_text(difference),
                difference.found);
  }
  return "";
}

} // namespace punchwright
