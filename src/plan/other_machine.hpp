// The same drawing for somebody who owns another kind of machine: by hand where the design's own reads a card, and by
// card where it doesn't.
#pragma once

#include "design/document.hpp"
#include "machine/profile.hpp"

namespace punchwright {

struct OnMachine {
  Document document;
  Profile profile;
};

[[nodiscard]] bool reads_card(const Profile& profile);

// A built-in machine of the other kind: of those whose card holds the repeat and whose bed holds the piece, the one
// with the nearest pitch; where there is none, the nearest pitch alone. By hand every needle of the piece shows the
// column that it shows on the own machine.
[[nodiscard]] OnMachine on_other_kind(const Document& document, const Profile& profile);

} // namespace punchwright
