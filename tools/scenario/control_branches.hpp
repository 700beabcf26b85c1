// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "tools/scenario/plan_words.hpp"

/// The branches of a house's tree that are no places: what decides, what water comes through, who does what by hand.
namespace noonhouse {

Branch controls_branch(const ScenarioSpec& spec, const PlanWords& words);
Branch water_branch(const ScenarioSpec& spec, const PlanWords& words);
Branch grower_branch(const ScenarioSpec& spec, const PlanWords& words);

}  // namespace noonhouse
