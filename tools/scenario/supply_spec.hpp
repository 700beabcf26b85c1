// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "tools/scenario/control_spec.hpp"
#include "tools/scenario/field_options.hpp"

/// Water, power and what they cost. SI inside; defaults stand in the field lists.
namespace noonhouse {

/// A line of drippers from the tank into pots.
struct DripSpec {
  std::vector<std::string> waters;
  double flow_m3_s = 0.0, pump_power_w = 0.0;
  SwitchingSpec switching;
  DrawSpec draw;
};

/// What drains one slope of the roof into the tank.
struct GutterSpec {
  enum class Slope { front, back };
  Slope drains = Slope::front;
  double runoff = 0.0, filter_passes = 0.0, carries_m3_s = 0.0, blocked = 0.0;
  double first_flush_m = 0.0, flush_empties_s = 0.0;
};
enum class TankForm { cylinder, box };
struct TankSpec {
  double capacity_m3 = 0.0, start_m3 = 0.0, low_m3 = 0.0, restart_m3 = 0.0;
  TankForm form = TankForm::cylinder;
  double height_m = 0.0, wall_area_m2 = 0.0, wall_u_w_m2_k = 0.0, open_share = 0.0;
  std::string overflows_to;
};
struct RefillSpec {
  double called_at_m3 = 0.0, comes_after_s = 0.0, brings_m3 = 0.0, water_k = 0.0, price = 0.0;
};
/// A pump with its pipe; the nozzles of its lines settle what flows.
struct PumpSpec {
  double shut_off_pa = 0.0, most_flow_m3_s = 0.0, power_w = 0.0, lift_m = 0.0;
  double pipe_length_m = 0.0, pipe_bore_m = 0.0, fittings = 0.0;
};

enum class ChargeControl { tracking, switching };
struct PowerSpec {
  double panel_area_m2 = 0.0, panel_efficiency = 0.0, panel_slope_rad = 0.0, panel_faces_rad = 0.0;
  double panel_derate_per_k = 0.0, panel_noct_k = 0.0, panel_soiling = 0.0;
  double panel_east_m = 0.0, panel_north_m = 0.0;
  std::optional<double> panel_height_m;
  ChargeControl charge_control = ChargeControl::tracking;
  std::string battery_kind, battery_stands;
  double battery_j = 0.0, battery_start = 0.0, cut_off = 0.0, reconnect = 0.0;
  double charge_efficiency = 0.0, discharge_efficiency = 0.0, standby_w = 0.0;
  double inverter_standby_w = 0.0, inverter_efficiency = 0.0;
};

/// What a part costs, in the scenario's currency.
struct PriceSpec {
  double buys = 0.0, lasts_seasons = 0.0, a_season = 0.0;
};
struct PricesSpec {
  std::string currency;
  double water_m3 = 0.0, season_s = 0.0;
  std::vector<Named<PriceSpec>> parts;
};

}  // namespace noonhouse
