// Sheets to holes, holes to card, steps to fabric, fabric to report.
#include "proof/proof.hpp"

#include "knitting/card_reading.hpp"
#include "machine/placement.hpp"
#include "rules/findings.hpp"
#include "sheets/card_pages.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <limits>

namespace punchwright {
namespace {

constexpr int most_rows_on_sheets = 12'000; // as for the card's export

struct Box {
  double left = std::numeric_limits<double>::max();
  double top = std::numeric_limits<double>::max();
  double right = std::numeric_limits<double>::lowest();
  double bottom = std::numeric_limits<double>::lowest();

  void take(double x, double y) {
    left = std::min(left, x);
    top = std::min(top, y);
    right = std::max(right, x);
    bottom = std::max(bottom, y);
  }
};

// Only places of circles and lines are used, as a reader of the cut card would: no row, no column, no label.
Result<PunchedCard> card_on_sheet(const Sheet& sheet, const CardReader& reader) {
  Box outline;
  std::vector<HolePlace> holes;
  for (const Group& group : sheet.groups) {
    for (const Shape& shape : group.shapes) {
      if (group.id == "cut-holes") {
        if (const auto* circle = std::get_if<CircleShape>(&shape)) {
          holes.push_back({circle->centre.x, circle->centre.y});
        }
      } else if (group.id == "cut-outline") {
        if (const auto* line = std::get_if<PolylineShape>(&shape)) {
          for (const Point& point : line->points) {
            outline.take(point.x, point.y);
          }
        } else if (const auto* box = std::get_if<RectangleShape>(&shape)) {
          outline.take(box->corner.x, box->corner.y);
          outline.take(box->corner.x + box->width, box->corner.y + box->height);
        }
      }
    }
  }
  for (HolePlace& hole : holes) {
    hole.x -= outline.left;
    hole.y -= outline.top;
  }
  return read_card(holes, outline.right - outline.left, outline.bottom - outline.top, reader);
}

// The longest float of which the checks have told.
int longest_checked(const Document& document, const Profile& profile, const RowsToKnit& rows) {
  int longest = longest_float_of(document, profile);
  for (const Finding& finding : check(document, profile, rows)) {
    const bool is_float = finding.id == FindingId::float_too_long || finding.id == FindingId::float_accepted;
    if (is_float && finding.on_piece) {
      longest = std::max(longest, finding.stitches);
    }
  }
  return longest;
}

std::vector<WantedRow> wanted_rows(const RowsToKnit& rows) {
  std::vector<WantedRow> wanted;
  wanted.reserve(rows.rows.size());
  for (const RowToKnit& row : rows.rows) {
    wanted.push_back({row.drawn, row.main, row.contrast});
  }
  return wanted;
}

std::string compared_words(const Proof& proof, const Document& document) {
  const Comparison& seen = proof.comparison;
  const std::string stitches =
      seen.selvedges > 0 ? said("Compared with the drawing: {} rows to knit on {} needles, {} stitches, and {} end "
                                "stitches that knit contrast by rule",
                                seen.rows, stitches_of(document), seen.stitches, seen.selvedges)
                         : said("Compared with the drawing: {} rows to knit on {} needles, {} stitches", seen.rows,
                                stitches_of(document), seen.stitches);
  return fmt::format("{}; {}; {}.", stitches,
                     said_count(proof.steps.rows_before, "{} row of the setting-up", "{} rows of the setting-up"),
                     said_count(seen.longest_float, "{1} floats, the longest behind {0} stitch (checked: {2})",
                                "{1} floats, the longest behind {0} stitches (checked: {2})", seen.floats,
                                proof.limit));
}

} // namespace

Result<PunchedCard> card_on_sheets(const Document& document, const Profile& profile) {
  const CardJob job = card_job(document, profile);
  if (job.plan.rows_in_all > most_rows_on_sheets) {
    return Error{
        {},
        0,
        0,
        said("{} rows on the card are too many to draw and read back", job.plan.rows_in_all),
        said("up to {} are allowed; set loop = true in [card], or lower times in [piece]", most_rows_on_sheets)};
  }
  std::vector<PunchedCard> cards;
  for (const Card& card : job.plan.cards) {
    auto read = card_on_sheet(card_on_its_own(job, card), *profile.card);
    if (!read) {
      return read.error();
    }
    cards.push_back(std::move(read).value());
  }
  return joined_cards(cards);
}

Result<Proof> prove(const Document& document, const Profile& profile, std::shared_ptr<const PunchedCard> card,
                    const StepList* steps) {
  const RowsToKnit rows = rows_to_knit(document, profile);
  if (first_needle_of(document) < profile.leftmost() || last_needle_of(document) > profile.rightmost()) {
    return Error{{}, 0, 0, tr("the piece doesn't fit on the bed, and can't be knitted"), tr("see punchwright check")};
  }
  if (profile.selects != Selects::by_hand && !card) {
    auto read = card_on_sheets(document, profile);
    if (!read) {
      return read.error();
    }
    card = std::make_shared<const PunchedCard>(std::move(read).value());
  }
  Proof proof;
  proof.card = card;
  proof.steps = steps != nullptr ? *steps : steps_of(document, profile, rows);
  proof.limit = longest_checked(document, profile, rows);
  StepsKnitted knitted = knit_steps(proof.steps, document, profile, card);
  proof.refused_step = knitted.refused_step;
  proof.refusal = knitted.knitting.refusal;
  proof.comparison =
      compare_with_drawing(knitted.knitting.fabric, document, profile, wanted_rows(rows),
                           {proof.steps.rows_before, proof.limit, end_needles_knit_contrast(document, profile)});
  proof.fabric = std::move(knitted.knitting.fabric);
  return proof;
}

std::string report(const Proof& proof, const Document& document, const Profile& profile) {
  std::string text;
  const auto add = [&text](const std::string& line) { text += line + '\n'; };
  const Comparison& seen = proof.comparison;
  if (proof.card && profile.selects != Selects::by_hand) {
    add(said("Card: {} rows of {} columns, read from its holes.", proof.card->rows(), proof.card->columns()));
  } else {
    add(tr("Card: none, the needles were brought forward as the steps say."));
  }
  add(said("Machine: {} ({}), as its last user left it.", profile.name, tr(profile.title.c_str())));
  if (proof.refused_step >= 0) {
    add(said("Steps: stopped at step {} of {}: {}.", proof.refused_step + 1, proof.steps.steps.size(),
             proof.refusal ? words_of(*proof.refusal) : ""));
  } else {
    add(said("Steps: all {} carried out.", proof.steps.steps.size()));
  }
  add(compared_words(proof, document));
  if (proof.proved()) {
    add(tr("Proved: the fabric is the drawing, no stitch is dropped, no float is longer than checked."));
    return text;
  }
  constexpr std::size_t most_told = 20;
  add(said("Not proved: {} differences.", seen.differences.size()));
  for (std::size_t index = 0; index < std::min(most_told, seen.differences.size()); ++index) {
    add("  " + words_of(seen.differences[index], proof.steps.rows_before));
  }
  if (seen.differences.size() > most_told) {
    add("  " + said("and {} more", seen.differences.size() - most_told));
  }
  return text;
}

} // namespace punchwright
