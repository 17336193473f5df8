// The leaflet's page: one grid and four type sizes for all of its parts, running heads and page numbers.
#pragma once

#include "sheets/page_frame.hpp"
#include "sheets/text_flow.hpp"

#include <string>
#include <vector>

namespace punchwright {

namespace leaflet {
// Type sizes in mm. Body text is 9.5 points: read in the hand.
constexpr double title_type = 9.6;
constexpr double heading_type = 6.0;
constexpr double subheading_type = 4.1;
constexpr double body_type = 3.35;
constexpr double small_type = 2.75;
// The base-line grid: every line of text stands on it, apart by whole lines or, between paragraphs, by half a line.
constexpr double line_step = 4.6;
constexpr double half_line = line_step / 2;
constexpr double base_line = 2.9; // from a line's upper edge
constexpr double side_margin = 20.0;
constexpr double column_gap = 9.0;
} // namespace leaflet

// A part of the leaflet and the page on which it begins, for the list on the first page.
struct LeafletPart {
  std::string name;
  int page = 1;
};

class LeafletPages {
public:
  LeafletPages(Paper paper, std::string title);

  // A part on a page of its own: its heading stands in the running heads too.
  void begin_part(const std::string& name);
  // Goes on below, where there is room for a heading and as much more; else on a new page.
  void begin_part_below(const std::string& name, double room);

  // Below what stands on the page already.
  void set(const std::vector<FlowBlock>& blocks, int columns, const FlowBlock& head = {});
  // Side by side, each in a column of its own, where both fit on this page; else one after the other over the columns.
  void set_beside(const std::vector<FlowBlock>& left, const std::vector<FlowBlock>& right);
  // At least so much, and on to the next half line.
  void gap(double mm);
  void new_page();

  [[nodiscard]] std::vector<Shape>& shapes() { return sheets_.back().groups.back().shapes; }
  [[nodiscard]] double left() const { return leaflet::side_margin; }
  [[nodiscard]] double width() const { return frame_.paper_width - 2 * leaflet::side_margin; }
  [[nodiscard]] double column_width(int columns) const;
  [[nodiscard]] double y() const { return y_; }
  [[nodiscard]] double room() const { return bottom() - y_; }
  [[nodiscard]] double page_room() const { return bottom() - page_top; }
  [[nodiscard]] const std::vector<LeafletPart>& parts() const { return parts_; }

  [[nodiscard]] int pages() const { return static_cast<int>(sheets_.size()); }

  // `more_pages` follow in the same file, and count.
  [[nodiscard]] std::vector<Sheet> finish(int more_pages = 0);

private:
  static constexpr double page_top = 24.0; // below the running head
  static constexpr double foot = 20.0;     // from the paper's lower edge

  [[nodiscard]] double bottom() const { return frame_.paper_height - foot; }
  void add_heading(const std::string& name);

  PageFrame frame_;
  std::string title_;
  std::vector<Sheet> sheets_;
  std::vector<std::string> part_of_page_;
  std::vector<LeafletPart> parts_;
  std::string part_;
  double y_ = 0;
};

} // namespace punchwright
