// SPDX-License-Identifier: Apache-2.0
#include "tools/cli/surroundings.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <string_view>
#include <thread>

namespace noonhouse {

int terminal_width() {
  winsize size{};
  if (isatty(STDOUT_FILENO) == 1 && ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) return size.ws_col;
  return 100;
}

bool utf8_terminal() {
  for (const char* name : {"LC_ALL", "LC_CTYPE", "LANG"}) {
    const char* value = std::getenv(name);
    if (value == nullptr || *value == '\0') continue;
    const std::string_view text(value);
    return text.find("UTF-8") != text.npos || text.find("utf8") != text.npos || text.find("utf-8") != text.npos;
  }
  return false;
}

int threads_or_all(int asked) {
  return asked > 0 ? asked : std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
}

}  // namespace noonhouse
