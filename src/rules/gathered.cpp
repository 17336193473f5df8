// Findings that say the same of neighbouring rows, read as one.
#include "rules/findings.hpp"

namespace punchwright {
namespace {

bool continues(const Finding& below, const Finding& above) {
  return (above.id == FindingId::row_all_main || above.id == FindingId::row_all_contrast) && above.id == below.id &&
         above.yarn == below.yarn && above.other == below.other && above.row == below.row + 1;
}

} // namespace

std::vector<FindingGroup> gathered(std::span<const Finding> findings) {
  std::vector<FindingGroup> groups;
  for (std::size_t place = 0; place < findings.size(); ++place) {
    if (place > 0 && continues(findings[place - 1], findings[place])) {
      ++groups.back().count;
    } else {
      groups.push_back({place, 1});
    }
  }
  return groups;
}

} // namespace punchwright
