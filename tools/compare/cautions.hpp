// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/scenario.hpp"

namespace noonhouse {

/// The usual cautions that apply to what a plan has: short, deferring to local codes and licensed practice.
std::vector<std::string> cautions_for(const PlanScenario& plan);

}  // namespace noonhouse
