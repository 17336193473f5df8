// Which ways some rows of shaping go, so that words call each what it is: decreases, increases, or both.
// Nothing shaped at all counts as decreases, which is what a yoke has.
#pragma once

#include "pieces/shaping.hpp"

namespace punchwright {

struct ShapingKinds {
  bool decreases = false;
  bool increases = false;

  void add(const Shaping& shaping) {
    decreases = decreases || shaping.decreases() > 0;
    increases = increases || shaping.increases() > 0;
  }
  [[nodiscard]] const char* of(const char* fewer, const char* more, const char* both) const {
    return !increases ? fewer : decreases ? both : more;
  }
};

} // namespace punchwright
