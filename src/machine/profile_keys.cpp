// The list of profile keys.
// Values are worded as they stand on the screen and in the card's margin.
#include "machine/profile_keys.hpp"

#include <fmt/core.h>

namespace punchwright {
namespace {

using Shown = std::optional<std::string>;

ProfileKey of_card(std::string_view key, std::string_view words, std::function<std::string(const CardReader&)> shown) {
  return {key, words, [shown = std::move(shown)](const Profile& profile) {
            return profile.card ? Shown(shown(*profile.card)) : std::nullopt;
          }};
}

// As exactly as it is known: "4.56 mm", "0.1795 in".
std::string exact_length(double mm, LengthUnit lengths) {
  return fmt::format("{:.6g} {}", small_length(mm, lengths), small_unit(lengths));
}

ProfileKey length(std::string_view key, std::string_view words, double CardGeometry::*member, LengthUnit lengths) {
  return of_card(key, words,
                 [member, lengths](const CardReader& card) { return exact_length(card.geometry.*member, lengths); });
}

std::string clips_text(const std::vector<ClipHole>& clips, LengthUnit lengths) {
  std::string text;
  for (const ClipHole& clip : clips) {
    text += fmt::format("{}{:.6g} by {}", text.empty() ? "" : ", ", small_length(clip.from_side, lengths),
                        exact_length(clip.from_end, lengths));
  }
  return text.empty() ? "none" : text;
}

std::string_view selects_text(Selects selects) {
  switch (selects) {
  case Selects::next_pass: return "for the next pass";
  case Selects::same_pass: return "in the pass that knits";
  case Selects::by_hand: break;
  }
  return "by hand";
}

void add_machine(std::vector<ProfileKey>& keys, LengthUnit lengths) {
  keys.push_back(
      {"bed.needles", "needles", [](const Profile& profile) { return Shown(std::to_string(profile.needles)); }});
  keys.push_back({"bed.pitch_mm", "needle pitch",
                  [lengths](const Profile& profile) { return Shown(exact_length(profile.pitch_mm, lengths)); }});
  keys.push_back(
      {"knitting.feeders", "feeders", [](const Profile& profile) { return Shown(std::to_string(profile.feeders)); }});
  keys.push_back({"knitting.selects", "needles are selected",
                  [](const Profile& profile) { return Shown(selects_text(profile.selects)); }});
  keys.push_back({"knitting.end_needles", "end needles knit contrast",
                  [](const Profile& profile) { return Shown(profile.end_needles ? "in pattern rows" : "never"); }});
  keys.push_back({"knitting.longest_float", "longest float",
                  [](const Profile& profile) { return Shown(fmt::format("{} stitches", profile.longest_float)); }});
}

void add_card(std::vector<ProfileKey>& keys) {
  keys.push_back(of_card("card.repeat", "card's repeat",
                         [](const CardReader& card) { return fmt::format("{} stitches", card.repeat); }));
  keys.push_back(of_card("card.first_needle", "needle of card column 1",
                         [](const CardReader& card) { return name_of(card.first_needle); }));
  keys.push_back(of_card("card.face", "card's face shows", [](const CardReader& card) {
    return card.face == CardFace::as_knitter_sees ? "the purl side" : "the knit side";
  }));
  keys.push_back(of_card("card.hole", "a hole means", [](const CardReader& card) {
    return card.hole == HoleMeans::contrast ? "contrast" : "main";
  }));
  keys.push_back(of_card("card.turned", "card fed by its other end",
                         [](const CardReader& card) { return card.turned ? "yes" : "no"; }));
  keys.push_back(of_card("card.reader_offset", "reader below the visible line by",
                         [](const CardReader& card) { return fmt::format("{} rows", card.reader_offset); }));
  keys.push_back(of_card("card.blank_rows", "rows on a blank",
                         [](const CardReader& card) { return std::to_string(card.blank_rows); }));
  keys.push_back(of_card("card.loop_rows", "rows for a joined loop",
                         [](const CardReader& card) { return std::to_string(card.loop_rows); }));
}

void add_geometry(std::vector<ProfileKey>& keys, LengthUnit lengths) {
  const auto add = [&](std::string_view key, std::string_view words, double CardGeometry::*member) {
    keys.push_back(length(key, words, member, lengths));
  };
  add("card.geometry.sheet_width_mm", "sheet width", &CardGeometry::sheet_width);
  add("card.geometry.stitch_pitch_mm", "stitch pitch of the card", &CardGeometry::stitch_pitch);
  add("card.geometry.row_pitch_mm", "row pitch of the card", &CardGeometry::row_pitch);
  add("card.geometry.hole_diameter_mm", "hole diameter", &CardGeometry::hole_diameter);
  add("card.geometry.column_1_mm", "side edge to the nearest column", &CardGeometry::column_1);
  add("card.geometry.first_row_mm", "end of the sheet to the first punched row", &CardGeometry::first_row);
  add("card.geometry.feed_diameter_mm", "feed hole diameter", &CardGeometry::feed_diameter);
  add("card.geometry.feed_pitch_mm", "feed hole pitch", &CardGeometry::feed_pitch);
  add("card.geometry.feed_from_side_mm", "feed holes from the side", &CardGeometry::feed_from_side);
  add("card.geometry.clip_diameter_mm", "clip hole diameter", &CardGeometry::clip_diameter);
  keys.push_back(of_card("card.geometry.clips_mm", "clip holes from side and end",
                         [lengths](const CardReader& card) { return clips_text(card.geometry.clips, lengths); }));
}

} // namespace

std::vector<ProfileKey> profile_keys(LengthUnit lengths) {
  std::vector<ProfileKey> keys;
  add_machine(keys, lengths);
  add_card(keys);
  add_geometry(keys, lengths);
  return keys;
}

} // namespace punchwright
