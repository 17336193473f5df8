// What findings are called: an id for scripts, which never changes, and a heading for people.
#include "rules/findings.hpp"
#include "words/words.hpp"

namespace punchwright {

std::string_view stable_id(FindingId id) {
  switch (id) {
  case FindingId::repeat_width: return "repeat-width";
  case FindingId::float_too_long: return "float-too-long";
  case FindingId::float_accepted: return "float-accepted";
  case FindingId::catch_not_needed: return "catch-not-needed";
  case FindingId::row_all_main: return "row-all-main";
  case FindingId::row_all_contrast: return "row-all-contrast";
  case FindingId::yarn_on_other_side: return "yarn-on-other-side";
  case FindingId::yarn_loose_on_piece: return "yarn-loose-on-piece";
  case FindingId::card_too_short_for_loop: return "card-too-short-for-loop";
  case FindingId::card_longer_than_blank: return "card-longer-than-blank";
  case FindingId::piece_wider_than_bed: return "piece-wider-than-bed";
  case FindingId::piece_off_bed: return "piece-off-bed";
  case FindingId::repeat_on_needles: return "repeat-on-needles";
  case FindingId::repeat_cut_at_edges: return "repeat-cut-at-edges";
  case FindingId::yarns_too_alike: return "yarns-too-alike";
  case FindingId::too_many_rows: return "too-many-rows";
  case FindingId::loop_change_undone: return "loop-change-undone";
  case FindingId::card_held: return "card-held";
  case FindingId::unknown_key: break;
  }
  return "unknown-key";
}

std::string_view name_of(Severity severity) {
  switch (severity) {
  case Severity::fault: return noted("fault");
  case Severity::warning: return noted("warning");
  case Severity::note: break;
  }
  return noted("note");
}

std::string_view title_of(FindingId id) {
  switch (id) {
  case FindingId::repeat_width: return noted("Width of the repeat");
  case FindingId::float_too_long: return noted("Long float");
  case FindingId::float_accepted: return noted("Long float accepted");
  case FindingId::catch_not_needed: return noted("Catch not needed");
  case FindingId::row_all_main: return noted("Row in main alone");
  case FindingId::row_all_contrast: return noted("Row in contrast alone");
  case FindingId::yarn_on_other_side: return noted("Yarn on the other side");
  case FindingId::yarn_loose_on_piece: return noted("Yarn loose across the piece");
  case FindingId::card_too_short_for_loop: return noted("Short circuit");
  case FindingId::card_longer_than_blank: return noted("Several cards");
  case FindingId::piece_wider_than_bed: return noted("Piece wider than the bed");
  case FindingId::piece_off_bed: return noted("Piece off the bed");
  case FindingId::repeat_on_needles: return noted("Repeat on the needles");
  case FindingId::repeat_cut_at_edges: return noted("Repeat cut at the edges");
  case FindingId::yarns_too_alike: return noted("Yarns too alike");
  case FindingId::too_many_rows: return noted("Too many rows");
  case FindingId::loop_change_undone: return noted("Yarn change in the loop");
  case FindingId::card_held: return noted("Card held for the second pass");
  case FindingId::unknown_key: break;
  }
  return noted("Unknown key");
}

} // namespace punchwright
