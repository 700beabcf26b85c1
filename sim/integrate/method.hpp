// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <span>
#include <vector>

#include "sim/core/tick.hpp"

namespace noonhouse {

/// All that moves in a run's continuous part.
struct HouseState {
  Tick now;
  std::vector<double> amounts;  ///< states [J, kg, J], then accounts beyond the boundary
  std::vector<double> carried;  ///< per flux, since the start [J, kg, J]
};

/// Channels as straight lines from one break to the next.
struct ChannelLine {
  Tick begin;
  std::vector<double> value;  ///< at begin
  std::vector<double> slope;  ///< [1/s]
  void at(Tick when, double* out) const;
};

/// A finished step (begin, end] with its cubic Hermite dense output. Interpolation is linear in the end
/// values and slopes, so every conserved sum that holds at the ends holds in between, to rounding.
/// The slopes are the rates and fluxes at the ends, but for parts that relax within a small share of the
/// step: the method gives those a slope that does not throw the cubic beyond its ends.
struct Step {
  Tick begin, end;
  std::vector<double> amounts0, rates0, amounts1, rates1;    ///< states only
  std::vector<double> carried0, fluxes0, carried1, fluxes1;  ///< per flux

  void amounts_at(Tick when, double* out) const;
  void carried_at(Tick when, double* out) const;
};

/// How the hybrid loop is carried from one instant to the next. One call a step: not the inner loop.
class SteppingMethod {
 public:
  virtual ~SteppingMethod() = default;
  /// Moves the state over one accepted step that ends at `limit` at the latest.
  /// Throws UserError step_collapse, naming the state that resists.
  virtual const Step& advance(HouseState& state, const ChannelLine& channels, Tick limit) = 0;
  /// Puts the state back to an instant inside the last step.
  virtual void cut(HouseState& state, Tick when) = 0;
  /// Says that the state was changed from outside: evaluate anew and begin with a short step.
  virtual void restart() = 0;
  virtual const Step& last_step() const = 0;
  /// All potentials at the end of the last step, before any cut.
  virtual std::span<const double> end_potentials() const = 0;
  virtual std::int64_t steps() const = 0;
  virtual std::int64_t rejected() const = 0;
};

}  // namespace noonhouse
