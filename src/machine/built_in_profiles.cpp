// The machines that every copy of the program knows, and where each of their values comes from.
// No maker is named; what no published source states says so, until the user measures or tries it out. Titles and
// sources are kept in English, as .machine files have them, and translated when they are shown.
#include "machine/profile.hpp"
#include "words/words.hpp"

#include <utility>

namespace punchwright {
namespace {

constexpr const char* memory = noted("from memory");
constexpr const char* common_practice = noted("common practice");
constexpr const char* divisors_source =
    noted("published: kcguild.org.uk, punch cards and pattern cards (repeats of 8, 12 and 24 stitches)");
constexpr const char* card_source = noted("published: alessandrina.com, 2015-09-03, on punch cards");
constexpr const char* offset_source =
    noted("published for one family: alessandrina.com, 2015-09-03; needlesofsteel.blogspot.com, May "
          "2007, gives 5 and 7, lacecarriage.com 6: count the rows on the machine");
constexpr const char* hole_source = noted("published: vikkihaffenden.com, on punch cards");
constexpr const char* float_source =
    noted("published: knittingmagic.biz, guide 8, stranding: never over more than 5 stitches");
constexpr const char* feed_hole_source = noted("published for one person's card: craftymummyjapan.blogspot.com, 2016");
constexpr const char* clip_source =
    noted("unknown: measure (8 corner holes, 2 a corner: hobbygaiety.com, on punch cards)");
constexpr const char* to_measure = noted("unknown: measure");
constexpr const char* by_swatch = noted("unknown: machines differ; knit the orientation swatch");

void add_bed(Profile& profile, int needles, double pitch_mm) {
  profile.needles = needles;
  profile.pitch_mm = pitch_mm;
  profile.longest_float = 5;
  profile.sources["bed.needles"] = needles == 112 ? noted("from memory: 110 to 114, depending on the make") : memory;
  profile.sources["bed.pitch_mm"] = pitch_mm == 6.5 ? noted("from memory; published: 6 to 7 mm, backtobackknits.com")
                                                    : noted("published: backtobackknits.com");
  profile.sources["knitting.longest_float"] = float_source;
}

CardGeometry geometry_of(int repeat, double stitch_pitch) {
  CardGeometry geometry; // 142 mm wide, rows 5.0 mm apart, holes 3.5 mm: from memory
  geometry.stitch_pitch = stitch_pitch;
  geometry.column_1 = (geometry.sheet_width - (repeat - 1) * stitch_pitch) / 2; // the columns stand in the middle
  return geometry;
}

void add_card(Profile& profile, int repeat, double stitch_pitch) {
  CardReader card;
  card.repeat = repeat;
  card.first_needle = left_needle(repeat / 2);
  card.geometry = geometry_of(repeat, stitch_pitch);
  profile.card = card;
  profile.selects = Selects::next_pass;
  profile.end_needles = true;
  profile.feeders = 2;
  auto& sources = profile.sources;
  sources["knitting.feeders"] = common_practice;
  sources["knitting.selects"] = common_practice;
  sources["knitting.end_needles"] = common_practice;
  sources["card.repeat"] = divisors_source;
  sources["card.first_needle"] = card_source;
  sources["card.face"] = by_swatch;
  sources["card.hole"] = hole_source;
  sources["card.turned"] = by_swatch;
  sources["card.reader_offset"] = offset_source;
  sources["card.blank_rows"] = card_source;
  sources["card.loop_rows"] = card_source;
  sources["card.geometry.sheet_width_mm"] = memory;
  sources["card.geometry.stitch_pitch_mm"] =
      repeat == 12 ? noted("from memory: 9 mm or 4.5 mm, depending on the make; measure") : memory;
  sources["card.geometry.row_pitch_mm"] = memory;
  sources["card.geometry.hole_diameter_mm"] = memory;
  sources["card.geometry.column_1_mm"] =
      noted("unknown: taken as if the columns stood in the middle of the sheet; measure");
  sources["card.geometry.first_row_mm"] = to_measure;
  sources["card.geometry.feed_diameter_mm"] = feed_hole_source;
  sources["card.geometry.feed_pitch_mm"] = to_measure;
  sources["card.geometry.feed_from_side_mm"] = to_measure;
  sources["card.geometry.clip_diameter_mm"] = to_measure;
  sources["card.geometry.clips_mm"] = clip_source;
}

Profile card_machine(std::string name, std::string title, int needles, double pitch_mm, int repeat,
                     double stitch_pitch) {
  Profile profile;
  profile.name = std::move(name);
  profile.title = std::move(title);
  add_bed(profile, needles, pitch_mm);
  add_card(profile, repeat, stitch_pitch);
  return profile;
}

Profile plastic_by_hand() {
  Profile profile;
  profile.name = "plastic-by-hand";
  profile.title = noted("plastic mid-gauge bed, 6.5 mm, 150 needles, by hand");
  add_bed(profile, 150, 6.5);
  profile.selects = Selects::by_hand;
  profile.end_needles = false;
  profile.feeders = 2;
  profile.sources["knitting.feeders"] = memory;
  profile.sources["knitting.selects"] = common_practice;
  profile.sources["knitting.end_needles"] = common_practice;
  return profile;
}

} // namespace

const std::vector<Profile>& built_in_profiles() {
  constexpr double usual_pitch = 4.5; // mm, of a 24-stitch card on every bed: from memory
  static const std::vector<Profile> profiles = {
      card_machine("fine-card-24", noted("fine bed, 3.6 mm, 250 needles, 24-stitch card"), 250, 3.6, 24, usual_pitch),
      card_machine("standard-card-24", noted("standard bed, 4.5 mm, 200 needles, 24-stitch card"), 200, 4.5, 24,
                   usual_pitch),
      card_machine("bulky-card-24", noted("bulky bed, 9 mm, 112 needles, 24-stitch card"), 112, 9.0, 24, usual_pitch),
      card_machine("bulky-card-12", noted("bulky bed, 9 mm, 112 needles, 12-stitch card"), 112, 9.0, 12, 9.0),
      plastic_by_hand()};
  return profiles;
}

} // namespace punchwright
