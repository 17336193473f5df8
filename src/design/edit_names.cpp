// Edits in the words of the list of what was done.
#include "design/edits.hpp"

namespace punchwright {
namespace {

struct Namer {
  std::string operator()(const SetCells& edit) const { return edit.contrast ? "draw" : "erase"; }
  std::string operator()(const Fill& edit) const { return edit.contrast ? "fill" : "clear"; }
  std::string operator()(const Shift&) const { return "shift"; }
  std::string operator()(const MirrorLeftRight&) const { return "mirror left and right"; }
  std::string operator()(const MirrorUpsideDown&) const { return "turn upside down"; }
  std::string operator()(const Invert&) const { return "invert"; }
  std::string operator()(const InsertRows&) const { return "insert rows"; }
  std::string operator()(const DeleteRows&) const { return "delete rows"; }
  std::string operator()(const DuplicateRows&) const { return "duplicate rows"; }
  std::string operator()(const InsertColumns&) const { return "insert columns"; }
  std::string operator()(const DeleteColumns&) const { return "delete columns"; }
  std::string operator()(const DuplicateColumns&) const { return "duplicate columns"; }
  std::string operator()(const MoveRows&) const { return "move rows"; }
  std::string operator()(const MoveColumns&) const { return "move columns"; }
  std::string operator()(const Resize&) const { return "change size"; }
  std::string operator()(const Paste&) const { return "paste"; }
  std::string operator()(const Redraw& edit) const { return edit.name; }
  std::string operator()(const ChangeMarks& edit) const { return edit.name; }
  std::string operator()(const ChangeSettings&) const { return "change settings"; }
  std::string operator()(const ChangeBands&) const { return "change bands"; }
};

} // namespace

std::string name_of(const Edit& edit) {
  return std::visit(Namer{}, edit);
}

} // namespace punchwright
