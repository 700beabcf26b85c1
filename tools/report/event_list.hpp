// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// One event as the page shows it.
struct ShownEvent {
  const RecordEvent* event = nullptr;
  std::string what;                ///< its words in the units shown
  std::vector<std::string> chain;  ///< what led to it, newest first: "day 4 14:20, pump: cut out"
};

struct ShownEvents {
  std::vector<ShownEvent> events;  ///< by time; at one instant in the order of the log
  std::size_t left_out = 0;        ///< of the log; the most telling kinds are kept
};

inline constexpr std::size_t kMostEvents = 400;

/// The events of a run that a page can carry: all, or, of more than kMostEvents, first those that are no
/// device action, then the earliest. A cause that is missing from the log, or that leads back to itself, ends
/// its chain.
ShownEvents shown_events(const RunRecord& record, UnitSystem units);

}  // namespace noonhouse
