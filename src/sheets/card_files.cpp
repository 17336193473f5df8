// The card template as files: the extension of the wished name chooses the writer.
#include "sheets/card_pages.hpp"
#include "sheets/exports.hpp"
#include "sheets/output_names.hpp"
#include "sheets/page_files.hpp"
#include "sheets/pages.hpp"
#include "sheets/punch_list.hpp"
#include "sheets/writers.hpp"
#include "words/words.hpp"

#include <utility>

namespace punchwright {
namespace {

constexpr int pixels_per_mm = 10; // 254 dpi: a pixel is 0.1 mm exactly

// Some 200 blanks. Nobody punches more, and all pages are held in memory.
constexpr int most_rows_on_pages = 12'000;

// A list is made in memory before it is written.
constexpr double largest_list = 1024.0 * 1024.0 * 1024.0; // bytes

Failure why_no_card(const Document& document, const Profile& profile) {
  if (!profile.card) {
    return Error{{},
                 0,
                 0,
                 said("the machine '{}' reads no card: its needles are brought forward by hand", profile.name),
                 tr("use the needle chart instead: punchwright needles FILE -o OUT.pdf")};
  }
  if (document.grid.height() < 1) {
    return Error{{}, 0, 0, tr("the drawing has no rows"), tr("draw one row at least")};
  }
  return std::nullopt;
}

Failure why_no_form(const std::string& extension) {
  if (extension != ".pdf" && extension != ".svg" && extension != ".png" && extension != ".txt") {
    return Error{{},
                 0,
                 0,
                 extension.empty() ? tr("the card's file name has no extension")
                                   : said("a card can't be written as '{}'", extension),
                 tr("allowed: .pdf, .svg, .png, .txt")};
  }
  return std::nullopt;
}

Failure why_not_that_one(const CardJob& job, std::optional<int> only_card) {
  const auto count = static_cast<int>(job.plan.cards.size());
  if (!only_card || (*only_card >= 1 && *only_card <= count)) {
    return std::nullopt;
  }
  return Error{{},
               0,
               0,
               said("there is no card {}", *only_card),
               count == 1 ? tr("the design has one card") : said("the design has cards 1 to {}", count)};
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
                 said("the punch list of {} rows would be larger than 1 GiB", plan.rows_in_all),
                 tr("set loop = true in [card], or lower times in [piece]")};
  }
  if (plan.rows_in_all <= most_rows_on_pages) {
    return std::nullopt;
  }
  return Error{{},
               0,
               0,
               said("{} rows need {} cards, too many to draw", plan.rows_in_all, plan.cards.size()),
               said("up to {} rows are allowed; set loop = true in [card], lower times in [piece], or write .txt",
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
    const std::string name = numbered_path(path, files.size() + 1, pages.size());
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

Result<std::vector<Sheet>> pages_of_card(const Document& document, const Profile& profile,
                                         std::optional<int> only_card) {
  if (const auto problem = why_no_card(document, profile)) {
    return *problem;
  }
  RowsToKnit rows = rows_to_knit(document, profile);
  if (const auto problem = too_much(document, profile, rows, ".pdf")) {
    return *problem;
  }
  const CardJob job = card_job(document, profile, std::move(rows));
  if (const auto problem = why_not_that_one(job, only_card)) {
    return *problem;
  }
  return card_pages(job, only_card);
}

Result<std::vector<OutputFile>> card_files(const Document& document, const Profile& profile, const std::string& path,
                                           std::optional<int> only_card) {
  const std::string extension = extension_in(path);
  if (const auto problem = why_no_card(document, profile)) {
    return *problem;
  }
  if (const auto problem = why_no_form(extension)) {
    return *problem;
  }
  if (extension == ".pdf" || extension == ".png") {
    const auto pages = pages_of_card(document, profile, only_card);
    return pages ? files_of_pages(*pages, path) : Result<std::vector<OutputFile>>(pages.error());
  }
  RowsToKnit rows = rows_to_knit(document, profile);
  if (const auto problem = too_much(document, profile, rows, extension)) {
    return *problem;
  }
  const CardJob job = card_job(document, profile, std::move(rows));
  if (const auto problem = why_not_that_one(job, only_card)) {
    return *problem;
  }
  if (extension == ".txt") {
    return std::vector<OutputFile>{{path, punch_list(job)}}; // of all cards: it is read row by row
  }
  // A cutting machine gets one card a file, as large as it is: neither paper nor print correction mean anything to it.
  std::vector<OutputFile> files;
  for (const Card& card : job.plan.cards) {
    if (!only_card || *only_card == card.number) {
      const std::size_t cards = only_card ? 1 : job.plan.cards.size();
      files.push_back(
          {numbered_path(path, static_cast<std::size_t>(card.number), cards), svg_of(card_on_its_own(job, card))});
    }
  }
  return files;
}

} // namespace punchwright
