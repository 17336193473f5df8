// Edits in the words of the list of what was done. In English, as journals keep them; translated when they are shown.
#include "design/edits.hpp"
#include "words/words.hpp"

namespace punchwright {
namespace {

struct Namer {
  std::string operator()(const SetCells& edit) const { return edit.contrast ? noted("draw") : noted("erase"); }
  std::string operator()(const Fill& edit) const { return edit.contrast ? noted("fill") : noted("clear"); }
  std::string operator()(const Shift&) const { return noted("shift"); }
  std::string operator()(const MirrorLeftRight&) const { return noted("mirror left and right"); }
  std::string operator()(const MirrorUpsideDown&) const { return noted("turn upside down"); }
  std::string operator()(const Invert&) const { return noted("invert"); }
  std::string operator()(const InsertRows&) const { return noted("insert rows"); }
  std::string operator()(const DeleteRows&) const { return noted("delete rows"); }
  std::string operator()(const DuplicateRows&) const { return noted("duplicate rows"); }
  std::string operator()(const InsertColumns&) const { return noted("insert columns"); }
  std::string operator()(const DeleteColumns&) const { return noted("delete columns"); }
  std::string operator()(const DuplicateColumns&) const { return noted("duplicate columns"); }
  std::string operator()(const MoveRows&) const { return noted("move rows"); }
  std::string operator()(const MoveColumns&) const { return noted("move columns"); }
  std::string operator()(const Resize&) const { return noted("change size"); }
  std::string operator()(const Paste&) const { return noted("paste"); }
  std::string operator()(const Redraw& edit) const { return edit.name; }
  std::string operator()(const ChangeMarks& edit) const { return edit.name; }
  std::string operator()(const ChangeSettings&) const { return noted("change settings"); }
  std::string operator()(const ChangeBands&) const { return noted("change bands"); }
};

} // namespace

std::string name_of(const Edit& edit) {
  return std::visit(Namer{}, edit);
}

} // namespace punchwright
