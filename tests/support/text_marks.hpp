// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <string>

#include "sim/core/errors.hpp"

namespace noonhouse {

/// How often a piece stands in a text.
inline std::size_t count_of(const std::string& text, const std::string& piece) {
  std::size_t count = 0;
  for (std::size_t at = text.find(piece); at != std::string::npos; at = text.find(piece, at + 1)) ++count;
  return count;
}

/// Whether an error's message holds a part.
inline bool says(const UserError& error, const std::string& part) { return count_of(error.what(), part) > 0; }

}  // namespace noonhouse
