// SPDX-License-Identifier: Apache-2.0
#include "tools/record/atomic_file.hpp"

#include <fcntl.h>
#include <fmt/core.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <system_error>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

namespace fs = std::filesystem;

fs::path folder_of(const fs::path& path) { return path.has_parent_path() ? path.parent_path() : fs::path("."); }

std::string why(int error_number, const fs::path& path) {
  const std::string folder = folder_of(path).string();
  switch (error_number) {
    case ENOENT:
      return fmt::format("the folder '{}' does not exist; create it or choose another place", folder);
    case ENOTDIR:
      return fmt::format("'{}' is not a folder; choose another place", folder);
    case EACCES:
    case EPERM:
      return fmt::format("no permission to write in the folder '{}'; choose a folder that is yours", folder);
    case EROFS:
      return fmt::format("the folder '{}' is on a read-only file system; choose another place", folder);
    default:
      return fmt::format("{}; choose another place", std::generic_category().message(error_number));
  }
}

[[noreturn]] void fail(int error_number, const fs::path& path, std::size_t size) {
  if (error_number == ENOSPC || error_number == EDQUOT || error_number == EFBIG) {
    throw UserError(ErrorKind::disk_full,
                    fmt::format("{}: no room left to write it: it needs {} bytes ({}); nothing was left behind; free "
                                "some room or choose another place",
                                path.string(), size, std::generic_category().message(error_number)));
  }
  throw UserError(ErrorKind::results_not_writable,
                  fmt::format("{}: cannot be written: {}", path.string(), why(error_number, path)));
}

void refuse_special_target(const fs::path& path) {
  struct stat about {};
  if (path.filename().empty() || (::stat(path.c_str(), &about) == 0 && !S_ISREG(about.st_mode))) {
    throw UserError(ErrorKind::results_not_writable,
                    fmt::format("{}: cannot be written: it names a folder or a device, not an ordinary file; give a "
                                "file name",
                                path.string()));
  }
}

/// A file under its temporary name; unless it takes its final name it is removed.
class PartFile {
 public:
  PartFile(const fs::path& path, std::size_t size) : path_(path), part_(path.string() + ".part"), size_(size) {
    // Not truncated on opening: until the lock is held it may be another process's work.
    descriptor_ = ::open(part_.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC, 0666);
    if (descriptor_ < 0) fail(errno, path_, size_);
    if (!lock()) {
      ::close(descriptor_);
      throw UserError(ErrorKind::results_not_writable,
                      fmt::format("{}: cannot be written: another process is writing it at this moment; wait for it or "
                                  "choose another name",
                                  path_.string()));
    }
    if (::ftruncate(descriptor_, 0) != 0) give_up();
  }
  PartFile(const PartFile&) = delete;
  PartFile& operator=(const PartFile&) = delete;
  ~PartFile() {
    if (descriptor_ >= 0) remove();
  }

  void write(std::span<const std::byte> bytes) {
    while (!bytes.empty()) {
      const ssize_t written = ::write(descriptor_, bytes.data(), bytes.size());
      if (written < 0 && errno == EINTR) continue;
      if (written < 0) give_up();
      bytes = bytes.subspan(static_cast<std::size_t>(written));
    }
    if (::fsync(descriptor_) != 0) give_up();
  }

  /// Gives the file its final name; the lock is held until then.
  void keep() {
    if (::rename(part_.c_str(), path_.c_str()) != 0) give_up();
    const int closed = ::close(descriptor_);
    descriptor_ = -1;
    if (closed != 0 && errno != EINTR) fail(errno, path_, size_);
  }

 private:
  /// True when this process owns the .part file; file systems without locks count as owned.
  bool lock() const {
    if (::flock(descriptor_, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK) return false;
    struct stat ours {};
    struct stat named {};
    // Between opening and locking another process may have given this very file its final name.
    return ::fstat(descriptor_, &ours) == 0 && ::stat(part_.c_str(), &named) == 0 && ours.st_ino == named.st_ino;
  }

  void remove() {
    ::unlink(part_.c_str());
    ::close(descriptor_);
    descriptor_ = -1;
  }

  [[noreturn]] void give_up() {
    const int error_number = errno;
    remove();
    fail(error_number, path_, size_);
  }

  fs::path path_, part_;
  std::size_t size_;
  int descriptor_ = -1;
};

/// Makes the new name itself survive a power cut; file systems that cannot are left as they are.
void sync_folder(const fs::path& folder) {
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return;
  ::fsync(descriptor);
  ::close(descriptor);
}

}  // namespace

void write_file_whole(const fs::path& path, std::span<const std::byte> bytes) {
  refuse_special_target(path);
  PartFile file(path, bytes.size());
  file.write(bytes);
  file.keep();
  sync_folder(folder_of(path));
}

}  // namespace noonhouse
