// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <vector>

/// A tank reckoned by whole periods, as rain tanks are sized by hand.
namespace noonhouse {

/// What a tank does in one period.
struct StoragePeriod {
  double yield_kg = 0.0;  ///< supplied, Y
  double spill_kg = 0.0;  ///< over the brim
  double level_kg = 0.0;  ///< held at the end, V
};

/// What is held and spilled by a tank of capacity C that holds V at the start, period by period, of inflows Q and
/// demands D (all [kg], none negative, as many of one as of the other), when the demand is served before the excess
/// spills:
///   Y = min(D, V + Q),  V' = min(V + Q - Y, C)
/// [Jenkins et al. 1978, Feasibility of rainwater collection systems in California; Fewkes & Butler 2000, Build. Serv.
/// Eng. Res. Technol. 21, 99]. It supplies the most that any order within the period could. In both rules
/// V + Q = Y + spill + V'. Does not model: evaporation, dead storage. Throws UserError (does_not_fit).
std::vector<StoragePeriod> yield_before_spillage(double capacity_kg, double start_kg, std::span<const double> inflow_kg,
                                                 std::span<const double> demand_kg);

/// The same, when the excess spills before the demand is served, of what was held when the period began:
///   Y = min(D, V),  V' = min(V + Q - Y, C - Y)       [same sources; advised for sizing, as it promises the least]
std::vector<StoragePeriod> yield_after_spillage(double capacity_kg, double start_kg, std::span<const double> inflow_kg,
                                                std::span<const double> demand_kg);

/// Sum of what was supplied [kg].
double total_yield_kg(std::span<const StoragePeriod> periods);

}  // namespace noonhouse
