// Where the words of a strip's marks stand: below their needles, in two lines, and moved aside only as far as the
// part's ends and the words beside them want it. Apart from the drawing, because every word's place depends on the
// others.
#pragma once

#include <vector>

namespace punchwright {

struct LabelWish {
  double x = 0; // where its needle is
  double width = 0;
};

struct LabelPlace {
  int line = 0; // 0: the upper one
  double middle = 0;
};

// From the left to the right; none reaches beyond `left` and `right` where that can be.
[[nodiscard]] std::vector<LabelPlace> label_places(const std::vector<LabelWish>& wishes, double left, double right);

} // namespace punchwright
