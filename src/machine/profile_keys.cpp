// The list of profile keys.
// Values are worded as they stand on the screen and in the card's margin.
#include "machine/profile_keys.hpp"

#include "words/words.hpp"

namespace punchwright {
namespace {

using Shown = std::optional<std::string>;

ProfileKey of_card(std::string_view key, const char* words, std::function<std::string(const CardReader&)> shown) {
  return {key, words, [shown = std::move(shown)](const Profile& profile) {
            return profile.card ? Shown(shown(*profile.card)) : std::nullopt;
          }};
}

// As exactly as it is known: "4.56 mm", "0.1795 in".
std::string exact_length(double mm, LengthUnit lengths) {
  const std::string length = plain_number(small_length(mm, lengths));
  return lengths == LengthUnit::inches ? said("{} in", length) : said("{} mm", length);
}

ProfileKey length(std::string_view key, const char* words, double CardGeometry::*member, LengthUnit lengths) {
  return of_card(key, words,
                 [member, lengths](const CardReader& card) { return exact_length(card.geometry.*member, lengths); });
}

std::string clips_text(const std::vector<ClipHole>& clips, LengthUnit lengths) {
  std::string text;
  for (const ClipHole& clip : clips) {
    text += text.empty() ? "" : ", ";
    text += said("{} by {}", plain_number(small_length(clip.from_side, lengths)), exact_length(clip.from_end, lengths));
  }
  return text.empty() ? tr("none") : text;
}

std::string_view selects_text(Selects selects) {
  switch (selects) {
  case Selects::next_pass: return tr("for the next pass");
  case Selects::same_pass: return tr("in the pass that knits");
  case Selects::by_hand: break;
  }
  return tr("by hand");
}

void add_machine(std::vector<ProfileKey>& keys, LengthUnit lengths) {
  keys.push_back(
      {"bed.needles", noted("needles"), [](const Profile& profile) { return Shown(std::to_string(profile.needles)); }});
  keys.push_back({"bed.pitch_mm", noted("needle pitch"),
                  [lengths](const Profile& profile) { return Shown(exact_length(profile.pitch_mm, lengths)); }});
  keys.push_back({"knitting.feeders", noted("feeders"),
                  [](const Profile& profile) { return Shown(std::to_string(profile.feeders)); }});
  keys.push_back({"knitting.selects", noted("needles are selected"),
                  [](const Profile& profile) { return Shown(selects_text(profile.selects)); }});
  keys.push_back({"knitting.end_needles", noted("end needles knit contrast"), [](const Profile& profile) {
                    return Shown(profile.end_needles ? tr("in pattern rows") : tr("never"));
                  }});
  keys.push_back({"knitting.longest_float", noted("longest float"),
                  [](const Profile& profile) { return Shown(said("{} stitches", profile.longest_float)); }});
}

void add_card(std::vector<ProfileKey>& keys) {
  keys.push_back(of_card("card.repeat", noted("card's repeat"),
                         [](const CardReader& card) { return said("{} stitches", card.repeat); }));
  keys.push_back(of_card("card.first_needle", noted("needle of card column 1"),
                         [](const CardReader& card) { return name_of(card.first_needle); }));
  keys.push_back(of_card("card.face", noted("card's face shows"), [](const CardReader& card) {
    return card.face == CardFace::as_knitter_sees ? tr("the purl side") : tr("the knit side");
  }));
  keys.push_back(of_card("card.hole", noted("a hole means"), [](const CardReader& card) {
    return card.hole == HoleMeans::contrast ? tr("contrast") : tr("main");
  }));
  keys.push_back(of_card("card.turned", noted("card fed by its other end"),
                         [](const CardReader& card) { return card.turned ? tr("yes") : tr("no"); }));
  keys.push_back(of_card("card.reader_offset", noted("reader below the visible line by"),
                         [](const CardReader& card) { return said("{} rows", card.reader_offset); }));
  keys.push_back(of_card("card.blank_rows", noted("rows on a blank"),
                         [](const CardReader& card) { return std::to_string(card.blank_rows); }));
  keys.push_back(of_card("card.loop_rows", noted("rows for a joined loop"),
                         [](const CardReader& card) { return std::to_string(card.loop_rows); }));
}

void add_geometry(std::vector<ProfileKey>& keys, LengthUnit lengths) {
  const auto add = [&](std::string_view key, const char* words, double CardGeometry::*member) {
    keys.push_back(length(key, words, member, lengths));
  };
  add("card.geometry.sheet_width_mm", noted("sheet width"), &CardGeometry::sheet_width);
  add("card.geometry.stitch_pitch_mm", noted("stitch pitch of the card"), &CardGeometry::stitch_pitch);
  add("card.geometry.row_pitch_mm", noted("row pitch of the card"), &CardGeometry::row_pitch);
  add("card.geometry.hole_diameter_mm", noted("hole diameter"), &CardGeometry::hole_diameter);
  add("card.geometry.column_1_mm", noted("side edge to the nearest column"), &CardGeometry::column_1);
  add("card.geometry.first_row_mm", noted("end of the sheet to the first punched row"), &CardGeometry::first_row);
  add("card.geometry.feed_diameter_mm", noted("feed hole diameter"), &CardGeometry::feed_diameter);
  add("card.geometry.feed_pitch_mm", noted("feed hole pitch"), &CardGeometry::feed_pitch);
  add("card.geometry.feed_from_side_mm", noted("feed holes from the side"), &CardGeometry::feed_from_side);
  add("card.geometry.clip_diameter_mm", noted("clip hole diameter"), &CardGeometry::clip_diameter);
  keys.push_back(of_card("card.geometry.clips_mm", noted("clip holes from side and end"),
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
