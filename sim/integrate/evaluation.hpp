// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <vector>

#include "sim/graph/house.hpp"

namespace noonhouse {

/// The house's right-hand side and its exact derivatives at one state: scratch of one stepper.
/// Amounts y [J, kg], rates f = dy/dt [W, kg/s], fluxes q [W, kg/s], channels c with slopes [1/s].
class Evaluation {
 public:
  explicit Evaluation(const House& house);

  /// Rates of the states at (y, c): one flux per edge, minus at one end and plus at the other.
  /// Leaves the fluxes in fluxes(). y and rate have House::states entries.
  void rates(const double* y, const double* channels, double* rate);

  /// Rates and fluxes with the Jacobian by amounts and the fluxes' derivatives.
  void rates_and_jacobian(const double* y, const double* channels, double* rate);
  /// Rates' and fluxes' partial derivatives in time, from the channels' slopes, at the state of the
  /// last rates_and_jacobian.
  void time_slopes(const double* channel_slopes, double* rate_slope, double* flux_slope) const;
  /// Adds scale * (d fluxes / d amounts) v, at the state of the last rates_and_jacobian.
  void add_flux_change(const double* v, double scale, double* out) const;

  /// Rates of the states from fluxes [W, kg/s]: minus at one end and plus at the other.
  void gather(const double* flux, double* rate) const;

  std::span<const double> fluxes() const { return flux_; }
  const double* jacobian() const { return jacobian_.data(); }
  /// Of all fluxes by their own inputs, at the state of the last rates_and_jacobian.
  const double* flux_derivatives() const { return derivative_.data(); }
  std::span<const double> potentials() const { return potential_; }

 private:
  void by_amounts();
  void add_change_along_direction(double* out) const;

  const House* house_;
  std::vector<double> potential_, slope_, flux_, derivative_, jacobian_;
  mutable std::vector<double> direction_;
};

}  // namespace noonhouse
