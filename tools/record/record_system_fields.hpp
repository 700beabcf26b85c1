// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <tuple>

#include "tools/record/record_field.hpp"

namespace noonhouse {

template <>
struct RecordFields<AiringOutcome> {
  using S = AiringOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"mean", &S::mean_1_s, "s-1", "air changes of the house, mean over the run"},
      RecordField{"least", &S::least_1_s, "s-1", "least air changes seen"},
      RecordField{"least_time", &S::least_time_s, kSinceStart, "time of the least air changes"},
      RecordField{"most", &S::most_1_s, "s-1", "most air changes seen"},
      RecordField{"most_time", &S::most_time_s, kSinceStart, "time of the most air changes"},
      RecordField{"hottest", &S::hottest_1_s, "s-1", "air changes when the air was hottest"},
  };
};

template <>
struct RecordFields<WayOutcome> {
  using S = WayOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"way", &S::name, "", "opening, fan or cracks of a side"},
      RecordField{"in", &S::in_1_s, "s-1", "air that comes in, in air changes of the house"},
      RecordField{"out", &S::out_1_s, "s-1", "air that goes out, in air changes of the house"},
  };
};

/// The chain is not in this list: it is kept as a ragged array of its own.
template <>
struct RecordFields<FailureOutcome> {
  using S = FailureOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"time", &S::time_s, kSinceStart, "time of the failure, local standard time"},
      RecordField{"kind", &S::kind, "", "failure or harm"},
      RecordField{"subject", &S::subject, "", "device, plant or place"},
      RecordField{"what", &S::what, "", "what happened, in words"},
  };
};

/// Residuals carry the unit of their quantity: J for energy and charge, kg for water.
template <>
struct RecordFields<BalanceLine> {
  using S = BalanceLine;
  static constexpr auto list = std::tuple{
      RecordField{"node", &S::node, "", "store"},
      RecordField{"quantity", &S::quantity, "", "energy [J], water [kg] or charge [J]"},
      RecordField{"change", &S::change, "", "gain of the store over the run, in the quantity's unit"},
      RecordField{"inflow", &S::inflow, "", "net amount its exchanges brought, in the quantity's unit"},
      RecordField{"residual", &S::residual, "", "change less inflow, in the quantity's unit"},
  };
};

template <>
struct RecordFields<PathLine> {
  using S = PathLine;
  static constexpr auto list = std::tuple{
      RecordField{"path", &S::path, "", "kind of exchange"},
      RecordField{"from", &S::from, "", "store it leaves"},
      RecordField{"to", &S::to, "", "store it enters"},
      RecordField{"quantity", &S::quantity, "", "energy [J], water [kg] or charge [J]"},
      RecordField{"amount", &S::amount, "", "amount that crossed over the run, in the quantity's unit"},
  };
};

/// Heat without the latent heat of vapour; what turns water to vapour has lines of its own.
template <>
struct RecordFields<LedgerHour> {
  using S = LedgerHour;
  static constexpr auto list = std::tuple{
      RecordField{"begin", &S::begin_s, kSinceStart, "begin of the hour"},
      RecordField{"end", &S::end_s, kSinceStart, "end of the hour"},
      RecordField{"sun", &S::sun_j, "J", "sunlight taken up by the house, the sum of all that follows"},
      RecordField{"vents", &S::vents_j, "J", "heat out with air through openings, fans and gaps, less heat of motors"},
      RecordField{"mist", &S::mist_j, "J", "heat bound by mist that evaporated in the air"},
      RecordField{"surfaces", &S::surfaces_j, "J", "heat bound by surfaces that dried, less dew and fog"},
      RecordField{"transpiration", &S::transpiration_j, "J", "heat bound by water that leaves evaporated"},
      RecordField{"cover", &S::cover_j, "J", "heat through the cover to outdoor air and surroundings"},
      RecordField{"sky", &S::sky_j, "J", "heat radiated to the sky"},
      RecordField{"ground", &S::ground_j, "J", "heat into floor and soil, kept there or gone below"},
      RecordField{"water", &S::water_j, "J", "heat with the water of tank, rain and drains"},
      RecordField{"kept", &S::kept_j, "J", "heat kept by air, cover, benches, plants and pots"},
  };
};

template <>
struct RecordFields<ClosureOutcome> {
  using S = ClosureOutcome;
  static constexpr auto list = std::tuple{
      RecordField{"energy_relative", &S::energy_relative, "1", "energy closure over the energy crossed"},
      RecordField{"water_relative", &S::water_relative, "1", "water closure over the water crossed"},
      RecordField{"charge_relative", &S::charge_relative, "1", "charge closure over the charge crossed"},
      RecordField{"energy_crossed", &S::energy_crossed_j, "J", "energy that crossed the boundary"},
      RecordField{"water_crossed", &S::water_crossed_kg, "kg", "water that crossed the boundary"},
      RecordField{"charge_crossed", &S::charge_crossed_j, "J", "electrical energy that crossed the boundary"},
  };
};

template <>
struct RecordFields<StepCounts> {
  using S = StepCounts;
  static constexpr auto list = std::tuple{
      RecordField{"steps", &S::steps, "1", "integration steps taken"},
      RecordField{"rejected", &S::rejected, "1", "integration steps refused and redone"},
      RecordField{"events", &S::events, "1", "events handled"},
  };
};

template <>
struct RecordFields<Provenance> {
  using S = Provenance;
  static constexpr auto list = std::tuple{
      RecordField{"version", &S::version, "", "version of the program"},
      RecordField{"scenario_file", &S::scenario_file, "", "scenario file as named by the person"},
      RecordField{"scenario_digest", &S::scenario_digest, "", "digest of the scenario"},
      RecordField{"weather_digest", &S::weather_digest, "", "digest of the weather"},
      RecordField{"seed", &S::seed, "", "seed of the random streams"},
  };
};

}  // namespace noonhouse
