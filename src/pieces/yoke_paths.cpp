// Only names are changed; whether the files are there is not asked.
#include "pieces/yoke_paths.hpp"

#include "machine/profile.hpp"

namespace punchwright {
namespace {

namespace fs = std::filesystem;

template <class Change> Yoke with_paths(Yoke yoke, const Change& change) {
  for (YokeTier& tier : yoke.tiers) {
    tier.repeat = change(tier.repeat);
  }
  if (yoke.profile && built_in_profile(*yoke.profile) == nullptr) {
    yoke.profile = change(*yoke.profile);
  }
  return yoke;
}

} // namespace

Yoke with_whole_paths(Yoke yoke, const fs::path& file) {
  return with_paths(std::move(yoke), [&](const std::string& name) {
    const fs::path path(name);
    return (path.is_absolute() ? path : file.parent_path() / path).lexically_normal().string();
  });
}

Yoke as_written_in(Yoke yoke, const fs::path& folder) {
  return with_paths(std::move(yoke), [&](const std::string& name) {
    const fs::path relative = fs::path(name).lexically_relative(folder);
    return relative.empty() ? name : relative.string();
  });
}

} // namespace punchwright
