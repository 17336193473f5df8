// What findings are called: an id for scripts, which never changes, and a heading for people.
#include "rules/findings.hpp"

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
  case Severity::fault: return "fault";
  case Severity::warning: return "warning";
  case Severity::note: break;
  }
  return "note";
}

std::string_view title_of(FindingId id) {
  switch (id) {
  case FindingId::repeat_width: return "Width of the repeat";
  case FindingId::float_too_long: return "Long float";
  case FindingId::float_accepted: return "Long float accepted";
  case FindingId::catch_not_needed: return "Catch not needed";
  case FindingId::row_all_main: return "Row in main alone";
  case FindingId::row_all_contrast: return "Row in contrast alone";
  case FindingId::yarn_on_other_side: return "Yarn on the other side";
  case FindingId::yarn_loose_on_piece: return "Yarn loose across the piece";
  case FindingId::card_too_short_for_loop: return "Short circuit";
  case FindingId::card_longer_than_blank: return "Several cards";
  case FindingId::piece_wider_than_bed: return "Piece wider than the bed";
  case FindingId::piece_off_bed: return "Piece off the bed";
  case FindingId::repeat_on_needles: return "Repeat on the needles";
  case FindingId::repeat_cut_at_edges: return "Repeat cut at the edges";
  case FindingId::yarns_too_alike: return "Yarns too alike";
  case FindingId::too_many_rows: return "Too many rows";
  case FindingId::loop_change_undone: return "Yarn change in the loop";
  case FindingId::card_held: return "Card held for the second pass";
  case FindingId::unknown_key: break;
  }
  return "Unknown key";
}

} // namespace punchwright
