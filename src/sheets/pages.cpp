// From a kind of sheet to the file that draws it.
#include "sheets/pages.hpp"

namespace punchwright {

Result<std::vector<Sheet>> pages_of(const Document& document, const Profile& profile, const PageWishes& wishes) {
  switch (wishes.kind) {
  case SheetKind::card: return pages_of_card(document, profile, wishes.only_card);
  case SheetKind::chart: return pages_of_chart(document, profile, wishes.chart);
  case SheetKind::steps: return pages_of_steps(document, profile);
  case SheetKind::leaflet: return pages_of_leaflet(document, profile, document.card.paper);
  case SheetKind::pattern: return pages_of_pattern(document);
  case SheetKind::swatch: return pages_of_swatch(profile, document.card.paper);
  case SheetKind::measure: break;
  }
  return pages_of_measuring(profile, document.card.paper);
}

} // namespace punchwright
