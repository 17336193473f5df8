// A file descriptor that closes itself, and calls that go on after an interruption or a short write.
// Errors stay as errno values here, and become sentences in file_error.
#pragma once

#include "design/result.hpp"

#include <cstddef>
#include <filesystem>
#include <string_view>
#include <sys/types.h>

namespace punchwright {

class Descriptor {
public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(other.number_) { other.number_ = -1; }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  Descriptor& operator=(Descriptor&&) = delete;
  ~Descriptor();

  [[nodiscard]] bool good() const { return number_ >= 0; }
  [[nodiscard]] int number() const { return number_; }
  void reset(int number) {
    (void)close();
    number_ = number;
  }
  // 0 or an errno value: some file systems report a full disk only now.
  [[nodiscard]] int close();

private:
  int number_;
};

// open(), begun again after an interruption.
[[nodiscard]] int open_again(const std::filesystem::path& path, int flags, mode_t mode = 0);
[[nodiscard]] ssize_t read_again(int descriptor, char* bytes, std::size_t count);
// Every byte, or the errno value of what hindered it. A limit on file sizes is an error like others, not a signal.
[[nodiscard]] int write_all(int descriptor, std::string_view bytes);
[[nodiscard]] int sync_again(int descriptor);

// "puffins.repeat: cannot be written: No space left on device; free some space, or save elsewhere".
[[nodiscard]] Error file_error(const std::filesystem::path& path, std::string_view what, int trouble);

} // namespace punchwright
