// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>

namespace noonhouse::ros3 {

// Coefficients of ROS3 (Sandu et al. 1997, Atmos. Environ. 31, 3459) in the form without a Jacobian product:
//   (I/(h gamma) - J) u_i = f(t + alpha_i h, y + sum a_ij u_j) + sum (c_ij / h) u_j + gamma_i h f_t
//   y1 = y + sum m_i u_i,   error = sum e_i u_i,   a31 = 1, a32 = 0 and alpha3 = alpha2: stage 3 reuses stage 2's f.
// Entered from memory; tests/sim check order 3, the embedded order 2, L-stability and the order conditions.
inline constexpr double kGamma = 0.43586652150845899941601945119356;
inline constexpr double kAlpha2 = kGamma;
inline constexpr double kA21 = 1.0;
inline constexpr double kC21 = -1.0156171083877702091975600115545;
inline constexpr double kC31 = 4.0759956452537699824805835358067;
inline constexpr double kC32 = 9.2076794298330791242156818474003;
inline constexpr std::array<double, 3> kTime{0.43586652150845899941601945119356, 0.24291996454816804366592249683314,
                                             2.1851380027664058511513169485832};
inline constexpr std::array<double, 3> kM{1.0, 6.1697947043828245592553615689730, -0.42772256543218573326238373806514};
inline constexpr std::array<double, 3> kE{0.5, -2.9079558716805469821718236208017, 0.22354069897811569627360909276199};
inline constexpr double kErrorOrder = 3.0;  ///< the error estimate shrinks as h^3

/// Quadrature weights of the stages for amounts that nothing depends on (fluxes carried): the same method
/// applied to them, w = gamma (I - gamma C)^-T m, so that what is carried adds up to the states' own change.
constexpr std::array<double, 3> carried_weights() {
  // Solve (I - gamma C)^T x = m backwards: C is strictly lower triangular.
  const double x3 = kM[2];
  const double x2 = kM[1] + kGamma * kC32 * x3;
  const double x1 = kM[0] + kGamma * (kC21 * x2 + kC31 * x3);
  return {kGamma * x1, kGamma * x2, kGamma * x3};
}

}  // namespace noonhouse::ros3
