// The design and the yoke, asked the same questions.
#include "editor/kept_sides.hpp"

#include "design/repeat_file.hpp"
#include "editor/app.hpp"
#include "pieces/yoke_file.hpp"
#include "pieces/yoke_paths.hpp"

#include <utility>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

void take_design_steps(App& app, KeptDesign& kept) {
  if (kept.design == app.work.design) {
    app.work.history = std::move(kept.history);
    app.work.history.mark_saved();
  }
}

void take_yoke_steps(App& app, KeptYoke kept) {
  if (app.yoke.opened && kept.yoke == app.yoke.opened->yoke) {
    put_steps(app.yoke, std::move(kept));
    app.yoke.saved_at = app.yoke.done;
  }
}

} // namespace

const fs::path& path_of(const App& app, KeptSide side) {
  return side == KeptSide::design ? app.session.path : app.yoke.path;
}

std::uint64_t opening_of(const App& app, KeptSide side) {
  return side == KeptSide::design ? app.work.opening : app.yoke.opening;
}

std::uint64_t revision_of(const App& app, KeptSide side) {
  return side == KeptSide::design ? app.work.history.revision() : app.yoke.revision;
}

std::uint64_t digest_of_file(const App& app, KeptSide side) {
  return side == KeptSide::design ? app.session.file_digest : app.yoke.file_digest;
}

bool is_saved(const App& app, KeptSide side) {
  return side == KeptSide::design ? app.work.history.saved() : !app.yoke.opened || app.yoke.saved();
}

std::string text_to_save(const App& app, KeptSide side) {
  return side == KeptSide::design ? write_repeat(app.work.design)
                                  : write_yoke(as_written_in(app.yoke.opened->yoke, path_of(app, side).parent_path()));
}

std::optional<FileStamp>& file_seen_of(App& app, KeptSide side) {
  return side == KeptSide::design ? app.session.file_seen : app.yoke.file_seen;
}

void forget_saved(App& app, KeptSide side) {
  if (side == KeptSide::design) {
    app.work.history.forget_saved();
  } else {
    app.yoke.saved_at.reset();
  }
}

bool has_steps(const App& app, KeptSide side) {
  return side == KeptSide::design ? !app.work.history.steps().empty() : !app.yoke.steps.empty();
}

Journal journal_of(const App& app, KeptSide side) {
  Journal journal;
  journal.file = path_of(app, side);
  journal.file_digest = digest_of_file(app, side);
  if (side == KeptSide::design) {
    journal.suggested_name = app.session.suggested_name;
    journal.work = KeptDesign{app.work.design, app.work.history.latest(most_kept_steps)};
  } else {
    journal.suggested_name = app.yoke.suggested_name;
    journal.work = kept_yoke(app.yoke, most_kept_steps);
  }
  return journal;
}

void take_steps(App& app, KeptSide side, Journal journal) {
  if (side == KeptSide::design) {
    if (auto* const design = std::get_if<KeptDesign>(&journal.work)) {
      take_design_steps(app, *design);
    }
  } else if (auto* const yoke = std::get_if<KeptYoke>(&journal.work)) {
    take_yoke_steps(app, std::move(*yoke));
  }
}

std::shared_ptr<FoundWork>& recovered_of(App& app, KeptSide side) {
  return side == KeptSide::design ? app.session.recovered : app.yoke.recovered;
}

} // namespace punchwright::editor
