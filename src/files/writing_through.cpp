// Writing into a file that has several names: replacing it would cut them apart. Bytes change in place, so a kill could
// leave a half; therefore the whole new content lies beside it until the disk has confirmed it here.
#include "files/writing.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <fcntl.h>
#include <unistd.h>

namespace punchwright {
namespace {

constexpr std::size_t longest_name = 255; // bytes, on most file systems

class WritingThrough final : public Writing {
public:
  WritingThrough(std::filesystem::path named, std::filesystem::path target, const struct stat& old)
      : named_(std::move(named)), target_(std::move(target)), whole_(whole_name(target_)), old_(old), file_(-1) {}
  ~WritingThrough() override {
    if (placed_ && write(before_) != 0) {
      return; // the whole content stays beside it
    }
    remove_whole();
  }
  WritingThrough(const WritingThrough&) = delete;
  WritingThrough& operator=(const WritingThrough&) = delete;
  WritingThrough(WritingThrough&&) = delete;
  WritingThrough& operator=(WritingThrough&&) = delete;

  Failure stage(std::string_view bytes) override {
    file_.reset(open_again(target_, O_RDWR | O_CLOEXEC));
    if (!file_.good()) {
      return file_error(named_, tr("cannot be written"), errno);
    }
    if (Failure failure = read_before()) {
      return failure;
    }
    bytes_ = bytes;
    return put_beside();
  }

  Failure put(bool /*with_others*/) override {
    const int trouble = write(bytes_);
    if (trouble == 0) {
      placed_ = true;
      return std::nullopt;
    }
    if (write(before_) == 0) {
      return file_error(named_, tr("cannot be written"), trouble);
    }
    beside_ = false; // it must stay: there is nothing else
    return file_error(named_, said("was damaged; the new content is whole in {}", whole_.string()), trouble);
  }

  Failure settle() override {
    placed_ = false;
    const int trouble = file_.close();
    if (trouble != 0) {
      beside_ = false;
      return file_error(named_,
                        said("was written, but the disk did not confirm it; it is whole in {} too", whole_.string()),
                        trouble);
    }
    remove_whole();
    return std::nullopt;
  }

private:
  Failure read_before() {
    std::array<char, 65536> block{};
    for (ssize_t count = 1; count > 0;) {
      count = read_again(file_.number(), block.data(), block.size());
      if (count < 0) {
        return file_error(named_, tr("cannot be read before it is written"), errno);
      }
      before_.append(block.data(), static_cast<std::size_t>(count));
    }
    return std::nullopt;
  }

  // With the same rights, and on the disk before the file itself is touched.
  Failure put_beside() {
    const auto writing = replacement(named_, whole_, std::nullopt, 0600);
    Failure failure = writing->stage(bytes_);
    if (!failure) {
      failure = writing->put(false);
      beside_ = !failure;
    }
    if (!failure) {
      failure = writing->settle();
      if (failure) { // said of the file beside it; the file itself is as it was
        failure->message = tr("cannot be written") + failure->message.substr(failure->message.find(": "));
      }
    }
    if (!failure) {
      (void)(::chown(whole_.c_str(), old_.st_uid, old_.st_gid) == 0 &&
             ::chmod(whole_.c_str(), old_.st_mode & 0777U) == 0);
    }
    return failure;
  }

  // Not cut off first, so that the old content's place on the disk is there to put it back.
  [[nodiscard]] int write(std::string_view content) const {
    if (::lseek(file_.number(), 0, SEEK_SET) < 0) {
      return errno;
    }
    int trouble = write_all(file_.number(), content);
    if (trouble == 0 && ::ftruncate(file_.number(), static_cast<off_t>(content.size())) != 0) {
      trouble = errno;
    }
    return trouble != 0 ? trouble : sync_again(file_.number());
  }

  void remove_whole() {
    if (beside_) {
      ::unlink(whole_.c_str());
      beside_ = false;
    }
  }

  std::filesystem::path named_;
  std::filesystem::path target_;
  std::filesystem::path whole_;
  struct stat old_;
  Descriptor file_;
  std::string_view bytes_;
  std::string before_;
  bool beside_ = false;
  bool placed_ = false;
};

} // namespace

std::filesystem::path whole_name(const std::filesystem::path& target) {
  constexpr std::string_view ending = ".punchwright-whole";
  std::string name = target.filename().string();
  name.resize(std::min(name.size(), longest_name - ending.size()));
  return target.parent_path() / name.append(ending);
}

std::unique_ptr<Writing> writing_through(std::filesystem::path named, std::filesystem::path target,
                                         const struct stat& old) {
  return std::make_unique<WritingThrough>(std::move(named), std::move(target), old);
}

} // namespace punchwright
