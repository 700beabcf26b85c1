// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

namespace noonhouse {

/// A one-line bar on standard error; shows nothing where that is not a terminal. Leaves no trace when it ends.
class ProgressBar {
 public:
  explicit ProgressBar(std::string label);
  ~ProgressBar();
  ProgressBar(const ProgressBar&) = delete;
  ProgressBar& operator=(const ProgressBar&) = delete;
  void show(double share);

 private:
  std::string label_;
  bool terminal_;
  int shown_ = -1;
};

}  // namespace noonhouse
