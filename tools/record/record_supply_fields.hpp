// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <tuple>

#include "tools/record/record_field.hpp"

namespace noonhouse {

template <>
struct RecordFields<WaterOutcome> {
  using S = WaterOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"capacity", &S::capacity_kg, "kg", "water the tank can hold"},
      RecordField{"start", &S::start_kg, "kg", "water in the tank at the start"},
      RecordField{"end", &S::end_kg, "kg", "water in the tank at the end"},
      RecordField{"lowest", &S::lowest_kg, "kg", "least water in the tank"},
      RecordField{"rain_caught", &S::rain_caught_kg, "kg", "rain that reached the tank"},
      RecordField{"overflow", &S::overflow_kg, "kg", "water lost over the tank's rim"},
      RecordField{"misted", &S::misted_kg, "kg", "water sprayed as mist"},
      RecordField{"hand_watered", &S::hand_watered_kg, "kg", "water given by hand"},
      RecordField{"mist_evaporated", &S::mist_evaporated_kg, "kg", "mist evaporated in the air"},
      RecordField{"days_left", &S::days_left, "d", "days until the cut-out at the run's mean daily use"},
      RecordField{"first_dry", &S::first_dry_s, kSinceStart, "first time the pump was cut out for a low tank"},
      RecordField{"rain_lost", &S::rain_lost_kg, "kg", "rain led aside by first flush, filter and full gutters"},
      RecordField{"evaporated", &S::evaporated_kg, "kg", "water evaporated from the open part of the tank"},
      RecordField{"dripped", &S::dripped_kg, "kg", "water given by drip lines"},
      RecordField{"spilt", &S::spilt_kg, "kg", "water lost at cuts of lines"},
      RecordField{"leaked", &S::leaked_kg, "kg", "water leaked out of the tank"},
      RecordField{"brought", &S::brought_kg, "kg", "water brought by refills"},
      RecordField{"deliveries", &S::deliveries, "1", "refills that came"},
      RecordField{"thirstiest_day", &S::thirstiest_day_kg, "kg", "most water used and evaporated in a day"},
      RecordField{"days_left_thirsty", &S::days_left_thirsty, "d", "days until the cut-out if all were the thirstiest"},
      RecordField{"days_full", &S::days_full, "d", "days that a full tank lasts at the run's mean daily use"},
      RecordField{"days_full_thirsty", &S::days_full_thirsty, "d", "days a full tank lasts if all were the thirstiest"},
      RecordField{"overflows_to", &S::overflows_to, "", "where water over the tank's rim goes"},
      RecordField{"storage_rule", &S::storage_rule, "", "how draws and rain of one moment meet"},
  };
};

template <>
struct RecordFields<EnergyOutcome> {
  using S = EnergyOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"capacity", &S::capacity_j, "J", "energy the battery can hold"},
      RecordField{"start", &S::start_j, "J", "energy in the battery at the start"},
      RecordField{"end", &S::end_j, "J", "energy in the battery at the end"},
      RecordField{"lowest", &S::lowest_j, "J", "least energy in the battery"},
      RecordField{"lowest_share", &S::lowest_share, "1", "lowest charge, a share of what could be used just then"},
      RecordField{"lowest_time", &S::lowest_time_s, kSinceStart, "time of the lowest charge, as that share"},
      RecordField{"panel", &S::panel_j, "J", "energy delivered by the panel"},
      RecordField{"loads", &S::loads_j, "J", "energy drawn by the loads"},
      RecordField{"losses", &S::losses_j, "J", "energy lost in the battery, all of it"},
      RecordField{"days_left", &S::days_left, "d", "days without sun at the run's mean daily load"},
      RecordField{"first_cut_off", &S::first_cut_off_s, kSinceStart, "first time the loads were cut off"},
      RecordField{"self_discharge", &S::self_discharge_j, "J", "energy lost by self-discharge"},
      RecordField{"dead_cells", &S::dead_cells_j, "J", "energy lost with dead cells"},
      RecordField{"heaviest_day", &S::heaviest_day_j, "J", "most energy drawn by the loads in a day"},
      RecordField{"days_left_heavy", &S::days_left_heavy, "d", "days without sun if all were the heaviest"},
      RecordField{"days_full", &S::days_full, "d", "days without sun of a full battery at the run's mean daily load"},
      RecordField{"days_full_heavy", &S::days_full_heavy, "d", "days without sun of a full battery, all the heaviest"},
      RecordField{"full_cycles", &S::full_cycles, "1", "charge drawn over the capacity"},
      RecordField{"daily_depth", &S::daily_depth, "1", "highest less lowest charge of a day over the capacity, mean"},
      RecordField{"mean_temperature", &S::mean_k, "K", "temperature of the battery, mean"},
      RecordField{"peak_temperature", &S::peak_k, "K", "highest temperature of the battery"},
      RecordField{"lowest_temperature", &S::lowest_k, "K", "lowest temperature of the battery"},
  };
};

/// Money carries no unit of its own: the currency stands beside it.
template <>
struct RecordFields<CostOutcome> {
  using S = CostOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"currency", &S::currency, "", "currency of the prices"},
      RecordField{"capital", &S::capital, "1", "what the plan's parts cost to buy, in the currency"},
      RecordField{"per_season", &S::per_season, "1", "wear, upkeep and water brought of a season, in the currency"},
      RecordField{"brought", &S::brought, "1", "of that, the run's refills scaled from the run to the season"},
      RecordField{"season", &S::season_d, "d", "days a year that are taken to be like the run"},
  };
};

/// An estimate for planning the day: local occupational rules come first.
template <>
struct RecordFields<WorkHeatOutcome> {
  using S = WorkHeatOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"bay", &S::bay, "", "bay of the house"},
      RecordField{"unwise", &S::unwise_h, "h", "time above ISO 7243's reference for moderate work, used to heat"},
      RecordField{"peak", &S::peak_k, "K", "highest wet-bulb globe temperature 1.1 m above the floor"},
      RecordField{"peak_time", &S::peak_time_s, kSinceStart, "time of the highest wet-bulb globe temperature"},
  };
};

}  // namespace noonhouse
