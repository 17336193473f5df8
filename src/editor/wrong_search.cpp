// Asking, following, answering.
#include "editor/wrong_search.hpp"

#include "editor/applying.hpp"
#include "words/words.hpp"

#include <utility>

namespace punchwright::editor {
namespace {

constexpr std::size_t most_rows_searched = 4'000;
constexpr std::size_t most_explanations = 40; // the rest is less likely than all of these

std::string why_no_search(const App& app) {
  const Document& design = app.work.design;
  if (first_needle_of(design) < app.work.profile.leftmost() || last_needle_of(design) > app.work.profile.rightmost()) {
    return tr("The piece doesn't fit on the bed: see the findings.");
  }
  return app.caches.rows.rows.size() > most_rows_searched ? tr("There are too many rows to search.") : "";
}

SeenFabric seen_in(const SeenForm& form) {
  SeenFabric seen;
  for (const std::string& line : picture_of(form)) {
    auto& marks = seen.rows.emplace_back();
    for (const char mark : line) {
      marks.push_back(static_cast<punchwright::Mark>(mark));
    }
  }
  return seen;
}

WrongDialog* searching_dialog(App& app) {
  auto* const dialog = std::get_if<WrongDialog>(&app.session.dialog);
  return dialog != nullptr && dialog->search != nullptr ? dialog : nullptr;
}

void take_answer(WrongDialog& dialog) {
  dialog.answer = std::make_shared<const WrongAnswer>(dialog.search->take());
  dialog.search.reset();
}

} // namespace

WrongAnswer answer_to(const WrongQuestion& question, const std::stop_token& stop) {
  WrongAnswer answer;
  const Setting setting = setting_of(question.design, question.profile, question.rows);
  const Diagnosis diagnosis = what_went_wrong(setting, question.seen, stop);
  answer.as_planned = diagnosis.as_planned;
  answer.tried = diagnosis.tried;
  answer.trouble = words_of_search(diagnosis);
  for (const Explanation& explanation : diagnosis.explanations) {
    Explained& told = answer.explanations.emplace_back();
    for (const Departure& departure : explanation.departures) {
      told.causes.push_back(words_of(departure, setting.steps));
    }
    told.remedy = explanation.remedy.text;
    if (answer.explanations.size() == most_explanations) {
      break;
    }
  }
  return answer;
}

void ask_what_went_wrong(App& app) {
  auto* const dialog = std::get_if<WrongDialog>(&app.session.dialog);
  if (dialog == nullptr || dialog->form.rows.empty() || dialog->search != nullptr) {
    return;
  }
  dialog->answer.reset();
  if (const std::string trouble = why_no_search(app); !trouble.empty()) {
    WrongAnswer answer;
    answer.trouble = trouble;
    dialog->answer = std::make_shared<const WrongAnswer>(std::move(answer));
    return;
  }
  WrongQuestion question{app.work.design, app.work.profile, app.caches.rows, seen_in(dialog->form)};
  dialog->search = std::make_shared<WrongSearch>(
      [asked = std::move(question)](const std::stop_token& stop) { return answer_to(asked, stop); });
}

Progress follow_search(App& app) {
  WrongDialog* const dialog = searching_dialog(app);
  if (dialog == nullptr) {
    return {};
  }
  if (!dialog->search->ready()) {
    return not_ready_yet;
  }
  take_answer(*dialog);
  return {std::nullopt, true};
}

void finish_search(App& app) {
  if (WrongDialog* const dialog = searching_dialog(app)) {
    take_answer(*dialog);
  }
}

} // namespace punchwright::editor
