// Saves its second argument into the file of its first, and ends: what strace looks at, call by call.
// With SHORT_WRITES in the environment write(2) takes a few bytes at most, and is interrupted every third time.
#include "files/files.hpp"

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <string>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <unistd.h>

// Takes the C library's place for the code that is tested.
extern "C" ssize_t write(int descriptor, const void* bytes, size_t count) {
  static const bool short_writes = std::getenv("SHORT_WRITES") != nullptr;
  static unsigned calls = 0;
  if (short_writes && ++calls % 3 == 0) {
    errno = EINTR;
    return -1;
  }
  return ::syscall(SYS_write, descriptor, bytes, short_writes ? std::min<size_t>(count, 7) : count);
}

int main(int count, char** arguments) {
  if (count < 3) {
    return 3;
  }
  std::vector<punchwright::NewContent> files;
  for (int place = 1; place + 1 < count; place += 2) {
    files.push_back({arguments[place], arguments[place + 1]});
  }
  (void)::access("/the saving begins", F_OK); // a mark in the list of calls
  const punchwright::Failure failure = punchwright::write_files(files);
  (void)::access("/the saving ends", F_OK);
  std::string answer = (failure ? failure->text() : "saved") + '\n';
  const iovec words{answer.data(), answer.size()};
  (void)!::writev(STDOUT_FILENO, &words,
                  1); // by another call than a saving, so that it can be heard when write(2) fails
  return failure ? 2 : 0;
}
