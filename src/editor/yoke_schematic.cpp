// The schematic: each piece with its asked widths and the steps that its stitch counts make of them, beside the depth
// with its tiers. Round handles are dragged; where a drag began is kept by ImGui, so that nothing here changes.
#include "editor/yoke_findings.hpp"
#include "editor/yoke_handles.hpp"
#include "editor/yoke_parts.hpp"
#include "editor/yoke_schematic_words.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <numeric>
#include <tuple>
#include <vector>

namespace punchwright::editor {

namespace {

class Schematic {
public:
  Schematic(const App& app, Actions& actions, const ScreenBox& room, const SchematicWords& words)
      : app_(app), actions_(actions), theme_(app.theme), opened_(*app.yoke.opened), yoke_(opened_.yoke),
        cache_(app.caches.yoke), size_(app.view.yoke.size), plan_(shown_plan(app)), room_(room), words_(words),
        list_(*ImGui::GetWindowDrawList()), line_(ImGui::GetTextLineHeightWithSpacing()), left_(room.left + words.left),
        right_(room.left + words.right) {}

  void run() {
    lay_out();
    tier_lines();
    for (std::size_t place = 0; place < words_.pieces.size(); ++place) {
      draw_piece(place);
    }
    depth_scale();
    for (std::size_t place = 0; place < words_.pieces.size(); ++place) {
      width_handles(place);
    }
    row_handles();
    depth_handle();
    ImGui::GetStateStorage()->SetBool(ImGui::GetID("held"), held_);
    lines_at(list_, theme_, room_.left,
             room_.bottom - ImGui::GetTextLineHeight() * static_cast<float>(words_.rows.size()), words_.rows);
  }

private:
  [[nodiscard]] float y(double mm) const { return origin_y_ - static_cast<float>(mm) * scale_; }
  [[nodiscard]] float px(double mm) const { return static_cast<float>(mm) * scale_; }

  // While something is dragged, what was laid out at its beginning stays where it is.
  void lay_out() {
    ImGuiStorage& kept = *ImGui::GetStateStorage();
    const ImGuiID id = ImGui::GetID("laid out");
    const bool stays = kept.GetBool(ImGui::GetID("held")) && ImGui::IsMouseDown(ImGuiMouseButton_Left);
    const float above = words_.above();
    origin_y_ = room_.bottom - words_.below();
    if (stays) {
      scale_ = kept.GetFloat(id);
      origin_y_ = kept.GetFloat(ImGui::GetID("origin"));
      for (std::size_t place = 0; place < words_.pieces.size(); ++place) {
        middles_.push_back(kept.GetFloat(id + 1 + static_cast<ImGuiID>(place)));
      }
      return;
    }
    const float wide = right_ - left_;
    const double tall = words_.tall_mm;
    scale_ = std::min(wide / static_cast<float>(words_.all_wide_mm()),
                      (origin_y_ - room_.top - above) / static_cast<float>(tall));
    scale_ = std::max(scale_, 0.02F);
    std::vector<float> cells = cells_at_scale();
    for (int tries = 0; tries < 30 && std::accumulate(cells.begin(), cells.end(), 0.0F) > wide; ++tries) {
      scale_ *= 0.94F;
      cells = cells_at_scale();
    }
    origin_y_ -= std::max(0.0F, (origin_y_ - room_.top - above - px(tall)) / 2); // in the middle of its room
    const float spare = std::max(0.0F, (wide - std::accumulate(cells.begin(), cells.end(), 0.0F)) /
                                           static_cast<float>(cells.size() + 1));
    float x = left_ + spare;
    for (const float cell : cells) {
      middles_.push_back(std::round(x + cell / 2));
      x += cell + spare;
    }
    kept.SetFloat(id, scale_);
    kept.SetFloat(ImGui::GetID("origin"), origin_y_);
    for (std::size_t place = 0; place < middles_.size(); ++place) {
      kept.SetFloat(id + 1 + static_cast<ImGuiID>(place), middles_[place]);
    }
  }

  [[nodiscard]] std::vector<float> cells_at_scale() const {
    std::vector<float> cells;
    for (const SchematicWords::Piece& piece : words_.pieces) {
      const float widest = std::max(piece.words_wide, px(std::max(piece.bottom_mm, piece.top_mm)));
      cells.push_back(widest + between_schematic_pieces * theme_.scale);
    }
    return cells;
  }

  [[nodiscard]] double height_of_row(int row) const {
    return cache_.row_mm[std::min(static_cast<std::size_t>(row), cache_.row_mm.size() - 1)];
  }

  // The steps that the stitch counts make, and over them the straight lines that were asked for.
  void draw_piece(std::size_t place) {
    const float middle = middles_[place];
    const SchematicWords::Piece& shown = words_.pieces[place];
    const std::size_t piece = shown.number;
    if (plan_ != nullptr) {
      for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
        const TierOfPiece& there = plan_->pieces[piece].tiers[tier];
        const double wide = (there.stitches - 2 * yoke_.edge) * opened_.tiers[tier].document.gauge.stitch_mm();
        const float half = px(wide) / 2;
        const float low = y(height_of_row(plan_->heights[tier]));
        const float high = y(height_of_row(first_shaped_row(opened_, *plan_, piece, tier)));
        const float top = y(height_of_row(plan_->heights[tier + 1]));
        const double then = (there.shaping.after - 2 * yoke_.edge) * opened_.tiers[tier].document.gauge.stitch_mm();
        for (const auto& [reach, up, down] : {std::tuple(px(then) / 2, top, high), std::tuple(half, high, low)}) {
          list_.AddRectFilled({middle - reach, up}, {middle + reach, down}, ink(theme_.field));
          list_.AddRect({middle - reach, up}, {middle + reach, down}, ink(theme_.quiet_text));
        }
        const std::string words = std::to_string(there.stitches);
        if (low - high > line_ && 2 * half > ImGui::CalcTextSize(words.c_str()).x) {
          const ImVec2 size = ImGui::CalcTextSize(words.c_str());
          const ImVec2 at{std::round(middle - size.x / 2), std::round((low + high - size.y) / 2)};
          list_.AddText(at, ink(theme_.text), words.c_str());
          publish(fmt::format("count {} {}", place + 1, tier + 1), {at.x, at.y, at.x + size.x, at.y + size.y});
        }
      }
    }
    const float bottom = px(shown.bottom_mm) / 2;
    const float top = px(shown.top_mm) / 2;
    const std::array<ImVec2, 4> corners = {ImVec2{middle - bottom, y(0)}, ImVec2{middle + bottom, y(0)},
                                           ImVec2{middle + top, y(words_.depth_mm)},
                                           ImVec2{middle - top, y(words_.depth_mm)}};
    list_.AddPolyline(corners.data(), 4, ink(theme_.accent), ImDrawFlags_Closed, 2 * theme_.scale);
    const std::string number = std::to_string(place + 1);
    label("bottom " + number, {middle, y(0) + line_ * 0.85F}, shown.bottom);
    label("names " + number, {middle, y(0) + line_ * (0.85F + static_cast<float>(words_.bottom_lines))}, shown.names,
          true);
    const float top_lines = static_cast<float>(shown.top.size());
    label("top " + number, {middle, y(words_.tall_mm) - line_ * (top_lines - 0.15F)}, shown.top);
  }

  void label(const std::string& name, ImVec2 middle, const std::vector<std::string>& lines, bool bold = false) {
    label_on(list_, theme_, middle, lines, bold);
    const float half = width_of_label(theme_, lines, bold) / 2;
    publish(name, {middle.x - half, middle.y - line_ / 2, middle.x + half,
                   middle.y + line_ * (static_cast<float>(lines.size()) - 0.5F)});
  }

  void publish(const std::string& name, const ScreenBox& box) {
    if (actions_.publish_places) {
      actions_.places.push_back({"schematic " + name, box});
    }
  }

  // Across all pieces, where tiers begin and their plain rows.
  void tier_lines() {
    for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
      const float from = y(height_of_row(cache_.heights[tier]));
      list_.AddLine({left_ - 14 * theme_.scale, from}, {right_, from}, ink(theme_.quiet_text, 0.35F));
    }
  }

  // Words left of the scale, and what of it they are for.
  struct Beside {
    float high = 0; // px
    float low = 0;
    std::string words;
    std::string in_full; // for the tip
  };

  void depth_scale() {
    const float x = left_ - 14 * theme_.scale;
    std::vector<Beside> all; // from below
    for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
      const int plain = yoke_.tiers[tier].plain_above.at(size_);
      const float low = y(height_of_row(cache_.heights[tier]));
      const float middle = y(height_of_row(cache_.heights[tier + 1] - plain));
      const float high = y(height_of_row(cache_.heights[tier + 1]));
      list_.AddRectFilled({x - 3 * theme_.scale, middle}, {x + 3 * theme_.scale, low}, ink(theme_.quiet_text));
      list_.AddLine({x, high}, {x, middle}, ink(theme_.quiet_text), 2 * theme_.scale);
      const std::string name = said("tier {}", tier + 1);
      const std::string rows = said_count(plain, "{} plain row", "{} plain rows");
      all.push_back({middle, low, words_.beside ? name : fmt::format("{}.", tier + 1),
                     fmt::format("{}: {}", name, cache_.tiers[tier])});
      all.push_back({high, middle, words_.beside ? rows : fmt::format("+{}", plain), rows});
    }
    std::ranges::reverse(all);
    for (const Beside& one : all) {
      tip_of(one, {left_ - 30 * theme_.scale, one.high, left_ - 8 * theme_.scale, one.low});
    }
    // More tiers than lines of text: those that are high enough for one.
    const float tall = ImGui::GetTextLineHeight();
    if (static_cast<float>(all.size()) * tall > lowest_words() - room_.top) {
      std::erase_if(all, [tall](const Beside& one) { return one.low - one.high < tall; });
    }
    words_beside(all);
  }
  // px: above what is said below all pieces
  [[nodiscard]] float lowest_words() const {
    return room_.bottom - ImGui::GetTextLineHeight() * static_cast<float>(words_.rows.size());
  }

  void tip_of(const Beside& one, const ScreenBox& box) const {
    if (ImGui::IsWindowHovered() && !ImGui::IsAnyItemHovered() &&
        ImGui::IsMouseHoveringRect({box.left, box.top}, {box.right, box.bottom})) {
      tip_beside(theme_, one.in_full, {});
    }
  }

  // Where rows are too low for a line of text, the words move apart, and a line leads from each to its rows.
  void words_beside(const std::vector<Beside>& all) {
    const float tall = ImGui::GetTextLineHeight();
    std::vector<float> middles;
    for (const Beside& one : all) {
      middles.push_back((one.low + one.high) / 2);
    }
    const std::vector<float> apart = moved_apart(middles, tall, room_.top + tall / 2, lowest_words() - tall / 2);
    const float right = left_ - 30 * theme_.scale;
    for (std::size_t place = 0; place < all.size(); ++place) {
      const ScreenBox box{room_.left, apart[place] - tall / 2, right, apart[place] + tall / 2};
      lines_at(list_, theme_, right, std::round(box.top), {all[place].words}, true);
      publish(fmt::format("beside {}", place + 1), box);
      if (std::abs(apart[place] - middles[place]) > 1) {
        list_.AddLine({right + 2 * theme_.scale, apart[place]}, {left_ - 20 * theme_.scale, middles[place]},
                      ink(theme_.quiet_text));
      }
      tip_of(all[place], box);
    }
  }

  // Sends the measure, where the drag has changed it.
  void send_measure(PerSize<double> YokePiece::*member, std::size_t piece, double cm, const std::string& step) {
    if (std::abs((yoke_.pieces[piece].*member).at(size_) - cm) < 1e-9) {
      return;
    }
    Yoke next = yoke_;
    set_for_size(next.pieces[piece].*member, yoke_.sizes.size(), size_, cm);
    send(app_, actions_, std::move(next), fmt::format("{}, {}", step, yoke_.sizes[size_]));
  }

  void width_handles(std::size_t place) {
    const SchematicWords::Piece& shown = words_.pieces[place];
    const std::size_t piece = shown.number;
    struct Corner {
      const char* name;
      bool top;
      float side;
    };
    constexpr std::array corners = {Corner{"drag bottom left", false, -1}, Corner{"drag bottom", false, 1},
                                    Corner{"drag top left", true, -1}, Corner{"drag top", true, 1}};
    for (const Corner& corner : corners) {
      const double mm = corner.top ? shown.top_mm : shown.bottom_mm;
      const std::string name = fmt::format("{} {}", corner.name, piece + 1);
      const std::string step = corner.top ? said("{} at the top", yoke_.pieces[piece].name)
                                          : said("{} at the bottom", yoke_.pieces[piece].name);
      const ImVec2 at{middles_[place] + corner.side * px(mm) / 2, y(corner.top ? words_.depth_mm : 0)};
      ImVec2 by;
      if (drag_handle(theme_, actions_, name, at,
                      fmt::format("{}: {}", step, cloth_length(mm / 10, app_.settings.lengths)), by, held_)) {
        const double start = at_drag_start(name, mm);
        const double cm = rounded_drag((start + 2 * corner.side * by.x / scale_) / 10, app_.settings.lengths);
        send_measure(corner.top ? &YokePiece::top_cm : &YokePiece::bottom_cm, piece,
                     std::clamp(cm, narrowest_cm, widest_cm), step);
      }
    }
  }

  void row_handles() {
    for (std::size_t tier = 0; tier < opened_.tiers.size(); ++tier) {
      const int plain = yoke_.tiers[tier].plain_above.at(size_);
      const std::string name = fmt::format("drag rows {}", tier + 1);
      const ImVec2 at{left_ - 14 * theme_.scale, y(height_of_row(cache_.heights[tier + 1]))};
      ImVec2 by;
      if (!drag_handle(theme_, actions_, name, at,
                       said_count(plain, "{} plain row above tier {}", "{} plain rows above tier {}", tier + 1), by,
                       held_)) {
        continue;
      }
      const int last = cache_.heights[tier + 1];
      const double row = last > 0 ? height_of_row(last) - height_of_row(last - 1) : 5;
      const double start = at_drag_start(name, plain);
      const int needed = plain_rows_needed(opened_, tier).needed();
      const int rows = std::clamp(static_cast<int>(std::lround(start - by.y / scale_ / std::max(0.1, row))), needed,
                                  most_plain_rows);
      if (rows != plain) {
        Yoke next = yoke_;
        set_for_size(next.tiers[tier].plain_above, yoke_.sizes.size(), size_, rows);
        send(app_, actions_, std::move(next), said("plain rows above tier {}, {}", tier + 1, yoke_.sizes[size_]));
      }
    }
  }

  void depth_handle() {
    const float x = room_.right - 12 * theme_.scale;
    const std::string words = said("depth {}", cloth_length(words_.depth_mm / 10, app_.settings.lengths));
    list_.AddLine({x, y(0)}, {x, y(words_.depth_mm)}, ink(theme_.accent), 1.5F * theme_.scale);
    const float wide = ImGui::CalcTextSize(words.c_str()).x;
    words_on(list_, theme_,
             {room_.right - wide / 2 - 4 * theme_.scale,
              y(words_.tall_mm) - (1.1F + static_cast<float>(words_.top_lines)) * line_},
             words);
    ImVec2 by;
    if (drag_handle(theme_, actions_, "drag depth", {x, y(words_.depth_mm)}, words, by, held_)) {
      const double start = at_drag_start("drag depth", words_.depth_mm);
      const double cm =
          std::clamp(rounded_drag((start - by.y / scale_) / 10, app_.settings.lengths), shallowest_cm, deepest_cm);
      if (std::abs(cm - yoke_.depth_cm.at(size_)) > 1e-9) {
        Yoke next = yoke_;
        set_for_size(next.depth_cm, yoke_.sizes.size(), size_, cm);
        send(app_, actions_, std::move(next), fmt::format("{}, {}", tr("depth"), yoke_.sizes[size_]));
      }
    }
  }

  const App& app_;
  Actions& actions_;
  const Theme& theme_;
  const OpenedYoke& opened_;
  const Yoke& yoke_;
  const YokeCache& cache_;
  std::size_t size_;
  const SizePlan* plan_;
  ScreenBox room_;
  const SchematicWords& words_;
  ImDrawList& list_;
  float line_;
  float left_;                 // px: where the pieces' room begins
  float right_;                // px: where it ends
  std::vector<float> middles_; // px: of each piece
  float origin_y_ = 0;         // px: height 0
  float scale_ = 1;            // px per mm
  bool held_ = false;          // something is dragged
};

} // namespace

void draw_schematic(const App& app, Actions& actions, const ScreenBox& room, const SchematicWords& words) {
  Schematic(app, actions, room, words).run();
}

} // namespace punchwright::editor
