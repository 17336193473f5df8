// Several edits that the user undoes as one.
#pragma once

#include "design/history.hpp"

#include <doctest/doctest.h>
#include <string>
#include <vector>

namespace punchwright::test {

// The document after them; checks on the way that they are one step, and that undoing it gives what was before.
inline Document done_as_one_step(const Document& before, const std::vector<Edit>& edits, const std::string& name) {
  Document after = before;
  History history;
  history.begin_drag(name);
  for (const Edit& edit : edits) {
    REQUIRE_FALSE(history.apply(after, edit));
  }
  history.end_drag();
  CHECK(history.steps().size() == 1);
  Document undone = after;
  REQUIRE(history.undo(undone));
  CHECK(undone == before);
  return after;
}

} // namespace punchwright::test
