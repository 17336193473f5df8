// Writes .machine files: every value, then where each comes from, with the comments that were there.
// The order is that of the form's description, so that two machines can be compared line by line.
#include "design/toml_strings.hpp"
#include "design/toml_writer.hpp"
#include "machine/profile_file.hpp"
#include "machine/profile_keys.hpp"

namespace punchwright {
namespace {

template <class Meaning, std::size_t count>
std::string quoted_word(Meaning meaning, const std::array<std::pair<std::string_view, Meaning>, count>& words) {
  for (const auto& [word, meant] : words) {
    if (meant == meaning) {
      return toml_quoted(word);
    }
  }
  return toml_quoted(words.front().first);
}

std::string flag(bool value) {
  return value ? "true" : "false";
}

void write_card(TomlWriter& writer, const CardReader& card) {
  writer.table("[card]", "card", true);
  writer.key("repeat", std::to_string(card.repeat));
  writer.key("first_needle", toml_quoted(name_of(card.first_needle)));
  writer.key("face", quoted_word(card.face, face_words));
  writer.key("hole", quoted_word(card.hole, hole_words));
  writer.key("turned", flag(card.turned));
  writer.key("reader_offset", std::to_string(card.reader_offset));
  writer.key("blank_rows", std::to_string(card.blank_rows));
  writer.key("loop_rows", std::to_string(card.loop_rows));
  writer.end_table();
}

void write_geometry(TomlWriter& writer, const CardGeometry& geometry) {
  writer.table("[card.geometry]", "card.geometry", true);
  writer.key("sheet_width_mm", toml_number(geometry.sheet_width));
  writer.key("stitch_pitch_mm", toml_number(geometry.stitch_pitch));
  writer.key("row_pitch_mm", toml_number(geometry.row_pitch));
  writer.key("hole_diameter_mm", toml_number(geometry.hole_diameter));
  writer.key("column_1_mm", toml_number(geometry.column_1));
  writer.key("first_row_mm", toml_number(geometry.first_row));
  writer.key("feed_diameter_mm", toml_number(geometry.feed_diameter));
  writer.key("feed_pitch_mm", toml_number(geometry.feed_pitch));
  writer.key("feed_from_side_mm", toml_number(geometry.feed_from_side));
  writer.key("clip_diameter_mm", toml_number(geometry.clip_diameter));
  std::string clips;
  for (const ClipHole& clip : geometry.clips) {
    clips += clips.empty() ? "[" : ", [";
    clips += toml_number(clip.from_side) + ", " + toml_number(clip.from_end) + ']';
  }
  writer.key("clips_mm", '[' + clips + ']');
  writer.end_table("card.");
}

} // namespace

std::string write_machine(const Profile& profile) {
  TomlWriter writer(profile.extras);
  writer.key("format", "1");
  writer.key("name", toml_quoted(profile.name));
  writer.key("title", toml_quoted(profile.title));
  writer.end_table();

  writer.table("[bed]", "bed", true);
  writer.key("needles", std::to_string(profile.needles));
  writer.key("pitch_mm", toml_number(profile.pitch_mm));
  writer.end_table("bed.");

  writer.table("[knitting]", "knitting", true);
  writer.key("feeders", std::to_string(profile.feeders));
  writer.key("selects", quoted_word(profile.selects, selects_words));
  writer.key("end_needles", flag(profile.end_needles));
  writer.key("longest_float", std::to_string(profile.longest_float));
  writer.end_table("knitting.");

  if (profile.card) {
    write_card(writer, *profile.card);
    write_geometry(writer, profile.card->geometry);
  }
  if (!profile.sources.empty()) {
    writer.table("[sources]", "sources", true);
    for (const ProfileKey& key : profile_keys()) {
      if (const auto source = profile.sources.find(std::string(key.key)); source != profile.sources.end()) {
        writer.line("sources." + source->first, toml_quoted(source->first) + " = " + toml_quoted(source->second));
      }
    }
    writer.end_table("sources.");
  }
  return writer.finish();
}

} // namespace punchwright
