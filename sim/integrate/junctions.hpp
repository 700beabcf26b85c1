// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <cstdint>
#include <vector>

#include "sim/graph/house.hpp"
#include "sim/integrate/sparse_factor.hpp"

namespace noonhouse {

/// Finds the potentials of a house's junctions, at which their flows add up to nothing. Scratch of one stepper.
class Junctions {
 public:
  /// Flows at a junction that count as nothing [kg/s]; more where the last digit of the pressures makes more.
  static constexpr double kBalanced = 1e-11;
  /// The same where rounding leaves no better [kg/s]: of a pressure of 1000 Pa on either side of a flow that takes on
  /// 1e4 kg/s by each pascal, the last digit makes 1e-9 kg/s.
  static constexpr double kAlmostBalanced = 1e-10;

  explicit Junctions(const House& house);

  /// Sets the junctions' potentials in the amounts y, beginning at what stands there, with all other states and the
  /// channels as given. First by a matrix from nearby, while each step takes nine tenths off the imbalance; then by
  /// Newton's method with derivatives of the place. Flows that rise with the pressure that drives them are the slope of
  /// a convex function, whose lowest point is the balance: a step along Newton's direction is shortened until the
  /// function still falls at its end, or hardly rises. (The largest imbalance is no measure for that: near the steep
  /// middle of a root it may rise on the way.)
  /// False if that fails: the other states are out of all bounds. Does nothing in a house without junctions.
  bool settle(double* y, const double* channels);

  /// Takes the matrix from the derivatives of all fluxes at a state near those to come.
  void look_around(const double* flux_derivatives);

  /// The state of the junction farthest from its balance when it was last sought.
  int worst() const;
  /// Evaluations of the flows since the beginning.
  std::int64_t evaluations() const { return evaluations_; }

 private:
  bool near_step();
  bool newton_step();
  double descent() const;
  double rounding() const;
  double balanced() const { return std::max(kBalanced, rounding()); }
  double almost_balanced() const { return std::max(kAlmostBalanced, 8.0 * rounding()); }
  void move(double share);
  double flows();

  const House* house_;
  SparseFactor factor_;
  std::vector<double> potential_, flux_, derivative_, jacobian_, imbalance_, move_;
  double most_ = 0.0;      ///< the largest imbalance [kg/s]
  double steepest_ = 0.0;  ///< the largest entry of the matrix [kg/(s Pa)]
  bool has_matrix_ = false;
  std::int64_t evaluations_ = 0;
};

}  // namespace noonhouse
