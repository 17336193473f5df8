// The demo designs as they are shipped, and each of them on machines of every family.
#pragma once

#include "files/files.hpp"
#include "machine/open_document.hpp"

#include <algorithm>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

namespace punchwright::test {

inline std::vector<std::filesystem::path> demo_paths() {
  std::vector<std::filesystem::path> paths;
  for (const auto& entry : std::filesystem::directory_iterator(PUNCHWRIGHT_SOURCE_DIR "/patterns")) {
    if (entry.path().extension() == ".repeat") {
      paths.push_back(entry.path());
    }
  }
  std::ranges::sort(paths);
  return paths;
}

inline OpenedDocument open_demo(const std::filesystem::path& path) {
  constexpr std::size_t largest = 1 << 20;
  const auto read = [](const std::filesystem::path& file) { return read_file(file, largest); };
  const auto text = read(path);
  auto opened = text ? open_document(*text, path.string(), read) : Result<OpenedDocument>(text.error());
  if (!opened) {
    throw std::runtime_error(opened.error().text());
  }
  return std::move(opened).value();
}

struct Family {
  std::string name;
  Selects selects = Selects::next_pass;
  int feeders = 2;
};

inline const std::vector<Family>& families() {
  static const std::vector<Family> all = {
      {"selects for the next pass", Selects::next_pass, 2}, {"selects in the same pass", Selects::same_pass, 2},
      {"by hand, two feeders", Selects::by_hand, 2},        {"by hand, one yarn a pass", Selects::by_hand, 1},
      {"next pass, one feeder", Selects::next_pass, 1},     {"same pass, one feeder", Selects::same_pass, 1}};
  return all;
}

// The demo on a machine of that family, as wide as its own; false: a card machine where the repeat fits no card.
inline bool put_on(OpenedDocument& demo, const Family& family) {
  Profile& profile = demo.profile;
  profile.selects = family.selects;
  profile.feeders = family.feeders;
  if (family.selects == Selects::by_hand) {
    profile.card.reset();
    profile.end_needles = false;
    return true;
  }
  if (!profile.card) {
    profile.card = CardReader{};
    demo.document.piece.first_column.reset();
  }
  profile.end_needles = family.selects == Selects::next_pass;
  return profile.card->repeat % demo.document.grid.width() == 0;
}

} // namespace punchwright::test
