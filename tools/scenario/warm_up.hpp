// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// Brings a house into the state it would have if its first day had come again and again: temperatures, humidities and
/// readings; stored waters and charges stay as given. The first day's weather is run day by day for `length`, devices
/// included. After each whole day the ground is put where it will come to rest: its daily mean is set to the steady
/// course between the floor's mean of that day, outdoors beside the walls and the deep ground, to which the lag of the
/// year's wave (UndisturbedGround) is added, and the rest of the day's wave is kept. So no year of running in is
/// needed. Runs shorter than a day start as assembled. Does not know the weather before the run: a first day unlike its
/// season leaves its mark on the deeper ground.
void warm_up(Assembly& assembly, const ScenarioSpec& spec, Tick length);

}  // namespace noonhouse
