// Every value of a machine profile by its key in a .machine file, with its words for people.
// One list, so that the file form, the sources and the screen name the same things.
#pragma once

#include "design/lengths.hpp"
#include "machine/profile.hpp"

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace punchwright {

constexpr std::array<std::pair<std::string_view, Selects>, 3> selects_words{
    {{"next-pass", Selects::next_pass}, {"same-pass", Selects::same_pass}, {"by-hand", Selects::by_hand}}};

constexpr std::array<std::pair<std::string_view, CardFace>, 2> face_words{
    {{"purl", CardFace::as_knitter_sees}, {"knit", CardFace::as_knit_side}}};

constexpr std::array<std::pair<std::string_view, HoleMeans>, 2> hole_words{
    {{"contrast", HoleMeans::contrast}, {"main", HoleMeans::main}}};

// The most that a joined loop or a blank may have.
constexpr int most_card_rows = 2000;

struct ProfileKey {
  std::string_view key;   // "card.geometry.sheet_width_mm"
  std::string_view words; // "sheet width", in English: a literal, translated where it is shown
  // The value for people, "142 mm"; nothing where the profile has no card.
  std::function<std::optional<std::string>(const Profile&)> shown;
};

// In the order of the file form.
[[nodiscard]] std::vector<ProfileKey> profile_keys(LengthUnit lengths = LengthUnit::centimetres);

} // namespace punchwright
