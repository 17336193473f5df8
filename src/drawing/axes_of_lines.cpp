// The places of axes are counted in half lines: an even one lies on a line, an odd one between two.
#include "design/wrap.hpp"
#include "drawing/axes.hpp"

#include <algorithm>
#include <cstdlib>
#include <ranges>
#include <utility>

namespace punchwright {
namespace {

using Kind = LineChange::Kind;

// The line between the one before `line` and itself, in half lines.
int edge_below(int line) {
  return 2 * line - 1;
}

int after_inserting(int axis, int first, int count) {
  const int edge = edge_below(first);
  return axis > edge ? axis + 2 * count : axis == edge ? axis + count : axis;
}

int after_deleting(int axis, int first, int count) {
  const int low = edge_below(first);
  const int high = edge_below(first + count);
  return axis >= high ? axis - 2 * count : std::min(axis, low);
}

// Inside what is moved it goes along; between the old place and the new one it makes room.
int after_moving(int axis, const LineChange& change) {
  const int low = edge_below(change.first);
  const int high = edge_below(change.first + change.count);
  if (axis > low && axis < high) {
    return axis + 2 * (change.to - change.first);
  }
  const int room = 2 * change.count;
  if (change.to > change.first) {
    return axis >= high && axis < edge_below(change.to + change.count) ? axis - room : axis;
  }
  return axis <= low && axis > edge_below(change.to) ? axis + room : axis;
}

int after(int axis, const LineChange& change, int size) {
  switch (change.kind) {
  case Kind::inserted: return after_inserting(axis, change.first, change.count);
  case Kind::deleted: return after_deleting(axis, change.first, change.count);
  case Kind::moved: return after_moving(axis, change);
  case Kind::shifted: return axis + 2 * change.count;
  case Kind::mirrored: return 2 * (size - 1) - axis;
  }
  return axis;
}

int size_after(int size, const LineChange& change) {
  return change.kind == Kind::inserted  ? size + change.count
         : change.kind == Kind::deleted ? size - change.count
                                        : size;
}

// A change of size puts lines in at either end, or takes them away there.
void resized(std::vector<LineChange>& changes, bool rows, int size, int wanted, int anchor) {
  const int by = wanted - size;
  const int before = anchor == 0 ? 0 : anchor == 1 ? by / 2 : by; // as the edit itself has it
  const int behind = by - before;
  if (before != 0) {
    changes.push_back({before > 0 ? Kind::inserted : Kind::deleted, rows, 0, std::abs(before), 0});
  }
  if (behind > 0) {
    changes.push_back({Kind::inserted, rows, size + before, behind, 0});
  } else if (behind < 0) {
    changes.push_back({Kind::deleted, rows, wanted, -behind, 0});
  }
}

struct ChangesOf {
  int width;
  int height;
  using List = std::vector<LineChange>;

  List operator()(const InsertRows& edit) const { return {{Kind::inserted, true, edit.before, edit.count, 0}}; }
  List operator()(const DeleteRows& edit) const { return {{Kind::deleted, true, edit.first, edit.count, 0}}; }
  List operator()(const DuplicateRows& edit) const {
    return {{Kind::inserted, true, edit.first + edit.count, edit.count, 0}};
  }
  List operator()(const InsertColumns& edit) const { return {{Kind::inserted, false, edit.before, edit.count, 0}}; }
  List operator()(const DeleteColumns& edit) const { return {{Kind::deleted, false, edit.first, edit.count, 0}}; }
  List operator()(const DuplicateColumns& edit) const {
    return {{Kind::inserted, false, edit.first + edit.count, edit.count, 0}};
  }
  List operator()(const MoveRows& edit) const { return {{Kind::moved, true, edit.first, edit.count, edit.to}}; }
  List operator()(const MoveColumns& edit) const { return {{Kind::moved, false, edit.first, edit.count, edit.to}}; }
  List operator()(const Shift& edit) const {
    List changes;
    if (edit.columns != 0) {
      changes.push_back({Kind::shifted, false, 0, edit.columns, 0});
    }
    if (edit.rows != 0) {
      changes.push_back({Kind::shifted, true, 0, edit.rows, 0});
    }
    return changes;
  }
  List operator()(const MirrorLeftRight&) const { return {{Kind::mirrored, false, 0, 0, 0}}; }
  List operator()(const MirrorUpsideDown&) const { return {{Kind::mirrored, true, 0, 0, 0}}; }
  List operator()(const Resize& edit) const {
    List changes;
    resized(changes, false, width, edit.width, static_cast<int>(edit.across));
    resized(changes, true, height, edit.height, static_cast<int>(edit.up));
    return changes;
  }
  template <class Other> List operator()(const Other&) const { return {}; }
};

// Of the upright axes the one nearest to the middle of the drawing, on the plane.
int middle_upright(const Frieze& frieze, int width) {
  int nearest = frieze.upright;
  for (int axis = frieze.upright; axis < 2 * width; axis += frieze.repeat) {
    nearest = std::abs(axis - (width - 1)) < std::abs(nearest - (width - 1)) ? axis : nearest;
  }
  return nearest;
}

} // namespace

std::vector<LineChange> line_changes(const Edit& edit, int width, int height) {
  return std::visit(ChangesOf{width, height}, edit);
}

std::vector<LineChange> taken_back(std::vector<LineChange> changes) {
  std::ranges::reverse(changes);
  for (LineChange& change : changes) {
    switch (change.kind) {
    case Kind::inserted: change.kind = Kind::deleted; break;
    case Kind::deleted: change.kind = Kind::inserted; break;
    case Kind::moved: std::swap(change.first, change.to); break;
    case Kind::shifted: change.count = -change.count; break;
    case Kind::mirrored: break;
    }
  }
  return changes;
}

Frieze axes_after(Frieze frieze, const std::vector<LineChange>& changes, int width, int height) {
  frieze.upright = uses_upright_axis(frieze.group) ? middle_upright(frieze, width) : 0;
  for (const LineChange& change : changes) {
    int& axis = change.rows ? frieze.level : frieze.upright;
    int& size = change.rows ? height : width;
    const bool has_axis = change.rows ? uses_level_axis(frieze.group) : uses_upright_axis(frieze.group);
    axis = has_axis ? after(axis, change, size) : axis;
    size = size_after(size, change);
  }
  const bool halves = !needs_even_repeat(frieze.group) || frieze.repeat % 2 == 0;
  frieze.repeat = halves && width % frieze.repeat == 0 ? frieze.repeat : width;
  frieze.upright = round_edge(frieze.upright, frieze.repeat);
  frieze.level = std::clamp(frieze.level, 0, 2 * (height - 1));
  return frieze;
}

} // namespace punchwright
