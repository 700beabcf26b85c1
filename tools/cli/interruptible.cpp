// SPDX-License-Identifier: Apache-2.0
#include "tools/cli/interruptible.hpp"

namespace noonhouse {
namespace {

std::atomic<bool> interrupted{false};  // a signal handler reaches nothing but what is global
static_assert(std::atomic<bool>::is_always_lock_free, "only such an atomic may be set in a signal handler");

extern "C" void ask_to_end(int) { interrupted.store(true, std::memory_order_relaxed); }

}  // namespace

Interruptible::Interruptible() {
  interrupted = false;
  struct sigaction action {};
  action.sa_handler = ask_to_end;
  action.sa_flags = static_cast<int>(SA_RESETHAND);
  sigemptyset(&action.sa_mask);
  sigaction(SIGINT, &action, &before_);
}

Interruptible::~Interruptible() { sigaction(SIGINT, &before_, nullptr); }

const std::atomic<bool>& Interruptible::asked() const { return interrupted; }

}  // namespace noonhouse
