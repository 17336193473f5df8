// A file that another window or another program has written while it is open here: noticed when the window has the keys
// again, and at the latest before it would be replaced; what differs is told, and neither of the two is lost unasked.
#include "design/differences.hpp"
#include "design/repeat_file.hpp"
#include "editor/applying.hpp"
#include "files/files.hpp"
#include "pieces/yoke_file.hpp"
#include "pieces/yoke_paths.hpp"
#include "words/words.hpp"

#include <utility>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

// Neither what was read or written last, nor what would be written now.
bool is_another(const App& app, KeptSide side) {
  const fs::path path = path_of(app, side);
  const std::uint64_t known = digest_of_file(app, side);
  std::error_code ignored;
  if (known == 0 || !fs::is_regular_file(path, ignored)) {
    return false;
  }
  const auto there = read_file(path, largest_file);
  return !there || (digest_of(*there) != known && *there != text_to_save(app, side));
}

ChangedDialog question_about(const App& app, KeptSide side) {
  const fs::path path = path_of(app, side);
  ChangedDialog dialog;
  dialog.yoke = side == KeptSide::yoke;
  dialog.differences =
      dialog.yoke ? differences_from_file(app.yoke.opened->yoke, path) : differences_from_file(app.work.design, path);
  dialog.unsaved = !is_saved(app, side);
  return dialog;
}

void look_at(App& app, KeptSide side) {
  const fs::path path = path_of(app, side);
  if (path.empty() || digest_of_file(app, side) == 0) {
    return;
  }
  const FileStamp now = stamp_of(path); // before the reading: what changes after it is seen at the next look
  if (file_seen_of(app, side) == now) {
    return;
  }
  file_seen_of(app, side) = now;
  if (!now.there) {
    forget_saved(app, side);
    return say(app, said("“{}” is no longer where it was; saving puts it there again", path.filename().string()),
               Tone::trouble);
  }
  if (is_another(app, side)) {
    close_step(app);
    ChangedDialog dialog = question_about(app, side);
    dialog.at_saving = false;
    app.session.dialog = std::move(dialog);
  }
}

bool write_there(App& app, KeptSide side, const Pending& afterwards) {
  const fs::path path = path_of(app, side);
  return side == KeptSide::yoke ? write_yoke_there(app, path, afterwards) : write_design(app, path, afterwards);
}

} // namespace

namespace {

// From the file as it is now; a sentence where there is none to compare with.
template <class Compared> std::vector<std::string> told_of_file(const fs::path& path, const Compared& compared) {
  if (path.empty()) {
    return {};
  }
  std::error_code ignored;
  if (!fs::exists(path, ignored)) {
    return {tr("Its file is no longer there.")};
  }
  const auto text = read_file(path, largest_file);
  auto sentences = text ? compared(*text) : Result<std::vector<std::string>>(text.error());
  if (!sentences) {
    return {said("The file there can't be read: {}.", sentences.error().message)};
  }
  if (sentences->empty()) {
    return {tr("Nothing differs, or only the way it is written.")};
  }
  return std::move(sentences).value();
}

} // namespace

std::vector<std::string> differences_from_file(const Document& design, const fs::path& path) {
  return told_of_file(path, [&](const std::string& text) -> Result<std::vector<std::string>> {
    const auto read = read_repeat(text, path.string());
    if (!read) {
      return read.error();
    }
    return differences_in_words(design, read->document);
  });
}

std::vector<std::string> differences_from_file(const Yoke& yoke, const fs::path& path) {
  return told_of_file(path, [&](const std::string& text) -> Result<std::vector<std::string>> {
    const auto read = read_yoke(text, path.string());
    if (!read) {
      return read.error();
    }
    return differences_in_words(yoke, with_whole_paths(read->yoke, path));
  });
}

bool ask_about_changed_file(App& app, KeptSide side, const Pending& afterwards) {
  if (!is_another(app, side)) {
    return false;
  }
  close_step(app);
  ChangedDialog dialog = question_about(app, side);
  dialog.afterwards = afterwards;
  app.session.dialog = std::move(dialog);
  return true;
}

void look_at_files(App& app) {
  for (const KeptSide side : {KeptSide::design, KeptSide::yoke}) {
    if (!is_open(app.session.dialog)) { // one question after the other
      look_at(app, side);
    }
  }
}

void answer_changed(App& app, ChangedAnswer answer) {
  const auto* const found = std::get_if<ChangedDialog>(&app.session.dialog);
  if (found == nullptr) {
    return;
  }
  const ChangedDialog dialog = *found;
  const KeptSide side = dialog.yoke ? KeptSide::yoke : KeptSide::design;
  app.session.dialog = NoDialog{};
  app.view.focus_drawing = true;
  switch (answer) {
  case ChangedAnswer::over:
    if (write_there(app, side, dialog.afterwards)) {
      go_on(app, dialog.afterwards);
    }
    return;
  case ChangedAnswer::elsewhere:
    forget_saved(app, side); // should no name be chosen
    return open_path_dialog(app, dialog.yoke ? Purpose::save_yoke : Purpose::save, dialog.afterwards);
  case ChangedAnswer::mine: return forget_saved(app, side);
  case ChangedAnswer::theirs: return request(app, Pending{Pending::What::open_file, path_of(app, side), {}});
  case ChangedAnswer::cancel: return;
  }
}

} // namespace punchwright::editor
