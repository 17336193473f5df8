// Reasons for rows, in words.
#include "plan/reasons.hpp"

#include "words/words.hpp"

namespace punchwright {

std::string_view word_for(Why why) {
  switch (why) {
  case Why::yarn_change: return "yarn-change";
  case Why::change_side: return "change-side";
  case Why::plain_below: return "plain-below";
  case Why::even_circuit: return "even-circuit";
  case Why::drawn: break;
  }
  return "drawn";
}

std::string_view reason_for(Why why) {
  switch (why) {
  case Why::yarn_change: return tr("plain row: the contrast yarn changes");
  case Why::change_side: return tr("plain row: the contrast is changed on the other side");
  case Why::plain_below: return tr("plain row: asked for below the next band");
  case Why::even_circuit: return tr("plain row: every circuit begins on the same side");
  case Why::drawn: break;
  }
  return tr("drawn");
}

} // namespace punchwright
