// SPDX-License-Identifier: Apache-2.0
#include "models/power/battery.hpp"

#include "models/power/battery_kind.hpp"

namespace noonhouse {

BatteryBus battery_bus(const BatteryKind& kind, double capacity_j, double controller_efficiency) {
  BatteryBus out;
  out.capacity_j = capacity_j;
  out.charge_efficiency = kind.charge_efficiency.value;
  out.discharge_efficiency = kind.discharge_efficiency.value;
  out.controller_efficiency = controller_efficiency;
  out.peukert_exponent = kind.peukert_exponent.value;
  out.rated_s = 3600.0 * kind.rated_hours.value;
  out.cold = kind.cold();
  out.least_charge_k = kind.least_charge_k.value;
  out.self_discharge_per_s = kind.self_discharge_per_s();
  out.self_discharge_doubles_k = kind.self_discharge_doubles_k.value;
  return out;
}

}  // namespace noonhouse
