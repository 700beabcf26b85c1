// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <vector>

#include "models/properties/heat_stress.hpp"
#include "tools/record/run_record.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// Reckons from samples how hot it is for people who work in each bay.
///
/// At 1.1 m, the height of the belly of somebody who stands [ISO 7243:1989, from memory]: air of that layer, its
/// draught and stirring as one speed (their squares added), light on the bay's open floor with what the floor throws
/// back, and as radiant temperature the mean of floor and cover by fourth powers, half each. Does not model: shade by
/// benches and plants at that height, the sky seen through a cover, clothes, wet skin by spray.
class WorkHeat {
 public:
  /// Assembly and plan must outlive it.
  WorkHeat(const Assembly& assembly, const PlanScenario& plan);

  /// Takes in all potentials at an instant, which stand for a time before it (0: seen, but no part of the hours).
  void sample(Tick when, std::span<const double> potentials, double weight_s);

  void put(RunRecord& record) const;

 private:
  struct Bay {
    Input air, humidity, draught, stirring, floor, direct, soft;
    std::vector<Input> covers;
    std::vector<double> cover_m2;
    WorkHeatOutcome seen;
  };
  HeatSurroundings around(const Bay& bay, double sine_elevation, std::span<const double> p) const;
  double sine_elevation(Tick when) const;
  double at(std::span<const double> p, const Input& input) const {
    return p[static_cast<std::size_t>(assembly_.plan.house.position(input))];
  }

  const Assembly& assembly_;
  const PlanScenario& plan_;
  double julian_day_start_ = 0.0;
  std::vector<Bay> bays_;
};

/// The wet-bulb globe temperature [K] above which moderate work is called unwise, of somebody used to heat: 28 degC.
/// [ISO 7243:1989, Table A.1, as wbgt_reference_k has it]
double work_reference_k();

/// Shortwave of the surroundings from light on a level plane [W/m2]: the straight part turned to face the sun, whose
/// sine of elevation counts as no less than that of 5 deg, lest a low sun that hardly lights the floor scorch people.
void set_sunlight(HeatSurroundings& around, double direct_level_w_m2, double soft_level_w_m2, double sine_elevation,
                  double floor_reflects);

}  // namespace noonhouse
