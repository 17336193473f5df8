// A yoke's own file: opened, opened as a copy, saved with the same care as a repeat.
#include "editor/applying.hpp"
#include "files/files.hpp"
#include "journal/journal.hpp"
#include "pieces/yoke_file.hpp"
#include "pieces/yoke_paths.hpp"
#include "words/words.hpp"

#include <iterator>
#include <utility>

namespace punchwright::editor {

namespace fs = std::filesystem;

std::vector<std::string> differences_in_words(const Yoke& yours, const Yoke& theirs) {
  std::vector<std::string> sentences;
  const auto differs = [&](bool different, const char* words) {
    if (different) {
      sentences.emplace_back(words);
    }
  };
  differs(yours.title != theirs.title || yours.notes != theirs.notes, tr("Title or notes differ."));
  differs(yours.sizes != theirs.sizes, tr("The sizes differ."));
  differs(yours.pieces != theirs.pieces, tr("The pieces or their widths differ."));
  differs(yours.depth_cm != theirs.depth_cm, tr("The depth differs."));
  differs(yours.tiers != theirs.tiers, tr("The tiers or their plain rows differ."));
  differs(yours.yarns != theirs.yarns, tr("What is said of the yarns differs."));
  differs(yours.gauge != theirs.gauge || yours.profile != theirs.profile || yours.edge != theirs.edge,
          tr("Machine, gauge or seam stitches differ."));
  differs(yours.fit != theirs.fit || yours.decreases != theirs.decreases,
          tr("The wishes for seams or decreases differ."));
  return sentences;
}

std::vector<std::string> yoke_in_words(const Yoke& yoke) {
  std::vector<std::string> words = {said("A yoke in {}, of {} and {}.",
                                         said_count(std::ssize(yoke.sizes), "{} size", "{} sizes"),
                                         said_count(std::ssize(yoke.pieces), "{} piece", "{} pieces"),
                                         said_count(std::ssize(yoke.tiers), "{} tier", "{} tiers"))};
  if (!yoke.title.empty()) {
    words.insert(words.begin(), yoke.title);
  }
  return words;
}

void open_yoke_file(App& app, const fs::path& path, bool copy) {
  app.session.dialog = NoDialog{};
  const std::string rest = app.yoke.opened ? said("“{}” stays open, as it was.", yoke_name_of(app)) : std::string();
  auto text = read_file(path, largest_file);
  if (!text) {
    return show_trouble(app, tr("The yoke can't be opened"), text.error(), rest);
  }
  auto opened = open_yoke(*text, path.string(), file_reader(), Machines::may_differ);
  if (!opened) {
    return show_trouble(app, tr("The yoke can't be read"), opened.error(), rest);
  }
  const std::string note = opened->notes.empty() ? std::string() : "; " + opened->notes.front().text;
  take_yoke(app, std::move(opened).value(), copy ? fs::path() : path, copy ? 0 : digest_of(*text));
  if (copy) {
    app.yoke.suggested_name = path.stem().string();
    return say(app, said("A copy of the demo {}: saving asks where to keep it", path.filename().string()));
  }
  if (path.has_parent_path()) {
    app.session.folder = path.parent_path();
  }
  remember_recent(app.settings, path);
  if (app.yoke.opened->machine_wanted) {
    return say(app,
               said("Opened {}; its tiers' files name different machines: choose one for all (Ctrl+5)",
                    path.filename().string()),
               Tone::trouble);
  }
  say(app, said("Opened {}", path.filename().string()) + note);
}

bool write_yoke_there(App& app, const fs::path& path, const Pending& afterwards) {
  const Failure failure = try_writing_yoke(app, path);
  if (failure) {
    show_not_saved(app, *failure, {true, afterwards});
  }
  return !failure;
}

Failure try_writing_yoke(App& app, const fs::path& path) {
  const std::string text = write_yoke(as_written_in(app.yoke.opened->yoke, path.parent_path()));
  if (Failure failure = write_file(path, text)) {
    return failure;
  }
  close_step(app);
  YokeWork& work = app.yoke;
  work.saved_at = work.done;
  work.path = path;
  work.opened->file = path.string();
  work.file_digest = digest_of(text);
  app.session.folder = path.parent_path();
  remember_recent(app.settings, path);
  say(app, said("Saved {}", path.filename().string()), Tone::good);
  return {};
}

void save_yoke(App& app, const Pending& afterwards) {
  if (app.yoke.path.empty()) {
    return open_path_dialog(app, Purpose::save_yoke, afterwards);
  }
  if (!ask_about_changed_file(app, KeptSide::yoke, afterwards) && write_yoke_there(app, app.yoke.path, afterwards)) {
    go_on(app, afterwards);
  }
}

void save_yoke_as(App& app, PathDialog dialog, const fs::path& path, bool replace) {
  std::error_code ignored;
  if (!replace && path != app.yoke.path && fs::exists(path, ignored)) {
    dialog.ask_replace = true;
    app.session.dialog = dialog;
    return;
  }
  app.session.dialog = NoDialog{};
  if (path == app.yoke.path && ask_about_changed_file(app, KeptSide::yoke, dialog.afterwards)) {
    return;
  }
  if (const Failure failure = try_writing_yoke(app, path)) {
    dialog.trouble = failure->text();
    dialog.ask_replace = false;
    app.session.dialog = dialog;
    return;
  }
  go_on(app, dialog.afterwards);
}

} // namespace punchwright::editor
