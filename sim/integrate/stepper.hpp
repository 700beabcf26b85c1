// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <vector>

#include "sim/core/tick.hpp"
#include "sim/graph/house.hpp"
#include "sim/integrate/evaluation.hpp"
#include "sim/integrate/junctions.hpp"
#include "sim/integrate/method.hpp"
#include "sim/integrate/sparse_factor.hpp"

namespace noonhouse {

struct StepControl {
  double tolerance = 1.0;  ///< error per step, in units of House::amount_tolerance (root mean square)
  Tick restart{5'000};     ///< first step after a jump
  Tick shortest{1};        ///< a rejected step this short gives up
  Tick longest = 1_h;      ///< up to a tenth longer where a limit would leave a sliver
  double growth = 6.0;     ///< most that a step may grow over the last
};

/// One-step, linearly implicit, L-stable, third order with an embedded second-order error estimate:
/// ROS3 of Sandu, Verwer, Blom, Spee, Carmichael & Potra (1997), Atmos. Environ. 31, 3459, "Benchmarking
/// stiff ODE solvers for atmospheric chemistry problems II": three stages, two right-hand sides, one
/// factorisation, three solves. Exact Jacobian and exact time derivative. Every linear invariant
/// (energy, water, charge over nodes and accounts) is kept to rounding. Junctions are solved for within
/// every evaluation; their rows make the linear systems those of the whole, with its matrix still sparse.
class Stepper final : public SteppingMethod {
 public:
  Stepper(const House& house, const StepControl& control);

  const Step& advance(HouseState& state, const ChannelLine& channels, Tick limit) override;
  void cut(HouseState& state, Tick when) override;
  void restart() override;
  const Step& last_step() const override { return step_; }
  std::span<const double> end_potentials() const override { return first_.potentials(); }
  std::int64_t steps() const override { return steps_; }
  std::int64_t rejected() const override { return rejected_; }

 private:
  void prepare(HouseState& state, const ChannelLine& channels);
  Tick choose_length(Tick room, Tick rejected) const;
  double try_step(const HouseState& state, const ChannelLine& channels, Tick length);
  double combine_stages(const double* amounts);
  void accept(HouseState& state, const ChannelLine& channels, Tick length);
  void carry(HouseState& state, double h);
  void dense_slopes();
  void straighten_dense_output(double h);
  [[noreturn]] void give_up(const HouseState& state) const;

  const House* house_;
  StepControl control_;
  Evaluation first_, middle_;  ///< at the step's beginning; at its inner stage
  Junctions junctions_;
  SparseFactor factor_;
  bool prepared_ = false;
  bool balanced_ = true;  ///< junctions, when they were last asked
  double next_length_s_;
  std::vector<double> prepared_channels_, channels_, rates_, rate_slope_, flux_slope_, inner_rates_;
  std::vector<double> u1_, u2_, u3_, trial_, error_, increment_;
  Step step_;
  std::int64_t steps_ = 0, rejected_ = 0;
};

}  // namespace noonhouse
