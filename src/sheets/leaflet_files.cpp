// The leaflet, put together: twice, since its first page names the pages of the parts behind it.
#include "sheets/chart_words.hpp"
#include "sheets/exports.hpp"
#include "sheets/leaflet_parts.hpp"
#include "sheets/output_names.hpp"
#include "sheets/pages.hpp"
#include "sheets/writers.hpp"
#include "words/words.hpp"

namespace punchwright {
namespace {

// More is no leaflet: some 200 pages of needle lists, or 40 of chart.
constexpr std::size_t most_rows = 2'000;
constexpr long long most_cells = 60'000;

Failure too_large(const Document& document, const RowsToKnit& rows) {
  if (rows.rows.size() > most_rows) {
    return Error{{},
                 0,
                 0,
                 said("{} rows to knit are too many for a leaflet", rows.rows.size()),
                 said("up to {} are allowed; knit fewer times", most_rows)};
  }
  const long long cells = static_cast<long long>(document.grid.width()) * document.grid.height();
  if (cells > most_cells) {
    return Error{{},
                 0,
                 0,
                 said("a drawing of {} stitches is too large for a leaflet", cells),
                 said("up to {} are allowed", most_cells)};
  }
  return std::nullopt;
}

// On that machine; faults of the repeat's width and of the piece on the bed are what can't be knitted.
LeafletMachine on_machine(const Document& document, const Profile& profile, RowsToKnit rows, bool own) {
  LeafletMachine machine{document, profile, std::move(rows), {}, own};
  for (Finding& finding : check(document, profile, machine.rows)) {
    if (finding.id == FindingId::repeat_width || finding.id == FindingId::piece_wider_than_bed ||
        finding.id == FindingId::piece_off_bed) {
      machine.misfits.push_back(std::move(finding));
    }
  }
  return machine;
}

LeafletPages set_all(const LeafletMachine& own, const LeafletMachine& other, Paper paper,
                     const std::vector<LeafletPart>& parts) {
  const std::string title = one_line(own.document.title);
  LeafletPages pages(paper, title.empty() ? tr("Two-colour band") : title);
  add_cover(pages, own, other, parts);
  add_chart(pages, own.document);
  const LeafletMachine& by_card = reads_card(own.profile) ? own : other;
  const LeafletMachine& by_hand = reads_card(own.profile) ? other : own;
  add_steps(pages, by_card);
  add_steps(pages, by_hand);
  add_needles(pages, by_card, by_hand);
  add_catches(pages, by_card, by_hand);
  add_cautions(pages, own, by_card);
  return pages;
}

} // namespace

Result<std::vector<Sheet>> pages_of_leaflet(const Document& document, const Profile& profile, Paper paper) {
  const RowsToKnit rows = rows_to_knit(document, profile);
  if (auto failure = too_large(document, rows)) {
    return *failure;
  }
  const LeafletMachine own = on_machine(document, profile, rows, true);
  const OnMachine there = on_other_kind(document, profile);
  const LeafletMachine other =
      on_machine(there.document, there.profile, rows_to_knit(there.document, there.profile), false);
  // As many parts as there will be, so that the first page comes out as high as it will be.
  auto parts = set_all(own, other, paper, {}).parts();
  parts = set_all(own, other, paper, parts).parts();
  return set_all(own, other, paper, parts).finish();
}

Result<std::vector<OutputFile>> leaflet_files(const Document& document, const Profile& profile, const std::string& path,
                                              Paper paper) {
  if (const std::string extension = extension_in(path); extension != ".pdf") {
    return Error{path, 0, 0, said("'{}' is no form of the leaflet", extension), tr("allowed: .pdf")};
  }
  const auto failed = [&](Error error) {
    error.file = path;
    return error;
  };
  const auto pages = pages_of_leaflet(document, profile, paper);
  if (!pages) {
    return failed(pages.error());
  }
  auto pdf = pdf_of(*pages);
  if (!pdf) {
    return failed(pdf.error());
  }
  return std::vector<OutputFile>{{path, std::move(pdf).value()}};
}

} // namespace punchwright
