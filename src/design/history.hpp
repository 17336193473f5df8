// What was done to a document, so that it can be undone and redone without limit.
// Steps have names; a drag is one step; the saved place is remembered so that undoing to it is 'unchanged'.
#pragma once

#include "design/edits.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace punchwright {

class History {
public:
  struct Step {
    std::string name;
    std::vector<Change> changes; // in the order in which they were applied
    int rows = 0;                // of the drawing; 0: not known, of a step that was kept elsewhere
  };

  // A step with the document as it was on its other side.
  struct KeptStep {
    std::string name;
    Document other;
  };
  // A history that was kept elsewhere, for a document that is not saved: of the steps that are done (newest first) each
  // with the document before it, of those that were undone (the next to redo first) each with the document after it.
  [[nodiscard]] static History restored(const Document& now, const std::vector<KeptStep>& done,
                                        const std::vector<KeptStep>& undone);
  // A copy with that many steps on either side of the document's state at most, as if it had begun there.
  [[nodiscard]] History latest(std::size_t most) const;

  // Applies and records; what was undone before is forgotten. An edit that changed nothing leaves no step.
  [[nodiscard]] Failure apply(Document& document, const Edit& edit);

  // Between these two everything applied becomes one step.
  void begin_drag(std::string name);
  void end_drag();
  // Takes back what was applied since begin_drag() and forgets it: as if it had never begun.
  void cancel_drag(Document& document);
  [[nodiscard]] bool dragging() const { return drag_open_; }

  // Undo during a drag ends the drag first. Nothing to undo or redo: nothing happens, false.
  bool undo(Document& document);
  bool redo(Document& document);
  [[nodiscard]] bool can_undo() const { return done_ > 0; }
  [[nodiscard]] bool can_redo() const { return done_ < steps_.size(); }

  [[nodiscard]] const std::vector<Step>& steps() const { return steps_; }
  [[nodiscard]] std::size_t done() const { return done_; } // that many of the steps are in the document

  void mark_saved();
  void forget_saved(); // what was saved is no longer there: no state counts as saved until the next saving
  [[nodiscard]] bool saved() const { return saved_at_ == done_; }

  // Grows with every change of the document, by apply, undo or redo: the key for caches.
  [[nodiscard]] std::uint64_t revision() const { return revision_; }

private:
  std::vector<Step> steps_;
  std::size_t done_ = 0;
  std::optional<std::size_t> saved_at_ = 0; // absent: the saved state is no longer reachable
  bool drag_open_ = false;
  bool drag_has_step_ = false;
  std::string drag_name_;
  std::uint64_t revision_ = 0;
};

} // namespace punchwright
