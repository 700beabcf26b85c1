// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace noonhouse {

/// A figure with the place it comes from. The unit stands in the name of the field that holds it; `source` is the
/// published table or equation, and says "from memory" or "common practice, no source" where that is so.
struct SourcedValue {
  double value;
  const char* source;
};

}  // namespace noonhouse
