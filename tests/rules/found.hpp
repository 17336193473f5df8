// Findings of one kind, as the tests of the checks ask for them.
#pragma once

#include "rules/findings.hpp"
#include "support/machines.hpp"

#include <doctest/doctest.h>
#include <vector>

namespace punchwright::test {

inline std::vector<Finding> of_kind(FindingId id, const Document& document, const Profile& profile = card_machine()) {
  std::vector<Finding> found = check(document, profile);
  std::erase_if(found, [&](const Finding& finding) { return finding.id != id; });
  return found;
}

// Of the one finding of that kind.
inline Words only_words(FindingId id, const Document& document, const Profile& profile = card_machine()) {
  const auto found = of_kind(id, document, profile);
  REQUIRE(found.size() == 1);
  return words_of(found.front(), document, profile);
}

} // namespace punchwright::test
