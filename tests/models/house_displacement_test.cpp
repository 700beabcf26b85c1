// SPDX-License-Identifier: Apache-2.0
// Displacement ventilation: a point source of heat on the floor of a box with openings below and above.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/aired_box.hpp"

namespace noonhouse {
namespace {

constexpr double kAlpha = 0.10, kHeight = 4.0, kHeatW = 300.0, kOutside = 293.15;

/// Height of the level between cool and warm air [m] at which two layers of one temperature each hold the same heat and
/// are as warm above: h = H - (sum of excess x thickness)^2 / (sum of excess^2 x thickness).
double interface_m(const AiredBox& box, const AiredBox::Rest& rest) {
  double first = 0.0, second = 0.0;
  for (const NodeId node : box.air) {
    const double excess = rest.potential(node) - kOutside;
    first += excess * box.thick();
    second += excess * excess * box.thick();
  }
  return kHeight - first * first / second;
}

double measured_interface(int layers, double effective_area_m2) {
  AiredBox box(layers, kHeight, 12.0, kOutside, kOutside);
  // Two equal openings: A* = C_d a. Slits at floor and ceiling, as thin as a test can have them.
  const double slit = 0.005, width = effective_area_m2 / (0.6 * slit);
  box.opening("low", 0.0, width, slit);
  box.opening("high", kHeight - slit, width, slit);
  box.column_of(kAlpha);
  box.heat(box.column[0]);
  const auto rest = box.run(12_h, {{box.heat_w, kHeatW}});
  return interface_m(box, rest);
}

// Linden, Lane-Serff & Smeed 1990, J. Fluid Mech. 212, 309: A*/H^2 = C^1.5 (xi^5 / (1 - xi))^0.5, plume constant C of
// Morton, Taylor & Turner with alpha 0.10 (equation from memory); h/H by bisection of it.
TEST(Displacement, HasItsInterfaceWhereLindenLaneSerffAndSmeedFoundIt) {
  const double c = (6.0 * kAlpha / 5.0) * std::cbrt(9.0 * kAlpha / 10.0) * std::pow(kPi, 2.0 / 3.0);
  for (const double area_over_h2 : {0.005, 0.01, 0.02, 0.05, 0.10}) {
    double low = 0.0, high = 1.0;
    for (int i = 0; i < 60; ++i) {
      const double xi = 0.5 * (low + high);
      (std::pow(c, 1.5) * std::sqrt(std::pow(xi, 5) / (1.0 - xi)) < area_over_h2 ? low : high) = xi;
    }
    const double expected = low * kHeight;
    for (const int layers : {8, 32}) {
      const double found = measured_interface(layers, area_over_h2 * kHeight * kHeight);
      EXPECT_NEAR(found, expected, layers == 8 ? kHeight / 8.0 : 0.03 * expected) << area_over_h2 << " " << layers;
    }
  }
}

}  // namespace
}  // namespace noonhouse
