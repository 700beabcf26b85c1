// SPDX-License-Identifier: Apache-2.0
#include "tools/cli/progress_bar.hpp"

#include <unistd.h>

#include <algorithm>
#include <cstdio>

namespace noonhouse {
namespace {
constexpr int kCells = 30;
}

ProgressBar::ProgressBar(std::string label) : label_(std::move(label)), terminal_(isatty(STDERR_FILENO) == 1) {}

ProgressBar::~ProgressBar() {
  if (terminal_ && shown_ >= 0) std::fputs("\r\033[K", stderr);
}

void ProgressBar::show(double share) {
  const int percent = std::clamp(static_cast<int>(share * 100.0), 0, 100);
  if (!terminal_ || percent == shown_) return;
  shown_ = percent;
  const int full = kCells * percent / 100;
  const std::string cells =
      std::string(static_cast<std::size_t>(full), '=') + std::string(static_cast<std::size_t>(kCells - full), '.');
  std::fprintf(stderr, "\r%s [%s] %3d %%", label_.c_str(), cells.c_str(), percent);
}

}  // namespace noonhouse
