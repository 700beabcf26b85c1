// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/faults/fault_sheet.hpp"

namespace noonhouse {

// What additions gain, what breaks, what to do about it: in the words that the terminal and the page share.

/// Whether an addition leaves at least two minutes more after a failure.
bool leaves_more(const FaultOutcome& fault, const FaultAddition& addition);
/// The addition that leaves most time after a failure; null where none leaves at least two minutes more.
const FaultAddition* longest_addition(const FaultOutcome& fault);
/// That with what is left then, "a second thermostat: 3 h 20 min", or for how long no harm was seen; "none" where none
/// leaves more time, "-" where none was tried.
std::string best_addition_text(const FaultOutcome& fault);

/// What each addition that was tried does after a failure: "a heat alarm: 1 h 24 min more; a float alarm: nothing";
/// that none of them leaves more time; empty where none was tried.
std::string additions_text(const FaultOutcome& fault);
/// The additions that were tried after any failure, in the order of their names in the sheet: "a, b and c".
std::string tried_additions(const FaultSheet& sheet);

/// What one addition gains over all failures that do harm.
struct AdditionGain {
  std::string name;
  int lengthened = 0;     ///< failures after which it leaves more time
  double gained_s = 0.0;  ///< over all, each failure counted no further than the horizon
};
/// The additions by what they gain, most first; those that leave more time after no failure, or less time over all, are
/// left out.
std::vector<AdditionGain> addition_gains(const FaultSheet& sheet);

/// Failures that break something of the house, by name.
std::vector<std::string> breaking_faults(const FaultSheet& sheet);
/// Whether all that a failure breaks breaks without it too, less of it or later.
bool only_worsens(const FaultOutcome& fault);
/// What a failure breaks of the house, in order of time: "breaks the front roof on day 5 at 16:10 (66 % of it broken by
/// hail), when it fails on day 5 at 14:00"; empty where it breaks nothing.
std::string breaks_text(const FaultSheet& sheet, const FaultOutcome& fault);
/// What to do next, in plain words: the single addition that helps after most failures, what none helps against, what
/// to look after for the house; empty where nothing calls for anything.
std::string next_step_text(const FaultSheet& sheet);
}  // namespace noonhouse
