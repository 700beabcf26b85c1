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

}  // namespace noonhouse
