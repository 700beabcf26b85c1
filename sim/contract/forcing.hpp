// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>

#include "sim/core/tick.hpp"

namespace noonhouse {

/// What drives the house from outside: weather and sun. Between two breaks every channel is a straight
/// line in time, so that its slope, and with it the method's time derivative, is exact.
class Forcing {
 public:
  virtual ~Forcing() = default;
  /// The first break strictly after t. The engine ends its steps on breaks.
  virtual Tick next_break(Tick t) const = 0;
  /// Writes the values of this forcing's own channels at the beginning and the end of [from, to], which
  /// holds no break inside. `channels` are the values in force now; device positions are among them.
  /// Channels that belong to agents must be left alone.
  virtual void fill(Tick from, Tick to, std::span<const double> channels, std::span<double> at_from,
                    std::span<double> at_to) const = 0;
};

}  // namespace noonhouse
