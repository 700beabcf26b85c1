// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <vector>

#include "sim/graph/house.hpp"
#include "sim/integrate/sparse_factor.hpp"

namespace noonhouse {

/// Finds the potentials of a house's junctions, at which their flows add up to nothing. Scratch of one stepper.
class Junctions {
 public:
  /// Flows at a junction that count as nothing [kg/s].
  static constexpr double kBalanced = 1e-11;
  /// The same where rounding leaves no better [kg/s].
  static constexpr double kAlmostBalanced = 1e-10;

  explicit Junctions(const House& house);

  /// Sets the junctions' potentials in the amounts y, beginning at what stands there, with all other states and the
  /// channels as given. Newton's method with the exact derivatives: flows that rise with the pressure that drives them
  /// are the slope of a convex function, so a short enough step along Newton's direction always lessens the imbalance.
  /// False if that fails: the other states are out of all bounds. Does nothing in a house without junctions.
  bool settle(double* y, const double* channels);

  /// Newton steps since the beginning.
  std::int64_t iterations() const { return iterations_; }

 private:
  bool step();
  double flows();
  void load_matrix();

  const House* house_;
  SparseFactor factor_;
  std::vector<double> potential_, flux_, derivative_, jacobian_, imbalance_, move_;
  double most_ = 0.0;  ///< the largest imbalance [kg/s]
  std::int64_t iterations_ = 0;
};

}  // namespace noonhouse
