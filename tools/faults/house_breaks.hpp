// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/faults/fault_branches.hpp"
#include "tools/faults/fault_sheet.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// What bad weather broke of a house, by one way of breaking.
struct Breakage {
  std::string of;  ///< "front roof"
  std::string by;  ///< "broken by hail"
  Tick when;
  double share = 1.0;  ///< of it, at the last that is told
};

/// What a run's log says is broken, in the order in which it began to.
std::vector<Breakage> breakages(const std::vector<LogEntry>& log);

/// Those of a run with a failure that the run without it has not, or has to a share smaller by 5 % and more of the
/// whole, or comes to more than a quarter of an hour later.
std::vector<Breakage> new_breakages(const std::vector<Breakage>& with, const std::vector<Breakage>& without);

/// How one breaks, next to how it does without the failure (null: not): "66 % of it broken by hail", "66 % of it in
/// place of 20 % broken by hail", "torn open by the wind, 30 min sooner".
std::string breakage_words(const Breakage& b, const Breakage* without);

/// A stretch of the run whose weather may break something of the house.
struct Danger {
  Tick from, until;
};

/// Each fall of hail, and on each day the hour with the strongest gusts if they reach what something in service bears.
std::vector<Danger> dangers(const PlanScenario& plan, const Assembly& assembly, const SiteTable& table);

/// What breaks by a failure that comes two hours or a little more before a danger (a reboot two minutes before it, what
/// drains a store at the run's start), each thing once, by the failure that comes latest before it; in order of time.
/// Does not see what breaks only by a failure at another moment. Safe on any thread.
std::vector<FaultBreak> house_breaks(const FaultBranches& branches, const FaultPoint& fault,
                                     const std::vector<Danger>& dangers);

}  // namespace noonhouse
