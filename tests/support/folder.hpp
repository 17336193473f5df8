// A folder that goes with the test.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>

namespace punchwright::test {

struct Folder {
  std::filesystem::path path;
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "punchwright-test-XXXXXX").string();
    path = mkdtemp(name.data());
  }
  ~Folder() { std::filesystem::remove_all(path); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
};

} // namespace punchwright::test
