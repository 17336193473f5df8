// The steps as a file: the extension chooses the form.
#include "sheets/chart_words.hpp"
#include "sheets/exports.hpp"
#include "sheets/output_names.hpp"
#include "sheets/page_files.hpp"
#include "sheets/pages.hpp"
#include "sheets/step_forms.hpp"
#include "words/words.hpp"

#include <algorithm>

namespace punchwright {
namespace {

// Nobody ticks off more, and all pages are held in memory.
constexpr std::size_t most_steps = 20'000;

Failure too_many_steps(const std::string& path, const StepList& list) {
  if (list.steps.size() <= most_steps) {
    return std::nullopt;
  }
  return Error{path, 0, 0, said("{} steps are too many for this form", list.steps.size()),
               said("up to {} are allowed; write .txt, or knit fewer times", most_steps)};
}

} // namespace

std::string_view heading_of(StepPart part) {
  switch (part) {
  case StepPart::setting_up: return tr("Setting up");
  case StepPart::knitting: return tr("Knitting");
  case StepPart::end: return tr("At the end");
  }
  return "";
}

std::string step_title(const Document& document) {
  return document.title.empty() ? std::string(tr("Steps")) : said("{}: steps", one_line(document.title));
}

std::string step_head_words(const StepList& list, const Document& document) {
  int rows = 0;
  for (const Step& step : list.steps) {
    rows = std::max(rows, step.last_row);
  }
  const std::string first = name_of(first_needle_of(document));
  const std::string last = name_of(last_needle_of(document));
  return list.carriage == Side::left ? said("{} needles, {} to {}; {} rows to knit; the carriage begins on the left",
                                            stitches_of(document), first, last, rows)
                                     : said("{} needles, {} to {}; {} rows to knit; the carriage begins on the right",
                                            stitches_of(document), first, last, rows);
}

Result<std::vector<Sheet>> pages_of_steps(const Document& document, const Profile& profile) {
  const StepList list = steps_of(document, profile, rows_to_knit(document, profile));
  if (Failure failure = too_many_steps({}, list)) {
    return *failure;
  }
  return step_sheets(list, document, profile);
}

Result<std::vector<OutputFile>> step_files(const Document& document, const Profile& profile, const std::string& path) {
  const std::string extension = extension_in(path);
  const bool html = extension == ".html" || extension == ".htm";
  if (!html && extension != ".pdf" && extension != ".txt") {
    return Error{path, 0, 0, said("'{}' is no form of the step list", extension), tr("allowed: .pdf, .html, .txt")};
  }
  const StepList list = steps_of(document, profile, rows_to_knit(document, profile));
  if (extension == ".txt") {
    return std::vector<OutputFile>{{path, text_of(list, document, profile)}};
  }
  if (Failure failure = too_many_steps(path, list)) {
    return *failure;
  }
  if (html) {
    return std::vector<OutputFile>{{path, step_html(list, document, profile)}};
  }
  return files_of_pages(step_sheets(list, document, profile), path);
}

} // namespace punchwright
