// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <string>
#include <string_view>

#include "models/power/cold_capacity.hpp"
#include "models/properties/sourced_value.hpp"

namespace noonhouse {

/// A chemistry of batteries with what a reckoning over days and seasons needs of it, each figure with its source. Does
/// not model: voltages, makers' differences, a battery that is worn already.
struct BatteryKind {
  const char* name;                       ///< in lower case, as a scenario says it
  SourcedValue charge_efficiency;         ///< share of what charges it that is stored
  SourcedValue discharge_efficiency;      ///< share of what leaves the store that reaches the loads
  SourcedValue peukert_exponent;          ///< k, 1: capacity does not depend on the rate
  SourcedValue rated_hours;               ///< to empty it at the rate its capacity is stated for [h]
  SourcedValue depth;                     ///< share of the capacity to be used day by day; cut off at 1 - depth
  SourcedValue share_at_0c;               ///< of the capacity at 25 degC
  SourcedValue share_at_minus_20c;        ///< of the capacity at 25 degC
  SourcedValue least_charge_k;            ///< it must not be charged below this [K]
  SourcedValue self_discharge_a_month;    ///< share lost in 30 days at 25 degC
  SourcedValue self_discharge_doubles_k;  ///< its self-discharge doubles for each such rise [K]
  SourcedValue cycles;                    ///< to 80 % of its first capacity at 25 degC, each as deep as `cycle_depth`
  SourcedValue cycle_depth;               ///< share of the capacity
  SourcedValue shelf_years;               ///< it lives by age alone at 25 degC
  SourcedValue life_halves_k;             ///< life halves for each such rise above 25 degC [K]
  const char* about;                      ///< one sentence for a person who chooses

  ColdCapacity cold() const { return {share_at_0c.value, share_at_minus_20c.value}; }
  double cut_off_share() const { return 1.0 - depth.value; }
  /// Rate of self-discharge at 25 degC [1/s], positive:  r = -ln(1 - s) / 30 d.
  double self_discharge_per_s() const;
};

/// The library, in the order to show it.
std::span<const BatteryKind> battery_kinds();

/// The kind of that name, or null: the caller knows whom to ask again.
const BatteryKind* find_battery_kind(std::string_view name);

/// Share of the capacity at 25 degC that is there at a temperature [K], 0 to 1; the law: ColdCapacity.
double capacity_share(const BatteryKind& kind, double temperature_k);

/// How a battery was used over a season.
struct BatteryUse {
  double full_cycles = 0.0;  ///< charge drawn over capacity, over the whole season
  double season_days = 0.0;  ///< above 0
  double mean_depth = 0.0;   ///< of its daily cycles, share of the capacity
  double mean_k = 298.15, peak_k = 298.15;
};

/// Life that such use leaves a new battery [years], if every season of the year is like it.
///   by cycles: cycles x cycle_depth / full cycles a year (the same charge goes through it, however shallow);
///   by age: shelf_years;  both x 2^(-(T_mean - 25 degC) / life_halves_k) where T_mean is above 25 degC
/// [common practice, no source]. Does not model: that the two wear together, cycles deeper than `cycle_depth`, what
/// standing empty or charging in frost does.
struct BatteryLife {
  double by_cycles_years = 0.0;  ///< infinite where it is not cycled
  double by_age_years = 0.0;
  double heat_factor = 1.0;  ///< in both, 0 to 1
  double years() const;      ///< the lesser
};
BatteryLife battery_life(const BatteryKind& kind, const BatteryUse& use);

/// The same as one sentence for a report.
std::string ageing_note(const BatteryKind& kind, const BatteryUse& use);

}  // namespace noonhouse
