// Temporary names carry the process that made them; a process that is still there keeps its files.
// The name of the machine is part of it too: a shared folder holds files of processes that cannot be seen from here.
#include "files/leftovers.hpp"

#include <array>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <fmt/core.h>
#include <string>
#include <string_view>
#include <unistd.h>
#include <vector>

namespace punchwright {
namespace {

constexpr std::string_view ending = ".tmp";
constexpr std::size_t longest_name = 255; // bytes, on most file systems
constexpr std::size_t room_for_rest = 90; // of the name: machine, process, count

std::string machine_name() {
  std::array<char, 256> name{};
  if (::gethostname(name.data(), name.size() - 1) != 0) {
    return "machine";
  }
  std::string shown;
  for (const char letter : std::string_view(name.data()).substr(0, 40)) {
    const bool plain =
        (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9');
    shown += plain ? letter : '_';
  }
  return shown;
}

// All that comes before the process's number.
std::string beginning_of(const std::filesystem::path& target) {
  std::string name = target.filename().string();
  if (name.size() + room_for_rest > longest_name) {
    name.resize(longest_name - room_for_rest);
  }
  return fmt::format(".{}.punchwright-{}-", name, machine_name());
}

// The process in "…-4711-0.tmp", what follows `beginning`; 0 where the name is not of that form.
pid_t process_in(std::string_view rest) {
  int process = 0;
  const auto [stop, trouble] = std::from_chars(rest.data(), rest.data() + rest.size(), process);
  if (trouble != std::errc{} || process <= 0 || !rest.ends_with(ending)) {
    return 0;
  }
  std::string_view count(stop, rest.size() - static_cast<std::size_t>(stop - rest.data()));
  if (!count.starts_with('-') || count.size() < 2 + ending.size()) {
    return 0;
  }
  count.remove_prefix(1);
  count.remove_suffix(ending.size());
  return count.find_first_not_of("0123456789") == std::string_view::npos ? process : 0;
}

bool is_gone(pid_t process) {
  return ::kill(process, 0) != 0 && errno == ESRCH;
}

} // namespace

std::filesystem::path temporary_name(const std::filesystem::path& target, int count) {
  return target.parent_path() / fmt::format("{}{}-{}{}", beginning_of(target), ::getpid(), count, ending);
}

void clear_leftovers(const std::filesystem::path& target) {
  const std::string beginning = beginning_of(target);
  const std::filesystem::path folder = target.has_parent_path() ? target.parent_path() : std::filesystem::path(".");
  std::error_code trouble;
  std::vector<std::filesystem::path> leftovers;
  for (std::filesystem::directory_iterator entry(folder, trouble), end; !trouble && entry != end;
       entry.increment(trouble)) {
    const std::string name = entry->path().filename().string();
    if (!name.starts_with(beginning)) {
      continue;
    }
    const pid_t process = process_in(std::string_view(name).substr(beginning.size()));
    if (process > 0 && is_gone(process)) {
      leftovers.push_back(entry->path());
    }
  }
  for (const std::filesystem::path& leftover : leftovers) {
    ::unlink(leftover.c_str());
  }
}

} // namespace punchwright
