// The sheets of a yoke put together: text pages, strips, cards; several times over, since pages name other pages.
#include "pieces/shaping_kinds.hpp"
#include "plan/other_machine.hpp"
#include "sheets/card_pages.hpp"
#include "sheets/output_names.hpp"
#include "sheets/pages.hpp"
#include "sheets/writers.hpp"
#include "sheets/yoke_parts.hpp"
#include "words/words.hpp"

#include <iterator>

namespace punchwright {
namespace {

// All pages are held in memory, and nobody prints more.
constexpr std::size_t most_pages = 2'000;
// Pages of text are about as many as pieces in sizes, times the tiers.
constexpr std::size_t most_tiers_set = 1'500;

PageFrame frame_of(const YokeJob& job) {
  return frame_for(job.paper, job.scale_x, job.scale_y);
}

ShapingKinds kinds_of_strips(const YokeJob& job) {
  ShapingKinds kinds;
  for (const YokeStrip& strip : job.strips) {
    kinds.add(job.at(strip.size, strip.piece, strip.tier).shaping);
  }
  return kinds;
}

// Of the pages of strips.
std::string strips_title(const YokeJob& job) {
  const std::string title = title_of_yoke(job);
  const ShapingKinds kinds = kinds_of_strips(job);
  return !kinds.increases  ? said("{}: strips for the rows of decreases", title)
         : kinds.decreases ? said("{}: strips for the rows of decreases and increases", title)
                           : said("{}: strips for the rows of increases", title);
}

std::vector<Sheet> strip_sheets(const YokeJob& job, std::vector<int>& begins, int pages_before, int pages) {
  const PageFrame frame = frame_of(job);
  std::vector<Group> groups = strip_groups(job, frame, begins);
  std::vector<Sheet> sheets;
  for (Group& group : groups) {
    const int number = pages_before + static_cast<int>(sheets.size()) + 1;
    add_head_and_rulers(group.shapes, frame, strips_title(job), tr("full size · print at 100 %, do not scale"), number,
                        pages);
    Sheet sheet;
    sheet.title = title_of_yoke(job);
    sheet.groups.push_back(std::move(group));
    sheets.push_back(printed_sheet(std::move(sheet), frame));
  }
  return sheets;
}

// The same card for all pieces and sizes, since it is the needles that decide.
Result<std::vector<Sheet>> card_sheets(const YokeJob& job, std::size_t tier) {
  Document document = document_of(job.opened, job.plan.sizes[job.sizes.front()], job.pieces.front(), tier);
  document.title = said("{}: card of {}", title_of_yoke(job), name_of_tier(job, tier));
  document.card.paper = job.paper;
  document.card.scale_x = job.scale_x;
  document.card.scale_y = job.scale_y;
  return pages_of_card(document, job.opened.profile, {});
}

struct AllPages {
  std::vector<Sheet> sheets;
  YokePlaces places;
};

bool wants_strips(const YokeJob& job) {
  return job.wants(YokeSheet::strips) && !job.strips.empty();
}

// `before`: where everything stood the last time, and how many pages follow the text.
AllPages set_all(const YokeJob& job, const YokePlaces& before, const std::vector<std::vector<Sheet>>& cards,
                 int all_pages) {
  LeafletPages pages(job.paper, title_of_yoke(job));
  AllPages set;
  add_yoke_cover(pages, job, before);
  if (job.wants(YokeSheet::schematic)) {
    add_schematic(pages, job);
  }
  if (job.wants(YokeSheet::sizes)) {
    add_sizes(pages, job);
  }
  if (job.wants(YokeSheet::steps)) {
    for (const YokeGroup& group : job.groups) {
      add_yoke_steps(pages, job, group, before);
    }
  }
  if (job.wants(YokeSheet::cards) && !job.lists.empty()) {
    add_yoke_needles(pages, job, set.places);
  }
  set.places.parts = pages.parts();
  const int text_pages = pages.pages();
  std::vector<Sheet> more;
  if (wants_strips(job)) {
    set.places.parts.push_back({kinds_of_strips(job).of(tr("Strips for the decreases"), tr("Strips for the increases"),
                                                        tr("Strips for the decreases and increases")),
                                text_pages + 1});
    more = strip_sheets(job, set.places.strips, text_pages, all_pages);
    for (int& page : set.places.strips) {
      page += text_pages + 1;
    }
  }
  for (std::size_t tier = 0; tier < cards.size(); ++tier) {
    const int page = text_pages + static_cast<int>(more.size()) + 1;
    set.places.cards.push_back(page);
    set.places.parts.push_back({said("Card of {}", name_of_tier(job, tier)), page});
    more.insert(more.end(), cards[tier].begin(), cards[tier].end());
  }
  set.sheets = pages.finish(static_cast<int>(more.size()));
  set.sheets.insert(set.sheets.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
  return set;
}

Failure too_much(const YokeJob& job) {
  const std::size_t set = job.groups.size() * job.opened.tiers.size();
  if (job.wants(YokeSheet::steps) && set > most_tiers_set) {
    return Error{{},
                 0,
                 0,
                 said_count(std::ssize(job.groups), "the steps of {} piece are too many for one file",
                            "the steps of {} pieces are too many for one file"),
                 tr("choose sizes or pieces")};
  }
  return std::nullopt;
}

} // namespace

Result<std::vector<Sheet>> pages_of_yoke(const OpenedYoke& opened, const YokePlan& plan,
                                         const YokeSheetWishes& wishes) {
  const YokeJob job = yoke_job(opened, plan, wishes);
  if (const Failure failure = too_much(job)) {
    return *failure;
  }
  std::vector<std::vector<Sheet>> cards;
  if (job.wants(YokeSheet::cards) && reads_card(opened.profile)) {
    for (std::size_t tier = 0; tier < opened.tiers.size(); ++tier) {
      auto sheets = card_sheets(job, tier);
      if (!sheets) {
        return sheets.error();
      }
      cards.push_back(std::move(sheets).value());
    }
  }
  // The list on the first page and the references can take a line more or less with the numbers in them.
  AllPages all = set_all(job, {}, cards, 0);
  for (int again = 0; again < 3; ++again) {
    all = set_all(job, all.places, cards, static_cast<int>(all.sheets.size()));
  }
  if (all.sheets.size() > most_pages) {
    return Error{
        {}, 0, 0, said("{} pages are too many for one file", all.sheets.size()), tr("choose sizes, pieces or sheets")};
  }
  return std::move(all.sheets);
}

Result<std::vector<OutputFile>> yoke_files(const OpenedYoke& opened, const YokePlan& plan, const std::string& path,
                                           const YokeSheetWishes& wishes) {
  const std::string extension = extension_in(path);
  if (extension != ".pdf") {
    return Error{path, 0, 0,
                 extension.empty() ? tr("the sheets' file name has no extension")
                                   : said("'{}' is no form of a yoke's sheets", extension),
                 tr("allowed: .pdf")};
  }
  auto pages = pages_of_yoke(opened, plan, wishes);
  auto pdf = pages ? pdf_of(*pages) : Result<std::string>(pages.error());
  if (!pdf) {
    Error error = pdf.error();
    error.file = path;
    return error;
  }
  return std::vector<OutputFile>{{path, std::move(pdf).value()}};
}

} // namespace punchwright
