// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// Gives the house the state it would have if the run's first day had come `length` long before: runs the plan with
/// that day repeated, devices and people included, and takes over every temperature, the air's humidity and the
/// instruments' readings. Water in tank, pots and films and the battery's charge stay as the scenario gives them. A run
/// shorter than a day is left as it is. Deep soil takes weeks and is only begun; nothing else is left out.
void warm_up(Assembly& assembly, Tick length);

}  // namespace noonhouse
