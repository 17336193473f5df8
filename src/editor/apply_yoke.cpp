// The open yoke: changed, undone, begun from measurements; a tier's repeat opened from it and read again when it was
// saved.
#include "design/step_words.hpp"
#include "design/words.hpp"
#include "editor/applying.hpp"
#include "editor/kept_work.hpp"
#include "files/files.hpp"
#include "pieces/size_counts.hpp"
#include "pieces/yoke_paths.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <utility>

namespace punchwright::editor {

namespace fs = std::filesystem;

namespace {

std::string sentence_of(const Error& error) {
  const std::string text = with_capital(error.message);
  return error.remedy.empty() ? text : text + "; " + error.remedy;
}

void keep_view_inside(App& app) {
  YokeView& view = app.view.yoke;
  const Yoke& yoke = app.yoke.opened->yoke;
  view.size = std::min(view.size, yoke.sizes.size() - 1);
  view.piece = std::min(view.piece, yoke.pieces.size() - 1);
}

bool same_files(const Yoke& one, const Yoke& other) {
  return one.profile == other.profile &&
         std::ranges::equal(one.tiers, other.tiers, {}, &YokeTier::repeat, &YokeTier::repeat);
}

// As long as a yoke wants a machine, it may.
Machines machines_of(const OpenedYoke& present) {
  return present.machine_wanted ? Machines::may_differ : Machines::must_agree;
}

// The yoke over the tiers that are open, which are read anew where it names others.
Result<OpenedYoke> opened_with(const OpenedYoke& present, Yoke yoke, Machines machines) {
  return same_files(present.yoke, yoke) ? with_changed_measures(present, std::move(yoke))
                                        : open_yoke(std::move(yoke), present.file, file_reader(), machines);
}

bool put_in(App& app, Yoke yoke, Machines machines) {
  auto opened = opened_with(*app.yoke.opened, std::move(yoke), machines);
  if (!opened) {
    say(app, sentence_of(opened.error()), Tone::trouble);
    return false;
  }
  app.yoke.opened = std::move(opened).value();
  keep_view_inside(app);
  return true;
}

} // namespace

fs::path place_of_new_yoke(const App& app) {
  return app.session.folder / "untitled.yoke";
}

void take_yoke(App& app, OpenedYoke opened, const fs::path& path, std::uint64_t digest) {
  close_step(app);
  forget_recovered(app, KeptSide::yoke); // given up, or saved
  YokeWork work;
  work.opening = app.yoke.opening + 1;
  work.path = path;
  work.file_digest = digest;
  opened.yoke = with_whole_paths(std::move(opened.yoke), opened.file);
  work.opened = std::move(opened);
  work.shown = true;
  app.yoke = std::move(work);
  app.view.yoke.size = 0;
  app.view.yoke.piece = 0;
  app.view.yoke.finding = -1;
  app.session.dialog = NoDialog{};
}

void change_yoke(App& app, const ChangeYoke& change) {
  YokeWork& work = app.yoke;
  if (!work.opened || change.yoke == work.opened->yoke) {
    return;
  }
  if (work.open_field != change.field) {
    close_step(app);
  }
  const Yoke before = work.opened->yoke;
  if (put_in(app, change.yoke, machines_of(*work.opened))) {
    record_step(work, before, change.field);
    app.session.message.clear();
  }
  work.open_field = change.field;
}

void drop_yoke_field(App& app) {
  YokeWork& work = app.yoke;
  if (!work.opened || work.open_field.empty()) {
    return;
  }
  const bool has_step = work.done > 0 && work.done == work.steps.size() && work.steps.back().name == work.open_field;
  if (has_step && put_in(app, work.steps.back().before, Machines::may_differ)) {
    work.steps.pop_back();
    work.done = work.steps.size();
    ++work.revision;
  }
  close_step(app);
}

void undo_or_redo_yoke(App& app, bool back) {
  YokeWork& work = app.yoke;
  if (back ? work.done == 0 : work.done == work.steps.size()) {
    return say(app, back ? tr("Nothing to undo") : tr("Nothing to redo"));
  }
  const YokeStep step = work.steps[back ? work.done - 1 : work.done];
  if (put_in(app, back ? step.before : step.after, Machines::may_differ)) {
    work.done = back ? work.done - 1 : work.done + 1;
    ++work.revision;
    const std::string name = step_in_words(step.name);
    say(app, back ? said("Undone: {}", name) : said("Done again: {}", name));
  }
}

void go_to_yoke_step(App& app, std::size_t done) {
  close_step(app);
  YokeWork& work = app.yoke;
  if (!work.opened || done > work.steps.size() || done == work.done) {
    return;
  }
  if (put_in(app, done < work.done ? work.steps[done].before : work.steps[done - 1].after, Machines::may_differ)) {
    work.done = done;
    ++work.revision;
    say(app, done == 0 ? tr("Back at the beginning") : said("Now at: {}", tr(work.steps[done - 1].name.c_str())));
  }
}

void split_yoke(App& app) {
  if (!app.yoke.opened) {
    return;
  }
  auto split = split_to_fit(*app.yoke.opened);
  if (!split) {
    return say(app, sentence_of(split.error()), Tone::trouble);
  }
  change_yoke(app, {std::move(split).value(), noted("split the pieces")});
  close_step(app);
}

void begin_yoke(App& app, const NewYokeDialog& wishes) {
  close_step(app);
  YokeStart start;
  start.kind = wishes.kind;
  start.rules = wishes.rules;
  start.body.ease_cm = wishes.ease_cm;
  for (const BodySize& size : wishes.sizes) {
    start.body.sizes.push_back(size.name);
    start.body.chest_cm.push_back(size.chest_cm);
    start.body.armhole_cm.push_back(size.armhole_cm);
    if (wishes.own_arms && wishes.kind == YokeKind::pullover) {
      start.body.upper_arm_cm.push_back(size.upper_arm_cm);
    }
  }
  start.title = wishes.kind == YokeKind::pullover ? "Pullover" : "Poncho";
  if (!wishes.profile.empty()) {
    start.profile = wishes.profile;
  }
  for (const fs::path& tier : wishes.tiers) {
    start.tiers.push_back(tier.string());
  }
  const fs::path place = place_of_new_yoke(app);
  const auto refuse = [&](const Error& error) {
    NewYokeDialog again = wishes;
    again.remark = with_capital(error.message);
    again.remedy = error.remedy;
    app.session.dialog = again;
  };
  if (start.tiers.empty()) {
    return refuse(
        {{}, 0, 0, tr("a yoke needs at least one tier"), tr("add the repeat of each tier, from the bottom upwards")});
  }
  auto yoke = started_yoke(start, place.string(), file_reader());
  if (!yoke) {
    return refuse(yoke.error());
  }
  auto opened = open_yoke(std::move(yoke).value(), place.string(), file_reader());
  if (!opened) {
    return refuse(opened.error());
  }
  take_yoke(app, std::move(opened).value(), {}, 0);
  app.yoke.suggested_name = wishes.kind == YokeKind::pullover ? "pullover" : "poncho";
  app.yoke.saved_at.reset();
  say(app, tr("A new yoke from measurements: every number can be changed; saving asks where to keep it"));
}

void open_tier(App& app, std::size_t tier) {
  if (app.yoke.opened && tier < app.yoke.opened->yoke.tiers.size()) {
    request(app, Pending{Pending::What::open_file, app.yoke.opened->yoke.tiers[tier].repeat, {}});
  }
}

void reread_tiers(App& app, const fs::path& path) {
  if (!app.yoke.opened) {
    return;
  }
  OpenedYoke& present = *app.yoke.opened;
  const std::string name = path.lexically_normal().string();
  if (std::ranges::find(present.yoke.tiers, name, &YokeTier::repeat) == present.yoke.tiers.end()) {
    return;
  }
  auto opened = open_yoke(present.yoke, present.file, file_reader(), machines_of(present));
  if (!opened) {
    return say(app, said("Saved; but the yoke can't take it: {}", sentence_of(opened.error())), Tone::trouble);
  }
  present = std::move(opened).value();
  ++app.yoke.revision;
}

void choose_yoke_machine(App& app, const fs::path& path) {
  Yoke yoke = app.yoke.opened->yoke;
  yoke.profile = path.lexically_normal().string();
  change_yoke(app, {std::move(yoke), noted("machine for all tiers")});
  close_step(app);
}

void add_tier(App& app, const fs::path& path) {
  Yoke yoke = app.yoke.opened->yoke;
  const int most_needed = 4; // of the rows that any machine asks for above a tier
  if (yoke.tiers.size() >= most_yoke_tiers) {
    return say(app, said("A yoke has {} tiers at most", most_yoke_tiers), Tone::trouble);
  }
  if (!yoke.tiers.empty()) { // it was the last one, above which nothing is set up
    for (int& rows : yoke.tiers.back().plain_above.values) {
      rows = std::max(rows, most_needed);
    }
  }
  yoke.tiers.push_back({path.lexically_normal().string(), {{most_needed}}});
  change_yoke(app, {std::move(yoke), noted("add a tier")});
  close_step(app);
}

} // namespace punchwright::editor
