// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// The failures that a plan's house can have, in the order to try them: of each device in service, of the sensors that
/// its controls read, of those controls, of the stores and of the grower.
std::vector<FaultPoint> fault_catalogue(const PlanScenario& plan, const Assembly& assembly);

}  // namespace noonhouse
