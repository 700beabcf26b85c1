// SPDX-License-Identifier: Apache-2.0
#include "tools/report/whole_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

[[noreturn]] void fail(const std::string& path, int error) {
  if (error == ENOSPC || error == EDQUOT || error == EFBIG) {
    throw UserError(ErrorKind::disk_full, fmt::format("{}: no room to write the report ({}); free some room or name "
                                                      "another place",
                                                      path, std::strerror(error)));
  }
  throw UserError(ErrorKind::results_not_writable,
                  fmt::format("{}: the report cannot be written ({}); does its folder exist, and may you write there?",
                              path, std::strerror(error)));
}

/// The error number of what went wrong, 0 when all bytes are on the disk.
int write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file, bytes.data(), bytes.size());
    if (written < 0) {
      if (errno == EINTR) continue;
      return errno;
    }
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  // A place that cannot be flushed (a pipe, a device) is written all the same.
  if (::fsync(file) != 0 && errno != EINVAL && errno != EROFS) return errno;
  return 0;
}

}  // namespace

void write_whole_file(const std::string& path, std::string_view bytes) {
  const std::string part = path + ".part";
  const int file = ::open(part.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
  if (file < 0) fail(path, errno);
  int error = write_all(file, bytes);
  if (::close(file) != 0 && error == 0) error = errno;
  if (error == 0 && std::rename(part.c_str(), path.c_str()) != 0) error = errno;
  if (error != 0) {
    ::unlink(part.c_str());
    fail(path, error);
  }
}

}  // namespace noonhouse
