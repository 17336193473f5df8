// The piece on the bed: whether there are needles for it, and where the repeat comes on them.
#include "machine/placement.hpp"
#include "rules/checks.hpp"

namespace punchwright {
namespace {

// Selvedge stitches are taken up by the seam: only what lies between them can show the repeat cut.
void check_edges(const Document& document, const Profile& profile, std::vector<Finding>& findings) {
  const int edge = document.piece.edge;
  Finding cut;
  cut.stitches = stitches_of(document) - 2 * edge;
  if (cut.stitches < 1) {
    return;
  }
  cut.id = FindingId::repeat_cut_at_edges;
  cut.severity = Severity::note;
  cut.on_piece = true;
  cut.first_needle = Needle{first_needle_of(document).position + edge};
  cut.last_needle = Needle{last_needle_of(document).position - edge};
  const Placement placement(document, profile);
  cut.first_column = placement.column_of(*cut.first_needle);
  cut.last_column = placement.column_of(*cut.last_needle);
  if (cut.first_column != document.grid.width() - 1 || cut.last_column != 0) {
    findings.push_back(cut);
  }
}

} // namespace

void check_piece(const Document& document, const Profile& profile, std::vector<Finding>& findings) {
  Finding place;
  place.on_piece = true;
  place.stitches = stitches_of(document);
  place.first_needle = first_needle_of(document);
  place.last_needle = last_needle_of(document);
  if (place.stitches > profile.needles) {
    place.id = FindingId::piece_wider_than_bed;
    place.severity = Severity::fault;
    place.limit = profile.needles;
    findings.push_back(place);
  } else if (*place.first_needle < profile.leftmost() || *place.last_needle > profile.rightmost()) {
    place.id = FindingId::piece_off_bed;
    place.severity = Severity::fault;
    place.limit = profile.needles;
    findings.push_back(place);
  }
  const Placement placement(document, profile);
  place.severity = Severity::note;
  place.limit = 0;
  place.first_column = placement.column_of(*place.first_needle);
  place.last_column = placement.column_of(*place.last_needle);
  place.id = FindingId::repeat_on_needles;
  findings.push_back(place);
  check_edges(document, profile, findings);
}

} // namespace punchwright
