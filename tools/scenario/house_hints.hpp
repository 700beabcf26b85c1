// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/scenario.hpp"

namespace noonhouse {

/// What is sound but probably not meant in a plan, a sentence each: a device in service that nothing calls, a control
/// in service that drives nothing in service or has its limits or hours the wrong way round, a visit that opens what
/// rests, plants that nobody waters, marks of tank and battery that are never reached, no opening in service.
std::vector<std::string> house_hints(const PlanScenario& plan);

/// The part of them that can spoil an answer unseen, for those who compare without checking: devices that nothing
/// calls, controls that drive nothing, plants nobody waters, a clock that does not fit the longitude, fans too strong
/// for their watts, and what the next two say.
std::vector<std::string> plan_slips(const PlanScenario& plan);

/// Controls in service that call for cooling against cold, and hours that end where they begin.
std::vector<std::string> control_hints(const PlanScenario& plan);
/// Loads that would be shed below the cut-off, refills called below what is drawn, two gutters on one slope and none
/// on the other.
std::vector<std::string> supply_hints(const PlanScenario& plan);

}  // namespace noonhouse
