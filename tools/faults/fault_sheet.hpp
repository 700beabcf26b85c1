// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// A group that a failure costs, beyond what the plan loses without it.
struct FaultCost {
  std::string plants, state;  ///< "harmed" or "lost"
  std::string reason;
  double time_s = 0.0;  ///< since the run's start
};

/// Something of the house that weather breaks after a failure and leaves whole without it, or breaks less or later.
struct FaultBreak {
  std::string of, words;  ///< "front roof", "66 % of it broken by hail"
  double time_s = 0.0,
         failed_s = kNotHappened;  ///< when it begins to break, and when that failure came; since the start
  bool anyway = false;             ///< breaks without the failure too, less of it or later
};

/// What one addition does to the time that is left after a failure.
struct FaultAddition {
  std::string name;
  double grace_s = kNotHappened;  ///< no harm for as long as it was followed
  double followed_s = 86400.0;    ///< from the failure on, to the end of the run at the latest
};

/// One failure, tried through the run.
struct FaultOutcome {
  std::string of, words;  ///< "mist line", "is stuck off"
  /// From the failure to the first harm, by the hour of the day told at which it fails; kNotHappened where none
  /// comes within the horizon [s].
  std::array<double, 24> grace_by_hour_s{};
  bool harms = false;
  double worst_s = kNotHappened;         ///< when it is worst to fail, since the run's start
  double worst_grace_s = kNotHappened;   ///< what is left then
  std::vector<FaultCost> costs;          ///< of a failure at that moment, in the day after its first harm
  std::vector<FaultBreak> breaks;        ///< of the house, in order of time
  std::vector<std::string> chain;        ///< of the first harm, newest first
  std::vector<FaultAddition> additions;  ///< in the order of what they gain
};

/// All failures of a plan, the least time left first.
struct FaultSheet {
  std::string scenario, plan, start;
  double hottest_day_s = 0.0;    ///< midnight of the hottest day outdoors, since the run's start
  double told_day_s = 0.0;       ///< midnight of the day whose hours are told: that one unless another is asked for
  bool house_in_danger = false;  ///< hail or gusts come that may break something of the house
  double horizon_s = 86400.0;    ///< how far a failure is followed for harm
  int runs = 0;                  ///< branches that were run
  std::vector<std::string> lost_anyway;  ///< groups harmed or lost without any failure
  std::vector<FaultOutcome> faults;
};

}  // namespace noonhouse
