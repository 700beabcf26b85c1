// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cassert>
#include <cstddef>

namespace noonhouse {

/// A count or an index as the standard containers take it; never negative.
constexpr std::size_t at(int i) {
  assert(i >= 0);
  return static_cast<std::size_t>(i);
}

/// A size as a count.
constexpr int count_of(std::size_t size) { return static_cast<int>(size); }

}  // namespace noonhouse
