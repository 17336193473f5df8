// Any edit of any document, by dice: for tests that hold whatever is done.
// Some are refused, as those of a careless hand are.
#pragma once

#include "design/edits.hpp"
#include "support/builders.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright::test {

// Any edit at all, some of which are refused.
inline Edit any_edit(Dice& dice, const Document& document) {
  const int width = document.grid.width();
  const int height = document.grid.height();
  const auto column = [&] { return dice.throw_one(width); };
  const auto row = [&] { return dice.throw_one(height); };
  switch (dice.throw_one(21)) {
  case 0: return SetCells{{{column(), row()}, {column(), row()}}, dice.heads()};
  case 1: return Fill{{{column(), row()}, 1 + column(), 1 + row()}, dice.heads()};
  case 2: return Shift{dice.throw_one(400) - 200, dice.throw_one(400) - 200};
  case 3: return MirrorLeftRight{};
  case 4: return MirrorUpsideDown{};
  case 5: return Invert{{{column(), row()}, 1 + column(), 1 + row()}};
  case 6: return InsertRows{dice.throw_one(height + 1), 1 + dice.throw_one(3)};
  case 7: return DeleteRows{row(), 1 + dice.throw_one(3)};
  case 8: return DuplicateRows{row(), 1 + dice.throw_one(3)};
  case 9: return InsertColumns{dice.throw_one(width + 1), 1 + dice.throw_one(3)};
  case 10: return DeleteColumns{column(), 1 + dice.throw_one(3)};
  case 11: return DuplicateColumns{column(), 1 + dice.throw_one(3)};
  case 12: return Resize{1 + dice.throw_one(80), 1 + dice.throw_one(12)};
  case 13: {
    if (dice.heads()) {
      Grid other(width, height);
      other.set(column(), row(), true);
      return Redraw{other, "redraw"};
    }
    return Paste{{column(), row()}, drawn({"#.#", ".#."}).grid};
  }
  case 14: {
    Document settings = document;
    settings.title = std::to_string(dice.throw_one(3));
    settings.gauge.stitches = 10 + dice.throw_one(3);
    return ChangeSettings{settings};
  }
  case 19: {
    StitchMarks marks = document.marks;
    set_mark(marks.caught, document.grid, column(), row(), dice.heads());
    set_mark(marks.kept, document.grid, column(), row(), dice.heads());
    return ChangeMarks{marks, "catch a float"};
  }
  case 15: return MoveRows{row(), 1 + dice.throw_one(3), row(), MovedYarns::of_the_place};
  case 16: return MoveRows{row(), 1 + dice.throw_one(3), row(), MovedYarns::their_own};
  case 17: return MoveColumns{column(), 1 + dice.throw_one(3), column()};
  case 18:
    return Resize{1 + dice.throw_one(80), 1 + dice.throw_one(12), static_cast<AcrossAnchor>(dice.throw_one(3)),
                  static_cast<UpAnchor>(dice.throw_one(3))};
  default: {
    const int first = 1 + dice.throw_one(height);
    std::vector<Band> bands{Band{first, 'A', 'B', std::nullopt}};
    if (first < height) {
      bands.push_back(Band{height - first, 'C', dice.heads() ? std::optional('B') : std::nullopt, 2});
    }
    return ChangeBands{bands};
  }
  }
}

} // namespace punchwright::test
