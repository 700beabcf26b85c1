// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <limits>
#include <string>

/// What a run says of water, charge, money and people.
namespace noonhouse {

inline constexpr double kNotHappened = std::numeric_limits<double>::quiet_NaN();

struct WaterOutcome {
  double capacity_kg = 0.0, start_kg = 0.0, end_kg = 0.0, lowest_kg = 0.0;
  double rain_caught_kg = 0.0, overflow_kg = 0.0, misted_kg = 0.0, hand_watered_kg = 0.0;
  double mist_evaporated_kg = 0.0;
  double days_left = kNotHappened;    ///< without rain, at this run's mean daily use, from the end level to the cut-out
  double first_dry_s = kNotHappened;  ///< first time the pump was cut out for a low tank
  double rain_lost_kg = 0.0;          ///< rain led aside by first flush, filter and full gutters
  double evaporated_kg = 0.0;         ///< from the open part of the tank's surface
  double dripped_kg = 0.0, spilt_kg = 0.0, leaked_kg = 0.0;  ///< by drip lines, at cuts of lines, out of the tank
  double brought_kg = 0.0;                                   ///< by refills
  int deliveries = 0;
  double thirstiest_day_kg = 0.0;           ///< most used and evaporated in a calendar day
  double days_left_thirsty = kNotHappened;  ///< as days_left, with every day like the thirstiest
  double days_full = kNotHappened, days_full_thirsty = kNotHappened;  ///< the same of a full tank
  std::string overflows_to = {};                                      ///< where water over the brim goes
  std::string storage_rule = {};  ///< how draws and rain of one moment meet, in words

  /// All that left the tank by devices, people, cuts and leaks; not over the brim, nor into the air.
  double used_kg() const { return misted_kg + hand_watered_kg + dripped_kg + spilt_kg + leaked_kg; }
};

struct EnergyOutcome {
  double capacity_j = 0.0, start_j = 0.0, end_j = 0.0, lowest_j = 0.0;
  double lowest_share = 0.0;            ///< of what could be used (ChargeScale), the least
  double lowest_time_s = kNotHappened;  ///< of that share
  double panel_j = 0.0, loads_j = 0.0, losses_j = 0.0;
  double days_left = kNotHappened;  ///< without sun, at this run's mean daily load, from the end charge to the cut-off
  double first_cut_off_s = kNotHappened;
  double self_discharge_j = 0.0;                                    ///< part of the losses
  double dead_cells_j = 0.0;                                        ///< part of the losses: what dead cells held
  double heaviest_day_j = 0.0;                                      ///< most drawn by the loads in a calendar day
  double days_left_heavy = kNotHappened;                            ///< as days_left, with every day like the heaviest
  double days_full = kNotHappened, days_full_heavy = kNotHappened;  ///< the same of a full battery
  double full_cycles = 0.0;                                         ///< charge drawn over the capacity
  double daily_depth = 0.0;  ///< highest less lowest charge of a calendar day over the capacity, mean of the days
  double mean_k = kNotHappened, peak_k = kNotHappened, lowest_k = kNotHappened;  ///< of the battery
};

/// What a plan costs by the scenario's prices; no numbers where nothing is priced.
struct CostOutcome {
  std::string currency;
  double capital = kNotHappened;     ///< to buy what the plan has
  double per_season = kNotHappened;  ///< wear, upkeep and water brought
  double brought = 0.0;              ///< of that, water brought: what the run's refills would come to over the season
  double season_d = 0.0;             ///< days a year that are taken to be like the run
  bool known() const { return capital == capital && per_season == per_season; }
};

/// Heat for people at work in a bay, by the wet-bulb globe temperature at 1.1 m.
struct WorkHeatOutcome {
  std::string bay;
  double unwise_h = 0.0;  ///< above the reference value for moderate work of somebody used to heat [h]
  double peak_k = kNotHappened, peak_time_s = kNotHappened;
};

}  // namespace noonhouse
