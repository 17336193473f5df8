// The card template as files: the extension of the wished name chooses the writer.
#include "sheets/card_pages.hpp"
#include "sheets/exports.hpp"
#include "sheets/output_names.hpp"
#include "sheets/page_files.hpp"
#include "sheets/punch_list.hpp"
#include "sheets/writers.hpp"

#include <fmt/format.h>
#include <utility>

namespace punchwright {
namespace {

constexpr int pixels_per_mm = 10; // 254 dpi: a pixel is 0.1 mm exactly

// Some 200 blanks. Nobody punches more, and all pages are held in memory.
constexpr int most_rows_on_pages = 12'000;

// A list is made in memory before it is written.
constexpr double largest_list = 1024.0 * 1024.0 * 1024.0; // bytes

Failure why_no_card(const Document& document, const Profile& profile, const std::string& extension) {
  if (!profile.card) {
    return Error{{},
                 0,
                 0,
                 fmt::format("the machine '{}' reads no card: its needles are brought forward by hand", profile.name),
                 "use the needle chart instead: punchwright needles FILE -o OUT.pdf"};
  }
  if (extension != ".pdf" && extension != ".svg" && extension != ".png" && extension != ".txt") {
    return Error{{},
                 0,
                 0,
                 extension.empty() ? "the card's file name has no extension"
                                   : fmt::format("a card can't be written as '{}'", extension),
                 "allowed: .pdf, .svg, .png, .txt"};
  }
  if (document.grid.height() < 1) {
    return Error{{}, 0, 0, "the drawing has no rows", "draw one row at least"};
  }
  return std::nullopt;
}

// Told before anything is made of the rows: of a large design that would take memory and time for nothing.
Failure too_much(const Document& document, const Profile& profile, const RowsToKnit& rows,
                 const std::string& extension) {
  const CardPlan plan = card_plan(document, *profile.card, rows);
  if (extension == ".txt") {
    if (size_of_punch_list(document, profile, rows, plan) <= largest_list) {
      return std::nullopt;
    }
    return Error{{},
                 0,
                 0,
                 fmt::format("the punch list of {} rows would be larger than 1 GiB", plan.rows_in_all),
                 "set loop = true in [card], or lower times in [piece]"};
  }
  if (plan.rows_in_all <= most_rows_on_pages) {
    return std::nullopt;
  }
  return Error{
      {},
      0,
      0,
      fmt::format("{} rows need {} cards, too many to draw", plan.rows_in_all, plan.cards.size()),
      fmt::format("up to {} rows are allowed; set loop = true in [card], lower times in [piece], or write .txt",
                  most_rows_on_pages)};
}

} // namespace

Result<std::vector<OutputFile>> files_of_pages(const std::vector<Sheet>& pages, const std::string& path) {
  std::vector<OutputFile> files;
  if (extension_in(path) == ".pdf") {
    auto pdf = pdf_of(pages);
    if (!pdf) {
      return pdf.error();
    }
    files.push_back({path, std::move(pdf).value()});
    return files;
  }
  for (const Sheet& page : pages) {
    const std::string name = numbered_path(path, static_cast<int>(files.size()) + 1);
    if (extension_in(path) == ".svg") {
      files.push_back({name, svg_of(page)});
      continue;
    }
    auto png = png_of(page, pixels_per_mm);
    if (!png) {
      return png.error();
    }
    files.push_back({name, std::move(png).value()});
  }
  return files;
}

Result<std::vector<OutputFile>> card_files(const Document& document, const Profile& profile, const std::string& path) {
  const std::string extension = extension_in(path);
  if (const auto problem = why_no_card(document, profile, extension)) {
    return *problem;
  }
  RowsToKnit rows = rows_to_knit(document, profile);
  if (const auto problem = too_much(document, profile, rows, extension)) {
    return *problem;
  }
  const CardJob job = card_job(document, profile, std::move(rows));
  if (extension == ".txt") {
    return std::vector<OutputFile>{{path, punch_list(job)}};
  }
  if (extension == ".svg") {
    // A cutting machine gets one card a file, as large as it is: neither paper nor print correction mean anything to
    // it.
    std::vector<OutputFile> files;
    files.reserve(job.plan.cards.size());
    for (const Card& card : job.plan.cards) {
      files.push_back({numbered_path(path, card.number), svg_of(card_on_its_own(job, card))});
    }
    return files;
  }
  auto pages = card_pages(job);
  if (!pages) {
    return pages.error();
  }
  return files_of_pages(*pages, path);
}

} // namespace punchwright
