// The steps on paper: a box to tick, the number, the sentence, in type that reads from an arm's length.
#include "sheets/chart_words.hpp"
#include "sheets/page_frame.hpp"
#include "sheets/shapes.hpp"
#include "sheets/sheet_words.hpp"
#include "sheets/step_forms.hpp"
#include "sheets/text_metrics.hpp"
#include "words/words.hpp"

#include <fmt/format.h>

namespace punchwright {
namespace {

// As on the needle chart: capitals of 3.3 mm read at 700 mm (ISO 9241-303, from memory).
constexpr double step_type = 4.5;
constexpr double number_type = 5.0;
constexpr double heading_type = 5.6;
constexpr double title_type = 6.4;
constexpr double small_type = 3.2;
constexpr double line_spacing = 1.28; // of the type size
constexpr double step_gap = 2.2;      // mm between two steps
constexpr double box_size = 5.2;
constexpr double care_type = 3.0;
constexpr double foot_height = 11.0;

//     left
//     | [ ]   12.  Knit 9 rows (rows 1 to 9), ending on the left.
//     box     number  sentence
class StepPages {
public:
  StepPages(const StepList& list, const Document& document, const Profile& profile)
      : list_(list), document_(document), profile_(profile), frame_(frame_for(document.card.paper, 1, 1)) {
    const double numbers = width_of(fmt::format("{}.", list.steps.size()), number_type, true);
    number_end_ = frame_.left() + box_size + 3.0 + numbers;
    words_ = number_end_ + 3.0;
  }

  std::vector<Sheet> all() {
    new_page();
    std::optional<StepPart> part;
    for (std::size_t index = 0; index < list_.steps.size(); ++index) {
      const Step& step = list_.steps[index];
      const auto lines = lines_of(one_line(step.text), step_type, false, frame_.right() - words_);
      const double height = static_cast<double>(lines.size()) * step_type * line_spacing + step_gap;
      const double heading = part != step.part ? heading_type * 2.1 : 0;
      if (y_ + heading + height > bottom()) {
        new_page();
        if (part == step.part) {
          add_heading(said("{}, continued", heading_of(step.part)));
        }
      }
      if (part != step.part) {
        part = step.part;
        add_heading(std::string(heading_of(step.part)));
      }
      add_step(static_cast<int>(index) + 1, lines);
    }
    for (std::size_t page = 0; page < sheets_.size(); ++page) {
      add_foot(sheets_[page], static_cast<int>(page) + 1);
    }
    return std::move(sheets_);
  }

private:
  [[nodiscard]] double bottom() const { return frame_.bottom() - foot_height; }
  std::vector<Shape>& shapes() { return sheets_.back().groups.back().shapes; }

  void new_page() {
    const std::string title = step_title(document_);
    sheets_.push_back({title, frame_.paper_width, frame_.paper_height, {Group{"steps", {}}}});
    y_ = frame_.top();
    const double width = frame_.width();
    shapes().push_back(text_shape({frame_.left(), y_ + title_type * 0.8}, fitting_text(title, title_type, true, width),
                                  title_type, Anchor::start, true));
    y_ += title_type * 1.2;
    const std::string machine = one_line(profile_.title.empty() ? profile_.name : title_of_machine(profile_));
    for (const std::string& line : {machine, step_head_words(list_, document_)}) {
      shapes().push_back(text_shape({frame_.left(), y_ + small_type}, fitting_text(line, small_type, false, width),
                                    small_type, Anchor::start, false, ink::dark));
      y_ += small_type * 1.4;
    }
    y_ += 2.0;
    shapes().push_back(line_shape({frame_.left(), y_}, {frame_.right(), y_}, line_paint(ink::middle, 0.3)));
    y_ += 3.0;
  }

  void add_heading(const std::string& text) {
    y_ += heading_type * 0.5;
    shapes().push_back(text_shape({frame_.left(), y_ + heading_type * 0.95}, text, heading_type, Anchor::start, true));
    y_ += heading_type * 1.55;
  }

  void add_step(int number, const std::vector<std::string>& lines) {
    RectangleShape box;
    box.corner = {frame_.left(), y_ - 0.6};
    box.width = box_size;
    box.height = box_size;
    box.paint = line_paint(ink::black, 0.35);
    shapes().push_back(box);
    const double base = y_ + step_type * 0.86;
    shapes().push_back(text_shape({number_end_, base}, fmt::format("{}.", number), number_type, Anchor::end, true));
    double line_base = base;
    for (const std::string& line : lines) {
      shapes().push_back(text_shape({words_, line_base}, fitting_text(line, step_type, false, frame_.right() - words_),
                                    step_type, Anchor::start, false));
      line_base += step_type * line_spacing;
    }
    y_ += static_cast<double>(lines.size()) * step_type * line_spacing + step_gap;
  }

  void add_foot(Sheet& sheet, int page) const {
    auto& foot = sheet.groups.back().shapes;
    const double y = frame_.bottom() - 1.0;
    const std::string number = said("page {} of {}", page, sheets_.size());
    foot.push_back(text_shape({frame_.right(), y}, number, small_type, Anchor::end, false, ink::dark));
    const auto lines = lines_of(std::string(care_words()), care_type, false,
                                frame_.width() - width_of(number, small_type, false) - 5.0);
    double base = y - static_cast<double>(lines.size() - 1) * care_type * line_spacing;
    for (const std::string& line : lines) {
      foot.push_back(text_shape({frame_.left(), base}, line, care_type, Anchor::start, false, ink::dark));
      base += care_type * line_spacing;
    }
  }

  const StepList& list_;
  const Document& document_;
  const Profile& profile_;
  PageFrame frame_;
  double number_end_ = 0;
  double words_ = 0;
  double y_ = 0;
  std::vector<Sheet> sheets_;
};

} // namespace

std::vector<Sheet> step_sheets(const StepList& list, const Document& document, const Profile& profile) {
  return StepPages(list, document, profile).all();
}

} // namespace punchwright
