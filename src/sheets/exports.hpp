// What can be taken away from a design, as bytes with file names; nothing is written here.
// The extension of the wished name chooses the writer.
#pragma once

#include "design/document.hpp"
#include "design/result.hpp"
#include "machine/profile.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright {

struct OutputFile {
  std::string path; // the wished path; of several files each with its number before the extension
  std::string bytes;
};

// The card template: .pdf, .svg (one file a card), .png (one file a page), .txt (punch list).
// A profile without a card is an error that names the needle chart instead. `only_card`, from 1: one of several cards;
// the punch list has all of them in any case.
[[nodiscard]] Result<std::vector<OutputFile>> card_files(const Document& document, const Profile& profile,
                                                         const std::string& path, std::optional<int> only_card = {});

struct ChartWishes {
  bool stay_back_where_fewer = false; // list the needles that stay back in rows where they are fewer
};
// The needle chart: .pdf, .html, .csv, .txt.
[[nodiscard]] Result<std::vector<OutputFile>> needle_files(const Document& document, const Profile& profile,
                                                           const std::string& path, const ChartWishes& wishes);

// The numbered steps at the machine, with a box to tick off each: .pdf, .html, .txt.
[[nodiscard]] Result<std::vector<OutputFile>> step_files(const Document& document, const Profile& profile,
                                                         const std::string& path);

// The cloth as it will look, over the whole piece: .png.
[[nodiscard]] Result<std::vector<OutputFile>> fabric_files(const Document& document, const Profile& profile,
                                                           const std::string& path, Face side);

// A leaflet to hand to somebody who owns another machine: the cloth, yarns, chart, steps by card and by hand, needle
// lists, cautions: .pdf. A roll is printed on A4.
[[nodiscard]] Result<std::vector<OutputFile>> leaflet_files(const Document& document, const Profile& profile,
                                                            const std::string& path, Paper paper);
// The drawing as a chart in one picture, with grid, numbers and legend, for a pattern leaflet: .png, .svg.
[[nodiscard]] Result<std::vector<OutputFile>> pattern_files(const Document& document, const std::string& path);

// 'Measure your blank', a page with what to measure and where to write it: .pdf, .svg, .png.
[[nodiscard]] Result<std::vector<OutputFile>> measure_files(const Profile& profile, Paper paper,
                                                            const std::string& path);

// The orientation swatch: an asymmetric motif that fits the profile's repeat, as a document of its own.
[[nodiscard]] Document swatch_document(const Profile& profile);
// Its card with the question on the first page: .pdf, .png.
[[nodiscard]] Result<std::vector<OutputFile>> swatch_files(const Profile& profile, Paper paper,
                                                           const std::string& path);

// How the knitted swatch looks on the knit side, compared with the picture on the question page.
struct SwatchAnswer {
  bool mirrored = false;    // left and right changed
  bool upside_down = false; // top and bottom changed
  bool inverted = false;    // main where contrast should be
};
// The answer that picture `number` (1 to 8) on the question page stands for: 1 is as it should be; one less than the
// number, in binary: 1 mirrored, 2 upside down, 4 inverted.
[[nodiscard]] constexpr SwatchAnswer swatch_answer(int number) {
  const int bits = number - 1;
  return {(bits & 1) != 0, (bits & 2) != 0, (bits & 4) != 0};
}
// The profile under which the same swatch would come out right.
[[nodiscard]] Profile profile_after_swatch(const Profile& profile, const SwatchAnswer& answer);

} // namespace punchwright
