// Work that windows left behind: what is offered at the start, and what is chosen. The file of the work stays
// untouched.
#include "design/repeat_file.hpp"
#include "editor/applying.hpp"
#include "editor/kept_work.hpp"
#include "editor/user_settings.hpp"
#include "files/files.hpp"
#include "pieces/yoke_file.hpp"
#include "pieces/yoke_paths.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <utility>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

constexpr double shown_shape = 1.6; // width by height of the small picture

void show_first(App& app, std::vector<std::shared_ptr<FoundWork>> works, bool start_page) {
  RecoveryDialog dialog;
  dialog.works = std::move(works);
  dialog.start_page = start_page;
  const Journal& journal = dialog.works.front()->journal;
  if (const auto* const kept = std::get_if<KeptDesign>(&journal.work)) {
    dialog.shown = small_picture(kept->design, shown_shape);
    dialog.differences = differences_from_file(kept->design, journal.file);
  } else {
    const Yoke& yoke = std::get<KeptYoke>(journal.work).yoke;
    dialog.yoke = yoke_in_words(yoke);
    dialog.differences = differences_from_file(yoke, journal.file);
  }
  app.session.dialog = std::move(dialog);
}

void show_next(App& app, const RecoveryDialog& dialog) {
  std::vector<std::shared_ptr<FoundWork>> rest(dialog.works.begin() + 1, dialog.works.end());
  const bool start_page = dialog.start_page;
  if (!rest.empty()) {
    return show_first(app, std::move(rest), start_page);
  }
  app.session.dialog = start_page ? start_dialog(app) : Dialog(NoDialog{});
  app.view.focus_drawing = true;
}

void open_found_design(App& app, const Journal& journal, const KeptDesign& kept) {
  take(app, OpenedDocument{kept.design, app.work.profile, {}}, journal.file);
  app.work.profile_name.clear(); // the machine is loaded afterwards, or what is wrong with it is said
  app.work.history = kept.history;
  app.session.file_digest = journal.file_digest;
  app.session.suggested_name = journal.suggested_name;
}

// Its tiers are read anew: one of them may be gone.
Failure open_found_yoke(App& app, const Journal& journal, const KeptYoke& kept) {
  const fs::path place = journal.file.empty() ? place_of_new_yoke(app) : journal.file;
  auto opened = open_yoke(kept.yoke, place.string(), file_reader(), Machines::may_differ);
  if (!opened) {
    return opened.error();
  }
  take_yoke(app, std::move(opened).value(), journal.file, journal.file_digest);
  put_steps(app.yoke, kept);
  app.yoke.suggested_name = journal.suggested_name;
  return std::nullopt;
}

void open_found(App& app, const std::shared_ptr<FoundWork>& work, std::size_t others) {
  const Journal& journal = work->journal;
  if (const auto* const kept = std::get_if<KeptDesign>(&journal.work)) {
    open_found_design(app, journal, *kept);
    app.session.recovered = work;
  } else {
    if (const Failure failure = open_found_yoke(app, journal, std::get<KeptYoke>(journal.work))) {
      return show_trouble(app, tr("The yoke can't be opened as it was kept"), *failure,
                          tr("It stays kept, and is offered again at the next start."));
    }
    app.yoke.recovered = work;
  }
  if (journal.file.has_parent_path()) {
    app.session.folder = journal.file.parent_path();
  }
  app.session.dialog = NoDialog{};
  say(app,
      others == 0 ? said("{} as it was kept; it is not saved yet", work->name())
                  : said("{} as it was kept; it is not saved yet; {} more will be offered at the next start",
                         work->name(), others),
      Tone::good);
}

// The text of the file that it becomes, in that folder.
std::string text_aside(const Journal& journal, const fs::path& folder) {
  const auto* const design = std::get_if<KeptDesign>(&journal.work);
  return design != nullptr ? write_repeat(design->design)
                           : write_yoke(as_written_in(std::get<KeptYoke>(journal.work).yoke, folder));
}

// "…/journals/set-aside/puffins 2026-11-26 at 14.03.repeat", with a number where there is one already.
fs::path place_aside(const FoundWork& work) {
  std::string when = work.when();
  std::ranges::replace(when, ':', '.');
  const std::string stem = fs::path(work.name()).stem().string();
  const fs::path folder = work.path.parent_path() / "set-aside";
  const std::string_view kind = std::holds_alternative<KeptYoke>(work.journal.work) ? ".yoke" : ".repeat";
  fs::path path = folder / fmt::format("{} {}{}", stem, when, kind);
  std::error_code ignored;
  for (int number = 2; fs::exists(path, ignored); ++number) {
    path = folder / fmt::format("{} {} ({}){}", stem, when, number, kind);
  }
  return path;
}

bool put_aside(App& app, FoundWork& work) {
  const fs::path path = place_aside(work);
  Failure failure = make_kept_folder(path.parent_path());
  if (!failure) {
    failure = write_file(path, text_aside(work.journal, path.parent_path()));
  }
  if (failure) {
    say(app, said("It could not be put aside ({}); it is kept as it was", failure->message), Tone::trouble);
    return false;
  }
  remember_recent(app.settings, path);
  work.remove();
  say(app, said("Put aside: {}", path.string()));
  return true;
}

} // namespace

void offer_recovery(App& app, std::vector<std::shared_ptr<FoundWork>> works) {
  if (works.empty()) {
    return;
  }
  const bool start_page = std::holds_alternative<StartDialog>(app.session.dialog);
  if (is_open(app.session.dialog) && !start_page) {
    return say(app, tr("There is work that was not saved when a window ended: it is offered at the next start"));
  }
  show_first(app, std::move(works), start_page);
}

void answer_recovery(App& app, RecoveryAnswer answer) {
  const auto* const found = std::get_if<RecoveryDialog>(&app.session.dialog);
  if (found == nullptr || found->works.empty()) {
    return;
  }
  const RecoveryDialog dialog = *found;
  switch (answer) {
  case RecoveryAnswer::open: return open_found(app, dialog.works.front(), dialog.works.size() - 1);
  case RecoveryAnswer::aside:
    if (put_aside(app, *dialog.works.front())) {
      show_next(app, dialog);
    }
    return;
  case RecoveryAnswer::later: return show_next(app, dialog);
  }
}

} // namespace punchwright::editor
