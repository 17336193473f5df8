// An object an action: "do" names it, the other keys are its own.
#include "cli/action_json.hpp"

namespace punchwright::cli {
namespace {

const char* word_for(KnitSetting setting) {
  switch (setting) {
  case KnitSetting::plain: return "plain";
  case KnitSetting::two_colour: return "two-colour";
  case KnitSetting::back_only: return "back-only";
  case KnitSetting::forward_only: return "forward-only";
  }
  return "";
}

const char* word_for(NeedlePosition position) {
  switch (position) {
  case NeedlePosition::out_of_work: return "out-of-work";
  case NeedlePosition::working: return "working";
  case NeedlePosition::upper: return "upper";
  case NeedlePosition::holding: return "holding";
  }
  return "";
}

std::string text_of(char yarn) {
  return {yarn};
}

Json json_of(const NeedleSpan& span) {
  return Json::array({name_of(span.first), name_of(span.last)});
}

Json json_of(const std::vector<NeedleSpan>& spans) {
  Json needles = Json::array();
  for (const NeedleSpan& span : spans) {
    needles.push_back(json_of(span));
  }
  return needles;
}

struct Words {
  Json operator()(const HangOn& action) const {
    return {{"do", "hang-on"}, {"needles", Json::array({json_of(action.needles)})}, {"yarn", text_of(action.yarn)}};
  }
  Json operator()(const KnitPass& action) const { return {{"do", "pass"}, {"free", action.free}}; }
  Json operator()(const SetSelection& action) const {
    return {{"do", "selection"}, {"on", action.on}, {"end_needles", action.end_needles}};
  }
  Json operator()(const SetKnitting& action) const { return {{"do", "knitting"}, {"to", word_for(action.to)}}; }
  Json operator()(const LockCard& action) const { return {{"do", "lock-card"}, {"locked", action.locked}}; }
  Json operator()(const TurnCard& action) const { return {{"do", "turn-card"}, {"row", action.row}}; }
  Json operator()(const SetLength& action) const { return {{"do", "length"}, {"double", action.twice}}; }
  Json operator()(const ThreadYarn& action) const {
    return {{"do", "thread"}, {"feeder", action.feeder}, {"yarn", text_of(action.yarn)}};
  }
  Json operator()(const TakeOut& action) const { return {{"do", "take-out"}, {"feeder", action.feeder}}; }
  Json operator()(const CutYarn& action) const { return {{"do", "cut"}, {"yarn", text_of(action.yarn)}}; }
  Json operator()(const MoveNeedles& action) const {
    return {{"do", "needles"}, {"needles", json_of(action.needles)}, {"to", word_for(action.to)}};
  }
  Json operator()(const TransferLoop& action) const {
    return {{"do", "transfer"}, {"from", name_of(action.from)}, {"to", name_of(action.to)}};
  }
  Json operator()(const LiftFloat& action) const { return {{"do", "lift-float"}, {"needle", name_of(action.needle)}}; }
  Json operator()(const SetCounter& action) const { return {{"do", "counter"}, {"to", action.to}}; }
  Json operator()(const TakeWorkOff& /*action*/) const { return {{"do", "take-work-off"}}; }
  Json operator()(const HangWorkBack& action) const {
    return {{"do", "hang-work-back"}, {"needles", json_of(action.needles)}};
  }
  Json operator()(const LiftLoop& action) const {
    return {{"do", "lift-loop"}, {"from", name_of(action.from)}, {"onto", name_of(action.onto)}};
  }
};

} // namespace

Json json_of(const MachineAction& action) {
  return std::visit(Words{}, action);
}

const char* word_for_side(Side side) {
  return side == Side::left ? "left" : "right";
}

} // namespace punchwright::cli
