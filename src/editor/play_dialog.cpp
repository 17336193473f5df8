// The knitting played on the screen: the card, feeders and carriage above, the bed below them, and on its needles the
// fabric that grows.
#include "design/wrap.hpp"
#include "editor/dialog_parts.hpp"
#include "editor/play.hpp"
#include "editor/play_fabric.hpp"
#include "editor/widgets.hpp"
#include "plan/bench_moves.hpp"
#include "plan/step_words.hpp"
#include "sheets/card_layout.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace punchwright::editor {
namespace {

struct PlayAt { // what the parts need
  const App& app;
  const PlayedKnitting& played;
  const PlayMoment& moment;
  ImDrawList& list;

  [[nodiscard]] const MachineState& state() const { return moment.knitting.state; }
  [[nodiscard]] float unit() const { return app.theme.scale; }
  [[nodiscard]] Colour yarn(char key) const { return seen_as(yarn_of(played.document, key).colour, app.view.sight); }
};

void wrapped(const std::string& words) {
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(words.c_str());
  ImGui::PopTextWrapPos();
}

// Up and down, which make no pass, move what large text leaves no room for.
void scroll_by_arrows() {
  const float by = ImGui::IsKeyPressed(ImGuiKey_DownArrow) ? 1.0F
                   : ImGui::IsKeyPressed(ImGuiKey_UpArrow) ? -1.0F
                                                           : 0.0F;
  if (by != 0) {
    ImGui::SetScrollY(
        std::clamp(ImGui::GetScrollY() + by * ImGui::GetTextLineHeightWithSpacing(), 0.0F, ImGui::GetScrollMaxY()));
  }
}

// Of what comes between two passes, which one this is.
std::string place_in_order(const PlayMoment& moment) {
  if (moment.knits) {
    return tr("The carriage");
  }
  return moment.all_by_hand == 1 ? std::string(tr("By hand"))
                                 : said("By hand: {} of {}", moment.by_hand, moment.all_by_hand);
}

// What is to be done, alone, so that it can be read from where the hands are; what follows, quietly. As high in every
// moment, so that nothing jumps.
void told(const PlayAt& at, float wide, float high) {
  const Theme& theme = at.app.theme;
  ImGui::BeginChild("told", ImVec2(wide, high), false, ImGuiWindowFlags_NoNav);
  scroll_by_arrows();
  if (at.moment.refused_step >= 0) {
    const Step& step = at.played.list.steps[static_cast<std::size_t>(at.moment.refused_step)];
    ImGui::PushStyleColor(ImGuiCol_Text, tint(theme.fault));
    wrapped(said("This can't be done: {} ({})", step.text,
                 words_of(at.moment.knitting.refusal.value_or(Refusal::no_work))));
    ImGui::PopStyleColor();
  } else {
    const bool more = !at.moment.to_do.empty();
    if (more) {
      hint(theme, place_in_order(at.moment));
    }
    ImGui::PushFont(theme.bold);
    wrapped(more ? at.moment.to_do : tr("The knitting is done."));
    ImGui::PopFont();
    if (!at.moment.then.empty()) {
      hint(theme, said("Then: {}", at.moment.then));
    }
  }
  ImGui::EndChild();
}

// Each feeder with the yarn in it.
void feeders(const PlayAt& at) {
  const Theme& theme = at.app.theme;
  const float size = ImGui::GetTextLineHeight();
  for (int feeder = 0; feeder < at.state().build.feeders; ++feeder) {
    const char key = at.state().feeders[static_cast<std::size_t>(feeder)];
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::Dummy(ImVec2(size, size));
    const ScreenBox box{corner.x, corner.y, corner.x + size, corner.y + size};
    if (key != 0) {
      swatch(at.list, theme, box, at.yarn(key));
    } else {
      at.list.AddRect({box.left, box.top}, {box.right, box.bottom}, ink(theme.quiet_text));
    }
    ImGui::SameLine();
    wrapped(
        said("Feeder {}: {}", feeder + 1, key != 0 ? name_of_yarn(at.played.document, key) : std::string(tr("empty"))));
  }
  for (const HangingYarn& yarn : at.state().hanging) {
    const std::string name = name_of_yarn(at.played.document, yarn.yarn);
    wrapped(yarn.side == Side::left ? said("{} hangs on the left", name) : said("{} hangs on the right", name));
  }
}

// Where the reader and the rows of the card beside it lie, row 1 lowest as on the card.
struct CardPlace {
  float left = 0; // of the first column
  float pitch = 0;
  float reader = 0; // the middle of the row under it
  int below = 0;    // rows in sight below that one
  int above = 0;
  int columns = 0;

  [[nodiscard]] float right() const { return left + pitch * static_cast<float>(columns); }
  [[nodiscard]] float y_of(int rows_above) const { return reader - static_cast<float>(rows_above) * pitch; }
};

CardPlace card_place(const PlayAt& at, ImVec2 corner, float wide, float high) {
  CardPlace place;
  place.columns = at.played.card->columns();
  place.pitch = std::min(wide / (static_cast<float>(place.columns) + 1), 9 * at.unit());
  const int rows = std::max(3, static_cast<int>(high / place.pitch));
  place.left = corner.x + (wide - place.pitch * static_cast<float>(place.columns)) / 2;
  place.below = rows / 2;
  place.above = rows - 1 - place.below;
  place.reader = corner.y + (static_cast<float>(place.above) + 0.5F) * place.pitch;
  return place;
}

// A card that isn't joined ends behind its overlap rows.
void rows_of_card(const PlayAt& at, const CardPlace& place) {
  const Theme& theme = at.app.theme;
  const CardInReader& reader = at.state().card;
  const int count = std::max(1, reader.card->rows());
  const int low = reader.joined ? -place.below : std::max(-place.below, 1 - overlap_rows - reader.row);
  const int high = reader.joined ? place.above : std::min(place.above, count + overlap_rows - reader.row);
  if (high < low) {
    return;
  }
  const float half = place.pitch * 0.5F;
  const auto across = [&](int low_row, int high_row, Colour colour) {
    at.list.AddRectFilled({place.left - half, place.y_of(high_row) - half},
                          {place.right() + half, place.y_of(low_row) + half}, ink(colour));
  };
  across(low, high, theme.field);
  if (low <= 0 && high >= 0) {
    across(0, 0, theme.accent_soft);
  }
  for (int line = low; line <= high; ++line) {
    const int row = reader.row + line;
    const int shown = reader.joined ? round_edge(row - 1, count) + 1 : row;
    for (int column = 1; column <= place.columns; ++column) {
      const ImVec2 middle{place.left + (static_cast<float>(column) - 0.5F) * place.pitch, place.y_of(line)};
      if (reader.card->at(shown, column)) {
        at.list.AddCircleFilled(middle, place.pitch * 0.33F, ink(theme.text), 8);
      } else {
        at.list.AddCircleFilled(middle, std::max(0.5F, place.pitch * 0.08F), ink(theme.quiet_text), 4);
      }
    }
  }
}

// The reader, and what of the card lies beside it; before the card is put in, the reader alone.
void card(const PlayAt& at, float wide, float high) {
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  ImGui::Dummy(ImVec2(wide, high));
  const CardPlace place = card_place(at, corner, wide, high);
  const float half = place.pitch * 0.5F;
  if (at.state().card.card != nullptr) {
    rows_of_card(at, place);
  }
  at.list.AddRect({place.left - half, place.reader - half}, {place.right() + half, place.reader + half},
                  ink(at.app.theme.accent));
}

// The needles in work: those that stand forward reach further down, towards the knitter.
void needles(const PlayAt& at, const BedPlace& bed, float top, float high) {
  const Theme& theme = at.app.theme;
  for (int place = 0; place < bed.needles; ++place) {
    const Needle needle{bed.first.position + place};
    if (!at.state().has(needle)) {
      continue;
    }
    const BedNeedle& here = at.state().at(needle);
    const float x = bed.x_of(needle);
    const float wide = std::max(1.0F, bed.pitch * 0.5F);
    const bool forward = here.position == NeedlePosition::upper || here.position == NeedlePosition::holding;
    const bool works = here.position != NeedlePosition::out_of_work;
    const float shift = works ? (forward ? high * 0.5F : high * 0.2F) : 0;
    const float left = std::round(x + (bed.pitch - wide) / 2);
    at.list.AddRectFilled({left, top + shift}, {left + wide, top + shift + high * 0.5F},
                          ink(forward ? theme.text : theme.quiet_text, works ? 1.0F : 0.4F));
  }
  const float middle = bed.x_of(right_needle(1));
  if (right_needle(1) > bed.first && right_needle(1).position < bed.first.position + bed.needles) {
    at.list.AddTriangleFilled({middle - 4 * at.unit(), top - 6 * at.unit()},
                              {middle + 4 * at.unit(), top - 6 * at.unit()}, {middle, top}, ink(theme.accent));
  }
}

void carriage(const PlayAt& at, const ScreenBox& box) {
  const Theme& theme = at.app.theme;
  const bool left = at.state().carriage == Side::left;
  const float wide = std::min(2.4F * box.height(), box.width() / 4);
  const float from = left ? box.left : box.right - wide;
  at.list.AddRectFilled({box.left, box.middle().y - 1}, {box.right, box.middle().y + 1}, ink(theme.quiet_text));
  at.list.AddRectFilled({from, box.top}, {from + wide, box.bottom}, ink(theme.accent), 3 * at.unit());
  const float middle = from + wide / 2;
  const float head = (left ? 0.35F : -0.35F) * box.height();
  at.list.AddTriangleFilled({middle + head, box.middle().y}, {middle - head, box.top + box.height() * 0.15F},
                            {middle - head, box.bottom - box.height() * 0.15F}, ink(theme.on_accent));
}

PlayedColours colours_of(const PlayAt& at) {
  return {at.app.theme, at.app.view.sight, at.played.document};
}

void bed(const PlayAt& at, float high) {
  const float unit = at.unit();
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(6 * unit, 4 * unit));
  ImGui::BeginChild("bed", ImVec2(0, high), true, ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoScrollbar);
  ImGui::PopStyleVar();
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const PlayAt inside{at.app, at.played, at.moment, list};
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const ImVec2 room = ImGui::GetContentRegionAvail();
  BedPlace place;
  place.first = Needle{first_needle_of(at.played.document).position - 1}; // one at each side that rests
  place.needles = stitches_of(at.played.document) + 2;
  place.pitch = std::min(room.x / static_cast<float>(place.needles), 18 * unit);
  place.left = corner.x + (room.x - place.pitch * static_cast<float>(place.needles)) / 2;
  const float rail = std::min(22 * unit, room.y * 0.12F);
  const float needle = std::min(26 * unit, room.y * 0.14F);
  carriage(inside, {corner.x, corner.y, corner.x + room.x, corner.y + rail});
  needles(inside, place, corner.y + rail + 10 * unit, needle);
  draw_played_fabric(list, colours_of(inside), at.moment.knitting.fabric, place,
                     {place.left, corner.y + rail + 12 * unit + needle, corner.x + room.x, corner.y + room.y});
  ImGui::EndChild();
}

// Left and right by one, page keys by passes, Home and End; true where one was pressed.
bool keys(const PlayedKnitting& played, const PlayMoment& moment, int& at) {
  constexpr int passes = 10;
  const int last = played.count();
  const int back = moment.passes - passes;
  const std::array goals = {std::pair{ImGuiKey_RightArrow, at + 1},
                            std::pair{ImGuiKey_Space, at + 1},
                            std::pair{ImGuiKey_LeftArrow, at - 1},
                            std::pair{ImGuiKey_PageDown, played.ready_after(moment.passes + passes)},
                            std::pair{ImGuiKey_PageUp, back < 0 ? 0 : played.ready_after(back)},
                            std::pair{ImGuiKey_Home, 0},
                            std::pair{ImGuiKey_End, last}};
  const int before = at;
  for (const auto& [key, goal] : goals) {
    if (ImGui::IsKeyPressed(key)) {
      at = std::clamp(goal, 0, last);
    }
  }
  return at != before;
}

} // namespace

void play_dialog(const App& app, Actions& actions, const PlayDialog& dialog) {
  if (dialog.knitting == nullptr) {
    hint(app.theme, said("There are too many rows to play: more than {}.", most_rows_at_the_bench));
    return close_button(app, actions);
  }
  const PlayedKnitting& played = *dialog.knitting;
  const int last = played.count();
  const PlayAt at{app, played, *dialog.moment, *ImGui::GetWindowDrawList()};
  const ScreenPoint room = room_for_dialog(app);
  const float line = ImGui::GetTextLineHeightWithSpacing();
  const float below = 2 * ImGui::GetFrameHeightWithSpacing() + ImGui::GetStyle().ItemSpacing.y;
  const float title = 2 * ImGui::GetTextLineHeightWithSpacing();
  const float rest = room.y - below - title;
  // Words and feeders, and the card beside them where there is one.
  const bool has_card = played.card != nullptr; // its room is kept before it is put in
  const float card_wide = has_card ? std::min(room.x * 0.3F, 26 * 9 * app.theme.scale) : 0;
  const float side_wide = std::min(room.x * 0.3F, 280 * app.theme.scale);
  const ImVec2 gap = ImGui::GetStyle().ItemSpacing;
  const float words_wide = room.x - card_wide - side_wide - 2 * gap.x;
  // With large text in a small window words have a line of their own, above the machine.
  const bool stacked = words_wide < 30 * ImGui::GetFontSize();
  const float words_high = stacked ? std::min(5.4F * line, rest * 0.5F) : std::min(7 * line, rest * 0.42F);
  const float above = stacked ? std::min(3 * line, rest * 0.22F) : words_high;
  told(at, stacked ? room.x : words_wide, words_high);
  if (!stacked) {
    ImGui::SameLine();
  }
  const float machine_wide = stacked ? room.x - (has_card ? card_wide + gap.x : 0) : side_wide;
  ImGui::BeginChild("machine", ImVec2(machine_wide, above), false, ImGuiWindowFlags_NoNav);
  scroll_by_arrows();
  feeders(PlayAt{app, played, *dialog.moment, *ImGui::GetWindowDrawList()});
  const std::string set_to = words_of(at.state().settings);
  wrapped(at.state().carriage == Side::left ? said("Carriage on the left: {}", set_to)
                                            : said("Carriage on the right: {}", set_to));
  wrapped(said("Row counter {}", at.state().counter));
  ImGui::EndChild();
  if (has_card) {
    ImGui::SameLine();
    ImGui::BeginChild("card", ImVec2(card_wide, above), false, ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoScrollbar);
    const std::string words = said("Card: {}", card_words(played, at.state()));
    wrapped(words);
    const ImVec2 free = ImGui::GetContentRegionAvail();
    card(PlayAt{app, played, *dialog.moment, *ImGui::GetWindowDrawList()}, free.x, std::max(10.0F, free.y));
    ImGui::EndChild();
  }
  bed(at, std::max(24 * app.theme.scale, rest - words_high - (stacked ? above + gap.y : 0)));
  int wanted = dialog.moment->moves;
  bool moved = keys(played, *dialog.moment, wanted);
  const std::string widest = said("{} of {} passes", played.passes(), played.passes());
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(said("{} of {} passes", dialog.moment->passes, played.passes()).c_str());
  ImGui::SameLine(ImGui::CalcTextSize(widest.c_str()).x + 3 * ImGui::GetStyle().ItemSpacing.x);
  ImGui::SetNextItemWidth(-1);
  moved = ImGui::SliderInt("##passes", &wanted, 0, last, "") || moved;
  remember_place(actions, "play slider", Stop::Kind::field);
  if (button(app.theme, actions, "play back", tr("← Back"), Look::plain, 0, wanted > 0)) {
    --wanted;
    moved = true;
  }
  ImGui::SameLine();
  if (button(app.theme, actions, "play forward", dialog.moment->knits ? tr("Make the pass →") : tr("Done →"),
             Look::main, 0, wanted < last)) {
    ++wanted;
    moved = true;
  }
  make_first_stop(actions);
  make_default(actions);
  ImGui::SameLine();
  cancel_button(app, actions, tr("Close"));
  const char* const by_keys = tr("Arrows: one thing. Page keys: ten passes. Home and End: the ends.");
  ImGui::SameLine();
  if (ImGui::CalcTextSize(by_keys).x <= ImGui::GetContentRegionAvail().x) {
    ImGui::AlignTextToFramePadding();
    hint(app.theme, by_keys);
  } else {
    ImGui::NewLine();
  }
  if (actions.publish_places) {
    actions.places.push_back({fmt::format("played {}", dialog.moment->passes), {}});
    actions.places.push_back({fmt::format("moves {}", dialog.moment->moves), {}});
  }
  if (moved) {
    actions.push(PlayTo{wanted});
  }
}

} // namespace punchwright::editor
