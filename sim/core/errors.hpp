// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdio>
#include <cstdlib>
#include <stdexcept>
#include <string>
#include <string_view>

namespace noonhouse {

/// The kinds of mistake a person can make or meet. The value is the process's exit status.
enum class ErrorKind {
  usage = 2,
  file_missing = 10,
  file_too_large = 11,
  file_empty = 12,
  file_syntax = 13,
  anchor_cycle = 14,
  unknown_key = 15,
  missing_key = 16,
  wrong_unit = 17,
  out_of_range = 18,
  duplicate_key = 19,
  wrong_type = 20,
  unknown_name = 21,
  outside_house = 22,
  does_not_fit = 23,
  unsound_house = 24,
  weather_format = 30,
  weather_too_short = 31,
  results_not_writable = 40,
  disk_full = 41,
  results_unreadable = 42,
  chatter = 50,
  step_collapse = 51,
  interrupted = 130,
};

/// A person's mistake or a failure of the machine around us: carries one clear message that says
/// where, what was read, what is allowed, and a suggestion. Programming errors use NOON_ASSERT.
class UserError : public std::runtime_error {
 public:
  UserError(ErrorKind kind, const std::string& message) : std::runtime_error(message), kind_(kind) {}
  ErrorKind kind() const { return kind_; }
  int exit_status() const { return static_cast<int>(kind_); }

 private:
  ErrorKind kind_;
};

[[noreturn]] inline void assertion_failed(const char* what, const char* file, int line) {
  std::fprintf(stderr, "noonhouse: broken invariant at %s:%d: %s (a programming error; please report it)\n", file, line,
               what);
  std::abort();
}

}  // namespace noonhouse

/// A broken invariant is a programming error: says so and aborts, in every build type.
#define NOON_ASSERT(condition)                                                       \
  do {                                                                               \
    if (!(condition)) ::noonhouse::assertion_failed(#condition, __FILE__, __LINE__); \
  } while (false)
