// SPDX-License-Identifier: Apache-2.0
#include "models/water/storage_rule.hpp"

#include <algorithm>
#include <numeric>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

void require_sound(double capacity_kg, double start_kg, std::span<const double> inflow_kg,
                   std::span<const double> demand_kg) {
  const auto none_negative = [](std::span<const double> all) {
    return std::all_of(all.begin(), all.end(), [](double x) { return x >= 0.0; });
  };
  if (inflow_kg.size() != demand_kg.size())
    throw UserError(ErrorKind::does_not_fit, "a tank's inflows and demands must be for the same periods");
  if (!(start_kg >= 0.0 && start_kg <= capacity_kg))
    throw UserError(ErrorKind::does_not_fit, "a tank's content at the start must be from 0 to its capacity");
  if (!none_negative(inflow_kg) || !none_negative(demand_kg))
    throw UserError(ErrorKind::does_not_fit, "a tank's inflows and demands must not be negative");
}

/// A period in which so much is supplied and at most `room_kg` may be held at the end; the rest spills.
StoragePeriod divided(double held_kg, double inflow_kg, double yield_kg, double room_kg) {
  const double rest_kg = held_kg + inflow_kg - yield_kg;
  const double level_kg = std::min(rest_kg, room_kg);
  return {yield_kg, rest_kg - level_kg, level_kg};
}

}  // namespace

std::vector<StoragePeriod> yield_before_spillage(double capacity_kg, double start_kg, std::span<const double> inflow_kg,
                                                 std::span<const double> demand_kg) {
  require_sound(capacity_kg, start_kg, inflow_kg, demand_kg);
  std::vector<StoragePeriod> out;
  for (std::size_t i = 0; i < inflow_kg.size(); ++i) {
    const double held_kg = i == 0 ? start_kg : out.back().level_kg;
    const double yield_kg = std::min(demand_kg[i], held_kg + inflow_kg[i]);
    out.push_back(divided(held_kg, inflow_kg[i], yield_kg, capacity_kg));
  }
  return out;
}

std::vector<StoragePeriod> yield_after_spillage(double capacity_kg, double start_kg, std::span<const double> inflow_kg,
                                                std::span<const double> demand_kg) {
  require_sound(capacity_kg, start_kg, inflow_kg, demand_kg);
  std::vector<StoragePeriod> out;
  for (std::size_t i = 0; i < inflow_kg.size(); ++i) {
    const double held_kg = i == 0 ? start_kg : out.back().level_kg;
    const double yield_kg = std::min(demand_kg[i], held_kg);
    out.push_back(divided(held_kg, inflow_kg[i], yield_kg, capacity_kg - yield_kg));
  }
  return out;
}

double total_yield_kg(std::span<const StoragePeriod> periods) {
  return std::accumulate(periods.begin(), periods.end(), 0.0,
                         [](double sum, const StoragePeriod& period) { return sum + period.yield_kg; });
}

}  // namespace noonhouse
