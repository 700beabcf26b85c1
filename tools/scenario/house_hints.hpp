// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/scenario.hpp"

namespace noonhouse {

/// What is sound but probably not meant in a plan, a sentence each: a device in service that nothing calls, a control
/// in service that drives nothing in service, a visit that opens what rests, plants that nobody waters, no opening in
/// service.
std::vector<std::string> house_hints(const PlanScenario& plan);

/// The part of them that can spoil an answer unseen, for those who compare without checking: devices that nothing
/// calls, controls that drive nothing, plants nobody waters, a clock that does not fit the longitude, fans too strong
/// for their watts.
std::vector<std::string> plan_slips(const PlanScenario& plan);

}  // namespace noonhouse
