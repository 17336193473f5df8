// Extensions and numbers of output files, in one place for every export.
#include "sheets/output_names.hpp"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>

namespace punchwright {

std::string extension_in(const std::string& path) {
  std::string extension = std::filesystem::path(path).extension().string();
  std::ranges::transform(extension, extension.begin(), [](char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
  });
  return extension;
}

std::string numbered_path(const std::string& path, std::size_t number, std::size_t of) {
  if (of <= 1) {
    return path;
  }
  const std::size_t extension = std::filesystem::path(path).extension().string().size();
  std::string numbered = path;
  numbered.insert(path.size() - extension, fmt::format("-{:0{}}", number, fmt::formatted_size("{}", of)));
  return numbered;
}

} // namespace punchwright
