// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "sim/run/run.hpp"

namespace noonhouse::synthetic {

struct Options {
  int days = 7;
  bool thermostats = true;  ///< without, the coolers stay off and the run has no events
  double on_above_k = 303.4, off_below_k = 300.6;
  double temperature_tolerance_k = 0.005;  ///< one unit of error of every node
  double humidity_tolerance = 2.5e-6;      ///< one unit of error of the air's humidity ratio [kg/kg]
};

/// An INVENTED house for tests of numerics: two bays of four air strata each over a floor and a soil column, under
/// a cover of four facets, with pots, plants, a radiation star, a cooler and its thermometer in each bay, a tank and
/// a battery between them; some sixty states, a hundred and fifty exchanges, time constants from seconds to months.
/// Its weather is invented too, in straight lines of 15 minutes, with passing clouds from a fixed seed.
/// Independent of the project's models. `plan.method` is left empty.
RunPlan make_plan(const Options& options);

}  // namespace noonhouse::synthetic
