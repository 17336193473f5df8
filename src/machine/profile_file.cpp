// Reads and writes .machine files. A key that is not known is refused: a mistyped one would punch a wrong card.
// Values that belong together are compared, so that no hole overlaps another or lies off the sheet.
#include "machine/profile_file.hpp"

#include "design/lengths.hpp"
#include "design/toml_extras.hpp"
#include "design/toml_statements.hpp"
#include "design/toml_values.hpp"
#include "machine/hole_conflicts.hpp"
#include "machine/profile_keys.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <filesystem>

namespace punchwright {
namespace {

constexpr int most_needles = 1000;

class MachineReader {
public:
  MachineReader(const toml::table& file, TomlErrors& errors) : file_(file), errors_(errors) {}

  Profile run(const std::string& stem) {
    refuse_unknown();
    const TomlTable root(file_, "", "", errors_);
    if (root.require("format", "1")) {
      (void)root.whole("format", 1, 1);
    }
    profile_.name = root.text("name").value_or(stem);
    read_bed(table(root, "bed"));
    if (const toml::table* const card = root.inner("card")) {
      read_card(TomlTable(*card, "card.", "", errors_));
    }
    read_knitting(table(root, "knitting"));
    profile_.title = root.text("title").value_or(usual_title());
    read_sources(root);
    add_sources_of_defaults();
    return std::move(profile_);
  }

private:
  const toml::table& file_;
  TomlErrors& errors_;
  const toml::table empty_;
  Profile profile_;

  [[nodiscard]] TomlTable table(const TomlTable& outer, const std::string& name) const {
    const toml::table* const found = outer.inner(name);
    return {found != nullptr ? *found : empty_, name + ".", "", errors_};
  }

  void refuse_unknown() const;
  void refuse_unknown_in(const toml::table& table, const std::string& before,
                         const std::vector<std::string_view>& keys) const;

  void read_bed(const TomlTable& bed) {
    const TomlTable root(file_, "", "", errors_);
    if (!root.require("bed", tr("a table [bed] with 'needles' and 'pitch_mm'"))) {
      return;
    }
    const std::string even = said("an even number from 2 to {}, half on each side of the middle", most_needles);
    if (bed.require("needles", even)) {
      profile_.needles = bed.whole("needles", 2, most_needles).value_or(2);
      if (profile_.needles % 2 != 0) {
        bed.refuse("needles", even);
      }
    }
    if (bed.require("pitch_mm", tr("a number from 1 to 30"))) {
      profile_.pitch_mm = bed.number("pitch_mm", 1, 30).value_or(profile_.pitch_mm);
    }
  }

  // Without a word in the file: a machine with a card selects for the next pass, one without is used by hand.
  void read_knitting(const TomlTable& knitting) {
    profile_.feeders = knitting.whole("feeders", 1, 2).value_or(2);
    profile_.selects =
        knitting.word("selects", selects_words).value_or(profile_.card ? Selects::next_pass : Selects::by_hand);
    if (profile_.card && profile_.selects == Selects::by_hand) {
      knitting.refuse("selects", tr("\"next-pass\" or \"same-pass\" on a machine with a [card]"));
    }
    if (!profile_.card && profile_.selects != Selects::by_hand) {
      knitting.refuse("selects", tr("\"by-hand\" on a machine without a [card]"));
    }
    profile_.end_needles = knitting.flag("end_needles").value_or(profile_.selects == Selects::next_pass);
    profile_.longest_float = knitting.whole("longest_float", 1, 200).value_or(profile_.longest_float);
  }

  void read_card(const TomlTable& table_of_card) {
    CardReader card;
    card.repeat = table_of_card.whole("repeat", 1, 200).value_or(card.repeat);
    card.first_needle = table_of_card.needle("first_needle").value_or(centred_first_needle(card.repeat));
    if (card.first_needle < profile_.leftmost() || card.first_needle > profile_.rightmost()) {
      complain(table_of_card, "first_needle",
               table_of_card.has("first_needle")
                   ? said("'card.first_needle' is \"{}\", which is not on the bed", name_of(card.first_needle))
                   : said("'card.first_needle' is \"{}\" where it is left out, which is not on the bed",
                          name_of(card.first_needle)),
               said("a needle from \"{}\" to \"{}\"", name_of(profile_.leftmost()), name_of(profile_.rightmost())));
    }
    card.face = table_of_card.word("face", face_words).value_or(card.face);
    card.hole = table_of_card.word("hole", hole_words).value_or(card.hole);
    card.turned = table_of_card.flag("turned").value_or(card.turned);
    card.reader_offset = table_of_card.whole("reader_offset", 0, 30).value_or(card.reader_offset);
    card.blank_rows = table_of_card.whole("blank_rows", 1, most_card_rows).value_or(card.blank_rows);
    card.loop_rows = table_of_card.whole("loop_rows", 1, most_card_rows).value_or(card.loop_rows);
    const toml::table* const geometry = table_of_card.inner("geometry");
    read_geometry(TomlTable(geometry != nullptr ? *geometry : empty_, "card.geometry.", "", errors_), card);
    profile_.card = card;
  }

  void read_geometry(const TomlTable& table_of_lengths, CardReader& card) {
    CardGeometry& geometry = card.geometry;
    const auto length = [&](std::string_view key, double CardGeometry::*member, double least, double most) {
      geometry.*member = table_of_lengths.number(key, least, most).value_or(geometry.*member);
    };
    length("sheet_width_mm", &CardGeometry::sheet_width, 20, 400);
    length("stitch_pitch_mm", &CardGeometry::stitch_pitch, 1, 20);
    length("row_pitch_mm", &CardGeometry::row_pitch, 1, 20);
    length("hole_diameter_mm", &CardGeometry::hole_diameter, 0.5, 15);
    geometry.column_1 = (geometry.sheet_width - (card.repeat - 1) * geometry.stitch_pitch) / 2;
    length("column_1_mm", &CardGeometry::column_1, 0.25, 400);
    length("first_row_mm", &CardGeometry::first_row, 0.25, 200);
    length("feed_diameter_mm", &CardGeometry::feed_diameter, 0.5, 15);
    length("feed_pitch_mm", &CardGeometry::feed_pitch, 1, 50);
    length("feed_from_side_mm", &CardGeometry::feed_from_side, 0.25, 200);
    length("clip_diameter_mm", &CardGeometry::clip_diameter, 0.5, 15);
    read_clips(table_of_lengths, geometry);
    check_geometry(table_of_lengths, card);
  }

  void read_clips(const TomlTable& table_of_lengths, CardGeometry& geometry) const {
    if (!table_of_lengths.has("clips_mm")) {
      return;
    }
    const std::string allowed =
        tr("at most 8 pairs of distances from the side and from the end, 0.25 to 200 mm: [[6.0, 5.0]]");
    const toml::array* const clips = table_of_lengths.node("clips_mm")->as_array();
    if (clips == nullptr || clips->size() > 8) {
      table_of_lengths.refuse("clips_mm", allowed);
      return;
    }
    geometry.clips.clear();
    const auto distance = [](const toml::array& pair, std::size_t index) {
      const double value = pair[index].is_number() ? pair[index].value<double>().value_or(0) : 0;
      return value >= 0.25 && value <= 200 ? std::optional(value) : std::nullopt;
    };
    for (const toml::node& entry : *clips) {
      const toml::array* const pair = entry.as_array();
      const bool two = pair != nullptr && pair->size() == 2;
      const auto from_side = two ? distance(*pair, 0) : std::nullopt;
      const auto from_end = two ? distance(*pair, 1) : std::nullopt;
      if (!from_side || !from_end) {
        errors_.add(spot_of(entry), said("{} holds {}", table_of_lengths.name_of("clips_mm"), found_text(entry)),
                    said("allowed: {}", allowed));
        return;
      }
      geometry.clips.push_back({*from_side, *from_end});
    }
  }

  // Holes that would run into one another or off the sheet.
  void check_geometry(const TomlTable& table_of_lengths, const CardReader& card) const {
    const CardGeometry& geometry = card.geometry;
    const double narrower = card.repeat > 1 ? std::min(geometry.stitch_pitch, geometry.row_pitch) : geometry.row_pitch;
    if (geometry.hole_diameter >= narrower) {
      complain(table_of_lengths, "hole_diameter_mm",
               said("holes of {} mm, {} mm apart, run into one another", plain_number(geometry.hole_diameter),
                    plain_number(narrower)),
               tr("holes smaller than both pitches"));
    }
    const double reach = geometry.column_1 + (card.repeat - 1) * geometry.stitch_pitch + geometry.hole_diameter / 2;
    if (reach > geometry.sheet_width || geometry.column_1 < geometry.hole_diameter / 2) {
      complain(table_of_lengths, table_of_lengths.has("column_1_mm") ? "column_1_mm" : "sheet_width_mm",
               said("{} columns reach from {} to {} mm on a sheet {} mm wide", card.repeat,
                    plain_number(geometry.column_1 - geometry.hole_diameter / 2), plain_number(reach),
                    plain_number(geometry.sheet_width)),
               tr("columns on the sheet"));
    }
    if (geometry.feed_diameter >= geometry.feed_pitch) {
      complain(table_of_lengths, "feed_diameter_mm",
               said("feed holes of {} mm, {} mm apart, run into one another", plain_number(geometry.feed_diameter),
                    plain_number(geometry.feed_pitch)),
               tr("feed holes smaller than their pitch"));
    }
    const auto off_sheet = [&](double from_edge, double diameter) {
      return from_edge < diameter / 2 || from_edge > geometry.sheet_width - diameter / 2;
    };
    if (off_sheet(geometry.feed_from_side, geometry.feed_diameter)) {
      complain(table_of_lengths, "feed_from_side_mm", tr("the feed holes run off the sheet"),
               tr("holes that lie on the sheet"));
    }
    for (const ClipHole& clip : geometry.clips) {
      if (off_sheet(clip.from_side, geometry.clip_diameter) || clip.from_end < geometry.clip_diameter / 2) {
        complain(table_of_lengths, "clips_mm", tr("a clip hole runs off the sheet"), tr("holes that lie on the sheet"));
      }
    }
    if (geometry.first_row < geometry.hole_diameter / 2) {
      complain(table_of_lengths, "first_row_mm", tr("the lowest row runs off the sheet"),
               tr("holes that lie on the sheet"));
    }
    if (const auto conflict = hole_conflict(geometry, card.repeat)) {
      complain(table_of_lengths, conflict->key, said("'card.geometry.{}': {}", conflict->key, conflict->what),
               tr("places beside the pattern's holes"));
    }
  }

  void complain(const TomlTable& where, std::string_view key, std::string message, const std::string& allowed) const {
    errors_.add(where.value_spot(key), std::move(message), said("allowed: {}", allowed));
  }

  void read_sources(const TomlTable& root) {
    const toml::table* const sources = root.inner("sources");
    if (sources == nullptr) {
      return;
    }
    const std::vector<ProfileKey> known = profile_keys();
    const TomlTable table_of_sources(*sources, "sources.", "", errors_);
    for (const auto& [key, node] : *sources) {
      const std::string name(key.str());
      if (std::ranges::find(known, name, &ProfileKey::key) == known.end()) {
        errors_.add(table_of_sources.key_spot(name), said("\"{}\" under 'sources' is no key of this form", name),
                    tr("allowed: a key in quotation marks with its table's name, such as \"bed.needles\""));
        return;
      }
      profile_.sources[name] = table_of_sources.text(name).value_or("");
    }
  }

  // A value that the file leaves out is as unsure as in the built-in machine whose default it is.
  void add_sources_of_defaults() {
    const Profile* const usual = built_in_profile(profile_.card ? "bulky-card-24" : "plastic-by-hand");
    for (const ProfileKey& key : profile_keys()) {
      const std::string name(key.key);
      if (file_.at_path(name) || profile_.sources.contains(name) || !key.shown(profile_)) {
        continue;
      }
      const bool same = usual != nullptr && key.shown(*usual) == key.shown(profile_);
      const auto source = same ? usual->sources.find(name) : profile_.sources.end();
      profile_.sources[name] =
          same && source != usual->sources.end() ? source->second : noted("from memory: taken as is usual");
    }
  }

  [[nodiscard]] std::string usual_title() const {
    const std::string pitch = plain_number(profile_.pitch_mm);
    return profile_.card ? said("{} mm bed, {} needles, {}-stitch card", pitch, profile_.needles, profile_.card->repeat)
                         : said("{} mm bed, {} needles, by hand", pitch, profile_.needles);
  }
};

void MachineReader::refuse_unknown_in(const toml::table& table, const std::string& before,
                                      const std::vector<std::string_view>& keys) const {
  // The first in the file, not in the alphabet.
  const toml::key* first = nullptr;
  for (const auto& [key, node] : table) {
    const auto begin = key.source().begin;
    if (std::ranges::find(keys, key.str()) == keys.end() && (first == nullptr || begin < first->source().begin)) {
      first = &key;
    }
  }
  if (first != nullptr) {
    const auto begin = first->source().begin;
    errors_.add({static_cast<int>(begin.line), static_cast<int>(begin.column)},
                said("unknown key '{}{}'", before, first->str()),
                said("allowed: {}", one_of({keys.begin(), keys.end()})));
  }
}

// The keys of a table of this form, "" for those before the first table.
std::vector<TomlTableForm> machine_tables() {
  return {{"", {"format", "name", "title"}},
          {"bed", {"needles", "pitch_mm"}},
          {"knitting", {"feeders", "selects", "end_needles", "longest_float"}},
          {"card", {"repeat", "first_needle", "face", "hole", "turned", "reader_offset", "blank_rows", "loop_rows"}},
          {"card.geometry",
           {"sheet_width_mm", "stitch_pitch_mm", "row_pitch_mm", "hole_diameter_mm", "column_1_mm", "first_row_mm",
            "feed_diameter_mm", "feed_pitch_mm", "feed_from_side_mm", "clip_diameter_mm", "clips_mm"}},
          {"sources", {}, false, true}};
}

void MachineReader::refuse_unknown() const {
  for (const TomlTableForm& form : machine_tables()) {
    if (form.any_key) {
      continue;
    }
    std::vector<std::string_view> keys = form.keys;
    if (form.name.empty()) {
      keys.insert(keys.end(), {"bed", "knitting", "card", "sources"});
    } else if (form.name == "card") {
      keys.emplace_back("geometry");
    }
    const toml::table* const table = form.name.empty() ? &file_ : file_.at_path(form.name).as_table();
    if (table != nullptr) {
      refuse_unknown_in(*table, form.name.empty() ? "" : std::string(form.name) + '.', keys);
    }
  }
}

} // namespace

Result<Profile> read_machine(std::string_view text, const std::string& file_name) {
  const Result<TomlRead> toml = read_toml(text, file_name);
  if (!toml) {
    return toml.error();
  }
  TomlErrors errors(file_name);
  refuse_other_form(toml->table, FileForm::machine, errors);
  Profile profile = MachineReader(toml->table, errors).run(std::filesystem::path(file_name).stem().string());
  if (errors.first()) {
    return *errors.first();
  }
  TomlForm form;
  form.tables = machine_tables();
  form.element_place = [](std::string_view table, std::size_t) { return std::string(table); };
  profile.extras = find_extras(*toml->text, toml->statements, form).extras;
  return profile;
}

} // namespace punchwright
