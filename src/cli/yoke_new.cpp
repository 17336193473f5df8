// From the wishes of the command line to body measures: given ones, or those of the published tables by the size's
// name. Paths are made relative to the new file's folder, so that it can be moved together with its tiers.
#include "cli/yoke_new.hpp"

#include "cli/output.hpp"
#include "pieces/starter.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>

namespace punchwright::cli {
namespace {

namespace fs = std::filesystem;

// As seen from the folder of the file that is written.
std::string from_folder_of(const std::string& output, const std::string& path) {
  const fs::path folder = fs::absolute(output).lexically_normal().parent_path();
  return fs::absolute(path).lexically_normal().lexically_relative(folder).string();
}

// Children's sizes: the armholes of the table, and its arms, where none are given and all sizes are children's.
void add_childrens(BodyMeasures& body) {
  std::vector<double> arms;
  for (const std::string& size : body.sizes) {
    const auto found = std::ranges::find(child_sizes(), size, &ChildSize::name);
    const bool childs = found != child_sizes().end();
    body.armhole_cm.push_back(childs ? found->armhole_cm : 0);
    if (childs) {
      arms.push_back(found->upper_arm_cm);
    }
  }
  if (body.upper_arm_cm.empty() && arms.size() == body.sizes.size()) {
    body.upper_arm_cm = std::move(arms);
  }
}

// Names and measures of the sizes asked for: own measures, or those of the tables.
Result<BodyMeasures> body_of(const YokeWishes& wishes) {
  BodyMeasures body;
  body.ease_cm = wishes.ease_cm.value_or(body.ease_cm);
  body.sizes = wishes.sizes.empty() ? std::vector<std::string>{"S", "M", "L"} : wishes.sizes;
  body.chest_cm = wishes.chest_cm;
  if (!wishes.chest_cm.empty() && wishes.sizes.empty()) {
    body.sizes.clear();
    for (const double chest : wishes.chest_cm) {
      body.sizes.push_back(fmt::format("{:g} cm", chest));
    }
  }
  for (const std::string& size : wishes.chest_cm.empty() ? body.sizes : std::vector<std::string>{}) {
    const auto found = std::ranges::find(bust_sizes(), size, &BustSize::name);
    if (std::ranges::find(child_sizes(), size, &ChildSize::name) != child_sizes().end()) {
      return Error{{}, 0, 0, said("the table has no chest of '{}', only arms", size), tr("give it with --chest")};
    }
    if (found == bust_sizes().end()) {
      return Error{{},
                   0,
                   0,
                   said("there is no size '{}' in the table", size),
                   tr("allowed: XS, S, M, L, XL, 2X, 3X, 4X, 5X, or give its chest with --chest")};
    }
    body.chest_cm.push_back(found->chest_cm);
  }
  body.upper_arm_cm = wishes.upper_arm_cm;
  if (body.chest_cm.size() != body.sizes.size() ||
      (!body.upper_arm_cm.empty() && body.upper_arm_cm.size() != body.sizes.size())) {
    return Error{
        {},
        0,
        0,
        said("{}, {} of the chest and {} of the arm", said_count(std::ssize(body.sizes), "{} size", "{} sizes"),
             said_count(std::ssize(body.chest_cm), "{} measure", "{} measures"), std::ssize(body.upper_arm_cm)),
        tr("allowed: one measure for each size")};
  }
  add_childrens(body);
  return body;
}

} // namespace

Result<Yoke> new_yoke(const YokeWishes& wishes) {
  if (wishes.tiers.empty()) {
    return Error{{},
                 0,
                 0,
                 tr("a new yoke needs its tiers"),
                 tr("name a .repeat file for each, from the bottom upwards: --tier FILE --tier FILE")};
  }
  auto body = body_of(wishes);
  if (!body) {
    return body.error();
  }
  YokeStart start;
  start.kind = *wishes.fresh;
  start.body = std::move(body).value();
  start.title = fs::path(wishes.output).stem().string();
  if (!wishes.machine.empty()) {
    start.profile =
        built_in_profile(wishes.machine) != nullptr ? wishes.machine : from_folder_of(wishes.output, wishes.machine);
  }
  for (const std::string& tier : wishes.tiers) {
    start.tiers.push_back(from_folder_of(wishes.output, tier));
  }
  return started_yoke(start, wishes.output, read_for_machine);
}

} // namespace punchwright::cli
