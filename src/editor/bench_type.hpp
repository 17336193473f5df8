// How large type has to be, to be read from across a room: from the angle at which the eye sees a capital letter.
// ISO 9241-303 (electronic visual displays, character height, from memory of its text): at least 16 minutes of arc,
// 20 to 22 recommended.
#pragma once

namespace punchwright::editor {

inline constexpr double least_arc_minutes = 16;
inline constexpr double good_arc_minutes = 20;
inline constexpr double most_arc_minutes = 34; // larger letters only cost lines

// mm: what is seen under that angle from that distance.
[[nodiscard]] double height_seen_mm(double distance_m, double arc_minutes);
// m: from how far a height is seen under that angle.
[[nodiscard]] double distance_seen_m(double height_mm, double arc_minutes);

// mm of a pixel, by the screen's width as it tells it, or as the user measured it (0: she hasn't). A screen that tells
// nothing, or nonsense, has the usual 96 pixels to the inch, more where its contents are scaled.
[[nodiscard]] double pixel_mm(int screen_px, int screen_mm, int measured_mm, double content_scale);

// Sizes of type in px, between which the bench chooses by the room that the words have.
struct BenchType {
  float least = 0; // 16 minutes
  float good = 0;  // 20 minutes
  float most = 0;
};
// `capital`: height of a capital letter as a part of the type's size.
[[nodiscard]] BenchType bench_type(double distance_m, double px_mm, double capital);

} // namespace punchwright::editor
