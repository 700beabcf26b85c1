// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/power/cold_capacity.hpp"
#include "sim/contract/ids.hpp"

namespace noonhouse {

/// How a battery's charge is told as a share, wherever one is asked for or shown: levels at which loads are shed and
/// cut off, rules on charge, the lowest charge of a run, its course. 0 is where nothing can be drawn at the battery's
/// temperature, 1 is full with the cells that work (UsableCharge): both ends move with cold and with cells.
struct ChargeScale {
  double capacity_j = 0.0;  ///< at 25 degC, with all cells
  ColdCapacity cold{};
  Input temperature{};  ///< of the battery [K]; may be none: always warm
  ChannelId cells{};    ///< share that works; may be none: all

  bool knows_temperature() const { return temperature.node.valid() || temperature.channel.valid(); }
  /// What can be used now; `value` gives the present value of an Input.
  template <class Value>
  UsableCharge<double> usable(const Value& value) const {
    constexpr double kWarmK = 313.15;
    return usable_charge(capacity_j, cold, knows_temperature() ? value(temperature) : kWarmK,
                         cells.valid() ? value(Input(cells)) : 1.0);
  }
};

}  // namespace noonhouse
