// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <atomic>
#include <csignal>

namespace noonhouse {

/// While it lives, the first interrupt (Ctrl-C) only asks the program to end; a second one ends it at once. Then the
/// handling before it is back. One at a time.
class Interruptible {
 public:
  Interruptible();
  ~Interruptible();
  Interruptible(const Interruptible&) = delete;
  Interruptible& operator=(const Interruptible&) = delete;
  /// Whether an interrupt came since this was made.
  const std::atomic<bool>& asked() const;

 private:
  struct sigaction before_ {};
};

}  // namespace noonhouse
