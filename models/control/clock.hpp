// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>

#include "sim/core/tick.hpp"

namespace noonhouse {

/// A daily window [from, until) in ticks since midnight; runs start at midnight. The whole day when both
/// ends meet modulo a day; over midnight when until comes before from.
struct DailyWindow {
  Tick from{0};
  Tick until = kDay;

  bool whole_day() const { return (until - from).ms % kDay.ms == 0; }
  bool holds(Tick now) const {
    if (whole_day()) return true;
    const Tick clock{now.ms % kDay.ms};
    return from < until ? clock >= from && clock < until : clock >= from || clock < until;
  }
  /// The next instant strictly after now at which the window opens or shuts; kNever for the whole day.
  Tick next_edge(Tick now) const {
    if (whole_day()) return kNever;
    const auto after = [&](Tick edge) {
      const Tick today{now.ms - now.ms % kDay.ms + edge.ms % kDay.ms};
      return today > now ? today : today + kDay;
    };
    return std::min(after(from), after(until));
  }
};

}  // namespace noonhouse
